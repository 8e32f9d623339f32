//! What makes functions out of files of messages refuses every file that
//! cannot be right, and says which one and where.

#[path = "../../src/report/words/generate.rs"]
mod generate;

use generate::{File, code};

const DESK: File<'_> = File { name: "desk.en.ftl", language: "en", text: "" };

fn english(text: &str) -> File<'_> {
    File { name: "crew.en.ftl", language: "en", text }
}

/// What is wrong with a file in English and one in Polish, which has more
/// classes of plural.
fn refused(en: &str, pl: &str) -> Vec<String> {
    let polish = File { name: "crew.pl.ftl", language: "pl", text: pl };
    code(&[english(en), polish], DESK).err().unwrap_or_default()
}

/// What is wrong with a file in English.
fn wrong(text: &str) -> Vec<String> {
    code(&[english(text)], DESK).err().unwrap_or_default()
}

#[test]
fn a_key_that_is_missing_or_too_many_is_named_with_its_file() {
    assert_eq!(refused("yes = yes\nno = no", "yes = tak"), ["crew.pl.ftl: `no` is missing"]);
    assert_eq!(
        refused("yes = yes", "yes = tak\nno = nie"),
        ["crew.pl.ftl: `no`: is not in the first language"]
    );
    assert_eq!(wrong("yes = yes\nyes = aye"), ["crew.en.ftl: `yes`: is there twice"]);
    assert_eq!(refused("yes = yes\nno = no", "yes = tak\nno = nie"), [""; 0]);
}

#[test]
fn every_language_is_given_the_same_arguments() {
    for polish in ["lent = oddano", "# $to, $day\nlent = { $to }, { $day }", "lent = { $day }"] {
        assert_eq!(
            refused("lent = lent to { $to }", polish),
            ["crew.pl.ftl: `lent`: has other arguments"],
            "{polish}"
        );
    }
    let count = "n = { $n ->\n    [one] one\n    [few] few\n   *[many] many\n }";
    assert_eq!(refused("n = { $n }", count), ["crew.pl.ftl: `n`: has other arguments"]);
}

#[test]
fn several_arguments_are_given_in_the_order_that_a_comment_says() {
    let asked = "crew.en.ftl: `span`: the comment above has to name its arguments: $from, $to";
    for comment in ["", "# $from\n", "# $from, $until\n", "# $from, $to, $day\n"] {
        assert_eq!(wrong(&format!("{comment}span = {{ $from }} to {{ $to }}")), [asked]);
    }
    let both = "# $to, $from\nspan = { $from } to { $to }";
    let made = code(&[english(both)], DESK).unwrap();
    assert!(made.contains("fn span(self, to: &dyn std::fmt::Display, from:"), "{made}");
}

#[test]
fn a_choice_has_the_classes_of_its_language_and_no_others() {
    let choice = |classes: &[&str]| {
        let lines = classes.iter().map(|class| format!("    [{class}] some\n"));
        format!("n = {{ $n ->\n{}   *[other] some\n }}", lines.collect::<String>())
    };
    for (classes, told) in [
        (vec!["few"], "few other"),
        (vec!["one", "many"], "many one other"),
        (vec!["metric"], "metric other"),
    ] {
        let classes = choice(&classes);
        assert_eq!(
            wrong(&classes),
            [format!(
                "crew.en.ftl: `n`: a choice has the classes {told}, the language has other one"
            )],
            "{classes}"
        );
    }
    assert_eq!(wrong(&choice(&["one"])), [""; 0]);
    assert_eq!(wrong(&choice(&["0", "7"])), [""; 0]);
    let polish = refused(&choice(&["one"]), &choice(&["one"]));
    assert!(polish[0].starts_with("crew.pl.ftl: `n`: a choice has the classes one other"));
    let polish = "n = { $n ->\n    [one] one\n    [few] few\n   *[many] many\n }";
    assert_eq!(refused(&choice(&["one"]), polish), [""; 0]);
}

#[test]
fn what_is_no_message_is_refused() {
    let asked = |text: &str, part: &str| {
        let told = wrong(text);
        assert!(told.iter().any(|told| told.starts_with(part)), "{text}: {told:?}");
    };
    asked("yes = yes\nno : no", "crew.en.ftl: line 2: ");
    asked("yes =\n    .label = yes", "crew.en.ftl: `yes`: has no text");
    asked("yes = { aye }", "crew.en.ftl: `yes`: holds something else than arguments");
    asked("yes = { NUMBER($n) }", "crew.en.ftl: `yes`: holds something else than arguments");
    let desk = File { text: "yes = { aye }", ..DESK };
    let told = code(&[], desk).unwrap_err();
    assert!(told[0].starts_with("desk.en.ftl: `yes`: "), "{told:?}");
}

#[test]
fn the_made_up_language_leaves_what_is_typed_as_it_is() {
    let made = code(&[english("see = see `{ $x } a` or `b`")], DESK).unwrap();
    let (_, made_up) = made.split_once("Language::MadeUp").unwrap();
    let texts: Vec<&str> = made_up.lines().filter(|line| line.starts_with("put(")).collect();
    assert_eq!(
        texts,
        [
            "put(&mut out, &\"\u{442}\u{434}\u{434} `\");",
            "put(&mut out, &x);",
            "put(&mut out, &\" a` \u{43e}\u{441} `b`\");",
        ]
    );
}
