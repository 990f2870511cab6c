//! Links that were given away once open the same pass for ever.

use two_frames::scenario::Field;

use super::{bits, complaints};

#[test]
fn links_of_version_1_open_for_ever() {
    let lines = include_str!("version-1.txt").lines();
    let kept: Vec<_> = lines.filter(|line| !line.starts_with('#')).collect();
    assert!(kept.len() >= 14, "add lines, never take one away");
    for line in kept {
        let columns: Vec<_> = line.split_whitespace().collect();
        let [link, planet, numbers @ ..] = &columns[..] else {
            panic!("a link and a planet: {line}")
        };
        let number = |text: &&str| match *text {
            "-" => None,
            number => Some(number.parse::<f64>().expect("a number").to_bits()),
        };
        let (scenario, complaints) = complaints(link);
        assert_eq!(complaints, Vec::<String>::new(), "{link}");
        assert_eq!(scenario.planet().key(), *planet, "{link}");
        assert_eq!(numbers.len(), Field::ALL.len(), "{link}");
        assert_eq!(
            bits(&scenario),
            numbers.iter().map(number).collect::<Vec<_>>(),
            "{link}"
        );
    }
}
