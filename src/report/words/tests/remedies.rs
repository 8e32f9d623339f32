//! The words of remedies.

use super::*;
use crate::report::Locale;

#[test]
fn a_short_tool_is_lengthened_before_one_is_bought() {
    let stage = Stage::new();
    assert_eq!(
        stage.remedy(Outcome::NotMet, Some(0), vec![sample::too_short()]),
        "lengthen LC-1 or bring one with a handle of at least 6 ft 4 1/2 in (1.944 m)"
    );
    assert_eq!(
        stage.remedy(Outcome::NotMet, Some(0), vec![Reason::NotServiceable, sample::too_short()]),
        "repair LC-1 and lengthen LC-1, or bring one with a handle of at least 6 ft 4 1/2 in \
         (1.944 m)"
    );
}

#[test]
fn what_cannot_be_mended_is_replaced() {
    let stage = Stage::new();
    let reason = Reason::OutOfSpecification {
        attribute: OVERALL,
        has: Has::Figure(figure("10 in")),
        demand: Demand::Least(figure("11 in")),
        by: None,
        overruled: Vec::new(),
    };
    assert_eq!(
        stage.remedy(Outcome::NotMet, Some(1), vec![reason]),
        "bring another pliers: overall length at least 11 in (280 mm)"
    );
}

#[test]
fn what_is_not_aboard_is_brought_with_the_figures_worked_out() {
    let stage = Stage::new();
    let kinds = vec![CUTTER];
    assert_eq!(
        stage.remedy(Outcome::NotMet, None, vec![Reason::NothingAboard { kinds }]),
        "bring a long-handled line cutter: handle at least 6 ft 4 1/2 in (1.944 m), protected \
         blade"
    );
}

#[test]
fn a_missing_figure_is_measured_and_its_limit_told() {
    let stage = Stage::new();
    assert_eq!(
        stage.remedy(Outcome::CannotTell, Some(0), vec![unmeasured()]),
        "measure the handle of LC-1 (from the grip end to where the head begins); it must be at \
         least 6 ft 4 1/2 in (1.944 m)"
    );
    let hidden = Reason::Unmeasured { attribute: STEEL, has: None, demand: Demand::Is(true) };
    assert_eq!(
        stage.remedy(Outcome::CannotTell, Some(0), vec![hidden]),
        "get a dated statement that LC-1 conforms to Part A, 1 (rustless steel)"
    );
}

#[test]
fn a_document_is_seen_to() {
    let stage = Stage::new();
    let reason = Reason::OutOfSpecification {
        attribute: GUARD,
        has: Has::Feature(false),
        demand: Demand::Is(true),
        by: None,
        overruled: Vec::new(),
    };
    assert_eq!(stage.vessel.kit[2].kind, PLACARD);
    assert_eq!(
        stage.remedy(Outcome::NotMet, Some(2), vec![reason]),
        "see to HP-1: protected blade"
    );
}

#[test]
fn several_missing_figures_make_one_errand() {
    let stage = Stage::new();
    let feature = |attribute| Reason::Unmeasured { attribute, has: None, demand: Demand::Is(true) };
    let overall =
        Reason::Unmeasured { attribute: OVERALL, has: None, demand: Demand::Most(figure("9 ft")) };
    let text = stage.remedy(
        Outcome::CannotTell,
        Some(0),
        vec![unmeasured(), feature(GUARD), overall.clone(), feature(STEEL)],
    );
    assert!(
        text.contains("look at LC-1 and write down: protected blade (write it as `guard`); get a"),
        "{text}"
    );
    let two = stage.remedy(Outcome::CannotTell, Some(0), vec![unmeasured(), overall.clone()]);
    assert!(two.contains("measure the handle of LC-1 (from the grip end"), "{two}");
    let three = vec![
        unmeasured(),
        overall,
        Reason::Unmeasured { attribute: AttributeId(4), has: None, demand: Demand::Open },
    ];
    assert_eq!(
        stage.remedy(Outcome::CannotTell, Some(0), three),
        "measure on LC-1: handle at least 6 ft 4 1/2 in (1.944 m), overall length (write it as \
         `overall`) at most 9 ft (2.743 m), reach"
    );
}

#[test]
fn a_repair_is_enough_where_one_tool_is_wanting_and_not_where_two_are() {
    let stage = Stage::new();
    let because = |tool, reason| Because { tool, reason };
    let remedy = |have| {
        let finding = sample::finding(
            1,
            Outcome::NotMet,
            vec![
                because(None, Reason::TooFew { kind: PLIERS, have, need: 2 }),
                because(Some(1), Reason::NotServiceable),
            ],
        );
        stage.words(Locale::from(Units::Both)).remedy(&finding, &[]).unwrap()
    };
    assert_eq!(remedy(1), "repair PL-1");
    assert_eq!(remedy(0), "bring 2 more: pliers");
}

#[test]
fn a_faulty_tool_is_replaced_only_if_it_is_asked_for() {
    let stage = Stage::new();
    let reasons = vec![
        Because { tool: None, reason: Reason::BindingUnknown { fact: VesselFact::Permits } },
        Because { tool: Some(1), reason: Reason::NotServiceable },
    ];
    let finding = sample::finding(1, Outcome::CannotTell, reasons);
    let words = stage.words(Locale::from(Units::Both));
    assert_eq!(
        words.remedy(&finding, &[]).unwrap(),
        "write down the permits that the vessel holds; if it is asked: repair PL-1"
    );
    assert_eq!(
        words.remedy(&finding, &[&VesselFact::Permits]).unwrap(),
        "if it is asked: repair PL-1"
    );
}

#[test]
fn of_a_single_tool_there_is_nothing_to_complete() {
    let mut stage = Stage::new();
    with_two_types(&mut stage);
    let begun = |names: &[&str], have, complete: &[&str]| {
        let own = |names: &[&str]| names.iter().map(|name| (*name).to_owned()).collect();
        let reason =
            Reason::TooFewTypes { have, need: 2, complete: own(complete), incomplete: own(names) };
        stage.remedy(Outcome::NotMet, None, vec![reason])
    };
    assert_eq!(
        begun(&["long cutter"], 1, &["pair of pliers"]),
        "bring a long-handled line cutter: handle at least 6 ft 4 1/2 in (1.944 m), protected \
         blade"
    );
    assert_eq!(begun(&["pair of pliers"], 1, &["long cutter"]), "complete the pair of pliers");
}

#[test]
fn of_a_piece_of_gear_a_figure_is_measured_and_the_rest_written_down() {
    let stage = Stage::new();
    let remedy = |attribute, demand| {
        let why = Reason::Unmeasured { attribute, has: None, demand };
        let reason = Reason::GearOutside { piece: "big hooks".into(), why: why.into() };
        stage.remedy(Outcome::CannotTell, None, vec![reason])
    };
    let figure = remedy(OVERALL, Demand::Least(figure("6 ft")));
    assert!(figure.starts_with("measure the overall length of big hooks"), "{figure}");
    let feature = remedy(GUARD, Demand::Is(true));
    assert_eq!(feature, "write down of big hooks: protected blade (write it as `guard`)");
}
