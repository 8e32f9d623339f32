//! Groups of lines whose keys are not all fixed: ordered, without duplicates.
//!
//! Imports nothing of the model.

use crate::load::read::limits::MOST_LINES;
use schemars::{JsonSchema, Schema, SchemaGenerator, json_schema};
use serde::de::{Deserialize, Deserializer, Error, MapAccess, Visitor};
use std::borrow::Cow;
use std::fmt;
use std::marker::PhantomData;

/// A group with keys of the author's own, in the order written. A key
/// without a value is `None`.
#[derive(Debug, Clone)]
pub(crate) struct Open<T>(pub(crate) Vec<(String, Option<T>)>);

impl<T> Default for Open<T> {
    fn default() -> Self {
        Self(Vec::new())
    }
}

struct OpenVisitor<T>(PhantomData<T>);

impl<'de, T: Deserialize<'de>> Visitor<'de> for OpenVisitor<T> {
    type Value = Open<T>;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("a group of lines")
    }

    fn visit_map<A: MapAccess<'de>>(self, mut map: A) -> Result<Self::Value, A::Error> {
        let mut lines: Vec<(String, Option<T>)> = Vec::new();
        while let Some(key) = map.next_key::<String>()? {
            refuse_duplicate(&lines, &key)?;
            lines.push((key, map.next_value()?));
        }
        Ok(Open(lines))
    }
}

/// Refuses a key that the lines already have, and more lines than a group
/// may have.
pub(crate) fn refuse_duplicate<T, E: Error>(lines: &[(String, T)], key: &str) -> Result<(), E> {
    if lines.len() >= MOST_LINES {
        return Err(E::custom("too many lines"));
    }
    if lines.iter().any(|(known, _)| known == key) {
        return Err(E::custom("a key is written twice"));
    }
    Ok(())
}

impl<'de, T: Deserialize<'de>> Deserialize<'de> for Open<T> {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        deserializer.deserialize_map(OpenVisitor(PhantomData))
    }
}

impl<T: JsonSchema> JsonSchema for Open<T> {
    fn inline_schema() -> bool {
        true
    }

    fn schema_name() -> Cow<'static, str> {
        format!("group of {}", T::schema_name()).into()
    }

    fn json_schema(generator: &mut SchemaGenerator) -> Schema {
        json_schema!({
            "type": "object",
            "additionalProperties": generator.subschema_for::<Option<T>>(),
            "maxProperties": MOST_LINES,
        })
    }
}

/// Declares a form with fixed keys and open ones beside them, with its
/// deserializer (ordered, no duplicates) and its JSON schema.
macro_rules! open_form {
    (
        $(#[doc = $says_form:literal])*
        $name:ident, open as $open:ident: $value:ty;
        $(
            #[doc = $doc:literal]
            $(#[validate(length(max = $longest:ident))])?
            $(#[extend($($mark:literal = $says:expr),*)])?
            $key:literal => $field:ident: $ty:ty,
        )*
    ) => {
        $(#[doc = $says_form])*
        #[derive(Debug, Clone, Default, validator::Validate)]
        pub(crate) struct $name {
            $(
                #[doc = $doc]
                $(#[validate(length(max = $longest))])?
                pub(crate) $field: Option<$ty>,
            )*
            /// The open keys, in the order written.
            pub(crate) $open: Vec<(String, Option<$value>)>,
        }

        const _: () = {
            #[allow(non_camel_case_types)]
            enum Key { $($field,)* Open(String) }

            struct KeyVisitor;

            impl serde::de::Visitor<'_> for KeyVisitor {
                type Value = Key;

                fn expecting(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
                    f.write_str("a key")
                }

                fn visit_str<E: serde::de::Error>(self, key: &str) -> Result<Key, E> {
                    Ok(match key {
                        $($key => Key::$field,)*
                        other => Key::Open(other.to_owned()),
                    })
                }
            }

            impl<'de> serde::Deserialize<'de> for Key {
                fn deserialize<D: serde::Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
                    from.deserialize_str(KeyVisitor)
                }
            }

            struct FormVisitor;

            impl<'de> serde::de::Visitor<'de> for FormVisitor {
                type Value = $name;

                fn expecting(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
                    f.write_str("a group of lines")
                }

                fn visit_map<A: serde::de::MapAccess<'de>>(
                    self,
                    mut map: A,
                ) -> Result<$name, A::Error> {
                    $(let mut $field: Option<Option<$ty>> = None;)*
                    let mut open: Vec<(String, Option<$value>)> = Vec::new();
                    while let Some(key) = map.next_key::<Key>()? {
                        match key {
                            $(Key::$field => {
                                if $field.is_some() {
                                    return Err(serde::de::Error::duplicate_field($key));
                                }
                                $field = Some(map.next_value()?);
                            })*
                            Key::Open(key) => {
                                $crate::load::form::open::refuse_duplicate(&open, &key)?;
                                open.push((key, map.next_value()?));
                            }
                        }
                    }
                    Ok($name { $($field: $field.flatten(),)* $open: open })
                }
            }

            impl<'de> serde::Deserialize<'de> for $name {
                fn deserialize<D: serde::Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
                    from.deserialize_map(FormVisitor)
                }
            }

            impl schemars::JsonSchema for $name {
                fn schema_name() -> std::borrow::Cow<'static, str> {
                    stringify!($name).trim_end_matches("Form").into()
                }

                fn json_schema(generator: &mut schemars::SchemaGenerator) -> schemars::Schema {
                    let mut properties = serde_json::Map::new();
                    $(
                        let mut schema = generator.subschema_for::<Option<$ty>>();
                        schema.insert("description".to_owned(), $doc.trim().into());
                        $(schema.insert("maxLength".to_owned(), $longest.into());)?
                        $($(schema.insert($mark.to_owned(), serde_json::json!($says));)*)?
                        properties.insert($key.to_owned(), schema.into());
                    )*
                    schemars::json_schema!({
                        "description": concat!($($says_form, "\n"),*).trim(),
                        "type": "object",
                        "properties": properties,
                        "additionalProperties": generator.subschema_for::<Option<$value>>(),
                    })
                }
            }
        };
    };
}

pub(crate) use open_form;
