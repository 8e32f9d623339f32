//! A file of techniques as it is written: how a turtle is freed.
//!
//! Texts only; what they mean is judged in `check::techniques` and beside it.

use crate::load::form::loose::{Single, Texts, Words};
use crate::load::form::open::Open;
use crate::load::form::profile::{FREEBOARD_FROM, RequirementForm, VERIFIED, Worded};
use crate::load::form::{LONGEST_NAME, asked, flags, words};
use crate::load::read::fault::FileKind;
use crate::load::read::parse::WrittenFile;
use schemars::JsonSchema;
use serde::Deserialize;
use validator::Validate;

/// The most entries in a list of the file: enough for any house, and few
/// enough to be compared with each other.
pub(crate) const MOST_ENTRIES: usize = 100;

/// Answers to some of the facts: of each fact one word, or several.
pub(crate) type PatternForm = Open<Words>;

/// One line: plain text, or text with its own clause.
pub(crate) type LineText = Single<LineForm>;

/// How a turtle is freed.
#[derive(Debug, Clone, Default, Deserialize, JsonSchema, Validate)]
#[serde(deny_unknown_fields, default)]
#[schemars(title = "Techniques")]
pub(crate) struct TechniquesFile {
    /// `techniques/1`.
    #[validate(length(max = LONGEST_NAME))]
    pub(crate) format: Option<String>,
    /// The id of this file.
    #[validate(length(max = LONGEST_NAME))]
    #[schemars(extend("x-needed" = true, "x-id" = true))]
    pub(crate) id: Option<String>,
    /// The revision of this file; raised when a mistake in it is mended.
    #[schemars(extend("x-whole" = [1, 9999]))]
    pub(crate) encoding: Option<String>,
    /// What it is called.
    #[schemars(extend("x-needed" = true))]
    pub(crate) title: Option<Worded>,
    /// What it stands on, in words.
    #[validate(length(max = LONGEST_NAME))]
    #[schemars(extend("x-needed" = true))]
    pub(crate) source: Option<String>,
    /// The governing language, as a tag like `en`.
    #[validate(length(max = LONGEST_NAME))]
    pub(crate) language: Option<String>,
    /// `top of the rail` (taken if missing) or `working deck`.
    #[serde(rename = "freeboard from")]
    #[schemars(extend("x-words" = words(&FREEBOARD_FROM)))]
    pub(crate) freeboard_from: Option<String>,
    /// Cautions that stand wherever a technique is shown.
    #[schemars(extend("x-listed" = [0, MOST_ENTRIES]))]
    pub(crate) cautions: Option<Vec<Worded>>,
    /// The same in a line, for a short answer.
    #[serde(rename = "cautions in short")]
    pub(crate) cautions_in_short: Option<Worded>,
    /// What stands where nothing is open at all.
    #[serde(rename = "even so")]
    pub(crate) even_so: Option<Worded>,
    /// Notes for the reader.
    #[schemars(extend("x-listed" = [0, MOST_ENTRIES]))]
    pub(crate) notes: Option<Vec<Worded>>,
    /// What decides, in the order in which it is asked.
    #[validate(nested)]
    #[schemars(extend("x-needed" = true, "x-listed" = [1, MOST_ENTRIES]))]
    pub(crate) facts: Option<Vec<FactForm>>,
    /// What may happen to an animal or a hook, by id.
    #[schemars(extend("x-ids" = true, "x-filled" = true))]
    pub(crate) acts: Option<Open<Worded>>,
    /// What a technique can need of the kit.
    #[schemars(extend("x-entries" = asked(), "x-listed" = [0, MOST_ENTRIES]))]
    pub(crate) capabilities: Option<Vec<RequirementForm>>,
    /// Rails so low that the water is reached by hand.
    #[serde(rename = "low rails")]
    #[schemars(extend("x-listed" = [0, MOST_ENTRIES]))]
    pub(crate) low_rails: Option<Vec<LowRailForm>>,
    /// The techniques.
    #[validate(nested)]
    #[schemars(extend("x-listed" = [0, MOST_ENTRIES]))]
    pub(crate) techniques: Option<Vec<TechniqueForm>>,
    /// Situations with their choices, one of which answers any case.
    #[validate(nested)]
    #[schemars(extend("x-needed" = true, "x-listed" = [1, MOST_ENTRIES]))]
    pub(crate) situations: Option<Vec<SituationForm>>,
    /// What goes along with whatever situation fits.
    #[serde(rename = "goes along")]
    #[schemars(extend("x-listed" = [0, MOST_ENTRIES]))]
    pub(crate) goes_along: Option<Vec<SituationForm>>,
    /// What is never done.
    #[validate(nested)]
    #[schemars(extend("x-listed" = [0, MOST_ENTRIES]))]
    pub(crate) nevers: Option<Vec<NeverForm>>,
    /// Cards of their own.
    #[validate(nested)]
    #[schemars(extend("x-listed" = [0, MOST_ENTRIES]))]
    pub(crate) cards: Option<Vec<CardForm>>,
}

/// One fact that decides.
#[derive(Debug, Clone, Default, Deserialize, JsonSchema, Validate)]
#[serde(deny_unknown_fields, default)]
#[schemars(rename = "Fact")]
pub(crate) struct FactForm {
    /// Its id.
    #[validate(length(max = LONGEST_NAME))]
    #[schemars(extend("x-needed" = true, "x-id" = true))]
    pub(crate) id: Option<String>,
    /// What is asked.
    #[schemars(extend("x-needed" = true))]
    pub(crate) asks: Option<Worded>,
    /// The word that is taken where a case does not say.
    #[serde(rename = "unless said")]
    pub(crate) unless_said: Option<String>,
    /// The answers, two or more.
    #[validate(nested)]
    #[schemars(extend("x-needed" = true, "x-listed" = [1, MOST_ENTRIES]))]
    pub(crate) words: Option<Vec<FactWordForm>>,
}

/// One answer to a fact.
#[derive(Debug, Clone, Default, Deserialize, JsonSchema, Validate)]
#[serde(deny_unknown_fields, default)]
#[schemars(rename = "Word")]
pub(crate) struct FactWordForm {
    /// The word, unique in the file.
    #[validate(length(max = LONGEST_NAME))]
    #[schemars(extend("x-needed" = true, "x-id" = true))]
    pub(crate) word: Option<String>,
    /// How it is said in a sentence.
    #[schemars(extend("x-needed" = true))]
    pub(crate) says: Option<Worded>,
    /// Other words for it.
    #[schemars(extend("x-listed" = [0, MOST_ENTRIES]))]
    pub(crate) also: Option<Texts>,
    /// The source and clause, if it has one.
    #[validate(length(max = LONGEST_NAME))]
    pub(crate) clause: Option<String>,
    /// `read`, `excerpt`, `inferred`, `memory` or `common practice`.
    #[schemars(extend("x-words" = words(&VERIFIED)))]
    pub(crate) verified: Option<String>,
    /// The hook type of the vocabulary that it speaks of.
    #[serde(rename = "hook type")]
    pub(crate) hook_type: Option<String>,
    /// `yes` if it never holds where a case leaves the fact open.
    #[serde(rename = "only if said")]
    #[schemars(extend("x-words" = flags()))]
    pub(crate) only_if_said: Option<String>,
}

/// A rail so low that the water is reached by hand.
#[derive(Debug, Clone, Default, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
#[schemars(rename = "LowRail")]
pub(crate) struct LowRailForm {
    /// Its id, unique among the capabilities.
    #[schemars(extend("x-needed" = true, "x-id" = true))]
    pub(crate) id: Option<String>,
    /// What it is called.
    #[schemars(extend("x-needed" = true))]
    pub(crate) title: Option<Worded>,
    /// The greatest freeboard, like `at most 2 ft`.
    #[schemars(extend("x-needed" = true))]
    pub(crate) freeboard: Option<String>,
    /// The source and clause.
    pub(crate) clause: Option<String>,
    /// `read`, `excerpt`, `inferred`, `memory` or `common practice`.
    #[schemars(extend("x-needed" = true, "x-words" = words(&VERIFIED)))]
    pub(crate) verified: Option<String>,
    /// A note for the reader.
    pub(crate) note: Option<Worded>,
}

/// A line with its own clause.
#[derive(Debug, Clone, Default, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
#[schemars(rename = "Line")]
pub(crate) struct LineForm {
    /// What to do.
    #[schemars(extend("x-needed" = true))]
    pub(crate) says: Option<Worded>,
    /// The source and clause.
    pub(crate) clause: Option<String>,
    /// `read`, `excerpt`, `inferred`, `memory` or `common practice`.
    #[schemars(extend("x-words" = words(&VERIFIED)))]
    pub(crate) verified: Option<String>,
}

/// One technique.
#[derive(Debug, Clone, Default, Deserialize, JsonSchema, Validate)]
#[serde(deny_unknown_fields, default)]
#[schemars(rename = "Technique")]
pub(crate) struct TechniqueForm {
    /// Its id.
    #[validate(length(max = LONGEST_NAME))]
    #[schemars(extend("x-needed" = true, "x-id" = true))]
    pub(crate) id: Option<String>,
    /// What it is called.
    #[schemars(extend("x-needed" = true))]
    pub(crate) title: Option<Worded>,
    /// The source and clause.
    #[validate(length(max = LONGEST_NAME))]
    pub(crate) clause: Option<String>,
    /// `read`, `excerpt`, `inferred`, `memory` or `common practice`.
    #[schemars(extend("x-needed" = true, "x-words" = words(&VERIFIED)))]
    pub(crate) verified: Option<String>,
    /// The capabilities that it needs.
    #[schemars(extend("x-listed" = [0, MOST_ENTRIES]))]
    pub(crate) needs: Option<Texts>,
    /// The acts that it consists of.
    #[schemars(extend("x-listed" = [0, MOST_ENTRIES]))]
    pub(crate) acts: Option<Texts>,
    /// Where it is never used.
    #[serde(rename = "never with")]
    #[schemars(extend("x-listed" = [0, MOST_ENTRIES]))]
    pub(crate) never_with: Option<Vec<PatternForm>>,
    /// The steps, each a short line.
    #[schemars(extend("x-needed" = true, "x-listed" = [1, MOST_ENTRIES]))]
    pub(crate) steps: Option<Vec<LineText>>,
    /// When to stop.
    #[schemars(extend("x-listed" = [0, MOST_ENTRIES]))]
    pub(crate) stop: Option<Vec<Worded>>,
    /// Cautions of its own.
    #[schemars(extend("x-listed" = [0, MOST_ENTRIES]))]
    pub(crate) cautions: Option<Vec<LineText>>,
    /// `yes` if it ends in the line cut, or the animal cut free.
    #[serde(rename = "cuts line")]
    #[schemars(extend("x-words" = flags()))]
    pub(crate) cuts_line: Option<String>,
    /// The name of a drawing that shows it.
    #[validate(length(max = LONGEST_NAME))]
    #[schemars(extend("x-id" = true))]
    pub(crate) drawing: Option<String>,
}

/// One situation and its choices.
#[derive(Debug, Clone, Default, Deserialize, JsonSchema, Validate)]
#[serde(deny_unknown_fields, default)]
#[schemars(rename = "Situation")]
pub(crate) struct SituationForm {
    /// Its id.
    #[validate(length(max = LONGEST_NAME))]
    #[schemars(extend("x-needed" = true, "x-id" = true))]
    pub(crate) id: Option<String>,
    /// What it is, in words.
    #[schemars(extend("x-needed" = true))]
    pub(crate) title: Option<Worded>,
    /// Which cases it is.
    #[schemars(extend("x-needed" = true))]
    pub(crate) when: Option<PatternForm>,
    /// Situations that fit some of the same cases and give way to this one.
    #[serde(rename = "goes before")]
    #[schemars(extend("x-listed" = [0, MOST_ENTRIES]))]
    pub(crate) goes_before: Option<Texts>,
    /// What was decided where two rows of practice overlap, and why.
    pub(crate) reading: Option<Worded>,
    /// From the best to the last, like `dipnet, then cut-free-on-deck`.
    #[schemars(extend("x-needed" = true, "x-listed" = [1, MOST_ENTRIES]))]
    pub(crate) choices: Option<Texts>,
}

/// Something that is never done.
#[derive(Debug, Clone, Default, Deserialize, JsonSchema, Validate)]
#[serde(deny_unknown_fields, default)]
#[schemars(rename = "Never")]
pub(crate) struct NeverForm {
    /// In words.
    #[schemars(extend("x-needed" = true))]
    pub(crate) says: Option<Worded>,
    /// In which cases; `{}` for all of them.
    #[schemars(extend("x-needed" = true))]
    pub(crate) when: Option<PatternForm>,
    /// The acts that it forbids there.
    #[schemars(extend("x-listed" = [0, MOST_ENTRIES]))]
    pub(crate) acts: Option<Texts>,
    /// The source and clause.
    #[validate(length(max = LONGEST_NAME))]
    pub(crate) clause: Option<String>,
    /// `read`, `excerpt`, `inferred`, `memory` or `common practice`.
    #[schemars(extend("x-needed" = true, "x-words" = words(&VERIFIED)))]
    pub(crate) verified: Option<String>,
}

/// A card of its own.
#[derive(Debug, Clone, Default, Deserialize, JsonSchema, Validate)]
#[serde(deny_unknown_fields, default)]
#[schemars(rename = "Card")]
pub(crate) struct CardForm {
    /// Its id.
    #[validate(length(max = LONGEST_NAME))]
    #[schemars(extend("x-needed" = true, "x-id" = true))]
    pub(crate) id: Option<String>,
    /// What it is called.
    #[schemars(extend("x-needed" = true))]
    pub(crate) title: Option<Worded>,
    /// The source and clause.
    #[validate(length(max = LONGEST_NAME))]
    pub(crate) clause: Option<String>,
    /// `read`, `excerpt`, `inferred`, `memory` or `common practice`.
    #[schemars(extend("x-needed" = true, "x-words" = words(&VERIFIED)))]
    pub(crate) verified: Option<String>,
    /// The steps.
    #[schemars(extend("x-needed" = true, "x-listed" = [1, MOST_ENTRIES]))]
    pub(crate) steps: Option<Vec<LineText>>,
    /// What is never done with it.
    #[schemars(extend("x-listed" = [0, MOST_ENTRIES]))]
    pub(crate) nevers: Option<Vec<LineText>>,
    /// Cautions of its own.
    #[schemars(extend("x-listed" = [0, MOST_ENTRIES]))]
    pub(crate) cautions: Option<Vec<LineText>>,
    /// The name of a drawing that shows it.
    #[validate(length(max = LONGEST_NAME))]
    #[schemars(extend("x-id" = true))]
    pub(crate) drawing: Option<String>,
}

impl WrittenFile for TechniquesFile {
    const KIND: FileKind = FileKind::Techniques;

    fn format(&self) -> &Option<String> {
        &self.format
    }
}
