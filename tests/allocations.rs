//! No memory is asked for on the way from an aim point to what becomes of it: a map of many thousand follows a slider.

use std::alloc::{GlobalAlloc, Layout, System};
use std::cell::Cell;
use std::hint::black_box;

use two_frames::physics::{Approach, Body, Encounter, Measure, Planet};

/// The system's allocator, counting how often it is asked on each thread.
struct Counting;

thread_local! {
    static COUNT: Cell<usize> = const { Cell::new(0) };
}

#[allow(
    unsafe_code,
    reason = "an allocator can only be written so; it hands everything on"
)]
// SAFETY: every call goes to the system's allocator unchanged.
unsafe impl GlobalAlloc for Counting {
    unsafe fn alloc(&self, layout: Layout) -> *mut u8 {
        COUNT.set(COUNT.get() + 1);
        unsafe { System.alloc(layout) }
    }

    unsafe fn dealloc(&self, pointer: *mut u8, layout: Layout) {
        unsafe { System.dealloc(pointer, layout) }
    }
}

#[global_allocator]
static ALLOCATOR: Counting = Counting;

fn approach() -> Approach {
    Approach::of(&Encounter {
        planet: Planet::of(Body::Jupiter),
        v_infinity_km_s: 9.0,
        approach_rad: 2.25,
        crank_rad: 0.1,
        periapsis_km: 571_936.0,
        aim_rad: 0.0,
    })
    .expect("an ordinary approach")
}

#[test]
fn outcomes_of_aim_points_allocate_nothing() {
    let plane = approach();
    let before = COUNT.get();
    for i in 0..10_000 {
        let (row, column) = (f64::from(i / 100) - 49.5, f64::from(i % 100) - 49.5);
        let pass = plane.aimed(black_box([row * 5e4, column * 5e4]));
        for measure in [
            Measure::SpeedChange,
            Measure::EnergyChange,
            Measure::VelocityChange,
            Measure::Aphelion,
            Measure::Perihelion,
            Measure::Inclination,
            Measure::Turn,
        ] {
            black_box(measure.of(&pass));
        }
        black_box((
            pass.periapsis_km(),
            pass.side(),
            plane.slope([row, column], Measure::Turn),
        ));
    }
    assert_eq!(COUNT.get() - before, 0);
}

#[test]
fn the_count_counts() {
    let before = COUNT.get();
    black_box(vec![black_box(1_u8)]);
    assert_eq!(COUNT.get() - before, 1);
}
