//! What a fleet's kits are worth in outcomes: told only where it is asked,
//! beside the verdicts, the same as each vessel's own page says.

use super::{audit, document, flat};
use crate::run;
use serde_json::Value;

/// What `check` and `options` say of one vessel, as JSON.
fn alone(command: &str, vessel: &str) -> Value {
    let ran = run::kitmuster(&[command, vessel, "--format", "json"]);
    serde_json::from_str(&ran.stdout).unwrap_or_else(|error| panic!("{error}: {}", ran.stderr))
}

#[test]
fn the_counts_of_a_fleet_are_those_of_each_vessel_alone() {
    let fleet = document(&["vessels"], &["--outcomes"]);
    let vessels = fleet["vessels"].as_array().unwrap();
    assert_eq!(vessels.len(), 18);
    let mut planned = 0;
    for vessel in vessels {
        let file = vessel["vessel"]["file"].as_str().unwrap();
        let worth = &vessel["freeing"]["worth"];
        let sum: u64 = ["first", "fallback", "unclear", "nothing", "left_out"]
            .iter()
            .map(|key| worth[key].as_u64().unwrap())
            .sum();
        assert_eq!(sum, 25, "{file}");
        // Inspection records beside a fleet are laid over, alone they are not.
        if ["grey-sandling", "marlow-tern", "winter-petrel"].iter().any(|n| file.contains(n)) {
            let (check, options) = (alone("check", file), alone("options", file));
            assert_eq!(check["freeing"]["worth"], options["worth"], "{file}");
            assert_eq!(check["freeing"]["lift"], options["lift"], "{file}");
            assert_eq!(vessel["freeing"], check["freeing"], "{file}");
            planned += 1;
        }
    }
    assert_eq!(planned, 3);
}

#[test]
fn outcomes_change_no_verdict_and_are_silent_unless_asked() {
    let (with, without) = (audit(&["vessels"], &["--outcomes"]), audit(&["vessels"], &[]));
    assert_eq!(with.status, without.status);
    assert!(!without.stdout.contains("freeing a turtle"), "{}", without.stdout);
    assert!(with.stdout.contains("Ways of freeing a turtle"), "{}", with.stdout);
    let (with, without) = (document(&["vessels"], &["--outcomes"]), document(&["vessels"], &[]));
    assert_eq!(with["totals"], without["totals"]);
    assert!(without["vessels"][0].get("freeing").is_none());
}

#[test]
fn the_page_counts_vessels_by_their_worst_situation_and_prices_one_tool() {
    let shops = ["suppliers/port-ansel-chandlery.yaml", "suppliers/tarnholt-ship-stores.yaml"];
    let ran =
        audit(&["vessels"], &["--outcomes", "--catalogue", shops[0], "--catalogue", shops[1]]);
    let (_, section) = ran.stdout.split_once("Ways of freeing a turtle").unwrap();
    insta::assert_snapshot!(section);
    assert!(section.lines().all(|line| line.chars().count() <= 80));
    let fleet = document(&["vessels"], &["--outcomes"]);
    let nothing = fleet["vessels"]
        .as_array()
        .unwrap()
        .iter()
        .filter(|vessel| vessel["freeing"]["worth"]["nothing"].as_u64().unwrap() > 0);
    let told = format!("{} with no way at all in some", nothing.count());
    assert!(flat(&ran).contains(&told), "{told}");
}

#[test]
fn the_pages_of_a_fleet_tell_outcomes_in_the_overview_and_on_each_vessel() {
    let ran = audit(&["vessels"], &["--outcomes", "--format", "html"]);
    let page = scraper::Html::parse_document(&ran.stdout);
    let texts = |selector: &str| -> Vec<String> {
        let selector = scraper::Selector::parse(selector).unwrap();
        page.select(&selector).map(|found| found.text().collect()).collect()
    };
    let overview = texts("#overview").concat();
    assert_eq!(overview.matches(": first choice ").count(), 18, "{overview}");
    let bullets = texts("#overview li");
    for vessel in document(&["vessels"], &["--outcomes"])["vessels"].as_array().unwrap() {
        let (name, worth) =
            (vessel["vessel"]["name"].as_str().unwrap(), &vessel["freeing"]["worth"]);
        let sign = match ["nothing", "unclear", "fallback"].map(|key| worth[key] == 0) {
            [true, true, true] => "✓",
            [true, ..] => "–",
            _ => "✕",
        };
        let own = bullets.iter().find(|told| told.contains(&format!("{name}: first choice")));
        assert!(own.unwrap().trim_start().starts_with(sign), "{sign} {own:?}");
    }
    let own = texts("article.vessel");
    assert_eq!(own.len(), 18);
    assert!(own.iter().all(|account| account.contains("Ways of freeing a turtle")));
}

#[test]
fn formats_of_one_row_a_finding_or_a_vessel_take_no_outcomes() {
    for format in ["csv", "lines"] {
        let ran = audit(&["vessels"], &["--outcomes", "--format", format]);
        assert_eq!(ran.status, 2, "{format}");
        assert!(ran.stderr.contains(&format!("no place in `--format {format}`")), "{}", ran.stderr);
    }
    let ran = audit(&["vessels"], &["--catalogue", "suppliers/port-ansel-chandlery.yaml"]);
    assert_eq!(ran.status, 2);
    assert!(ran.stderr.contains("--outcomes"), "{}", ran.stderr);
}
