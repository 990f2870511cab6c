//! Ready-made passes, each with an invented probe, and two sentences: what to look at, and why it happens.

use super::settings::Scenario;
use super::wish::{Most, Wish, WishKind};
use crate::physics::{Body, Measure};

/// A ready-made pass.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Preset {
    /// A short name for the page's list.
    pub id: &'static str,
    /// What it shows, in a few words.
    pub title: &'static str,
    /// The invented probe and its errand.
    pub probe: &'static str,
    /// The scenario text.
    pub text: &'static str,
    /// What to look at.
    pub look: &'static str,
    /// Why it happens.
    pub why: &'static str,
    /// What may be aimed for here, if anything.
    pub wish: Option<Wish>,
    /// The outcome that the aim plane and the chart show.
    pub measure: Measure,
}

impl Preset {
    /// The preset's scenario.
    pub fn scenario(&self) -> Scenario {
        Scenario::read(self.text).scenario
    }

    /// The preset with this scenario, if there is one.
    pub fn of(scenario: &Scenario) -> Option<&'static Self> {
        static ALL: [Preset; PRESETS.len()] = PRESETS;
        ALL.get(Self::index_of(scenario)?)
    }

    /// The place in [`PRESETS`] of the one with this scenario, if there is one.
    pub fn index_of(scenario: &Scenario) -> Option<usize> {
        let text = scenario.text();
        TEXTS.iter().position(|(_, own)| *own == text)
    }

    /// The place of the one with this id.
    pub fn index_of_id(id: &str) -> Option<usize> {
        TEXTS.iter().position(|(own, _)| *own == id)
    }

    /// The id and the scenario text of the one at this place.
    pub fn at(index: usize) -> Option<(&'static str, &'static str)> {
        TEXTS.get(index).copied()
    }

    /// What the one at this place aims for, and the outcome that it shows.
    pub fn aims_at(index: usize) -> Option<(Option<Wish>, Measure)> {
        AIMS.get(index).copied()
    }
}

/// Id and scenario text of each: all that the page's core needs. The words are in `index.html`, and would be in the
/// core's download too if it read them from [`PRESETS`].
static TEXTS: [(&str, &str); PRESETS.len()] = {
    let mut texts = [("", ""); PRESETS.len()];
    let mut i = 0;
    while i < texts.len() {
        texts[i] = (PRESETS[i].id, PRESETS[i].text);
        i += 1;
    }
    texts
};

/// What each aims for, and the outcome that it shows.
static AIMS: [(Option<Wish>, Measure); PRESETS.len()] = {
    let mut aims = [(None, Measure::Turn); PRESETS.len()];
    let mut i = 0;
    while i < aims.len() {
        aims[i] = (PRESETS[i].wish, PRESETS[i].measure);
        i += 1;
    }
    aims
};

/// All of them; the first is the one that the page opens with.
pub const PRESETS: [Preset; 11] = [
    Preset {
        id: "gain",
        title: "A gain at Jupiter",
        probe: "Tern, an invented comet chaser,",
        text: "v=1&planet=jupiter&v-infinity=9&approach=129&periapsis=8&aim=0",
        look: "Compare the two blue arrows of the velocity diagram, then the two green ones: the blue ones are equally long, \
               the green ones are not.",
        why: "Tern passes behind Jupiter, so the pull turns its path towards Jupiter's own motion, where the same speed adds more \
              to it.",
        wish: Some(Wish::Reach(Body::Saturn)),
        measure: Measure::SpeedChange,
    },
    Preset {
        id: "loss",
        title: "The same approach, a loss",
        probe: "Tern, an invented comet chaser,",
        text: "v=1&planet=jupiter&v-infinity=9&approach=129&periapsis=8&aim=180",
        look: "Watch the speed record: the blue hump is the same as for the gain, and the green curve now ends lower than it \
               began.",
        why: "Tern passes on Jupiter's other side, only just ahead of it, so the pull is nearly sideways and a little backward.",
        wish: Some(Wish::Most(Most::Loss)),
        measure: Measure::SpeedChange,
    },
    Preset {
        id: "leaves",
        title: "Out of the solar system",
        probe: "Fulmar, an invented long-distance scout,",
        text: "v=1&planet=saturn&v-infinity=8&approach=100&periapsis=3&aim=0",
        look: "Look at the farthest distance from the Sun: after the pass there is none.",
        why: "Saturn turns the path along its own motion, where the two speeds add up to more than the Sun can hold.",
        wish: Some(Wish::Value(WishKind::Leave, 5.0)),
        measure: Measure::Aphelion,
    },
    Preset {
        id: "sunward",
        title: "Down towards the Sun",
        probe: "Petrel, an invented solar explorer,",
        text: "v=1&planet=jupiter&v-infinity=12&approach=102&periapsis=8&aim=180",
        look: "Look at the green arrow after the pass in the velocity diagram: it has almost vanished, and the nearest \
               distance to the Sun with it.",
        why: "The relative velocity ends up nearly opposite to Jupiter's and nearly as large, so little is left of their sum.",
        wish: Some(Wish::Most(Most::Loss)),
        measure: Measure::Perihelion,
    },
    Preset {
        id: "out-of-plane",
        title: "Over the Sun's poles",
        probe: "Plover, an invented observer of the Sun's poles,",
        text: "v=1&planet=jupiter&v-infinity=15&approach=110&periapsis=6&aim=145",
        look: "Watch the tilt of the orbit in the table go from 0° to 87°: the stages show from behind Jupiter how it comes in \
               level and leaves steeply.",
        why: "Plover passes ahead of Jupiter and under its south, so the pull takes nearly all of its motion along with Jupiter \
              and lifts it northwards: what is left carries it high over the Sun.",
        wish: None,
        measure: Measure::Inclination,
    },
    Preset {
        id: "not-the-closest",
        title: "Closer is not better",
        probe: "Dunlin, an invented asteroid mapper,",
        text: "v=1&planet=jupiter&v-infinity=5.64&approach=60&periapsis=55.7&aim=0",
        look: "Move the periapsis down to 1: the gain shrinks to nothing and turns into a loss of more than 3 km/s.",
        why: "Here the path ends up along Jupiter's motion; a closer pass turns it too far.",
        wish: Some(Wish::Most(Most::Gain)),
        measure: Measure::SpeedChange,
    },
    Preset {
        id: "no-change",
        title: "A turn that changes no speed",
        probe: "Godwit, an invented courier,",
        text: "v=1&planet=jupiter&v-infinity=13.31179130307133&approach=30&periapsis=10&aim=0",
        look: "Look at the two green arrows: they point in different directions and are equally long.",
        why: "The path turns by 60°, from 30° on one side of Jupiter's motion to 30° on the other, so the pull does no work along it.",
        wish: Some(Wish::Value(WishKind::Change, 0.0)),
        measure: Measure::SpeedChange,
    },
    Preset {
        id: "strikes",
        title: "Aimed too close: it strikes",
        probe: "Wigeon, an invented atmosphere probe,",
        text: "v=1&planet=jupiter&v-infinity=9&approach=129&periapsis=0.6&aim=0",
        look: "Look where the path ends: at the surface.",
        why: "The pull bends the path inwards long before the probe arrives, so it hits although it was aimed well to the side.",
        wish: None,
        measure: Measure::Turn,
    },
    Preset {
        id: "too-fast",
        title: "Too fast to be turned",
        probe: "Siskin, an invented sprinter,",
        text: "v=1&planet=mars&v-infinity=40&approach=110&periapsis=1.1&aim=0",
        look: "Look at the turn angle: less than one degree, although the probe nearly grazes the planet.",
        why: "At 40 km/s the probe spends only minutes near Mars, too little for the pull of a small planet.",
        wish: Some(Wish::Value(WishKind::Turn, 10.0)),
        measure: Measure::Turn,
    },
    Preset {
        id: "inner",
        title: "A first push at Venus",
        probe: "Curlew, an invented inner-planet surveyor,",
        text: "v=1&planet=venus&v-infinity=6&approach=120&periapsis=1.1&aim=0",
        look: "Look at the change of speed: nearly 7 km/s from a planet with about a four-hundredth of Jupiter's mass.",
        why: "Venus is small, but it moves fast round the Sun and the probe comes slowly enough to be turned by 70° on a low pass.",
        wish: Some(Wish::Most(Most::Gain)),
        measure: Measure::SpeedChange,
    },
    Preset {
        id: "custom",
        title: "A planet of your own",
        probe: "Knot, an invented traveller,",
        text: "v=1&planet=custom&gm=2500000&radius=15000&orbit=0.35&v-infinity=14&approach=120&periapsis=2&aim=0",
        look: "Change its mass, size and distance and see which of them the gain of energy depends on.",
        why: "Mass and radius set how far the path turns, the distance from the Sun sets how fast the planet moves; the gain needs both.",
        wish: Some(Wish::Most(Most::Gain)),
        measure: Measure::EnergyChange,
    },
];

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_preset_is_written_as_its_scenario_prints() {
        for preset in &PRESETS {
            let scenario = Scenario::read_strictly(preset.text).expect("a text without mistakes");
            assert_eq!(Preset::of(&scenario), Some(preset));
        }
    }
}
