//! Which source file imports which: names that are handed on (`pub use`) are
//! followed to the file that writes them, so a file that only declares modules
//! and hands names on imports nothing.

use super::text::{Import, Said, Tests, Words, read};
use std::collections::{BTreeMap, BTreeSet, VecDeque};

/// Files by their path below `src/`, and what each imports.
pub(super) type Imports = BTreeMap<String, BTreeSet<String>>;

/// A package's modules, each with the file that it is written in.
pub(super) struct House {
    modules: BTreeMap<Words, (String, Said)>,
}

/// Deeper than any name is handed on; two that hand on each other end here.
const DEEPEST: usize = 12;

enum Found {
    File(String),
    Module(Words),
}

impl House {
    /// Takes in `lib.rs` and the modules below it, but for those of tests.
    pub(super) fn new(texts: &BTreeMap<String, String>) -> Self {
        let mut house = Self { modules: BTreeMap::new() };
        house.take(texts, &[]);
        house
    }

    fn take(&mut self, texts: &BTreeMap<String, String>, module: &[String]) {
        let stem = module.join("/");
        let names = ["lib.rs".to_owned(), format!("{stem}.rs"), format!("{stem}/mod.rs")];
        let of = if module.is_empty() { &names[..1] } else { &names[1..] };
        let file = of.iter().find(|name| texts.contains_key(*name));
        let file = file.unwrap_or_else(|| panic!("{} has no file", module.join("::")));
        for (within, said) in read(module, &texts[file], Tests::LeftOut) {
            for child in &said.children {
                self.take(texts, &[&within[..], std::slice::from_ref(child)].concat());
            }
            self.modules.insert(within, (file.clone(), said));
        }
    }

    pub(super) fn imports(&self) -> Imports {
        let mut all = Imports::new();
        for (module, (file, said)) in &self.modules {
            let imported =
                said.imports.iter().filter_map(|import| self.imported(module, said, import));
            let named = said.paths.iter().filter_map(|path| {
                match self.find(&self.below_the_root(module, path, 0)?, 0) {
                    Found::File(file) => Some(file),
                    Found::Module(_) => None,
                }
            });
            let of_file = all.entry(file.clone()).or_default();
            of_file.extend(imported.chain(named).filter(|other| other != file));
        }
        all
    }

    /// The file that a `use` line imports from. That of a whole module imports
    /// nothing yet: the paths do that begin with its name.
    fn imported(&self, module: &[String], said: &Said, import: &Import) -> Option<String> {
        if import.handed_on && !said.firsts.contains(&import.name) {
            return None;
        }
        match self.find(&self.below_the_root(module, &import.path, 0)?, 0) {
            Found::File(file) => Some(file),
            Found::Module(all) if import.name == "*" => Some(self.modules[&all].0.clone()),
            Found::Module(_) => None,
        }
    }

    /// A path as it is written in a module, from the root of the package;
    /// nothing for what comes from outside.
    fn below_the_root(&self, module: &[String], path: &[String], depth: usize) -> Option<Words> {
        let (first, rest) = path.split_first()?;
        let outer = || module.split_last().map(|(_, outer)| outer.to_vec());
        let mut from = match first.as_str() {
            "crate" => Vec::new(),
            "self" => module.to_vec(),
            "super" => outer()?,
            name => return self.begun(module, name, rest, depth),
        };
        let mut rest = rest;
        while let Some((word, after)) = rest.split_first()
            && word == "super"
        {
            from.pop();
            rest = after;
        }
        from.extend_from_slice(rest);
        Some(from)
    }

    /// The same for a path that begins with a name of the module: one that a
    /// `use` line brings there, by name or by a star, or one of its own.
    fn begun(&self, module: &[String], name: &str, rest: &[String], depth: usize) -> Option<Words> {
        let (_, said) = self.modules.get(module).filter(|_| depth <= DEEPEST)?;
        let own = [module, &[name.to_owned()], rest].concat();
        // Of a module and a function by one name, what follows tells which.
        let is_module = self.modules.contains_key(&own[..=module.len()]);
        if said.items.contains(name) || (is_module && !rest.is_empty()) {
            return Some(own);
        }
        let from = |import: &Import| self.below_the_root(module, &import.path, depth + 1);
        if let Some(import) = said.imports.iter().find(|import| import.name == name) {
            return Some([&from(import)?, rest].concat());
        }
        if is_module {
            return Some(own);
        }
        let mut stars = said.imports.iter().filter(|import| import.name == "*").filter_map(from);
        stars.find_map(|from| self.begun(&from, name, rest, depth + 1))
    }

    /// Where a path from the root leads. A name that is not found, as one that
    /// a macro writes, is taken to be written in the module that is asked.
    fn find(&self, path: &[String], depth: usize) -> Found {
        let Some((_, outer)) = path.split_last() else { return Found::Module(Vec::new()) };
        let is_module = |end: &usize| self.modules.contains_key(&path[..*end]);
        let end = (0..=outer.len()).rev().find(is_module).unwrap_or(0);
        match self.begun(&path[..end], &path[end], &path[end + 1..], depth) {
            Some(onward) if onward != path => self.find(&onward, depth + 1),
            _ if is_module(&path.len()) => Found::Module(path.to_vec()),
            _ => Found::File(self.modules[&path[..end]].0.clone()),
        }
    }
}

/// For each set of files that import each other, the shortest way round from
/// its first file.
pub(super) fn circles(imports: &Imports) -> Vec<Vec<&str>> {
    let mut seen: BTreeSet<&str> = BTreeSet::new();
    let mut circles = Vec::new();
    for file in imports.keys() {
        let before = reached(imports, file);
        if seen.contains(file.as_str()) || !before.contains_key(file.as_str()) {
            continue;
        }
        let mut circle = vec![file.as_str()];
        while circle.len() == 1 || circle[circle.len() - 1] != file {
            circle.push(before[circle[circle.len() - 1]]);
        }
        circle.reverse();
        circles.push(circle);
        seen.extend(before.keys().filter(|f| reached(imports, f).contains_key(file.as_str())));
    }
    circles
}

/// The files that one reaches, each with the one before it on a shortest way.
fn reached<'a>(imports: &'a Imports, from: &'a str) -> BTreeMap<&'a str, &'a str> {
    let mut before = BTreeMap::new();
    let mut queue = VecDeque::from([from]);
    while let Some(file) = queue.pop_front() {
        for other in &imports[file] {
            if !before.contains_key(other.as_str()) {
                before.insert(other.as_str(), file);
                queue.push_back(other);
            }
        }
    }
    before
}
