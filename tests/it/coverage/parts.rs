//! What of a requirement can be pinned by a test: every figure, every yes or
//! no, every word, every condition, how many, of how many types, by whose tool
//! it may be met. Read from the loaded profiles; nothing is decided here.

use kitmuster::measure::{Interval, Length, Percent};
use kitmuster::model::profile::{FreeboardFrom, Profile, Requirement};
use kitmuster::model::rule::{
    Base, Bound, Condition, Holders, Limit, Need, Side, Spec, Test, ToolType,
};
use kitmuster::model::vocabulary::Vocabulary;

/// What speaks for the edition as a whole, beside its requirements: whom it
/// binds and on which days.
pub(super) const EDITION: &str = "edition";

/// How the rows of lengths name a part, beside its words.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Size {
    /// It is no length.
    None,
    /// A figure, in nanometres.
    Fixed(i64),
    /// So much of the vessel's freeboard.
    OfFreeboard(Percent),
    /// So much of the heaviest hook aboard.
    OfHook(Percent),
    /// About, from and to, within a margin; in nanometres.
    About(i64, i64, i64),
}

/// One thing that a requirement asks.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Part {
    /// The clause that asks it.
    pub(super) clause: String,
    /// In words, as the lines `Pins:` name it.
    pub(super) says: String,
    /// Of which kind of tool and which attribute; empty where it is neither.
    pub(super) of: (String, String),
    pub(super) size: Size,
    /// A figure of the rule.
    pub(super) figure: bool,
    /// Whether an edition that shares the text may be spoken for by another.
    pub(super) shared: bool,
}

impl Part {
    fn own(clause: &str, says: String) -> Self {
        let (clause, of) = (clause.to_owned(), (String::new(), String::new()));
        Self { clause, says, of, size: Size::None, figure: false, shared: false }
    }

    /// The same of a text that editions take over from each other.
    fn taken_over(clause: &str, says: String) -> Self {
        Self { shared: true, ..Self::own(clause, says) }
    }
}

/// What speaks for the edition as a whole.
pub(super) fn of_edition(profile: &Profile) -> Vec<Part> {
    let mut says = Vec::new();
    says.extend(profile.in_force.from.map(|day| format!("in force from {day}")));
    says.extend(profile.in_force.until.map(|day| format!("in force until {day}")));
    says.extend(profile.binds.permits.iter().map(|permit| format!("permit {permit}")));
    says.extend(profile.binds.gears.iter().map(|gear| format!("gear {gear}")));
    says.extend(profile.binds.areas.iter().map(|area| format!("area {area}")));
    says.extend(profile.binds.when.iter().flat_map(condition));
    if profile.encoded {
        says.push(match profile.freeboard_from {
            FreeboardFrom::Rail => "freeboard from the top of the rail".to_owned(),
            FreeboardFrom::Deck => "freeboard from the working deck".to_owned(),
        });
    }
    let due: Option<Interval> = profile.requirements.iter().find_map(|one| one.inspection);
    says.extend(due.map(|due| format!("inspection due every {due}")));
    says.into_iter().map(|says| Part::own("", says)).collect()
}

/// Everything that one requirement of the profile asks and that can decide.
pub(super) fn of_requirement(
    vocabulary: &Vocabulary,
    profile: &Profile,
    requirement: &Requirement,
) -> Vec<Part> {
    let mut parts = whole(vocabulary, profile, requirement);
    parts.retain(|part| !never_governs(vocabulary, requirement, part));
    parts
}

/// Everything that one requirement of the profile asks.
pub(super) fn whole(
    vocabulary: &Vocabulary,
    profile: &Profile,
    requirement: &Requirement,
) -> Vec<Part> {
    let clause = requirement.clause.as_str();
    let own = |says: String| Part::own(clause, says);
    let taken_over = |says: String| Part::taken_over(clause, says);
    let mut parts = vec![own("asked for".into())];
    parts.extend(requirement.span.from.map(|day| own(format!("from {day}"))));
    parts.extend(requirement.span.until.map(|day| own(format!("until {day}"))));
    let conditions = requirement.when.iter().chain(requirement.unless.iter().flatten());
    parts.extend(conditions.flat_map(condition).map(own));
    let id = |index: usize| &profile.requirements[index].id;
    for deemed in &requirement.deemed {
        let other = id(deemed.requirement);
        parts.push(taken_over(format!("met by the tool of {other}")));
        asked(vocabulary, clause, &format!("tool of {other}"), &deemed.tests, &mut parts);
    }
    let shares = requirement.shares.iter();
    parts.extend(shares.map(|&of| taken_over(format!("shares the tool of {}", id(of)))));
    match &requirement.need {
        Need::Tools { least, types, spare_for } => {
            parts.extend(spare_for.map(|of| taken_over(format!("spare for {}", id(of)))));
            if types.len() > 1 {
                parts.push(taken_over(format!("{least} different types")));
            }
            let several = requirement.kinds().len() > 1;
            for of_type in types {
                let clause = of_type.clause.as_deref().unwrap_or(clause);
                of_a_type(vocabulary, clause, of_type, several, &mut parts);
            }
        }
        Need::Certificates { holders, valid, .. } => {
            parts.push(own(match holders {
                Holders::EachRole(roles) => format!("held by {}", roles.join(" and ")),
                Holders::People(number) => format!("held by {number} people"),
            }));
            parts.extend(valid.map(|valid| own(format!("valid {valid}"))));
        }
        Need::Gear { choices, .. } => {
            choices.iter().for_each(|spec| of_spec(vocabulary, clause, spec, false, &mut parts));
        }
    }
    once(parts)
}

fn once(parts: Vec<Part>) -> Vec<Part> {
    let mut kept: Vec<Part> = Vec::new();
    for part in parts {
        if !kept.contains(&part) {
            kept.push(part);
        }
    }
    kept
}

fn of_a_type(
    vocabulary: &Vocabulary,
    clause: &str,
    of_type: &ToolType,
    several: bool,
    into: &mut Vec<Part>,
) {
    let pieces: u32 = of_type.members.iter().map(|member| member.count).sum();
    for member in &of_type.members {
        if pieces > 1 {
            let kind = &vocabulary.kind(member.choices[0].kind).id;
            into.push(Part::taken_over(clause, format!("{pieces} {kind}")));
        }
        member.choices.iter().for_each(|spec| of_spec(vocabulary, clause, spec, several, into));
    }
}

fn of_spec(
    vocabulary: &Vocabulary,
    clause: &str,
    spec: &Spec,
    several: bool,
    into: &mut Vec<Part>,
) {
    let kind = &vocabulary.kind(spec.kind).id;
    let clause = spec.clause.as_deref().unwrap_or(clause);
    if several {
        into.push(Part::taken_over(clause, format!("{kind} serves")));
    }
    let conditions = spec.when.iter().flat_map(condition);
    into.extend(conditions.map(|of| Part::own(clause, format!("{kind} {of}"))));
    asked(vocabulary, clause, kind, &spec.tests, into);
}

fn asked(vocabulary: &Vocabulary, clause: &str, kind: &str, tests: &[Test], into: &mut Vec<Part>) {
    let name = |id| vocabulary.attribute(id).id.clone();
    let part = |attribute: String, says: String, size: Size, figure: bool| {
        let says = format!("{kind} {attribute} {says}");
        let of = (kind.to_owned(), attribute);
        Part { clause: clause.to_owned(), says, of, size, figure, shared: true }
    };
    for test in tests {
        match test {
            Test::Limit { attribute, limit, .. } => {
                for (says, size) in sizes(limit) {
                    into.push(part(name(*attribute), says, size, true));
                }
            }
            Test::Feature { attribute, wanted } => {
                let says = if *wanted { "yes" } else { "no" };
                into.push(part(name(*attribute), says.into(), Size::None, false));
            }
            Test::Choice { attribute, allowed } => {
                let words = allowed.join(" or ").to_lowercase();
                into.push(part(name(*attribute), words, Size::None, false));
            }
            Test::AcquiredBefore(day) => {
                into.push(part("acquired".into(), format!("before {day}"), Size::None, true));
            }
            Test::AnyOf(groups) | Test::Readings(groups) => {
                groups.iter().for_each(|group| asked(vocabulary, clause, kind, group, into));
            }
        }
    }
}

/// The figures of a limit.
fn sizes(limit: &Limit) -> Vec<(String, Size)> {
    let mut sizes = Vec::new();
    match limit {
        Limit::Any => {}
        Limit::AtLeast(bound)
        | Limit::MoreThan(bound)
        | Limit::AtMost(bound)
        | Limit::LessThan(bound) => of_bound(bound, &mut sizes),
        Limit::Within(low, high) => {
            of_bound(low, &mut sizes);
            of_bound(high, &mut sizes);
        }
        Limit::About { low, high, margin } => {
            let [a, b, c] =
                [low, high, margin].map(|figure| figure.length().map_or(0, Length::nanometres));
            let says =
                format!("about {} to {} within {}", low.written, high.written, margin.written);
            sizes.push((says, Size::About(a, b, c)));
        }
    }
    sizes
}

fn of_bound(bound: &Bound, into: &mut Vec<(String, Size)>) {
    match bound {
        Bound::Fixed { figure, .. } => {
            let size =
                figure.length().map_or(Size::None, |length| Size::Fixed(length.nanometres()));
            into.push((figure.written.clone(), size));
        }
        Bound::Share(share, Base::Freeboard) => {
            into.push((format!("{share} of freeboard"), Size::OfFreeboard(*share)));
        }
        Bound::Share(share, Base::HeaviestHook) => {
            into.push((format!("{share} of the heaviest hook aboard"), Size::OfHook(*share)));
        }
        Bound::Share(share, Base::ThickestLine | Base::ThickestLeader) => {
            into.push((format!("{share} of the thickest line aboard"), Size::None));
        }
        Bound::Greater(bounds) | Bound::Lesser(bounds) => {
            bounds.iter().for_each(|bound| of_bound(bound, into));
        }
    }
}

/// Whether a part is the fixed limb of `the greater of 150% of freeboard and
/// 6 ft` that can never be the greater, since the requirement begins above a
/// freeboard of which the share is as much: above 4 ft, 150 % is over 6 ft.
fn never_governs(vocabulary: &Vocabulary, requirement: &Requirement, part: &Part) -> bool {
    let Size::Fixed(figure) = part.size else { return false };
    let above = requirement.when.iter().find_map(|condition| match condition {
        Condition::Freeboard { side: Side::MoreThan, threshold, .. } => Some(*threshold),
        _ => None,
    });
    let (Some(above), Need::Tools { types, .. }) = (above, &requirement.need) else { return false };
    let specs = types.iter().flat_map(|t| &t.members).flat_map(|m| &m.choices);
    let specs = specs.filter(|spec| vocabulary.kind(spec.kind).id == part.of.0);
    specs.flat_map(|spec| &spec.tests).any(|test| {
        let Test::Limit { attribute, limit: Limit::AtLeast(Bound::Greater(bounds)), .. } = test
        else {
            return false;
        };
        let mut limbs = Vec::new();
        bounds.iter().for_each(|bound| of_bound(bound, &mut limbs));
        let [(_, Size::OfFreeboard(share)), (_, Size::Fixed(fixed))] = limbs[..] else {
            return false;
        };
        let same = vocabulary.attribute(*attribute).id == part.of.1 && fixed == figure;
        same && above.percent_down(share).nanometres() >= figure
    })
}

fn condition(condition: &Condition) -> Vec<String> {
    let yes = |has: bool| if has { "yes" } else { "no" };
    match condition {
        Condition::Freeboard { side, written, .. } => {
            let side = match side {
                Side::AtMost => "at most",
                Side::MoreThan => "more than",
                Side::LessThan => "less than",
                Side::AtLeast => "at least",
            };
            vec![format!("when freeboard {side} {written}")]
        }
        Condition::Feature { feature, wanted } => vec![format!("when {feature} {}", yes(*wanted))],
        Condition::Aboard { kind, wanted } => {
            vec![format!("when {kind:?} aboard {}", yes(*wanted))]
        }
        Condition::Gear(gear) => vec![format!("when gear {gear}")],
        Condition::Area(area) => vec![format!("when area {area}")],
        Condition::AreaOtherThan(area) => vec![format!("when area other than {area}")],
        Condition::Permit(permit) => vec![format!("when permit {permit}")],
        Condition::Months(from, until) => vec![format!("when months {from} to {until}")],
        Condition::AnyOf(groups) => groups.iter().flatten().flat_map(self::condition).collect(),
    }
}
