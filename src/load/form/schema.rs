//! The JSON schemas of the files, generated from the as-written types: for
//! judging a tree, and for editors. The latter is the former with numbers let
//! in and with what the checks ask, as the marks of the types say it.

use crate::load::form::catalogue::CatalogueFile;
use crate::load::form::inspection::InspectionFile;
use crate::load::form::profile::ProfileFile;
use crate::load::form::techniques::TechniquesFile;
use crate::load::form::tighten::tighten;
use crate::load::form::vessel::VesselFile;
use crate::load::form::vocabulary::VocabularyFile;
use crate::load::read::parse::{FileKind, WrittenFile};
use schemars::Schema;
use schemars::generate::SchemaSettings;
use schemars::transform::{RecursiveTransform, Transform};
use serde_json::{Value, json};

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
