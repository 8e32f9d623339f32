//! A profile as it is written.
//!
//! Texts only; what they mean is judged in `check::profile` and
//! `check::requirement`.

use crate::load::form::loose::{Loose, OneOrMore, Single, Slot, Texts, Words};
use crate::load::form::open::{Group, Open, When, With};
use crate::load::form::{LONGEST_NAME, SpanForm, asked, flags, words};
use crate::load::read::fault::FileKind;
use crate::load::read::parse::WrittenFile;
use crate::model::profile::{FreeboardFrom, Level, Standing, Verified};
use schemars::JsonSchema;
use serde::Deserialize;
use validator::Validate;

/// The most requirements that a profile may have.
pub const MOST_REQUIREMENTS: usize = 200;

/// The words for where a freeboard is taken from.
pub(crate) const FREEBOARD_FROM: [(&str, FreeboardFrom); 4] = [
    ("top of the rail", FreeboardFrom::Rail),
    ("working deck", FreeboardFrom::Deck),
    ("the top of the rail", FreeboardFrom::Rail),
    ("the working deck", FreeboardFrom::Deck),
];

pub(crate) const STANDINGS: [(&str, Standing); 2] =
    [("rule", Standing::Rule), ("good practice", Standing::GoodPractice)];

pub(crate) const LEVELS: [(&str, Level); 2] =
    [("required", Level::Required), ("recommended", Level::Recommended)];

/// The words for how something was verified.
pub(crate) const VERIFIED: [(&str, Verified); 5] = [
    ("read", Verified::Read),
    ("excerpt", Verified::Excerpt),
    ("inferred", Verified::Inferred),
    ("memory", Verified::Memory),
    ("common practice", Verified::CommonPractice),
];

/// Text for people: one string, or one for each language.
pub(crate) type Worded = Single<Open<String>>;

/// One published rule set in one edition.
#[derive(Debug, Clone, Default, Deserialize, JsonSchema, Validate)]
#[serde(deny_unknown_fields, default)]
#[schemars(title = "Profile")]
pub(crate) struct ProfileFile {
    /// `profile/1`.
    #[validate(length(max = LONGEST_NAME))]
    pub(crate) format: Option<String>,
    /// The id of this edition.
    #[validate(length(max = LONGEST_NAME))]
    #[schemars(extend("x-needed" = true, "x-id" = true))]
    pub(crate) id: Option<String>,
    /// The rule of which it is an edition.
    #[validate(length(max = LONGEST_NAME))]
    pub(crate) rule: Option<String>,
    /// The law's edition, in words.
    #[validate(length(max = LONGEST_NAME))]
    pub(crate) edition: Option<String>,
    /// The revision of this file; raised when a mistake in it is mended.
    #[schemars(extend("x-whole" = [1, 9999]))]
    pub(crate) encoding: Option<String>,
    /// What it is called.
    #[schemars(extend("x-needed" = true))]
    pub(crate) title: Option<Worded>,
    /// The publication; every clause is a clause of it.
    #[validate(length(max = LONGEST_NAME))]
    pub(crate) source: Option<String>,
    /// The governing language, as a tag like `en`.
    pub(crate) language: Option<String>,
    /// `rule` (taken if missing) or `good practice`.
    #[schemars(extend("x-words" = words(&STANDINGS)))]
    pub(crate) standing: Option<String>,
    /// The days on which this edition is in force.
    #[serde(rename = "in force")]
    pub(crate) in_force: Option<SpanForm>,
    /// Whom it binds.
    pub(crate) binds: Option<BindsForm>,
    /// `top of the rail` (taken if missing) or `working deck`.
    #[serde(rename = "freeboard from")]
    #[schemars(extend("x-words" = words(&FREEBOARD_FROM)))]
    pub(crate) freeboard_from: Option<String>,
    /// How often tools must be inspected, like `every 12 months`.
    #[serde(rename = "inspection due")]
    pub(crate) inspection_due: Option<String>,
    /// Whether two tools that share a part may both count.
    #[serde(rename = "parts may be shared")]
    #[schemars(extend("x-words" = flags()))]
    pub(crate) parts_may_be_shared: Option<String>,
    /// Notes for the reader.
    pub(crate) notes: Option<Vec<Worded>>,
    /// `no` for a stub: a rule that is known to bind, not encoded.
    #[schemars(extend("x-words" = flags()))]
    pub(crate) encoded: Option<String>,
    /// `yes` for a list that others build on and that binds nobody.
    #[schemars(extend("x-words" = flags()))]
    pub(crate) base: Option<String>,
    /// `yes` for the house that is used where no rule names a vessel.
    #[schemars(extend("x-words" = flags()))]
    pub(crate) fallback: Option<String>,
    /// The id of the profile whose requirements this one takes over.
    #[serde(rename = "built on")]
    pub(crate) built_on: Option<String>,
    /// Ids of inherited requirements that go.
    pub(crate) drop: Option<Texts>,
    /// Changes to inherited requirements.
    pub(crate) change: Option<Vec<RequirementForm>>,
    /// The requirements.
    #[schemars(extend("x-entries" = asked(), "x-listed" = [0, MOST_REQUIREMENTS]))]
    pub(crate) requirements: Option<Vec<RequirementForm>>,
}

/// Whom a profile binds.
#[derive(Debug, Clone, Default, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
#[schemars(rename = "Binds")]
pub(crate) struct BindsForm {
    /// Permits, one of which the vessel holds.
    pub(crate) permits: Option<Texts>,
    /// Gear, one of which the vessel carries.
    pub(crate) gear: Option<Texts>,
    /// Areas, one of which the trip goes to.
    pub(crate) areas: Option<Texts>,
    /// Further conditions.
    pub(crate) when: Option<Group<When>>,
}

/// A requirement, or a change to one.
#[derive(Debug, Clone, Default, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
#[schemars(rename = "Requirement")]
pub(crate) struct RequirementForm {
    /// Its id, unique in the profile.
    #[schemars(extend("x-needed" = true, "x-id" = true))]
    pub(crate) id: Option<String>,
    /// What it is called.
    pub(crate) title: Option<Worded>,
    /// `required` (taken if missing) or `recommended`.
    #[schemars(extend("x-words" = words(&LEVELS), "x-droppable" = true))]
    pub(crate) level: Option<String>,
    /// The clause of the profile's source.
    pub(crate) clause: Option<String>,
    /// `read`, `excerpt`, `inferred`, `memory` or `common practice`.
    #[schemars(extend("x-words" = words(&VERIFIED), "x-droppable" = true))]
    pub(crate) verified: Option<String>,
    /// A note for the reader.
    pub(crate) note: Option<Worded>,
    /// Ids in earlier encodings.
    pub(crate) formerly: Option<Words>,
    /// The first day on which it holds.
    #[schemars(extend("x-day" = true, "x-droppable" = true))]
    pub(crate) from: Option<String>,
    /// The last day on which it holds.
    #[schemars(extend("x-day" = true, "x-droppable" = true))]
    pub(crate) until: Option<String>,
    /// All of these must hold.
    pub(crate) when: Option<Slot<Group<When>>>,
    /// One group, or a list of groups, none of which holds in full.
    pub(crate) unless: Option<Slot<Unless>>,
    /// How often its tools must be inspected, or `none`.
    #[serde(rename = "inspection due")]
    pub(crate) inspection_due: Option<String>,
    /// How many of what, like `1 long-handled line cutter`.
    pub(crate) carry: Option<String>,
    /// What it must be like.
    pub(crate) with: Option<Slot<Group<With>>>,
    /// Alternatives.
    #[serde(rename = "one of")]
    pub(crate) one_of: Option<Slot<Vec<AlternativeForm>>>,
    /// Different types.
    pub(crate) types: Option<Slot<Vec<TypeForm>>>,
    /// The requirement whose tool the spares are for.
    #[serde(rename = "spare for")]
    pub(crate) spare_for: Option<String>,
    /// A kind of certificate.
    pub(crate) certificate: Option<String>,
    /// Roles, or a number of people, like `2 people`.
    #[serde(rename = "held by")]
    pub(crate) held_by: Option<Words>,
    /// How long a certificate stays valid from its issue.
    pub(crate) valid: Option<String>,
    /// A kind of the vessel's own fishing gear.
    pub(crate) every: Option<String>,
    /// Requirements whose tool is deemed to serve this one.
    #[serde(rename = "met by the tool of")]
    pub(crate) met_by: Option<Loose<DeemedForm>>,
    /// Requirements with which it may share a tool that fits both.
    #[serde(rename = "may share the tool of")]
    pub(crate) may_share: Option<Words>,
    /// The requirement after which it stands.
    pub(crate) after: Option<String>,
}

/// The groups under `unless:`.
pub(crate) type Unless = OneOrMore<Group<When>>;

/// One of several alternatives, or a member of a set.
#[derive(Debug, Clone, Default, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
#[schemars(rename = "Alternative")]
pub(crate) struct AlternativeForm {
    /// Of which kind.
    pub(crate) kind: Option<String>,
    /// Its own clause.
    pub(crate) clause: Option<String>,
    /// When this alternative is open.
    pub(crate) when: Option<Group<When>>,
    /// What it must be like.
    pub(crate) with: Option<Group<With>>,
}

/// A member of a set.
#[derive(Debug, Clone, Default, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
#[schemars(rename = "Member")]
pub(crate) struct MemberForm {
    /// How many of what.
    #[schemars(extend("x-needed" = true))]
    pub(crate) carry: Option<String>,
    /// What it must be like.
    pub(crate) with: Option<Group<With>>,
    /// Alternatives.
    #[serde(rename = "one of")]
    pub(crate) one_of: Option<Vec<AlternativeForm>>,
}

/// One of several different types.
#[derive(Debug, Clone, Default, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
#[schemars(rename = "Type")]
pub(crate) struct TypeForm {
    /// Its name.
    #[serde(rename = "type")]
    #[schemars(extend("x-needed" = true))]
    pub(crate) name: Option<String>,
    /// Its own clause.
    pub(crate) clause: Option<String>,
    /// How many of what.
    pub(crate) carry: Option<String>,
    /// What it must be like.
    pub(crate) with: Option<Group<With>>,
    /// Alternatives.
    #[serde(rename = "one of")]
    pub(crate) one_of: Option<Vec<AlternativeForm>>,
    /// Members, all of which must be there.
    #[serde(rename = "set of")]
    pub(crate) set_of: Option<Vec<MemberForm>>,
}

/// A requirement whose tool is deemed to serve another.
#[derive(Debug, Clone, Default, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
#[schemars(rename = "Deemed")]
pub(crate) struct DeemedForm {
    /// The requirement whose tool it is.
    #[schemars(extend("x-needed" = true))]
    pub(crate) requirement: Option<String>,
    /// What the tool must be like, beyond serving that requirement.
    pub(crate) with: Option<Group<With>>,
}

impl WrittenFile for ProfileFile {
    const KIND: FileKind = FileKind::Profile;

    fn format(&self) -> &Option<String> {
        &self.format
    }
}
