//! What a schema cannot say: every problem for which the loader refuses a file
//! that its schema takes is of one of these classes (held by `mutations`).
//! `DEVELOPERS.md` has the same table.

use crate::run::home;

/// A class of problems that only the loader tells.
pub(super) struct Class {
    /// What they are about.
    pub(super) name: &'static str,
    /// Why no schema says it.
    why: &'static str,
    /// What the loader says is wrong begins so, or has it in it after `…`.
    whats: &'static [&'static str],
}

/// Every class. A problem is of the first that has a fitting wording.
pub(super) const CLASSES: [Class; 13] = [
    Class {
        name: "words of the vocabulary",
        why: "they stand in another file, or in a list as long as that of all currencies",
        whats: &[
            "no kind of this name is known",
            "no such key or attribute is known here",
            "…` has no such attribute",
            "…` knows no such word",
            "no attribute of this id is known",
            "no feature of a vessel has this name",
            "no condition of this name is known",
            "no such change is known",
            "the vocabulary has no such hook type",
            "the vocabulary has no such tag",
            "the vocabulary has no kind",
            "this role is very near to a known one",
            "this tag is not known, and very near",
            "no currency with a coin has this code",
        ],
    },
    Class {
        name: "what goes with a word",
        why: "the vocabulary says what a kind or an attribute is, and so what may stand there",
        whats: &[
            "neither yes nor no",
            "this is a tool",
            "this is a set of spares",
            "this is a document",
            "this is fishing gear",
            "this is a certificate",
            "a certificate is earned, not sold",
            "fishing gear is not sold here",
            "what is carried here is no spare",
            "another kind than after `every`",
            "only spares fit another tool",
            "this item gives no tool that spares could fit",
            "a tool of this kind cannot be lengthened",
            "only a measured quantity has a tape error",
            "only a length can be lengthened",
            "only a choice has words",
            "this is not a list of attributes",
        ],
    },
    Class {
        name: "days of the calendar",
        why: "short months and leap years would take a pattern longer than the reader",
        whats: &["no such day in the calendar"],
    },
    Class {
        name: "figures",
        why: "a text is a length, a mass or an amount by its units, its size and its coin",
        whats: &[
            "this cannot be read as a figure",
            "a figure without its unit",
            "…` is not a unit that is read here",
            "a figure below zero",
            "a comma before three digits",
            "more than is reckoned with here",
            "finer than ",
            "units out of order or mixed",
            "not readable as ",
            "this is not an amount of money",
            "an amount below zero",
            "a price of nothing",
            "a length of nothing",
            "a freeboard of zero",
            "this is not a percentage",
            "more than any tax is",
            "this is not a number of days",
            "out of range",
            "this is not a whole number",
        ],
    },
    Class {
        name: "phrases",
        why: "a limit, an interval, a number of something or a choice is a sentence",
        whats: &[
            "this is not a limit",
            "this is not a freeboard threshold",
            "this is not an interval",
            "these are not months",
            "this is not an id",
            "how many is not said",
            "of which kind is not said",
            "spares for what is not said",
            "a kind beside `one of`",
            "`types` is written, but not how many",
            "more types are asked for",
            "nothing is expected after the bound",
            "an approximate limit without its margin",
            "nought percent limits nothing",
            "`and` is missing",
            "`of` is missing",
            "`to` is missing",
            "`the greater of` is nested too deep",
            "a low rail is told by its greatest freeboard alone",
            "no rail lies on the water",
            "a case is put in words with commas",
            "a choice cannot begin with `then`",
            "a technique is missing in this choice",
        ],
    },
    Class {
        name: "references",
        why: "a schema looks at one place of a file, not from one to another",
        whats: &[
            "…of this id is in the file",
            "no requirement of this id is in the profile",
            "no profile of this id is known",
            "there is no requirement of this id to take over",
            "there is no such line to drop",
            "no tool of the vessel has this mark",
            "neither an item of this catalogue nor a kind of tool",
            "no tag of this id is known",
            "this is no word of the fact",
            "no such word is in the choice",
            "profiles are built on each other in a circle",
            "…` has no single tool that could serve",
            "…` is met by this one in turn",
            "…` wants no tool",
            "no tool can be shared with `",
            "only a number of one kind or of alternatives can be met so",
        ],
    },
    Class {
        name: "what stands twice",
        why: "a schema tells equal entries of a list, not equal marks, ids or names in them",
        whats: &[
            "another tool has this mark too",
            "another item has this number too",
            "a tool of the set ",
            "this tool is written twice in the record",
            "this attribute is written twice",
            "this word stands here twice",
            "this is named twice",
            "this choice stands here twice",
            "a technique stands in this choice twice",
            "two ",
            "the kind `",
            "the word `",
            "…` has this id too",
        ],
    },
    Class {
        name: "what comes first",
        why: "a schema does not compare two days or two figures",
        whats: &[
            "the last day lies before the first",
            "the return lies before the departure",
            "it expires before it was issued",
            "the range ends below its beginning",
        ],
    },
    Class {
        name: "lengths",
        why: "blanks around a text do not count, and two lists may count together",
        whats: &[
            "this text is too long",
            "…tools and documents are too many",
            "…requirements are too many",
        ],
    },
    Class {
        name: "keys that go together",
        why: "which keys are needed or have no place depends on what others say",
        whats: &[
            "…` is missing",
            "…` cannot stand beside `",
            "…` cannot stand here",
            "…` has no place ",
            "the text in the governing language is missing",
            "it is not clear what this requirement wants",
            "what is sold has no such key",
            "a station without its freeboard",
            "a missing tool was measured or mended",
            "this row was left empty",
            "freeboards from the rail and from the deck are mixed",
            "a profile without requirements",
            "requirements of a rule that is not encoded",
            "a stub that binds nobody",
            "a list that others build on binds nobody",
            "a change cannot move a requirement",
        ],
    },
    Class {
        name: "nothing where something is to be said",
        why: "elsewhere the same form may be empty, and says that nothing is known",
        whats: &[
            "nothing is said ",
            "an empty ",
            "no word stands here",
            "no alternative is listed",
            "no role is listed",
        ],
    },
    Class {
        name: "characters that steer a screen",
        why: "it would take a pattern at every text of the schema",
        whats: &["a character that steers the screen"],
    },
    Class {
        name: "practice",
        why: "every case is worked through, against all techniques and situations",
        whats: &[
            "a fact with fewer than two words",
            "no situation ",
            "no technique needs it",
            "the last choice does not end in the line cut",
            "a situation cannot go before itself",
            "no case fits both",
            "…, and neither goes before the other",
            "…` goes before this one in turn",
            "…go before each other in a circle",
            "…` is forbidden by its act `",
            "…` is never used with `",
            "the situations have ",
            "these words make ",
        ],
    },
];

/// The class of a problem, by what the loader says is wrong.
pub(super) fn class_of(what: &str) -> Option<&'static Class> {
    let says = |pattern: &&str| match pattern.strip_prefix('…') {
        Some(part) => what.contains(part),
        None => what.starts_with(*pattern),
    };
    CLASSES.iter().find(|class| class.whats.iter().any(says))
}

#[test]
fn the_contributors_guide_has_the_same_classes() {
    let guide = std::fs::read_to_string(home().join("DEVELOPERS.md")).unwrap();
    let (_, section) = guide.split_once("\n### The way of a schema\n").unwrap();
    let section = section.split("\n##").next().unwrap();
    let rows = section.lines().skip_while(|line| !line.starts_with("| only the loader"));
    let rows: Vec<_> = rows.skip(2).take_while(|line| line.starts_with("| ")).collect();
    let known: Vec<_> =
        CLASSES.iter().map(|class| format!("| {} | {} |", class.name, class.why)).collect();
    assert_eq!(rows, known);
}
