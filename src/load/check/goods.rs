//! What an item of a catalogue gives. Tools and sets are read here, what
//! spares fit in `fits`, longer poles and work on a tool in `work`.
//!
//! Imports `model`; must not judge whether a tool will do, only what is said
//! of it.

use crate::load::check::fits::{Numbers, fits, mark_in_set};
use crate::load::check::reading::{AttributeReader, Unsaid};
use crate::load::check::tool::refuse_lost;
use crate::load::check::value::kept;
use crate::load::check::work::{extension, service};
use crate::load::form::catalogue::{GIVING, GoodsForm, ItemForm, MOST_OF_A_SET};
use crate::load::form::open::{Attributed, WrittenAttributes};
use crate::load::form::vessel::LARGEST_LOT;
use crate::load::read::spot::{Spot, filled};
use crate::model::catalogue::{Given, Gives};
use crate::model::vessel::{State, Tool};
use crate::model::vocabulary::{Class, KindId, Vocabulary};

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
    pub(crate) words: &'a Vocabulary,
    /// By whom plain figures are, and how they came about.
    pub(crate) unsaid: &'a Unsaid,
    /// The numbers of all items.
    pub(crate) numbers: &'a Numbers,
}

impl GoodsReader<'_> {
    /// What an item gives, and the rest of the form.
    pub(crate) fn gives(&self, mut form: ItemForm, spot: &Spot<'_>) -> (Option<Gives>, ItemForm) {
        let number = filled(&form.number).unwrap_or_default().to_owned();
        let (tool, tools) = (form.tool.take(), form.tools.take());
        let (lengthens, works) = (form.lengthens.take(), form.service.take());
        let written = [tool.is_some(), tools.is_some(), lengthens.is_some(), works.is_some()];
        judge_one(&written, spot);
        // The first of several is what it gives; all of them are read.
        let works = works.and_then(|form| service(form, self.words, &spot.key("service")));
        let lengthens = lengthens.map(|form| extension(form, self.words, &spot.key("lengthens")));
        let tools = tools.map(|forms| self.set(forms, &number, spot));
        let tool = tool.map(|form| self.tool(form, number.clone(), &spot.key("tool")));
        let tool = tool.map(|given| given.map(|given| Gives::Tools(vec![given])));
        (tool.or(tools).or(lengthens).unwrap_or(works), form)
    }

    fn set(
        &self,
        forms: Vec<Attributed<GoodsForm>>,
        number: &str,
        spot: &Spot<'_>,
    ) -> Option<Gives> {
        if forms.is_empty() || forms.len() > MOST_OF_A_SET {
            let what = match forms.len() {
                0 => "a set without tools".to_owned(),
                many => format!("{many} tools in a set are too many"),
            };
            return spot
                .wrong_key("tools", what)
                .expected(format!("from 1 to {MOST_OF_A_SET} tools"))
                .mend("write equal tools as one line with a `count`")
                .none();
        }
        let total = forms.len();
        let given = spot.each("tools", forms.into_iter().enumerate(), |at, (index, form)| {
            self.tool(form, mark_in_set(number, index), at)
        });
        (given.len() == total).then_some(Gives::Tools(given))
    }

    fn tool(&self, written: Attributed<GoodsForm>, mark: String, spot: &Spot<'_>) -> Option<Given> {
        let Attributed { form, keys, attributes } = written;
        let kind = self.kind(&form.kind, spot);
        let attributes = without_keys_of_a_vessel(attributes, spot);
        let attributes = kind.map(|kind| {
            let reader = AttributeReader { words: self.words, unsaid: self.unsaid, keys };
            let mut attributes = reader.attributes(attributes, Some(kind), spot);
            refuse_lost(&mut attributes, self.words, spot);
            attributes
        });
        let number = spot.count("count", &form.count, 1, LARGEST_LOT);
        let inspected = spot.flag("inspected", &form.inspected);
        let lasts = spot.interval("lasts", &form.lasts);
        let fits = fits(form.fits, kind, self.numbers, self.words, spot);
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

    fn kind(&self, text: &Option<String>, spot: &Spot<'_>) -> Option<KindId> {
        let text = spot.must("kind", filled(text), "write the kind, like `pliers`")?;
        let spot = spot.key("kind");
        let what = match self.words.find_kind(text).map(|kind| self.words.kind(kind).class) {
            Some(Class::Certificate) => "a certificate is earned, not sold",
            Some(Class::Gear) => "fishing gear is not sold here",
            _ => return spot.kind_of(text, &Class::CARRIED, self.words),
        };
        spot.wrong(what).of(text).expected("a tool, a set of spares or a document").none()
    }
}

/// An item gives exactly one thing.
fn judge_one(written: &[bool; 4], spot: &Spot<'_>) {
    let mut keys = GIVING.iter().zip(written).filter(|(_, written)| **written);
    let (first, second) = (keys.next(), keys.next());
    let expected = "one of `tool`, `tools`, `lengthens` and `service`";
    if let Some((key, _)) = second {
        spot.wrong_key(key, "an item gives one thing only")
            .of(key)
            .expected(expected)
            .mend("write two items, or the tools of a set under `tools`")
            .tell();
    }
    if first.is_none() {
        let wrong = spot.wrong("nothing says what this item gives");
        wrong.expected(expected).lacking(GIVING).tell();
    }
}

/// The attributes without keys that only a vessel's tool has; these are
/// told, with what takes their place.
fn without_keys_of_a_vessel(mut written: WrittenAttributes, spot: &Spot<'_>) -> WrittenAttributes {
    written.retain(|(key, _)| {
        let known = OF_A_VESSEL.iter().find(|(known, _)| known == key);
        if let Some((_, mend)) = known {
            spot.wrong_key(key, "what is sold has no such key").of(key).mend(*mend).tell();
        }
        known.is_none()
    });
    written
}
