//! One vessel's check as a page of HTML: the page that it has in an audit.
//!
//! Imports the page of a vessel and nothing else.

use super::Subject;
use super::audit::html::STYLE;
use super::audit::html::vessel::{Setting, page};
use super::html::document;
use maud::html;

/// The check as one self-contained document.
pub fn check_html(subject: &Subject<'_>) -> String {
    let setting = Setting { date: None, id: "vessel", back: None };
    let body = html! { main { (page(subject, setting)) } };
    document(&subject.check.vessel.name, STYLE, &body)
}
