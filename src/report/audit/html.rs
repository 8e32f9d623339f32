//! A fleet's audit as one page of HTML: what it adds up to, vessel by
//! requirement, and a page for each vessel.
//!
//! Imports `fleet` and below. Decides nothing: rows come ordered and counted.

mod finding;
mod matrix;
mod overview;
pub(in crate::report) mod vessel;

use super::{Fleet, beside_html};
use crate::fleet::{Audit, Judged, Row};
use crate::load::Refusal;
use crate::model::check::Judgement;
use crate::model::finding::Verdict;
use crate::model::profile::{Profile, Standing};
use crate::model::vocabulary::Vocabulary;
use crate::report::Locale;
use crate::report::Subject;
use crate::report::html;
use std::sync::Arc;
use vessel::Setting;

/// The style of the pages of vessels, alone or in an audit.
pub(in crate::report) const STYLE: &str = include_str!("html/audit.css");

/// Up to so many vessels each has a page of its own.
pub const EACH_ITS_PAGE: usize = 300;

/// The audit with what is looked up on many parts of the page.
struct Page<'a> {
    audit: &'a Audit,
    vocabulary: &'a Vocabulary,
    locale: Locale,
    judged: Vec<&'a Judged>,
    refused: Vec<&'a Refusal>,
    /// Each edition that judged a vessel, once, in the order met.
    profiles: Vec<Arc<Profile>>,
    /// What is told beside the audit: an earlier one, a draft.
    beside: maud::Markup,
    /// The whole of it.
    fleet: Fleet<'a>,
}

impl<'a> Page<'a> {
    fn new(of: &Fleet<'a>) -> Self {
        let Fleet { audit, vocabulary, locale, .. } = *of;
        let (mut judged, mut refused) = (Vec::new(), Vec::new());
        for row in &audit.rows {
            match row {
                Row::Vessel(vessel) => judged.push(&**vessel),
                Row::Refused(refusal) => refused.push(refusal),
            }
        }
        let mut profiles: Vec<Arc<Profile>> = Vec::new();
        for judgement in judged.iter().flat_map(|judged| &judged.check.judgements) {
            if !profiles.iter().any(|known| same(known, &judgement.profile)) {
                profiles.push(Arc::clone(&judgement.profile));
            }
        }
        // The rules first, good practice after them.
        let practice = |profile: &Profile| profile.standing == Standing::GoodPractice;
        profiles.sort_by(|a, b| (practice(a), &a.rule, &a.id).cmp(&(practice(b), &b.rule, &b.id)));
        let beside = beside_html::sections(of);
        Self { audit, vocabulary, locale, judged, refused, profiles, beside, fleet: *of }
    }

    /// The id of a vessel's page.
    fn id(index: usize) -> String {
        format!("vessel-{}", index + 1)
    }

    /// Whether a vessel has a page of its own: of a large fleet, what is in
    /// order has none.
    fn has_own(&self, judged: &Judged) -> bool {
        self.judged.len() <= EACH_ITS_PAGE || judged.check.verdict != Verdict::Ready
    }

    /// The vessels that a profile judged, by index, with what it said.
    fn judged_by(&self, profile: &Profile) -> impl Iterator<Item = (usize, &'a Judgement)> {
        let judged = self.judged.iter().enumerate();
        judged.filter_map(move |(index, judged)| {
            let judgements = judged.check.judgements.iter();
            judgements.into_iter().find(|j| same(&j.profile, profile)).map(|j| (index, j))
        })
    }
}

fn same(a: &Profile, b: &Profile) -> bool {
    a.id == b.id
}

/// The audit as one self-contained document.
pub fn html(of: &Fleet<'_>) -> String {
    let audit = of.audit;
    let page = Page::new(of);
    let own = page.judged.iter().enumerate().filter(|(_, judged)| page.has_own(judged));
    let body = maud::html! {
        header class="rail" { h1 { (html::prose(&format!("Fleet audit of {}", audit.date))) } }
        main {
            (overview::overview(&page))
            (matrix::matrix(&page))
            @for (index, judged) in own { (of_vessel(&page, index, judged)) }
        }
    };
    html::document(&format!("Fleet audit of {}", audit.date), STYLE, &body)
}

fn of_vessel<'a>(page: &Page<'a>, index: usize, judged: &'a Judged) -> maud::Markup {
    let subject = Subject {
        check: &judged.check,
        vocabulary: page.vocabulary,
        sources: &judged.sources,
        locale: page.locale,
        freeing: page.fleet.freeing(index, judged),
    };
    let id = Page::id(index);
    vessel::page(&subject, Setting { date: Some(page.audit.date), id: &id, back: Some("#fleet") })
}
