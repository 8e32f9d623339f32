//! Tests of what is refused in the situations of a file of techniques, and
//! where its parts do not fit together.

use crate::load::tests::technique_refusal::{SMALL, assert_told, problems};

#[test]
fn situations_without_clear_choices_are_refused() {
    assert_told(
        "
-   - id: lay
+   - id: pull
53:9: techniques[2].id: `pull`: two techniques have this id; expected an id that stands for one
    of them only; give one of them another id
68:9: situations[1].choices[0]: `lay`: no technique of this id is in the file; expected the id
    of a technique
78:15: goes along[0].choices[0]: `lay`: no technique of this id is in the file; expected the id
    of a technique

- when: { where: aboard, hook: [j] }
+ when: { were: aboard, hook: [j] }
65:19: situations[1].when.were: `were`: no fact of this id is in the file; expected the id of a
    fact; did you mean `where`?

- when: { where: aboard, hook: [j] }
+ when: { where: on deck, hook: [j] }
65:20: situations[1].when.where: `on deck`: this is no word of the fact; expected `alongside` or
    `aboard`; did you mean `aboard`?

- when: { where: aboard, hook: [j] }
+ when: { where: aboard, hook: [j, j] }
65:38: situations[1].when.hook[1]: `j`: this word stands here twice; take one of them away

- when: { where: aboard, hook: [j] }
+ when: { where: aboard, hook: [] }
65:34: situations[1].when.hook: `hook`: no word stands here; expected `j` or `circle`; take the
    line away if any answer will do

- when: { where: aboard, hook: [j] }
+ when: { where: aboard, hook: }
65:32: situations[1].when.hook: `hook`: no word stands here; expected `j` or `circle`; take the
    line away if any answer will do

-     when: {}
-     choices: [lay]
+     choices: [lay]
75:5: goes along[0].when: `when` is missing; write which cases it is

-     choices: [lay]
+     choices: []
78:5: goes along[0].choices: `choices` is missing; write techniques, from the best to the last

-       - lay, then pull
+       - lay, then pul
68:9: situations[1].choices[0]: `pul`: no technique of this id is in the file; expected the id
    of a technique; did you mean `pull`?

-       - lay, then pull
+       - lay, then lay
68:9: situations[1].choices[0]: `lay, then lay`: a technique stands in this choice twice;
    expected each technique once in a choice

-       - lay, then pull
+       - cut
+       - lay, then pull
70:9: situations[1].choices[2]: `cut`: this choice stands here twice; expected each choice once,
    from the best to the last; take one of them away

-       - lay, then pull
+       - then pull
68:9: situations[1].choices[0]: `then pull`: a choice cannot begin with `then`; expected a
    technique, or several like `dipnet, then cut-free-on-deck`; put the whole choice in
    quotation marks, or on a line of its own

-       - lay, then pull
-       - cut
+       - cut
+       - lay, then pull
69:9: situations[1].choices[1]: `lay, then pull`: the last choice does not end in the line cut;
    expected a technique with `cuts line: yes` at the end, for when nothing else goes; add a
    choice that leaves the hook and cuts the line

-   - id: any
+   - id: deck
75:9: goes along[0].id: `deck`: two situations have this id; expected an id that stands for one
    of them only; give one of them another id

-       - lay, then pull
45:9: techniques[1].id: `pull`: no situation leads to it; expected a choice of some situation;
    write it among the choices, or take the technique away
",
    );
}

#[test]
fn a_case_without_one_clear_answer_is_refused() {
    assert_told(
        "
-     choices: [lay]
+     choices: [lay]
+     goes before: [deck]
79:5: goes along[0].goes before: `goes before` has no place here; expected nothing, since this
    goes along with whatever situation fits; take the line away

- goes before: [deck]
+ goes before: [deck, water]
66:25: situations[1].goes before[1]: `water`: no case fits both, so there is nothing to decide;
    expected a situation that fits some of the same cases; take the name away, or correct `when`
    of one of them

- goes before: [deck]
+ goes before: [deck, deck-j]
66:25: situations[1].goes before[1]: `deck-j`: a situation cannot go before itself; expected a
    situation that fits some of the same cases; take the name away, or correct `when` of one of
    them

- goes before: [deck]
+ goes before: [dek]
66:19: situations[1].goes before[0]: `dek`: no situation of this id is in the file; expected the
    id of a situation; did you mean `deck`?

-     goes before: [deck]
71:11: situations[2].when: `deck`: `deck-j` fits the case `aboard, j` too, and neither goes
    before the other; expected one situation that answers each case; write `goes before: [deck]`
    in `deck-j`, or the other way

-     when: { where: aboard }
+     when: { where: aboard }
+     goes before: [deck-j]
73:18: situations[2].goes before: `deck`: `deck-j` goes before this one in turn, as in the case
    `aboard, j`; expected one situation that answers each case; take one of the two names away

-     when: { where: aboard }
+     when: { where: aboard, hook: j }
58:1: situations: no situation answers the case `aboard, circle`; expected one situation that
    answers each case; write a situation for it, or widen `when` of another

-     when: { where: alongside }
+     when: { where: alongside, hook: circle }
58:1: situations: no situation answers the case `alongside, j`; expected one situation that
    answers each case; write a situation for it, or widen `when` of another
",
    );
}

#[test]
fn choices_that_lead_to_what_is_never_done_are_refused() {
    assert_told(
        "
- hook: [j] }
+ hook: [j, circle] }
68:9: situations[1].choices[0]: `lay, then pull`: `pull` is forbidden by its act `pulls` in the
    case `aboard, circle`: Never pull a circle hook; expected a choice that leads to nothing
    that is never done; take the choice away, or narrow `when` of the situation

- when: { where: alongside }
-     choices: [cut]
+ when: { where: alongside }
+     choices: [pull, cut]
62:15: situations[0].choices[0]: `pull`: `pull` is forbidden by its act `pulls` in the case
    `alongside, circle`: Never pull a circle hook; expected a choice that leads to nothing that
    is never done; take the choice away, or narrow `when` of the situation
62:15: situations[0].choices[0]: `pull`: `pull` is never used with `where: alongside`, as in the
    case `alongside, j`; expected a choice that leads to nothing that is never done; take the
    choice away, or narrow `when` of the situation

- acts: [lays]
+ acts: [drops]
68:9: situations[1].choices[0]: `lay, then pull`: `lay` is forbidden by its act `drops` in the
    case `aboard, j`: Never drop it; expected a choice that leads to nothing that is never done;
    take the choice away, or narrow `when` of the situation
78:15: goes along[0].choices[0]: `lay`: `lay` is forbidden by its act `drops` in the case
    `alongside, j`: Never drop it; expected a choice that leads to nothing that is never done;
    take the choice away, or narrow `when` of the situation
",
    );
}

/// The small text with pieces replaced, each of which must be there.
fn edited(edits: &[(&str, &str)]) -> String {
    edits.iter().fold(SMALL.to_owned(), |text, (from, to)| {
        assert_eq!(text.matches(from).count(), 1, "`{from}` stands there not just once");
        text.replacen(from, to, 1)
    })
}

fn told(text: &str) -> Vec<String> {
    problems(text).iter().map(ToString::to_string).collect()
}

#[test]
fn how_many_cases_are_without_an_answer_is_told() {
    let text = edited(&[
        ("    when: { where: alongside }\n", "    when: { where: alongside, hook: j }\n"),
        ("    when: { where: aboard }\n", "    when: { where: aboard, hook: j }\n"),
    ]);
    assert_eq!(
        told(&text),
        ["techniques.yaml:58:1: situations: no situation answers 2 cases, the first of them \
          `alongside, circle`; expected one situation that answers each case; write a situation \
          for it, or widen `when` of another"]
    );
}

#[test]
fn situations_that_go_before_each_other_in_a_circle_are_refused() {
    let text = edited(&[(
        "    when: { where: aboard }\n    choices: [cut]\n",
        "    when: { where: aboard }\n    goes before: [third]\n    choices: [cut]\n\
         \x20 - id: third\n    title: Third\n    when: { hook: j, where: aboard }\n\
         \x20   goes before: [deck-j]\n    choices: [cut]\n",
    )]);
    assert_eq!(
        told(&text),
        ["techniques.yaml:58:1: situations: `deck-j`, `deck`, `third` go before each other in a \
          circle in the case `aboard, j`; expected one situation that goes before all others \
          that fit; let one of them go before all the others"]
    );
}

#[test]
fn what_is_forbidden_only_in_cases_that_another_answers_is_let_pass() {
    let deck = (
        "    when: { where: aboard }\n    choices: [cut]",
        "    when: { where: aboard }\n    choices: [pull, cut]",
    );
    let first = ("      - lay, then pull\n", "      - lay\n");
    let never = ("when: { hook: circle }, acts: [pulls]", "when: { hook: j }, acts: [pulls]");
    // With a J hook aboard it is `deck-j` that answers, not `deck`.
    assert_eq!(told(&edited(&[deck, first, never])), [""; 0]);
    let told = told(&edited(&[deck, first]));
    assert_eq!(told.len(), 1);
    assert!(told[0].contains("situations[2].choices[0]: `pull`: `pull` is forbidden by its act"));
    assert!(told[0].contains("in the case `aboard, circle`: Never pull a circle hook;"));
}

#[test]
fn more_cases_than_can_be_walked_are_refused_before_they_are_walked() {
    let fact = |n: usize| {
        format!(
            "  - {{ id: f{n}, asks: F?, words: [{{ word: a{n}, says: a }}, {{ word: b{n}, says: b }}] }}\n"
        )
    };
    let with = |number: usize| {
        let facts: String = (0..number).map(fact).collect();
        told(&edited(&[("facts:\n", &format!("facts:\n{facts}"))]))
    };
    // Two words to each of the 14 facts: 16,384 cases.
    assert_eq!(with(12), [""; 0]);
    for (number, cases) in [(13, "32768"), (90, &usize::MAX.to_string())] {
        assert_eq!(
            with(number),
            [format!(
                "techniques.yaml:6:1: facts: these words make {cases} cases, which are too many; \
                 expected at most 20000: the numbers of words multiplied; take facts or words away"
            )]
        );
    }
}

#[test]
fn lists_without_end_are_refused() {
    let many: String = (0..200)
        .map(|n| format!("  - {{ id: s{n}, title: S, when: {{}}, choices: [cut] }}\n"))
        .collect();
    let told = told(&edited(&[("situations:\n", &format!("situations:\n{many}"))]));
    let start = "techniques.yaml:58:1: situations: 203 entries are too many; expected at most 100";
    assert!(told.iter().any(|one| one == start), "{told:#?}");
}
