//! The boxes and squares of the inspector's sheet that are for no figure that
//! a rule asks: how many, who, signatures.
//!
//! Imports `model` only.

use super::rows::{Row, Thing};
use crate::model::rule::Holders;
use crate::report::render::base::shown;
use maud::{Markup, html};

/// Boxes beside those for what is asked.
pub(super) fn extras(row: &Row<'_>) -> Markup {
    html! {
        @if row.several { (entry(&html! { b { "how many" } })) }
        @match row.thing {
            Thing::Holders(holders) => (people(holders)),
            Thing::LookFor => {
                (entry(&html! { "mark of what was found" }))
                @if row.asks.list.is_empty() {
                    div.ask { span.said { "its figures" } span.box.wide {} }
                }
            }
            Thing::Tool(_) => {}
            Thing::Gear(_) => {}
        }
    }
}

/// Boxes for the certificates that are asked.
fn people(holders: &Holders) -> Markup {
    let roles: Vec<String> = match holders {
        Holders::EachRole(roles) => roles.clone(),
        Holders::People(count) => (1..=*count).map(|number| format!("person {number}")).collect(),
    };
    html! {
        @for role in roles {
            (entry(&html! { b { (shown(&role)) } ": name" }))
            (entry(&html! { "number" }))
            (entry(&html! { "issued, expires" }))
        }
    }
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

pub(super) fn signatures() -> Markup {
    html! {
        section.sign {
            (entry(&html! { "inspector, name and signature" }))
            (entry(&html! { "for the vessel, name and signature" }))
            (entry(&html! { "day, hour, place" }))
            div.remarks { "remarks, by row number" }
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
