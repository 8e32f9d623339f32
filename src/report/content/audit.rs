//! What is told of a fleet's audit: what it adds up to, then the vessels, the
//! worst of each told in one line a finding; on a page with room, vessel by
//! requirement and an account of each vessel too.
//!
//! Decides nothing: rows come ordered and counted.

use super::check::{self, Setting, named};
use super::{
    Block, Column, Document, Headline, Inline, Item, Lead, Line, Role, Row, Section, Table, Tone,
};
use super::{compare, freeing, more};
use crate::fleet::{After, HORIZONS, Judged, Missed};
use crate::load::Refusal;
use crate::measure::DaySpan;
use crate::model::check::Judgement;
use crate::model::finding::{Finding, Outcome, ReadyUntil, Verdict};
use crate::model::profile::{Level, Profile, Standing};
use crate::report::subject::Fleet;
use crate::report::words::pages::sentence;
use crate::report::words::{self, Words, fleet};
use crate::report::{Locale, Subject, problems};
use std::sync::Arc;

/// How much of an audit is told.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Extent {
    /// The most rows of a list that the JSON has whole.
    pub(crate) most: usize,
    /// The most vessels of such a list.
    pub(crate) most_vessels: usize,
    /// Up to so many vessels each has an account of its own; of a larger fleet
    /// those that are not ready. Where there are none, the open findings stand
    /// in the list of vessels.
    pub(crate) accounts: Option<usize>,
}

/// The audit with what is looked up in several parts of it.
struct Told<'a> {
    fleet: Fleet<'a>,
    extent: Extent,
    judged: Vec<&'a Judged>,
    refused: Vec<&'a Refusal>,
    /// Each edition that judged a vessel, once: rules first, by their ids.
    profiles: Vec<Arc<Profile>>,
}

/// The audit as a page.
pub(crate) fn document(of: &Fleet<'_>, extent: Extent) -> Document {
    let told = Told::new(of, extent);
    let mut overview = vec![told.headline()];
    let most = extent.most_vessels;
    overview.extend(of.against.map(|comparison| compare::against(of, comparison, most)));
    overview.extend(of.draft.map(|drafted| compare::draft(of, drafted, most)));
    overview.extend(told.not_read());
    overview.push(told.vessels());
    overview.extend(told.missed());
    overview.extend(told.lapses());
    overview.extend(told.marks());
    overview.extend(freeing::section(of, most));
    let (mut after, pages) = (Vec::new(), extent.accounts.is_some());
    if pages {
        overview.extend(told.editions());
        after.push(told.matrix());
        after.extend(told.accounts());
    }
    let part = |role, id: Option<&str>, body| {
        let id = id.map(str::to_owned);
        Block::Section(Section { role, id, verdict: None, heading: None, body })
    };
    let foot = [of.locale.caution(), of.locale.foot()].map(|text| Block::Paragraph(text.into()));
    let mut blocks = vec![part(Role::Overview, Some("overview"), overview)];
    blocks.extend(after);
    blocks.push(part(Role::Foot, None, foot.into()));
    Document { title: of.locale.audit_title(&of.audit.date), blocks }
}

/// A bullet of that tone.
fn bullet(tone: Tone, text: impl Into<Line>) -> Item {
    Item::new(Lead::Bullet(tone), text)
}

impl<'a> Told<'a> {
    fn new(of: &Fleet<'a>, extent: Extent) -> Self {
        let judged: Vec<_> = of.audit.judged().collect();
        let refused = of.audit.refused().collect();
        let mut profiles: Vec<Arc<Profile>> = Vec::new();
        for judgement in judged.iter().flat_map(|judged| &judged.check.judgements) {
            if !profiles.iter().any(|known| known.id == judgement.profile.id) {
                profiles.push(Arc::clone(&judgement.profile));
            }
        }
        let practice = |profile: &Profile| profile.standing == Standing::GoodPractice;
        profiles.sort_by(|a, b| (practice(a), &a.rule, &a.id).cmp(&(practice(b), &b.rule, &b.id)));
        Self { fleet: *of, extent, judged, refused, profiles }
    }

    fn headline(&self) -> Block {
        let (audit, say) = (self.fleet.audit, self.fleet.locale);
        let (counts, all) = (&audit.counts, audit.counts.vessels());
        let mut told = vec![(Tone::Plain, say.audit_on(&audit.date))];
        if counts.refused > 0 {
            told.push((Tone::Bad, say.audit_files_refused(counts.refused)));
        }
        if audit.outside > 0 {
            told.push((Tone::Plain, say.audit_outside(audit.outside)));
        }
        if self.judged.len() < all {
            told.push((Tone::Plain, say.audit_shown(&self.judged.len(), all)));
        }
        if let Some(most) = self.extent.accounts.filter(|most| self.judged.len() > *most) {
            told.push((Tone::Plain, say.audit_only_troubles(&most)));
        }
        let told = told.into_iter();
        let mut below: Vec<Block> =
            told.map(|(tone, text)| Block::Paragraph(Line::from(text).toned(tone))).collect();
        let doubts = audit.doubts.iter();
        below.extend(
            doubts.map(|doubt| Item::new(Lead::Note(Tone::Open), fleet::doubt(doubt, say)).into()),
        );
        below.extend(audit.left_out.iter().map(|left_out| {
            let text = format!("{}: {}", left_out.file, fleet::left_out(left_out, say));
            Item::new(Lead::Word(say.left_out().to_owned(), Tone::Open), text).into()
        }));
        Block::Headline(Headline {
            lead: Lead::Word(say.audit_aloud().to_owned(), audit.verdict().into()),
            beside: None,
            text: say.audit_counts(all, &fleet::counts(counts, say)).into(),
            more: None,
            below,
        })
    }

    fn not_read(&self) -> Option<Block> {
        let items: Vec<_> = match self.extent.accounts {
            None => self.refused.iter().filter_map(|refusal| problems::first(refusal)).collect(),
            Some(_) => self.refused.iter().flat_map(|refusal| problems::each(refusal)).collect(),
        };
        let heading = self.fleet.locale.audit_not_read(&self.refused.len());
        (!items.is_empty()).then(|| Section::block(Role::Part, heading, items))
    }

    fn vessels(&self) -> Block {
        let mut items: Vec<Block> = self
            .judged
            .iter()
            .enumerate()
            .map(|(index, judged)| self.vessel(index, judged))
            .collect();
        if items.is_empty() {
            items.push(Block::Paragraph(self.fleet.locale.audit_no_vessel().into()));
        }
        Section::block(Role::Part, self.fleet.locale.audit_vessels(), items)
    }

    /// The id of a vessel's account, if it has one.
    fn account_of(&self, index: usize) -> Option<String> {
        let most = self.extent.accounts?;
        let judged = self.judged.get(index)?;
        let has = self.judged.len() <= most || judged.check.verdict != Verdict::Ready;
        has.then(|| format!("vessel-{}", index + 1))
    }

    /// A text that leads to the account of a vessel, if it has one.
    fn link(&self, index: usize, text: String) -> Line {
        match self.account_of(index) {
            Some(to) => Inline::Link { to, text }.into(),
            None => text.into(),
        }
    }

    fn vessel(&self, index: usize, judged: &Judged) -> Block {
        let (check, say) = (&judged.check, self.fleet.locale);
        let plain = |text: String| Block::Paragraph(text.into());
        let days = DaySpan { from: Some(check.asked.departure), until: Some(check.asked.back) };
        let mut below = vec![plain(say.audit_trip(&words::span(days, say), &judged.file))];
        if check.standing() == Standing::GoodPractice {
            below.push(Block::Paragraph(Line::from(say.only_practice()).toned(Tone::Open)));
        }
        let records = judged.sources.iter().skip(1);
        let laid = say.fact_laid_over();
        below.extend(records.map(|record| plain(format!("{laid} {}", record.file))));
        let notices = check.notices.iter();
        below
            .extend(notices.map(|notice| {
                Item::new(Lead::Note(Tone::Open), words::notice(notice, say)).into()
            }));
        for judgement in &check.judgements {
            let words = self.words(judged, judgement);
            below.extend(profile(&words, judgement, check.judgements.len() > 1));
        }
        let name = self.link(index, named(&check.vessel)).toned(Tone::Strong);
        Item::new(Lead::Verdict(check.verdict), name).with(below).into()
    }

    fn words<'b>(&self, judged: &'b Judged, judgement: &'b Judgement) -> Words<'b>
    where
        'a: 'b,
    {
        Words {
            vocabulary: self.fleet.vocabulary,
            vessel: &judged.check.vessel,
            profile: &judgement.profile,
            findings: &judgement.findings,
            locale: self.fleet.locale,
        }
    }

    /// That one of the lists goes on.
    fn more(&self, all: usize) -> Option<Block> {
        more(all, self.extent.most, self.fleet.locale)
    }

    fn missed(&self) -> Option<Block> {
        let (missed, most) = (&self.fleet.audit.missed, self.extent.most);
        let items = missed.iter().take(most).filter_map(|missed| self.missed_one(missed));
        let items: Vec<Block> = items.chain(self.more(missed.len())).collect();
        let heading = self.fleet.locale.audit_missed();
        (!items.is_empty()).then(|| Section::block(Role::Part, heading, items))
    }

    fn missed_one(&self, missed: &Missed) -> Option<Block> {
        let requirement = missed.requirement()?;
        let title = format!("{} ({})", requirement.title, requirement.clause);
        let mut text = fleet::missed_on(missed, self.fleet.locale);
        if let Some(shortfalls) = fleet::shortfalls(missed, self.fleet.locale) {
            text.push_str(&format!("; {shortfalls}"));
        }
        text.push_str(&format!(" [{}]", missed.profile.id));
        let below = vec![Block::Paragraph(text.into())];
        Some(bullet(Tone::Bad, Line::strong(title)).with(below).into())
    }

    fn lapses(&self) -> Vec<Block> {
        let (mut sections, say) = (Vec::new(), self.fleet.locale);
        let mut after = 0;
        for days in HORIZONS {
            let within: Vec<_> =
                self.fleet.audit.lapses.iter().filter(|lapse| lapse.within == days).collect();
            let heading = match after {
                0 => say.audit_lapses(&days, &within.len()),
                _ => say.audit_lapses_after(&after, &days, &within.len()),
            };
            let items = within.iter().take(self.extent.most).map(|lapse| {
                let decides = lapse.after == After::Decides;
                let tone = if decides { Tone::Bad } else { Tone::Plain };
                let (what, then) = (fleet::lapse(lapse, say), fleet::after_lapse(lapse, say));
                bullet(tone, format!("{}: {what}; {then}", lapse.vessel)).into()
            });
            let items: Vec<_> = items.chain(self.more(within.len())).collect();
            if !items.is_empty() {
                sections.push(Section::block(Role::Part, heading, items));
            }
            after = days;
        }
        sections
    }

    fn marks(&self) -> Option<Block> {
        let (marks, say) = (&self.fleet.audit.marks, self.fleet.locale);
        let mut body = vec![Block::Paragraph(say.same_mark().into())];
        body.extend(marks.iter().take(self.extent.most).map(|mark| {
            let kind = &self.fleet.vocabulary.kind(mark.kind).name;
            let vessels = fleet::names(&mark.vessels, say);
            bullet(Tone::Open, format!("{} ({kind}): {vessels}", mark.mark)).into()
        }));
        body.extend(self.more(marks.len()));
        let heading = say.audit_marks(&marks.len());
        (!marks.is_empty()).then(|| Section::block(Role::Part, heading, body))
    }

    /// The vessels that a profile judged, by index, with what it said.
    fn judged_by(&self, profile: &Profile) -> impl Iterator<Item = (usize, &'a Judgement)> {
        let judged = self.judged.iter().enumerate();
        judged.filter_map(move |(index, judged)| {
            let mut judgements = judged.check.judgements.iter();
            judgements.find(|j| j.profile.id == profile.id).map(|j| (index, j))
        })
    }

    fn editions(&self) -> Option<Block> {
        let say = self.fleet.locale;
        let rows = self.profiles.iter().map(|profile| {
            let revision = match profile.encoded {
                true => profile.encoding.to_string(),
                false => say.audit_revision_not_encoded(&profile.encoding),
            };
            let named = match profile.standing {
                Standing::GoodPractice => {
                    say.audit_edition_of_practice(&profile.title, &profile.id)
                }
                Standing::Rule => say.audit_edition(&profile.title, &profile.id),
            };
            let vessels = self.judged_by(profile).count().to_string();
            let cells = [named, profile.edition.clone(), profile.source.clone(), revision, vessels];
            Row::new(None, cells.map(Line::from).into())
        });
        let heads = [
            say.audit_head_profile(),
            say.audit_head_edition(),
            say.audit_head_source(),
            say.audit_head_encoding(),
            say.audit_head_vessels(),
        ];
        let table = Table {
            role: Role::Part,
            caption: say.audit_editions().to_owned(),
            columns: heads.map(Column::new).into(),
            rows: rows.collect(),
            sums: Vec::new(),
        };
        let any = !self.profiles.is_empty();
        any.then(|| Section::block(Role::Part, say.audit_editions(), vec![Block::Table(table)]))
    }

    /// The fleet at a glance: vessel by requirement, one table for each
    /// edition.
    fn matrix(&self) -> Block {
        let mut body: Vec<Block> = self.profiles.iter().map(|of| self.edition(of)).collect();
        if body.is_empty() {
            body.push(Block::Paragraph(self.fleet.locale.audit_no_profile().into()));
        }
        Block::Section(Section {
            role: Role::Part,
            id: Some("fleet".to_owned()),
            verdict: None,
            heading: Some(self.fleet.locale.audit_matrix().into()),
            body,
        })
    }

    fn edition(&self, profile: &Profile) -> Block {
        let say = self.fleet.locale;
        let known = say.audit_edition_from(&profile.source, &profile.edition, &profile.id);
        let mut body = vec![Block::Paragraph(Line::from(known).toned(Tone::Soft))];
        if profile.encoded {
            for (number, part) in parts(profile).iter().enumerate() {
                body.push(self.table(profile, part, number));
            }
            let whole =
                |judgement: &Judgement| judgement.findings.len() == profile.requirements.len();
            if !self.judged_by(profile).all(|(_, judgement)| whole(judgement)) {
                let text = Line::from(format!("– {}.", say.not_asked()));
                body.push(Block::Paragraph(text.toned(Tone::Soft)));
            }
        } else {
            let text = sentence(say.check_not_encoded());
            body.push(Item::new(Lead::Outcome(Outcome::CannotTell), text).into());
            let names = self.judged_by(profile).map(|(index, _)| self.name(index));
            body.push(Block::Lines(names.collect()));
        }
        Section::block(Role::Edition, profile.title.to_string(), body)
    }

    /// The vessel's name, leading to its account if it has one.
    fn name(&self, index: usize) -> Line {
        self.link(index, self.judged[index].check.vessel.name.clone())
    }

    fn table(&self, profile: &Profile, part: &[usize], number: usize) -> Block {
        let say = self.fleet.locale;
        let heads = part.iter().filter_map(|index| profile.requirements.get(*index));
        let heads = heads.map(|requirement| match requirement.level {
            Level::Required => requirement.title.to_string(),
            Level::Recommended => say.audit_advice(&requirement.title),
        });
        let first = say.audit_head_vessel().to_owned();
        let columns = std::iter::once(first).chain(heads).map(Column::new);
        let rows = self.judged_by(profile).map(|(index, judgement)| {
            let cells = part.iter().map(|requirement| {
                let found = judgement.findings.iter().find(|f| f.requirement == *requirement);
                found.map_or_else(
                    || format!("– {}", say.not_asked_short()).into(),
                    |f| Inline::Outcome(f.outcome).into(),
                )
            });
            Row::new(None, std::iter::once(self.name(index)).chain(cells).collect())
        });
        Block::Table(Table {
            role: Role::Matrix,
            caption: say.audit_matrix_part(&profile.id, &(number + 1)),
            columns: columns.collect(),
            rows: rows.collect(),
            sums: Vec::new(),
        })
    }

    fn accounts(&self) -> Vec<Block> {
        let own = self.judged.iter().enumerate();
        let own = own.filter_map(|(index, judged)| Some((index, judged, self.account_of(index)?)));
        own.map(|(index, judged, id)| {
            let subject = Subject {
                check: &judged.check,
                vocabulary: self.fleet.vocabulary,
                sources: &judged.sources,
                locale: self.fleet.locale,
                freeing: self.fleet.freeing(index, judged),
            };
            let setting = Setting { audit: Some(self.fleet.audit.date), id: &id };
            let mut body = check::account(&subject, setting);
            let (to, text) = ("fleet".to_owned(), self.fleet.locale.audit_back().to_owned());
            body.push(Block::Paragraph(Inline::Link { to, text }.into()));
            let role = Role::Vessel;
            Block::Section(Section { role, id: Some(id), verdict: None, heading: None, body })
        })
        .collect()
    }
}

/// The requirements in parts of about equal width, none too wide for a sheet
/// of paper.
fn parts(profile: &Profile) -> Vec<Vec<usize>> {
    const ACROSS: usize = 18;
    let all: Vec<usize> = (0..profile.requirements.len()).collect();
    let parts = all.len().div_ceil(ACROSS).max(1);
    all.chunks(all.len().div_ceil(parts).max(1)).map(<[usize]>::to_vec).collect()
}

/// What a profile says of a vessel in a list: how much is met, what is not.
fn profile(words: &Words<'_>, judgement: &Judgement, several: bool) -> Vec<Block> {
    let (profile, say) = (&judgement.profile, words.locale);
    let mut text = say.audit_profile(&profile.id, &met_of(judgement, say));
    if several {
        text.push_str(&format!(", {}", say.verdict(judgement.verdict)));
    }
    if !profile.encoded {
        text = say.audit_not_encoded(&profile.id);
    }
    let mut blocks = vec![Block::Paragraph(text.into())];
    let open = judgement.findings.iter().filter(|finding| {
        let requirement = words.requirement(finding.requirement);
        let required = requirement.is_some_and(|r| r.level == Level::Required);
        required && finding.outcome != Outcome::Met
    });
    blocks.extend(open.map(|finding| open_finding(words, finding)));
    let until = until(judgement.ready_until, say).filter(|_| judgement.verdict == Verdict::Ready);
    blocks.extend(until.map(|text| Block::Paragraph(text.into())));
    blocks
}

/// `5 of 6 met`, what is recommended counted apart.
fn met_of(judgement: &Judgement, locale: Locale) -> String {
    let count = |level: Level| {
        let own = judgement.findings.iter().filter(|finding| {
            let requirement = judgement.profile.requirements.get(finding.requirement);
            requirement.is_some_and(|requirement| requirement.level == level)
        });
        let own: Vec<_> = own.map(|finding| finding.outcome == Outcome::Met).collect();
        (own.iter().filter(|met| **met).count(), own.len())
    };
    let (met, all) = count(Level::Required);
    match count(Level::Recommended) {
        (_, 0) => locale.audit_met(&met, &all),
        (advised, of) => locale.audit_met_advised(&met, &all, &advised, &of),
    }
}

/// The last day, without what ends on it: the check of the vessel tells that.
fn until(until: ReadyUntil, locale: Locale) -> Option<String> {
    match until {
        ReadyUntil::None => None,
        ReadyUntil::Day(day) => Some(locale.picture_until_day(&day)),
        ReadyUntil::NoEnd => Some(locale.audit_ready_no_end().to_owned()),
    }
}

/// A finding that is not met or cannot be told: what, by which clause, and
/// why in one sentence.
fn open_finding(words: &Words<'_>, finding: &Finding) -> Block {
    let clause = words.requirement(finding.requirement).map_or("", |r| r.clause.as_str());
    let why = words.first_reason(finding);
    let text = format!("{} ({clause}): {why}", words.title(finding.requirement));
    let sign = words::sign(finding.outcome).to_owned();
    Item::new(Lead::Word(sign, finding.outcome.into()), text).into()
}
