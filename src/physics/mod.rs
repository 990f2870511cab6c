//! The physics: pure functions of f64, nothing of the page, the command or the units that people type.
//!
//! Units are km, s, km/s, km³/s² and radians throughout. Every transcendental goes through `libm`, so that a native
//! test, the command and the browser compute the same bits.

mod aim;
mod aimed;
mod angle;
mod approach;
mod circle;
mod conic;
mod encounter;
mod error;
mod flyby;
mod frame;
mod goal;
mod kepler;
mod locus;
mod measure;
mod outcome;
mod peak;
mod planet;
mod root;
mod search;
mod sun_orbit;
mod sun_path;
pub mod units;
mod universal;

pub use aim::AimPlane;
pub use aimed::Aimed;
pub use angle::sincos;
pub use approach::Approach;
pub use circle::SpeedCircle;
pub use conic::{Conic, Elements, State};
pub use encounter::Encounter;
pub use error::FlybyError;
pub use flyby::Flyby;
pub use frame::{Frame, PlanetFrame, PlanetMotion, Position, SunFrame, Velocity};
pub use goal::{Free, Goal};
pub use kepler::{MAX_STEPS, Root, solve as solve_kepler};
pub use measure::Measure;
pub use outcome::{Outcome, Side, Strike};
pub use peak::peak_between;
pub use planet::{Body, Planet, Zone, ZoneKind};
pub use root::boundary;
pub use search::{Finding, Search};
pub use sun_orbit::SunOrbit;
pub use sun_path::SunPath;
pub use universal::Universal;
