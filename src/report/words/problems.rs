//! The words of what is wrong with files.
//!
//! Imports `load` for what can be wrong. Opens no file.

mod faults;

use super::figures::any_of;
use super::locale::{Locale, desk, problems as said};
use crate::load::{FileKind, Form, Part, Wanted};
use crate::measure::{Currency, QuantityError, QuantityKind};
use crate::model::vocabulary::Class;
use std::fmt::Display;

/// All that is said of a problem, beside its place and the offending text.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Wording {
    /// What is wrong: lower case, no full stop.
    pub what: String,
    /// What was expected instead.
    pub expected: Option<String>,
    /// How to mend it, an imperative.
    pub mend: Option<String>,
}

/// Words in backticks.
fn ticked(words: &[impl Display]) -> Vec<String> {
    words.iter().map(|word| format!("`{word}`")).collect()
}

/// Words of which any will do.
fn any(words: &[impl Display]) -> String {
    any_of(&ticked(words), Locale::default())
}

/// The same of what is no single word.
fn either(names: Vec<String>) -> String {
    let joined = names.into_iter().reduce(|head, last| Locale::default().list_any(&head, &last));
    joined.unwrap_or_default()
}

/// What a file of a kind is called.
fn called(kind: FileKind) -> &'static str {
    match kind {
        FileKind::Vessel => desk::file_vessel(),
        FileKind::Inspection => desk::file_inspection(),
        FileKind::Catalogue => desk::file_catalogue(),
        FileKind::Profile => desk::file_profile(),
        FileKind::Vocabulary => desk::file_vocabulary(),
        FileKind::Techniques => desk::file_techniques(),
    }
}

fn form(form: Form) -> &'static str {
    match form {
        Form::Nothing => desk::form_nothing(),
        Form::Text => desk::form_text(),
        Form::List => desk::form_list(),
        Form::Group => desk::form_group(),
    }
}

fn wrong_form(is: Form, wanted: &[Wanted], like: Option<&str>) -> Wording {
    let named: Vec<String> = wanted
        .iter()
        .map(|wanted| match wanted {
            Wanted::Only(text) => format!("`{text}`"),
            Wanted::Of(wanted) => form(*wanted).to_owned(),
        })
        .collect();
    let (named, name) = (either(named), form(is));
    match (is, like) {
        (_, Some(like)) => said::wrong_form_text(&name, &named, &like),
        (Form::Group, None) if wanted.contains(&Wanted::Of(Form::List)) => {
            said::wrong_form_group(&name, &named)
        }
        (Form::Nothing, None) => said::wrong_form_nothing(&name, &named),
        _ => said::wrong_form(&name, &named),
    }
}

fn class(class: Class) -> &'static str {
    match class {
        Class::Tool => desk::class_tool(),
        Class::Spare => desk::class_spare(),
        Class::Document => desk::class_document(),
        Class::Gear => desk::class_gear(),
        Class::Certificate => desk::class_certificate(),
    }
}

fn wrong_class(is: Class, wanted: &[Class]) -> Wording {
    let wanted = either(wanted.iter().map(|wanted| class(*wanted).to_owned()).collect());
    match is {
        Class::Certificate => said::wrong_class_certificate(&class(is), &wanted),
        Class::Gear => said::wrong_class_gear(&class(is), &wanted),
        Class::Tool | Class::Spare | Class::Document => said::wrong_class(&class(is), &wanted),
    }
}

/// What one part of a file of techniques is called, several, and any of them.
fn part_names(part: Part) -> [&'static str; 3] {
    match part {
        Part::Fact => [desk::part_fact(), desk::part_facts(), desk::part_a_fact()],
        Part::Situation => {
            [desk::part_situation(), desk::part_situations(), desk::part_a_situation()]
        }
        Part::Technique => {
            [desk::part_technique(), desk::part_techniques(), desk::part_a_technique()]
        }
        Part::Capability => {
            [desk::part_capability(), desk::part_capabilities(), desk::part_a_capability()]
        }
        Part::Act => [desk::part_act(), desk::part_acts(), desk::part_an_act()],
        Part::Card => [desk::part_card(), desk::part_cards(), desk::part_a_card()],
    }
}

/// Attributes of a kind are told where there are any to tell.
fn of_own(wording: Wording, own: &[String]) -> Wording {
    Wording { expected: wording.expected.filter(|_| !own.is_empty()), ..wording }
}

impl Display for QuantityError {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(&match self {
            Self::NoUnit => desk::figure_no_unit().to_owned(),
            Self::UnknownUnit(unit) => desk::figure_unknown_unit(unit),
            Self::Negative => desk::figure_below_zero().to_owned(),
            Self::AmbiguousComma => desk::figure_unclear_comma().to_owned(),
            Self::TooLarge(most) => desk::figure_too_large(most),
            Self::TooFine(step) => desk::figure_too_fine(step),
            Self::OutOfOrder => desk::figure_mixed().to_owned(),
            Self::NoSuchDay => desk::figure_no_such_day().to_owned(),
            Self::Nonsense(what) => desk::figure_not_readable(what),
        })
    }
}

/// A text that is no quantity of that kind.
fn figure(error: &QuantityError, kind: QuantityKind, meant: &[String]) -> Wording {
    let example = kind.example();
    let expected = match kind {
        QuantityKind::Length => desk::figure_length(&example),
        QuantityKind::Mass => desk::figure_mass(&example),
        QuantityKind::Angle => desk::figure_angle(&example),
        QuantityKind::HookSize => desk::figure_hook_size(&example),
        QuantityKind::Count => desk::figure_count(&example),
    };
    let what = match error {
        QuantityError::Nonsense(_) => desk::figure_none().to_owned(),
        other => other.to_string(),
    };
    let mend = match (error, kind) {
        (QuantityError::NoUnit | QuantityError::AmbiguousComma, _) => match meant {
            [one, other] if *error == QuantityError::AmbiguousComma => {
                Some(desk::figure_comma(one, other))
            }
            [one, other] if kind == QuantityKind::Mass => Some(desk::figure_mass_unit(one, other)),
            [one, other] => Some(desk::figure_length_unit(one, other)),
            [only] => Some(desk::figure_only(only)),
            _ => None,
        },
        (QuantityError::UnknownUnit(_), QuantityKind::Length) => {
            Some(desk::figure_units_of_length().to_owned())
        }
        (QuantityError::UnknownUnit(_), QuantityKind::Mass) => {
            Some(desk::figure_units_of_mass().to_owned())
        }
        (QuantityError::OutOfOrder, _) => Some(desk::figure_order().to_owned()),
        (QuantityError::Negative, _) => Some(desk::figure_minus().to_owned()),
        _ => None,
    };
    Wording { what, expected: Some(expected), mend }
}

/// A text that is no amount of a currency, which may not be known.
fn amount(error: &QuantityError, text: &str, currency: Option<Currency>) -> Wording {
    let has_coins = currency.is_none_or(|currency| currency.digits() > 0);
    let [small, large] = if has_coins { ["184.50", "1200.00"] } else { ["184", "1200"] };
    let what = match error {
        QuantityError::Nonsense(_) => desk::amount_none().to_owned(),
        QuantityError::Negative => desk::amount_below_zero().to_owned(),
        QuantityError::TooFine(_) => desk::amount_too_fine().to_owned(),
        other => other.to_string(),
    };
    let mend = match error {
        QuantityError::Nonsense(_) if text.chars().any(|c| !c.is_ascii_digit() && c != '.') => {
            Some(desk::amount_alone().to_owned())
        }
        QuantityError::AmbiguousComma => Some(desk::amount_comma(&large)),
        _ => None,
    };
    let expected = match currency {
        Some(currency) => desk::amount_in(&currency, &small),
        None => desk::amount(&small),
    };
    Wording { what, expected: Some(expected), mend }
}
