//! What an item of a catalogue gives. Tools and sets are read here, what
//! spares fit in `check_fits`, longer poles and work on a tool in
//! `check_work`.
//!
//! Imports `model`; must not judge whether a tool will do, only what is said
//! of it.

use crate::load::check::fits::{Numbers, mark_in_set};
use crate::load::check::reading::{AttributeReader, Unsaid, WrittenAttributes};
use crate::load::check::tool::refuse_lost;
use crate::load::check::value::{count, filled, flag, interval, kept, kind, missing};
use crate::load::form::catalogue::GIVING;
use crate::load::form::catalogue::MOST_OF_A_SET;
use crate::load::form::catalogue::{GoodsForm, ItemForm};
use crate::load::form::vessel::LARGEST_LOT;
use crate::load::read::problem::{Problem, Problems};
use crate::load::read::spot::Spot;
use crate::model::catalogue::{Given, Gives};
use crate::model::vessel::{State, Tool};
use crate::model::vocabulary::{Class, KindId, Vocabulary};

/// The keys of a tool that is sold that are no attributes.
const FIXED: [&str; 7] = ["kind", "count", "name", "conforms", "inspected", "lasts", "fits"];

/// Keys of a vessel's tool that one for sale does not have, and what to do.
const OF_A_VESSEL: [(&str, &str); 8] = [
    ("mark", "take it away; its mark is the item's number"),
    ("condition", "take it away; what is sold is serviceable"),
    ("broken", "take it away; what is sold is serviceable"),
    ("where", "take it away; it comes aboard with the delivery"),
    ("acquired", "take it away; it is acquired with the delivery"),
    ("expires", "write how long it is good from its delivery on, like `lasts: 24 months`"),
    ("changes", "write the figures as they are when it is delivered"),
    ("remark", "write it in the item's `description`"),
];

/// Reads what items give.
pub(crate) struct GoodsReader<'a> {
    /// The words.
    pub(crate) vocabulary: &'a Vocabulary,
    /// By whom plain figures are, and how they came about.
    pub(crate) unsaid: &'a Unsaid,
    /// The numbers of all items.
    pub(crate) numbers: &'a Numbers,
    /// Where problems go.
    pub(crate) problems: &'a mut Problems,
}

impl GoodsReader<'_> {
    /// What an item gives, and the rest of the form.
    pub(crate) fn gives(
        &mut self,
        mut form: ItemForm,
        spot: &Spot<'_>,
    ) -> (Option<Gives>, ItemForm) {
        let number = form.number.as_deref().unwrap_or_default().trim().to_owned();
        let (tool, tools) = (form.tool.take(), form.tools.take());
        let (lengthens, service) = (form.lengthens.take(), form.service.take());
        let written = [tool.is_some(), tools.is_some(), lengthens.is_some(), service.is_some()];
        self.judge_one(&written, spot);
        let mut gives = None;
        if let Some(service) = service {
            gives = self.service(service, &spot.key("service"));
        }
        if let Some(lengthens) = lengthens {
            gives = self.extension(lengthens, &spot.key("lengthens"));
        }
        if let Some(tools) = tools {
            gives = self.set(tools, &number, &spot.key("tools"));
        }
        if let Some(tool) = tool {
            let given = self.tool(tool, number, &spot.key("tool"));
            gives = given.map(|given| Gives::Tools(vec![given]));
        }
        (gives, form)
    }

    /// An item gives exactly one thing.
    fn judge_one(&mut self, written: &[bool; 4], spot: &Spot<'_>) {
        let mut keys = GIVING.iter().zip(written).filter(|(_, written)| **written);
        let (first, second) = (keys.next(), keys.next());
        let expected = "one of `tool`, `tools`, `lengthens` and `service`";
        if let Some((key, _)) = second {
            self.problems.add_at_key(
                Problem::new(spot.key(key).place(), "an item gives one thing only")
                    .offending(key)
                    .expected(expected)
                    .mend("write two items, or the tools of a set under `tools`"),
            );
        }
        if first.is_none() {
            self.problems.add_lacking(
                Problem::new(spot.place(), "nothing says what this item gives").expected(expected),
                GIVING,
            );
        }
    }

    fn set(&mut self, forms: Vec<GoodsForm>, number: &str, list: &Spot<'_>) -> Option<Gives> {
        if forms.is_empty() || forms.len() > MOST_OF_A_SET {
            let what = match forms.len() {
                0 => "a set without tools".to_owned(),
                many => format!("{many} tools in a set are too many"),
            };
            self.problems.add_at_key(
                Problem::new(list.place(), what)
                    .expected(format!("from 1 to {MOST_OF_A_SET} tools"))
                    .mend("write equal tools as one line with a `count`"),
            );
            return None;
        }
        let total = forms.len();
        let given: Vec<Given> = forms
            .into_iter()
            .enumerate()
            .filter_map(|(at, form)| self.tool(form, mark_in_set(number, at), &list.entry(at)))
            .collect();
        (given.len() == total).then_some(Gives::Tools(given))
    }

    fn tool(&mut self, form: GoodsForm, mark: String, spot: &Spot<'_>) -> Option<Given> {
        let kind = self.kind(form.kind.as_deref(), spot);
        let written = self.without_keys_of_a_vessel(form.attributes, spot);
        let attributes = kind.map(|kind| {
            let reader =
                AttributeReader { vocabulary: self.vocabulary, unsaid: self.unsaid, fixed: &FIXED };
            let mut attributes = reader.attributes(written, Some(kind), spot, self.problems);
            refuse_lost(&mut attributes, self.vocabulary, spot, self.problems);
            attributes
        });
        let number = filled(form.count.as_deref())
            .and_then(|text| count(text, 1, LARGEST_LOT, &spot.key("count"), self.problems));
        let inspected = filled(form.inspected.as_deref())
            .and_then(|text| flag(text, &spot.key("inspected"), self.problems));
        let lasts = filled(form.lasts.as_deref())
            .and_then(|text| interval(text, &spot.key("lasts"), self.problems));
        let fits = self.fits(form.fits, kind, spot);
        let mut tool = Tool::bare(mark, kind?, number.unwrap_or(1), spot.place());
        tool.name = kept(form.name);
        tool.attributes = attributes.unwrap_or_default();
        tool.state = State::Serviceable;
        let conforms = form.conforms.into_iter().flatten();
        Some(Given {
            tool,
            conforms: conforms.filter_map(|clause| kept(Some(clause))).collect(),
            inspected: inspected.unwrap_or(false),
            lasts,
            fits,
        })
    }

    fn kind(&mut self, text: Option<&str>, spot: &Spot<'_>) -> Option<KindId> {
        let Some(text) = filled(text) else {
            missing(spot, "kind", self.problems, "write the kind, like `pliers`");
            return None;
        };
        let known = self.vocabulary.find_kind(text);
        let class = known.map(|kind| self.vocabulary.kind(kind).class);
        if let Some(class @ (Class::Certificate | Class::Gear)) = class {
            let what = match class {
                Class::Certificate => "a certificate is earned, not sold",
                _ => "fishing gear is not sold here",
            };
            self.problems.add(
                Problem::new(spot.key("kind").place(), what)
                    .offending(text)
                    .expected("a tool, a set of spares or a document"),
            );
            return None;
        }
        kind(text, &Class::CARRIED, self.vocabulary, &spot.key("kind"), self.problems)
    }

    /// The attributes without keys that only a vessel's tool has; these are
    /// told, with what takes their place.
    fn without_keys_of_a_vessel(
        &mut self,
        mut written: WrittenAttributes,
        spot: &Spot<'_>,
    ) -> WrittenAttributes {
        written.retain(|(key, _)| {
            let known = OF_A_VESSEL.iter().find(|(known, _)| known == key);
            if let Some((_, mend)) = known {
                let what = "what is sold has no such key";
                let problem = Problem::new(spot.key(key).place(), what).offending(key).mend(*mend);
                self.problems.add_at_key(problem);
            }
            known.is_none()
        });
        written
    }
}
