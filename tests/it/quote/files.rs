//! What is read and what is refused, and the exit code that it ends with.

use super::{LOFT, at, document, flat, folder, holds, quote, shipped};

#[test]
fn a_vessel_or_a_catalogue_that_is_not_named_is_bad_usage() {
    assert_eq!(quote(&["vessels/marlow-tern.yaml"], &[], &[]).status, 2);
    let files = folder(&[("loft.yaml", LOFT)]);
    assert_eq!(quote(&[], &[&at(&files, "loft.yaml")], &[]).status, 2);
    for limit in ["0", "-1", "86401", "soon"] {
        let flags = ["--time-limit", limit];
        let ran = quote(&["vessels/marlow-tern.yaml"], &[&at(&files, "loft.yaml")], &flags);
        assert_eq!(ran.status, 2, "{limit}");
    }
    let ran = quote(&["vessels/marlow-tern.yaml"], &[&at(&files, "loft.yaml")], &["--for", "  "]);
    assert!(ran.status == 2 && ran.stderr.contains("a name was expected"), "{}", ran.stderr);
}

#[test]
fn a_return_needs_a_departure_and_lies_after_it() {
    let files = folder(&[("loft.yaml", LOFT)]);
    let (paths, loft) = (["vessels/marlow-tern.yaml"], at(&files, "loft.yaml"));
    assert_eq!(quote(&paths, &[&loft], &["--return", "2026-12-01"]).status, 2);
    let flags = ["--on", "2026-12-02", "--return", "2026-12-01"];
    let ran = quote(&paths, &[&loft], &flags);
    assert_eq!(ran.status, 2);
    assert!(flat(&ran.stderr).contains("lies before the departure"), "{}", ran.stderr);
}

#[test]
fn a_catalogue_given_twice_by_whatever_name_is_refused() {
    let files = folder(&[("loft.yaml", LOFT), ("in/x.txt", "")]);
    let loft = at(&files, "loft.yaml");
    let ran = quote(&["vessels/marlow-tern.yaml"], &[&loft, &loft], &[]);
    assert_eq!(ran.status, 2);
    assert!(ran.stderr.contains("is given twice"), "{}", ran.stderr);
    let ran = quote(&["vessels/marlow-tern.yaml"], &[&loft, &at(&files, "in/../loft.yaml")], &[]);
    assert_eq!(ran.status, 2);
    assert!(flat(&ran.stderr).contains("it is the same file as"), "{}", ran.stderr);
}

#[test]
fn two_catalogues_of_one_supplier_are_refused_and_both_are_named() {
    let other = LOFT.replace("Ansel Gear Loft", "ansel  gear loft");
    let files = folder(&[("loft.yaml", LOFT), ("spring.yaml", &other)]);
    let paths = [at(&files, "loft.yaml"), at(&files, "spring.yaml")];
    let ran = quote(&["vessels/marlow-tern.yaml"], &[&paths[0], &paths[1]], &[]);
    assert_eq!(ran.status, 2);
    for name in ["loft.yaml", "spring.yaml", "both catalogues of"] {
        assert!(flat(&ran.stderr).contains(name), "{}", ran.stderr);
    }
}

#[test]
fn catalogues_in_two_currencies_are_refused_and_both_are_named() {
    let other = LOFT.replace("Ansel Gear Loft", "Far Stores").replace("USD", "EUR");
    let files = folder(&[("loft.yaml", LOFT), ("far.yaml", &other)]);
    let paths = [at(&files, "loft.yaml"), at(&files, "far.yaml")];
    let ran = quote(&["vessels/marlow-tern.yaml"], &[&paths[0], &paths[1]], &[]);
    assert_eq!(ran.status, 2);
    assert!(ran.stdout.is_empty());
    for name in ["loft.yaml` asks USD", "far.yaml` asks EUR"] {
        assert!(flat(&ran.stderr).contains(name), "{}", ran.stderr);
    }
}

#[test]
fn without_one_of_its_catalogues_there_is_no_quote() {
    let broken = LOFT.replace("price: 118", "price: a lot");
    let files = folder(&[("loft.yaml", LOFT), ("broken.yaml", &broken)]);
    let (loft, broken) = (at(&files, "loft.yaml"), at(&files, "broken.yaml"));
    for catalogues in [vec![broken.as_str()], vec![&loft, &broken], vec!["nowhere.yaml", &loft]] {
        let ran = quote(&["vessels/marlow-tern.yaml"], &catalogues, &["--format", "json"]);
        assert_eq!(ran.status, 2);
        assert!(ran.stdout.is_empty(), "{}", ran.stdout);
        assert!(ran.stderr.contains("nothing was checked"), "{}", ran.stderr);
    }
}

#[test]
fn a_catalogue_is_no_vessel_and_a_vessel_is_no_catalogue() {
    let files = folder(&[("loft.yaml", LOFT), ("tern.yaml", &shipped("marlow-tern.yaml"))]);
    let (loft, tern) = (at(&files, "loft.yaml"), at(&files, "tern.yaml"));
    let ran = quote(&[&tern, &loft], &[&loft], &[]);
    assert_eq!(ran.status, 2);
    assert!(flat(&ran.stderr).contains("as a vessel and as a catalogue"), "{}", ran.stderr);
    assert_eq!(quote(&[&tern], &[&tern], &[]).status, 2);
    assert_eq!(quote(&[&loft], &[&tern], &[]).status, 2);
    // A folder that holds the catalogue too is quoted for its vessels.
    let whole = files.path().to_string_lossy().into_owned();
    let value = document(&[&whole], &[&loft], &[]);
    assert_eq!(value["totals"]["vessels"], 1);
    assert_eq!(value["refused"].as_array().unwrap().len(), 0);
}

#[test]
fn a_vessel_that_cannot_be_read_is_told_and_the_rest_is_quoted() {
    let broken = shipped("marlow-tern.yaml").replace("4 ft 3 in", "4.25");
    let files = folder(&[
        ("loft.yaml", LOFT),
        ("fleet/a.yaml", &broken),
        ("fleet/b.yaml", &shipped("marlow-tern.yaml")),
    ]);
    let (fleet, loft) = (at(&files, "fleet"), at(&files, "loft.yaml"));
    for format in ["table", "json", "csv", "html"] {
        let ran = quote(&[&fleet], &[&loft], &["--format", format]);
        assert_eq!(ran.status, 2, "{format}");
        assert!(ran.stderr.contains("a.yaml:"), "{format}: {}", ran.stderr);
        assert!(flat(&ran.stderr).contains("the quote is for the other files"), "{}", ran.stderr);
        for part in ["a.yaml", "Marlow Tern"] {
            assert!(ran.stdout.contains(part), "{format} without {part}");
        }
    }
    let value = document(&[&fleet], &[&loft], &[]);
    assert_eq!(value["vessels"].as_array().unwrap().len(), 1);
    assert_eq!(value["totals"]["refused"], 1);
    assert!(value["refused"][0]["file"].as_str().unwrap().ends_with("a.yaml"));
    // Where no vessel is left there is no quote.
    let ran = quote(&[&at(&files, "fleet/a.yaml")], &[&loft], &[]);
    assert_eq!(ran.status, 2);
    assert!(ran.stdout.is_empty());
}

#[test]
fn a_record_of_no_vessel_is_told() {
    let record = "format: inspection/1\nvessel: Marlow Turn\non: 2026-11-24\nfound: []\n";
    let files = folder(&[
        ("loft.yaml", LOFT),
        ("fleet/b.yaml", &shipped("marlow-tern.yaml")),
        ("fleet/inspections/r.yaml", record),
    ]);
    let ran = quote(&[&at(&files, "fleet")], &[&at(&files, "loft.yaml")], &["--format", "json"]);
    assert_eq!(ran.status, 2);
    assert!(flat(&ran.stderr).contains("is it of `Marlow Tern`"), "{}", ran.stderr);
    assert_eq!(ran.json()["records_left_out"][0]["near"], "Marlow Tern");
}

#[test]
fn it_ends_with_the_verdict_after_the_order() {
    let files = folder(&[("loft.yaml", LOFT)]);
    let loft = at(&files, "loft.yaml");
    let status = |vessel: &str, flags: &[&str]| quote(&[vessel], &[&loft], flags).status;
    // Half an inch too short: the extension makes it ready.
    assert_eq!(status("vessels/marlow-tern.yaml", &[]), 0);
    // Too late for the departure.
    assert_eq!(status("vessels/marlow-tern.yaml", &["--on", "2026-11-26"]), 1);
    // Ready already, nothing is ordered.
    let ready = document(&["vessels/little-knot.yaml"], &[&loft], &[]);
    assert_eq!(ready["totals"]["before"]["ready"], 1, "{ready}");
    assert_eq!(ready["cost"]["total"]["amount"], "0.00");
    assert_eq!(status("vessels/little-knot.yaml", &[]), 0);
}

#[test]
fn a_departure_before_the_order_is_told() {
    let files = folder(&[("loft.yaml", LOFT)]);
    let flags = ["--on", "2026-11-20", "--format", "json"];
    let ran = quote(&["vessels/marlow-tern.yaml"], &[&at(&files, "loft.yaml")], &flags);
    assert_eq!(ran.status, 1);
    assert!(flat(&ran.stderr).contains("before the day of the order"), "{}", ran.stderr);
    assert_eq!(ran.json()["vessels"][0]["trip"]["before_order"], true);
    let unplanned = shipped("marlow-tern.yaml").replace("trip: {", "# trip: {");
    let more = folder(&[("a.yaml", &unplanned)]);
    let flags = ["--format", "json"];
    let ran = quote(&[&at(&more, "a.yaml")], &[&at(&files, "loft.yaml")], &flags);
    assert!(flat(&ran.stderr).contains("no day of departure is planned"), "{}", ran.stderr);
    assert_eq!(ran.json()["vessels"][0]["trip"]["departure"], super::ORDERED);
    assert_eq!(ran.json()["vessels"][0]["trip"]["departure_known"], false);
}

#[test]
fn a_quote_is_written_whole_and_over_nothing_that_is_read() {
    let files = folder(&[("loft.yaml", LOFT), ("tern.yaml", &shipped("marlow-tern.yaml"))]);
    let (loft, tern) = (at(&files, "loft.yaml"), at(&files, "tern.yaml"));
    for input in [&loft, &tern] {
        let ran = quote(&[&tern], &[&loft], &["--output", input]);
        assert_eq!(ran.status, 2);
        assert!(ran.stderr.contains("would be written over"), "{}", ran.stderr);
    }
    assert_eq!(std::fs::read_to_string(&loft).unwrap(), LOFT);
    let ran = quote(&[&tern], &[&loft], &["--output", &at(&files, "none/quote.txt")]);
    assert_eq!(ran.status, 2);
    assert!(holds(files.path(), 2));
    for format in ["table", "json", "csv", "html"] {
        let path = at(&files, "quote");
        let ran = quote(&[&tern], &[&loft], &["--format", format, "--output", &path]);
        assert_eq!((ran.status, ran.stdout.as_str()), (0, ""), "{format}: {}", ran.stderr);
        let screen = quote(&[&tern], &[&loft], &["--format", format]).stdout;
        assert!(std::fs::read_to_string(&path).unwrap() == screen, "{format}");
    }
    assert!(holds(files.path(), 3));
}
