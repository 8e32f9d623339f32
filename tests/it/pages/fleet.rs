//! The shipped fleet: nothing of the result is missing on its page.

use super::{DAY, all, audit, checks, list, one, outcome, said, text};
use crate::run::{kitmuster, write};
use scraper::{ElementRef, Html};
use std::collections::BTreeSet;

/// A text as a page shows it: what stands in backticks is set as code.
fn plain(text: &serde_json::Value) -> String {
    said(text).replace('`', "")
}

/// The table of an edition in which a requirement has its column, with the
/// number of the column.
fn column<'a>(page: &'a Html, profile: &str, title: &str) -> (ElementRef<'a>, usize) {
    let label = format!("Vessel by requirement, {profile}, part ");
    for region in all(page.root_element(), "#fleet .scroll") {
        if region.value().attr("aria-label").is_some_and(|known| known.starts_with(&label)) {
            let heads: Vec<_> = all(region, "thead th").into_iter().map(text).collect();
            let same = |head: &String| head.trim_end_matches(" (advice)") == title;
            if let Some(index) = heads.iter().position(same) {
                return (region, index);
            }
        }
    }
    panic!("no column `{title}` under {profile}");
}

fn cell(page: &Html, profile: &str, title: &str, vessel: &str) -> String {
    let (table, column) = column(page, profile, title);
    let rows = all(table, "tbody tr");
    let row = rows.into_iter().find(|row| text(one(*row, "th")) == vessel).unwrap();
    text(all(row, "td")[column - 1])
}

#[test]
fn every_vessel_has_its_page_and_every_finding_its_cell_and_its_place() {
    let page = audit("vessels");
    let fleet = kitmuster(&["audit", "vessels", "--date", DAY, "--format", "json"]).json();
    let names: Vec<_> =
        list(&fleet["vessels"]).iter().map(|v| said(&v["vessel"]["name"])).collect();
    let headings: Vec<_> =
        all(page.root_element(), "article.vessel h2").into_iter().map(text).collect();
    assert_eq!(headings, names);
    let mut findings = 0;
    for (article, check) in checks(&page) {
        let (id, name) = (article.value().id().unwrap(), said(&check["vessel"]["name"]));
        for (number, profile) in list(&check["profiles"]).iter().enumerate() {
            let section = one(article, &format!("#{id}-p{number}"));
            let said_there = text(section);
            assert!(said_there.contains(said(&profile["title"])), "{name}");
            let all_of_it = list(&profile["findings"]);
            let shown = all(section, "[id]").into_iter();
            let places: Vec<_> = shown
                .filter(|e| e.value().id().unwrap().starts_with(&format!("{id}-p{number}-f")))
                .map(text)
                .collect();
            for finding in all_of_it {
                let title = said(&finding["title"]);
                let cell = cell(&page, said(&profile["id"]), title, name);
                assert_eq!(cell, outcome(finding), "{name}: {title}");
                findings += 1;
                // What only follows from another finding stands below that one.
                let begins = [format!("{} {title}", outcome(finding)), format!("Follows: {title}")];
                let is_place = |place: &&String| begins.iter().any(|b| place.starts_with(b));
                let Some(place) = places.iter().find(is_place) else {
                    // All that is missing is a fact that several findings lack.
                    let listed = said_there.split("open because of it:").skip(1);
                    assert!(listed.into_iter().any(|l| l.contains(title)), "{name}: {title}");
                    assert_eq!(finding["outcome"], "cannot-tell", "{name}: {title}");
                    continue;
                };
                assert!(place.contains(said(&finding["citation"]["clause"])), "{place}");
                for tool in list(&finding["tools"]) {
                    assert!(place.contains(said(&tool["mark"])), "{place}: {tool}");
                }
            }
        }
    }
    assert!(findings > 200, "only {findings} findings were looked at");
}

#[test]
fn reasons_and_remedies_of_what_is_not_met_stand_on_the_page() {
    let page = audit("vessels");
    let mut looked = 0;
    for (article, check) in checks(&page) {
        let on_page = text(article);
        for finding in list(&check["profiles"]).iter().flat_map(|p| list(&p["findings"])) {
            if finding["outcome"] == "not-met" {
                let first = plain(&finding["reasons"][0]["text"]);
                assert!(on_page.contains(&first), "{first}");
                // What follows from another finding has no remedy of its own.
                if !said(&finding["remedy"]).starts_with("see to `") {
                    let remedy = plain(&finding["remedy"]);
                    assert!(on_page.contains(&remedy), "{remedy}");
                }
                looked += 1;
            }
        }
        for step in list(&check["profiles"]).iter().flat_map(|p| list(&p["way_to_ready"]["steps"]))
        {
            // A step is told in few words where a finding tells it in full.
            let (full, brief) = (plain(&step["text"]), " (see above)");
            assert!(on_page.contains(&full) || on_page.contains(brief), "{step}");
        }
        for notice in list(&check["notices"]) {
            assert!(on_page.contains(&plain(&notice["text"])), "{notice}");
        }
    }
    assert!(looked > 5, "only {looked} findings are not met");
}

#[test]
fn every_cell_of_the_fleet_has_a_sign_and_a_word() {
    let page = audit("vessels");
    let words = ["✓ met", "✕ not met", "? can't tell", "– not asked"];
    let mut seen = BTreeSet::new();
    for cell in all(page.root_element(), "table.matrix td") {
        let word = text(cell);
        assert!(words.contains(&word.as_str()), "{word}");
        seen.insert(word);
    }
    assert_eq!(seen.len(), words.len(), "the fleet shows only {seen:?}");
}

#[test]
fn ids_are_unique_and_links_lead_somewhere_and_back() {
    for page in [audit("vessels"), audit("tests/browser/hostile")] {
        let root = page.root_element();
        let mut ids = BTreeSet::new();
        for element in all(root, "[id]") {
            let id = element.value().id().unwrap();
            assert!(ids.insert(id.to_owned()), "`{id}` twice");
        }
        let links = all(root, "a");
        assert!(links.len() > 10);
        for link in links {
            let to = link.value().attr("href").unwrap();
            let id = to.strip_prefix('#').unwrap_or_else(|| panic!("{to} leads away"));
            assert!(ids.contains(id), "{to} leads nowhere");
        }
        for named in all(root, "[aria-labelledby]") {
            for id in named.value().attr("aria-labelledby").unwrap().split(' ') {
                assert!(ids.contains(id), "{id} names nothing");
            }
        }
        for article in all(root, "article.vessel") {
            let id = article.value().id().unwrap();
            assert!(!all(root, &format!("#fleet a[href='#{id}']")).is_empty(), "{id}");
            assert_eq!(all(article, "a[href='#fleet']").len(), 1, "{id}");
        }
    }
}

#[test]
fn the_overview_tells_what_the_audit_adds_up_to() {
    let page = audit("vessels");
    let fleet = kitmuster(&["audit", "vessels", "--date", DAY, "--format", "json"]).json();
    let overview = text(one(page.root_element(), "#overview"));
    let totals = &fleet["totals"];
    let counted = format!(
        "{} vessels: {} ready ({} by good practice only), {} not ready, {} can't tell",
        totals["vessels"],
        totals["ready"],
        totals["ready_by_good_practice"],
        totals["not_ready"],
        totals["cannot_tell"]
    );
    assert!(overview.contains(&counted), "{overview}");
    for missed in list(&fleet["most_missed"]) {
        for key in ["title", "clause", "profile"] {
            assert!(overview.contains(said(&missed[key])), "{missed}");
        }
        if let Some(worst) = missed["worst_shortfall"]["text"].as_str() {
            assert!(overview.contains(worst), "{worst}");
            assert!(overview.contains(said(&missed["worst_shortfall"]["vessel"])));
        }
    }
    for lapse in list(&fleet["lapses"]) {
        assert!(overview.contains(said(&lapse["through"])), "{lapse}");
    }
    for mark in list(&fleet["same_marks"]) {
        assert!(overview.contains(said(&mark["mark"])), "{mark}");
    }
    for profile in list(&fleet["vessels"]).iter().flat_map(|v| list(&v["profiles"])) {
        for key in ["id", "edition", "source"] {
            assert!(overview.contains(said(&profile[key])), "{key}: {}", profile[key]);
        }
    }
}

#[test]
fn what_was_not_read_and_what_was_left_out_is_told() {
    let page = audit("tests/browser/hostile");
    let overview = text(one(page.root_element(), "#overview"));
    for part in [
        "Not read (2)",
        "broken.yaml",
        ":3:12: a figure without its unit",
        "Record not laid over:",
        "no vessel here is called",
    ] {
        assert!(overview.contains(part), "{part}: {overview}");
    }
}

#[test]
fn one_vessels_check_is_the_page_that_she_has_in_the_audit() {
    let ran = kitmuster(&["check", "vessels/marlow-tern.yaml", "--format", "html"]);
    assert_eq!(ran.status, 1, "{}", ran.stderr);
    let alone = Html::parse_document(&ran.stdout);
    assert_eq!(text(one(alone.root_element(), "h1")), "Marlow Tern");
    let article = one(alone.root_element(), "article.vessel");
    let fleet = audit("vessels");
    let within = all(fleet.root_element(), "article.vessel");
    let within = within.into_iter().find(|a| text(one(*a, "h2")) == "Marlow Tern").unwrap();
    let parts = |article| -> Vec<String> {
        all(article, ".finding, .met tr, .answers, figure, footer").into_iter().map(text).collect()
    };
    assert!(parts(article).len() > 20);
    assert_eq!(parts(article), parts(within));
}

#[test]
fn a_check_without_a_verdict_for_her_rule_says_so_on_its_page() {
    let ran = kitmuster(&["check", "vessels/far-kestrel.yaml", "--format", "html"]);
    let page = Html::parse_document(&ran.stdout);
    let text = text(page.root_element());
    assert!(text.contains("? can't tell known, not encoded"), "{text}");
}

#[test]
fn of_a_large_fleet_only_what_is_not_in_order_has_a_page_and_the_page_says_so() {
    let folder = tempfile::tempdir().unwrap();
    let vessel = |name: &str, kit: &str| {
        format!(
            "format: vessel/1\nname: {name}\nfreeboard: 3 ft\npermits: []\ngear: []\nareas: []\n\
             trip: {{ depart: 2026-12-02, return: 2026-12-03 }}\nkit: [{kit}]\n"
        )
    };
    let rule = "format: profile/1\nid: one-pair\nrule: one-pair\nedition: first\nencoding: 1\n\
        title: One pair of pliers\nsource: invented\nlanguage: en\nstanding: rule\nbinds: {}\n\
        freeboard from: top of the rail\nrequirements:\n  - id: pliers\n    title: Pliers\n    \
        clause: \"1\"\n    verified: read\n    carry: 1 pair of pliers\n";
    let rule = rule.replace("1 pair of pliers", "1 needle-nose pliers");
    let rule = write(folder.path(), "one-pair.yaml", &rule.replace("binds: {}\n", ""));
    let fleet = folder.path().join("fleet");
    std::fs::create_dir(&fleet).unwrap();
    let pliers = "{ mark: PL-1, kind: needle-nose pliers, condition: serviceable }";
    for number in 0..301 {
        write(&fleet, &format!("v{number}.yaml"), &vessel(&format!("Boat {number}"), pliers));
    }
    write(&fleet, "x.yaml", &vessel("Bare Hands", ""));
    let fleet = fleet.to_string_lossy().to_string();
    let typed = ["audit", &fleet, "--profile", &rule, "--date", DAY, "--format", "html"];
    let ran = kitmuster(&typed);
    let page = Html::parse_document(&ran.stdout);
    let root = page.root_element();
    let pages: Vec<_> = all(root, "article.vessel h2").into_iter().map(text).collect();
    assert_eq!(pages, ["Bare Hands"], "{}", ran.stderr);
    assert_eq!(all(root, "table.matrix tbody tr").len(), 302);
    assert_eq!(all(root, "#fleet a").len(), 1);
    assert!(text(one(root, "#overview")).contains("more than 300 vessels"));
}
