//! What is left empty: loader and schema say the same of it.

use super::files::seen;
use super::mutations::read;
use super::validator;

/// What the loader says of a text, if it refuses it; the schema says the same
/// yes or no.
#[track_caller]
fn told(name: &str, text: &str) -> Option<String> {
    let refusal = read(name, text).err().map(|refusal| refusal.to_string());
    assert_eq!(validator(name).is_valid(&seen(text)), refusal.is_none(), "{text}{refusal:?}");
    refusal
}

/// How a vocabulary begins.
const VOCABULARY: &str = "format: vocabulary/1\n";

#[test]
fn a_line_of_an_open_group_may_be_empty_where_its_key_says_enough() {
    for lines in [
        "kinds: { pliers: }\n",
        "kinds:\n  pliers:\n",
        "permits: { pelagic: }\ngear: { longline: }\nareas: { gulf: }\n",
        "vessel features: { wheelhouse: }\n",
        "changes: { sharpened: }\n",
    ] {
        assert_eq!(told("vocabulary", &format!("{VOCABULARY}{lines}")), None, "{lines}");
    }
    let vessel = "format: vessel/1\nname: A\nkit: []\nfeatures: { wheelhouse: }\n";
    assert_eq!(told("vessel", vessel), None);
}

#[test]
fn a_line_of_an_open_group_is_refused_where_more_is_to_be_said() {
    let text = format!("{VOCABULARY}attributes: {{ handle: }}\n");
    assert_eq!(
        told("vocabulary", &text).unwrap(),
        "w.yaml:2:15: attributes.handle.quantity: `quantity` is missing; \
         write `quantity: length` or the like"
    );
    let text = "format: profile/1\nid: a\nrule: a\nedition: b\ntitle: A\nsource: A\n\
                requirements:\n  - { id: b, title: B, clause: c, verified: read, \
                carry: 1 pliers, with: { overall: } }\n";
    assert_eq!(
        told("profile", text).unwrap(),
        "p.yaml:8:76: requirements[0].with.overall: nothing is said of `overall`; \
         write what is asked after the colon, or take the line away"
    );
}

#[test]
fn nothing_is_told_alike_whatever_else_is_wrong_in_the_file() {
    let text = "format: profile/1\nid: a\nrule: a\nedition: b\ntitle: A\nsource: A\n\
                requirements:\n  - { id: b, title: B, clause: c, verified: read, \
                carry: 1 pliers, when: { gear: } }\n";
    let alone = told("profile", text).unwrap();
    let beside = told("profile", &format!("{text}odd: 1\n")).unwrap();
    assert_eq!(beside.lines().next(), alone.lines().next(), "{beside}");
    assert!(alone.contains("nothing is said of `gear`"), "{alone}");
}

#[test]
fn an_empty_entry_of_a_list_of_texts_is_refused() {
    let vessel = "format: vessel/1\nname: A\nkit: []\n";
    for nothing in ["[null]", "[~]", "[Null, longline]", "\n  - longline\n  -\n"] {
        let told = told("vessel", &format!("{vessel}gear: {nothing}\n")).unwrap();
        let says = "nothing stands here; expected plain text; fill it in, or take the entry away";
        assert!(told.contains(says) && told.lines().count() == 1, "{told}");
    }
    assert_eq!(
        told("vessel", &format!("{vessel}permits: [null]\n")).unwrap(),
        "v.yaml:4:11: permits[0]: `null`: nothing stands here; expected plain text; \
         fill it in, or take the entry away"
    );
    let words = format!("{VOCABULARY}kinds: {{ pliers: {{ attributes: [~] }} }}\n");
    assert_eq!(
        told("vocabulary", &words).unwrap(),
        "w.yaml:2:33: kinds.pliers.attributes[0]: `~`: nothing stands here; expected plain text; \
         fill it in, or take the entry away"
    );
}

#[test]
fn a_quoted_null_is_a_text() {
    let vessel = "format: vessel/1\nname: A\nkit: []\ngear: ['null', \"~\"]\n";
    assert_eq!(told("vessel", vessel), None);
    let vocabulary = format!("{VOCABULARY}kinds: {{ pliers: {{ also: ['null'] }} }}\n");
    assert_eq!(told("vocabulary", &vocabulary), None);
}
