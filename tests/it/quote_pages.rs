//! What people read of a quote: the page for the terminal, each case with a
//! vessel and a catalogue as small as can be, and the page of HTML.
//!
//! The vessel is the sample `marlow-tern.yaml` with a few words exchanged.
//! The sums of the cases stand beside them, worked out by hand.

mod cases;
mod papers;
mod words;

use crate::run::{self, Ran, home};

/// The day of the order; the vessel leaves on 2026-12-02, seven days later.
const ORDERED: &str = "2026-11-25";

/// A supplier on the quay.
const HEAD: &str = "format: catalogue/1
supplier: Quay Locker
port: Port Ansel
currency: USD
tax: 5%
delivery: 10
lead: 2 days
prices hold until: 2026-12-31
items:
";

/// What is bought in the cases.
const CUTTER: &str = "  - number: LC-7
    description: line cutter on a pole of 7 ft
    tool: { kind: long-handled line cutter, handle: 7 ft, cuts-monofilament: 2.1 mm, protected-blade: yes, blades-replaceable: yes }
    price: 150
";
const BLADES: &str = "  - number: BL-7
    description: set of replacement blades for LC-7
    tool: { kind: set of replacement blades, fits: [LC-7] }
    price: 20
";
const EXTENSION: &str = "  - number: EX-1
    description: pole extension, 1 ft
    lengthens: { kinds: [long-handled line cutter], by: 1 ft }
    price: 31
";
const PLIERS: &str = "  - number: PL-1
    description: needle-nose pliers, 12 in
    tool: { kind: needle-nose pliers, overall: 12 in }
    price: 24.50
";
const PLIERS_IN_FOURS: &str = "  - number: PL-4
    description: needle-nose pliers, 12 in, in fours
    tool: { kind: needle-nose pliers, overall: 12 in }
    price: 40
    pack: 4
";

/// Exchanges that make the sample ready as it is.
const READY: [(&str, &str); 1] = [("handle: 6 ft 4 in", "handle: 6 ft 6 in")];

/// Exchanges that take a tool away from a ready vessel.
const WITHOUT_PLIERS: [(&str, &str); 2] = [
    READY[0],
    (
        "  - mark: PL-1\n    kind: needle-nose pliers\n    overall: 11 1/2 in\n    stowed: tool chest\n",
        "",
    ),
];

/// A text with parts of it exchanged, each of which stands in it once.
fn changed(text: &str, exchanges: &[(&str, &str)]) -> String {
    exchanges.iter().fold(text.to_owned(), |text, (from, to)| {
        assert_eq!(text.matches(from).count(), 1, "{from}");
        text.replace(from, to)
    })
}

/// The sample vessel with parts exchanged.
fn tern(exchanges: &[(&str, &str)]) -> String {
    changed(&std::fs::read_to_string(home().join("vessels/marlow-tern.yaml")).unwrap(), exchanges)
}

/// The quote for these files, of which the catalogues begin with `shop`.
fn quote(files: &[(&str, &str)], flags: &[&str]) -> Ran {
    let folder = tempfile::tempdir().unwrap();
    let mut typed = vec!["quote"];
    for (name, text) in files {
        run::write(folder.path(), name, text);
        if name.starts_with("shop") {
            typed.push("--catalogue");
        }
        typed.push(name);
    }
    if !flags.contains(&"--ordered") {
        typed.extend(["--ordered", ORDERED]);
    }
    typed.extend(flags);
    run::kitmuster_in(folder.path(), &typed)
}

/// The quote for one vessel out of the shop with these items.
fn one(vessel: &str, items: &[&str], flags: &[&str]) -> Ran {
    quote(&[("tern.yaml", vessel), ("shop.yaml", &shop(items))], flags)
}

/// The catalogue of the supplier on the quay.
fn shop(items: &[&str]) -> String {
    let items = if items.is_empty() { PLIERS.to_owned() } else { items.concat() };
    format!("{HEAD}{items}")
}

/// The text on one line, blanks and line breaks alike.
fn flat(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}
