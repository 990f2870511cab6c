//! What may stand on the command line, and its help.

use std::path::PathBuf;

use clap::builder::{PossibleValuesParser, TypedValueParser};
use clap::{Args, Parser, Subcommand, ValueEnum};

use super::help;
use super::moment::Moment;
use super::size::Size;
use super::vary::Vary;
use crate::physics::{Free, Measure};
use crate::report::MeasureWords;

/// Two Frames: one probe passing one moving planet, in the planet's frame and in the Sun's frame at once.
///
/// Without a subcommand it serves the page. For teaching only, not for flying anything.
#[derive(Debug, Parser)]
#[command(
    name = "two-frames",
    version,
    args_conflicts_with_subcommands = true,
    after_help = help::command()
)]
pub struct Arguments {
    /// What to do; none means `serve`.
    #[command(subcommand)]
    pub command: Option<Command>,
    /// How to serve when no subcommand is given.
    #[command(flatten)]
    pub serve: ServeArguments,
}

/// The subcommands.
#[derive(Debug, Subcommand)]
pub enum Command {
    /// Build the core for the browser and serve the page on this computer (the default)
    Serve(ServeArguments),
    /// Build the core for the browser and write the whole static site to a folder
    Build(BuildArguments),
    /// Print all numbers of a pass as JSON, in both frames and for the orbits round the Sun
    #[command(after_help = help::solve())]
    Solve(SolveArguments),
    /// Find the pass that reaches a goal, and print it as JSON
    #[command(after_help = help::aim())]
    Aim(AimArguments),
    /// Draw one picture of a pass as SVG
    #[command(after_help = help::figure())]
    Figure(FigureArguments),
    /// Vary one setting of a pass and print a table as CSV
    #[command(after_help = help::table())]
    Table(TableArguments),
}

/// Arguments of `serve`.
#[derive(Debug, Clone, Copy, Args)]
pub struct ServeArguments {
    /// Port on 127.0.0.1; 0 takes any free one
    #[arg(long, value_name = "NUMBER", default_value_t = 8000, value_parser = port)]
    pub port: u16,
}

/// Arguments of `build`.
#[derive(Debug, Clone, Args)]
pub struct BuildArguments {
    /// Folder for the site: a new one, an empty one, or one that an earlier `build` wrote (its files are replaced)
    #[arg(long, value_name = "DIR")]
    pub out: PathBuf,
}

/// Arguments of `solve`.
#[derive(Debug, Clone, Args)]
pub struct SolveArguments {
    /// Scenario text, as in "planet=saturn&periapsis=4"; "" is the default scenario, - reads one text a line from
    /// standard input
    #[arg(value_name = "TEXT")]
    pub text: String,
}

/// Arguments of `aim`.
#[derive(Debug, Clone, Args)]
pub struct AimArguments {
    /// Scenario text to start from, as in "planet=saturn&v-infinity=6"; "" is the default scenario, - reads one text a
    /// line from standard input
    #[arg(value_name = "TEXT")]
    pub text: String,
    /// The goal, as in aphelion=9.5 or most=gain
    #[arg(long = "for", value_name = "GOAL")]
    pub goal: String,
    /// What may change to reach it; everything else stays as the text has it
    #[arg(long, value_enum, default_value = "aim-point")]
    pub free: Freedom,
}

/// What may change to reach a goal.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub enum Freedom {
    /// The periapsis alone
    Periapsis,
    /// The aim point: periapsis and aim angle
    AimPoint,
    /// The aim point, and the approach angle by as little as it must change, in whole degrees where they do
    Approach,
}

impl From<Freedom> for Free {
    fn from(freedom: Freedom) -> Self {
        match freedom {
            Freedom::Periapsis => Self::Periapsis,
            Freedom::AimPoint => Self::AimPoint,
            Freedom::Approach => Self::Approach,
        }
    }
}

/// Arguments of `figure`.
#[derive(Debug, Clone, Args)]
pub struct FigureArguments {
    /// Scenario text, as in "planet=saturn&periapsis=4"; "" is the default scenario
    #[arg(value_name = "TEXT")]
    pub text: String,
    /// Which picture
    #[arg(long, value_enum)]
    pub part: Part,
    /// The outcome that the aim plane or the chart shows
    #[arg(long, value_name = "OUTCOME", value_parser = outcome())]
    pub show: Option<Measure>,
    /// The goal that the aim plane shows, as in aphelion=9.5; `two-frames aim --help` lists all
    #[arg(long = "for", value_name = "GOAL")]
    pub goal: Option<String>,
    /// The setting that the chart shows it against
    #[arg(long, value_enum)]
    pub against: Option<Against>,
    /// The moment to show: time after periapsis, negative before it, with its unit: s, min, h or d, as in -1.5d. Without
    /// it, the moment that the page opens with: the probe on its way out, three times as far as at periapsis (on its
    /// way in, two planet radii from the centre, if it strikes)
    #[arg(long, value_name = "TIME", allow_hyphen_values = true)]
    pub time: Option<Moment>,
    /// From where a stage is seen; without it, from north. The diagram and the record have no view
    #[arg(long, value_enum)]
    pub look: Option<Eye>,
    /// Width and height of the picture in CSS pixels, each from 240 to 4096
    #[arg(long, value_name = "WIDTHxHEIGHT", default_value = "640x640")]
    pub size: Size,
    /// Colours for a light or a dark ground
    #[arg(long, value_enum, default_value = "light")]
    pub theme: Ground,
    /// The SVG file to write; without it, or with -, the picture goes to standard output
    #[arg(long, value_name = "FILE")]
    pub out: Option<PathBuf>,
}

/// The pictures.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub enum Part {
    /// The pass as the planet sees it
    PlanetFrame,
    /// The pass as the Sun sees it
    SunFrame,
    /// The velocity diagram that joins the two
    Diagram,
    /// Speed against time in both frames
    Record,
    /// An outcome (--show) against a setting (--against), with the best there is
    Outcome,
    /// Where the probe is aimed, with an outcome (--show) as colours and a goal (--for) as a line
    AimPlane,
}

/// The settings that an outcome can be charted against.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub enum Against {
    /// The closest distance
    Periapsis,
    /// The approach angle
    Approach,
    /// The speed relative to the planet, far away
    VInfinity,
}

/// Where the eye stands that sees a stage.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub enum Eye {
    /// North of the orbit plane: the planet's motion is up, the Sun to the left
    North,
    /// Behind the planet, looking along its motion: north is up, the Sun to the left
    Behind,
    /// Outside the planet's orbit, looking towards the Sun: north is up, the planet's motion to the right
    Side,
}

/// The ground that a picture stands on.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub enum Ground {
    /// Dark marks on a light ground
    Light,
    /// Light marks on a dark ground
    Dark,
}

/// Arguments of `table`.
#[derive(Debug, Clone, Args)]
pub struct TableArguments {
    /// Scenario text, as in "planet=saturn&v-infinity=6"; "" is the default scenario
    #[arg(value_name = "TEXT")]
    pub text: String,
    /// The number to vary, with its first and last value, in the unit that it has in the scenario text
    #[arg(long, value_name = "KEY=FROM..TO", allow_hyphen_values = true)]
    pub vary: Vary,
    /// How many steps from the first value to the last, 1 to 100000; the table has one row more
    #[arg(long, value_name = "NUMBER", default_value_t = 100, value_parser = steps)]
    pub steps: u32,
    /// The CSV file to write; without it, or with -, the table goes to standard output
    #[arg(long, value_name = "FILE")]
    pub out: Option<PathBuf>,
}

fn port(text: &str) -> Result<u16, &'static str> {
    let port = text.parse();
    port.map_err(|_| "a port is a whole number from 0 to 65535; try 8000")
}

/// Reads an outcome by its key.
fn outcome() -> impl TypedValueParser<Value = Measure> {
    let keys = PossibleValuesParser::new(MeasureWords::ALL.map(|words| words.key));
    keys.try_map(|key| MeasureWords::from_key(&key).ok_or("no such outcome"))
}

fn steps(text: &str) -> Result<u32, &'static str> {
    let steps = text.parse().ok();
    steps
        .filter(|steps| (1..=100_000).contains(steps))
        .ok_or("the number of steps is a whole number from 1 to 100000; try 200")
}

#[cfg(test)]
mod tests {
    use super::*;
    use clap::CommandFactory as _;

    #[test]
    fn the_definition_is_consistent() {
        Arguments::command().debug_assert();
    }

    #[test]
    fn no_subcommand_serves_on_port_8000() {
        let arguments = Arguments::try_parse_from(["two-frames"]).expect("no argument is needed");
        assert!(arguments.command.is_none());
        assert_eq!(arguments.serve.port, 8000);
    }

    #[test]
    fn the_port_may_follow_the_subcommand_or_stand_alone() {
        let alone =
            Arguments::try_parse_from(["two-frames", "--port", "9000"]).expect("a port alone");
        assert_eq!(alone.serve.port, 9000);
        let after = Arguments::try_parse_from(["two-frames", "serve", "--port", "9001"])
            .expect("a port after serve");
        let Some(Command::Serve(serve)) = after.command else {
            panic!("serve was asked for, got {after:?}")
        };
        assert_eq!(serve.port, 9001);
    }

    #[test]
    fn a_port_out_of_range_is_refused() {
        assert!(Arguments::try_parse_from(["two-frames", "--port", "70000"]).is_err());
    }
}
