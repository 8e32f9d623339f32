//! The words of steps and clashes, and of what serves.

use super::*;
use crate::report::Locale;

#[test]
fn a_step_that_brings_one_of_several_types_says_that_others_will_do() {
    let mut stage = Stage::new();
    let step = Step {
        action: Action::Acquire,
        target: Target::Type(0),
        requirement: 0,
        also: Vec::new(),
        slots: vec![FilledSlot { of_type: 0, member: 0, choice: 0, count: 1 }],
        reasons: Vec::new(),
    };
    let plain = stage.words(Locale::from(Units::Customary)).step(&step, Some(length("4 ft")));
    assert_eq!(plain, "bring a long-handled line cutter: handle at least 6 ft, protected blade");
    let brief = stage.words(Locale::from(Units::Customary)).step_in_brief(
        &step,
        Some(length("4 ft")),
        &plain,
    );
    assert_eq!(brief.unwrap(), "bring a long-handled line cutter (see above)");
    let other = stage.words(Locale::from(Units::Customary)).step_in_brief(
        &step,
        Some(length("4 ft")),
        "else",
    );
    assert_eq!(other, None);
    with_two_types(&mut stage);
    let text = stage.words(Locale::from(Units::Customary)).step(&step, Some(length("4 ft")));
    assert!(text.starts_with(&plain), "{text}");
    assert!(text.contains("or any other type of `Long-handled line clipper or cutter`"), "{text}");
}

#[test]
fn a_step_tells_what_to_do_to_what() {
    let stage = Stage::new();
    let step = Step {
        action: Action::Lengthen,
        target: Target::Tool(0),
        requirement: 0,
        also: vec![1],
        slots: Vec::new(),
        reasons: vec![sample::too_short()],
    };
    let words = stage.words(Locale::from(Units::Customary));
    assert_eq!(words.step(&step, None), "lengthen LC-1 to a handle of at least 6 ft 4 1/2 in");
    assert_eq!(words.step_for(&step), "Long-handled line clipper or cutter and Long-nose pliers");
}

/// Of the people aboard those are named whose certificates the engine took.
#[test]
fn people_and_gear_that_serve_are_named() {
    let mut stage = Stage::new();
    let person = |name: &str, roles: &[&str]| Person {
        name: name.into(),
        roles: roles.iter().map(|role| (*role).to_owned()).collect(),
        certificates: Vec::new(),
        in_doubt: false,
        place: Default::default(),
    };
    let crew = [person("A. Vela", &["owner"]), person("B. Rizo", &[]), person("C. Ojo", &[])];
    stage.vessel.people = Some(crew.into());
    let mut finding = sample::finding(1, Outcome::Met, Vec::new());
    finding.serving.clear();
    finding.certified = vec![0, 2];
    let words = stage.words(Locale::from(Units::Both));
    assert_eq!(words.all_that_serve(&finding), "A. Vela (owner), C. Ojo");
    finding.certified.clear();
    stage.vessel.hooks =
        Some(vec![GearPiece { name: "circle 16/0".into(), tool: sample::tool("H", PLIERS, 0) }]);
    stage.profile.requirements[1].need = Need::Gear { kind: PLIERS, choices: Vec::new() };
    let words = stage.words(Locale::from(Units::Both));
    assert_eq!(words.all_that_serve(&finding), "circle 16/0");
}

#[test]
fn a_clash_names_the_needs_and_the_tools() {
    let mut stage = Stage::new();
    let clash = Clash { requirements: vec![0, 1], tools: vec![1] };
    assert_eq!(
        stage.words(Locale::from(Units::Both)).clash(&clash),
        "Long-handled line clipper or cutter / Long-nose pliers: either can be met, not both; \
         there is only PL-1, and a tool counts once"
    );
    let clash = Clash { requirements: vec![0, 1], tools: vec![0, 1] };
    stage.vessel.kit[0].parts = vec!["POLE".into()];
    stage.vessel.kit[1].parts = vec!["POLE".into()];
    let text = stage.words(Locale::from(Units::Both)).clash(&clash);
    assert!(text.ends_with("LC-1 and PL-1 share POLE, which serves one tool at a time"), "{text}");
}

#[test]
fn tools_without_a_common_part_share_none() {
    let mut stage = Stage::new();
    let clash = Clash { requirements: vec![0, 1], tools: vec![0, 1] };
    stage.vessel.kit[0].parts = vec!["POLE-A".into()];
    stage.vessel.kit[1].parts = vec!["POLE-B".into()];
    let text = stage.words(Locale::from(Units::Both)).clash(&clash);
    assert!(!text.contains("POLE"), "{text}");
}

#[test]
fn who_is_to_be_certified_is_named_by_the_role_that_is_wanting() {
    let stage = Stage::new();
    let told = |target: Option<&str>, wanting: Option<&str>| {
        let role = wanting.map(str::to_owned);
        let step = Step {
            action: Action::Certify,
            target: Target::Role(target.map(str::to_owned)),
            requirement: 0,
            also: Vec::new(),
            slots: Vec::new(),
            reasons: vec![Reason::NoCertificate { role, have: 0, need: 1, lapsed: None }],
        };
        stage.words(Locale::from(Units::Both)).step(&step, None)
    };
    assert!(told(Some("owner"), Some("operator")).starts_with("have the owner certified"));
    assert!(told(None, Some("operator")).starts_with("have the operator certified"));
    assert_eq!(told(None, None), "have one more person certified");
}
