//! The planet to scale, with a ring where it would be lost, and the ruler.

use two_frames::figure::{Dash, Disc, Path, Picture, Role};
use two_frames::scenario::PRESETS;

use crate::common::{Moment, discs, parts, paths, planet, sandbox, sizes};
use crate::own::Own;

#[test]
fn the_planet_is_to_scale_and_ringed_where_it_is_small() {
    let mut seen = [false; 2];
    for preset in &PRESETS {
        for size in [(320.0, 350.0), (640.0, 640.0), (1200.0, 1000.0)] {
            let own = Own::preset(preset);
            let [part, ..] = parts(
                &mut sandbox(preset.text, Moment::Telling),
                &sizes(size, (720.0, 400.0)),
            );
            let picture = part.picture;
            let (radii, km, bar) = ruler(&picture);
            // The ruler's kilometres are rounded to three digits.
            assert!(
                (radii * own.planet.radius_km / km - 1.0).abs() < 0.005,
                "{}: {radii} R, {km} km",
                preset.id
            );
            let body = planet(&picture);
            assert!(
                (bar / radii / body.radius - 1.0).abs() < 1e-9,
                "{}",
                preset.id
            );
            let is_ring = |disc: &&Disc| disc.edge.is_some_and(|edge| edge.dash == Dash::Dotted);
            let rings: Vec<_> = discs(&picture).into_iter().filter(is_ring).collect();
            assert_eq!(
                rings.len(),
                usize::from(body.radius < 4.0),
                "{}: radius {}",
                preset.id,
                body.radius
            );
            seen[usize::from(body.radius < 4.0)] = true;
            assert!(
                rings
                    .iter()
                    .all(|ring| ring.centre == body.centre && ring.radius > 6.0),
                "{}",
                preset.id
            );
        }
    }
    assert_eq!(seen, [true, true], "planets with a ring and without one");
}

/// The ruler's planet radii and kilometres as its label says, and the length of its bar.
fn ruler(picture: &Picture) -> (f64, f64, f64) {
    let words = picture
        .labels()
        .find(|label| label.text.contains(" R = "))
        .expect("a ruler");
    let (radii, km) = words.text.split_once(" R = ").expect("a ruler's words");
    let number = |text: &str| -> f64 {
        let digits: String = text
            .chars()
            .filter(|c| c.is_ascii_digit() || *c == '.')
            .collect();
        digits.parse().expect("a number")
    };
    let unit = match () {
        () if km.contains("billion") => 1e9,
        () if km.contains("million") => 1e6,
        () => 1.0,
    };
    let below = |path: &&Path| {
        let [a, b] = path.points[..] else {
            return false;
        };
        (a.y - b.y).abs() < 1e-9
            && (a.y - words.at.y).abs() < 1.5 * words.size
            && (0.5 * (a.x + b.x) - words.at.x).abs() < 1.0
    };
    let bar = paths(picture, Role::Quiet, Dash::Solid)
        .into_iter()
        .find(below)
        .expect("the ruler's bar");
    (
        number(radii),
        number(km) * unit,
        bar.points[0].distance(bar.points[1]),
    )
}
