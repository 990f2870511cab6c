//! What cannot be used is named in words and has its default.

use two_frames::scenario::{Field, Scenario};

use super::complaints;

/// Each kind of text that cannot be used: the text, and what its only notice has to name: key, value, and the rule.
const BAD: [(&str, [&str; 3]); 21] = [
    ("periapsis", ["“periapsis”", "periapsis", "key=value"]),
    ("v=1&planet", ["“planet”", "planet", "key=value"]),
    ("flavour=3", ["flavour", "", "no such key"]),
    ("Periapsis=8", ["Periapsis", "", "no such key"]),
    ("=8", [":", "", "no such key"]),
    ("v=2", ["v=", "2", "version 1"]),
    ("v=", ["v=", "", "version 1"]),
    (
        "planet=pluto",
        [
            "planet=",
            "pluto",
            "mercury, venus, earth, mars, jupiter, saturn, uranus, neptune or custom",
        ],
    ),
    ("planet=Jupiter", ["planet=", "Jupiter", "has to be"]),
    ("periapsis=near", ["periapsis=", "near", "a number"]),
    ("periapsis=", ["periapsis", "", "a number"]),
    ("periapsis=8=9", ["periapsis=", "8=9", "a number"]),
    ("periapsis=NaN", ["periapsis=", "NaN", "a number"]),
    ("approach=inf", ["approach=", "inf", "a number"]),
    (
        "periapsis=0.009",
        ["periapsis=", "0.009", "from 0.01 to 10000 planet radii"],
    ),
    (
        "v-infinity=100.1",
        ["v-infinity=", "100.1", "from 0.01 to 100 km/s"],
    ),
    ("aim=-180.5", ["aim=", "-180.5", "from -180 to 180°"]),
    (
        "probe-mass=0",
        ["probe-mass=", "0", "from 0.001 to 1000000000 kg"],
    ),
    (
        "planet=custom&gm=-1&radius=1&orbit=1",
        ["gm=", "-1", "a finite number above 0 (km³/s²)"],
    ),
    ("radius=5", ["radius=", "5", "only planet=custom"]),
    (
        "planet=custom&gm=1&radius=1",
        ["orbit", "", "a custom planet needs gm, radius, orbit"],
    ),
];

#[test]
fn what_cannot_be_used_is_named_and_has_its_default() {
    for (text, names) in BAD {
        let (scenario, complaints) = complaints(text);
        assert_eq!(scenario, Scenario::default(), "{text}");
        let [complaint] = &complaints[..] else {
            panic!("{text}: {complaints:?}")
        };
        for name in names.into_iter().chain(["try "]) {
            assert!(complaint.contains(name), "“{name}” is not in: {complaint}");
        }
        assert!(
            complaint.ends_with('.') && !complaint.contains('\n'),
            "{complaint}"
        );
    }
}

#[test]
fn a_key_given_twice_keeps_its_first_value() {
    let (scenario, complaints) = complaints("aim=1&periapsis=3&aim=2");
    assert_eq!(
        (scenario.get(Field::Aim), scenario.get(Field::Periapsis)),
        (Some(1.0), Some(3.0))
    );
    let [complaint] = &complaints[..] else {
        panic!("{complaints:?}")
    };
    for name in ["aim=", "2", "once", "try "] {
        assert!(complaint.contains(name), "“{name}” is not in: {complaint}");
    }
}

#[test]
fn what_can_be_used_is_used_beside_what_cannot() {
    let (scenario, complaints) =
        complaints("v=1&planet=saturn&periapsis=no&approach=-20&aim=999&crank=7");
    assert_eq!(scenario.planet().key(), "saturn");
    assert_eq!(scenario.get(Field::Approach), Some(-20.0));
    assert_eq!(scenario.get(Field::Crank), Some(7.0));
    assert_eq!(
        (scenario.get(Field::Periapsis), scenario.get(Field::Aim)),
        (Some(8.0), Some(0.0))
    );
    assert!(
        complaints.len() == 2
            && complaints[0].starts_with("periapsis=no")
            && complaints[1].starts_with("aim=999")
    );
}

#[test]
fn a_custom_planet_without_all_its_numbers_is_jupiter() {
    for (text, count) in [
        ("planet=custom", 3),
        ("planet=custom&gm=5e5", 2),
        ("planet=custom&gm=5e5&radius=x&orbit=1", 1),
        ("planet=custom&gm=0&radius=0&orbit=0", 3),
        ("planet=custom&gm=1e999&radius=1&orbit=1", 1),
    ] {
        let (scenario, complaints) = complaints(text);
        assert_eq!(
            (scenario, complaints.len()),
            (Scenario::default(), count),
            "{text}: {complaints:?}"
        );
    }
}

#[test]
fn a_long_value_is_cut_in_its_notice() {
    for text in [
        format!("periapsis={}", "9".repeat(5_000)),
        format!("{}=1", "k".repeat(5_000)),
        "ü".repeat(5_000),
    ] {
        let (_, complaints) = complaints(&text);
        assert!(
            complaints.len() == 1 && complaints[0].chars().count() < 300,
            "{}",
            complaints[0]
        );
        assert!(complaints[0].contains('…'), "{}", complaints[0]);
    }
}

/// What a person copies is often the whole address.
#[test]
fn a_text_may_be_pasted_with_its_address() {
    let text = "planet=saturn&periapsis=3";
    let (plain, _) = complaints(text);
    for address in [
        "#",
        "/#",
        "http://127.0.0.1:8000/#",
        "https://example.org/a/index.html?b=c#",
    ] {
        let whole = format!("{address}{text}");
        assert_eq!(complaints(&whole), (plain, vec![]), "{whole}");
    }
    assert_eq!(
        complaints("http://127.0.0.1:8000/#"),
        (Scenario::default(), vec![])
    );
}
