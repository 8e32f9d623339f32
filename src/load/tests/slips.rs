//! Tests of slips in profiles, on small texts of their own.

use crate::load::library::Library;
use crate::load::read::fault::Fault;
use crate::load::read::problem::Problem;

const WORDS: &str = "\
format: vocabulary/1
kinds: { cutter: {}, pliers: {}, hoist: {}, blades: { class: spare } }
permits: { reef: reef, pier: pier }
gear: { lines: lines, traps: traps }
areas: { bank: a bank, bay: a bay }
vessel features: { wheelhouse: a wheelhouse }
";

/// The slips of a profile with these `binds` and these requirements, each its
/// id, its kind and its conditions.
fn slips(binds: &str, requirements: &[(&str, &str, &str)]) -> Vec<Problem> {
    let mut text = format!(
        "format: profile/1\nid: example\nrule: example\nedition: '1'\ntitle: Example\n\
         source: 1 CFR\nbinds: {binds}\nrequirements:\n"
    );
    for (id, carry, more) in requirements {
        text += &format!(
            "  - id: {id}\n    title: {id}\n    clause: A\n    verified: read\n    {carry}\n"
        );
        more.lines().for_each(|line| text += &format!("    {line}\n"));
    }
    slips_of(&[("vocabulary.yaml", WORDS), ("example.yaml", &text)])
}

fn slips_of(texts: &[(&str, &str)]) -> Vec<Problem> {
    let library = Library::from_texts(texts).unwrap_or_else(|refusal| panic!("{refusal}"));
    library.slips(&library.profiles).map_or_else(Vec::new, |refusal| refusal.problems)
}

fn faults(binds: &str, requirements: &[(&str, &str, &str)]) -> Vec<Fault> {
    slips(binds, requirements).into_iter().map(|slip| slip.fault).collect()
}

/// The slips of a single requirement of a cutter.
fn of_one(binds: &str, conditions: &str) -> Vec<Fault> {
    faults(binds, &[("one", "carry: 1 cutter", conditions)])
}

const ANYBODY: &str = "{ permits: [reef] }";

#[test]
fn no_shipped_profile_has_a_slip() {
    let library = Library::shipped().unwrap();
    assert!(library.profiles.len() > 5);
    assert_eq!(library.slips(&library.profiles).map(|refusal| refusal.to_string()), None);
}

#[test]
fn conditions_that_exclude_each_other_are_found() {
    for when in [
        "when: { aboard: pliers, not aboard: pliers }",
        "when: { wheelhouse: yes, any of: [{ wheelhouse: no }, { wheelhouse: no, gear: lines }] }",
        "when: { freeboard: more than 4 ft, any of: [{ freeboard: 4 ft or less }] }",
        "when: { freeboard: at most 4 ft, any of: [{ freeboard: more than 1.2192 m }] }",
        "when: { freeboard: at most 0 ft }",
        "when: { months: May to June, any of: [{ months: July }, { months: November to April }] }",
        "when: { any of: [{ months: January to May }], months: November to September }\n\
         unless: { months: December to June }",
    ] {
        let found = of_one(ANYBODY, when);
        let last = if when.contains("unless") { Fault::UnlessAlways } else { Fault::WhenNever };
        assert_eq!(found, [last], "{when}");
    }
}

#[test]
fn what_binds_or_excepts_can_exclude_a_requirement() {
    let deep = "{ permits: [reef], when: { wheelhouse: yes, freeboard: 4 ft or less } }";
    assert_eq!(of_one(deep, "when: { wheelhouse: no }"), [Fault::NeverAsked]);
    assert_eq!(of_one(deep, "when: { freeboard: more than 4 ft }"), [Fault::NeverAsked]);
    assert_eq!(of_one(deep, "when: { freeboard: 4 ft or more }"), []);
    assert_eq!(of_one(deep, "unless: { wheelhouse: yes }"), [Fault::UnlessAlways]);
    assert_eq!(of_one(deep, "unless: [{ wheelhouse: no }]"), [Fault::UnlessNever]);
    assert_eq!(of_one(ANYBODY, "unless: { permit: reef }"), [Fault::UnlessAlways]);
    assert_eq!(of_one("{ permits: [reef, pier] }", "unless: { permit: reef }"), []);
    let gear = "when: { gear: lines }\nunless: { gear: lines }";
    assert_eq!(of_one(ANYBODY, gear), [Fault::UnlessAlways]);
    let only = "when: { area: bay }\nunless: { area other than: bank }";
    assert_eq!(of_one(ANYBODY, only), [Fault::UnlessAlways]);
    let nobody = "{ when: { freeboard: less than 4 ft, any of: [{ freeboard: 4 ft or more }] } }";
    assert_eq!(of_one(nobody, "when: { wheelhouse: yes }"), [Fault::BindsNever]);
}

#[test]
fn what_can_hold_is_no_slip() {
    for conditions in [
        "when: { gear: lines, area: bay, area other than: bay }",
        "when: { area: bay, any of: [{ area other than: bank }] }",
        "when: { area other than: bank, any of: [{ area: bay }] }",
        "when: { gear: lines, any of: [{ gear: traps }] }",
        "when: { freeboard: at least 4 ft, any of: [{ freeboard: 4 ft or less }] }",
        "when: { wheelhouse: yes, any of: [{ wheelhouse: no }, { aboard: hoist }] }",
        "when: { gear: lines }\nunless: [{ area: bay }, { area other than: bay, wheelhouse: no }]",
        "when: { months: November to February, any of: [{ months: February }] }",
    ] {
        assert_eq!(of_one(ANYBODY, conditions), [], "{conditions}");
    }
}

#[test]
fn a_spare_is_asked_only_where_what_it_fits_is() {
    let of = |spare| {
        faults(
            ANYBODY,
            &[
                ("cutter", "carry: 1 cutter", "when: { wheelhouse: yes }"),
                ("spare", "carry: 1 blades", spare),
            ],
        )
    };
    assert_eq!(of("spare for: cutter\nwhen: { wheelhouse: no }"), [Fault::NeverAsked]);
    assert_eq!(of("spare for: cutter"), []);
}

#[test]
fn an_alternative_that_is_never_open_is_found() {
    let one_of = "one of:\n  - { kind: cutter, when: { wheelhouse: no } }\n  - kind: pliers";
    let found =
        slips(ANYBODY, &[("one", "carry: 1", &format!("when: {{ wheelhouse: yes }}\n{one_of}"))]);
    assert_eq!(found.len(), 1, "{found:?}");
    assert_eq!(found[0].fault, Fault::AlternativeNever);
    assert_eq!(found[0].place.key, "requirements[0].one of[0].when");
    assert_eq!(found[0].position.map(|at| at.line), Some(16));
    assert_eq!(faults(ANYBODY, &[("one", "carry: 1", one_of)]), []);
    let set = "when: { wheelhouse: yes }\ntypes:\n  - { type: one, carry: 1 hoist }\n  - type: set\n    \
               set of:\n      - carry: 1 pliers\n      - carry: 1\n        one of: \
               [{ kind: cutter, when: { wheelhouse: no } }, { kind: pliers }]";
    let found = slips(ANYBODY, &[("one", "carry: 1 different types", set)]);
    assert_eq!(found[0].place.key, "requirements[0].types[1].set of[1].one of[0].when");
    assert!(found[0].position.is_some(), "{found:?}");
}

/// Two requirements of cutters with these conditions.
fn of_two(one: &str, other: &str) -> Vec<Fault> {
    let (carry, second) = ("carry: 1 cutter", "carry: 2 cutter");
    faults(ANYBODY, &[("low", carry, one), ("high", second, other)])
}

fn gap() -> Vec<Fault> {
    vec![Fault::FreeboardGap { limit: "4 ft".into(), beside: "low".into() }]
}

fn overlap() -> Vec<Fault> {
    vec![Fault::FreeboardOverlap { limit: "4 ft".into(), beside: "low".into() }]
}

#[test]
fn a_gap_or_an_overlap_at_exactly_the_limit_is_found() {
    let when = |side: &str| format!("when: {{ freeboard: {side} }}");
    for (one, other, wanted) in [
        ("less than 4 ft", "more than 4 ft", gap()),
        ("more than 4 ft", "less than 4 ft", gap()),
        ("less than 4 ft", "more than 1.2192 m", gap()),
        ("less than 4 ft, any of: [{ freeboard: less than 1.2192 m }]", "more than 4 ft", gap()),
        ("4 ft or less", "4 ft or more", overlap()),
        ("4 ft or less", "more than 4 ft", vec![]),
        ("less than 4 ft", "at least 4 ft", vec![]),
        ("less than 4 ft", "more than 5 ft", vec![]),
        ("4 ft or less", "4 ft or less", vec![]),
        ("less than 4 ft", "less than 4 ft", vec![]),
    ] {
        assert_eq!(of_two(&when(one), &when(other)), wanted, "{one}; {other}");
    }
    let unless = |side: &str| format!("unless: {{ freeboard: {side} }}");
    assert_eq!(of_two(&when("less than 4 ft"), &unless("4 ft or less")), gap());
    assert_eq!(of_two(&when("4 ft or less"), &unless("less than 4 ft")), overlap());
    assert_eq!(of_two(&when("4 ft or less"), &unless("4 ft or less")), []);
}

#[test]
fn what_has_nothing_to_do_with_each_other_leaves_no_gap() {
    let (low, high) =
        ("when: { freeboard: less than 4 ft }", "when: { freeboard: more than 4 ft }");
    let other = [("low", "carry: 1 cutter", low), ("high", "carry: 1 pliers", high)];
    assert_eq!(faults(ANYBODY, &other), []);
    // Never asked of one vessel.
    let (one, two) = (
        "when: { freeboard: less than 4 ft, wheelhouse: yes }",
        "when: { freeboard: more than 4 ft, wheelhouse: no }",
    );
    assert_eq!(of_two(one, two), []);
    let (may, july) = (
        "{ freeboard: less than 4 ft, months: May }",
        "{ freeboard: more than 4 ft, months: July }",
    );
    assert_eq!(of_two(&format!("when: {may}"), &format!("when: {july}")), []);
    let (old, new) = (format!("{low}\nuntil: 2020-01-01"), format!("{high}\nfrom: 2020-01-02"));
    assert_eq!(of_two(&old, &new), []);
    // Nobody is bound at the limit, or above it.
    for others in [
        "any of: [{ freeboard: less than 4 ft }, { freeboard: more than 4 ft }]",
        "any of: [{ freeboard: 4 ft or less }, { freeboard: more than 5 ft }]",
    ] {
        let both = [("low", "carry: 1 cutter", low), ("high", "carry: 2 cutter", high)];
        assert_eq!(faults(&format!("{{ when: {{ {others} }} }}"), &both), [], "{others}");
    }
    let (deep, binds) = ("when: { freeboard: 4 ft or less }", "when: { freeboard: 4 ft or more }");
    assert_eq!(
        faults(
            "{ when: { freeboard: less than 4 ft } }",
            &[("low", "carry: 1 cutter", deep), ("high", "carry: 1 pliers", binds)],
        ),
        [Fault::NeverAsked]
    );
}

#[test]
fn what_a_third_asks_at_the_limit_fills_the_gap() {
    let at = "when: { freeboard: 4 ft or less, any of: [{ freeboard: 4 ft or more }] }";
    let beside = |third: &str| {
        faults(
            ANYBODY,
            &[
                ("low", "carry: 1 cutter", "when: { freeboard: less than 4 ft }"),
                ("high", "carry: 2 cutter", "when: { freeboard: more than 4 ft }"),
                ("at", "carry: 3 cutter", third),
            ],
        )
    };
    assert_eq!(beside(at), []);
    // What is asked at any freeboard is another matter.
    assert_eq!(beside(""), gap());
}

#[test]
fn alternatives_of_one_kind_leave_no_gap_either() {
    let of = |low: &str, high: &str, third: &str| {
        let one_of = format!(
            "one of:\n  - {{ kind: cutter, when: {{ freeboard: {low} }} }}\n  - {{ kind: cutter, \
             when: {{ freeboard: {high} }} }}\n  - kind: {third}"
        );
        faults(ANYBODY, &[("one", "carry: 1", &one_of)])
    };
    let (limit, beside) = (String::from("4 ft"), String::from("one of[0]"));
    let gap = Fault::FreeboardGap { limit, beside };
    assert_eq!(of("less than 4 ft", "more than 4 ft", "pliers"), [gap]);
    assert_eq!(of("less than 4 ft", "more than 4 ft", "cutter"), []);
    assert_eq!(of("4 ft or less", "more than 4 ft", "pliers"), []);
}

/// A file that is made to take long is not searched for ever, and nothing is
/// said that was not found out.
#[test]
fn a_profile_made_to_take_long_is_given_up() {
    let group = |index: usize| {
        format!("  - any of: [{{ freeboard: less than {} ft }}, {{ wheelhouse: no }}]", index + 1)
    };
    let groups: Vec<String> = (0..60).map(group).collect();
    let unless = format!("unless:\n{}", groups.join("\n"));
    let many: Vec<(String, &str)> = (0..60).map(|i| (format!("r{i}"), &*unless)).collect();
    let many: Vec<(&str, &str, &str)> =
        many.iter().map(|(id, unless)| (&**id, "carry: 1 cutter", *unless)).collect();
    let start = std::time::Instant::now();
    slips(ANYBODY, &many);
    assert!(start.elapsed().as_secs() < 20);
}
