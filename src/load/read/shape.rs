//! Compares a marked tree with the schema of the as-written type: unknown
//! and doubled keys, wrong shapes. What is wrong is reported where it stands
//! and cut out, so that the rest can still be checked.

use crate::load::read::fault::{Fault, Form, Wanted};
use crate::load::read::problem::{MOST_PROBLEMS, Position, Problem, nearest};
use crate::load::read::spot::{push_entry, push_key};
use crate::load::read::tree::{Content, LONGEST_REMARK, MOST_LINES, MOST_LISTED, Node, Pair};
use crate::model::place::Place;
use crate::model::text::steers;
use serde_json::Value;
use std::sync::Arc;

/// Lists of which the check of the file tells how long they may be, with what
/// to do about it.
const COUNTED: [&str; 3] = ["kit", "items", "found"];

/// The longest text that is repeated as the entry of a list, in characters.
const LONGEST_LIKE: usize = 40;

/// What was found wrong, and the key paths that were cut out (problems that
/// a check finds there come from the cut and are not told).
#[derive(Debug, Default)]
pub(crate) struct ShapeReport {
    /// What is wrong.
    pub(crate) problems: Vec<Problem>,
    /// What was cut out.
    pub(crate) pruned: Vec<String>,
}

/// Judges a tree against a schema and prunes it.
pub(crate) fn judge_shape(root: &mut Node<'_>, schema: &Value, file: &Arc<str>) -> ShapeReport {
    let mut judge = Judge { whole: schema, file, report: ShapeReport::default() };
    judge.node(root, schema, &mut String::new(), false);
    judge.report
}

struct Judge<'a> {
    whole: &'a Value,
    file: &'a Arc<str>,
    report: ShapeReport,
}

impl Form {
    fn of(node: &Node<'_>) -> Self {
        match &node.content {
            _ if node.is_null() => Self::Nothing,
            Content::Text { .. } | Content::Pruned => Self::Text,
            Content::List(_) => Self::List,
            Content::Map(_) => Self::Group,
        }
    }
}

impl<'a> Judge<'a> {
    fn problem(&self, path: &str, at: Position, fault: Fault) -> Problem {
        Problem::new(Place::new(self.file, path), fault).at(at)
    }

    fn add(&mut self, problem: Problem) {
        self.report.problems.push(problem);
    }

    fn prune(&mut self, node: &mut Node<'_>, path: &str) {
        node.content = Content::Pruned;
        self.report.pruned.push(path.to_owned());
    }

    /// Judges a node, an entry of a list or not.
    fn node(&mut self, node: &mut Node<'_>, schema: &'a Value, path: &mut String, listed: bool) {
        if self.report.problems.len() > MOST_PROBLEMS {
            return self.prune(node, path);
        }
        if node.tagged {
            self.add(self.problem(path, node.at, Fault::Tagged));
            return self.prune(node, path);
        }
        if let Some(text) = node.text()
            && !self.is_showable(text, path, node.at)
        {
            return self.prune(node, path);
        }
        let branches = self.branches(schema);
        let form = Form::of(node);
        // No list has entries that may be nothing.
        let lacks = listed && form == Form::Nothing;
        let fits = |branch: &&Value| !lacks && admits(branch, form, node);
        let Some(branch) = branches.iter().copied().find(fits) else {
            self.wrong_form(node, form, &branches, path);
            return self.prune(node, path);
        };
        match &mut node.content {
            Content::List(entries) if entries.len() > MOST_LISTED => {
                if COUNTED.contains(&path.as_str()) {
                    // They are counted there, and no further looked at.
                    entries.iter_mut().for_each(|entry| entry.content = Content::Pruned);
                    return;
                }
                let fault = Fault::ListTooLong { entries: entries.len(), most: MOST_LISTED };
                self.add(self.problem(path, node.at, fault));
                self.prune(node, path);
            }
            Content::List(entries) => {
                let items = branch.get("items").unwrap_or(&Value::Bool(true));
                let length = path.len();
                for (index, entry) in entries.iter_mut().enumerate() {
                    push_entry(path, index);
                    self.node(entry, items, path, true);
                    path.truncate(length);
                }
            }
            Content::Map(pairs) if pairs.len() > MOST_LINES => {
                let fault = Fault::GroupTooLong { lines: pairs.len(), most: MOST_LINES };
                self.add(self.problem(path, node.at, fault));
                self.prune(node, path);
            }
            Content::Map(pairs) => self.pairs(pairs, branch, path),
            Content::Text { .. } | Content::Pruned => {}
        }
    }

    /// Whether a text can be shown anywhere and is no longer than a remark.
    fn is_showable(&mut self, text: &str, path: &str, at: Position) -> bool {
        if text.chars().any(steers) {
            self.add(self.problem(path, at, Fault::Steers).offending(text));
            return false;
        }
        if text.chars().count() as u64 > LONGEST_REMARK {
            self.add(self.problem(path, at, Fault::TextTooLong(LONGEST_REMARK)).offending(text));
            return false;
        }
        true
    }

    fn pairs(&mut self, pairs: &mut Vec<Pair<'_>>, branch: &'a Value, path: &mut String) {
        let known = branch.get("properties").and_then(Value::as_object);
        let open = branch.get("additionalProperties").filter(|open| **open != Value::Bool(false));
        let length = path.len();
        let mut seen: Vec<(String, Position)> = Vec::new();
        pairs.retain_mut(|pair| {
            push_key(path, &pair.key);
            let first = seen.iter().find(|(key, _)| *key == pair.key).map(|(_, at)| *at);
            let schema = known.and_then(|known| known.get(&*pair.key)).or(open);
            let keep = match (first, schema) {
                _ if !self.is_showable(&pair.key, path, pair.key_at) => false,
                (Some(first), _) => {
                    self.doubled(pair, first, path);
                    false
                }
                (None, Some(schema)) => {
                    seen.push((pair.key.to_string(), pair.key_at));
                    self.node(&mut pair.value, schema, path, false);
                    true
                }
                (None, None) => {
                    let names = known.into_iter().flat_map(|known| known.keys());
                    let meant = nearest(&pair.key, names.map(String::as_str));
                    self.unknown(pair, meant, path, length);
                    false
                }
            };
            path.truncate(length);
            keep
        });
    }

    fn doubled(&mut self, pair: &Pair<'_>, first: Position, path: &str) {
        let fault = Fault::Doubled { first: first.line };
        self.add(self.problem(path, pair.key_at, fault).offending(&pair.key));
    }

    fn unknown(&mut self, pair: &Pair<'_>, meant: Option<&str>, path: &str, above: usize) {
        let problem = self.problem(path, pair.key_at, Fault::UnknownKey);
        self.add(problem.offending(&pair.key).meant(meant));
        self.report.pruned.push(path.to_owned());
        // That the right key is missing is not told a second time.
        if let Some(meant) = meant {
            let mut right = path[..above].to_owned();
            push_key(&mut right, meant);
            self.report.pruned.push(right);
        }
    }

    fn wrong_form(&mut self, node: &Node<'_>, form: Form, branches: &[&'a Value], path: &str) {
        let mut wanted: Vec<Wanted> = Vec::new();
        for branch in branches {
            if let Some(only) = branch.get("const").and_then(Value::as_str) {
                wanted.push(Wanted::Only(only.to_owned()));
            }
            for form in [Form::Text, Form::List, Form::Group] {
                let of_form = Wanted::Of(form);
                if types(branch).any(|t| t == type_name(form)) && !wanted.contains(&of_form) {
                    wanted.push(of_form);
                }
            }
        }
        let wants_list = form == Form::Text && wanted.contains(&Wanted::Of(Form::List));
        let like = node.text().filter(|_| wants_list).map(|text| {
            // A longer text is no single entry; repeating it would mislead.
            let is_short = !text.contains(['\n', '\t']) && text.chars().count() <= LONGEST_LIKE;
            if is_short { text } else { "one, two" }.to_owned()
        });
        let mut problem = self.problem(path, node.at, Fault::WrongForm { is: form, wanted, like });
        if let Some(text) = node.text().filter(|text| !text.is_empty()) {
            problem = problem.offending(text);
        }
        self.add(problem);
    }

    /// The alternatives of a schema, references followed.
    fn branches(&self, schema: &'a Value) -> Vec<&'a Value> {
        if let Some(name) = schema.get("$ref").and_then(Value::as_str) {
            let target = name.strip_prefix('#').and_then(|pointer| self.whole.pointer(pointer));
            return target.map(|target| self.branches(target)).unwrap_or_default();
        }
        match schema.get("anyOf").and_then(Value::as_array) {
            Some(all) => all.iter().flat_map(|one| self.branches(one)).collect(),
            None => vec![schema],
        }
    }
}

fn types(branch: &Value) -> impl Iterator<Item = &str> {
    let (one, many) = match branch.get("type") {
        Some(Value::String(one)) => (Some(one.as_str()), None),
        Some(Value::Array(many)) => (None, Some(many)),
        _ => (None, None),
    };
    one.into_iter().chain(many.into_iter().flatten().filter_map(Value::as_str))
}

fn type_name(form: Form) -> &'static str {
    match form {
        Form::Nothing => "null",
        Form::Text => "string",
        Form::List => "array",
        Form::Group => "object",
    }
}

fn admits(branch: &Value, form: Form, node: &Node<'_>) -> bool {
    if let Some(only) = branch.get("const") {
        return only.as_str() == node.text();
    }
    if branch.get("type").is_none() {
        return true;
    }
    types(branch).any(|name| name == type_name(form) || (form == Form::Nothing && name == "string"))
}
