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
use crate::report::words::{self, Words, fleet};
use crate::report::{Subject, problems};
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
    Document { title: format!("Fleet audit of {}", of.audit.date), blocks }
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
        let audit = self.fleet.audit;
        let counts = &audit.counts;
        let all = fleet::count(counts.vessels(), "vessel");
        let mut below: Vec<Block> = Vec::new();
        let mut say = |tone, text: String| {
            below.push(Block::Paragraph(Line::from(text).toned(tone)));
        };
        say(Tone::Plain, format!("on {}", audit.date));
        if counts.refused > 0 {
            let files = fleet::count(counts.refused, "file");
            say(Tone::Bad, format!("{files} could not be read; the rest is complete"));
        }
        if audit.outside > 0 {
            let vessels = fleet::count(audit.outside, "vessel");
            say(Tone::Plain, format!("{vessels} outside the selection, not counted"));
        }
        if self.judged.len() < counts.vessels() {
            say(Tone::Plain, format!("{} of {all} shown", self.judged.len()));
        }
        if let Some(most) = self.extent.accounts.filter(|most| self.judged.len() > *most) {
            say(Tone::Plain, words::only_troubles(most));
        }
        let doubts = audit.doubts.iter();
        below.extend(doubts.map(|doubt| {
            Item::new(Lead::Note(Tone::Open), fleet::doubt(doubt, self.fleet.locale)).into()
        }));
        below.extend(audit.left_out.iter().map(|left_out| {
            let text =
                format!("{}: {}", left_out.file, fleet::left_out(left_out, self.fleet.locale));
            Item::new(Lead::Word("record not laid over:".to_owned(), Tone::Open), text).into()
        }));
        Block::Headline(Headline {
            lead: Lead::Word("AUDIT".to_owned(), audit.verdict().into()),
            beside: None,
            text: format!("{all}: {}", fleet::counts(counts, self.fleet.locale)).into(),
            more: None,
            below,
        })
    }

    fn not_read(&self) -> Option<Block> {
        let items: Vec<_> = match self.extent.accounts {
            None => self.refused.iter().filter_map(|refusal| problems::first(refusal)).collect(),
            Some(_) => self.refused.iter().flat_map(|refusal| problems::each(refusal)).collect(),
        };
        let heading = format!("Not read ({})", self.refused.len());
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
            items.push(Block::Paragraph("none".into()));
        }
        Section::block(Role::Part, "Vessels", items)
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
        let check = &judged.check;
        let plain = |text: String| Block::Paragraph(text.into());
        let days = DaySpan { from: Some(check.asked.departure), until: Some(check.asked.back) };
        let mut below =
            vec![plain(format!("trip {}; {}", words::span(days, self.fleet.locale), judged.file))];
        if check.standing() == Standing::GoodPractice {
            below.push(Block::Paragraph(
                Line::from(self.fleet.locale.only_practice()).toned(Tone::Open),
            ));
        }
        let records = judged.sources.iter().skip(1);
        below.extend(records.map(|record| plain(format!("laid over it: {}", record.file))));
        let notices = check.notices.iter();
        below.extend(notices.map(|notice| {
            Item::new(Lead::Note(Tone::Open), words::notice(notice, self.fleet.locale)).into()
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
            locale: self.fleet.locale,
        }
    }

    fn missed(&self) -> Option<Block> {
        let missed = &self.fleet.audit.missed;
        let items =
            missed.iter().take(self.extent.most).filter_map(|missed| self.missed_one(missed));
        let items: Vec<Block> = items.chain(more(missed.len(), self.extent.most)).collect();
        (!items.is_empty()).then(|| Section::block(Role::Part, "Most often missed", items))
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
        let mut sections = Vec::new();
        let mut after = 0;
        for days in HORIZONS {
            let within: Vec<_> =
                self.fleet.audit.lapses.iter().filter(|lapse| lapse.within == days).collect();
            let heading = match after {
                0 => format!("Lapses within {days} days ({})", within.len()),
                _ => format!("Lapses after {after} and within {days} days ({})", within.len()),
            };
            let items = within.iter().take(self.extent.most).map(|lapse| {
                let decides = lapse.after == After::Decides;
                let tone = if decides { Tone::Bad } else { Tone::Plain };
                let text = fleet::lapse(lapse, self.fleet.locale);
                let text = format!(
                    "{}: {text}; {}",
                    lapse.vessel,
                    fleet::after_lapse(lapse, self.fleet.locale)
                );
                bullet(tone, text).into()
            });
            let items: Vec<_> = items.chain(more(within.len(), self.extent.most)).collect();
            if !items.is_empty() {
                sections.push(Section::block(Role::Part, heading, items));
            }
            after = days;
        }
        sections
    }

    fn marks(&self) -> Option<Block> {
        let marks = &self.fleet.audit.marks;
        let mut body = vec![Block::Paragraph(self.fleet.locale.same_mark().into())];
        body.extend(marks.iter().take(self.extent.most).map(|mark| {
            let kind = &self.fleet.vocabulary.kind(mark.kind).name;
            let text = format!(
                "{} ({kind}): {}",
                mark.mark,
                fleet::names(&mark.vessels, self.fleet.locale)
            );
            bullet(Tone::Open, text).into()
        }));
        body.extend(more(marks.len(), self.extent.most));
        let heading = format!("Marks on several vessels at sea together ({})", marks.len());
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
        let rows = self.profiles.iter().map(|profile| {
            let encoding = match profile.encoded {
                true => profile.encoding.to_string(),
                false => format!("{}, not encoded", profile.encoding),
            };
            let practice = match profile.standing {
                Standing::GoodPractice => "; good practice, no rule",
                Standing::Rule => "",
            };
            let named = format!("{} (`{}`{practice})", profile.title, profile.id);
            let vessels = self.judged_by(profile).count().to_string();
            let cells = [named, profile.edition.clone(), profile.source.clone(), encoding, vessels];
            Row::new(None, cells.map(Line::from).into())
        });
        let heads = ["Profile", "Edition", "Source", "Encoding", "Vessels"];
        let table = Table {
            role: Role::Part,
            caption: "Editions used".to_owned(),
            columns: heads.map(Column::new).into(),
            rows: rows.collect(),
        };
        let any = !self.profiles.is_empty();
        any.then(|| Section::block(Role::Part, "Editions used", vec![Block::Table(table)]))
    }

    /// The fleet at a glance: vessel by requirement, one table for each
    /// edition.
    fn matrix(&self) -> Block {
        let mut body: Vec<Block> = self.profiles.iter().map(|of| self.edition(of)).collect();
        if body.is_empty() {
            body.push(Block::Paragraph("No profile judged a vessel.".into()));
        }
        Block::Section(Section {
            role: Role::Part,
            id: Some("fleet".to_owned()),
            verdict: None,
            heading: Some("Vessel by requirement".into()),
            body,
        })
    }

    fn edition(&self, profile: &Profile) -> Block {
        let known = format!("{}, edition {}; `{}`", profile.source, profile.edition, profile.id);
        let mut body = vec![Block::Paragraph(Line::from(known).toned(Tone::Soft))];
        if profile.encoded {
            for (number, part) in parts(profile).iter().enumerate() {
                body.push(self.table(profile, part, number));
            }
            let whole =
                |judgement: &Judgement| judgement.findings.len() == profile.requirements.len();
            if !self.judged_by(profile).all(|(_, judgement)| whole(judgement)) {
                let text = Line::from(format!("– {}.", self.fleet.locale.not_asked()));
                body.push(Block::Paragraph(text.toned(Tone::Soft)));
            }
        } else {
            let text = self.fleet.locale.stub();
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
        let heads = part.iter().filter_map(|index| profile.requirements.get(*index));
        let heads = heads.map(|requirement| match requirement.level {
            Level::Required => requirement.title.to_string(),
            Level::Recommended => format!("{} (advice)", requirement.title),
        });
        let columns = std::iter::once("Vessel".to_owned()).chain(heads).map(Column::new);
        let rows = self.judged_by(profile).map(|(index, judgement)| {
            let cells = part.iter().map(|requirement| {
                let found = judgement.findings.iter().find(|f| f.requirement == *requirement);
                found.map_or_else(
                    || format!("– {}", self.fleet.locale.not_asked_short()).into(),
                    |f| Inline::Outcome(f.outcome).into(),
                )
            });
            Row::new(None, std::iter::once(self.name(index)).chain(cells).collect())
        });
        Block::Table(Table {
            role: Role::Matrix,
            caption: format!("Vessel by requirement, {}, part {}", profile.id, number + 1),
            columns: columns.collect(),
            rows: rows.collect(),
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
            let (to, text) = ("fleet".to_owned(), "Back to the fleet".to_owned());
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
    let profile = &judgement.profile;
    let mut text = format!("`{}`: {}", profile.id, met_of(judgement));
    if several {
        text.push_str(&format!(", {}", words.locale.verdict(judgement.verdict)));
    }
    if !profile.encoded {
        text = format!("`{}`: known, not encoded; can't tell", profile.id);
    }
    let mut blocks = vec![Block::Paragraph(text.into())];
    let open = judgement.findings.iter().filter(|finding| {
        let requirement = words.requirement(finding.requirement);
        let required = requirement.is_some_and(|r| r.level == Level::Required);
        required && finding.outcome != Outcome::Met
    });
    blocks.extend(open.map(|finding| open_finding(words, finding)));
    if judgement.verdict == Verdict::Ready {
        blocks.push(Block::Paragraph(format!("ready until {}", until(judgement)).into()));
    }
    blocks
}

/// `5 of 6 met`, what is recommended counted apart.
fn met_of(judgement: &Judgement) -> String {
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
        (_, 0) => format!("{met} of {all} met"),
        (advised, of) => format!("{met} of {all} met, of what is recommended {advised} of {of}"),
    }
}

/// The last day, without what ends on it: the check of the vessel tells that.
fn until(judgement: &Judgement) -> String {
    match judgement.ready_until {
        ReadyUntil::None => "never".to_owned(),
        ReadyUntil::Day(day) => day.to_string(),
        ReadyUntil::NoEnd => "no end".to_owned(),
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
