//! The boxes and squares of the inspector's sheet that are for no figure that
//! a rule asks: how many, who, signatures.
//!
//! Imports `model` only.

use super::rows::{Row, Thing};
use crate::model::rule::Holders;
use crate::report::Locale;
use crate::report::render::base::shown;
use maud::{Markup, html};

/// Boxes beside those for what is asked.
pub(super) fn extras(row: &Row<'_>, locale: Locale) -> Markup {
    html! {
        @if row.several { (entry(&html! { b { (locale.sheet_how_many()) } })) }
        @match row.thing {
            Thing::Holders(holders) => (people(holders, locale)),
            Thing::LookFor => {
                (entry(&html! { (locale.sheet_found_mark()) }))
                @if row.asks.list.is_empty() { (figures(locale)) }
            }
            Thing::Tool(_) | Thing::Gear(_) => {}
        }
    }
}

/// Boxes for the certificates that are asked.
fn people(holders: &Holders, locale: Locale) -> Markup {
    let roles: Vec<String> = match holders {
        Holders::EachRole(roles) => roles.clone(),
        Holders::People(count) => (1..=*count).map(|number| locale.sheet_person(&number)).collect(),
    };
    html! {
        @for role in roles {
            (entry(&html! { b { (shown(&role)) } ": " (locale.sheet_name_of()) }))
            (entry(&html! { (locale.sheet_number()) }))
            (entry(&html! { (locale.sheet_issued_expires()) }))
        }
    }
}

/// Room for the figures of a thing of which no rule here asks any.
pub(super) fn figures(locale: Locale) -> Markup {
    html! { div.ask { span.said { (locale.sheet_its_figures()) } span.box.wide {} } }
}

pub(super) fn entry(label: &Markup) -> Markup {
    html! { div.ask { span.said { (label) } span.box {} } }
}

/// A square for a tick or a cross.
pub(super) fn square(label: &Markup) -> Markup {
    html! { div.yesno { span.square {} span.said { (label) } } }
}

/// `a` to `z`, then `aa`.
pub(super) fn letter(at: usize) -> String {
    let sign = |n: usize| char::from(b'a' + u8::try_from(n % 26).unwrap_or_default());
    match at / 26 {
        0 => sign(at).to_string(),
        round => format!("{}{}", sign(round - 1), sign(at)),
    }
}

pub(super) fn signatures(locale: Locale) -> Markup {
    html! {
        section.sign {
            (entry(&html! { (locale.sheet_inspector_signs()) }))
            (entry(&html! { (locale.sheet_vessel_signs()) }))
            (entry(&html! { (locale.sheet_day_hour_place()) }))
            div.remarks { (locale.sheet_remarks()) }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::letter;

    #[test]
    fn letters_go_on_after_z() {
        assert_eq!([0, 25, 26, 52].map(letter), ["a", "z", "aa", "ba"]);
    }
}
