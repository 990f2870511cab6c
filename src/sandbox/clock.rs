//! The clock: which moment is shown, and how time runs while the pass is played.

use super::solved::Solved;
use crate::figure::Track;

/// How the clock's speed depends on where the probe is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PaceLaw {
    /// The clock runs in proportion to the probe's distance from the planet: slower near the planet, where the probe is
    /// fastest and the path bends most. On a hyperbola this is equal steps of the universal anomaly.
    SlowerNear,
    /// The clock runs evenly.
    Even,
}

/// The law and how long the whole pass takes to play.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pace {
    /// The law.
    pub law: PaceLaw,
    /// Seconds that the whole pass takes.
    pub whole_s: f64,
}

/// A change of the clock.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Change {
    /// Run; from the start again if it stands at the end.
    Play,
    /// Stop.
    Pause,
    /// One bead on (or back, when negative).
    Step(f64),
    /// Go to a position, 0 at the beginning and 1 at the end of what is shown.
    Scrub(f64),
    /// Go to a moment, s after periapsis.
    Go(f64),
    /// Go to the moment that tells most.
    Telling,
    /// Seconds of real time have gone by.
    Tick(f64),
    /// Change the pace.
    Pace(Pace),
}

/// The clock.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Clock {
    /// The moment, s after periapsis; `None` is the telling moment of whatever pass is shown.
    time_s: Option<f64>,
    playing: bool,
    pace: Pace,
}

impl Default for Clock {
    fn default() -> Self {
        Self {
            time_s: None,
            playing: false,
            pace: Pace {
                law: PaceLaw::SlowerNear,
                whole_s: 16.0,
            },
        }
    }
}

impl Clock {
    /// The same pace, stopped at the telling moment.
    pub(super) fn rewound(self) -> Self {
        Self {
            pace: self.pace,
            ..Self::default()
        }
    }

    pub(super) fn is_playing(self) -> bool {
        self.playing
    }

    pub(super) fn pace(self) -> Pace {
        self.pace
    }

    /// The moment shown, s after periapsis, within what is drawn.
    pub(super) fn time_s(self, track: &Track) -> f64 {
        track.clamp(self.time_s.unwrap_or(track.telling_s))
    }

    /// Seconds of the pass that one second of playing shows at this moment.
    pub(super) fn rate(self, solved: &Solved) -> f64 {
        let now = self.time_s(&solved.track);
        // A small step both ways is exact enough for a number shown with three digits, at the ends too.
        let step = 1e-3;
        (self.later(solved, now, step) - self.later(solved, now, -step)) / (2.0 * step)
    }

    pub(super) fn change(&mut self, change: Change, solved: &Solved) {
        let track = &solved.track;
        let now = self.time_s(track);
        match change {
            Change::Play => {
                self.playing = true;
                // Whoever has not moved the clock yet wants to see the whole pass.
                if self.time_s.is_none() || now >= track.end_s {
                    self.time_s = Some(-track.half_s);
                }
            }
            Change::Pause => self.playing = false,
            Change::Step(beads) => self.go(now + beads * track.bead_s, track),
            Change::Scrub(position) => self.go(track.time_at(position), track),
            Change::Go(time_s) => self.go(time_s, track),
            Change::Telling => {
                self.time_s = None;
                self.playing = false;
            }
            Change::Tick(seconds) if self.playing => {
                let later = self.later(solved, now, seconds);
                self.time_s = Some(track.clamp(later));
                self.playing = later < track.end_s;
            }
            Change::Tick(_) => {}
            Change::Pace(pace) => self.pace = pace,
        }
    }

    fn go(&mut self, time_s: f64, track: &Track) {
        self.time_s = Some(track.clamp(time_s));
        self.playing = false;
    }

    /// The moment after `seconds` of playing from the moment `now`.
    fn later(self, solved: &Solved, now: f64, seconds: f64) -> f64 {
        let part = 2.0 * seconds / self.pace.whole_s;
        match self.pace.law {
            PaceLaw::Even => now + part * solved.track.half_s,
            PaceLaw::SlowerNear => {
                let hyperbola = solved.flyby.hyperbola();
                let x = hyperbola.scaled_anomaly_at(now) + part * solved.track.half_anomaly;
                hyperbola.time_at_scaled_anomaly(x)
            }
        }
    }
}
