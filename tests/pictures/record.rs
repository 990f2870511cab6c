//! The speed record: a hump that comes back, a step that does not, on one clock.

use glam::DVec2;
use two_frames::figure::{Dash, Disc, Picture, Role};
use two_frames::sandbox::Sandbox;
use two_frames::scenario::PRESETS;

use crate::common::{Moment, discs, label, parts, paths, preset, sandbox, usual};
use crate::geometry::{Box2, distance_to_path};
use crate::own::Own;

fn record(sandbox: &mut Sandbox) -> Picture {
    let [_, _, _, part] = parts(sandbox, &usual());
    part.picture
}

/// What the axes say: from places of the picture to seconds and km/s, read off gridlines, ticks and their labels.
struct Axes {
    zero: DVec2,
    seconds: f64,
    km_s: f64,
}

impl Axes {
    fn of(picture: &Picture) -> Self {
        let (zero_y, y, speed) = speed_axis(picture);
        let (zero_x, x, time) = time_axis(picture);
        Self {
            zero: DVec2::new(zero_x, zero_y),
            seconds: time / (x - zero_x),
            km_s: speed / (y - zero_y),
        }
    }

    /// Seconds after periapsis and km/s of a place.
    fn read(&self, place: DVec2) -> (f64, f64) {
        let offset = place - self.zero;
        (offset.x * self.seconds, offset.y * self.km_s)
    }
}

/// The height of the gridline of 0, and height and speed of the topmost one.
fn speed_axis(picture: &Picture) -> (f64, f64, f64) {
    let lines = paths(picture, Role::Faint, Dash::Solid);
    let marked: Vec<(f64, f64)> = lines
        .iter()
        .map(|line| {
            let y = line.points[0].y;
            assert!(line.points.iter().all(|point| (point.y - y).abs() < 1e-9));
            // The number stands left of its line, in the middle of its height.
            let beside = picture.labels().find(|label| {
                let area = Box2::new(label.bounds());
                (area.centre().y - y).abs() < 1e-6
                    && area.high.x < line.points[0].x
                    && label.text.parse::<f64>().is_ok()
            });
            let beside = beside.unwrap_or_else(|| panic!("no number at the gridline at {y}"));
            (y, beside.text.parse().expect("a number"))
        })
        .collect();
    let (zero, top) = (marked[0], marked[marked.len() - 1]);
    assert!(
        zero.1 == 0.0 && top.1 > 0.0 && top.0 < zero.0 && marked.len() >= 3,
        "{marked:?}"
    );
    for (y, speed) in marked {
        let want = zero.0 + (top.0 - zero.0) * speed / top.1;
        assert!((y - want).abs() < 1e-6, "gridlines are evenly spaced");
    }
    (zero.0, top.0, top.1)
}

/// Where periapsis stands, and place and time of the last tick.
fn time_axis(picture: &Picture) -> (f64, f64, f64) {
    let ticks = paths(picture, Role::Quiet, Dash::Solid);
    let zero = ticks[ticks.len() / 2].points[0].x;
    let last = ticks[ticks.len() - 1].points[0].x;
    let middle = Box2::new(label(picture, "periapsis").bounds()).centre().x;
    assert!(
        (middle - zero).abs() < 1e-6,
        "“periapsis” stands under its tick"
    );
    let units = [
        ("s", 1.0),
        ("min", 60.0),
        ("h", 3_600.0),
        ("days", 86_400.0),
    ];
    let words = picture.labels().find_map(|label| {
        let (number, unit) = label.text.strip_prefix('+')?.split_once(' ')?;
        let unit = units.iter().find(|(name, _)| *name == unit)?.1;
        Some(number.parse::<f64>().ok()? * unit)
    });
    (
        zero,
        last,
        words.expect("the last tick's label has the unit"),
    )
}

/// The whole curve of a role: the dashed part and then the solid one.
fn curve(picture: &Picture, role: Role) -> Vec<DVec2> {
    let part = |dash| {
        paths(picture, role, dash)
            .into_iter()
            .flat_map(|path| path.points.iter().copied())
    };
    part(Dash::Dashed).chain(part(Dash::Solid)).collect()
}

#[test]
fn curves_are_the_speeds_at_their_times() {
    for preset in &PRESETS {
        let own = Own::preset(preset);
        let mut sandbox = sandbox(preset.text, Moment::Telling);
        let picture = record(&mut sandbox);
        let axes = Axes::of(&picture);
        let flyby = sandbox.solved().expect("a pass").flyby;
        for role in [Role::Relative, Role::RoundSun] {
            let points = curve(&picture, role);
            assert!(
                points.windows(2).all(|pair| pair[0].x <= pair[1].x),
                "{} {role:?}: time runs on",
                preset.id
            );
            for point in points {
                let (time, speed) = axes.read(point);
                let want = match role {
                    // Energy: the speed says the distance, and the distance says the time.
                    Role::Relative => {
                        let distance = flyby.seen_from_planet(time).0.km.length();
                        let slack = 1e-5 * (time.abs() + own.periapsis / own.v_infinity);
                        assert!(
                            (own.time(distance) - time.abs()).abs() < slack,
                            "{}: {time}",
                            preset.id
                        );
                        own.speed(distance)
                    }
                    _ => flyby.seen_from_sun(time).1.speed(),
                };
                assert!(
                    (speed - want).abs() < 1e-6 * want.max(1.0),
                    "{} {role:?}: {speed}, {want} at {time}",
                    preset.id
                );
            }
        }
    }
}

#[test]
fn relative_to_the_planet_the_speed_comes_back_to_where_it_began() {
    for preset in PRESETS
        .iter()
        .filter(|preset| !Own::preset(preset).strikes())
    {
        let picture = record(&mut sandbox(preset.text, Moment::Telling));
        let points = curve(&picture, Role::Relative);
        let middle = Axes::of(&picture).zero.x;
        for (a, b) in points.iter().zip(points.iter().rev()) {
            assert!(
                (a.y - b.y).abs() < 1e-6 && (a.x + b.x - 2.0 * middle).abs() < 1e-6,
                "{}: {a}, {b}",
                preset.id
            );
        }
        let top = points
            .iter()
            .min_by(|a, b| a.y.total_cmp(&b.y))
            .expect("points");
        assert!(
            (top.x - middle).abs() < 1e-6,
            "{}: the top is at periapsis",
            preset.id
        );
    }
}

#[test]
fn round_the_sun_it_ends_higher_after_a_gain_and_lower_after_a_loss() {
    for (id, sign) in [
        ("gain", 1.0),
        ("leaves", 1.0),
        ("loss", -1.0),
        ("sunward", -1.0),
    ] {
        let points = curve(
            &record(&mut sandbox(preset(id).text, Moment::Telling)),
            Role::RoundSun,
        );
        // Up is y less; the width of some six strokes is plain to see.
        let rise = points[0].y - points[points.len() - 1].y;
        assert!(sign * rise > 15.0, "{id}: rises by {rise:.0}");
    }
}

#[test]
fn dashes_end_at_periapsis_and_a_strike_has_nothing_after() {
    for preset in &PRESETS {
        let own = Own::preset(preset);
        let picture = record(&mut sandbox(preset.text, Moment::Telling));
        let middle = Axes::of(&picture).zero.x;
        for role in [Role::Relative, Role::RoundSun] {
            let (before, after) = (
                paths(&picture, role, Dash::Dashed),
                paths(&picture, role, Dash::Solid),
            );
            assert_eq!(
                (before.len(), after.len()),
                (1, usize::from(!own.strikes())),
                "{} {role:?}",
                preset.id
            );
            assert!(
                before[0]
                    .points
                    .iter()
                    .all(|point| point.x <= middle + 1e-6),
                "{} {role:?}",
                preset.id
            );
            assert!(
                after
                    .iter()
                    .all(|path| path.points.iter().all(|point| point.x >= middle - 1e-6))
            );
        }
    }
}

#[test]
fn the_cursor_stands_at_the_moment_with_a_dot_on_each_curve() {
    for preset in &PRESETS {
        for moment in Moment::ALL {
            let mut sandbox = sandbox(preset.text, moment);
            let (time, picture) = (sandbox.time_s().expect("a moment"), record(&mut sandbox));
            let axes = Axes::of(&picture);
            let cursor = paths(&picture, Role::Ink, Dash::Solid);
            let at = axes.read(cursor[0].points[0]).0;
            let flyby = sandbox.solved().expect("a pass").flyby;
            let slack = 1e-6 * (1.0 + time.abs());
            assert!(
                cursor.len() == 1 && (at - time).abs() < slack,
                "{} {moment:?}: {at}, {time}",
                preset.id
            );
            let dots = discs(&picture);
            let is = |disc: &Disc, role| {
                disc.fill == Some(role) || disc.edge.is_some_and(|edge| edge.role == role)
            };
            for (role, fill, speed) in [
                (
                    Role::Relative,
                    Role::Relative,
                    flyby.seen_from_planet(time).1.speed(),
                ),
                (
                    Role::RoundSun,
                    Role::Ground,
                    flyby.seen_from_sun(time).1.speed(),
                ),
            ] {
                let found: Vec<_> = dots.iter().filter(|disc| is(disc, role)).collect();
                assert!(
                    found.len() == 1 && found[0].fill == Some(fill),
                    "{} {moment:?} {role:?}",
                    preset.id
                );
                let (dot_time, dot_speed) = axes.read(found[0].centre);
                assert!(
                    (dot_time - time).abs() < slack && (dot_speed - speed).abs() < 1e-6,
                    "{} {role:?}",
                    preset.id
                );
            }
        }
    }
}

#[test]
fn each_curve_has_its_own_name_beside_it() {
    for preset in &PRESETS {
        let picture = record(&mut sandbox(preset.text, Moment::Telling));
        let relative = format!("relative to {}", Own::preset(preset).planet.name);
        for (words, role) in [
            (&*relative, Role::Relative),
            ("round the Sun", Role::RoundSun),
        ] {
            let label = label(&picture, words);
            let away = distance_to_path(&Box2::new(label.bounds()), &curve(&picture, role));
            assert_eq!(label.role, role, "{}: {words}", preset.id);
            assert!(
                away < 1.5 * label.size,
                "{}: {words} is {away:.0} away",
                preset.id
            );
        }
    }
}
