//! What is not said, not known here, or lies ahead never makes a vessel
//! ready.

use crate::outfit::gear::appendix_f::{EXTERNAL, INTERNAL, PLIERS};
use crate::outfit::{Judged, vessel};
use crate::run::{kitmuster, write};

const GULF: &str = "us-gulf-reef-fish-2019";
const ON: &str = "2026-03-02";

fn notices(judged: &Judged) -> Vec<&str> {
    judged.json["notices"].as_array().unwrap().iter().map(|n| n["code"].as_str().unwrap()).collect()
}

fn verdict(judged: &Judged) -> &str {
    judged.json["verdict"].as_str().unwrap()
}

#[test]
fn permits_that_nobody_wrote_down_leave_open_which_rule_binds() {
    let unsaid = vessel("3 ft").set("gear", "[rod-and-reel]").unsaid("permits");
    let judged = unsaid.check(&["--on", ON]);
    assert_eq!(verdict(&judged), "cannot-tell");
    assert!(notices(&judged).contains(&"may-bind"), "{:?}", notices(&judged));
    let none = unsaid.set("permits", "[]").set("areas", "[elsewhere]").check(&["--on", ON]);
    assert!(!notices(&none).contains(&"may-bind"), "{:?}", notices(&none));
    assert!(notices(&none).contains(&"no-rule-names-vessel"));
}

/// A check tells of one vessel what an audit tells of many: a planned trip
/// that is over, and a list from more than a year before departure.
#[test]
fn a_trip_that_is_over_and_an_old_list_are_told() {
    let codes = |declared: &str, arguments: &[&str]| {
        let trip = "{ depart: 2026-03-02, return: 2026-03-09 }";
        let vessel = vessel("3 ft").set("trip", trip);
        let vessel = vessel.set("declared", &format!("{{ by: A, on: {declared} }}"));
        let folder = tempfile::tempdir().unwrap();
        let path = write(folder.path(), "vessel.yaml", &vessel.yaml());
        let told = |json: &serde_json::Value, list: &str| {
            let all =
                json[list].as_array().unwrap().iter().map(|one| one["code"].as_str().unwrap());
            let bears =
                |code: &&str| ["trip-over", "list-old", "trips-over", "lists-old"].contains(code);
            all.filter(bears).map(str::to_owned).collect::<Vec<_>>()
        };
        let ran = |command: &str| {
            kitmuster(&[&[command, &path, "--format", "json"], arguments].concat()).json()
        };
        (told(&ran("check"), "notices"), told(&ran("audit"), "doubts"))
    };
    let (none, nothing): (Vec<String>, Vec<String>) = (Vec::new(), Vec::new());
    assert_eq!(codes("2026-03-01", &["--date", "2026-03-09"]), (none, nothing));
    let (check, audit) = codes("2026-03-01", &["--date", "2026-03-10"]);
    assert_eq!((check, audit), (vec!["trip-over".to_owned()], vec!["trips-over".to_owned()]));
    // A year runs to the day before the anniversary.
    let (check, audit) = codes("2025-03-03", &["--date", "2026-03-09"]);
    assert!(check.is_empty() && audit.is_empty(), "{check:?} {audit:?}");
    let (check, audit) = codes("2025-03-02", &["--date", "2026-03-09"]);
    assert_eq!((check, audit), (vec!["list-old".to_owned()], vec!["lists-old".to_owned()]));
}

/// What was only assumed of a hook or a line that nobody wrote down is no
/// figure that anybody is asked for.
#[test]
fn an_assumed_figure_is_no_demand() {
    let folder = tempfile::tempdir().unwrap();
    let rule = "format: profile/1\nid: own\nrule: own\nedition: one\ntitle: Own\n\
                standing: good practice\nrequirements:\n  \
                - { id: bolt, title: B, verified: common practice, carry: 1 bolt cutters, with: { cuts-hook: at least the heaviest hook aboard } }\n  \
                - { id: line, title: L, verified: common practice, carry: 1 line cutters, with: { cuts-monofilament: at least the thickest line aboard } }\n";
    let rule = write(folder.path(), "own.yaml", rule);
    let tools = ["{ mark: BC-1, kind: bolt cutters }", "{ mark: MC-1, kind: line cutters }"];
    for kit in [&tools[..], &[]] {
        let bare = vessel("3 ft").unsaid("hooks").unsaid("lines").with(kit);
        let judged = bare.under(&rule, ON);
        let way = judged.only()["way_to_ready"].to_string();
        assert!(way.contains("steps"), "{way}");
        for figure in ["0.04 in", "1 mm"] {
            assert!(!way.contains(figure), "{kit:?}: {way}");
        }
    }
}

/// By a word that nobody knows no rule is found, so that none was checked.
#[test]
fn words_that_nobody_knows_make_no_vessel_ready() {
    let shipped = std::fs::read_to_string("vessels/amber-shearwater.yaml").unwrap();
    let folder = tempfile::tempdir().unwrap();
    let with = |key: &str, words: &str| {
        let lines = shipped.lines().map(|line| match line.starts_with(&format!("{key}:")) {
            true => format!("{key}: {words}"),
            false => line.to_owned(),
        });
        let text = lines.collect::<Vec<_>>().join("\n");
        assert_ne!(text, shipped.trim_end(), "{key}");
        let path = write(folder.path(), "vessel.yaml", &text);
        let json = kitmuster(&["check", &path, "--format", "json"]).json();
        Judged { ran: kitmuster(&["check", &path]), json }
    };
    for (key, words) in [
        ("permits", "[crab]"),
        ("permits", "[dolphin-wahoo-commercial, crab]"),
        ("gear", "[drift net]"),
        ("gear", "[trap, drift net]"),
    ] {
        let judged = with(key, words);
        assert_eq!(verdict(&judged), "cannot-tell", "{key}: {words}");
        assert!(notices(&judged).contains(&"unknown-words"), "{:?}", notices(&judged));
        assert_eq!(judged.ran.status, 1);
        assert!(judged.ran.stdout.starts_with("CAN'T TELL"), "{}", judged.ran.page());
    }
    // Nor not ready by what the house misses, which may be no rule's word.
    let empty = |gear: &str| {
        let bare = vessel("3 ft").set("gear", gear).set("areas", "[elsewhere]");
        bare.check(&["--on", ON]).verdict().to_owned()
    };
    assert_eq!([empty("[trap]"), empty("[drift net]")], ["not-ready", "cannot-tell"]);
}

/// A profile that is asked for by name judges all the same; what hangs on a
/// word that nobody knows is open.
#[test]
fn a_condition_on_a_word_that_nobody_knows_is_open() {
    let folder = tempfile::tempdir().unwrap();
    let rule = "format: profile/1\nid: own\nrule: own\nedition: one\ntitle: Own\n\
                standing: good practice\nrequirements:\n  \
                - { id: trap, title: T, verified: common practice, carry: 1 pliers, when: { gear: trap } }\n  \
                - { id: area, title: A, verified: common practice, carry: 1 tire, when: { area other than: atlantic } }\n";
    let rule = write(folder.path(), "own.yaml", rule);
    let outcomes = |gear: &str, areas: &str| {
        let judged = vessel("3 ft").set("gear", gear).set("areas", areas).under(&rule, ON);
        [judged.outcome("trap").to_owned(), judged.outcome("area").to_owned()]
    };
    assert_eq!(outcomes("[handline]", "[atlantic]"), ["unbound", "unbound"]);
    assert_eq!(outcomes("[pots]", "[the Atlantic]"), ["cannot-tell", "cannot-tell"]);
    assert_eq!(outcomes("[pots, trap]", "[the Atlantic, elsewhere]"), ["not-met", "not-met"]);
}

/// Who is ready by good practice only is no plain ready, in any format.
#[test]
fn an_audit_says_where_no_rule_was_checked() {
    let folder = tempfile::tempdir().unwrap();
    let pliers = "standing: good practice\nfallback: yes\nrequirements:\n  \
                  - { id: pliers, title: P, verified: common practice, carry: 1 pliers }\n";
    let head = "format: profile/1\nid: good-practice-longline\nrule: good-practice\nedition: one\ntitle: House\n";
    let rules = folder.path().join("rules");
    std::fs::create_dir(&rules).unwrap();
    write(&rules, "house.yaml", &format!("{head}{pliers}"));
    let bare = vessel("3 ft").set("gear", "[trap]").set("areas", "[elsewhere]");
    let ready = bare.with(&["{ mark: PL-1, kind: pliers }"]);
    let path = write(folder.path(), "vessel.yaml", &ready.yaml());
    let audit = |format: &str| {
        let rules = rules.to_str().unwrap();
        let asked = ["audit", &path, "--requirements", rules, "--date", ON, "--format", format];
        kitmuster(&asked)
    };
    let said = "by good practice only";
    let table = audit("table").stdout;
    assert!(table.contains("1 ready (1 by good practice only)"), "{table}");
    assert!(table.contains("by good practice only, no rule was checked"), "{table}");
    let html = audit("html").stdout;
    assert!(html.matches(said).count() >= 3, "{}", html.matches(said).count());
    let json = audit("json").json();
    assert_eq!(json["totals"]["ready_by_good_practice"], 1);
    assert_eq!(json["vessels"][0]["standing"], "good-practice");
    let line: serde_json::Value = serde_json::from_str(&audit("lines").stdout).unwrap();
    assert_eq!((&line["verdict"], &line["standing"]), (&"ready".into(), &"good-practice".into()));
    let csv = audit("csv").stdout;
    let rows: Vec<&str> = csv.lines().collect();
    assert!(rows[0].ends_with(",standing") && rows[1].ends_with(",good-practice"), "{csv}");
    let bound = kitmuster(&["audit", "vessels/marlow-tern.yaml", "--format", "csv"]).stdout;
    assert!(bound.lines().nth(1).unwrap().ends_with(",rule"), "{bound}");
}

/// A tag that no vessel can have binds nobody, so it is refused.
#[test]
fn a_profile_names_no_tag_that_the_vocabulary_does_not_know() {
    let folder = tempfile::tempdir().unwrap();
    let boat = write(folder.path(), "vessel.yaml", &vessel("3 ft").yaml());
    let refused = |binds: &str, requirement: &str| {
        let text = format!(
            "format: profile/1\nid: own\nrule: own\nedition: one\ntitle: Own\n\
             standing: good practice\nbinds: {{ {binds} }}\nrequirements:\n  \
             - {{ id: pliers, title: P, verified: common practice, carry: 1 pliers{requirement} }}\n"
        );
        let path = write(folder.path(), "own.yaml", &text);
        let ran = kitmuster(&["check", &boat, "--profile", &path, "--on", ON]);
        (ran.status == 2, ran.stderr)
    };
    let whole = "permits: [atlantic-hms]";
    assert!(!refused(whole, "").0);
    for (binds, requirement, tag, line) in [
        ("permits: [crab]", "", "crab", 7),
        ("gear: [trap, pots and lines]", "", "pots and lines", 7),
        ("areas: [the shelf]", "", "the shelf", 7),
        ("when: { area: the shelf }", "", "the shelf", 7),
        ("when: { any of: [{ months: May to June }, { permit: crab }] }", "", "crab", 7),
        (whole, ", when: { gear: pots and lines }", "pots and lines", 9),
        (whole, ", unless: [{ wheelhouse: no, area other than: the shelf }]", "the shelf", 9),
    ] {
        let (refused, told) = refused(binds, requirement);
        assert!(refused, "{binds} {requirement}");
        assert!(told.contains(&format!("own.yaml:{line}:")), "{told}");
        assert!(told.contains(&format!("the vocabulary has no such tag: `{tag}`")), "{told}");
    }
}

#[test]
fn a_permit_may_be_written_by_its_name() {
    let library = crate::kit::library();
    let name = &library.vocabulary.permits["gulf-reef-fish-commercial"].name;
    let judged = vessel("3 ft").set("permits", &format!("[\"{name}\"]")).check(&["--on", ON]);
    assert_eq!(judged.only()["id"], GULF);
}

#[test]
fn stainless_steel_may_be_316l_until_somebody_says() {
    let with = |material: &str| {
        let tool = INTERNAL.replace("material: 316L", material);
        assert_ne!(tool, *INTERNAL.replace("316L", "none"));
        let judged = vessel("5 ft").with(&[tool]).under(GULF, ON);
        judged.outcome("long-dehooker-internal").to_owned()
    };
    assert_eq!(with("material: 316L"), "met");
    assert_eq!(with("material: stainless"), "cannot-tell");
    assert_eq!(with("material: aluminium"), "not-met");
    let vouched = "material: stainless, conforms: [{ to: \"Appendix F, A.2\", on: 2026-01-01 }]";
    assert_eq!(with(vouched), "met");
    let later = "material: stainless, conforms: [{ to: \"Appendix F, A.2\", on: 2026-06-01 }]";
    assert_eq!(with(later), "cannot-tell");
}

#[test]
fn an_inspection_that_lies_ahead_is_none_yet() {
    let with = |inspected: &str| {
        let tool = format!(
            "{{ mark: DI-1, kind: long-handled dehooker for internal hooks, handle: 12 ft, inspected: {inspected} }}"
        );
        let judged = vessel("5 ft").with(&[tool]).under("good-practice-longline", ON);
        judged.outcome("long-dehooker").to_owned()
    };
    assert_eq!(with("2026-03-02"), "met");
    assert_eq!(with("2026-03-03"), "cannot-tell");
    assert_eq!(with("2025-03-02"), "not-met");
}

#[test]
fn a_record_made_after_departure_is_not_laid_over() {
    let folder = tempfile::tempdir().unwrap();
    let outfit = vessel("5 ft").with(&["{ mark: PL-1, kind: pliers, overall: 10 in }"]);
    let file = write(folder.path(), "vessel.yaml", &outfit.yaml());
    let record = |on: &str| {
        let text = format!(
            "format: inspection/1\nvessel: Test Kittiwake\non: {on}\nfound:\n  - mark: PL-1\n    mended: [{{ what: head replaced, overall: 11 in }}]\n"
        );
        write(folder.path(), "record.yaml", &text)
    };
    let pliers = |on: &str| {
        let record = record(on);
        let ran = kitmuster(&[
            "check",
            &file,
            "--profile",
            GULF,
            "--on",
            ON,
            "--inspection",
            &record,
            "--format",
            "json",
        ]);
        let json = ran.json();
        let findings = json["profiles"][0]["findings"].as_array().unwrap().clone();
        let finding = findings.into_iter().find(|f| f["requirement"] == "pliers").unwrap();
        (finding["outcome"].as_str().unwrap().to_owned(), json["notices"].to_string())
    };
    assert_eq!(pliers("2026-03-02").0, "met");
    let (outcome, notices) = pliers("2026-03-03");
    assert_eq!(outcome, "not-met");
    assert!(notices.contains("record-after-departure"), "{notices}");
}

#[test]
fn a_record_of_another_vessel_is_refused() {
    let folder = tempfile::tempdir().unwrap();
    let file = write(folder.path(), "vessel.yaml", &vessel("5 ft").with(&[PLIERS]).yaml());
    let text = "format: inspection/1\nvessel: Somebody Else\non: 2026-03-01\nfound:\n  - mark: PL-1\n    missing: yes\n";
    let record = write(folder.path(), "record.yaml", text);
    let ran = kitmuster(&["check", &file, "--on", ON, "--inspection", &record]);
    assert_eq!(ran.status, 2, "{}", ran.page());
    assert!(
        ran.stderr.contains("Somebody Else") && ran.stderr.contains("Test Kittiwake"),
        "{}",
        ran.stderr
    );
}

#[test]
fn a_report_never_replaces_what_it_was_made_from() {
    let folder = tempfile::tempdir().unwrap();
    let text = vessel("5 ft").yaml();
    let file = write(folder.path(), "vessel.yaml", &text);
    let ran = kitmuster(&["check", &file, "--on", ON, "--output", &file]);
    assert_eq!(ran.status, 2, "{}", ran.page());
    assert_eq!(std::fs::read_to_string(&file).unwrap(), text);
}

#[test]
fn what_only_waits_for_another_requirement_says_so() {
    let unmeasured = INTERNAL.replace("handle: 12 ft, ", "");
    let open = vessel("5 ft").with(&[unmeasured.as_str()]).under(GULF, ON);
    assert_eq!(open.outcome("long-dehooker-external"), "cannot-tell");
    assert_eq!(open.codes("long-dehooker-external"), ["hangs-on"]);
    let own = vessel("5 ft").with(&[unmeasured.as_str(), EXTERNAL]).under(GULF, ON);
    assert_eq!(own.outcome("long-dehooker-external"), "met");
}

#[test]
fn by_good_practice_alone_the_first_line_says_so() {
    let ran = kitmuster(&["check", "vessels/amber-shearwater.yaml"]);
    let first = ran.stdout.lines().next().unwrap();
    assert!(first.starts_with("READY") && first.contains("good practice"), "{first}");
    let ran = kitmuster(&["check", "vessels/brindle-skua.yaml"]);
    assert!(!ran.stdout.lines().next().unwrap().contains("good practice"));
}
