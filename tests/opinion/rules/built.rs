//! A profile with everything that it is built on.

use super::yaml::{file, list, pairs, text, texts};
use serde_yaml::Value as Yaml;

/// The list of requirements with everything that it is built on.
pub(super) fn built(profile: &Yaml) -> Vec<Yaml> {
    let mut requirements = match profile.get("built on") {
        Some(other) => built(&file(&format!("{}.yaml", text(other)))),
        None => Vec::new(),
    };
    let id_of = |requirement: &Yaml| text(&requirement["id"]);
    let at = |requirements: &[Yaml], id: &str| {
        let found = requirements.iter().position(|r| id_of(r) == id);
        found.unwrap_or_else(|| panic!("no requirement `{id}` to build on"))
    };
    for id in profile.get("drop").map(texts).unwrap_or_default() {
        let position = at(&requirements, &id);
        requirements.remove(position);
    }
    for change in list(profile.get("change")) {
        let position = at(&requirements, &id_of(&change));
        let requirement = requirements[position].as_mapping_mut().unwrap();
        for (key, value) in pairs(&change) {
            if key != "with" {
                requirement.insert(key.into(), value);
                continue;
            }
            let lines = requirement.get_mut("with").and_then(Yaml::as_mapping_mut).unwrap();
            for (line, phrase) in pairs(&value) {
                if phrase.as_str() == Some("dropped") {
                    lines.remove(line.as_str()).unwrap();
                } else {
                    lines.insert(line.into(), phrase);
                }
            }
        }
    }
    for own in list(profile.get("requirements")) {
        match own.get("after") {
            Some(other) => {
                let position = at(&requirements, &text(other));
                requirements.insert(position + 1, own);
            }
            None => requirements.push(own),
        }
    }
    requirements
}

/// A key of the profile, or of the one that it is built on.
pub(super) fn taken_over(profile: &Yaml, key: &str) -> Option<Yaml> {
    profile.get(key).cloned().or_else(|| {
        let other = profile.get("built on")?;
        taken_over(&file(&format!("{}.yaml", text(other))), key)
    })
}
