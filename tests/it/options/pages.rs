//! The page: what a skipper reads.

use super::{FULL, file, options, samples, without};

#[test]
fn a_kit_with_a_pole_that_is_too_short() {
    let ran = options("vessels/marlow-tern.yaml", &[]);
    insta::assert_snapshot!(ran.page());
}

#[test]
fn a_small_boat_with_a_low_rail_and_a_price() {
    let flags = ["--catalogue", "suppliers/tarnholt-ship-stores.yaml"];
    let ran = options("vessels/little-knot.yaml", &flags);
    insta::assert_snapshot!(ran.page());
}

#[test]
fn a_kit_of_which_much_is_not_known() {
    let ran = options("vessels/vesper-noddy.yaml", &[]);
    insta::assert_snapshot!(ran.page());
}

#[test]
fn every_page_fits_eighty_columns() {
    for vessel in samples() {
        for units in ["both", "metric", "customary"] {
            let ran = options(&vessel, &["--on", "2026-12-02", "--units", units]);
            assert!(ran.status < 2, "{vessel}: {}", ran.stderr);
            for line in ran.stdout.lines() {
                assert!(line.chars().count() <= 80, "{vessel}: {line}");
            }
        }
    }
}

/// The line about a situation and what is set in below it.
fn of<'a>(page: &'a str, heading: &str, title: &str) -> Vec<&'a str> {
    let mut lines = page.lines().skip_while(|line| *line != heading);
    let head = lines.find(|line| line.get(4..).is_some_and(|rest| rest.starts_with(title)));
    let below = lines.take_while(|line| line.starts_with("    "));
    head.into_iter().chain(below).collect()
}

#[test]
fn a_rail_that_nothing_reaches_over_is_told_loudly() {
    let high = FULL.replace("freeboard: 2 ft 10 in", "freeboard: 12 ft");
    let ran = options(&file(&high).path, &[]);
    assert_eq!(ran.status, 1);
    let lines = of(
        &ran.stdout,
        "In the water alongside: stays in the water",
        "Hooked in the mouth or deeper",
    );
    let head = "  ! Hooked in the mouth or deeper                    NO WAY AT ALL with this kit";
    assert_eq!(lines[0], head, "{}", ran.stdout);
    assert_eq!(lines[1], "    GET FIRST: Lengthen LC-1 to a handle of at least 18 ft (5.487 m).");
    // What is done on deck needs no reach.
    let lines = of(&ran.stdout, "On deck", "Hook swallowed");
    assert!(lines[0].ends_with("first choice"), "{lines:?}");
}

#[test]
fn a_missing_gag_costs_the_first_choice_in_the_mouth_and_is_told_once() {
    let ran = options(&file(&without(&["HR-1"])).path, &[]);
    let lines = of(&ran.stdout, "On deck", "Hooked in the mouth, circle hook, point buried");
    assert!(lines[0].ends_with("fallback"), "{}", ran.stdout);
    assert_eq!(lines[1], "    Leave the hook and cut the line at the eye: MC-1");
    assert!(lines[2].starts_with("    closed: hold the mouth open with a gag, then push"));
    let told = ran.stdout.lines().filter(|l| l.ends_with(") A gag that holds the mouth open"));
    assert_eq!(told.count(), 1, "{}", ran.stdout);
    assert_eq!(ran.stdout.matches("why: ").count(), 1, "{}", ran.stdout);
    assert!(ran.stdout.contains("wanting in 2 situations"), "{}", ran.stdout);
}

#[test]
fn hooks_that_nobody_wrote_down_are_told_once_above() {
    let text = FULL.replace("  - { name: circle hooks, type: circle, wire: 4.5 mm }\n", "");
    let text = text.replace("hooks:\n", "");
    let ran = options(&file(&text).path, &[]);
    assert_eq!(ran.stdout.matches("which types of hook are aboard").count(), 1, "{}", ran.stdout);
    assert!(ran.stdout.contains("of 25 situations"), "{}", ran.stdout);
}

#[test]
fn the_tool_that_lifts_most_is_priced_from_the_catalogue() {
    let no_net = file(&without(&["DN-1"]));
    let with = |catalogue: &str| options(&no_net.path, &["--catalogue", catalogue]).stdout;
    let page = with("suppliers/tarnholt-ship-stores.yaml");
    assert!(page.contains("Lifts most: Bring a dip net"), "{page}");
    // 318.00 USD in the catalogue for TS-310, handle 8 ft.
    assert!(page.contains("TS-310 of Tarnholt Ship"), "{page}");
    assert!(page.contains("318.00 USD, without delivery and tax"), "{page}");
    let without_price = options(&no_net.path, &[]).stdout;
    assert!(!without_price.contains("To buy:"), "{without_price}");
    let full = options(&file(FULL).path, &[]).stdout;
    assert!(!full.contains("Lifts most:"), "{full}");
}

#[test]
fn metric_units_alone_are_printed_where_they_are_asked_for() {
    let flags = ["--units", "metric"];
    let page = options("vessels/marlow-tern.yaml", &flags).stdout;
    let judged = page.split("How this was judged").next().unwrap();
    assert!(judged.contains("freeboard 1.295 m"), "{judged}");
    // 150 % of 4 ft 3 in is 1.9431 m: a minimum rounds up.
    assert!(judged.contains("at least 1.944 m"), "{judged}");
    assert!(!judged.contains(" ft ") && !judged.contains(" in ("), "{judged}");
}

#[test]
fn what_would_steer_the_terminal_is_refused_or_shown_instead() {
    let harmless = |text: &str| !text.contains(['\u{1b}', '\u{7}', '\u{202e}', '\u{9b}']);
    // In a mark it is refused.
    let mark = FULL.replace("mark: DN-1,", "mark: \"D\\u001b]0;x\\u0007N\\u202e\",");
    for flags in [&[][..], &["--case", "alongside,boardable,swallowed"], &["--format", "json"]] {
        let ran = options(&file(&mark).path, flags);
        assert_eq!((ran.status, ran.stdout.as_str()), (2, ""));
        assert!(harmless(&ran.stderr) && ran.stderr.contains("\\u{1b}"), "{:?}", ran.stderr);
    }
    // In a case it is no word, and in a file's name it is shown as an escape.
    let ran = options(&file(FULL).path, &["--case", "aboard,\u{1b}[31mred\u{9b}"]);
    assert_eq!((ran.status, ran.stdout.as_str()), (2, ""));
    assert!(harmless(&ran.stderr) && ran.stderr.contains("\\u{1b}"), "{:?}", ran.stderr);
    let folder = tempfile::tempdir().unwrap();
    let path = crate::run::write(folder.path(), "v\u{1b}[31m\u{202e}.yaml", FULL);
    let record = "format: inspection/1\nvessel: Plain Grebe\non: 2026-11-25\nfound: []\n";
    let record = crate::run::write(folder.path(), "r\u{1b}[31m.yaml", record);
    for flags in [&[][..], &["--case", "aboard,swallowed"], &["--format", "json"]] {
        let ran = options(&path, &[flags, &["--inspection", &record]].concat());
        assert_eq!(ran.status, 0, "{}", ran.stderr);
        assert!(harmless(&ran.stdout) && harmless(&ran.stderr), "{:?}", ran.stdout);
    }
}

#[test]
fn a_trip_without_a_return_is_told() {
    let text = FULL.replace(", return: 2026-12-09", "");
    let ran = options(&file(&text).path, &[]);
    assert!(ran.stdout.contains("trip of one day, 2026-12-02"), "{}", ran.stdout);
    assert!(ran.stdout.contains("note: no day of return"), "{}", ran.stdout);
}

/// Two hauling stations, one so high that nothing reaches: what is open at the
/// other is told, and that it is not so at every rail.
#[test]
fn a_way_that_is_open_at_one_station_only_says_where_to_bring_the_animal() {
    let rails = "freeboard: { from: top of the rail, stations: [{ name: port roller, freeboard: \
                 2 ft 10 in }, { name: stern, freeboard: 14 ft }] }";
    let two = file(&FULL.replace("freeboard: 2 ft 10 in", rails));
    let ran = options(&two.path, &[]);
    assert_eq!(ran.status, 1);
    let page = ran.stdout.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(!page.contains("NO WAY AT ALL"), "{page}");
    assert!(page.contains("Hooked in the mouth or deeper NO WAY AT EVERY RAIL"), "{page}");
    let there = "yet at port roller: cut the line short from the rail (LC-1); bring it there.";
    assert!(page.contains(there), "{page}");
    let case = options(&two.path, &["--case", "alongside,large,swallowed"]);
    let answer: Vec<&str> = case.stdout.lines().collect();
    assert_eq!(
        answer[1],
        "Do: NO WAY AT EVERY RAIL with this kit - at port roller: cut the line short from the \
         rail (LC-1); bring it there."
    );
    assert!(
        answer[2].contains("from the rail, at every rail - first lengthen LC-1"),
        "{}",
        answer[2]
    );
    let json = options(&two.path, &["--format", "json", "--case", "alongside,large,swallowed"]);
    let json: serde_json::Value = serde_json::from_str(&json.stdout).unwrap();
    let better_at = &json["situations"][0]["better_at"];
    assert_eq!(*better_at, serde_json::json!([{ "station": "port roller", "best": 0 }]));
    // One station alone has nowhere else to be brought to.
    let one = options("vessels/marlow-tern.yaml", &["--format", "json"]).stdout;
    let one: serde_json::Value = serde_json::from_str(&one).unwrap();
    let all = one["situations"].as_array().unwrap();
    assert!(all.iter().all(|s| s["better_at"] == serde_json::json!([])));
}
