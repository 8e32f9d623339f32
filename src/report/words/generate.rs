//! Turns files of messages (Fluent syntax) into one typed Rust function for
//! each message; run when the crate is built.
//!
//! What cannot be right does not build: a key that is there twice, a language
//! with a key or an argument too few or too many, classes of plural that the
//! language does not have. No message is looked up at run time, and there is
//! no fallback: half-translated words of safety are worse than English.

use fluent_syntax::ast::{
    Entry, Expression, InlineExpression, Message, Pattern, PatternElement, VariantKey,
};
use fluent_syntax::parser;
use intl_pluralrules::{PluralCategory, PluralRuleType, PluralRules};
use std::cell::Cell;
use std::collections::BTreeMap;
use std::fmt::Write;
use unic_langid::LanguageIdentifier;

/// The messages of one kind in one language.
#[derive(Clone, Copy)]
pub(crate) struct File<'a> {
    /// Its name, like `crew.en.ftl`.
    pub(crate) name: &'a str,
    /// The tag of the language, like `en`.
    pub(crate) language: &'a str,
    /// The text of the file.
    pub(crate) text: &'a str,
}

/// The arguments of a message in the order of the calls, with whether each is
/// a count.
type Arguments = Vec<(String, bool)>;

/// A pattern, with its language.
type InLanguage<'a> = (&'a str, Pattern<&'a str>);

/// One message as it is written in each language.
struct Written<'a> {
    arguments: Arguments,
    /// Its pattern in each language.
    patterns: Vec<InLanguage<'a>>,
    /// Its attributes in the first language, by name.
    attributes: Vec<(&'a str, Pattern<&'a str>)>,
}

/// The arguments of a message, its pattern and its attributes.
type Checked<'a> = (Arguments, Pattern<&'a str>, Vec<(&'a str, Pattern<&'a str>)>);

type Messages<'a> = BTreeMap<&'a str, Written<'a>>;

/// The Rust code of all messages: those for the crew as methods of `Locale`;
/// English only, those for the desk as functions of a module `desk`, and those
/// of the problems of files, whose attributes say what was expected and how to
/// mend it, as functions of a module `problems`.
///
/// # Errors
/// Everything that is wrong in the files, one line each.
pub(crate) fn code(
    crew: &[File<'_>],
    desk: File<'_>,
    of_files: File<'_>,
) -> Result<String, Vec<String>> {
    let mut problems = Vec::new();
    let mut messages = Messages::new();
    for (number, file) in crew.iter().enumerate() {
        read(*file, number == 0, &mut messages, &mut problems);
    }
    for (key, written) in &messages {
        for file in crew {
            if !written.patterns.iter().any(|(language, _)| *language == file.language) {
                problems.push(format!("{}: `{key}` is missing", file.name));
            }
        }
    }
    let mut of_desk = Messages::new();
    read(desk, true, &mut of_desk, &mut problems);
    let mut of_problems = Messages::new();
    read(of_files, true, &mut of_problems, &mut problems);
    for (key, _) in messages.iter().chain(&of_desk).filter(|(_, one)| !one.attributes.is_empty()) {
        problems.push(format!("`{key}` has attributes, as only problems of files have"));
    }
    if !problems.is_empty() {
        return Err(problems);
    }
    let mut out = String::from("impl Locale {\n");
    for (key, written) in &messages {
        function(&mut out, key, written, true);
    }
    out.push_str("}\n\npub(crate) mod desk {\n    #[allow(unused_imports)]\n    use super::{Count, Language, PluralCategory, of_desk, plural, put};\n");
    for (key, written) in &of_desk {
        function(&mut out, key, written, false);
    }
    out.push_str("}\n\npub(crate) mod problems {\n    #[allow(unused_imports)]\n    use super::{Count, Language, PluralCategory, of_desk, plural, put};\n    use crate::report::words::problems::Wording;\n");
    for (key, written) in &of_problems {
        wording(&mut out, key, written);
    }
    out.push_str("}\n");
    Ok(out)
}

/// Reads a file; the first one says which messages there are and what they
/// are given, every other is held to it.
fn read<'a>(
    File { name, language, text }: File<'a>,
    first: bool,
    messages: &mut Messages<'a>,
    problems: &mut Vec<String>,
) {
    let (resource, errors) = match parser::parse(text) {
        Ok(resource) => (resource, Vec::new()),
        Err((resource, errors)) => (resource, errors),
    };
    for error in errors {
        let line = 1 + text[..error.pos.start.min(text.len())].matches('\n').count();
        problems.push(format!("{name}: line {line}: {error}"));
    }
    for entry in resource.body {
        let Entry::Message(message) = entry else { continue };
        let key = message.id.name;
        let told = |what: String| format!("{name}: `{key}`: {what}");
        match checked(language, message) {
            Err(problem) => problems.push(told(problem)),
            Ok((arguments, pattern, attributes)) => match messages.get_mut(key) {
                None if first => {
                    let patterns = vec![(language, pattern)];
                    messages.insert(key, Written { arguments, patterns, attributes });
                }
                None => problems.push(told("is not in the first language".to_owned())),
                Some(known) if known.patterns.iter().any(|(other, _)| *other == language) => {
                    problems.push(told("is there twice".to_owned()));
                }
                Some(known) => {
                    let sorted = |all: &[(String, bool)]| {
                        let mut all = all.to_vec();
                        all.sort();
                        all
                    };
                    if sorted(&known.arguments) != sorted(&arguments) {
                        problems.push(told("has other arguments".to_owned()));
                    }
                    known.patterns.push((language, pattern));
                }
            },
        }
    }
}

/// The arguments of a message in the order in which calls give them, and its
/// pattern and attributes. Of several arguments a comment above the message
/// says the order (`# $have, $need`), so that another order of words never
/// swaps them.
fn checked<'a>(language: &str, message: Message<&'a str>) -> Result<Checked<'a>, String> {
    let pattern = message.value.ok_or("has no text")?;
    let mut used = Vec::new();
    arguments(language, &pattern, &mut used)?;
    let attributes: Vec<_> =
        message.attributes.into_iter().map(|one| (one.id.name, one.value)).collect();
    for (name, attribute) in &attributes {
        if !["expected", "mend"].contains(name) {
            return Err(format!("has an attribute `{name}`"));
        }
        arguments(language, attribute, &mut used)?;
    }
    let comment = message.comment.map(|comment| comment.content.join(" ")).unwrap_or_default();
    let ordered: Vec<&str> =
        comment.split(',').filter_map(|part| part.trim().strip_prefix('$')).collect();
    if ordered.is_empty() && used.len() < 2 {
        return Ok((used, pattern, attributes));
    }
    let of = |name: &str| used.iter().find(|(other, _)| other == name).cloned();
    let all: Option<Vec<_>> = ordered.iter().map(|name| of(name)).collect();
    match all.filter(|all| all.len() == used.len()) {
        Some(all) => Ok((all, pattern, attributes)),
        None => {
            let names: Vec<_> = used.iter().map(|(name, _)| format!("${name}")).collect();
            Err(format!("the comment above has to name its arguments: {}", names.join(", ")))
        }
    }
}

/// Every argument of a pattern, and whether it is a count.
fn arguments(language: &str, pattern: &Pattern<&str>, into: &mut Arguments) -> Result<(), String> {
    let mut add = |name: &str, count: bool| {
        let name = name.replace('-', "_");
        match into.iter_mut().find(|(other, _)| *other == name) {
            Some((_, known)) => *known |= count,
            None => into.push((name, count)),
        }
    };
    let mut inner = Vec::new();
    for element in &pattern.elements {
        match element {
            PatternElement::TextElement { .. } => {}
            PatternElement::Placeable { expression } => match expression {
                Expression::Inline(InlineExpression::VariableReference { id }) => {
                    add(id.name, false);
                }
                Expression::Inline(InlineExpression::StringLiteral { .. }) => {}
                Expression::Select {
                    selector: InlineExpression::VariableReference { id },
                    variants,
                } => {
                    add(id.name, true);
                    let keys = variants.iter().map(|variant| &variant.key);
                    classes(language, &keys.collect::<Vec<_>>())?;
                    inner.extend(variants.iter().map(|variant| &variant.value));
                }
                _ => return Err("holds something else than arguments and choices".to_owned()),
            },
        }
    }
    inner.into_iter().try_for_each(|pattern| arguments(language, pattern, into))
}

/// A choice by a count that tells singular from plural names each class that
/// the language has, and no other.
fn classes(language: &str, keys: &[&VariantKey<&str>]) -> Result<(), String> {
    let named: Vec<&str> = keys
        .iter()
        .filter_map(|key| match key {
            VariantKey::Identifier { name } => Some(*name),
            VariantKey::NumberLiteral { .. } => None,
        })
        .collect();
    let identifier: LanguageIdentifier =
        language.parse().map_err(|_| format!("`{language}` is no language"))?;
    let rules = PluralRules::create(identifier, PluralRuleType::CARDINAL)?;
    let mut has = Vec::new();
    for number in (0..=200u64).chain([1_000, 1_000_000]) {
        let class = class_name(&rules.select(number)?);
        if !has.contains(&class) {
            has.push(class);
        }
    }
    let (mut wanted, mut given) = (has.clone(), named.clone());
    wanted.sort_unstable();
    given.sort_unstable();
    if given == ["other"] || given == wanted {
        return Ok(());
    }
    Err(format!("a choice has the classes {}, the language has {}", given.join(" "), has.join(" ")))
}

fn class_name(class: &PluralCategory) -> &'static str {
    match class {
        PluralCategory::ZERO => "zero",
        PluralCategory::ONE => "one",
        PluralCategory::TWO => "two",
        PluralCategory::FEW => "few",
        PluralCategory::MANY => "many",
        PluralCategory::OTHER => "other",
    }
}

/// Writes the function of a message.
fn function(out: &mut String, key: &str, written: &Written<'_>, is_method: bool) {
    let name = key.replace('-', "_");
    let arguments = parameters(written, is_method);
    let fixed = written.arguments.is_empty();
    let returns = if fixed { "&'static str" } else { "String" };
    let text = written.patterns.first().map(|(_, pattern)| plain(pattern)).unwrap_or_default();
    let _ = writeln!(out, "    /// {text}");
    for (area, feature) in [("quote-", "quote"), ("command-", "cli")] {
        if key.starts_with(area) {
            let _ = writeln!(out, "    #[cfg(feature = {feature:?})]");
        }
    }
    let _ = writeln!(out, "    pub(crate) fn {name}({arguments}) -> {returns} {{");
    counts(out, written);
    if !fixed {
        out.push_str("        let mut out = String::new();\n");
    }
    let language = if is_method { "self.language" } else { "of_desk()" };
    in_languages(out, language, &written.patterns, fixed);
    out.push_str(if fixed { "    }\n" } else { "        out\n    }\n" });
}

/// Writes a text in each language, and in the made-up one.
fn in_languages(out: &mut String, language: &str, patterns: &[InLanguage<'_>], fixed: bool) {
    let _ = writeln!(out, "        match {language} {{");
    for (language, pattern) in patterns {
        let _ = writeln!(out, "            Language::{} => {{", variant(language));
        body(out, language, pattern, fixed, &str::to_owned);
        out.push_str("            }\n");
    }
    if let Some((_, pattern)) = patterns.first() {
        out.push_str("            #[cfg(test)]\n            Language::MadeUp => {\n");
        let in_code = Cell::new(false);
        body(out, "en", pattern, fixed, &|text| made_up(text, &in_code));
        out.push_str("            }\n");
    }
    out.push_str("        }\n");
}

/// The parameters of the function of a message.
fn parameters(written: &Written<'_>, is_method: bool) -> String {
    let receiver = is_method.then(|| "self".to_owned());
    let arguments = written.arguments.iter().map(|(name, count)| {
        let of_type = if *count { "impl Count" } else { "&dyn std::fmt::Display" };
        format!("{name}: {of_type}")
    });
    receiver.into_iter().chain(arguments).collect::<Vec<_>>().join(", ")
}

/// Writes what turns arguments that are counts into numbers.
fn counts(out: &mut String, written: &Written<'_>) {
    for (name, _) in written.arguments.iter().filter(|(_, count)| *count) {
        let _ = writeln!(out, "        let {name} = {name}.count();");
    }
}

/// Writes the function of a problem of a file: all that is said of it.
fn wording(out: &mut String, key: &str, written: &Written<'_>) {
    let Some((_, what)) = written.patterns.first() else { return };
    let _ = writeln!(out, "    /// {}", plain(what));
    let (name, parameters) = (key.replace('-', "_"), parameters(written, false));
    let _ = writeln!(out, "    pub(crate) fn {name}({parameters}) -> Wording {{");
    counts(out, written);
    let text = |out: &mut String, patterns: &[InLanguage<'_>]| {
        out.push_str("{ let mut out = String::new();\n");
        in_languages(out, "of_desk()", patterns, false);
        out.push_str("out }");
    };
    out.push_str("        Wording { what: ");
    text(out, &written.patterns);
    for part in ["expected", "mend"] {
        let _ = write!(out, ", {part}: ");
        match written.attributes.iter().find(|(name, _)| *name == part) {
            Some((_, pattern)) => {
                out.push_str("Some(");
                text(out, &[("en", pattern.clone())]);
                out.push(')');
            }
            None => out.push_str("None"),
        }
    }
    out.push_str(" }\n    }\n");
}

/// The name of a language among the variants of `Language`.
fn variant(language: &str) -> &'static str {
    match language {
        "es" => "Spanish",
        "pt" => "Portuguese",
        "fr" => "French",
        "vi" => "Vietnamese",
        _ => "English",
    }
}

/// Writes what puts a pattern together; `as_shown` turns each piece of text
/// into what is shown.
fn body(
    out: &mut String,
    language: &str,
    pattern: &Pattern<&str>,
    fixed: bool,
    as_shown: &dyn Fn(&str) -> String,
) {
    if fixed {
        let _ = writeln!(out, "{:?}", as_shown(&plain(pattern)));
        return;
    }
    for element in &pattern.elements {
        match element {
            PatternElement::TextElement { value } => {
                let _ = writeln!(out, "put(&mut out, &{:?});", as_shown(&one_line(value)));
            }
            PatternElement::Placeable { expression } => match expression {
                Expression::Inline(InlineExpression::StringLiteral { value }) => {
                    let _ = writeln!(out, "put(&mut out, &{value:?});");
                }
                Expression::Inline(InlineExpression::VariableReference { id }) => {
                    let _ = writeln!(out, "put(&mut out, &{});", id.name.replace('-', "_"));
                }
                Expression::Select {
                    selector: InlineExpression::VariableReference { id },
                    variants,
                } => {
                    let name = id.name.replace('-', "_");
                    let _ = writeln!(out, "match (plural({language:?}, {name}), {name}) {{");
                    let mut variants: Vec<_> = variants.iter().collect();
                    // An exact number goes before its class, what is left last.
                    variants.sort_by_key(|variant| {
                        let exact = matches!(variant.key, VariantKey::NumberLiteral { .. });
                        (variant.default, !exact)
                    });
                    for variant in variants {
                        let _ = match &variant.key {
                            _ if variant.default => writeln!(out, "_ => {{"),
                            VariantKey::NumberLiteral { value } => {
                                writeln!(out, "(_, {value}) => {{")
                            }
                            VariantKey::Identifier { name } => {
                                let class = name.to_uppercase();
                                writeln!(out, "(PluralCategory::{class}, _) => {{")
                            }
                        };
                        body(out, language, &variant.value, false, as_shown);
                        out.push_str("}\n");
                    }
                    out.push_str("}\n");
                }
                Expression::Inline(_) | Expression::Select { .. } => {}
            },
        }
    }
}

/// A pattern as a person reads it.
fn plain(pattern: &Pattern<&str>) -> String {
    let parts = pattern.elements.iter().map(|element| match element {
        PatternElement::TextElement { value } => one_line(value),
        PatternElement::Placeable { expression } => match expression {
            Expression::Inline(InlineExpression::VariableReference { id }) => {
                format!("{{{}}}", id.name)
            }
            Expression::Inline(InlineExpression::StringLiteral { value }) => (*value).to_owned(),
            Expression::Select { variants, .. } => {
                let texts = variants.iter().map(|variant| plain(&variant.value));
                format!("[{}]", texts.collect::<Vec<_>>().join(" | "))
            }
            Expression::Inline(_) => String::new(),
        },
    });
    parts.collect()
}

/// A message is one paragraph, however it is broken into lines in its file.
fn one_line(text: &str) -> String {
    text.replace('\n', " ")
}

/// The text in a made-up language: what is left in plain letters on a page
/// was written outside the files of messages. Code in backticks stays, as it
/// does in every language; an argument may stand between the backticks.
fn made_up(text: &str, in_code: &Cell<bool>) -> String {
    let other = |sign: char| {
        in_code.set(in_code.get() ^ (sign == '`'));
        match sign {
            _ if in_code.get() => None,
            'a'..='z' => char::from_u32(u32::from(sign) - u32::from('a') + 0x0430),
            'A'..='Z' => char::from_u32(u32::from(sign) - u32::from('A') + 0x0410),
            _ => None,
        }
        .unwrap_or(sign)
    };
    text.chars().map(other).collect()
}
