//! Orbits and propagation against worked examples of the textbooks, and Lambert answers read backwards: a published
//! pair of velocities says where the first one leads after the given time.

use glam::{DVec3, dvec3};
use two_frames::physics::units::{DEGREES_PER_RADIAN, RADIANS_PER_DEGREE};
use two_frames::physics::{Conic, Elements, State, solve_kepler};

use crate::common::{near, printed};

/// Curtis's GM of the Earth.
const CURTIS_EARTH: f64 = 398_600.0;
/// The GM of the Earth of Vallado's and Der's examples.
const VALLADO_EARTH: f64 = 398_600.441_8;

/// The state `dt` seconds after `start`.
fn later(gm: f64, start: State, dt: f64) -> State {
    let (orbit, time) = Conic::from_state(gm, &start).expect("an orbit that misses the focus");
    orbit.state_at(time + dt)
}

#[track_caller]
fn printed_vector(what: &str, got: DVec3, want: [&str; 3], carried: f64) {
    for (axis, value, text) in [
        ("x", got.x, want[0]),
        ("y", got.y, want[1]),
        ("z", got.z, want[2]),
    ] {
        printed(&format!("{what} {axis}"), value, text, carried);
    }
}

#[test]
fn keplers_equation_of_curtis_3_2_and_3_5() {
    // Source: Curtis, 2nd ed., Appendix D pp. 30-32, listings with output. R
    // Ellipse: the solver wants time from the nearest periapsis, so a whole turn comes off and goes on again.
    let e = 0.372_55;
    let alpha = 1.0 - e;
    let mean = 3.602_9 - std::f64::consts::TAU;
    let x = solve_kepler(e, alpha, mean / alpha.powf(1.5)).at.x;
    printed(
        "E",
        x * alpha.sqrt() + std::f64::consts::TAU,
        "3.47942",
        0.0,
    );
    // Hyperbola.
    let e = 2.769_6;
    let x = solve_kepler(e, 1.0 - e, 40.69 / (e - 1.0_f64).powf(1.5))
        .at
        .x;
    printed("F", x * (e - 1.0).sqrt(), "3.46309", 0.0);
}

#[test]
fn the_hyperbola_of_curtis_3_5() {
    // Source: Curtis, 2nd ed., Example 3.5: 300 km altitude at perigee, 15 km/s there. M, but S for the last two numbers
    let perigee = State {
        r: DVec3::X * 6_678.0,
        v: DVec3::Y * 15.0,
    };
    let (orbit, start) = Conic::from_state(CURTIS_EARTH, &perigee).expect("a hyperbola");
    near("time at perigee", start, 0.0, 1e-9);
    printed("e", orbit.eccentricity(), "2.7696", 0.0);
    let state = orbit.state_at_true_anomaly(100.0 * RADIANS_PER_DEGREE);
    printed("radius at 100°", state.r.length(), "48497", 0.0);
    let time = orbit.time_since_periapsis(state.r);
    printed("time from perigee", time, "4141", 0.0);
    // Three hours later, from the printed time; that was rounded to a second, worth 10.5 km/s · 0.5 s = 5 km.
    let later = orbit.state_at(14_941.0);
    let anomaly = later.r.y.atan2(later.r.x) * DEGREES_PER_RADIAN;
    printed("true anomaly", anomaly, "107.78", 0.0);
    printed("radius", later.r.length(), "163180", 5.2);
    printed("speed", later.v.length(), "10.51", 0.0);
}

#[test]
fn universal_anomaly_of_curtis_3_6() {
    // Source: Curtis, 2nd ed., Example 3.6, Appendix D pp. 34-36, listing with output. R
    let (r, radial, a) = (10_000.0, 3.075_2, -19_655.0);
    let speed_squared: f64 = CURTIS_EARTH * (2.0 / r - 1.0 / a);
    let start = State {
        r: DVec3::X * r,
        v: dvec3(radial, (speed_squared - radial * radial).sqrt(), 0.0),
    };
    let (orbit, time) = Conic::from_state(CURTIS_EARTH, &start).expect("a hyperbola");
    // The book's anomaly counts from the start, the core's from perigee and in units of √(perigee distance).
    let (e, q) = (orbit.eccentricity(), orbit.periapsis_km());
    let anomaly = |t: f64| {
        solve_kepler(e, 1.0 - e, t * (CURTIS_EARTH / q).sqrt() / q)
            .at
            .x
            * q.sqrt()
    };
    printed("χ", anomaly(time + 3_600.0) - anomaly(time), "128.511", 0.0);
}

#[test]
fn propagation_of_curtis_3_7_and_vallado_2_4() {
    // Source: Curtis, 2nd ed., Example 3.7, Appendix D pp. 36-38, listing with output. R
    let start = State {
        r: dvec3(7_000.0, -12_124.0, 0.0),
        v: dvec3(2.667_9, 4.621_0, 0.0),
    };
    let end = later(CURTIS_EARTH, start, 3_600.0);
    printed_vector("r", end.r, ["-3297.77", "7413.40", "0"], 0.0);
    printed_vector("v", end.v, ["-8.2976", "-0.964045", "0"], 0.0);

    // Source: Vallado, 4th ed., Example 2-4, pp. 94-95: inputs R, outputs S
    let start = State {
        r: dvec3(1_131.340, -2_282.343, 6_672.423),
        v: dvec3(-5.643_05, 4.303_33, 2.428_79),
    };
    let end = later(VALLADO_EARTH, start, 40.0 * 60.0);
    printed_vector("r", end.r, ["-4219.7527", "4363.0292", "-3958.7666"], 0.0);
    // The last digits of the velocity differ by up to 2.2e-7 from an independent recomputation with scipy as well.
    printed_vector("v", end.v, ["3.689866", "-1.916735", "-6.112511"], 0.0);
}

#[test]
fn elements_of_curtis_5_2() {
    // Source: Curtis, 2nd ed., Appendix D pp. 55-57, listing with output: mu 398 600, 3600 s between the points. R
    let start = State {
        r: dvec3(5_000.0, 10_000.0, 2_100.0),
        v: dvec3(-5.992_49, 1.925_36, 3.245_64),
    };
    let (orbit, time) = Conic::from_state(CURTIS_EARTH, &start).expect("an ellipse");
    let elements = orbit.elements_at(start.r);
    // The listing prints velocity to 5e-6 km/s, one part in 1.4e6. That carries into e by 2 parts, into angles by 2e-6 rad
    // over e (1e-4° for the node, 3e-4° for perigee and anomaly), into a and the period by 2 a v² / mu parts (2.4 and 3.6).
    printed("e", elements.eccentricity, "0.433488", 1.5e-6);
    printed(
        "inclination",
        elements.inclination * DEGREES_PER_RADIAN,
        "30.191",
        1e-4,
    );
    printed("node", elements.node * DEGREES_PER_RADIAN, "44.6002", 1e-4);
    printed(
        "perigee",
        elements.argument * DEGREES_PER_RADIAN,
        "30.7062",
        3e-4,
    );
    let anomaly = elements.true_anomaly * DEGREES_PER_RADIAN;
    printed("true anomaly", anomaly + 360.0, "350.83", 3e-4);
    let a = elements.periapsis_km / (1.0 - elements.eccentricity);
    printed("a", a, "20002.9", 0.05);
    printed("perigee distance", elements.periapsis_km, "11331.9", 0.02);
    printed(
        "period",
        orbit.period_s().expect("an ellipse"),
        "28154.7",
        0.1,
    );
    let end = orbit.state_at(time + 3_600.0);
    let anomaly = orbit.elements_at(end.r).true_anomaly * DEGREES_PER_RADIAN;
    printed("true anomaly an hour later", anomaly, "91.1223", 3e-4);
    // 5e-6 km/s over 3600 s, stretched twice by the orbit's shear.
    printed_vector("r", end.r, ["-14600", "2500", "7000"], 0.036);
    printed_vector("v", end.v, ["-3.31246", "-4.19662", "-0.385288"], 1e-5);
}

/// A published Lambert answer: start, end, time and the two velocities.
struct Arc {
    gm: f64,
    time: f64,
    from: [f64; 3],
    to: [f64; 3],
    v1: [f64; 3],
    v2: [f64; 3],
    /// Half a unit of the last printed place of the velocity, times what a change of it grows to by the end.
    tolerance_r: f64,
    tolerance_v: f64,
}

fn follow(name: &str, arc: &Arc) {
    let start = State {
        r: DVec3::from_array(arc.from),
        v: DVec3::from_array(arc.v1),
    };
    let end = later(arc.gm, start, arc.time);
    let (r, v) = (DVec3::from_array(arc.to), DVec3::from_array(arc.v2));
    near(
        &format!("{name}: end"),
        (end.r - r).length(),
        0.0,
        arc.tolerance_r,
    );
    near(
        &format!("{name}: velocity there"),
        (end.v - v).length(),
        0.0,
        arc.tolerance_v,
    );
}

#[test]
fn lambert_answers_of_bate_mueller_and_white_lead_where_they_should() {
    // Source: Bate, Mueller & White, the Gauss problem's example, mu 1, as asserted by an independent program's test. S
    // 12 decimals: 5e-13 and a stretch of 10; both ways round the Earth (an ellipse and, long way, a hyperbola).
    let arc = Arc {
        gm: 1.0,
        time: 13.0 / 13.446_864_57,
        from: [0.5, 0.6, 0.7],
        to: [0.0, 1.0, 0.0],
        v1: [-0.361_637_807_808, 0.769_726_759_919, -0.506_292_930_931],
        v2: [-0.601_846_064_644, -0.022_388_238_631, -0.842_584_490_502],
        tolerance_r: 5e-12,
        tolerance_v: 5e-12,
    };
    follow("short way", &arc);
    let long = Arc {
        v1: [-0.630_541_732_153, -1.113_962_815_608, -0.882_758_425_014],
        v2: [0.178_656_368_512, 1.554_463_160_990, 0.250_118_915_917],
        ..arc
    };
    // This one swings past the focus at a tenth of the distance: a stretch of 100.
    follow(
        "long way",
        &Arc {
            tolerance_r: 5e-11,
            tolerance_v: 5e-10,
            ..long
        },
    );
}

#[test]
fn lambert_answers_of_der_lead_where_they_should() {
    // Source: G. Der, "The Superior Lambert Algorithm" (AMOS 2011), read in the test suite of a numerical library. S
    // The velocity is printed to 5e-9 km/s; over 1618.5 s that is 8e-6 km, and the three axes and the shear make it 3e-5.
    let one = Arc {
        gm: VALLADO_EARTH,
        time: 1_618.5,
        from: [2_249.171_26, 1_898.007_1, 5_639.599_193],
        to: [1_744.495_443, -4_601.556_054, 4_043.864_391],
        v1: [-2.095_728_09, 3.926_021_96, -4.945_168_1],
        v2: [2.463_096_13, 0.844_901_97, 6.108_908_63],
        tolerance_r: 5e-5,
        tolerance_v: 5e-8,
    };
    follow("one, forward", &one);
    let back = Arc {
        v1: [1.943_121_82, -4.353_000_15, 4.546_304_39],
        v2: [-2.388_855_63, -1.425_196_47, -5.957_722_25],
        ..one
    };
    follow("one, backward", &back);
    // Ten hours, 36 000 s · 5e-9 = 2e-4 km, times the shear of the orbit round to the fast side, up to 20.
    let two = Arc {
        gm: VALLADO_EARTH,
        time: 36_000.0,
        from: [22_592.145_603, -1_599.915_239, -19_783.950_506],
        to: [1_922.067_697, 4_054.157_051, -8_925.727_465],
        v1: [2.000_652_7, 0.387_688_62, -2.666_947_76],
        v2: [-3.792_466_19, -1.777_076_41, 6.856_814_39],
        tolerance_r: 4e-3,
        tolerance_v: 4e-6,
    };
    follow("two, no whole turn", &two);
    let turn = Arc {
        v1: [0.503_357_70, 0.618_694_08, -1.571_769_04],
        v2: [-4.183_346_26, -1.132_627_27, 6.133_070_91],
        ..two
    };
    follow("two, one whole turn", &turn);
}

#[test]
fn an_orbit_is_the_same_from_elements_and_from_a_state() {
    // The reverse of Curtis 5.2: his elements give his state, to what their 6 digits carry (5e-6 of 11 000 km, of 7 km/s).
    let elements = Elements {
        periapsis_km: 11_331.9,
        eccentricity: 0.433_488,
        inclination: 30.191 * RADIANS_PER_DEGREE,
        node: 44.600_2 * RADIANS_PER_DEGREE,
        argument: 30.706_2 * RADIANS_PER_DEGREE,
        true_anomaly: 350.83 * RADIANS_PER_DEGREE,
    };
    let (orbit, time) = Conic::from_elements(CURTIS_EARTH, &elements);
    let state = orbit.state_at(time);
    near(
        "r",
        (state.r - dvec3(5_000.0, 10_000.0, 2_100.0)).length(),
        0.0,
        1.5,
    );
    let v = dvec3(-5.992_49, 1.925_36, 3.245_64);
    near("v", (state.v - v).length(), 0.0, 1e-3);
}
