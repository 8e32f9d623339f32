//! What must be true of everything that is told to a person.

use kitmuster::load::{Position, Problem, Refusal, Source};
use kitmuster::model::text::steers;
use kitmuster::report;
use unicode_width::UnicodeWidthStr;

/// How wide a terminal is taken to be.
pub const WIDTH: usize = 80;

/// What is wrong with a file as a whole, which stands in no line.
const WHOLE: [&str; 3] = ["this file is empty", "this file is too large", "only the first"];

/// What the program calls the kinds of files.
const CALLED: [&str; 6] = [
    "a vessel's inventory",
    "an inspection record",
    "a supplier's catalogue",
    "a profile",
    "a vocabulary",
    "a file of techniques",
];

/// A refusal says of every problem what and where, inside the text, and can
/// be shown on any terminal. `name` is the file that was made of `text`.
pub fn refusal(refusal: &Refusal, name: &str, text: &str) {
    assert!(!refusal.problems.is_empty(), "refused without a problem");
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    // An editor ends a line at a line feed, YAML at a lone carriage return
    // too; a position may be of either count.
    let counts = [text.to_owned(), text.replace("\r\n", "\n").replace('\r', "\n")];
    let counts = counts.map(|text| lengths(&text));
    for problem in &refusal.problems {
        told(problem);
        if &*problem.place.file != name {
            continue;
        }
        match problem.position {
            Some(at) => assert!(
                counts.iter().any(|lines| is_inside(at, lines)),
                "not inside the text: {problem}"
            ),
            None => assert!(
                WHOLE.iter().any(|whole| problem.wording().what.starts_with(whole)),
                "no position: {problem}"
            ),
        }
    }
    page(&report::refusals(std::slice::from_ref(refusal), WIDTH));
}

fn told(problem: &Problem) {
    let what = problem.wording().what;
    assert!(!what.trim().is_empty(), "a problem without words: {problem:?}");
    assert!(!what.ends_with('.'), "{what:?} ends in a full stop");
    // Where its readers disagree about a file, the program says no more than
    // this, which helps nobody.
    let lost = CALLED.iter().any(|called| *what == format!("this cannot be read as {called}"));
    assert!(!lost, "{problem}");
    let line = problem.to_string();
    assert!(!line.contains(steers) && !line.contains(['\n', '\t']), "{line:?}");
}

/// The lengths of a text's lines in characters.
fn lengths(text: &str) -> Vec<usize> {
    text.split('\n').map(|line| line.chars().count()).collect()
}

fn is_inside(at: Position, lines: &[usize]) -> bool {
    // The end of a text that ends in a line feed is the start of a next line.
    let length = lines.get(at.line.wrapping_sub(1)).copied().unwrap_or(0);
    (1..=lines.len() + 1).contains(&at.line) && (1..=length + 1).contains(&at.column)
}

/// A page fits the terminal, and nothing in it steers one but the colours.
pub fn page(page: &str) {
    let plain = without_colours(page);
    steers_nothing(&plain);
    for line in plain.lines() {
        assert!(line.width() <= WIDTH, "{} columns: {line}", line.width());
    }
}

/// Nothing in a text steers a terminal.
pub fn steers_nothing(text: &str) {
    assert!(!text.contains(steers), "{:?}", text.chars().find(|c| steers(*c)));
}

/// The text without the colours and weights that the program sets.
fn without_colours(text: &str) -> String {
    let mut plain = String::with_capacity(text.len());
    let mut rest = text;
    while let Some(at) = rest.find("\u{1b}[") {
        let (before, code) = rest.split_at(at);
        let end = code[2..].find(|c: char| !(c.is_ascii_digit() || c == ';'));
        match end.map(|end| end + 2).filter(|end| code[*end..].starts_with('m')) {
            Some(end) => {
                plain.push_str(before);
                rest = &code[end + 1..];
            }
            None => {
                plain.push_str(&rest[..at + 2]);
                rest = &rest[at + 2..];
            }
        }
    }
    plain.push_str(rest);
    plain
}

/// What a file says after a key stands where the key is said to stand: the
/// value, or the key where its value begins in another line. A text in quotes,
/// in a block or with an anchor begins with its sign.
pub fn stands(source: &Source, key: &str, said: &str) {
    let at = source.positions().locate(key).expect("a file has its positions");
    let text = source.text.replace("\r\n", "\n").replace('\r', "\n");
    let line = text.split('\n').nth(at.line - 1).expect("a position lies in the file");
    let here: String = line.chars().skip(at.column - 1).collect();
    let name = key.rsplit('.').next().unwrap_or(key);
    let begins = |word: &str| here.trim_start().starts_with(word);
    let word = said.split_whitespace().next().unwrap_or_default();
    assert!(
        begins(word) || begins(name) || here.starts_with(['"', '\'', '|', '>', '&', '*', '?']),
        "`{said}` of {key} does not stand at {at:?}: {here:?}"
    );
}
