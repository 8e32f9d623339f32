//! What an audit adds up to.

use super::{audit, changed, document, flat, folder, names, typed};
use crate::run;

#[test]
fn the_shipped_fleet_has_its_page() {
    insta::assert_snapshot!("the shipped fleet", audit(&["vessels"], &[]).page());
}

#[test]
fn each_vessel_of_the_fleet_has_the_verdict_of_its_own_check() {
    let fleet = document(&["vessels"], &[]);
    let vessels = fleet["vessels"].as_array().unwrap();
    assert_eq!(vessels.len(), 18);
    let mut counted = [0_u64; 3];
    for vessel in vessels {
        let file = vessel["vessel"]["file"].as_str().unwrap();
        let mut typed = vec!["check", file, "--format", "json"];
        // The fleet's own folder of records holds one of this vessel.
        let record = "vessels/inspections/stillwater-heron-2026-11-27.yaml";
        if file.contains("stillwater-heron") {
            typed.extend(["--inspection", record]);
        }
        let alone = run::kitmuster(&typed).json();
        assert_eq!(alone["verdict"], vessel["verdict"], "{file}");
        for (one, other) in [(&alone, vessel)].iter().flat_map(|(a, b)| {
            let profiles = |v: &serde_json::Value| v["profiles"].as_array().unwrap().clone();
            profiles(a).into_iter().zip(profiles(b)).collect::<Vec<_>>()
        }) {
            assert_eq!(one["findings"], other["findings"], "{file}");
            assert_eq!(one["ready_until"], other["ready_until"], "{file}");
        }
        let place =
            ["ready", "not-ready", "cannot-tell"].iter().position(|v| alone["verdict"] == *v);
        counted[place.unwrap()] += 1;
    }
    let totals = &fleet["totals"];
    let told = ["ready", "not_ready", "cannot_tell"].map(|key| totals[key].as_u64().unwrap());
    assert_eq!(told, counted);
    assert_eq!(totals["vessels"], 18);
}

#[test]
fn the_most_missed_come_first_with_the_middle_and_the_worst_shortfall() {
    // Appendix F, A.1: 150 % of 4 ft 3 in is 6 ft 4 1/2 in.
    let with = |name: &str, handle: &str| {
        changed("marlow-tern.yaml", &[("name: Marlow Tern", name), ("handle: 6 ft 4 in\n", handle)])
    };
    let folder = folder(&[
        ("a.yaml", with("name: One", "handle: 6 ft 4 in\n")),
        ("b.yaml", with("name: Two", "handle: 5 ft\n")),
        ("c.yaml", with("name: Three", "handle: 6 ft 2 1/2 in\n")),
        ("d.yaml", changed("salt-pomelo.yaml", &[])),
    ]);
    let fleet = document(&[typed(&folder)], &[]);
    let first = &fleet["most_missed"][0];
    assert_eq!(first["requirement"], "long-line-cutter");
    assert_eq!(first["clause"], "Appendix F, A.1");
    assert_eq!((first["not_met"].as_u64(), first["cannot_tell"].as_u64()), (Some(3), Some(0)));
    let inches = |half: i64| half * 12_700_000;
    assert_eq!(first["median_shortfall"]["nanometres"], inches(4));
    assert_eq!(first["worst_shortfall"]["nanometres"], inches(33));
    assert_eq!(first["worst_shortfall"]["vessel"], "Two");
    let page = flat(&audit(&[typed(&folder)], &[]));
    assert!(page.contains("not met on 3; too short by 2 in (51 mm) in the median"), "{page}");
}

#[test]
fn what_lapses_is_told_by_its_horizon_and_whether_it_decides() {
    // One cutter expires on day 30 after the audit, a second on day 31; with
    // two of them aboard the first lapse decides nothing.
    let expiring = |day: &str| format!("overall: 18 in\n    expires: {day}");
    let cutter = "    overall: 18 in";
    let second = format!("    {}\n    blade-length: 4 1/4 in", expiring("2026-12-25"));
    let one = changed(
        "marlow-tern.yaml",
        &[
            ("handle: 6 ft 4 in\n", "handle: 7 ft\n"),
            (cutter, &format!("    {}", expiring("2026-12-24"))),
        ],
    );
    let two = changed(
        "marlow-tern.yaml",
        &[
            ("name: Marlow Tern", "name: Twice"),
            ("handle: 6 ft 4 in\n", "handle: 7 ft\n"),
            ("    overall: 18 in\n    blade-length: 4 1/4 in", &second),
            (
                "  - mark: MC-1",
                "  - mark: BC-2\n    kind: bolt cutters\n    overall: 18 in\n    blade-length: 4 1/4 in\n    blade-width: 2 1/4 in\n    cuts-hook: 5/16 in\n\n  - mark: MC-1",
            ),
        ],
    );
    let folder = folder(&[("a.yaml", one), ("b.yaml", two)]);
    let fleet = document(&[typed(&folder)], &[]);
    let told: Vec<_> = fleet["lapses"]
        .as_array()
        .unwrap()
        .iter()
        .map(|l| {
            (
                l["vessel"].as_str().unwrap(),
                l["tool"].as_str().unwrap(),
                l["within_days"].as_u64().unwrap(),
                l["decides"].as_bool().unwrap(),
            )
        })
        .collect();
    assert_eq!(told[0], ("Marlow Tern", "BC-1", 30, true));
    assert!(
        told.iter()
            .skip(1)
            .all(|(vessel, _, within, decides)| *vessel == "Twice" && *within == 60 && !decides),
        "{told:?}"
    );
    let page = flat(&audit(&[typed(&folder)], &[]));
    assert!(page.contains("Lapses within 30 days (1)"), "{page}");
    assert!(
        page.contains("Marlow Tern: BC-1 is good through 2026-12-24; nothing else aboard"),
        "{page}"
    );
}

#[test]
fn what_lapses_before_or_during_the_trip_lapses_all_the_same() {
    // The trip is from 2 to 9 December; the audit on 25 November.
    for (day, expected) in [
        ("2026-11-24", None),
        ("2026-11-25", Some(30)),
        ("2026-11-30", Some(30)),
        ("2026-12-05", Some(30)),
    ] {
        let overall = format!("    overall: 18 in\n    expires: {day}");
        let tern = changed("marlow-tern.yaml", &[("    overall: 18 in", &overall)]);
        let folder = folder(&[("a.yaml", tern)]);
        let fleet = document(&[typed(&folder)], &[]);
        let lapse = &fleet["lapses"][0];
        assert_eq!(lapse["within_days"].as_u64(), expected, "{day}");
        if expected.is_some() {
            assert_eq!(
                (&lapse["tool"], &lapse["decides"]),
                (&"BC-1".into(), &true.into()),
                "{day}"
            );
        }
    }
}

#[test]
fn a_lapse_decides_on_a_vessel_that_is_not_ready_for_another_reason_too() {
    // Marlow Tern's cutter is too short; her only pliers expire after the trip.
    let pliers = "    overall: 11 1/2 in\n    stowed: tool chest\n\n  - mark: BC-1";
    let expiring = pliers.replace("    stowed", "    expires: 2026-12-15\n    stowed");
    let folder = folder(&[("a.yaml", changed("marlow-tern.yaml", &[(pliers, &expiring)]))]);
    let lapse = document(&[typed(&folder)], &[])["lapses"][0].clone();
    assert_eq!((&lapse["tool"], &lapse["decides"]), (&"PL-1".into(), &true.into()));
}

#[test]
fn what_is_broken_does_not_lapse() {
    let pliers = "    overall: 11 1/2 in\n    stowed: tool chest\n\n  - mark: BC-1";
    let broken =
        pliers.replace("    stowed", "    condition: broken\n    expires: 2026-12-05\n    stowed");
    let folder = folder(&[("a.yaml", changed("marlow-tern.yaml", &[(pliers, &broken)]))]);
    assert_eq!(document(&[typed(&folder)], &[])["lapses"], serde_json::json!([]));
}

#[test]
fn of_an_even_number_of_shortfalls_the_median_lies_between_the_middle_two() {
    let short = |name: &str, handle: &str| {
        changed("marlow-tern.yaml", &[("name: Marlow Tern", name), ("handle: 6 ft 4 in\n", handle)])
    };
    let folder = folder(&[
        ("a.yaml", short("name: One", "handle: 6 ft 4 in\n")),
        ("b.yaml", short("name: Two", "handle: 6 ft 3 in\n")),
    ]);
    let first = &document(&[typed(&folder)], &[])["most_missed"][0];
    assert_eq!(first["median_shortfall"]["nanometres"], 25_400_000);
    assert_eq!(first["worst_shortfall"]["vessel"], "Two");
    // Of equals the first is named.
    let folder = self::folder(&[
        ("a.yaml", short("name: One", "handle: 6 ft 3 in\n")),
        ("b.yaml", short("name: Two", "handle: 6 ft 3 in\n")),
    ]);
    let first = &document(&[typed(&folder)], &[])["most_missed"][0];
    assert_eq!(first["worst_shortfall"]["vessel"], "One");
}

#[test]
fn a_shortfall_is_that_of_the_vessels_own_row_and_counts_where_it_is_told_first() {
    // The longer cutter of the first is broken: its row tells another fault.
    let two = |first: &str, second: &str| {
        let cutter = "  - mark: LC-1\n    kind: long-handled line cutter\n    handle: 6 ft 4 in";
        let pair = format!(
            "  - {{ mark: LC-9, kind: long-handled line cutter, {first} }}\n{}",
            cutter.replace("handle: 6 ft 4 in", second)
        );
        changed("marlow-tern.yaml", &[(cutter, &pair)])
    };
    let folder = folder(&[
        ("a.yaml", two("handle: 8 ft, condition: broken", "handle: 2 ft")),
        ("b.yaml", two("handle: 1 ft", "handle: 6 ft 4 in")),
    ]);
    let fleet = document(&[typed(&folder)], &[]);
    let first = &fleet["most_missed"][0];
    let rows = fleet["vessels"].as_array().unwrap().iter().filter_map(|vessel| {
        let findings = vessel["profiles"][0]["findings"].as_array().unwrap();
        let own = findings.iter().find(|f| f["requirement"] == "long-line-cutter").unwrap();
        let told = &own["reasons"][0];
        (told["code"] == "too-short-for-rail").then(|| told["by"]["nanometres"].as_i64().unwrap())
    });
    let rows: Vec<i64> = rows.collect();
    assert_eq!((&first["not_met"], &first["short_on"]), (&2.into(), &rows.len().into()));
    assert_eq!(first["worst_shortfall"]["nanometres"].as_i64(), rows.iter().copied().max());
}

#[test]
fn trips_that_are_over_and_vessels_written_down_twice_are_told() {
    let fleet = document(&["vessels"], &[]);
    let doubts = fleet["doubts"].as_array().unwrap();
    assert_eq!(doubts.len(), 1);
    assert_eq!(doubts[0]["code"], "trips-over");
    let over: Vec<_> =
        doubts[0]["vessels"].as_array().unwrap().iter().map(|v| &v["name"]).collect();
    assert_eq!(over, ["Rusty Plover", "Winter Petrel"]);
    // On the day of return itself the trip is not over.
    let same_day = audit(&["vessels/rusty-plover.yaml"], &["--date", "2019-03-13"]).stdout;
    assert!(!same_day.contains("over"), "{same_day}");
    let twice = folder(&[
        ("a.yaml", changed("marlow-tern.yaml", &[])),
        (
            "b.yaml",
            changed(
                "marlow-tern.yaml",
                &[("Marlow Tern", "Marlow Tern II"), ("PA-104", "pa - 104")],
            ),
        ),
    ]);
    let fleet = document(&[typed(&twice)], &[]);
    assert_eq!(fleet["doubts"][0]["code"], "same-register");
    assert_eq!(fleet["doubts"][0]["vessels"].as_array().unwrap().len(), 2);
}

#[test]
fn a_list_of_more_than_a_year_ago_is_told() {
    // She departs on 2026-12-02.
    for (declared, told) in [("2025-12-01", 1), ("2025-12-03", 0)] {
        let on = format!("  on: {declared}\n  figures");
        let tern = changed("marlow-tern.yaml", &[("  on: 2026-11-20\n  figures", &on)]);
        let fleet = document(&[typed(&folder(&[("a.yaml", tern)]))], &[]);
        let doubts = fleet["doubts"].as_array().unwrap();
        assert_eq!(doubts.iter().filter(|d| d["code"] == "lists-old").count(), told, "{declared}");
    }
}

#[test]
fn a_record_in_the_folder_of_inspections_is_laid_over_its_vessel() {
    let heron = |fleet: &serde_json::Value| {
        let at = names(fleet).iter().position(|name| name == "Stillwater Heron").unwrap();
        fleet["vessels"][at]["verdict"].as_str().unwrap().to_owned()
    };
    assert_eq!(heron(&document(&["vessels"], &[])), "not-ready");
    let alone = document(&["vessels/stillwater-heron.yaml"], &[]);
    assert_eq!(heron(&alone), "ready");
    let with =
        document(&["vessels/stillwater-heron.yaml"], &["--inspection", "vessels/inspections"]);
    assert_eq!(heron(&with), "not-ready");
}

#[test]
fn a_record_of_no_vessel_or_of_two_is_told_and_laid_over_none() {
    let heron = changed("stillwater-heron.yaml", &[]);
    let record = std::fs::read_to_string(
        run::home().join("vessels/inspections/stillwater-heron-2026-11-27.yaml"),
    )
    .unwrap();
    let other = changed("stillwater-heron.yaml", &[("PA-158", "PA-159")]);
    let stray = folder(&[
        ("tern.yaml", changed("marlow-tern.yaml", &[])),
        ("inspections/r.yaml", record.clone()),
    ]);
    let ran = audit(&[typed(&stray)], &[]);
    assert_eq!(ran.status, 1);
    assert!(flat(&ran).contains("no vessel here is called `Stillwater Heron`"), "{}", ran.stdout);
    // A slip in the name may leave a vessel ready that is not.
    let slip = record.replace("vessel: Stillwater Heron", "vessel: Stillwater Haron");
    let slipped = folder(&[("a.yaml", heron.clone()), ("inspections/r.yaml", slip)]);
    for format in ["table", "json", "lines", "csv", "html"] {
        let ran = audit(&[typed(&slipped)], &["--format", format]);
        assert_eq!(ran.status, 2, "{format}");
        let (open, close) = if format == "html" { ("<code>", "</code>") } else { ("`", "`") };
        let asked = format!("is it of {open}Stillwater Heron{close}?");
        assert!(flat(&ran).contains(&asked), "{format}: {}", ran.stdout);
    }
    // Two strokes may be a slip, three are another name.
    for (name, near) in [("Stillwater Harin", true), ("Stillwater Harina", false)] {
        let slip = record.replace("vessel: Stillwater Heron", &format!("vessel: {name}"));
        let slipped = folder(&[("a.yaml", heron.clone()), ("inspections/r.yaml", slip)]);
        let left_out = document(&[typed(&slipped)], &[])["records_left_out"].clone();
        assert_eq!(left_out[0]["near"] == "Stillwater Heron", near, "{left_out}");
    }
    let twice = folder(&[("a.yaml", heron), ("b.yaml", other), ("inspections/r.yaml", record)]);
    let left_out = document(&[typed(&twice)], &[])["records_left_out"].clone();
    assert_eq!(
        (&left_out[0]["vessels_called_so"], &left_out[0]["near"]),
        (&2.into(), &serde_json::Value::Null)
    );
    let ran = audit(&[typed(&twice)], &[]);
    assert_eq!(ran.status, 2, "{}", ran.stdout);
    assert!(ran.stdout.contains("2 ready"), "{}", ran.stdout);
    let page = flat(&ran);
    assert!(page.contains("2 vessels here are called `Stillwater Heron`"), "{page}");
}
