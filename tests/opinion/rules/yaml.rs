//! Plain YAML: texts, lists, and keys with values.

use serde_yaml::Value as Yaml;
use std::path::Path;

/// A text, a number or a yes, as one text.
pub(crate) fn text(value: &Yaml) -> String {
    match value {
        Yaml::String(text) => text.clone(),
        Yaml::Number(number) => number.to_string(),
        Yaml::Bool(true) => "yes".to_owned(),
        Yaml::Bool(false) => "no".to_owned(),
        other => panic!("no text: {other:?}"),
    }
}

/// A single text or a list of them.
pub(crate) fn texts(value: &Yaml) -> Vec<String> {
    match value {
        Yaml::Sequence(list) => list.iter().map(text).collect(),
        one => vec![text(one)],
    }
}

/// A list, empty where nothing is written.
pub(crate) fn list(value: Option<&Yaml>) -> Vec<Yaml> {
    match value {
        Some(Yaml::Sequence(list)) => list.clone(),
        Some(other) => panic!("no list: {other:?}"),
        None => Vec::new(),
    }
}

/// Keys and values in the order written.
pub(crate) fn pairs(value: &Yaml) -> Vec<(String, Yaml)> {
    let map = value.as_mapping().unwrap_or_else(|| panic!("no keys: {value:?}"));
    map.iter().map(|(key, value)| (text(key), value.clone())).collect()
}

/// A file of the requirements' folder.
pub(super) fn file(name: &str) -> Yaml {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("requirements");
    let text = std::fs::read_to_string(folder.join(name)).unwrap();
    serde_yaml::from_str(&text).unwrap()
}
