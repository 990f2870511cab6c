//! What a person can set: fields with ranges and units, ready-made passes, and the one text form that the page's
//! address, the command and the files share.

mod choice;
mod field;
mod notice;
mod preset;
mod settings;
mod text;
mod wish;
mod words;

pub use choice::{CustomPlanet, PlanetChoice};
pub use field::{Field, Scale, Spec};
pub use notice::Notice;
pub use preset::{PRESETS, Preset};
pub use settings::Scenario;
pub use text::{Reading, print_number};
pub use wish::{BadWish, Most, Wish, WishKind, WishSpec};
