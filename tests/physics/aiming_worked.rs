//! Published swing-bys, reached by aiming for what came of them.

use two_frames::physics::units::RADIANS_PER_DEGREE;
use two_frames::physics::{Encounter, Finding, Free, Goal, Search};

use crate::common::{encounter, near, printed, solve};
use crate::worked::planet;

/// Aims with the aim point in the orbit plane, from a start that has nothing to do with the answer.
#[track_caller]
fn aim(start: Encounter, goal: Goal) -> Encounter {
    let search = Search {
        encounter: start,
        goal,
        free: Free::AimPoint,
        in_plane: true,
        farthest_km: 1e8,
    };
    match search.run() {
        Ok(Finding::Met(found)) => found,
        other => panic!("{other:?} for {search:?}"),
    }
}

#[test]
fn the_jupiter_swing_by_is_found_from_its_speeds() {
    // Source: R. Braeunig, *Rocket and Space Technology*, problem 5.8. S
    let (sin, cos) = ((39.2 - 2.40) * RADIANS_PER_DEGREE).sin_cos();
    let (outward, forward) = (9.470 * sin, 9.470 * cos - 12.740);
    let (alpha, v) = (outward.atan2(forward).to_degrees(), outward.hypot(forward));
    let start = encounter(planet(1.266_86e8, 71_492.0, 12.740), v, alpha, 1e6);
    let found = aim(start, Goal::SpeedChange(19.698 - 9.470));
    let flyby = solve(&found);
    // The speed after to 0.0005 km/s, and what the book's rounded steps leave of it (19.6973 without them, see the worked
    // example). By the speed's slope with the turn, v∞ V sin(angle between)/speed = 7.667 · 12.74 · sin 31.3° / 19.7 =
    // 2.58 km/s per rad, 0.0007 km/s are 0.00027 rad; and db/dδ = (a² + b²)/(2 a) = 1.81e6 km per rad: 500 km, and
    // the book's own rounding of b is worth 154 km.
    printed(
        "impact parameter",
        flyby.impact_parameter_km,
        "1777900",
        500.0 + 154.0,
    );
    // de = −(e √(e² − 1)/2) dδ = 0.53 · 0.00027.
    printed("eccentricity", flyby.eccentricity, "1.2963", 0.000_2);
    // The turn from the rounded eccentricity is 0.0054° off by itself.
    let carried = 0.000_27_f64.to_degrees() + 0.0054;
    printed("turn", flyby.turn_rad.to_degrees(), "100.96", carried);
    // Behind Jupiter: it gains.
    assert!(flyby.aim_plane.direction(found.aim_rad).y < 0.0);

    // By the turn that the book gives to 0.005°: 1.81e6 km · 0.005° = 158 km, and that of its rounded steps as before.
    let turned = solve(&aim(start, Goal::Turn(100.96 * RADIANS_PER_DEGREE)));
    printed(
        "impact parameter",
        turned.impact_parameter_km,
        "1777900",
        158.0 + 154.0,
    );
    printed("eccentricity", turned.eccentricity, "1.2963", 0.000_05);
}

/// A pass of Curtis' Problem 8.12 that is not the answer, and the book's orbit radius of Jupiter over the core's.
fn curtis() -> (Encounter, f64) {
    let (sun, earth_orbit, jupiter_orbit) = (1.327e11_f64, 149.6e6, 778.6e6);
    let speed = (sun / jupiter_orbit).sqrt();
    let at_aphelion =
        (2.0 * sun * earth_orbit / (jupiter_orbit * (earth_orbit + jupiter_orbit))).sqrt();
    let jupiter = planet(1.266_86e8, 71_490.0, speed);
    let start = encounter(jupiter, speed - at_aphelion, 180.0, 1e6);
    (start, jupiter_orbit / jupiter.orbit_km)
}

#[test]
fn the_altitude_after_a_hohmann_arrival_is_found_from_the_orbit_after() {
    // Source: Curtis, 2nd ed., Problem 8.12, {Δv 10.6 km/s, a = 4.79e9 km, e = 0.8453}, read on a homework page. S
    let (start, scale) = curtis();
    let altitude = |pass: &Encounter| pass.periapsis_km - 71_490.0;
    // How far the answer's own rounding moves the altitude: aimed for once more, for a value at the end of it.
    let (a, e) = (4.79e9 / scale, 0.8453);
    let goals = [
        // a to 0.005e9 and e to 0.00005 are worth 0.1 % of the aphelion and of the perihelion.
        (
            "aphelion",
            Goal::Aphelion(a * (1.0 + e)),
            Goal::Aphelion(a * (1.0 + e) * 1.001_1),
        ),
        (
            "perihelion",
            Goal::Perihelion(a * (1.0 - e)),
            Goal::Perihelion(a * (1.0 - e) * 1.001_4),
        ),
        // Source: own recomputation with numpy, no book: 7.412 to 17.697 km/s, each to 0.0005.
        (
            "speed",
            Goal::SpeedChange(17.697 - 7.412),
            Goal::SpeedChange(17.698 - 7.412),
        ),
    ];
    for (what, goal, rounded) in goals {
        let found = aim(start, goal);
        let other = aim(start, rounded);
        let carried = (altitude(&other) - altitude(&found)).abs();
        // The rounding of the answers leaves a few per cent of the altitude at most, else the check would say nothing.
        assert!(carried < 10_000.0, "{what}: {carried} km");
        near(what, altitude(&found), 200_000.0, carried);
        // On the sunlit side, as the problem has it, or its mirror image: head-on both sides do the same to these three.
        let flyby = solve(&found);
        printed("size of Δv", flyby.velocity_change.length(), "10.6", 0.0);
        let e_after = flyby.orbit_after.eccentricity;
        let carried = (solve(&other).orbit_after.eccentricity - e_after).abs();
        printed("e after", e_after, "0.8453", carried);
    }
}
