//! The JSON Schemas, judged by a validator that is not ours: they are schemas,
//! what is shipped and what is printed fits them, and they refuse no file that
//! the loader takes, but for what is listed.

mod changes;
mod classes;
mod command;
mod empties;
mod files;
mod mutations;
mod outputs;

use jsonschema::Validator;
use kitmuster::report::wire::schema::FORMATS;
use serde_json::Value;

/// The schema of a format, as it is printed.
fn schema(name: &str) -> Value {
    let format = FORMATS.iter().find(|format| format.name == name).unwrap();
    serde_json::from_str(&format.json().unwrap()).unwrap()
}

/// A validator by that schema; days are looked at too.
fn validator(name: &str) -> Validator {
    jsonschema::options().should_validate_formats(true).build(&schema(name)).unwrap()
}

/// Everything that does not fit.
fn misfits(validator: &Validator, value: &Value) -> Vec<String> {
    let told = |error: jsonschema::ValidationError<'_>| {
        format!("{}: {error} ({})", error.instance_path(), error.schema_path())
    };
    validator.iter_errors(value).map(told).collect()
}

#[track_caller]
fn assert_fits(validator: &Validator, value: &Value, what: &str) {
    let misfits = misfits(validator, value);
    assert!(misfits.is_empty(), "{what}:\n{}", misfits.join("\n"));
}

/// Every value in a schema that stands under this keyword.
fn all<'v>(schema: &'v Value, keyword: &str, found: &mut Vec<&'v Value>) {
    match schema {
        Value::Object(keys) => {
            found.extend(keys.get(keyword));
            keys.values().for_each(|value| all(value, keyword, found));
        }
        Value::Array(values) => values.iter().for_each(|value| all(value, keyword, found)),
        _ => {}
    }
}

#[test]
fn every_schema_is_one_by_the_meta_schema() {
    for format in FORMATS {
        let schema = schema(format.name);
        if let Err(error) = jsonschema::meta::validate(&schema) {
            panic!("{}: {error}", format.name);
        }
        assert_eq!(schema["$schema"], "https://json-schema.org/draft/2020-12/schema");
        assert_eq!(schema["$id"], format!("urn:kitmuster:{}", format.version));
    }
}

#[test]
fn a_schema_has_no_mark_of_ours_and_no_words_of_the_source_code() {
    for format in FORMATS {
        let text = format.json().unwrap();
        assert!(!text.contains("\"x-"), "{}", format.name);
        assert!(!text.contains("[`") && !text.contains("Form\""), "{}", format.name);
        assert!(!text.contains("Json\""), "{}", format.name);
        assert!(text.ends_with("}\n"), "{}", format.name);
    }
}

#[test]
fn what_is_printed_is_described_key_by_key_and_no_other_key_fits() {
    for name in ["check", "audit", "audit-line", "record", "options", "quote"] {
        let schema = schema(name);
        let mut groups = Vec::new();
        all(&schema, "properties", &mut groups);
        let open = groups.iter().flat_map(|group| group.as_object().unwrap());
        let silent: Vec<_> = open
            .filter(|(_, property)| property.is_object() && property.get("$ref").is_none())
            .filter(|(key, property)| property.get("description").is_none() && !is_way(key))
            .map(|(key, _)| key)
            .collect();
        assert!(silent.is_empty(), "{name}: {silent:?}");
        let definitions = schema["$defs"].as_object().unwrap();
        let closed = |schema: &Value| {
            schema.get("properties").is_none() || schema["additionalProperties"] == false
        };
        for (of, definition) in definitions.iter().filter(|(of, _)| !of.starts_with("Kit")) {
            assert!(closed(definition), "{name}: {of}");
        }
        assert!(closed(&schema), "{name}");
    }
}

/// Keys that are one of several ways and say themselves what they are.
fn is_way(key: &str) -> bool {
    ["tool", "type", "role", "gear", "vessel", "state"].contains(&key)
}
