//! A pass that is aimed too low ends at the surface: when, where and how fast, from conservation of energy and from
//! the time law of a fall.

use glam::DVec3;
use two_frames::physics::{Body, Encounter, Outcome, Planet, Strike};

use crate::common::{Worst, close, encounter, logarithmic, random_encounter, relative, solve};

fn strike(encounter: &Encounter) -> Strike {
    match solve(encounter).outcome {
        Outcome::Strikes(strike) => strike,
        Outcome::Passes => panic!("{encounter:?} passes"),
    }
}

#[test]
fn an_impact_is_on_the_surface_on_the_way_in() {
    let mut rng = fastrand::Rng::with_seed(77);
    let (mut place, mut speed) = (Worst::default(), Worst::default());
    for _ in 0..10_000 {
        let any = random_encounter(&mut rng);
        let radius = any.planet.radius_km;
        let low = Encounter {
            periapsis_km: radius * logarithmic(&mut rng, 0.01, 0.999),
            ..any
        };
        let end = strike(&low);
        let flyby = solve(&low);
        assert!(flyby.strikes() && end.time_s < 0.0, "{low:?}");
        let (r, v) = flyby.seen_from_planet(end.time_s);
        assert!(r.km.dot(v.km_s) < 0.0, "downwards: {low:?}");
        // The time carries a few roundings, and no place on the way in is more than a few times stiffer than that.
        place.note(relative(r.km.length(), radius), || format!("{low:?}"));
        speed.note(relative(v.speed(), end.speed_km_s), || format!("{low:?}"));
        // Energy: v²/2 − μ/R is what it was far away.
        let fall = 2.0 * low.planet.gm / radius + low.v_infinity_km_s.powi(2);
        close("speed of impact", end.speed_km_s, fall.sqrt(), 1e-15);
    }
    place.within("distance at impact against the radius", 1e-14);
    speed.within("speed at impact", 1e-14);
}

#[test]
fn a_nearly_straight_fall_takes_the_time_of_a_radial_one() {
    // A straight fall from R to the centre with energy to spare, in closed form (own integration of dr/√(v∞² + 2μ/r), no
    // source): with a = μ/v∞² and R = a (cosh F − 1), the time is (sinh F − F) a / v∞.
    let mars = Planet::of(Body::Mars);
    let low = encounter(mars, 4.0, 30.0, 1e-6 * mars.radius_km);
    let a = mars.gm / 16.0;
    let f = (1.0 + mars.radius_km / a).acosh();
    let fall = (f.sinh() - f) * a / 4.0;
    // The real path goes round the centre at a millionth of the radius, which costs a few millionths of the time.
    close("time of the fall", -strike(&low).time_s, fall, 1e-5);
}

#[test]
fn grazing_the_surface_passes_and_just_below_strikes() {
    let venus = Planet::of(Body::Venus);
    let at = |periapsis: f64| solve(&encounter(venus, 7.0, 50.0, periapsis));
    assert_eq!(at(venus.radius_km).outcome, Outcome::Passes);
    let below = at(venus.radius_km.next_down());
    assert!(below.strikes());
    // Of the pass that a smaller planet would have given everything is still there.
    let bend = below.velocity_out.km_s.dot(DVec3::Y);
    close(
        "outgoing",
        bend,
        at(venus.radius_km).velocity_out.km_s.y,
        1e-14,
    );
}
