//! JSON Schemas (2020-12) of everything that is read and written: of the
//! files as the loader reads them, of the JSON out of the types of its formats.
//!
//! Imports `load` and `fleet` for their types. A shape is written down nowhere
//! but in those types; here they are listed, named and closed.

use super::audit::Audit;
use super::check::Check;
#[cfg(feature = "quote")]
use super::entries::ENTRY;
use super::options::Options;
#[cfg(feature = "quote")]
use super::quote::Quote;
use super::rows::Line;
use crate::fleet::record::AuditRecord;
use crate::load::{FileKind, polish, schema};
use crate::report::words::locale::desk;
use schemars::generate::SchemaSettings;
use schemars::transform::{RecursiveTransform, Transform};
use schemars::{JsonSchema, Schema};
use serde_json::{Map, Value, json};

/// A format that has a schema.
#[derive(Debug, Clone, Copy)]
pub struct Format {
    /// What it is asked for by, like `vessel`.
    pub name: &'static str,
    /// Its name and version, like `vessel/1`.
    pub version: &'static str,
    says: fn() -> &'static str,
    make: fn() -> Value,
}

/// Every format, the files first.
pub const FORMATS: &[Format] = &[
    file("vessel", "vessel/1", desk::schema_vessel, || schema(FileKind::Vessel)),
    file("inspection", "inspection/1", desk::schema_inspection, || schema(FileKind::Inspection)),
    file("catalogue", "catalogue/1", desk::schema_catalogue, || schema(FileKind::Catalogue)),
    file("profile", "profile/1", desk::schema_profile, || schema(FileKind::Profile)),
    file("vocabulary", "vocabulary/1", desk::schema_vocabulary, || schema(FileKind::Vocabulary)),
    file("techniques", "techniques/1", desk::schema_techniques, || schema(FileKind::Techniques)),
    file("check", "check/1", desk::schema_check, written::<Check>),
    file("audit", "audit/1", desk::schema_audit, written::<Audit>),
    file("audit-line", "audit-line/1", desk::schema_audit_line, written::<Line>),
    file("record", "record/1", desk::schema_record, written::<AuditRecord>),
    file("options", "options/1", desk::schema_options, written::<Options>),
    #[cfg(feature = "quote")]
    file("quote", "quote/1", desk::quote_schema, quote),
];

const fn file(
    name: &'static str,
    version: &'static str,
    says: fn() -> &'static str,
    make: fn() -> Value,
) -> Format {
    Format { name, version, says, make }
}

impl Format {
    /// What is of that format.
    pub fn says(&self) -> &'static str {
        (self.says)()
    }

    /// The schema as pretty-printed JSON, ending in a line feed.
    ///
    /// # Errors
    /// None in practice: a schema has a JSON form.
    pub fn json(&self) -> Result<String, serde_json::Error> {
        let mut text = serde_json::to_string_pretty(&self.schema())?;
        text.push('\n');
        Ok(text)
    }

    /// The schema under the name of its format.
    fn schema(&self) -> Value {
        let mut named = Map::new();
        let Value::Object(schema) = (self.make)() else { return Value::Bool(true) };
        let dialect = schema.get("$schema").cloned().unwrap_or_default();
        named.insert("$schema".to_owned(), dialect);
        named.insert("$id".to_owned(), json!(format!("urn:kitmuster:{}", self.version)));
        named.insert("title".to_owned(), json!(format!("Kitmuster: {}", self.says())));
        for (key, value) in schema {
            named.entry(key).or_insert(value);
        }
        Value::Object(named)
    }
}

/// The schema of a format that is written: closed, so that a key that the
/// type does not have is no part of it.
fn written<T: JsonSchema>() -> Value {
    let settings = SchemaSettings::draft2020_12().for_serialize();
    let mut schema = settings.into_generator().into_root_schema_for::<T>();
    RecursiveTransform(close).transform(&mut schema);
    RecursiveTransform(polish).transform(&mut schema);
    schema.to_value()
}

fn close(schema: &mut Schema) {
    if schema.get("properties").is_some() && schema.get("additionalProperties").is_none() {
        schema.insert("additionalProperties".to_owned(), json!(false));
    }
    forbid_null(schema);
    if schema.get("description").and_then(Value::as_str) == Some("") {
        schema.ensure_object().shift_remove("description");
    }
}

/// A key that is left out where it says nothing is never null.
fn forbid_null(schema: &mut Schema) {
    let required = schema.get("required").cloned().unwrap_or_default();
    let Some(Value::Object(properties)) = schema.get_mut("properties") else { return };
    let is_required =
        |key: &String| required.as_array().is_some_and(|all| all.contains(&json!(key)));
    for (_, property) in properties.iter_mut().filter(|(key, _)| !is_required(key)) {
        for key in ["type", "anyOf"] {
            if let Some(Value::Array(ways)) = property.get_mut(key) {
                ways.retain(|way| way != "null" && way != &json!({ "type": "null" }));
            }
        }
    }
}

/// A quote has entries of a vessel's kit in it, whose shape is that of the
/// file.
#[cfg(feature = "quote")]
fn quote() -> Value {
    let mut quote = written::<Quote>();
    let vessel = schema(FileKind::Vessel);
    let mut open = vec!["Tool".to_owned()];
    while let Some(name) = open.pop() {
        let at = format!("{ENTRY}{name}");
        let Some(definitions) = quote.get_mut("$defs").and_then(Value::as_object_mut) else {
            continue;
        };
        if definitions.contains_key(&at) {
            continue;
        }
        let mut adopted = vessel.pointer(&format!("/$defs/{name}")).cloned().unwrap_or_default();
        rename(&mut adopted, &mut open);
        definitions.insert(at, adopted);
    }
    quote
}

/// Gives references the names that the definitions of a file have in a quote,
/// and notes what they refer to.
#[cfg(feature = "quote")]
fn rename(schema: &mut Value, referred: &mut Vec<String>) {
    match schema {
        Value::Object(keys) => {
            for (key, value) in keys {
                if let (true, Some(name)) = (key == "$ref", of_ref(value)) {
                    *value = json!(format!("#/$defs/{ENTRY}{name}"));
                    referred.push(name);
                } else {
                    rename(value, referred);
                }
            }
        }
        Value::Array(entries) => entries.iter_mut().for_each(|one| rename(one, referred)),
        _ => {}
    }
}

#[cfg(feature = "quote")]
fn of_ref(value: &Value) -> Option<String> {
    value.as_str()?.strip_prefix("#/$defs/").map(str::to_owned)
}

/// The list of formats, a line each.
pub fn list() -> String {
    let widest = FORMATS.iter().map(|format| format.name.len()).max().unwrap_or_default();
    let line = |format: &Format| format!("  {:widest$}  {}\n", format.name, format.says());
    let (read, written) = FORMATS.split_at(6);
    let lines = |formats: &[Format]| formats.iter().map(line).collect::<String>();
    format!(
        "{}\n{}\n{}\n{}\n{}\n",
        desk::schema_read(),
        lines(read),
        desk::schema_written(),
        lines(written),
        desk::schema_how()
    )
}
