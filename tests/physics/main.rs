//! The physics against the outside world: published numbers, independent methods, identities and hostile inputs.
//!
//! Every published number has a `Source:` line with a status: R, read in the source itself; S, read in somebody
//! else's transcription of it; M, quoted from memory; T, a theorem that needs no source.

mod accuracy;
mod aim;
mod aim_points;
mod aimed;
mod aiming;
mod aiming_finite;
mod aiming_freedom;
mod aiming_sets;
mod aiming_worked;
mod common;
mod conics;
mod constants;
mod fifty_digits;
mod finite;
mod identities;
mod integrator;
mod kepler;
mod optimum;
mod round_trips;
mod second_route;
mod slopes;
mod strikes;
mod sun_orbits;
mod trade;
mod venus;
mod worked;
