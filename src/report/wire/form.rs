//! How the wire is declared: objects whose keys stand with their meaning,
//! their type and where they come from; and the stable words of closed sets.
//!
//! Imports `model`, `measure` and, for their names, `fleet`, `quote` and
//! `engine::validity`. The words are a contract: a variant may be renamed in
//! the program, its word here may not.

use crate::engine::validity::End;
use crate::fleet::compare::{Cause, Fate, Shared, WhyGone};
use crate::fleet::draft::{self, DraftFate};
use crate::fleet::{After, Doubt};
use crate::measure::{self, Answer};
use crate::model::catalogue::Gives;
use crate::model::check::{Inverse, Notice, Why};
use crate::model::finding::{Action, GoodUpTo, Outcome, ReadyUntil, Verdict, WayToReady};
use crate::model::options::{self, OwnHooks};
use crate::model::profile::{FreeboardFrom, Level, Standing, Verified};
use crate::model::reason::Reason;
use crate::model::vessel::Trust;
#[cfg(feature = "quote")]
use crate::quote;
use schemars::{JsonSchema, Schema, SchemaGenerator, json_schema};
use serde::{Serialize, Serializer};
use std::borrow::Cow;
use std::marker::PhantomData;

/// Declares objects of a format and, for each, `new`, which builds it: every
/// key with its meaning (which the schema tells), its type, and its value. What
/// several values need is bound before the first key. The name of an object is
/// its name in the schema.
macro_rules! objects {
    ($(
        $(#[$about:meta])*
        $vis:vis $name:ident($($argument:ident: $of:ty),*) {
            $(let $bound:pat = $made:expr;)*
            $($(#[$said:meta])+ $key:ident: $kind:ty = $value:expr,)+
        }
    )+) => { $(
        $(#[$about])*
        #[derive(schemars::JsonSchema, serde::Serialize)]
        $vis struct $name { $($(#[$said])+ $key: $kind,)+ }

        impl $name {
            $vis fn new($($argument: $of),*) -> Self {
                $(let $bound = $made;)*
                Self { $($key: $value,)+ }
            }
        }
    )+ };
}

/// Declares an object of which each key is left out where it says nothing, to
/// be flattened into another: it has no description, which would be taken for
/// that of the other.
macro_rules! sparse {
    (
        $(#[$about:meta])*
        $vis:vis $name:ident { $($(#[$said:meta])+ $key:ident: $kind:ty,)+ }
    ) => {
        $(#[$about])*
        #[derive(Default, schemars::JsonSchema, serde::Serialize)]
        $vis struct $name {
            $(
                $(#[$said])+
                #[serde(skip_serializing_if = "Option::is_none")]
                $vis $key: Option<$kind>,
            )+
        }
    };
}

pub(super) use {objects, sparse};

/// A set of values that have words.
pub(super) trait Named {
    /// Every word, for the schema.
    const WORDS: &'static [&'static str];

    /// The word of this one.
    fn word(&self) -> &'static str;
}

/// The word of one value out of such a set.
pub(super) struct Word<T>(&'static str, PhantomData<T>);

/// The word of a value.
pub(super) fn word<T: Named>(of: &T) -> Word<T> {
    Word(of.word(), PhantomData)
}

impl<T> Serialize for Word<T> {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        to.serialize_str(self.0)
    }
}

// What is said of a key takes the place of the empty description; where nothing
// is said, the schema drops it.
impl<T: Named> JsonSchema for Word<T> {
    fn inline_schema() -> bool {
        true
    }

    fn schema_name() -> Cow<'static, str> {
        T::WORDS.join("-or-").into()
    }

    fn json_schema(_: &mut SchemaGenerator) -> Schema {
        json_schema!({ "type": "string", "description": "", "enum": T::WORDS })
    }
}

/// A day, like `2026-03-09`.
#[derive(Clone, Copy)]
pub(super) struct Day(measure::Day);

/// A day as it is written.
pub(super) fn day(day: measure::Day) -> Day {
    Day(day)
}

impl Serialize for Day {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        to.collect_str(&self.0)
    }
}

impl JsonSchema for Day {
    fn inline_schema() -> bool {
        true
    }

    fn schema_name() -> Cow<'static, str> {
        "Day".into()
    }

    fn json_schema(_: &mut SchemaGenerator) -> Schema {
        json_schema!({ "type": "string", "description": "", "format": "date" })
    }
}

/// Gives each variant its word; several may share one.
macro_rules! words {
    ($($of:ty { $($($variant:ident)|+ = $word:literal,)+ })+) => { $(
        impl Named for $of {
            const WORDS: &'static [&'static str] = &[$($word),+];

            fn word(&self) -> &'static str {
                match self {
                    $($(Self::$variant { .. })|+ => $word,)+
                }
            }
        }
    )+ };
}

words! {
    Verdict { Ready = "ready", CannotTell = "cannot-tell", NotReady = "not-ready", }
    Outcome { Met = "met", CannotTell = "cannot-tell", NotMet = "not-met", }
    Trust { All = "all", Measured = "measured", }
    Inverse {
        ReadyUntil = "ready-until",
        GoodUpTo = "good-up-to",
        Clashes = "clashes",
        Way = "way-to-ready",
    }
    Level { Required = "required", Recommended = "recommended", }
    Standing { Rule = "rule", GoodPractice = "good-practice", }
    FreeboardFrom { Rail = "rail", Deck = "deck", }
    ReadyUntil { None = "none", Day = "day", NoEnd = "no-end", }
    WayToReady { Already = "already", Steps = "steps", None = "none", }
    Answer { Yes = "open", No = "closed", Unknown = "cannot-tell", }
    End { Expiry = "expiry", Inspection = "inspection", }
    Shared { Register = "register", Name = "name", }
    Fate { Opened = "opened", StillOpen = "still-open", Closed = "closed", Passing = "passing", }
    Gives { Tools = "tools", Extension = "extension", Service = "service", }
    OwnHooks { Arises = "arises", NoneAboard = "none-aboard", NotSaid = "not-said", }
    WhyGone { NotThere = "not-there", NotRead | MayBe = "not-read", Outside = "outside-selection", }
    Verified {
        Read = "read",
        Excerpt = "excerpt",
        Inferred = "inferred",
        Memory = "memory",
        CommonPractice = "common-practice",
    }
    GoodUpTo {
        None = "none",
        Freeboard = "freeboard",
        OnlyBelow = "only-below",
        NoLimit = "no-limit",
    }
    Action {
        Measure = "measure",
        Reinspect = "reinspect",
        Repair = "repair",
        Lengthen = "lengthen",
        BringAboard = "bring-aboard",
        Document = "document",
        Certify = "certify",
        ChangeGear = "change-gear",
        Acquire = "acquire",
    }
    Cause {
        Program = "program",
        Encoding = "encoding",
        RuleFile = "rule-file",
        Asked = "asked",
        Edition = "edition",
        Calendar = "calendar",
        Vessel = "vessel",
        Record = "record",
        Untold = "untold",
    }
    After {
        NotAsked = "not-asked",
        Served = "served",
        Open = "open",
        Advice = "advice",
        Decides = "decides",
    }
    DraftFate {
        Falls = "falls",
        Rises = "rises",
        CannotTell = "cannot-tell",
        Released = "released",
        Stays = "stays",
    }
    draft::Bound {
        Yes = "yes",
        NotKnown = "not-known",
        InForceAlone = "in-force-alone",
        No = "no",
    }
    options::Standing {
        First = "first-choice",
        Fallback = "fallback",
        Unclear = "cannot-tell",
        Nothing = "nothing",
    }
}

#[cfg(feature = "quote")]
words! {
    quote::Bound { Cheapest = "cheapest", AtLeast = "at-least", }
    quote::Hindrance { OutOfStock = "out-of-stock", Late = "late", PriceLapsed = "price-lapsed", }
}

/// Codes that the program itself goes by.
macro_rules! codes {
    ($($of:ty)+) => { $(
        impl Named for $of {
            const WORDS: &'static [&'static str] = Self::CODES;

            fn word(&self) -> &'static str {
                self.code()
            }
        }
    )+ };
}

codes! { Reason Notice Why Doubt }
