//! Where a paper is kept and in which form, edition by edition.

use crate::outfit::gear::{appendix_f as f, section_635 as s};
use crate::outfit::{but, vessel};

const GULF: &str = "us-gulf-reef-fish-2019";
const SOUTH: &str = "us-south-atlantic-snapper-grouper-2019";
const OLD_GULF: &str = "us-gulf-reef-fish-before-2019";
const ATLANTIC: &str = "us-atlantic-longline-2009";
const DOLPHIN: &str = "us-dolphin-wahoo-longline-2009";
const TODAY: &str = "2026-03-02";
const IN_2024: &str = "2024-09-02";
const IN_2018: &str = "2018-12-10";

/// The outcome of the requirement for one paper, with and without a wheelhouse.
fn both(profile: &str, day: &str, requirement: &str, paper: &str) -> [String; 2] {
    ["yes", "no"].map(|wheelhouse| {
        let vessel = vessel("5 ft")
            .set("features", &format!("{{ wheelhouse: {wheelhouse} }}"))
            .carrying(&[paper]);
        vessel.under(profile, day).outcome(requirement).to_owned()
    })
}

/// 622.29(a)(1), 622.179(a)(1) since the 2019 rules (read): the 2019 edition,
/// electronic, or on paper inside the wheelhouse, or on paper in a waterproof
/// case where there is no wheelhouse.
///
/// Pins: us-gulf-reef-fish-2019/careful-release-document: careful-release-document form electronic
/// Pins: us-gulf-reef-fish-2019/careful-release-document: careful-release-document form paper
/// Pins: us-gulf-reef-fish-2019/careful-release-document: careful-release-document kept wheelhouse
/// Pins: us-gulf-reef-fish-2019/careful-release-document: careful-release-document kept waterproof case
/// Pins: us-gulf-reef-fish-2019/careful-release-document: careful-release-document when wheelhouse no
/// Pins: us-gulf-reef-fish-2019/careful-release-document: careful-release-document edition 2019
/// Pins: us-south-atlantic-snapper-grouper-2019/careful-release-document: careful-release-document form electronic
/// Pins: us-south-atlantic-snapper-grouper-2019/careful-release-document: careful-release-document form paper
/// Pins: us-south-atlantic-snapper-grouper-2019/careful-release-document: careful-release-document kept wheelhouse
/// Pins: us-south-atlantic-snapper-grouper-2019/careful-release-document: careful-release-document kept waterproof case
/// Pins: us-south-atlantic-snapper-grouper-2019/careful-release-document: careful-release-document when wheelhouse no
/// Pins: us-south-atlantic-snapper-grouper-2019/careful-release-document: careful-release-document edition 2019
#[test]
fn the_document_of_2019_is_electronic_or_on_paper_where_the_rule_says() {
    let [met, not] = ["met", "not-met"];
    for profile in [GULF, SOUTH] {
        let with = |edition: &str, form: &str, kept: &str| {
            let paper = but(&but(f::DOCUMENT, "form", form), "kept", kept);
            let paper = but(&paper, "edition", edition);
            both(profile, TODAY, "careful-release-document", &paper)
        };
        let new = "\"2019\"";
        assert_eq!(with(new, "electronic", "elsewhere"), [met, met], "{profile}");
        assert_eq!(with(new, "paper", "wheelhouse"), [met, met], "{profile}");
        assert_eq!(with(new, "paper", "waterproof case"), [not, met], "{profile}");
        assert_eq!(with(new, "paper", "elsewhere"), [not, not], "{profile}");
        for (form, kept) in
            [("electronic", "elsewhere"), ("paper", "wheelhouse"), ("paper", "waterproof case")]
        {
            assert_eq!(with("\"2010\"", form, kept), [not, not], "{profile} {form} {kept}");
        }
    }
}

/// 622.29(a)(1), 622.179(a)(1) (read): posted in the wheelhouse, or where it
/// is easily seen if there is none.
///
/// Pins: us-gulf-reef-fish-2019/handling-placard: handling-placard state posted; handling-placard kept wheelhouse
/// Pins: us-gulf-reef-fish-2019/handling-placard: handling-placard kept plain view; handling-placard when wheelhouse no
/// Pins: us-south-atlantic-snapper-grouper-2019/handling-placard: handling-placard state posted; handling-placard kept wheelhouse
/// Pins: us-south-atlantic-snapper-grouper-2019/handling-placard: handling-placard kept plain view; handling-placard when wheelhouse no
#[test]
fn the_guidelines_are_posted_in_the_wheelhouse_or_in_plain_view() {
    let [met, not] = ["met", "not-met"];
    for profile in [GULF, SOUTH] {
        let with = |state: &str, kept: &str| {
            let paper = but(&but(f::PLACARD, "state", state), "kept", kept);
            both(profile, TODAY, "handling-placard", &paper)
        };
        assert_eq!(with("posted", "wheelhouse"), [met, met], "{profile}");
        assert_eq!(with("posted", "plain view"), [not, met], "{profile}");
        assert_eq!(with("posted", "elsewhere"), [not, not], "{profile}");
        assert_eq!(with("aboard", "wheelhouse"), [not, not], "{profile}");
        assert_eq!(with("aboard", "plain view"), [not, not], "{profile}");
    }
}

/// 635.21(b)(1) until 28 November 2024 (read): the document inside the
/// wheelhouse, no word of an electronic copy; the guidelines posted there.
/// 622.273(a) (read): the guidelines only.
///
/// Pins: us-atlantic-longline-2009/careful-release-document: careful-release-document kept wheelhouse
/// Pins: us-atlantic-longline-2009/careful-release-document: careful-release-document form paper
/// Pins: us-atlantic-longline-2009/careful-release-document: careful-release-document form paper or electronic
/// Pins: us-atlantic-longline-2009/handling-placard: handling-placard state posted; handling-placard kept wheelhouse
/// Pins: us-dolphin-wahoo-longline-2009/handling-placard: handling-placard state posted; handling-placard kept wheelhouse
#[test]
fn the_papers_of_section_635_21_are_inside_the_wheelhouse() {
    let document = |form: &str, kept: &str| {
        let paper = but(&but(s::DOCUMENT, "form", form), "kept", kept);
        both(ATLANTIC, IN_2024, "careful-release-document", &paper)
    };
    assert_eq!(document("paper", "wheelhouse"), ["met", "met"]);
    assert_eq!(document("electronic", "wheelhouse"), ["cannot-tell", "cannot-tell"]);
    assert_eq!(document("paper", "waterproof case"), ["not-met", "not-met"]);
    for profile in [ATLANTIC, DOLPHIN] {
        let placard = |state: &str, kept: &str| {
            let paper = but(&but(s::PLACARD, "state", state), "kept", kept);
            both(profile, IN_2024, "handling-placard", &paper)
        };
        assert_eq!(placard("posted", "wheelhouse"), ["met", "met"], "{profile}");
        assert_eq!(placard("posted", "plain view"), ["not-met", "not-met"], "{profile}");
        assert_eq!(placard("aboard", "wheelhouse"), ["not-met", "not-met"], "{profile}");
    }
}

/// 622.29(a)(1) before the 2019 rule (read): a printed copy posted in the
/// wheelhouse, or in a waterproof case; the guidelines posted.
///
/// Pins: us-gulf-reef-fish-before-2019/careful-release-document: careful-release-document form paper
/// Pins: us-gulf-reef-fish-before-2019/careful-release-document: careful-release-document state posted
/// Pins: us-gulf-reef-fish-before-2019/careful-release-document: careful-release-document kept wheelhouse
/// Pins: us-gulf-reef-fish-before-2019/careful-release-document: careful-release-document kept waterproof case
/// Pins: us-gulf-reef-fish-before-2019/handling-placard: handling-placard state posted
#[test]
fn the_old_gulf_edition_wants_print_posted_or_in_a_case() {
    let document = |form: &str, kept: &str, state: &str| {
        let paper = but(&but(&but(s::DOCUMENT, "form", form), "kept", kept), "state", state);
        both(OLD_GULF, IN_2018, "careful-release-document", &paper)[0].clone()
    };
    for (form, kept, state, expected) in [
        ("paper", "wheelhouse", "posted", "met"),
        ("paper", "wheelhouse", "aboard", "not-met"),
        ("paper", "plain view", "posted", "not-met"),
        ("paper", "waterproof case", "aboard", "met"),
        ("electronic", "wheelhouse", "posted", "not-met"),
        ("electronic", "waterproof case", "aboard", "not-met"),
    ] {
        assert_eq!(document(form, kept, state), expected, "{form} {kept} {state}");
    }
    for (state, expected) in [("posted", "met"), ("aboard", "not-met")] {
        let paper = but(s::PLACARD, "state", state);
        assert_eq!(both(OLD_GULF, IN_2018, "handling-placard", &paper)[0], expected, "{state}");
    }
}
