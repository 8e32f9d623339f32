//! How the command ends, and what it refuses.

use super::{FULL, file, options, without};
use crate::run;

#[test]
fn zero_says_that_every_first_choice_is_open() {
    let ran = options(&file(FULL).path, &[]);
    assert_eq!(ran.status, 0, "{}", ran.page());
    assert!(ran.stdout.contains("First choice open in 19 of 19 situations"), "{}", ran.stdout);
    assert!(!ran.stdout.contains("What is closed"), "{}", ran.stdout);
}

#[test]
fn one_says_that_somewhere_only_a_fallback_is_open_or_nobody_can_tell() {
    for text in [
        without(&["DN-1"]),
        without(&["TI-1"]),
        FULL.replace("kind: bolt cutters, cuts-hook: 8 mm", "kind: bolt cutters"),
    ] {
        let ran = options(&file(&text).path, &[]);
        assert_eq!(ran.status, 1, "{}", ran.page());
        assert_eq!(ran.stderr, "");
    }
}

#[test]
fn a_case_ends_by_the_situations_that_it_shows() {
    let no_net = file(&without(&["DN-1"]));
    let of = |case: &str| options(&no_net.path, &["--case", case]).status;
    assert_eq!(of("aboard,swallowed"), 0);
    assert_eq!(of("alongside,boardable,swallowed"), 1);
    // The recovery of a limp animal is shown, so it counts.
    let no_support = file(&without(&["TI-1"]));
    let of = |case: &str| options(&no_support.path, &["--case", case]).status;
    assert_eq!(of("aboard,swallowed"), 0);
    assert_eq!(of("aboard,swallowed,limp"), 1);
}

#[test]
fn a_situation_that_no_hook_aboard_makes_arise_does_not_count() {
    let worth = |text: &str| {
        let page = options(&file(text).path, &[]).stdout;
        let from = page.find("First choice open").unwrap();
        let sentence = page[from..].split("\n\n").next().unwrap();
        sentence.replace('\n', " ")
    };
    // Six situations speak of a J hook, six of a circle hook.
    let one = "First choice open in 19 of 19 situations (6 left out: no such hook aboard).";
    assert_eq!(worth(FULL), one);
    assert_eq!(worth(&FULL.replace("type: circle", "type: j")), one);
    let both = FULL.replace("hooks:\n", "hooks:\n  - { name: j hooks, type: j, wire: 4 mm }\n");
    let all = "First choice open in 25 of 25 situations.";
    assert_eq!(worth(&both), all);
}

/// A vocabulary that lacks what the shipped techniques ask for leaves them
/// out, and says so where they are needed.
#[test]
fn a_folder_whose_words_do_not_fit_the_techniques_has_none() {
    let words = include_str!("../../../requirements/vocabulary.yaml");
    // The techniques alone ask this of deck cutters.
    let less = words.replace("blade-width, cuts-monofilament, ", "blade-width, ");
    assert_ne!(less, words);
    let folder = tempfile::tempdir().unwrap();
    std::fs::write(folder.path().join("vocabulary.yaml"), less).unwrap();
    let requirements = folder.path().to_str().unwrap();
    let vessel = file("format: vessel/1\nname: Bare\nfreeboard: 3 ft\nkit: []\n");
    let flags = ["--requirements", requirements, "--on", "2026-12-02", "--return", "2026-12-03"];
    let ran = options(&vessel.path, &flags);
    assert_eq!(ran.status, 2, "{}", ran.page());
    insta::assert_snapshot!(ran.stderr.replace(requirements, "FOLDER"));
}

#[test]
fn a_word_that_is_none_is_refused_with_every_word_that_can_be_said() {
    let ran = options(&file(FULL).path, &["--case", "alongside,circl"]);
    assert_eq!((ran.status, ran.stdout.as_str()), (2, ""));
    insta::assert_snapshot!(ran.stderr);
}

#[test]
fn two_words_of_one_fact_are_refused() {
    let ran = options(&file(FULL).path, &["--case", "j, circle, aboard"]);
    assert_eq!((ran.status, ran.stdout.as_str()), (2, ""));
    insta::assert_snapshot!(ran.stderr, @r"
    `j` and `circle` cannot both be true
        say one of them - Which hook? j, circle
    ");
}

#[test]
fn too_little_said_names_what_is_still_to_be_said() {
    let ran = options(&file(FULL).path, &["--case", "alongside,outside"]);
    assert_eq!((ran.status, ran.stdout.as_str()), (2, ""));
    insta::assert_snapshot!(ran.stderr);
    for case in ["", " , ,"] {
        let ran = options(&file(FULL).path, &["--case", case]);
        assert_eq!(ran.status, 2);
        assert!(ran.stderr.contains("Where is the turtle?"), "{}", ran.stderr);
    }
}

#[test]
fn a_card_of_one_case_is_refused_before_anything_is_read() {
    let flags = ["--case", "aboard,swallowed", "--format", "html"];
    let ran = options("no-such-file.yaml", &flags);
    assert_eq!((ran.status, ran.stdout.as_str()), (2, ""));
    assert!(ran.stderr.contains("do not go together"), "{}", ran.stderr);
}

#[test]
fn everything_that_is_wrong_is_told_at_once() {
    let folder = tempfile::tempdir().unwrap();
    let vessel = run::write(folder.path(), "vessel.yaml", "format: vessel/1\nname: A\nkit: 3\n");
    let shop = run::write(folder.path(), "shop.yaml", "format: catalogue/1\nsupplier: B\n");
    let record = run::write(folder.path(), "record.yaml", "format: inspection/1\n");
    let ran = options(&vessel, &["--catalogue", &shop, "--inspection", &record]);
    assert_eq!((ran.status, ran.stdout.as_str()), (2, ""));
    for name in ["vessel.yaml:", "shop.yaml:", "record.yaml:"] {
        assert!(ran.stderr.contains(name), "{name}: {}", ran.stderr);
    }
}

#[test]
fn a_record_of_another_vessel_is_refused() {
    let folder = tempfile::tempdir().unwrap();
    let vessel = run::write(folder.path(), "vessel.yaml", FULL);
    let text = "format: inspection/1\nvessel: Other Grebe\non: 2026-11-25\nfound: []\n";
    let record = run::write(folder.path(), "record.yaml", text);
    let ran = options(&vessel, &["--inspection", &record]);
    assert_eq!((ran.status, ran.stdout.as_str()), (2, ""));
    assert!(ran.stderr.contains("of another vessel"), "{}", ran.stderr);
}

#[test]
fn a_record_laid_over_closes_what_it_found_broken() {
    let folder = tempfile::tempdir().unwrap();
    let vessel = run::write(folder.path(), "vessel.yaml", FULL);
    let of = |on: &str| {
        let text = format!(
            "format: inspection/1\nvessel: Plain Grebe\non: {on}\nfound:\n  \
             - {{ mark: DN-1, condition: broken }}\n"
        );
        run::write(folder.path(), "record.yaml", &text)
    };
    let ran = options(&vessel, &["--inspection", &of("2026-11-25")]);
    assert_eq!(ran.status, 1, "{}", ran.page());
    assert!(ran.stdout.contains("laid over it: "), "{}", ran.stdout);
    assert!(ran.stdout.contains("do: Repair DN-1"), "{}", ran.stdout);
    // A record of a later day is not laid over, and that is told.
    let ran = options(&vessel, &["--inspection", &of("2026-12-25")]);
    assert_eq!(ran.status, 0, "{}", ran.page());
    assert!(ran.stdout.contains("note: ") && ran.stdout.contains("2026-12-25"), "{}", ran.stdout);
    let flags = ["--inspection", &of("2026-12-25"), "--case", "alongside,boardable,swallowed"];
    let ran = options(&vessel, &flags);
    assert!(ran.stdout.starts_with("Case: "), "{}", ran.page());
    assert!(ran.stderr.contains("2026-12-25"), "{}", ran.stderr);
}

#[test]
fn nothing_that_is_read_is_written_over() {
    let folder = tempfile::tempdir().unwrap();
    let vessel = run::write(folder.path(), "vessel.yaml", FULL);
    let shop = std::fs::read_to_string(run::home().join("suppliers/tarnholt-ship-stores.yaml"));
    let shop = run::write(folder.path(), "shop.yaml", &shop.unwrap());
    for target in [&vessel, &shop] {
        let before = std::fs::read(target).unwrap();
        let ran = options(&vessel, &["--catalogue", &shop, "--output", target]);
        assert_eq!(ran.status, 2, "{}", ran.page());
        assert_eq!(std::fs::read(target).unwrap(), before);
    }
    let page = folder.path().join("page.txt").to_string_lossy().into_owned();
    let ran = options(&vessel, &["--output", &page]);
    assert_eq!((ran.status, ran.stdout.as_str()), (0, ""));
    assert!(std::fs::read_to_string(page).unwrap().starts_with("WAYS OPEN  Plain Grebe"));
}

#[test]
fn catalogues_of_two_currencies_are_refused() {
    let folder = tempfile::tempdir().unwrap();
    let shop = |name: &str, currency: &str| {
        let text = format!(
            "format: catalogue/1\nsupplier: {name}\ncurrency: {currency}\ntax: 0%\n\
             delivery: {{ charge: 0 }}\nlead: 1 day\nitems:\n  - number: DN-8\n    \
             description: dip net\n    tool: {{ kind: dip net, handle: 8 ft }}\n    price: 80\n"
        );
        run::write(folder.path(), &format!("{name}.yaml"), &text)
    };
    let (here, there) = (shop("Here", "USD"), shop("There", "EUR"));
    let vessel = run::write(folder.path(), "vessel.yaml", &without(&["DN-1"]));
    let ran = options(&vessel, &["--catalogue", &here, "--catalogue", &there]);
    assert_eq!((ran.status, ran.stdout.as_str()), (2, ""), "{}", ran.stderr);
    assert!(ran.stderr.contains("USD") && ran.stderr.contains("EUR"), "{}", ran.stderr);
    let ran = options(&vessel, &["--catalogue", &here, "--catalogue", &here]);
    assert_eq!(ran.status, 2);
    assert!(ran.stderr.contains("given twice"), "{}", ran.stderr);
}

/// A catalogue's figures are labels, and none of them is believed then.
#[test]
fn measured_figures_alone_and_a_catalogue_do_not_go_together() {
    let catalogue = "suppliers/port-ansel-chandlery.yaml";
    let both = ["--trust", "measured", "--catalogue", catalogue];
    let vessel = "vessels/marlow-tern.yaml";
    let check = run::kitmuster(&[&["check", vessel][..], &both].concat());
    let audit = run::kitmuster(&[&["audit", vessel, "--outcomes"][..], &both].concat());
    for ran in [options(vessel, &both), check, audit] {
        assert_eq!(ran.status, 2, "{}", ran.page());
        assert!(ran.stderr.contains("`--trust measured` and `--catalogue`"), "{}", ran.stderr);
    }
}
