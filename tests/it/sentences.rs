//! No sentence stands in the code that writes pages or answers commands: what
//! people read stands in the files of messages.

use proc_macro2::{Delimiter, TokenStream, TokenTree};
use std::fs;
use std::path::Path;

/// What looks like a sentence and is none, by the end of its file's name: what
/// YAML files and browsers take, the names of styles, and the English of the
/// shipped techniques, which is taken apart.
const NONE: &[(&str, &str)] = &[
    ("draw/sketches.rs", "line heavy"),
    ("draw/reach.rs", "pole guess"),
    ("draw/time.rs", "bar over"),
    ("options/html/boxes.rs", "own on-screen"),
    ("content/freeing.rs", "kitmuster options {file}"),
    ("words/options/told.rs", "point and barb "),
    ("sheet/blank.rs", "listed things only"),
    ("sheet/blank.rs", "workshop certificate"),
    ("sheet/record.rs", "listed things only"),
    ("sheet/record.rs", "#   from: top of the rail"),
    ("sheet/record.rs", "#   from: working deck"),
    ("sheet/skipper.rs", "jobs recommended"),
    ("sheet/skipper.rs", "jobs lapses"),
];

/// Help, which clap and the README take from the arguments; formats, of which
/// the words are those of columns and keys; what runs when the crate is built;
/// and what is there for tests.
fn is_left_out(file: &str) -> bool {
    let parts = ["/cli/arguments", "/report/wire/", "/words/generate.rs", "/made_up", "sample.rs"];
    parts.iter().any(|part| file.contains(part)) || file.contains("tests")
}

#[test]
fn no_sentence_stands_in_the_code_of_pages_and_commands() {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("src");
    let files = ["report", "cli"].map(|room| walkdir::WalkDir::new(root.join(room)));
    let files = files.into_iter().flatten().map(|entry| entry.unwrap().into_path());
    let (mut found, mut none, mut looked) = (Vec::new(), NONE.to_vec(), 0);
    for path in files.filter(|path| path.extension().is_some_and(|end| end == "rs")) {
        let file = path.to_string_lossy().replace('\\', "/");
        if is_left_out(&file) {
            continue;
        }
        for text in texts(fs::read_to_string(&path).unwrap().parse().unwrap()) {
            looked += 1;
            let is_none = |(end, known): &(&str, &str)| file.ends_with(end) && text == *known;
            if NONE.iter().any(&is_none) {
                none.retain(|one| !is_none(one));
            } else if is_sentence(&text) {
                found.push(format!("{file}: {text}"));
            }
        }
    }
    assert!(looked > 500, "{looked} texts were found");
    assert!(found.is_empty(), "{}", found.join("\n"));
    assert!(none.is_empty(), "strike out: {none:?}");
}

/// The texts in code, without attributes of the code and what is built for
/// tests only, and without the attributes of a page that nobody reads.
fn texts(code: TokenStream) -> Vec<String> {
    const UNREAD: [&str; 2] = ["class", "content"];
    let (mut all, mut skips, mut name) = (Vec::new(), false, String::new());
    let mut tokens = code.into_iter().peekable();
    while let Some(token) = tokens.next() {
        match (&token, tokens.peek()) {
            (TokenTree::Punct(sign), _) if sign.as_char() == '#' => {
                tokens.next_if(|next| next.to_string() == "!");
                let attribute = tokens.next().map(|next| next.to_string().replace(' ', ""));
                skips |= attribute.as_deref() == Some("[cfg(test)]");
            }
            (TokenTree::Punct(sign), _) if sign.as_char() == ';' => skips = false,
            (TokenTree::Group(group), _) => {
                if !skips {
                    all.extend(texts(group.stream()));
                }
                skips &= group.delimiter() != Delimiter::Brace;
            }
            (TokenTree::Ident(word), Some(TokenTree::Punct(sign))) if sign.as_char() == '=' => {
                name = word.to_string();
            }
            (TokenTree::Literal(_), _) if UNREAD.contains(&name.as_str()) => name.clear(),
            (TokenTree::Literal(literal), _) if !skips => {
                let text = literal.to_string();
                if let Some((_, text)) = text.split_once('"').filter(|_| !text.starts_with('b')) {
                    all.push(text.trim_end_matches('#').trim_end_matches('"').to_owned());
                }
            }
            _ => {}
        }
    }
    all
}

/// Two words with a blank between them, or a word that is put together with
/// something else.
fn is_sentence(text: &str) -> bool {
    // A picture's path has single letters, a command stands in backticks.
    let prose: String = text.split('`').step_by(2).collect::<Vec<_>>().join("·");
    let is_word = |word: &str| {
        let word = word.trim_matches(|c: char| !c.is_alphanumeric() && c != '{' && c != '}');
        word.len() > 1 && word.chars().all(|c| c.is_alphabetic() || "'-".contains(c))
    };
    let words: Vec<&str> = prose.split_whitespace().collect();
    words.windows(2).any(|pair| {
        let is_gap = |word: &str| word.contains('{') && word.contains('}');
        let is_key = |word: &str| word.ends_with(':');
        let (one, next) = (pair[0], pair[1]);
        let is_pair =
            is_word(one) && (is_word(next) || is_gap(next)) || is_gap(one) && is_word(next);
        is_pair && !is_key(one) && !is_key(next)
    })
}

#[test]
fn a_sentence_is_told_from_a_key_and_a_path() {
    for text in
        ["not met", "at a freeboard of {}", "{left} more", "laid over it: {}", "see `x`, and then"]
    {
        assert!(is_sentence(text), "{text}");
    }
    for text in [
        "met",
        "vessel: {}",
        "{}: {text}",
        " (`{}`)",
        "M84 150 L94 92",
        "`kitmuster words`",
        "– {}.",
    ] {
        assert!(!is_sentence(text), "{text}");
    }
    let code = "#[doc = \"not this\"] fn f() { g(\"this one\"); html! { \"that one\" } } \
        #[cfg(test)] mod tests { fn f() { g(\"not this\") } } const A: &str = r#\"nor less\"#;";
    assert_eq!(texts(code.parse().unwrap()), ["this one", "that one", "nor less"]);
}
