//! How sensitive an outcome is to the aim: against the turn's own derivative and against solved passes beside it.

use fastrand::Rng;
use two_frames::physics::{Encounter, Flyby, Goal, Measure};

use crate::aiming_sets::telling;
use crate::common::{Worst, relative, solve};
use crate::second_route::approach;

#[test]
fn the_slope_of_the_turn_is_its_derivative() {
    // δ = 2 atan(a/b), so dδ/db = −2a/(a² + b²), and nothing across. T
    let mut rng = Rng::with_seed(351);
    let mut worst = Worst::default();
    for _ in 0..5_000 {
        let pass = telling(&mut rng);
        let (plane, flyby) = (approach(&pass), solve(&pass));
        let (a, b) = (plane.semi_major_axis_km, flyby.impact_parameter_km);
        let slope = plane.slope(flyby.aim_point_km, Measure::Turn);
        let want = 2.0 * a / (a * a + b * b);
        worst.note(relative(slope.unwrap_or(f64::NAN), want), || {
            format!("{pass:?}")
        });
    }
    // A central difference over a ten-thousandth of b leaves a third of its square, 1e-8 at most, and 1e-16/1e-4 of rounding.
    worst.within("slope of the turn", 2e-8);
}

fn of_solved(measure: Measure, flyby: &Flyby) -> f64 {
    let after = &flyby.orbit_after;
    match measure {
        Measure::SpeedChange => flyby.speed_change_km_s(),
        Measure::EnergyChange => flyby.energy_change_km2_s2,
        Measure::VelocityChange => flyby.velocity_change.length(),
        Measure::Aphelion => after.aphelion_km.unwrap_or(f64::INFINITY),
        Measure::Perihelion => after.perihelion_km,
        Measure::Inclination => after.inclination_rad.expect("a plane"),
        Measure::Turn => flyby.turn_rad,
    }
}

#[test]
fn slopes_are_what_passes_beside_differ_by() {
    let mut rng = Rng::with_seed(352);
    let mut checked = 0;
    for _ in 0..2_000 {
        let pass: Encounter = telling(&mut rng);
        let (plane, flyby) = (approach(&pass), solve(&pass));
        let [t, r] = flyby.aim_point_km;
        for measure in [
            Measure::SpeedChange,
            Measure::EnergyChange,
            Measure::VelocityChange,
            Measure::Perihelion,
            Measure::Aphelion,
            Measure::Inclination,
        ] {
            let at = |t: f64, r: f64| of_solved(measure, &solve(&plane.encounter([t, r])));
            let Some(slope) = plane.slope([t, r], measure) else {
                assert_eq!(measure, Measure::Aphelion, "{pass:?}");
                continue;
            };
            // Along 24 directions, over other steps than the core's: the steepest of them is within cos(7.5°) of the slope.
            let step = 3e-5 * flyby.impact_parameter_km;
            let steepest = (0..24)
                .map(|i| {
                    let (sin, cos) = (f64::from(i) * 15_f64.to_radians()).sin_cos();
                    let (dt, dr) = (step * cos, step * sin);
                    (at(t + dt, r + dr) - at(t - dt, r - dr)) / (2.0 * step)
                })
                .fold(0.0, f64::max);
            // Where the slope nearly vanishes, or the path nearly leaves, the next derivatives take over.
            let scale = of_solved(measure, &flyby).abs() / flyby.impact_parameter_km;
            if slope < 1e-3 * scale || !steepest.is_finite() || scale > 1e9 {
                continue;
            }
            let bent = measure == Measure::Aphelion
                && scale * flyby.impact_parameter_km > 20.0 * pass.planet.orbit_km;
            if bent {
                continue;
            }
            checked += 1;
            assert!(
                steepest <= slope * 1.001 && steepest >= slope * 0.99,
                "{measure:?}: {steepest:e} and {slope:e} at {pass:?}"
            );
        }
    }
    assert!(checked > 4_000, "{checked} checked");
}

#[test]
fn each_goal_is_measured_by_what_it_asks_for() {
    let of = Measure::of_goal;
    assert_eq!(of(Goal::Aphelion(1.0)), Measure::Aphelion);
    assert_eq!(of(Goal::Perihelion(1.0)), Measure::Perihelion);
    assert_eq!(of(Goal::Turn(1.0)), Measure::Turn);
    assert_eq!(of(Goal::MostInclination), Measure::Inclination);
    for goal in [
        Goal::Leave(1.0),
        Goal::SpeedChange(1.0),
        Goal::MostGain,
        Goal::MostLoss,
    ] {
        assert_eq!(of(goal), Measure::SpeedChange);
    }
}
