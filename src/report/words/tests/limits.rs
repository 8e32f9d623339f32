//! The words for until when and up to which freeboard.

use super::*;
use crate::report::Locale;

fn judged(verdict: Verdict, good_up_to: GoodUpTo) -> Judgement {
    let mut judgement = sample::judgement(verdict, Vec::new());
    sample::inverses_of(&mut judgement).good_up_to = good_up_to;
    judgement
}

fn up_to(words: &Words<'_>, judgement: &Judgement) -> String {
    words.good_up_to(judgement).unwrap()
}

#[test]
fn what_is_unknown_is_not_called_not_ready() {
    let stage = Stage::new();
    let words = stage.words(Locale::from(Units::Both));
    let unknown = judged(Verdict::CannotTell, GoodUpTo::None);
    let later = words.ready_until(&unknown);
    assert_eq!(later, "can't tell before the above is found out");
    assert_eq!(up_to(&words, &unknown), later);
    let faulty = judged(Verdict::NotReady, GoodUpTo::None);
    assert_eq!(words.ready_until(&faulty), "not ready at departure");
    assert_eq!(up_to(&words, &faulty), "not ready at any freeboard");
}

#[test]
fn what_has_nothing_to_do_with_the_freeboard_points_to_its_reasons() {
    let stage = Stage::new();
    let words = stage.words(Locale::from(Units::Both));
    let mut broken = judged(Verdict::NotReady, GoodUpTo::None);
    let finding = sample::finding(1, Outcome::NotMet, Vec::new());
    broken.findings = vec![Finding { freeboard: None, ..finding.clone() }];
    assert_eq!(up_to(&words, &broken), "not ready at any freeboard, for the reasons above");
    broken.findings = vec![finding];
    assert_eq!(up_to(&words, &broken), "not ready at any freeboard");
}

#[test]
fn what_runs_out_first_is_named() {
    let mut stage = Stage::new();
    stage.vessel.kit[1].expires = Some(day("2026-05-01"));
    let until = |end: &str| {
        let ready_until = ReadyUntil::Day(day(end));
        let findings = vec![sample::finding(1, Outcome::Met, Vec::new())];
        let judgement = Judgement { ready_until, ..sample::judgement(Verdict::Ready, findings) };
        stage.words(Locale::from(Units::Both)).ready_until(&judgement)
    };
    assert_eq!(
        until("2026-05-01"),
        "2026-05-01, that day included; then PL-1 goes out of date (Long-nose pliers)"
    );
    assert_eq!(until("2026-04-01"), "2026-04-01, that day included");
}

#[test]
fn the_greatest_freeboard_rounds_down_and_names_what_gives_out() {
    let stage = Stage::new();
    let words = stage.words(Locale::from(Units::Both));
    let length = crate::measure::Length::from_nanometres(1_219_200_001).unwrap();
    let here = GoodUpTo::Freeboard { length, gives_out: vec![0] };
    assert_eq!(
        up_to(&words, &judged(Verdict::Ready, here)),
        "a freeboard of 4 ft (1.219 m); above that, not met: Long-handled line clipper or cutter"
    );
    let below = GoodUpTo::OnlyBelow { length: length_of("4 ft"), gives_out: Vec::new() };
    let text = up_to(&words, &judged(Verdict::NotReady, below));
    assert!(text.contains("less than this vessel has"), "{text}");
}

fn length_of(text: &str) -> crate::measure::Length {
    length(text)
}
