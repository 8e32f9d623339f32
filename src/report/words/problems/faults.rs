//! Which message says what is wrong with a file.
//!
//! Imports `load` for what can be wrong. Opens no file.

use super::{
    Wording, amount, any, called, figure, of_own, part_names, ticked, wrong_class, wrong_form,
};
use crate::load::{Fault, Problem};
use crate::model::text::visible;
use crate::report::words::locale::{desk, problems as said};
use std::fmt::Display;

impl Problem {
    /// All that is said of it.
    pub fn wording(&self) -> Wording {
        let Wording { what, mut expected, mut mend } = wording(&self.fault);
        if !self.known.is_empty() {
            expected = Some(any(&self.known));
        }
        if let Some(word) = &self.meant {
            mend = Some(desk::did_you_mean(word));
        }
        Wording { what, expected, mend }
    }
}

impl Display for Problem {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "{}", visible(&self.place.file))?;
        if let Some(position) = self.position {
            write!(f, ":{}:{}", position.line, position.column)?;
        }
        f.write_str(": ")?;
        if !self.place.key.is_empty() {
            write!(f, "{}: ", visible(&self.place.key))?;
        }
        if let Some(offending) = &self.offending {
            write!(f, "`{offending}`: ")?;
        }
        // Each of them may repeat a piece of the file.
        let Wording { what, expected, mend } = self.wording();
        f.write_str(&visible(&what))?;
        if let Some(expected) = expected {
            write!(f, "; {}", desk::problem_expected(&visible(&expected)))?;
        }
        if let Some(mend) = mend {
            write!(f, "; {}", visible(&mend))?;
        }
        Ok(())
    }
}

/// All that is said of a fault.
pub(super) fn wording(fault: &Fault) -> Wording {
    match fault {
        Fault::NoSuchFile => said::no_such_file(),
        Fault::MayNotBeRead => said::may_not_be_read(),
        Fault::PathThroughFile => said::path_through_file(),
        Fault::LinkToItself => said::link_to_itself(),
        Fault::CannotBeRead => said::cannot_be_read(),
        Fault::IsFolder => said::is_folder(),
        Fault::NoRegularFile => said::no_regular_file(),
        Fault::TooLarge(most) => said::too_large(most),
        Fault::LongTooLarge(most) => said::long_too_large(most),
        Fault::NoJson => said::no_json(),
        Fault::NoUtf8 => said::no_utf8(),
        Fault::LongNoUtf8 => said::long_no_utf8(),
        Fault::OtherEncoding(encoding) => said::other_encoding(encoding),
        Fault::NulCharacter => said::nul_character(),
        Fault::Empty => said::empty(),
        Fault::TooManyDirectives(most) => said::too_many_directives(most),
        Fault::Tab => said::tab(),
        Fault::QuoteOpen => said::quote_open(),
        Fault::QuoteOpenBefore => said::quote_open_before(),
        Fault::AfterQuote => said::after_quote(),
        Fault::Escape => said::escape(),
        Fault::EscapeIncomplete => said::escape_incomplete(),
        Fault::EscapeNoCharacter => said::escape_no_character(),
        Fault::QuoteIndent => said::quote_indent(),
        Fault::ListOpen => said::list_open(),
        Fault::GroupOpen => said::group_open(),
        Fault::BracketOpenBefore => said::bracket_open_before(),
        Fault::BracketOpen => said::bracket_open(),
        Fault::KeyInList => said::key_in_list(),
        Fault::BracketNeverOpened => said::bracket_never_opened(),
        Fault::BracketsTooDeep => said::brackets_too_deep(),
        Fault::StrayColon => said::stray_colon(),
        Fault::StrayEntry => said::stray_entry(),
        Fault::EntryIndent => said::entry_indent(),
        Fault::KeyIndent => said::key_indent(),
        Fault::Indent => said::indent(),
        Fault::NoColon => said::no_colon(),
        Fault::UnknownAnchor => said::unknown_anchor(),
        Fault::Unprintable => said::unprintable(),
        Fault::StraySign => said::stray_sign(),
        Fault::NoYaml => said::no_yaml(),
        Fault::UnknownYaml => said::unknown_yaml(),
        Fault::NothingWritten => said::nothing_written(),
        Fault::SecondDocument => said::second_document(),
        Fault::TooManyValues(most) => said::too_many_values(most),
        Fault::AliasesTooLong(most) => said::aliases_too_long(most),
        Fault::TooDeep(most) => said::too_deep(most),
        Fault::KeyNoText => said::key_no_text(),
        Fault::AliasOfNothing => said::alias_of_nothing(),
        Fault::AliasInside => said::alias_inside(),
        Fault::Unreadable(kind) => said::unreadable(&called(*kind)),
        Fault::OtherThanKind(kind) => said::other_than_kind(&called(*kind), &kind.format()),
        Fault::NoFormat(kind) => said::no_format(&kind.format()),
        Fault::OtherKind { is, wanted } => said::other_kind(&called(*is), &called(*wanted)),
        Fault::UnknownFormat(kind) => said::unknown_format(&kind.format()),
        Fault::TextTooLong(most) => said::text_too_long(most),
        Fault::Tagged => said::tagged(),
        Fault::ListTooLong { entries, most } => said::list_too_long(entries, most),
        Fault::GroupTooLong { lines, most } => said::group_too_long(lines, most),
        Fault::Steers => said::steers(),
        Fault::Doubled { first } => said::doubled(first),
        Fault::UnknownKey => said::unknown_key(),
        Fault::WrongForm { is, wanted, like } => wrong_form(*is, wanted, like.as_deref()),
        Fault::MoreProblems(told) => said::more_problems(told),
        Fault::ProgramFailed => said::program_failed(),
        Fault::LinkIntoItself => said::link_into_itself(),
        Fault::EntryMayNotBeRead => said::entry_may_not_be_read(),
        Fault::NothingThere => said::nothing_there(),
        Fault::EntryCannotBeRead => said::entry_cannot_be_read(),
        Fault::NoVocabulary => said::no_vocabulary(),
        Fault::NoSuchProfile => said::no_such_profile(),
        Fault::ProfileTwin(other) => said::profile_twin(other),
        Fault::EditionsOverlap(other) => said::editions_overlap(other),
        Fault::NoSuchFolder => said::no_such_folder(),
        Fault::NoFolder => said::no_folder(),
        Fault::FolderCannotBeRead => said::folder_cannot_be_read(),
        Fault::TooManyProfiles(most) => said::too_many_profiles(most),
        Fault::UnknownBase => said::unknown_base(),
        Fault::BasesInCircle => said::bases_in_circle(),
        Fault::NoChangedId => said::no_changed_id(),
        Fault::NothingToTakeOver => said::nothing_to_take_over(),
        Fault::ChangeMoves => said::change_moves(),
        Fault::NothingToDrop => said::nothing_to_drop(),
        Fault::RecordOfAnother { vessel, file } => said::record_of_another(vessel, file),
        Fault::NoDay => said::no_day(),
        Fault::NoSuchDay => said::no_such_day(),
        Fault::SpanReversed(first) => said::span_reversed(first),
        Fault::ReturnBeforeDeparture(departure) => said::return_before_departure(departure),
        Fault::ExpiresBeforeIssue(issue) => said::expires_before_issue(issue),
        Fault::NoInterval => said::no_interval(),
        Fault::NoFlag => said::no_flag(),
        Fault::UnknownWord => said::unknown_word(),
        Fault::OutOfRange { least, most } => said::out_of_range(least, most),
        Fault::NoWholeNumber { least, most } => said::no_whole_number(least, most),
        Fault::NoFigure { error, kind, meant } => figure(error, *kind, meant),
        Fault::MayBeSeveral => said::may_be_several(),
        Fault::MayBeOne => said::may_be_one(),
        Fault::UnknownKind => said::unknown_kind(),
        Fault::WrongClass { is, wanted } => wrong_class(*is, wanted),
        Fault::LeadOutOfRange(most) => said::lead_out_of_range(most),
        Fault::NoLead(most) => said::no_lead(most),
        Fault::LeadWithoutUnit { number, most } => said::lead_without_unit(number, most),
        Fault::NoAmount { error, text, currency } => amount(error, text, *currency),
        Fault::EmptyTag => said::empty_tag(),
        Fault::TagSlip => said::tag_slip(),
        Fault::BadId => said::bad_id(),
        Fault::NoGoverningText(language) => said::no_governing_text(language),
        Fault::NoLimit(openings) => said::no_limit(&any(openings)),
        Fault::LimitWithoutOpening { openings, text } => {
            said::limit_without_opening(&any(openings), text)
        }
        Fault::AfterBound(rest) => said::after_bound(rest),
        Fault::RangeReversed => said::range_reversed(),
        Fault::AboutReversed => said::about_reversed(),
        Fault::NoMargin => said::no_margin(),
        Fault::NoLink { link, shape } => said::no_link(link, shape),
        Fault::BoundTooDeep => said::bound_too_deep(),
        Fault::NoPercentage(error) => said::no_percentage(error),
        Fault::NoughtPercent => said::nought_percent(),
        Fault::PercentageOfElse(bases) => said::percentage_of_else(&any(bases)),
        Fault::BaseIsLength { base, example } => said::base_is_length(base, example),
        Fault::BracketNotClosed => said::bracket_not_closed(),
        Fault::NoLengthHere => said::no_length_here(),
        Fault::NoVesselName => said::no_vessel_name(),
        Fault::NoKit => said::no_kit(),
        Fault::TooManyTools { tools, most } => said::too_many_tools(tools, most),
        Fault::NoMark => said::no_mark(),
        Fault::MarkTwin(other) => said::mark_twin(other),
        Fault::UnknownMark => said::unknown_mark(),
        Fault::NoKind => said::no_kind(),
        Fault::NoChangeDay => said::no_change_day(),
        Fault::NoBorrower => said::no_borrower(),
        Fault::NoStatementClause => said::no_statement_clause(),
        Fault::NoStatementDay => said::no_statement_day(),
        Fault::NoChangeWord => said::no_change_word(),
        Fault::UnknownChange => said::unknown_change(),
        Fault::LostHere => said::lost_here(),
        Fault::FeatureTwice => said::feature_twice(),
        Fault::UnknownFeature => said::unknown_feature(),
        Fault::NoPersonName => said::no_person_name(),
        Fault::RoleSlip => said::role_slip(),
        Fault::NoCertificateKind => said::no_certificate_kind(),
        Fault::NoKindOfGear(kind) => said::no_kind_of_gear(kind),
        Fault::EmptyGear => said::empty_gear(),
        Fault::AttributeTwice => said::attribute_twice(),
        Fault::NoAttributeOfKind { kind, own } => {
            of_own(said::no_attribute_of_kind(kind, &any(own)), own)
        }
        Fault::UnknownKeyOrAttribute(own) => of_own(said::unknown_key_or_attribute(&any(own)), own),
        Fault::NoTapeError => said::no_tape_error(),
        Fault::UnknownChoice(attribute) => said::unknown_choice(attribute),
        Fault::ValueBesideStations => said::value_beside_stations(),
        Fault::EmptyStation => said::empty_station(),
        Fault::MixedFreeboards => said::mixed_freeboards(),
        Fault::OfWholeFreeboard(key) => said::of_whole_freeboard(key),
        Fault::FreeboardZero => said::freeboard_zero(),
        Fault::FreeboardReversed => said::freeboard_reversed(),
        Fault::NoRecordVessel => said::no_record_vessel(),
        Fault::NoRecordDay => said::no_record_day(),
        Fault::EmptyRow => said::empty_row(),
        Fault::TooManyFound { tools, most } => said::too_many_found(tools, most),
        Fault::FoundTwice(other) => said::found_twice(other),
        Fault::NoFoundMark => said::no_found_mark(),
        Fault::LostAndThere => said::lost_and_there(),
        Fault::MissingYetRead => said::missing_yet_read(),
        Fault::NoSupplier => said::no_supplier(),
        Fault::NoCurrency => said::no_currency(),
        Fault::UnknownCurrency => said::unknown_currency(),
        Fault::NoTax => said::no_tax(),
        Fault::TaxTooHigh => said::tax_too_high(),
        Fault::TaxNoPercentage => said::tax_no_percentage(),
        Fault::TaxWithoutSign(text) => said::tax_without_sign(text),
        Fault::TaxNoFigure(error) => said::tax_no_figure(error),
        Fault::NoDelivery => said::no_delivery(),
        Fault::NoCharge => said::no_charge(),
        Fault::NoItems => said::no_items(),
        Fault::TooManyItems { items, most } => said::too_many_items(items, most),
        Fault::NoNumber => said::no_number(),
        Fault::NoDescription => said::no_description(),
        Fault::NoPrice => said::no_price(),
        Fault::PriceOfNothing => said::price_of_nothing(),
        Fault::NoLeadTime => said::no_lead_time(),
        Fault::SoldWithMark => said::sold_with_mark(),
        Fault::SoldWithCondition => said::sold_with_condition(),
        Fault::SoldWithPlace => said::sold_with_place(),
        Fault::SoldWithDay => said::sold_with_day(),
        Fault::SoldWithExpiry => said::sold_with_expiry(),
        Fault::SoldWithChanges => said::sold_with_changes(),
        Fault::SoldWithRemark => said::sold_with_remark(),
        Fault::EmptySet(most) => said::empty_set(most),
        Fault::SetTooLarge { tools, most } => said::set_too_large(tools, most),
        Fault::CertificateSold => said::certificate_sold(),
        Fault::GearSold => said::gear_sold(),
        Fault::GivesTwo => said::gives_two(),
        Fault::GivesNothing => said::gives_nothing(),
        Fault::NumberTwin => said::number_twin(),
        Fault::NumberOfSetTool(set) => said::number_of_set_tool(set),
        Fault::NoFits => said::no_fits(),
        Fault::FitsWithoutSpares => said::fits_without_spares(),
        Fault::FitsNoTool => said::fits_no_tool(),
        Fault::FitsUnknown => said::fits_unknown(),
        Fault::NotLengthened => said::not_lengthened(),
        Fault::NoAddedLength => said::no_added_length(),
        Fault::LengthOfNothing => said::length_of_nothing(),
        Fault::NoService => said::no_service(),
        Fault::NoKinds => said::no_kinds(),
        Fault::NoSource => said::no_source(),
        Fault::NoProfileId => said::no_profile_id(),
        Fault::NoRule => said::no_rule(),
        Fault::NoEdition => said::no_edition(),
        Fault::NoRuleTitle => said::no_rule_title(),
        Fault::TooManyRequirements { requirements, most } => {
            said::too_many_requirements(requirements, most)
        }
        Fault::RequirementTwin => said::requirement_twin(),
        Fault::MetOtherwise => said::met_otherwise(),
        Fault::NoSingleTool(other) => said::no_single_tool(other),
        Fault::MetInTurn(other) => said::met_in_turn(other),
        Fault::NothingToShare(other) => said::nothing_to_share(other),
        Fault::WantsNoTool(other) => said::wants_no_tool(other),
        Fault::NoRequirements => said::no_requirements(),
        Fault::RequirementsNotEncoded => said::requirements_not_encoded(),
        Fault::StubBindsNobody => said::stub_binds_nobody(),
        Fault::BaseBindsNobody => said::base_binds_nobody(),
        Fault::UnknownTag => said::unknown_tag(),
        Fault::NoRequirementId => said::no_requirement_id(),
        Fault::NoRequirementTitle => said::no_requirement_title(),
        Fault::NoClause => said::no_clause(),
        Fault::NoVerified => said::no_verified(),
        Fault::EmptyGroup => said::empty_group(),
        Fault::UnknownRequirement => said::unknown_requirement(),
        Fault::NoDeemed => said::no_deemed(),
        Fault::NoGroups => said::no_groups(),
        Fault::NothingSaidOf(key) => said::nothing_said_of(key),
        Fault::NoMonths => said::no_months(),
        Fault::UnknownCondition => said::unknown_condition(),
        Fault::NoAcquisitionDay => said::no_acquisition_day(),
        Fault::NoAttributeOfKinds(kinds) => said::no_attribute_of_kinds(&any(kinds)),
        Fault::UnknownAttribute => said::unknown_attribute(),
        Fault::NoThreshold => said::no_threshold(),
        Fault::UnclearNeed => said::unclear_need(),
        Fault::KeysClash { key, beside } => said::keys_clash(key, beside),
        Fault::SparesForNothing => said::spares_for_nothing(),
        Fault::NoSpare => said::no_spare(),
        Fault::NoNumberOfTypes => said::no_number_of_types(),
        Fault::TooFewTypes(types) => said::too_few_types(types),
        Fault::NoTypeName => said::no_type_name(),
        Fault::EmptySetOf => said::empty_set_of(),
        Fault::KindBesideOneOf => said::kind_beside_one_of(),
        Fault::NoKindCarried => said::no_kind_carried(),
        Fault::NoAlternative => said::no_alternative(),
        Fault::NoAlternativeKind => said::no_alternative_kind(),
        Fault::NoTestsOfPiece => said::no_tests_of_piece(),
        Fault::NoTestsOfEvery => said::no_tests_of_every(),
        Fault::KindBesideEvery => said::kind_beside_every(),
        Fault::NoHolders => said::no_holders(),
        Fault::NoCarry => said::no_carry(),
        Fault::NoNumberCarried(text) => said::no_number_carried(text),
        Fault::NoRole => said::no_role(),
        Fault::BindsNever => said::binds_never(),
        Fault::WhenNever => said::when_never(),
        Fault::NeverAsked => said::never_asked(),
        Fault::UnlessAlways => said::unless_always(),
        Fault::UnlessNever => said::unless_never(),
        Fault::AlternativeNever => said::alternative_never(),
        Fault::FreeboardGap { limit, beside } => said::freeboard_gap(limit, beside),
        Fault::FreeboardOverlap { limit, beside } => said::freeboard_overlap(limit, beside),
        Fault::NotLengthenable => said::not_lengthenable(),
        Fault::NotInChoice => said::not_in_choice(),
        Fault::NoQuantity => said::no_quantity(),
        Fault::WordsWithoutChoice => said::words_without_choice(),
        Fault::NoChoiceWords => said::no_choice_words(),
        Fault::KindNameTwin(other) => said::kind_name_twin(other),
        Fault::UnknownWiderTag => said::unknown_wider_tag(),
        Fault::NoAttributeList => said::no_attribute_list(),
        Fault::TooManyEntries { entries, most } => said::too_many_entries(entries, most),
        Fault::NoPartId(key) => said::no_part_id(key),
        Fault::PartTwin(parts) => said::part_twin(&part_names(*parts)[1]),
        Fault::UnknownPart(part) => {
            let [one, _, any] = part_names(*part);
            said::unknown_part(&one, &any)
        }
        Fault::PartNamedTwice(part) => said::part_named_twice(&part_names(*part)[0]),
        Fault::NothingSaid => said::nothing_said(),
        Fault::NoSteps => said::no_steps(),
        Fault::NoLineText => said::no_line_text(),
        Fault::NoCitedClause => said::no_cited_clause(),
        Fault::NoPracticeSource => said::no_practice_source(),
        Fault::NoPartTitle => said::no_part_title(),
        Fault::NoActText(act) => said::no_act_text(act),
        Fault::NoNeverText => said::no_never_text(),
        Fault::NoNeverCases => said::no_never_cases(),
        Fault::CapabilityLevel(key) => said::capability_level(key),
        Fault::CapabilityFormerly(key) => said::capability_formerly(key),
        Fault::CapabilityByDay(key) => said::capability_by_day(key),
        Fault::CapabilityByVessel(key) => said::capability_by_vessel(key),
        Fault::CapabilityInspected(key) => said::capability_inspected(key),
        Fault::CapabilityOfSpares(key) => said::capability_of_spares(key),
        Fault::CapabilityWithoutTools(key) => said::capability_without_tools(key),
        Fault::CapabilityByOtherTool(key) => said::capability_by_other_tool(key),
        Fault::CapabilityPlaced(key) => said::capability_placed(key),
        Fault::NoLowRail => said::no_low_rail(),
        Fault::LowRailNoLimit { why, bare } => low_rail(why, bare.as_deref()),
        Fault::LowRailOtherLimit => said::low_rail_other_limit(),
        Fault::LowRailOfZero => said::low_rail_of_zero(),
        Fault::NoSituations => said::no_situations(),
        Fault::OrderOfAlong => said::order_of_along(),
        Fault::NoSituationTitle => said::no_situation_title(),
        Fault::NoSituationCases => said::no_situation_cases(),
        Fault::NoChoices => said::no_choices(),
        Fault::ChoiceTwice => said::choice_twice(),
        Fault::ChoiceBeginsThen => said::choice_begins_then(),
        Fault::ChoiceGap => said::choice_gap(),
        Fault::TechniqueTwice => said::technique_twice(),
        Fault::NoFacts => said::no_facts(),
        Fault::NoQuestion => said::no_question(),
        Fault::TooFewWords => said::too_few_words(),
        Fault::NoWordText => said::no_word_text(),
        Fault::CommaInWord => said::comma_in_word(),
        Fault::WordTwin(other) => said::word_twin(other),
        Fault::UnknownHookType => said::unknown_hook_type(),
        Fault::UnknownFactWord => said::unknown_fact_word(),
        Fault::WordTwice => said::word_twice(),
        Fault::NoWord => said::no_word(),
        Fault::TooManyChoices { choices, most } => said::too_many_choices(choices, most),
        Fault::TooManyCases { cases, most } => said::too_many_cases(cases, most),
        Fault::IdleTechnique => said::idle_technique(),
        Fault::IdleCapability => said::idle_capability(),
        Fault::NoLineCut => said::no_line_cut(),
        Fault::BeforeItself => said::before_itself(),
        Fault::NothingToDecide => said::nothing_to_decide(),
        Fault::NoOrder { one, other, case } => said::no_order(one, other, case),
        Fault::OrderInTurn { other, case } => said::order_in_turn(other, case),
        Fault::Unanswered { cases, first } => said::unanswered(*cases, first),
        Fault::OrderInCircle { situations, case } => {
            said::order_in_circle(&ticked(situations).join(", "), case)
        }
        Fault::ForbiddenAct { technique, act, case, says } => {
            said::forbidden_act(technique, act, case, says)
        }
        Fault::ForbiddenWith { technique, pattern, case } => {
            said::forbidden_with(technique, pattern, case)
        }
    }
}

fn low_rail(why: &Fault, bare: Option<&str>) -> Wording {
    let Wording { what, mend, .. } = wording(why);
    let mend = bare.map(|length| desk::low_rail_example(&length)).or(mend);
    Wording { what, mend, ..said::low_rail_other_limit() }
}
