//! The JSON schemas of the files, generated from the as-written types: for
//! judging a tree, and for editors. The latter is the former with numbers let
//! in and with what the checks ask, as the marks of the types say it.

use crate::load::form::catalogue::CatalogueFile;
use crate::load::form::inspection::InspectionFile;
use crate::load::form::profile::ProfileFile;
use crate::load::form::techniques::TechniquesFile;
use crate::load::form::vessel::VesselFile;
use crate::load::form::vocabulary::VocabularyFile;
use crate::load::read::fault::FileKind;
use crate::load::read::parse::WrittenFile;
use crate::load::read::tree::MOST_LISTED;
use schemars::Schema;
use schemars::generate::SchemaSettings;
use schemars::transform::{RecursiveTransform, Transform};
use serde_json::{Map, Value, json};

/// The schema of a kind of file for editors, as JSON. It knows the shape of
/// a file, not what its texts mean.
pub fn schema(kind: FileKind) -> Value {
    match kind {
        FileKind::Vessel => for_editors::<VesselFile>(),
        FileKind::Inspection => for_editors::<InspectionFile>(),
        FileKind::Profile => for_editors::<ProfileFile>(),
        FileKind::Vocabulary => for_editors::<VocabularyFile>(),
        FileKind::Catalogue => for_editors::<CatalogueFile>(),
        FileKind::Techniques => for_editors::<TechniquesFile>(),
    }
}

fn for_editors<T: WrittenFile>() -> Value {
    let mut schema = SchemaSettings::draft2020_12().into_generator().into_root_schema_for::<T>();
    RecursiveTransform(loosen).transform(&mut schema);
    RecursiveTransform(tighten).transform(&mut schema);
    RecursiveTransform(polish).transform(&mut schema);
    let mut schema = schema.to_value();
    if let Some(format) = schema.pointer_mut("/properties/format") {
        *format = json!({ "const": T::KIND.format(), "description": "The kind of this file." });
    }
    let required = schema.as_object_mut().map(|keys| keys.entry("required").or_insert(json!([])));
    if let Some(Value::Array(required)) = required {
        required.insert(0, json!("format"));
    }
    schema
}

/// An editor takes `count: 2` for a number and `wheelhouse: true` for a
/// boolean; here they are texts like any other.
fn loosen(schema: &mut Schema) {
    let loose = |null: bool| {
        let mut types = vec!["string", "number", "boolean"];
        types.extend(null.then_some("null"));
        json!(types)
    };
    let types = schema.get("type").cloned();
    match types {
        Some(Value::String(only)) if only == "string" => {
            schema.insert("type".to_owned(), loose(false));
        }
        Some(Value::Array(many)) if many.contains(&json!("string")) => {
            schema.insert("type".to_owned(), loose(many.contains(&json!("null"))));
        }
        _ => {}
    }
}

/// Takes away what says nothing to a reader of a schema: defaults of nothing,
/// names of Rust's numbers, the line breaks of comments.
pub(crate) fn polish(schema: &mut Schema) {
    if schema.get("default") == Some(&Value::Null) {
        schema.remove("default");
    }
    if schema.get("format").and_then(Value::as_str).is_some_and(|format| format != "date") {
        schema.remove("format");
    }
    if let Some(Value::String(says)) = schema.get_mut("description") {
        *says = says.replace('\n', " ").replace("  ", " ");
    }
}

/// A day, with or without blanks around it; which months are short is not
/// said.
const DAY: &str = r"[0-9]{4}-(0[1-9]|1[0-2])-(0[1-9]|[12][0-9]|3[01])";
/// A whole number, likewise.
const WHOLE: &str = "[0-9]{1,9}";

/// An id, likewise.
const ID: &str = "[a-z0-9-]+";

/// Carries out the marks of a group and of its keys.
pub(crate) fn tighten(schema: &mut Schema) {
    if let Some(also) = schema.remove("x-also") {
        schema.insert("allOf".to_owned(), json!([also]));
    }
    if let Some(list) = schema.as_object_mut()
        && takes(list, "array")
    {
        list.entry("maxItems").or_insert(json!(MOST_LISTED));
    }
    let mut needed = Vec::new();
    if let Some(Value::Object(properties)) = schema.get_mut("properties") {
        for (key, property) in properties {
            if let Value::Object(property) = property
                && carry_out(property)
            {
                needed.push(json!(key));
            }
        }
    }
    if !needed.is_empty() {
        schema.insert("required".to_owned(), Value::Array(needed));
    }
}

/// Carries out the marks of one key; true if it must be there.
fn carry_out(property: &mut Map<String, Value>) -> bool {
    let needed = property.remove("x-needed").is_some();
    let dropped = property.remove("x-droppable").is_some();
    if let Some(Value::Array(mut words)) = property.remove("x-words") {
        words.extend(dropped.then(|| json!("dropped")));
        each_text(property, &mut |text| choose(text, &words));
    }
    if property.remove("x-day").is_some() {
        let day = if dropped { format!("({DAY}|dropped)") } else { DAY.to_owned() };
        each_text(property, &mut |text| shape(text, &day, needed, &["string"]));
    }
    if let Some(Value::Array(bounds)) = property.remove("x-whole") {
        each_text(property, &mut |text| {
            shape(text, WHOLE, needed, &["string", "integer"]);
            for (key, bound) in ["minimum", "maximum"].into_iter().zip(&bounds) {
                text.insert(key.to_owned(), bound.clone());
            }
        });
    }
    if property.remove("x-id").is_some() {
        each_text(property, &mut |text| {
            text.insert("pattern".to_owned(), json!(around(ID, needed)));
        });
    }
    list_or_group(property);
    if needed {
        fill(property);
    }
    needed
}

/// Carries out the marks of a list or a group.
fn list_or_group(property: &mut Map<String, Value>) {
    if let Some(Value::Array(bounds)) = property.remove("x-listed") {
        for (key, bound) in ["minItems", "maxItems"].into_iter().zip(&bounds) {
            property.insert(key.to_owned(), bound.clone());
        }
    }
    if property.remove("x-ids").is_some() {
        property.insert("propertyNames".to_owned(), json!({ "pattern": format!("^{ID}$") }));
    }
    if property.remove("x-filled").is_some()
        && let Some(Value::Object(line)) = property.get_mut("additionalProperties")
    {
        fill(line);
    }
    if let Some(Value::Object(also)) = property.remove("x-entries")
        && let Some(Value::Object(items)) = property.get_mut("items")
    {
        items.extend(also);
    }
}

/// Whether a schema takes this form by itself.
fn takes(schema: &Map<String, Value>, form: &str) -> bool {
    match schema.get("type") {
        Some(Value::String(only)) => only == form,
        Some(Value::Array(many)) => many.contains(&json!(form)),
        _ => false,
    }
}

/// Does something to every plain text that may stand here, alone or in a
/// list.
fn each_text(schema: &mut Map<String, Value>, act: &mut dyn FnMut(&mut Map<String, Value>)) {
    if takes(schema, "string") {
        return act(schema);
    }
    if let Some(Value::Object(items)) = schema.get_mut("items") {
        each_text(items, act);
    }
    if let Some(Value::Array(ways)) = schema.get_mut("anyOf") {
        ways.iter_mut().filter_map(Value::as_object_mut).for_each(|way| each_text(way, act));
    }
}

/// Only these words.
fn choose(text: &mut Map<String, Value>, words: &[Value]) {
    let mut words = words.to_vec();
    words.extend(takes(text, "null").then_some(Value::Null));
    text.remove("type");
    text.insert("enum".to_owned(), Value::Array(words));
}

/// Only texts of this shape, or none.
fn shape(text: &mut Map<String, Value>, of: &str, needed: bool, types: &[&str]) {
    let mut types = types.to_vec();
    types.extend(takes(text, "null").then_some("null"));
    text.insert("type".to_owned(), json!(types));
    text.insert("pattern".to_owned(), json!(around(of, needed)));
}

/// A pattern with blanks around it, or nothing but blanks if it may be
/// missing.
fn around(of: &str, needed: bool) -> String {
    match needed {
        true => format!(r"^\s*{of}\s*$"),
        false => format!(r"^\s*({of}\s*)?$"),
    }
}

/// Something, not nothing.
fn fill(schema: &mut Map<String, Value>) {
    if takes(schema, "array") {
        schema.insert("minItems".to_owned(), json!(1));
    } else if takes(schema, "string") && !schema.contains_key("pattern") {
        schema.insert("pattern".to_owned(), json!(r"\S"));
    }
    for key in ["type", "enum", "anyOf"] {
        if let Some(Value::Array(ways)) = schema.get_mut(key) {
            let null = |way: &Value| {
                way.is_null() || way == "null" || way.get("type") == Some(&json!("null"))
            };
            ways.retain(|way| !null(way));
            ways.iter_mut().filter_map(Value::as_object_mut).for_each(fill);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_editor_is_told_that_numbers_may_stand_for_text() {
        let schema = schema(FileKind::Vessel);
        assert_eq!(
            schema.pointer("/properties/port/type"),
            Some(&json!(["string", "number", "boolean", "null"]))
        );
        assert_eq!(schema.pointer("/properties/format/const"), Some(&json!("vessel/1")));
        assert_eq!(schema.get("additionalProperties"), Some(&json!(false)));
        let catalogue = super::schema(FileKind::Catalogue);
        assert_eq!(catalogue.pointer("/properties/format/const"), Some(&json!("catalogue/1")));
        let techniques = super::schema(FileKind::Techniques);
        assert_eq!(techniques.pointer("/properties/format/const"), Some(&json!("techniques/1")));
    }
}

#[cfg(test)]
mod tighten_tests {
    use super::*;

    fn tightened(property: Value) -> Value {
        let group = json!({ "type": "object", "properties": { "key": property } });
        let mut schema = Schema::try_from(group).unwrap();
        tighten(&mut schema);
        schema.to_value()
    }

    #[test]
    fn what_is_needed_is_required_and_not_empty() {
        let schema = tightened(json!({ "x-needed": true, "type": ["string", "number", "null"] }));
        assert_eq!(schema["required"], json!(["key"]));
        let key = json!({ "type": ["string", "number"], "pattern": r"\S" });
        assert_eq!(schema["properties"]["key"], key);
        let schema = tightened(json!({ "x-needed": true, "type": ["array", "null"] }));
        assert_eq!(schema["properties"]["key"], json!({ "type": ["array"], "minItems": 1 }));
    }

    #[test]
    fn lists_and_groups_have_their_bounds() {
        let list = json!({ "x-listed": [0, 7], "x-needed": true, "type": ["array", "null"] });
        let key = json!({ "minItems": 1, "maxItems": 7, "type": ["array"] });
        assert_eq!(tightened(list)["properties"]["key"], key);
        let line = json!({ "anyOf": [{ "$ref": "#/$defs/A" }, { "type": "null" }] });
        let group = json!({
            "x-ids": true, "x-filled": true, "type": "object", "additionalProperties": line,
        });
        let key = json!({
            "type": "object",
            "additionalProperties": { "anyOf": [{ "$ref": "#/$defs/A" }] },
            "propertyNames": { "pattern": "^[a-z0-9-]+$" },
        });
        assert_eq!(tightened(group)["properties"]["key"], key);
        let id = json!({ "x-id": true, "type": ["string", "null"] });
        let key = json!({ "type": ["string", "null"], "pattern": r"^\s*([a-z0-9-]+\s*)?$" });
        assert_eq!(tightened(id)["properties"]["key"], key);
    }

    #[test]
    fn words_stand_beside_a_longer_form() {
        let form = json!({ "$ref": "#/$defs/Where" });
        let either = json!([{ "anyOf": [{ "type": ["string"] }, form] }, { "type": "null" }]);
        let schema = tightened(json!({ "x-words": ["aboard"], "anyOf": either }));
        assert_eq!(
            schema["properties"]["key"]["anyOf"],
            json!([{ "anyOf": [{ "enum": ["aboard"] }, form] }, { "type": "null" }])
        );
    }

    #[test]
    fn a_day_that_may_be_missing_may_be_empty() {
        let schema = tightened(json!({ "x-day": true, "type": ["string", "number", "null"] }));
        let key = &schema["properties"]["key"];
        assert_eq!(key["type"], json!(["string", "null"]));
        assert_eq!(key["pattern"], json!(format!(r"^\s*({DAY}\s*)?$")));
    }
}
