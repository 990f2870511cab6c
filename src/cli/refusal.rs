//! Each way in which the command line asks for something impossible. Exit status 2.

use std::fmt;
use std::path::PathBuf;

use super::Moment;
use crate::physics::FlybyError;
use crate::report::{NoAim, SweepError, refusal};
use crate::scenario::{BadWish, Notice};

/// Why the command does not do what it was asked for. Its `Display` is a sentence; a scenario's is one a line for each
/// part that cannot be used.
#[derive(Debug, PartialEq)]
pub enum Refusal {
    /// Parts of the scenario text cannot be used.
    Scenario(Vec<Notice>),
    /// The settings, each allowed by itself, have no flyby together.
    NoFlyby(FlybyError),
    /// There is no such goal, or it makes no sense for the planet that is passed.
    Goal(BadWish),
    /// A line of standard input is not text.
    NotText,
    /// The moment lies outside what is drawn of the pass.
    NotDrawn {
        /// The moment asked for.
        asked: Moment,
        /// The first moment drawn, in the same unit, rounded up.
        from: Moment,
        /// The last moment drawn, in the same unit, rounded down.
        to: Moment,
    },
    /// An option that the picture asked for has no use for.
    NotOfPart {
        /// The option.
        option: &'static str,
        /// The parts that it goes with.
        parts: &'static str,
    },
    /// The folder for the site holds something that is not ours.
    OutNotOurs(PathBuf),
    /// The folder for the site lies inside the page's own folder.
    OutInsidePage(PathBuf),
    /// The folder for a file is not there.
    NoFolder(PathBuf),
    /// The name for a file is a folder's.
    OutIsFolder(PathBuf),
}

impl From<FlybyError> for Refusal {
    fn from(error: FlybyError) -> Self {
        Self::NoFlyby(error)
    }
}

impl From<SweepError> for Refusal {
    fn from(error: SweepError) -> Self {
        match error {
            SweepError::Setting(notice) => Self::Scenario(vec![notice]),
            SweepError::Flyby(error) => Self::NoFlyby(error),
        }
    }
}

impl From<NoAim> for Refusal {
    fn from(error: NoAim) -> Self {
        match error {
            NoAim::NoWish => Self::Goal(BadWish::Unknown(String::new())),
            NoAim::Wish(bad) => Self::Goal(bad),
            NoAim::Flyby(error) => Self::NoFlyby(error),
        }
    }
}

impl fmt::Display for Refusal {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Scenario(notices) => {
                let lines: Vec<_> = notices.iter().map(Notice::to_string).collect();
                f.write_str(&lines.join("\n"))
            }
            Self::NoFlyby(error) => f.write_str(&refusal(error)),
            Self::Goal(bad) => bad.fmt(f),
            Self::NotText => {
                f.write_str("the line is not UTF-8 text: try saving the texts as UTF-8.")
            }
            Self::NotDrawn { asked, from, to } => {
                let nearest = if asked.seconds() < from.seconds() {
                    from
                } else {
                    to
                };
                write!(
                    f,
                    "the time {asked} is outside what is drawn of this pass, which is from {from} to {to}: try \
                     `--time {nearest}`."
                )
            }
            Self::NotOfPart { option, parts } => write!(
                f,
                "`{option}` goes with {parts} only: leave it out, or choose another `--part`."
            ),
            Self::OutNotOurs(path) => write!(
                f,
                "{} is not empty and holds no earlier build of this site: name a new or an empty folder with `--out`.",
                path.display()
            ),
            Self::OutInsidePage(path) => write!(
                f,
                "{} lies inside the page's own folder, which the site is copied from: name a folder outside it with \
                 `--out`.",
                path.display()
            ),
            Self::NoFolder(path) => write!(
                f,
                "there is no folder {}: make it first, or name a file in another folder with `--out`.",
                path.display()
            ),
            Self::OutIsFolder(path) => write!(
                f,
                "{} is a folder: name a file in it with `--out`.",
                path.display()
            ),
        }
    }
}
