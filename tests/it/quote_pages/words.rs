//! The page for the terminal: its width, its colours, where the verdict
//! stands, and that nothing from a file steers it.

use super::*;
use std::process::Command;

/// One that is made ready, one with something to measure, one that no order
/// helps, and one that needs nothing.
const FLEET: [&str; 4] = [
    "vessels/marlow-tern.yaml",
    "vessels/hollow-lantern.yaml",
    "vessels/far-kestrel.yaml",
    "vessels/brindle-skua.yaml",
];

/// The quote for them out of the sample catalogues.
fn fleet(settings: &[(&str, &str)]) -> String {
    let output = Command::new(env!("CARGO_BIN_EXE_kitmuster"))
        .args(["quote", "--ordered", "2026-11-26", "--explain"])
        .args(FLEET)
        .args(["--catalogue", "suppliers/port-ansel-chandlery.yaml"])
        .args(["--catalogue", "suppliers/tarnholt-ship-stores.yaml"])
        .current_dir(home())
        .env_clear()
        .envs(settings.iter().copied())
        .output()
        .unwrap();
    String::from_utf8(output.stdout).unwrap()
}

#[test]
fn the_page_of_a_fleet_keeps_to_eighty_columns_and_says_all_without_colour() {
    let coloured = fleet(&[("CLICOLOR_FORCE", "1")]);
    let plain = fleet(&[("NO_COLOR", "1")]);
    assert!(coloured.contains("\u{1b}["));
    assert_eq!(anstream::adapter::strip_str(&coloured).to_string(), plain);
    for line in plain.lines() {
        assert!(line.chars().count() <= 80, "{line}");
    }
    for told in ["nothing needed", "no order settles it", "Before you order", "Why this basket"] {
        assert!(plain.contains(told), "{told}: {plain}");
    }
    assert!(flat(&plain).ends_with("this tool is an aid, no legal advice."), "{plain}");
}

#[test]
fn the_verdict_on_the_order_comes_first() {
    let lacking = tern(&WITHOUT_PLIERS);
    for (vessel, items, first) in [
        (
            &lacking,
            vec![PLIERS],
            "READY AFTER THIS ORDER  1 of 1 vessel ready; 36.23 USD, there by 2026-11-27",
        ),
        (&lacking, vec![EXTENSION], "NOT READY, NOTHING ORDERED  0 of 1 vessel ready"),
        (&tern(&READY), vec![EXTENSION], "READY, NOTHING NEEDED  1 of 1 vessel ready"),
    ] {
        let ran = one(vessel, &items, &[]);
        assert_eq!(ran.stdout.lines().next(), Some(first), "{}", ran.page());
    }
}

#[test]
fn an_order_that_leaves_something_open_is_not_called_ready() {
    let ran = one(&tern(&[WITHOUT_PLIERS[1]]), &[PLIERS], &[]);
    assert_eq!(ran.status, 1);
    let first = ran.stdout.lines().next().unwrap();
    assert_eq!(
        first,
        "NOT READY AFTER THIS ORDER  0 of 1 vessel ready; 36.23 USD, there by 2026-11-27"
    );
    assert!(ran.stdout.contains("- open: Long-handled line clipper or cutter"), "{}", ran.page());
}

#[test]
fn terms_are_printed_or_a_line_to_agree_them() {
    let with = format!("{}terms: Fetched from the shed.\n", shop(&[PLIERS]));
    let vessel = tern(&WITHOUT_PLIERS);
    for (shop, wanted) in [
        (&with, "Terms: Fetched from the shed."),
        (&shop(&[PLIERS]), "Terms: to be agreed with the supplier"),
    ] {
        for format in ["table", "html"] {
            let files = [("tern.yaml", vessel.as_str()), ("shop.yaml", shop)];
            let ran = quote(&files, &["--format", format]);
            assert!(ran.stdout.contains(wanted), "{}", ran.page());
        }
    }
}

#[test]
fn the_customer_stands_on_the_page() {
    for format in ["table", "html"] {
        let flags = ["--for", "Test & Sons <b>", "--format", format];
        let ran = one(&tern(&WITHOUT_PLIERS), &[PLIERS], &flags);
        let name =
            if format == "html" { "Test &amp; Sons &lt;b&gt;" } else { "for Test & Sons <b>" };
        assert!(ran.stdout.contains(name), "{}", ran.page());
    }
}
