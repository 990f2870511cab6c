//! The planet's disc hides what is behind it and nothing else, from wherever a stage is seen.

use glam::{DVec2, DVec3};
use two_frames::figure::{Dash, Look, Mark, Picture, Role};

use crate::common::{Moment, planet, preset, probe, seen};
use crate::looks::{looks, own_axes, stages, views};

/// Which of a picture's marks is the first that draws a line with these two points side by side.
fn mark_of(picture: &Picture, role: Role, ends: [DVec2; 2]) -> Option<usize> {
    let draws = |mark: &Mark| match mark {
        Mark::Path(path) if path.stroke.role == role => path
            .points
            .windows(2)
            .any(|pair| pair[0].distance(ends[0]) < 1e-6 && pair[1].distance(ends[1]) < 1e-6),
        _ => false,
    };
    picture.marks.iter().position(draws)
}

/// Every piece of the path is drawn once; over the disc it is painted before it where it lies farther from the eye than
/// the planet, and after it where it lies nearer.
#[test]
fn the_disc_hides_what_is_behind_it_and_nothing_else() {
    let (mut hidden, mut shown) = (0, 0);
    let texts = [
        preset("out-of-plane").text,
        "periapsis=1.2&aim=60&approach=20",
        "aim=-110",
    ];
    for text in texts {
        for look in looks(15).filter(|look| *look != Look::NORTH) {
            let mut sandbox = seen(text, Moment::Telling, look);
            let (views, pictures) = (views(&mut sandbox), stages(&mut sandbox));
            let now = sandbox.time_s().expect("a pass");
            let solved = sandbox.solved().expect("a pass");
            let [_, _, toward] = own_axes(look);
            let planet_now = solved.flyby.encounter.planet.orbit_speed() * now * DVec3::Y;
            for (i, role) in [Role::Relative, Role::RoundSun].into_iter().enumerate() {
                let (picture, view) = (&pictures[i], [&views.planet, &views.sun][i]);
                let (disc, centre) = (planet(picture), [DVec3::ZERO, planet_now][i]);
                let body = |mark: &Mark| matches!(mark, Mark::Disc(disc) if disc.fill == Some(Role::Planet));
                let painted = picture.marks.iter().position(body).expect("a planet");
                for samples in [&solved.track.before, &solved.track.after] {
                    for pair in samples.windows(2) {
                        let ends = [&pair[0], &pair[1]]
                            .map(|sample| [sample.relative_km, sample.in_sun_frame_km][i]);
                        let places = ends.map(|end| view.place_in_space(end));
                        let mark = mark_of(picture, role, places).expect("the piece is drawn");
                        let middle = 0.5 * (ends[0] + ends[1]);
                        let off = view.place_in_space(middle).distance(disc.centre);
                        let [depth, other] = ends.map(|end| (end - centre).dot(toward));
                        // In the Sun frame a path may lead through where the planet is now: that has no before and after.
                        if off < 0.9 * disc.radius && depth * other > 0.0 {
                            assert_eq!(mark > painted, depth > 0.0, "{text} {look:?} {role:?}");
                            *(if depth > 0.0 { &mut shown } else { &mut hidden }) += 1;
                        }
                    }
                }
            }
        }
    }
    assert!(hidden > 50 && shown > 50, "{hidden} hidden, {shown} shown");
}

#[test]
fn a_probe_behind_the_disc_is_told_of() {
    // Over the north pole (aim −90°) and over the south pole, seen from either.
    for (aim, height, is_hidden) in [
        (-90, -90, true),
        (90, -90, false),
        (90, 90, true),
        (-90, 90, false),
    ] {
        let text = format!("planet=mars&v-infinity=40&approach=90&periapsis=1.1&aim={aim}");
        let look = Look::new(10.0, f64::from(height));
        for picture in stages(&mut seen(&text, Moment::Periapsis, look)) {
            let disc = planet(&picture);
            assert!(
                probe(&picture).distance(disc.centre) < disc.radius,
                "{text}"
            );
            let told = picture.labels().any(|label| label.text == "now, hidden");
            let dotted = picture.marks.iter().any(|mark| {
                matches!(mark, Mark::Disc(ring) if ring.centre == probe(&picture) && ring.edge.is_some_and(|edge| edge.dash == Dash::Dotted))
            });
            assert_eq!(
                (told, dotted),
                (is_hidden, is_hidden),
                "{text}, from {height}"
            );
        }
    }
}
