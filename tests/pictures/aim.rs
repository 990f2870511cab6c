//! The aim plane's picture: colours, lines and marks are where solving the pass aimed there puts them.

use fastrand::Rng;
use glam::{DVec2, dvec2};
use two_frames::figure::{
    ColorMap, Dash, Mark, Picture, Raster, Role, aim_place, aim_point_at, aim_square,
};
use two_frames::physics::units::GM_SUN;
use two_frames::physics::{Approach, Flyby, Measure};
use two_frames::sandbox::{AimChange, Input, Sandbox};
use two_frames::scenario::Wish;

use crate::common::{discs, preset};

/// Width and height that leave the map 400 units a side.
pub(crate) const SIZE: DVec2 = dvec2(420.0, 480.0);
const COLUMNS: usize = 64;

pub(crate) const MEASURES: [Measure; 7] = [
    Measure::SpeedChange,
    Measure::EnergyChange,
    Measure::VelocityChange,
    Measure::Aphelion,
    Measure::Perihelion,
    Measure::Inclination,
    Measure::Turn,
];

/// A sandbox that may leave the plane, with an outcome on its map and a wish, if one is given.
pub(crate) fn aimed(text: &str, measure: Measure, wish: &str) -> Sandbox {
    let mut sandbox = Sandbox::open(text);
    let wish = match wish {
        "" => AimChange::NoWish,
        wish => AimChange::Wish(Wish::read(wish).expect("a goal")),
    };
    for change in [AimChange::InPlane(false), AimChange::Measure(measure), wish] {
        sandbox
            .apply(Input::Aim(change))
            .expect("a change of the aim");
    }
    sandbox
}

pub(crate) fn picture(sandbox: &mut Sandbox) -> Picture {
    sandbox.aim_picture(SIZE, COLUMNS).expect("a pass")
}

/// The map itself: the first raster; the legend's is another.
fn map(picture: &Picture) -> &Raster {
    let found = picture.marks.iter().find_map(|mark| match mark {
        Mark::Raster(raster) => Some(raster),
        _ => None,
    });
    found.expect("a map")
}

/// The pass aimed at a place of the picture, solved whole; `None` where it strikes.
fn solved_at(sandbox: &mut Sandbox, place: DVec2) -> Option<Flyby> {
    let half = sandbox.aim_window_km().expect("a pass");
    let approach = approach(sandbox);
    let point = aim_point_at(place, half, SIZE);
    let flyby = Flyby::solve(&approach.encounter(point)).ok()?;
    (!flyby.strikes()).then_some(flyby)
}

fn approach(sandbox: &mut Sandbox) -> Approach {
    sandbox.solved().expect("a pass").flyby.approach()
}

/// An outcome of a solved pass, by the flyby's own fields; one over the aphelion, which can be infinitely far.
fn outcome(flyby: &Flyby, measure: Measure) -> f64 {
    match measure {
        Measure::SpeedChange => flyby.sun_velocity_out.speed() - flyby.sun_velocity_in.speed(),
        Measure::EnergyChange => flyby.energy_change_km2_s2,
        Measure::VelocityChange => flyby.velocity_change.length(),
        Measure::Aphelion => -flyby.orbit_after.aphelion_km.map_or(0.0, f64::recip),
        Measure::Perihelion => flyby.orbit_after.perihelion_km,
        Measure::Inclination => flyby.orbit_after.inclination_rad.unwrap_or(0.0),
        Measure::Turn => flyby.turn_rad,
    }
}

#[test]
fn colours_rise_with_the_outcome_and_zero_is_in_the_middle() {
    let mut rng = Rng::with_seed(21);
    for (id, measure) in ["gain", "inner", "out-of-plane"]
        .into_iter()
        .flat_map(|id| MEASURES.map(|measure| (id, measure)))
    {
        let mut sandbox = aimed(preset(id).text, measure, "");
        let picture = picture(&mut sandbox);
        let raster = map(&picture);
        let mut seen = Vec::new();
        for _ in 0..400 {
            let cell = rng.usize(..raster.cells.len());
            let (x, y) = (cell % COLUMNS, cell / COLUMNS);
            let place = raster.place(dvec2(x as f64, y as f64));
            if let Some(flyby) = solved_at(&mut sandbox, place) {
                seen.push((outcome(&flyby, measure), raster.cells[cell]));
            }
        }
        seen.sort_by(|a, b| a.0.total_cmp(&b.0));
        assert!(seen.len() > 200, "{id} {measure:?}");
        for pair in seen.windows(2) {
            assert!(pair[0].1 <= pair[1].1, "{id} {measure:?}: {pair:?}");
        }
        assert!(seen[seen.len() - 1].1 - seen[0].1 > 40, "{id} {measure:?}");
        if matches!(measure, Measure::SpeedChange | Measure::EnergyChange) {
            assert_eq!(raster.map, ColorMap::Vik);
            for (value, cell) in seen {
                // Half a step of the colours either way is no colour at all.
                let middle = (ColorMap::COLORS / 2) as u8;
                assert!(
                    (value > 0.0) == (cell > middle) || cell == middle,
                    "{id}: {value} {cell}"
                );
            }
        } else {
            assert_eq!(raster.map, ColorMap::Batlow);
        }
    }
}

/// The points of lines of a dash and a width, outside the strike circle.
fn on_lines(sandbox: &mut Sandbox, picture: &Picture, dash: Dash, width: f64) -> Vec<Flyby> {
    let letter = SIZE.x / 28.0;
    let mut found = Vec::new();
    for mark in &picture.marks {
        if let Mark::Path(path) = mark
            && path.stroke.role == Role::Ink
            && path.stroke.dash == dash
            && (path.stroke.width - width * letter / 13.0).abs() < 1e-9
            && path.points.len() > 4
        {
            found.extend(
                path.points
                    .iter()
                    .filter_map(|place| solved_at(sandbox, *place)),
            );
        }
    }
    found
}

#[test]
fn lines_lie_where_the_outcomes_are() {
    for (id, wish) in [
        ("gain", "leave=6"),
        ("leaves", "aphelion=30"),
        ("inner", "perihelion=0.5"),
    ] {
        let mut sandbox = aimed(preset(id).text, Measure::Turn, wish);
        let picture = picture(&mut sandbox);
        let planet = sandbox.solved().expect("a pass").flyby.encounter.planet;
        let unit = GM_SUN / planet.orbit_km;
        let unchanged = on_lines(&mut sandbox, &picture, Dash::Solid, 1.4);
        assert!(unchanged.len() > 20, "{id}");
        for flyby in &unchanged {
            assert!(flyby.speed_change_km_s().abs() < 0.02, "{id}");
        }
        // A cell of the lines' grid is 4 units wide; between its corners the energy is nearly linear.
        for flyby in on_lines(&mut sandbox, &picture, Dash::Dashed, 1.6) {
            assert!(flyby.orbit_after.energy_km2_s2.abs() / unit < 0.01, "{id}");
        }
        let met = on_lines(&mut sandbox, &picture, Dash::Solid, 2.8);
        assert!(met.len() > 10, "{id}");
        let goal = sandbox
            .aiming()
            .expect("a goal that makes sense")
            .search
            .goal;
        for flyby in &met {
            let approach = flyby.approach();
            let off = goal.excess(&approach.aimed(flyby.aim_point_km));
            assert!(off.abs() < 0.02, "{id}: {off}");
        }
    }
}

#[test]
fn dotted_lines_just_reach_other_planets_orbits() {
    let mut sandbox = aimed(preset("gain").text, Measure::Turn, "");
    let picture = picture(&mut sandbox);
    let orbits =
        [0.3871, 0.7233, 1.0, 1.5237, 9.5367, 19.1892, 30.0699].map(|au| au * 149_597_870.7);
    let found = on_lines(&mut sandbox, &picture, Dash::Dotted, 1.2);
    assert!(found.len() > 100);
    for flyby in found {
        let orbit = flyby.orbit_after;
        let near = |km: f64, part: f64| orbits.iter().any(|own| (km / own - 1.0).abs() < part);
        let reaches = orbit.aphelion_km.is_some_and(|km| near(km, 0.05));
        assert!(reaches || near(orbit.perihelion_km, 0.02), "{orbit:?}");
    }
}

#[test]
fn marks_are_to_scale() {
    let mut sandbox = aimed(preset("gain").text, Measure::SpeedChange, "");
    let picture = picture(&mut sandbox);
    let half = sandbox.aim_window_km().expect("a pass");
    let (at, side) = aim_square(SIZE);
    let flyby = sandbox.solved().expect("a pass").flyby;
    let centre = at + DVec2::splat(0.5 * side);
    let unit = 0.5 * side / half;
    let radius_of = |fill: Role, centre: DVec2| {
        let all = discs(&picture).into_iter();
        let found =
            all.filter(|disc| disc.fill == Some(fill) && disc.centre.distance(centre) < 1e-9);
        found.map(|disc| disc.radius).fold(0.0, f64::max)
    };
    let near = |got: f64, want: f64| assert!((got - want).abs() < 1e-9 * want, "{got} {want}");
    near(radius_of(Role::Planet, centre), 71_492.0 * unit);
    // b = r √(1 + 2 μ / (r v²)) at the surface.
    let strike = 71_492.0_f64 * (1.0_f64 + 2.0 * 126_686_531.9 / (71_492.0 * 81.0)).sqrt();
    near(radius_of(Role::Ground, centre), strike * unit);
    let aim = aim_place(flyby.aim_point_km, half, SIZE);
    assert!(radius_of(Role::Ink, aim) > 1.0, "a dot at the aim");
    // Periapsis: 8 radii away, seen along the way in at cos(δ/2) of that.
    let periapsis = centre + DVec2::X * (8.0 * 71_492.0 * (0.5 * flyby.turn_rad).cos() * unit);
    assert!(
        radius_of(Role::Ground, periapsis) > 1.0,
        "a ring at periapsis"
    );
    let back = aim_point_at(aim, half, SIZE);
    near(back[0], flyby.aim_point_km[0]);
    // All of it shows: aims as far as 10,000 radii, and at least four strike radii.
    assert!(half >= 4.0 * strike * (1.0 - 1e-9));
    let mut far = aimed("periapsis=9999&aim=-60", Measure::Turn, "");
    let place = far.aim_place(SIZE).expect("a pass");
    assert!(place.cmpgt(at).all() && place.cmplt(at + DVec2::splat(side)).all());
}
