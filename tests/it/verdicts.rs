//! Verdicts that an obvious reading gets wrong, each on the smallest vessel
//! and profile that show it. The profiles are made up for the purpose.

use crate::outfit::gear::appendix_f;
use crate::outfit::{DAY, but, vessel};
use crate::run::kitmuster;

/// What it shows, the verdict, and what is asked.
const CASES: [(&str, &str, &[&str]); 38] = [
    (
        "a way that is longer at one end than over the whole range",
        "not-ready",
        &[
            "tests/it/verdicts/low-end-two/V.yaml",
            "--profile",
            "tests/it/verdicts/low-end-two/P.yaml",
            "--on",
            "2026-03-05",
        ],
    ),
    (
        "a tool of what may not bind is not lent",
        "cannot-tell",
        &[
            "tests/it/verdicts/lent-tool/V.yaml",
            "--profile",
            "tests/it/verdicts/lent-tool/P.yaml",
            "--on",
            "2026-03-02",
        ],
    ),
    (
        "spares are asked where what they are for is, and then fit",
        "ready",
        &[
            "tests/it/verdicts/spares/V.yaml",
            "--profile",
            "tests/it/verdicts/spares/P.yaml",
            "--on",
            "2026-03-02",
        ],
    ),
    (
        "a season that begins during the trip binds",
        "not-ready",
        &[
            "tests/it/verdicts/season/V.yaml",
            "--requirements",
            "tests/it/verdicts/season/req",
            "--on",
            "2026-05-28",
            "--return",
            "2026-06-10",
        ],
    ),
    (
        "a tape error may make a rule bind",
        "cannot-tell",
        &[
            "tests/it/verdicts/tape-error/V2.yaml",
            "--requirements",
            "tests/it/verdicts/tape-error/req",
            "--on",
            "2026-03-02",
        ],
    ),
    (
        "a freeboard that is not believed may make a rule bind",
        "cannot-tell",
        &[
            "tests/it/verdicts/tape-error/V.yaml",
            "--requirements",
            "tests/it/verdicts/tape-error/req",
            "--trust",
            "measured",
            "--on",
            "2026-03-02",
        ],
    ),
    (
        "an unmeasured freeboard may make a rule bind",
        "cannot-tell",
        &[
            "tests/it/verdicts/unsaid/V2.yaml",
            "--requirements",
            "tests/it/verdicts/unsaid/req",
            "--on",
            "2026-03-02",
        ],
    ),
    (
        "unsaid permits may make a rule bind",
        "cannot-tell",
        &[
            "tests/it/verdicts/unsaid/V.yaml",
            "--requirements",
            "tests/it/verdicts/unsaid/req",
            "--on",
            "2026-03-02",
        ],
    ),
    (
        "what was aboard before a loan is lent all the same",
        "not-ready",
        &[
            "tests/it/verdicts/plain-net/V.yaml",
            "--profile",
            "tests/it/verdicts/plain-net/P.yaml",
            "--inspection",
            "tests/it/verdicts/plain-net/I.yaml",
            "--on",
            "2026-03-02",
        ],
    ),
    (
        "a newer declaration stands against an older record",
        "not-ready",
        &[
            "tests/it/verdicts/records/V.yaml",
            "--profile",
            "tests/it/verdicts/plain-net/P.yaml",
            "--inspection",
            "tests/it/verdicts/records/I.yaml",
            "--on",
            "2026-03-02",
        ],
    ),
    (
        "of two measurements the later decides, being the worse",
        "not-ready",
        &[
            "tests/it/verdicts/records/V2.yaml",
            "--profile",
            "tests/it/verdicts/long-net/P.yaml",
            "--inspection",
            "tests/it/verdicts/records/I2.yaml",
            "--on",
            "2026-03-02",
        ],
    ),
    (
        "lengthening repairs nothing",
        "not-ready",
        &[
            "tests/it/verdicts/mended/V.yaml",
            "--profile",
            "tests/it/verdicts/mended/P.yaml",
            "--inspection",
            "tests/it/verdicts/mended/I.yaml",
            "--on",
            "2026-03-02",
        ],
    ),
    (
        "a tool that nobody looked at is not inspected",
        "not-ready",
        &[
            "tests/it/verdicts/mended/V2.yaml",
            "--profile",
            "tests/it/verdicts/mended/P.yaml",
            "--inspection",
            "tests/it/verdicts/mended/I2.yaml",
            "--on",
            "2026-03-02",
        ],
    ),
    (
        "a recount mends none of the broken ones",
        "not-ready",
        &[
            "tests/it/verdicts/recount/V.yaml",
            "--profile",
            "tests/it/verdicts/recount/P.yaml",
            "--inspection",
            "tests/it/verdicts/recount/I.yaml",
            "--on",
            "2026-03-02",
        ],
    ),
    (
        "a requirement that binds within the tape error is open",
        "cannot-tell",
        &[
            "tests/it/verdicts/band/V.yaml",
            "--profile",
            "tests/it/verdicts/band/P.yaml",
            "--on",
            "2026-03-02",
        ],
    ),
    (
        "a tool with a broken part is broken",
        "not-ready",
        &[
            "tests/it/verdicts/parts/V.yaml",
            "--profile",
            "tests/it/verdicts/parts/P.yaml",
            "--on",
            "2026-03-02",
        ],
    ),
    (
        "a part that serves by itself serves no other tool",
        "not-ready",
        &[
            "tests/it/verdicts/parts/V2.yaml",
            "--profile",
            "tests/it/verdicts/parts-two/P.yaml",
            "--on",
            "2026-03-02",
        ],
    ),
    (
        "a hook wire within the tape error is open",
        "cannot-tell",
        &[
            "tests/it/verdicts/hook-wire/V.yaml",
            "--profile",
            "tests/it/verdicts/hook-wire/P.yaml",
            "--on",
            "2026-03-02",
        ],
    ),
    (
        "two readings of the hook wire dispute it",
        "cannot-tell",
        &[
            "tests/it/verdicts/hook-wire/V2.yaml",
            "--profile",
            "tests/it/verdicts/hook-wire/P.yaml",
            "--on",
            "2026-03-02",
        ],
    ),
    (
        "a partial list may leave out a heavier hook",
        "cannot-tell",
        &[
            "tests/it/verdicts/hook-wire/V3.yaml",
            "--profile",
            "tests/it/verdicts/hook-wire/P.yaml",
            "--on",
            "2026-03-02",
        ],
    ),
    (
        "an inspection that lies ahead counts for nothing",
        "cannot-tell",
        &[
            "tests/it/verdicts/inspections/V.yaml",
            "--profile",
            "tests/it/verdicts/inspections/P.yaml",
            "--on",
            "2026-03-02",
        ],
    ),
    (
        "a statement that lies ahead counts for nothing",
        "cannot-tell",
        &[
            "tests/it/verdicts/statements/V2.yaml",
            "--profile",
            "tests/it/verdicts/statements/P.yaml",
            "--on",
            "2026-03-02",
        ],
    ),
    (
        "a new head makes an old statement void",
        "cannot-tell",
        &[
            "tests/it/verdicts/statements/V.yaml",
            "--profile",
            "tests/it/verdicts/statements/P.yaml",
            "--on",
            "2026-03-02",
        ],
    ),
    (
        "a limit on lines is judged at both ends of the freeboard",
        "not-ready",
        &[
            "tests/it/verdicts/lines/V.yaml",
            "--profile",
            "tests/it/verdicts/lines-rule/P.yaml",
            "--on",
            "2026-03-02",
        ],
    ),
    (
        "gear to which no alternative is open is outside the rule",
        "not-ready",
        &[
            "tests/it/verdicts/hooks/V.yaml",
            "--profile",
            "tests/it/verdicts/hooks/P.yaml",
            "--on",
            "2026-03-02",
        ],
    ),
    (
        "what will be bought and lent later is not aboard yet",
        "not-ready",
        &[
            "tests/it/verdicts/lent-later/V.yaml",
            "--profile",
            "tests/it/verdicts/lent-later/P.yaml",
            "--on",
            "2026-03-02",
        ],
    ),
    (
        "a certificate without its issue may be older than the rule allows",
        "cannot-tell",
        &[
            "tests/it/verdicts/certificates/V2.yaml",
            "--profile",
            "tests/it/verdicts/certificates/P.yaml",
            "--on",
            "2026-03-02",
        ],
    ),
    (
        "a record says nothing of what came later",
        "ready",
        &[
            "tests/it/verdicts/came-later/V.yaml",
            "--profile",
            "tests/it/verdicts/plain-net/P.yaml",
            "--inspection",
            "tests/it/verdicts/came-later/I.yaml",
            "--on",
            "2026-03-02",
        ],
    ),
    (
        "a record says nothing of what was lent that day",
        "ready",
        &[
            "tests/it/verdicts/came-later/V2.yaml",
            "--profile",
            "tests/it/verdicts/plain-net/P.yaml",
            "--inspection",
            "tests/it/verdicts/came-later/I.yaml",
            "--on",
            "2026-03-02",
        ],
    ),
    (
        "a tape error wider than a range leaves it open",
        "cannot-tell",
        &[
            "tests/it/verdicts/wide-error/V.yaml",
            "--profile",
            "tests/it/verdicts/wide-error/P.yaml",
            "--on",
            "2026-03-02",
        ],
    ),
    (
        "a rule named by its id is judged edition by edition",
        "ready",
        &[
            "tests/it/verdicts/editions/V2.yaml",
            "--requirements",
            "tests/it/verdicts/editions/req",
            "--profile",
            "b26",
            "--return",
            "2026-03-10",
            "--on",
            "2026-03-02",
        ],
    ),
    (
        "a later change retires an older record",
        "ready",
        &[
            "tests/it/verdicts/records/V3.yaml",
            "--profile",
            "tests/it/verdicts/long-net/P.yaml",
            "--inspection",
            "tests/it/verdicts/records/I3.yaml",
            "--on",
            "2026-03-02",
        ],
    ),
    (
        "two records of one day that differ leave it open",
        "cannot-tell",
        &[
            "tests/it/verdicts/same-day/V.yaml",
            "--profile",
            "tests/it/verdicts/same-day/P.yaml",
            "--inspection",
            "tests/it/verdicts/same-day/A.yaml",
            "--inspection",
            "tests/it/verdicts/same-day/B.yaml",
            "--on",
            "2026-03-02",
        ],
    ),
    (
        "two records of one day that differ, in the other order",
        "cannot-tell",
        &[
            "tests/it/verdicts/same-day/V.yaml",
            "--profile",
            "tests/it/verdicts/same-day/P.yaml",
            "--inspection",
            "tests/it/verdicts/same-day/B.yaml",
            "--inspection",
            "tests/it/verdicts/same-day/A.yaml",
            "--on",
            "2026-03-02",
        ],
    ),
    (
        "a season two years ahead ends readiness",
        "ready",
        &[
            "tests/it/verdicts/season-ahead/V.yaml",
            "--profile",
            "tests/it/verdicts/season-ahead/P.yaml",
            "--on",
            "2026-03-02",
        ],
    ),
    (
        "one lengthening serves two that share",
        "not-ready",
        &[
            "tests/it/verdicts/shared-length/V2.yaml",
            "--profile",
            "tests/it/verdicts/shared-length/P.yaml",
            "--on",
            "2026-03-02",
        ],
    ),
    (
        "rival readings can both be satisfied",
        "not-ready",
        &[
            "tests/it/verdicts/rivals/V.yaml",
            "--profile",
            "tests/it/verdicts/rivals/P.yaml",
            "--on",
            "2026-03-02",
        ],
    ),
    (
        "not ready at the low end of its own freeboard",
        "not-ready",
        &[
            "tests/it/verdicts/low-end/V.yaml",
            "--profile",
            "tests/it/verdicts/low-end/P.yaml",
            "--on",
            "2026-03-02",
        ],
    ),
];

#[test]
fn every_case_has_its_verdict() {
    let mut wrong = Vec::new();
    for (title, verdict, arguments) in CASES {
        let ran = kitmuster(&[&["check", "--format", "json"], arguments].concat());
        let json = ran.json();
        if json["verdict"] != verdict {
            wrong.push(format!("{title}: {} instead of {verdict}", json["verdict"]));
        }
    }
    assert_eq!(wrong, Vec::<String>::new());
}

fn profile(case: &str) -> serde_json::Value {
    let (_, _, arguments) = CASES.iter().find(|(title, _, _)| *title == case).unwrap();
    kitmuster(&[&["check", "--format", "json"], *arguments].concat()).json()["profiles"][0].clone()
}

#[test]
fn ready_until_finds_a_season_two_years_ahead() {
    let season = profile("a season two years ahead ends readiness");
    assert_eq!(season["ready_until"]["day"], "2028-05-31");
}

#[test]
fn the_way_mends_a_shared_tool_once_and_satisfies_rival_readings() {
    for case in ["one lengthening serves two that share", "rival readings can both be satisfied"] {
        let way = profile(case)["way_to_ready"].clone();
        assert_eq!(way["steps"].as_array().map(Vec::len), Some(1), "{case}: {way}");
    }
}

#[test]
fn good_up_to_needs_the_whole_of_the_vessels_own_range() {
    let low = profile("not ready at the low end of its own freeboard");
    assert_eq!(low["good_up_to"]["state"], "none");
}

#[test]
fn of_two_stations_that_fail_the_higher_one_is_told() {
    // 150 % of 6 ft is 9 ft: a pole for the lower station would still be too
    // short (Appendix F to 50 CFR part 622, A.1).
    let short = but(appendix_f::CUTTER, "handle", "7 ft");
    for stations in [
        "[{ name: port, freeboard: 6 ft }, { name: starboard, freeboard: 5 ft }]",
        "[{ name: port, freeboard: 5 ft }, { name: starboard, freeboard: 6 ft }]",
        "[{ name: port, freeboard: 6 ft }, { name: starboard, freeboard: 4 ft 6 in to 5 ft }]",
    ] {
        let freeboard = format!("{{ from: top of the rail, stations: {stations} }}");
        let judged = vessel("6 ft")
            .set("freeboard", &freeboard)
            .with(&[&short])
            .under("us-gulf-reef-fish-2019", DAY);
        let reason = &judged.finding("long-line-cutter")["reasons"][0];
        assert_eq!(reason["demand"]["least"]["nanometres"], 108 * 25_400_000_i64, "{stations}");
        let step = &judged.only()["way_to_ready"]["steps"];
        assert!(step.to_string().contains("at least 9 ft (2.744 m)"), "{step}");
    }
}
