//! What the text of one source file names of others: its `use` lines and the
//! paths in its code, inside macros too. Left out are documentation, what is
//! built for tests only, and what no path shows, as a method that is found by
//! its receiver. Judges nothing.

use proc_macro2::{Delimiter, Spacing, TokenStream, TokenTree};
use std::collections::{BTreeMap, BTreeSet};

/// The words of a path; of a module, those below the root of the package.
pub(super) type Words = Vec<String>;

/// What one module says.
#[derive(Default, Debug)]
pub(super) struct Said {
    pub(super) imports: Vec<Import>,
    /// Paths of two words or more in the code.
    pub(super) paths: BTreeSet<Words>,
    /// Every word of the code that a path begins with or consists of.
    pub(super) firsts: BTreeSet<String>,
    /// The items that are written here.
    pub(super) items: BTreeSet<String>,
    /// The modules that lie in files of their own.
    pub(super) children: BTreeSet<String>,
}

/// One name that a `use` line brings into a module; `*` for all there are.
#[derive(Debug)]
pub(super) struct Import {
    pub(super) name: String,
    pub(super) path: Words,
    /// It is handed on, by `pub use`.
    pub(super) handed_on: bool,
}

/// Whether what is built for tests only is read as well.
#[derive(Clone, Copy, PartialEq)]
pub(super) enum Tests {
    Read,
    LeftOut,
}

const ITEMS: [&str; 9] =
    ["fn", "struct", "enum", "trait", "type", "const", "static", "union", "macro_rules"];

/// Reads the file that is `module`; a module written inside it stands apart.
pub(super) fn read(module: &[String], text: &str, tests: Tests) -> BTreeMap<Words, Said> {
    let tokens = text.parse().unwrap_or_else(|error| panic!("{}: {error}", module.join("::")));
    let mut words = Vec::new();
    flatten(tokens, &mut words);
    let mut reader = Reader { words, at: 0, tests, said: BTreeMap::new() };
    reader.module(module);
    reader.said
}

/// Tokens as words, one after the other; `::` is one, a literal is `0`.
fn flatten(tokens: TokenStream, into: &mut Vec<String>) {
    let mut is_half = false;
    for token in tokens {
        match token {
            TokenTree::Ident(word) => into.push(word.to_string()),
            TokenTree::Literal(_) => into.push("0".to_owned()),
            TokenTree::Punct(sign) => {
                let joins = sign.as_char() == ':' && sign.spacing() == Spacing::Joint;
                match (is_half, joins) {
                    (true, _) => into.push("::".to_owned()),
                    (false, true) => {}
                    (false, false) => into.push(sign.as_char().to_string()),
                }
                is_half = joins && !is_half;
            }
            TokenTree::Group(group) => {
                let (open, close) = match group.delimiter() {
                    Delimiter::Brace => ("{", "}"),
                    Delimiter::Bracket => ("[", "]"),
                    Delimiter::Parenthesis | Delimiter::None => ("(", ")"),
                };
                into.push(open.to_owned());
                flatten(group.stream(), into);
                into.push(close.to_owned());
            }
        }
    }
}

struct Reader {
    words: Vec<String>,
    at: usize,
    tests: Tests,
    said: BTreeMap<Words, Said>,
}

impl Reader {
    fn word(&self, ahead: usize) -> &str {
        self.words.get(self.at + ahead).map_or("", String::as_str)
    }

    fn is_name(&self, ahead: usize) -> bool {
        self.word(ahead).starts_with(|c: char| c.is_alphabetic() || c == '_')
    }

    fn next(&mut self) -> String {
        self.at += 1;
        self.words[self.at - 1].clone()
    }

    /// Reads on behind the bracket that closes the one here.
    fn skip_group(&mut self) {
        let mut depth = 0;
        loop {
            match self.next().as_str() {
                "{" | "[" | "(" => depth += 1,
                "}" | "]" | ")" => depth -= 1,
                _ => {}
            }
            if depth == 0 {
                break;
            }
        }
    }

    /// Reads on behind the next item, which is not looked at.
    fn skip_item(&mut self) {
        loop {
            match self.word(0) {
                "{" => return self.skip_group(),
                "[" | "(" => self.skip_group(),
                ";" => return self.at += 1,
                _ => self.at += 1,
            }
        }
    }

    /// Reads up to the end of this module.
    fn module(&mut self, module: &[String]) {
        let mut said = Said::default();
        let mut depth = 0;
        while self.at < self.words.len() && (depth, self.word(0)) != (0, "}") {
            let begins = self.at == 0 || !["::", "."].contains(&self.words[self.at - 1].as_str());
            match self.word(0) {
                "#" if self.tests == Tests::LeftOut
                    && self.words[self.at..].starts_with(&for_tests()) =>
                {
                    self.at += for_tests().len();
                    self.skip_item();
                }
                "mod" if self.word(2) == "{" => {
                    let inside = [module, &[self.word(1).to_owned()]].concat();
                    self.at += 3;
                    self.module(&inside);
                    self.at += 1;
                }
                "mod" if self.word(2) == ";" => {
                    said.children.insert(self.word(1).to_owned());
                    self.at += 3;
                }
                "pub" => self.seen(&mut said),
                "use" if self.word(1) != "<" => {
                    self.at += 1;
                    self.tree(&[], false, &mut said);
                }
                _ if self.is_name(0) && begins => {
                    if depth == 0 && ITEMS.contains(&self.word(0)) {
                        let after = if self.word(1) == "!" { 2 } else { 1 };
                        said.items.insert(self.word(after).to_owned());
                    }
                    self.path(&mut said);
                }
                word => {
                    depth += i32::from(["{", "[", "("].contains(&word));
                    depth -= i32::from(["}", "]", ")"].contains(&word));
                    self.at += 1;
                }
            }
        }
        self.said.insert(module.to_vec(), said);
    }

    /// `pub`, with the path of `pub(in …)`, which names nothing.
    fn seen(&mut self, said: &mut Said) {
        self.at += 1;
        if self.word(0) == "(" && ["crate", "super", "self", "in"].contains(&self.word(1)) {
            self.skip_group();
        }
        if self.word(0) == "use" {
            self.at += 1;
            self.tree(&[], true, said);
        }
    }

    fn path(&mut self, said: &mut Said) {
        let mut path = vec![self.next()];
        while self.word(0) == "::" && self.is_name(1) {
            self.at += 1;
            path.push(self.next());
        }
        said.firsts.insert(path[0].clone());
        if path.len() > 1 {
            said.paths.insert(path);
        }
    }

    /// One branch of a `use` line: up to its comma, bracket or semicolon.
    fn tree(&mut self, before: &[String], handed_on: bool, said: &mut Said) {
        let mut path = before.to_vec();
        loop {
            match self.next().as_str() {
                "{" => {
                    while self.word(0) != "}" {
                        self.tree(&path, handed_on, said);
                        self.at += usize::from(self.word(0) == ",");
                    }
                    return self.at += 1;
                }
                // A path from outside this package; no module is called so.
                "::" if path.is_empty() => path.push(String::new()),
                "::" => {}
                "*" => {
                    return said.imports.push(Import { name: "*".to_owned(), path, handed_on });
                }
                word => path.push(word.to_owned()),
            }
            if self.word(0) == "as" || [",", "}", ";"].contains(&self.word(0)) {
                break;
            }
        }
        path.pop_if(|last| last == "self" && !before.is_empty());
        let mut name = path[path.len() - 1].clone();
        if self.word(0) == "as" {
            self.at += 1;
            name = self.next();
        }
        said.imports.push(Import { name, path, handed_on });
    }
}

/// The words of the attribute before what is built for tests only.
fn for_tests() -> [String; 7] {
    ["#", "[", "cfg", "(", "test", ")", "]"].map(str::to_owned)
}
