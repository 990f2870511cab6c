//! The planet's path is drawn straight, and the page says how far the real one would bend.

use two_frames::report::Piece;
use two_frames::sandbox::Sandbox;

use super::many;

/// The straight path of the planet is owned up to, with how far the real one would bend in the time shown.
#[test]
fn the_planet_s_bend_is_told_where_it_matters() {
    let mut told = 0;
    for solved in many() {
        let text = solved.scenario.to_string();
        let mut sandbox = Sandbox::open(&text);
        let warned: Vec<_> = sandbox
            .panel()
            .expect("a pass")
            .cautions
            .iter()
            .map(ToString::to_string)
            .collect();
        let shown_s = 2.0 * sandbox.solved().expect("a pass").track.half_s;
        // Source: a circle's angle is its arc over its radius.
        let planet = solved.flyby.encounter.planet;
        let bend = (planet.orbit_speed() * shown_s / planet.orbit_km).to_degrees();
        let value = bend_of(&mut sandbox);
        assert!(
            (value / bend - 1.0).abs() < 1e-12,
            "{text}: {value} against {bend}"
        );
        assert!(
            warned.iter().any(|words| words.contains("would bend by")),
            "{text}"
        );
        told += 1;
    }
    assert!(told > 20, "{told} bends told");
}

/// The bend that the last caution tells, degrees.
fn bend_of(sandbox: &mut Sandbox) -> f64 {
    let panel = sandbox.panel().expect("a pass");
    let pieces = panel.cautions.last().expect("a caution").pieces();
    let number = pieces.iter().find_map(|piece| match piece {
        Piece::Number(value) => value.value,
        Piece::Words(_) => None,
    });
    number.expect("a number")
}
