//! What a vessel can say of its freeboard: a figure, a range, stations,
//! readings that dispute it, from the rail or from the deck.

use super::{by, made};
use crate::outfit::{Judged, just_over, just_under, vessel};

const CUTTER: &str = "{ mark: LC-1, kind: long-handled line cutter, handle: HANDLE }";

fn cutter(freeboard: &str, handle: &str) -> Judged {
    by("plain.yaml", &vessel(freeboard).with(&[CUTTER.replace("HANDLE", handle)]))
}

fn hoop_net(freeboard: &str, rope: &str) -> String {
    let net = format!("{{ mark: HN-1, kind: collapsible hoop net, rope-length: {rope} }}");
    by("plain.yaml", &vessel(freeboard).with(&[net])).outcome("low-net").to_owned()
}

#[test]
fn a_range_is_judged_at_its_worst_end() {
    let range = "3 ft 10 in to 4 ft 2 in";
    let good = cutter(range, "6 ft 3 in");
    assert_eq!(good.outcome("cutter"), "met");
    let short = cutter(range, &just_under("6 ft 3 in"));
    assert_eq!(
        (short.outcome("cutter"), short.codes("cutter")),
        ("not-met", vec!["too-short-for-rail"])
    );
    assert_eq!(short.finding("cutter")["freeboard"]["nanometres"], 50 * 25_400_000_i64);
    assert_eq!(short.finding("cutter")["reasons"][0]["by"]["nanometres"], 1);
    // A greatest length is worst at the bottom: 300 % of 3 ft 10 in.
    let pole = |length: &str| {
        let tool = format!("{{ mark: CT-1, kind: control tether on a pole, pole: {length} }}");
        by("plain.yaml", &vessel(range).with(&[tool]))
    };
    assert_eq!(pole("11 ft 6 in").outcome("pole"), "met");
    let long = pole(&just_over("11 ft 6 in"));
    assert_eq!(long.outcome("pole"), "not-met");
    assert_eq!(long.finding("pole")["reasons"][0]["by"]["nanometres"], 1);
}

#[test]
fn a_range_is_judged_only_where_the_rule_binds() {
    // The rule is for 4 ft or less: 150 % of 4 ft is 6 ft, of 6 ft 9 ft.
    assert_eq!(hoop_net("3 ft to 6 ft", "6 ft"), "met");
    assert_eq!(hoop_net("3 ft to 6 ft", &just_under("6 ft")), "not-met");
    assert_eq!(hoop_net("4 ft 1 in to 6 ft", "1 ft"), "unbound");
}

/// The way to ready for a range is asked for where a rule ends too, and not
/// where the vessel never is.
#[test]
fn the_way_for_a_range_looks_where_a_rule_ends_inside_it() {
    let way = |freeboard: &str| by("plain.yaml", &vessel(freeboard)).only()["way_to_ready"].clone();
    let asked = |way: &serde_json::Value, requirement: &str| {
        let steps = way["steps"].as_array().unwrap();
        let one = steps.iter().find(|step| step["requirement"] == requirement);
        one.map(|step| step["text"].as_str().unwrap().to_owned())
    };
    // 150 % of 4 ft, where the rule ends, not of 3 ft.
    let across = way("3 ft to 6 ft");
    assert_eq!((&across["state"], &across["fewest"]), (&"steps".into(), &true.into()));
    let net = asked(&across, "low-net").unwrap();
    assert!(net.contains("at least 6 ft"), "{net}");
    let above = way(&format!("{} to 6 ft", just_over("4 ft")));
    assert_eq!((&above["state"], &above["fewest"]), (&"steps".into(), &true.into()), "{above}");
    assert_eq!(asked(&above, "low-net"), None);
}

#[test]
fn several_stations_are_no_range() {
    let stations = "{ from: top of the rail, stations: [{ name: starboard, freeboard: 3 ft }, { name: stern, freeboard: 6 ft }] }";
    assert_eq!(hoop_net(stations, "4 ft 6 in"), "met");
    assert_eq!(hoop_net(stations, &just_under("4 ft 6 in")), "not-met");
    assert_eq!(cutter(stations, "9 ft").outcome("cutter"), "met");
    let short = cutter(stations, &just_under("9 ft"));
    assert_eq!(short.outcome("cutter"), "not-met");
    assert_eq!(short.finding("cutter")["freeboard"]["nanometres"], 72 * 25_400_000_i64);
}

#[test]
fn a_station_may_have_a_range() {
    let stations = "{ from: top of the rail, stations: [{ name: bow, freeboard: 5 ft to 7 ft }, { name: stern, freeboard: { value: 3 ft, load: light, on: 2026-02-01 } }] }";
    assert_eq!(cutter(stations, "10 ft 6 in").outcome("cutter"), "met");
    assert_eq!(cutter(stations, &just_under("10 ft 6 in")).outcome("cutter"), "not-met");
}

/// The pole is asked for at 4 ft or less, and may be 9 ft there at 3 ft.
#[test]
fn what_binds_at_one_of_two_readings_only_is_disputed_unless_it_is_met() {
    let readings = "[{ value: 3 ft, by: A. Holder, on: 2026-01-05 }, { value: 5 ft, by: B. Mate, on: 2026-01-06 }]";
    let turned = "[{ value: 5 ft, by: A. Holder, on: 2026-01-05 }, { value: 3 ft, by: B. Mate, on: 2026-01-06 }]";
    for readings in [readings, turned] {
        let pole = |length: &str| {
            let tool = format!("{{ mark: TE-1, kind: control tether on a pole, pole: {length} }}");
            by("plain.yaml", &vessel(readings).with(&[tool]))
        };
        assert_eq!(pole("9 ft").outcome("pole"), "met");
        let long = pole(&just_over("9 ft"));
        assert_eq!(long.outcome("pole"), "cannot-tell");
        assert_eq!(long.finding("pole")["reasons"][0]["fact"], "freeboard-disputed");
    }
}

#[test]
fn readings_of_the_freeboard_that_differ_across_a_limit_dispute_it() {
    let readings = "[{ value: 4 ft, by: A. Holder, on: 2026-01-05 }, { value: 4 ft 6 in, by: B. Mate, on: 2026-01-06 }]";
    assert_eq!(cutter(readings, "7 ft").outcome("cutter"), "met");
    assert_eq!(cutter(readings, "5 ft").outcome("cutter"), "not-met");
    let between = cutter(readings, "6 ft 6 in");
    assert_eq!(between.outcome("cutter"), "cannot-tell");
    assert_eq!(between.finding("cutter")["reasons"][0]["fact"], "freeboard-disputed");
}

#[test]
fn the_tapes_error_of_a_freeboard_widens_it() {
    let measured = "{ value: 5 ft, error: 1 in }";
    assert_eq!(cutter(measured, "7 ft 7 1/2 in").outcome("cutter"), "met");
    assert_eq!(cutter(measured, &just_under("7 ft 7 1/2 in")).outcome("cutter"), "cannot-tell");
    assert_eq!(cutter(measured, "7 ft 4 1/2 in").outcome("cutter"), "cannot-tell");
    assert_eq!(cutter(measured, &just_under("7 ft 4 1/2 in")).outcome("cutter"), "not-met");
}

/// Where a rule binds in a narrow band alone, it counts that the freeboard may
/// lie in it, though neither end does.
#[test]
fn a_band_between_the_ends_of_what_a_freeboard_may_be_counts() {
    let pliers = ["{ mark: PL-1, kind: pliers }"];
    // The same, written as lists of alternatives.
    let by_lists = made(&["id: in-the-band, title: B, carry: 1 pliers, \
                           when: { any of: [{ freeboard: 3 ft 11 in or more }] }, \
                           unless: [{ any of: [{ freeboard: 4 ft 1 in or more }] }]"]);
    let banded = |freeboard: &str, kit: &[&str]| {
        let vessel = vessel(freeboard).with(kit);
        let judged = by("band.yaml", &vessel).outcome("in-the-band").to_owned();
        assert_eq!(by_lists.judges(&vessel).outcome("in-the-band"), judged);
        judged
    };
    let within = "{ value: 4 ft, error: 2 in }";
    assert_eq!(banded(within, &[]), "cannot-tell");
    assert_eq!(banded(within, &pliers), "met");
    // Neither the figure nor an end of its error lies in the band.
    assert_eq!(banded("{ value: 3 ft 9 in, error: 5 in }", &[]), "cannot-tell");
    assert_eq!(banded("{ value: 4 ft, error: 0.5 in }", &[]), "not-met");
    assert_eq!(banded("{ value: 4 ft 6 in, error: 2 in }", &[]), "unbound");
    assert_eq!(banded("3 ft to 5 ft", &[]), "not-met");
    // Where nobody knows whether it binds, what is there is met all the same.
    let unmeasured = |kit: &[&str]| {
        let judged = by("band.yaml", &vessel("4 ft").unsaid("freeboard").with(kit));
        judged.outcome("in-the-band").to_owned()
    };
    assert_eq!((unmeasured(&pliers), unmeasured(&[])), ("met".into(), "cannot-tell".into()));
}

#[test]
fn without_a_freeboard_only_what_fails_anywhere_is_not_met() {
    let unmeasured = |handle: &str| {
        let vessel = vessel("5 ft").unsaid("freeboard").with(&[CUTTER.replace("HANDLE", handle)]);
        by("plain.yaml", &vessel)
    };
    let long = unmeasured("12 ft");
    assert_eq!(long.outcome("cutter"), "cannot-tell");
    assert_eq!(long.finding("cutter")["reasons"][0]["fact"], "freeboard");
    assert_eq!(unmeasured("5 ft").outcome("cutter"), "not-met");
}

#[test]
fn without_a_freeboard_the_kit_is_good_from_the_water_up() {
    let good_up_to = |pliers: &str| {
        let kit = [
            format!("{{ mark: PL-1, kind: {pliers}, overall: 11 in }}"),
            CUTTER.replace("HANDLE", "9 ft"),
        ];
        let judged = by("deck.yaml", &vessel("5 ft").unsaid("freeboard").with(&kit));
        judged.only()["good_up_to"].clone()
    };
    let good = good_up_to("pliers");
    assert_eq!(good["state"], "freeboard", "{good}");
    assert_eq!(good["length"]["nanometres"], 6 * 304_800_000_i64, "{good}");
    assert_eq!(good_up_to("bolt cutters")["state"], "none");
}

#[test]
fn a_freeboard_from_the_wrong_place_is_a_bound() {
    let kit = [
        CUTTER.replace("HANDLE", "6 ft"),
        "{ mark: PL-1, kind: pliers, overall: 11 in }".to_owned(),
    ];
    let on = |profile: &str, freeboard: &str| by(profile, &vessel(freeboard).with(&kit));
    let right = on("deck.yaml", "4 ft from the working deck");
    assert_eq!((right.outcome("cutter"), right.verdict()), ("met", "ready"));
    assert_eq!(on("deck.yaml", "4 ft 1 in from the working deck").outcome("cutter"), "not-met");
    assert_eq!(on("deck.yaml", "{ from: working deck, value: 4 ft }").outcome("cutter"), "met");
    // A deck is never above its rail: 6 ft is 150 % of 4 ft or of less.
    let rail = on("deck.yaml", "4 ft");
    assert_eq!((rail.outcome("cutter"), rail.verdict()), ("met", "ready"));
    let higher = on("deck.yaml", "4 ft 1 in");
    assert_eq!((higher.outcome("cutter"), higher.outcome("pliers")), ("cannot-tell", "met"));
    assert_eq!(higher.finding("cutter")["reasons"][0]["fact"], "freeboard-from");
    // The rail may be higher than the deck, and is never lower.
    let deck = on("plain.yaml", "4 ft from the working deck");
    assert_eq!((deck.outcome("cutter"), deck.outcome("pliers")), ("cannot-tell", "met"));
    let too_high = on("plain.yaml", "5 ft 6 in from the working deck");
    assert_eq!(too_high.outcome("cutter"), "not-met");
}

#[test]
fn a_vessel_may_state_both_freeboards() {
    let kit = [
        CUTTER.replace("HANDLE", "6 ft"),
        "{ mark: PL-1, kind: pliers, overall: 11 in }".to_owned(),
    ];
    let both = "[4 ft 9 in from the top of the rail, 4 ft from the working deck]";
    let on = |profile: &str, freeboard: &str| by(profile, &vessel(freeboard).with(&kit));
    assert_eq!(on("deck.yaml", both).outcome("cutter"), "met");
    assert_eq!(on("plain.yaml", both).outcome("cutter"), "not-met");
    let low = "[4 ft from the top of the rail, 3 ft from the working deck]";
    assert_eq!(on("plain.yaml", low).outcome("cutter"), "met");
    assert_eq!(on("deck.yaml", both).json["vessel"]["freeboard"]["from"], "rail");
}

#[test]
fn good_up_to_names_what_gives_out_just_above() {
    // 9 ft is 150 % of 6 ft; pliers, gags and papers do not mind the rail.
    let kit = [
        "{ mark: T-1, kind: bolt cutters, cuts-hook: 6 mm }",
        "{ mark: LC-1, kind: long-handled line cutter, handle: 9 ft, cuts-monofilament: 2 mm }",
    ];
    let deck =
        vessel("4 ft from the working deck").with(&kit).with(&["{ mark: PL-1, kind: pliers }"]);
    let judged = by("deck.yaml", &deck);
    let up_to = &judged.only()["good_up_to"];
    assert_eq!(up_to["state"], "freeboard");
    assert_eq!(up_to["length"]["nanometres"], 72 * 25_400_000_i64);
    assert_eq!(up_to["gives_out"], serde_json::json!(["cutter"]));
    let beyond = by("deck.yaml", &deck.set("freeboard", "7 ft from the working deck"));
    assert_eq!(beyond.only()["good_up_to"]["state"], "only-below");
    assert_eq!(beyond.only()["good_up_to"]["length"]["nanometres"], 72 * 25_400_000_i64);
}

/// The stretches of freeboard, up to twice the vessel's own, with what fails
/// in each: nothing said twice, nothing left out.
#[test]
fn the_stretches_tell_where_what_fails() {
    let rule = made(&[
        "id: a, title: A, carry: 1 long-handled line cutter, with: { handle: at least 150% of freeboard }",
        "id: b, title: B, carry: 1 pliers, when: { freeboard: 4 ft or less }",
        "id: c, title: C, carry: 1 dip net, with: { handle: at least freeboard }",
        "id: d, title: D, carry: 1 tire, inspection due: every 12 months",
    ]);
    let kit = [
        "{ mark: LC, kind: long-handled line cutter, handle: 9 ft }",
        "{ mark: DN, kind: dip net, handle: 8 ft }",
        "{ mark: TI, kind: tire, inspected: 2025-03-05 }",
    ];
    let stretches = |vessel: &crate::outfit::Outfit, trip: [&str; 2]| {
        let judged = vessel.check(&["--profile", &rule.path, "--on", trip[0], "--return", trip[1]]);
        let feet = |length: &serde_json::Value| {
            let feet = length["nanometres"].as_i64().unwrap() as f64 / 304_800_000.0;
            format!("{feet:.3}")
        };
        let told = |one: &serde_json::Value| {
            let fails: Vec<_> =
                one["fails"].as_array().unwrap().iter().map(|f| f.as_str().unwrap()).collect();
            let (from, to) = (feet(&one["from"]), feet(&one["to"]));
            format!("{from} to {to} {} {}", one["verdict"].as_str().unwrap(), fails.join(","))
        };
        let all = judged.only()["stretches"].as_array().unwrap();
        all.iter().map(told).map(|line| line.trim_end().to_owned()).collect::<Vec<_>>()
    };
    let (one_day, into_the_lapse) = (["2026-03-02", "2026-03-02"], ["2026-03-02", "2026-03-09"]);
    let high = vessel("5 ft").with(&kit);
    assert_eq!(
        stretches(&high, one_day),
        [
            "0.000 to 4.000 not-ready b",
            "4.000 to 6.000 ready",
            "6.000 to 8.000 not-ready a",
            "8.000 to 10.000 not-ready a,c",
        ]
    );
    assert_eq!(
        stretches(&high, into_the_lapse),
        [
            "0.000 to 4.000 not-ready b,d",
            "4.000 to 6.000 not-ready d",
            "6.000 to 8.000 not-ready a,d",
            "8.000 to 10.000 not-ready a,c,d",
        ]
    );
    let low = vessel("2 ft").with(&kit).with(&["{ mark: P, kind: pliers, condition: unknown }"]);
    assert_eq!(stretches(&low, one_day), ["0.000 to 4.000 cannot-tell b"]);
    // Twice 3 ft is where the handle gives out, a hair more is beyond it.
    let pliers = ["{ mark: P, kind: pliers }"];
    let three = vessel("3 ft").with(&kit).with(&pliers);
    assert_eq!(stretches(&three, one_day), ["0.000 to 6.000 ready"]);
    let unmeasured = vessel("5 ft").unsaid("freeboard").with(&kit).with(&pliers);
    assert_eq!(
        stretches(&unmeasured, one_day),
        ["0.000 to 6.000 ready", "6.000 to 8.000 not-ready a", "8.000 to 8.000 not-ready a,c"]
    );
}

/// Ready at its own freeboard and not below: good up to where the handle gives
/// out. Where a rule begins at twice its own, that point is told.
#[test]
fn what_fails_below_is_no_end_of_what_is_good() {
    let rule = made(&[
        "id: a, title: A, carry: 1 long-handled line cutter, with: { handle: at least 150% of freeboard }",
        "id: b, title: B, carry: 1 pliers, when: { freeboard: 4 ft or less }",
    ]);
    let cutter = ["{ mark: LC, kind: long-handled line cutter, handle: 9 ft }"];
    let judged = rule.judges(&vessel("5 ft").with(&cutter));
    let good = &judged.only()["good_up_to"];
    assert_eq!(good["state"], "freeboard", "{good}");
    assert_eq!(good["length"]["nanometres"], 6 * 304_800_000_i64, "{good}");
    let begins = made(&["id: c, title: C, carry: 1 tire, when: { freeboard: 4 ft or more }"]);
    let judged = begins.judges(&vessel("2 ft"));
    let stretches = judged.only()["stretches"].as_array().unwrap();
    let verdicts: Vec<_> = stretches.iter().map(|one| one["verdict"].clone()).collect();
    assert_eq!(verdicts, ["ready", "not-ready"], "{stretches:?}");
}
