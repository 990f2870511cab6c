//! The Sun's planets and a custom one: mass, size, mean orbit, and what a close pass would meet.

use super::error::FlybyError;
use super::units::{GM_SUN, KM_PER_AU};

/// The eight planets, in order from the Sun.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(missing_docs, reason = "a planet's name says all there is to say")]
pub enum Body {
    Mercury,
    Venus,
    Earth,
    Mars,
    Jupiter,
    Saturn,
    Uranus,
    Neptune,
}

impl Body {
    /// All of them, in order from the Sun.
    pub const ALL: [Self; 8] = [
        Self::Mercury,
        Self::Venus,
        Self::Earth,
        Self::Mars,
        Self::Jupiter,
        Self::Saturn,
        Self::Uranus,
        Self::Neptune,
    ];
}

/// What a pass inside some distance would meet. A pass goes on all the same; the page adds a caution.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Zone {
    /// What it is.
    pub kind: ZoneKind,
    /// Inner edge, distance from the planet's centre, km.
    pub from_km: f64,
    /// Outer edge, distance from the planet's centre, km.
    pub to_km: f64,
}

/// The kinds of [`Zone`].
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ZoneKind {
    /// Air thick enough to slow or heat a probe.
    Atmosphere,
    /// Ring particles, in the planet's equatorial plane.
    Rings,
    /// Trapped radiation strong enough to harm electronics.
    RadiationBelt,
}

/// A planet as a flyby needs it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Planet {
    /// Its name as a sentence uses it ("Jupiter", "the custom planet").
    pub name: &'static str,
    /// Gravitational parameter of the planet alone, without moons, km³/s².
    pub gm: f64,
    /// Equatorial radius, km.
    pub radius_km: f64,
    /// Radius of its circular model orbit round the Sun, km.
    pub orbit_km: f64,
    /// What a close pass would meet, in no order; empty for a custom planet.
    pub zones: &'static [Zone],
}

impl Planet {
    /// One of the eight planets.
    ///
    /// Sources: GM of the planet alone, NAIF kernel `gm_de440`; equatorial radius, IAU WGCCRE 2015 (Archinal et al. 2018,
    /// NAIF kernel pck00011); orbit, semi-major axis at J2000 of Standish's approximate elements, table 1 (JPL). For the
    /// Earth that is the orbit of the Earth-Moon barycentre.
    pub const fn of(body: Body) -> Self {
        PLANETS[body as usize]
    }

    const fn known(
        name: &'static str,
        gm: f64,
        radius_km: f64,
        orbit_au: f64,
        zones: &'static [Zone],
    ) -> Self {
        Self {
            name,
            gm,
            radius_km,
            orbit_km: orbit_au * KM_PER_AU,
            zones,
        }
    }

    /// A planet of the reader's own: `gm` in km³/s², `radius_km` and `orbit_km` (circular) in km, each finite and above 0.
    ///
    /// # Errors
    /// [`FlybyError::NotPositive`] with the first number that breaks that rule.
    pub fn custom(gm: f64, radius_km: f64, orbit_km: f64) -> Result<Self, FlybyError> {
        let checks = [
            ("custom planet's GM", gm, "km³/s²"),
            ("custom planet's radius", radius_km, "km"),
            ("custom planet's orbit", orbit_km, "km"),
        ];
        for (what, value, unit) in checks {
            check_positive(what, value, unit)?;
        }
        Ok(Self {
            name: "the custom planet",
            gm,
            radius_km,
            orbit_km,
            zones: &[],
        })
    }

    /// Speed on the circular model orbit, km/s.
    pub fn orbit_speed(&self) -> f64 {
        (GM_SUN / self.orbit_km).sqrt()
    }

    /// Escape speed at `distance_km` from the planet's centre, km/s.
    pub fn escape_speed(&self, distance_km: f64) -> f64 {
        (2.0 * self.gm / distance_km).sqrt()
    }

    /// Rate at which the planet's real path turns, radians per second.
    pub fn mean_motion(&self) -> f64 {
        self.orbit_speed() / self.orbit_km
    }

    /// Radius of the sphere of influence, km: a (m/M)^(2/5), where it makes no difference whether the Sun is said to disturb
    /// the planet's pull or the planet the Sun's. `None` for a planet as heavy as the Sun or heavier, which the Sun does not
    /// rule anywhere.
    ///
    /// Source: B. Weber, *Orbital Mechanics* (an open web textbook), "Sphere of Influence".
    pub fn sphere_of_influence_km(&self) -> Option<f64> {
        let lighter = GM_SUN / self.gm - 1.0;
        (lighter > 0.0).then(|| self.orbit_km / (1.0 + libm::expm1(0.4 * libm::log1p(lighter))))
    }

    /// The zones that hold the distance `r_km` from the centre.
    pub fn zones_at(&self, r_km: f64) -> impl Iterator<Item = &Zone> {
        self.zones
            .iter()
            .filter(move |zone| r_km >= zone.from_km && r_km < zone.to_km)
    }
}

/// The planets in the order of [`Body`]: GM, radius, orbit in AU, and what a close pass meets.
#[rustfmt::skip] // A table.
const PLANETS: [Planet; 8] = [
    Planet::known("Mercury", 22_031.868_55, 2_440.53, 0.387_099_27, &[]),
    Planet::known("Venus", 324_858.592, 6_051.8, 0.723_335_66, VENUS_ZONES),
    Planet::known("Earth", 398_600.435_5, 6_378.136_6, 1.000_002_61, EARTH_ZONES),
    Planet::known("Mars", 42_828.373_62, 3_396.19, 1.523_710_34, MARS_ZONES),
    Planet::known("Jupiter", 126_686_531.9, 71_492.0, 5.202_887_00, JUPITER_ZONES),
    Planet::known("Saturn", 37_931_206.23, 60_268.0, 9.536_675_94, SATURN_ZONES),
    Planet::known("Uranus", 5_793_951.257, 25_559.0, 19.189_164_64, URANUS_ZONES),
    Planet::known("Neptune", 6_835_103.145, 24_764.0, 30.069_922_76, NEPTUNE_ZONES),
];

/// Refuses a number that is not finite and above 0.
pub(super) fn check_positive(
    what: &'static str,
    value: f64,
    unit: &'static str,
) -> Result<(), FlybyError> {
    if value.is_finite() && value > 0.0 {
        Ok(())
    } else {
        Err(FlybyError::NotPositive { what, value, unit })
    }
}

const fn zone(kind: ZoneKind, from_km: f64, to_km: f64) -> Zone {
    Zone {
        kind,
        from_km,
        to_km,
    }
}

// Cautions only, no force acts: round figures, all from memory. Atmospheres reach from the surface to a height where
// drag on a passing probe is felt; rings are the span of the main rings; belts are the strongly harmful part.
const VENUS_ZONES: &[Zone] = &[zone(ZoneKind::Atmosphere, 6_051.8, 6_051.8 + 200.0)];
const EARTH_ZONES: &[Zone] = &[
    zone(ZoneKind::Atmosphere, 6_378.136_6, 6_378.136_6 + 150.0),
    zone(
        ZoneKind::RadiationBelt,
        6_378.136_6 + 1_000.0,
        6_378.136_6 + 58_000.0,
    ),
];
const MARS_ZONES: &[Zone] = &[zone(ZoneKind::Atmosphere, 3_396.19, 3_396.19 + 150.0)];
const JUPITER_ZONES: &[Zone] = &[
    zone(ZoneKind::Atmosphere, 71_492.0, 71_492.0 + 1_000.0),
    zone(ZoneKind::RadiationBelt, 71_492.0 + 1_000.0, 10.0 * 71_492.0),
];
const SATURN_ZONES: &[Zone] = &[
    zone(ZoneKind::Atmosphere, 60_268.0, 60_268.0 + 1_000.0),
    zone(ZoneKind::Rings, 66_900.0, 140_200.0),
];
const URANUS_ZONES: &[Zone] = &[
    zone(ZoneKind::Atmosphere, 25_559.0, 25_559.0 + 1_000.0),
    zone(ZoneKind::Rings, 38_000.0, 51_200.0),
];
const NEPTUNE_ZONES: &[Zone] = &[
    zone(ZoneKind::Atmosphere, 24_764.0, 24_764.0 + 1_000.0),
    zone(ZoneKind::Rings, 41_900.0, 62_950.0),
];
