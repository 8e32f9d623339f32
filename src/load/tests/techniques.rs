//! Tests of the shipped file of techniques, and of what nobody may write in
//! it: whoever edits it so that a technique harms is refused.
#![allow(clippy::disallowed_methods)] // the tests write the files that are read

use crate::load::library::Library;
use crate::load::read::problem::Refusal;
use crate::load::tests::technique_refusal::SMALL;
use crate::model::profile::{FreeboardFrom, Verified};
use crate::model::rule::Need;
use crate::model::technique::{GivenBy, Practice};

const VOCABULARY: &str = include_str!("../../../requirements/vocabulary.yaml");
const SHIPPED: &str = include_str!("../../../requirements/techniques.yaml");

fn read(text: &str) -> Result<Library, Refusal> {
    Library::from_texts(&[("vocabulary.yaml", VOCABULARY), ("techniques.yaml", text)])
}

fn practice() -> Practice {
    Practice::clone(&read(SHIPPED).unwrap().practice.unwrap())
}

/// The shipped text with pieces replaced, each of which must be there.
fn edited(edits: &[(&str, &str)]) -> String {
    let mut text = SHIPPED.to_owned();
    for (from, to) in edits {
        assert_eq!(text.matches(from).count(), 1, "{from}");
        text = text.replacen(from, to, 1);
    }
    assert_ne!(text, SHIPPED);
    text
}

/// What is wrong with the shipped text after these edits.
fn told(edits: &[(&str, &str)]) -> Vec<String> {
    let refusal = read(&edited(edits)).map(|_| panic!("{edits:?} was let pass")).unwrap_err();
    refusal.problems.iter().map(ToString::to_string).collect()
}

/// The shipped text with one technique that consists of these acts.
fn with_acts(technique: &str, acts: &str) -> String {
    let start = SHIPPED.find(&format!("\n  - id: {technique}\n    title")).unwrap();
    let (before, own) = SHIPPED.split_at(start);
    let end = own[1..].find("\n  - id: ").map_or(own.len(), |at| at + 1);
    let (own, after) = own.split_at(end);
    let lines = own.lines().filter(|line| !line.starts_with("    acts: "));
    let mut lines: Vec<String> = lines.map(str::to_owned).collect();
    let at = lines.iter().position(|line| line.starts_with("    needs: ")).unwrap();
    lines.insert(at + 1, format!("    acts: [{acts}]"));
    let text = format!("{before}{}{after}", lines.join("\n"));
    assert_ne!(text, SHIPPED);
    text
}

/// What is wrong with the shipped text if a technique consists of these acts.
fn told_of_acts(technique: &str, acts: &str) -> Vec<String> {
    let refusal = read(&with_acts(technique, acts)).map(|_| panic!("{technique}")).unwrap_err();
    refusal.problems.iter().map(ToString::to_string).collect()
}

fn assert_all(told: &[String], part: &str) {
    assert!(!told.is_empty());
    assert!(told.iter().all(|one| one.contains(part)), "{part}: {told:#?}");
}

#[test]
fn the_shipped_file_is_read() {
    let practice = practice();
    assert_eq!((practice.id.as_str(), practice.encoding), ("longline-release", 1));
    assert_eq!(practice.freeboard_from, FreeboardFrom::Rail);
    // Two places, four ways of boarding, five sites, two hooks, two points
    // and two states.
    assert_eq!(practice.cases().len(), 2 * 4 * 5 * 2 * 2 * 2);
    assert_eq!(practice.facts[5].unsaid, Some(0));
    assert!(practice.facts[..5].iter().all(|fact| fact.unsaid.is_none()));
    let hooks: Vec<_> = practice.facts[3].words.iter().map(|w| w.hook_type.as_deref()).collect();
    assert_eq!(hooks, [Some("j"), Some("circle")]);
    let boarding = practice.facts[1].words[0].cited.as_ref().unwrap();
    assert_eq!(boarding.verified, Verified::Read);
    assert!(Library::shipped().unwrap().practice.is_some());
}

#[test]
fn every_case_has_one_situation_and_ends_in_the_line_cut() {
    let practice = practice();
    for case in practice.cases() {
        let situation = practice.situation_of(&case).map(|s| &practice.situations[s]);
        let last = situation.unwrap().choices.last().and_then(|choice| choice.last());
        assert!(practice.techniques[*last.unwrap()].cuts_line, "{case:?}");
    }
}

#[test]
fn a_capability_is_read_like_a_requirement_and_a_low_rail_stands_behind() {
    let practice = practice();
    let by_id = |id: &str| practice.capabilities.iter().find(|one| one.id == id).unwrap();
    let GivenBy::Tools(net) = &by_id("dipnet-reaches").given_by else { panic!("no tools") };
    assert!(matches!(&net.need, Need::Tools { least: 1, types, .. } if types.len() == 1));
    assert!(net.inspection.is_none() && net.deemed.is_empty() && net.shares.is_empty());
    assert_eq!(net.place.key, "capabilities[0]");
    let GivenBy::LowRail { at_most, figure } = &practice.capabilities.last().unwrap().given_by
    else {
        panic!("no low rail")
    };
    // 2 ft, the file's own figure (common practice, no source).
    assert_eq!(at_most.nanometres(), 609_600_000);
    assert_eq!(figure.length(), Some(*at_most));
}

#[test]
fn a_problem_is_placed_in_its_line() {
    let told = told(&[(
        "cut-free-by-hand\n  - id: tangled-boardable\n",
        "cut-fre-by-hand\n  - id: tangled-boardable\n",
    )]);
    let line = SHIPPED.lines().position(|l| l == "  - id: tangled-boardable").unwrap();
    assert_eq!(
        told,
        [format!(
            "techniques.yaml:{line}:9: situations[0].choices[7]: `cut-fre-by-hand`: no technique of \
             this id is in the file; expected the id of a technique; did you mean `cut-free-by-hand`?"
        )]
    );
}

mod never {
    use super::*;

    #[test]
    fn a_swallowed_hook_is_not_pulled() {
        for technique in ["cut-short", "cut-short-by-hand", "cut-line-on-deck"] {
            for act in ["pulls-hook", "pulls-on-line", "twists-hook"] {
                let told = told_of_acts(technique, act);
                let says = "Never pull on the line of a swallowed hook";
                assert!(told.iter().any(|one| one.contains(says)), "{technique} {act}: {told:#?}");
            }
        }
        let edits = [(
            "    when: { where: aboard, site: swallowed }\n    choices: [cut-line-on-deck, ",
            "    when: { where: aboard, site: swallowed }\n    choices: [pull-on-deck, cut-line-on-deck, ",
        )];
        let told = told(&edits);
        assert_all(&told, "situations[22].choices[0]: `pull-on-deck`: `pull-on-deck` is");
        let both = ["Never pull on the line of a swallowed hook", "`site: tangled or swallowed`"];
        for part in both {
            assert!(told.iter().any(|one| one.contains(part)), "{part}: {told:#?}");
        }
    }

    #[test]
    fn the_point_is_not_turned_to_the_middle() {
        let told = told_of_acts("gag", "point-to-middle");
        assert_all(&told, "Never turn the point to the middle");
        // Twice three, three and two choices begin with the gag.
        assert_eq!(told.len(), 11);
    }

    #[test]
    fn nothing_is_dehooked_blind() {
        let deep = "cut-line-on-deck, cut-line-on-deck-long]\n  - id: swallowed-aboard";
        let told = told(&[
            (deep, &format!("push-through, {deep}")),
            (
                "never with: [{ where: alongside }, { point: showing }, { site: [tangled, deep, swallowed] }]",
                "never with: [{ where: alongside }, { point: showing }, { site: [tangled, swallowed] }]",
            ),
        ]);
        assert_all(&told, "Never dehook blind: leave a hook of which you cannot see");
        assert_eq!(told.len(), 1);
        let told = super::told(&[(
            "choices: [cut-short, cut-short-by-hand]\n\n  # On deck.",
            "choices: [pull-alongside, cut-short, cut-short-by-hand]\n\n  # On deck.",
        )]);
        assert!(told.iter().any(|one| one.contains("Never dehook blind: nothing is tried")));
    }

    #[test]
    fn a_turtle_is_not_lifted_by_the_line() {
        for technique in ["dipnet", "other-net", "by-hand"] {
            let told = told_of_acts(technique, "lifts-by-line");
            assert_all(&told, "`lifts-by-line`");
            assert_all(&told, "Never lift the turtle by the line");
            assert_all(&told, technique);
        }
    }

    #[test]
    fn a_limp_turtle_is_not_laid_on_its_back() {
        let told = told_of_acts("recover", "lays-on-back");
        // On deck, and once it is brought there.
        assert_eq!(told.len(), 2);
        assert_all(&told, ".choices[0]: `recover`: `recover` is forbidden by its act");
        assert_all(&told, "Never lay a limp turtle on its back");
        // The net sets active and limp turtles down alike.
        let told = told_of_acts("dipnet", "lays-on-back");
        assert_all(&told, "limp`: Never lay a limp turtle on its back");
    }

    #[test]
    fn no_other_prohibition_of_the_file_can_be_broken_either() {
        for act in
            ["hangs-by-flippers", "leaves-line-trailing", "drops-from-height", "returns-limp"]
        {
            assert_all(&told_of_acts("dipnet", act), &format!("`{act}`"));
        }
        assert_all(
            &told_of_acts("cut-free", "pulls-line-tight"),
            "Never pull the line of a tangled",
        );
        assert_all(&told_of_acts("flatten-barb", "draws-showing-barb-back"), "showing barb");
        let twist = told(&[(
            "choices: [push-through, turn-and-pull, cut-line",
            "choices: [push-through, turn-and-pull, twist-on-deck, cut-line",
        )]);
        assert!(
            twist.iter().any(|one| one.contains("Never use a twist dehooker on a circle hook"))
        );
        assert!(twist.iter().any(|one| one.contains("never used with `hook: circle`")));
    }
}

fn id(library: &Library) -> Option<&str> {
    library.practice.as_ref().map(|practice| practice.id.as_str())
}

/// The shipped library with a folder of these files laid over it.
fn laid_over(files: &[(&str, &str)]) -> Result<Library, String> {
    let folder = tempfile::tempdir().unwrap();
    for (name, text) in files {
        std::fs::write(folder.path().join(name), text).unwrap();
    }
    let shipped = Library::shipped().unwrap();
    shipped.with_folder(folder.path()).map_err(|refusal| refusal.to_string())
}

/// The vocabulary as it was before the file of techniques asked what a deck
/// cutter cuts.
fn earlier_vocabulary() -> String {
    let text = VOCABULARY.replace("blade-width, cuts-monofilament,", "blade-width,");
    assert_ne!(text, VOCABULARY);
    text
}

#[test]
fn the_shipped_library_has_the_shipped_file_and_its_text() {
    let library = Library::shipped().unwrap();
    assert_eq!(id(&library), Some("longline-release"));
    let place = library.practice.as_ref().unwrap().situations[0].place.clone();
    let source = library.source(&place.file).unwrap();
    assert_eq!(source, library.techniques());
    assert!(source.positions().locate(&place.key).is_some_and(|at| at.line > 1));
    assert!(library.find("longline-release").is_none());
    assert!(library.texts().all(|text| !text.file.contains("techniques")));
}

#[test]
fn a_folder_replaces_the_file_or_leaves_it() {
    let shipped = Library::shipped().unwrap().profiles.len();
    let own = laid_over(&[("techniques.yaml", SMALL)]).unwrap();
    assert_eq!((id(&own), own.profiles.len()), (Some("small"), shipped));
    assert!(own.techniques().file.ends_with("techniques.yaml"));
    assert_eq!(&*own.techniques().text, SMALL);
    assert_eq!(id(&laid_over(&[]).unwrap()), Some("longline-release"));
    let told = laid_over(&[("techniques.yaml", &SMALL.replacen("aboard }", "abord }", 1))]);
    assert!(told.unwrap_err().contains("did you mean `aboard`?"));
}

#[test]
fn the_file_is_read_by_the_vocabulary_of_the_folder() {
    let same = laid_over(&[("vocabulary.yaml", VOCABULARY)]).unwrap();
    assert_eq!(id(&same), Some("longline-release"));
    // Nobody wrote the file for this vocabulary, so nobody is refused.
    let words = earlier_vocabulary();
    let other = laid_over(&[("vocabulary.yaml", &words)]).unwrap();
    assert_eq!(id(&other), None);
    assert_eq!(other.techniques(), Library::shipped().unwrap().techniques());
    let given = other.techniques().text.to_string();
    let told = laid_over(&[("vocabulary.yaml", &words), ("techniques.yaml", &given)]).unwrap_err();
    assert!(told.contains("`monofilament line cutters` has no such attribute"), "{told}");
}

#[test]
fn a_library_from_memory_has_the_shipped_file_if_it_fits() {
    let rebuilt = |text: &str| Library::rebuilt(("words", text), &[]).unwrap();
    assert_eq!(id(&rebuilt(VOCABULARY)), Some("longline-release"));
    assert_eq!(id(&rebuilt(&earlier_vocabulary())), None);
    assert_eq!(id(&rebuilt("format: vocabulary/1\n")), None);
    let texts = [("vocabulary.yaml", VOCABULARY), ("in/techniques.yaml", SMALL)];
    assert_eq!(id(&Library::from_texts(&texts).unwrap()), Some("small"));
}

#[test]
fn a_profile_that_is_added_leaves_the_file() {
    let mut library = Library::shipped().unwrap();
    let profile = "format: profile/1\nid: stub\nrule: stub\nedition: first\ntitle: Stub\n\
                   source: 50 CFR part 0\nencoded: no\nbinds: { gear: [pelagic-longline] }\n";
    library.add_text("stub.yaml", profile).unwrap();
    assert_eq!(id(&library), Some("longline-release"));
    assert!(library.source("requirements/techniques.yaml").is_some());
}
