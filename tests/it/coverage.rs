//! Every clause of every encoded rule, what encodes it and which tests pin it:
//! the page `requirements/COVERAGE.md` is generated here and compared.
//! `UPDATE_COVERAGE=1 cargo test --test it coverage::` writes it anew.
//!
//! The requirements are read from the loaded profiles, the tests from the
//! tables of rows and from the lines `Pins:` beside them; only the list of the
//! clauses themselves is written down, in `coverage/clauses.yaml`.

mod clauses;
mod page;
mod parts;
mod pins;
mod shipped;

use crate::run;
use shipped::Shipped;

/// Parts of requirements that no test pins.
fn without_test(shipped: &Shipped, pins: &[pins::Pin]) -> Vec<String> {
    let mut without = Vec::new();
    for profile in &shipped.library.profiles {
        for (requirement, part) in shipped.parts(profile) {
            if !pins.iter().any(|pin| pin.covers(shipped, &profile.id, &requirement, &part)) {
                let what = if part.figure { "the figure " } else { "" };
                without.push(format!(
                    "{}/{requirement}: no test pins {what}`{}` ({})",
                    profile.id, part.says, part.clause
                ));
            }
        }
    }
    without
}

#[test]
fn every_clause_is_encoded_or_has_a_reason_and_every_requirement_has_its_clause() {
    let faults = clauses::faults(&Shipped::read(), &clauses::listed());
    assert!(faults.is_empty(), "{}", faults.join("\n"));
}

#[test]
fn everything_that_a_requirement_asks_is_pinned_by_a_test() {
    let without = without_test(&Shipped::read(), &pins::all());
    assert!(without.is_empty(), "{}\n{} in all", without.join("\n"), without.len());
}

/// What a line `Pins:` names must be there, and so must a test of that name.
#[test]
fn a_pin_names_a_test_and_a_part_that_there_are() {
    let shipped = Shipped::read();
    let tests = pins::tests(&pins::sources());
    let mut wrong = Vec::new();
    for pin in pins::all() {
        if !tests.contains(&pin.test) {
            wrong.push(format!("{}: there is no test `{}`", pin.place, pin.test));
        }
        let profile = shipped.library.find(&pin.profile);
        let parts = profile.map_or_else(Vec::new, |profile| shipped.parts(profile));
        let mut of_it = parts.iter().filter(|(id, _)| *id == pin.requirement).peekable();
        if of_it.peek().is_none() {
            wrong.push(format!(
                "{}: there is no requirement `{}/{}`",
                pin.place, pin.profile, pin.requirement
            ));
        } else if let pins::Holds::Words(says) = &pin.holds {
            let written = pin.place.starts_with("tests/");
            if written && !of_it.any(|(_, part)| part.says == *says) {
                wrong.push(format!(
                    "{}: `{}/{}` does not ask `{says}`",
                    pin.place, pin.profile, pin.requirement
                ));
            }
        }
    }
    wrong.dedup();
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

#[test]
fn the_page_of_coverage_is_up_to_date() {
    let shipped = Shipped::read();
    let page = page::page(&shipped, &clauses::listed(), &pins::all());
    let path = run::home().join("requirements/COVERAGE.md");
    if std::env::var_os("UPDATE_COVERAGE").is_some() {
        std::fs::write(&path, &page).unwrap();
    }
    let kept = std::fs::read_to_string(&path).unwrap_or_default();
    let differs = page.lines().zip(kept.lines()).position(|(new, old)| new != old);
    assert!(
        page == kept,
        "requirements/COVERAGE.md is out of date from line {}; `UPDATE_COVERAGE=1 cargo test \
         --test it coverage::` writes it anew, then read what changed",
        differs.unwrap_or_else(|| page.lines().count().min(kept.lines().count())) + 1
    );
}

#[test]
fn the_page_is_no_profile_to_the_loader() {
    let ran = run::kitmuster(&["profiles", "--requirements", "requirements"]);
    assert_eq!(ran.status, 0, "{}", ran.page());
    assert_eq!(ran.stdout, run::kitmuster(&["profiles"]).stdout);
}
