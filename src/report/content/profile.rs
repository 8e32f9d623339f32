//! What one profile says of a vessel: a part of its account.

use super::shared::{self, Shared};
use super::{Block, Column, Fact, Item, Lead, Line, Picture, Role, Row, Section, Table, Tone};
use crate::measure::DaySpan;
use crate::model::check::{Inverse, Judgement, Why};
use crate::model::finding::{Asked, Because, Finding, Outcome};
use crate::model::profile::{Level, Standing};
use crate::model::reason::{Reason, VesselFact};
use crate::report::Locale;
use crate::report::picture;
use crate::report::profiles::verified;
use crate::report::words::{self, Words};
use std::fmt::Display;

/// How many tools that will not do are told apart for one finding.
const TOOLS_TOLD: usize = 3;

/// One profile's part.
pub(super) struct Told<'a> {
    pub(super) words: Words<'a>,
    pub(super) judgement: &'a Judgement,
    pub(super) asked: Asked,
    /// Whether the account has more than this one part.
    pub(super) several: bool,
    /// The id from which those of its findings are made.
    pub(super) id: String,
}

impl Told<'_> {
    /// The part.
    pub(super) fn section(&self) -> Block {
        let profile = &self.judgement.profile;
        let mut body = self.standing();
        if profile.encoded {
            body.extend(self.clashes());
            body.extend(self.troubles(Outcome::NotMet, Locale::check_put_right));
            body.extend(self.troubles(Outcome::CannotTell, Locale::check_find_out));
            body.extend(self.in_order());
            body.extend(self.advice());
            body.push(self.answers());
            body.extend(self.way());
            body.extend(self.pictures());
        } else {
            body.push(self.stub());
        }
        body.extend(self.remarks());
        Block::Section(Section {
            role: Role::Profile,
            id: Some(self.id.clone()),
            verdict: self.several.then_some(self.judgement.verdict),
            heading: Some(profile.title.to_string().into()),
            body,
        })
    }

    /// What the profile is, why it was used, for which part of the trip.
    fn standing(&self) -> Vec<Block> {
        let (profile, say) = (&self.judgement.profile, self.words.locale);
        let mut blocks = Vec::new();
        if profile.standing == Standing::GoodPractice || self.judgement.why == Why::Fallback {
            let text = say.check_by_practice(&profile.id);
            blocks.push(Block::Paragraph(Line::from(text).toned(Tone::Open)));
        } else {
            if profile.base {
                let text = Line::from(say.check_base(&profile.id));
                blocks.push(Block::Paragraph(text.toned(Tone::Open)));
            }
            let why = self.words.why(&self.judgement.why);
            let known = say.check_edition(&profile.source, &profile.edition, &profile.id, &why);
            blocks.push(Block::Paragraph(known.into()));
        }
        let trip = DaySpan { from: Some(self.asked.departure), until: Some(self.asked.back) };
        if self.judgement.days != trip {
            let days = say.check_part_of_trip(&words::span(self.judgement.days, say));
            blocks.push(Block::Paragraph(days.into()));
        }
        blocks
    }

    fn stub(&self) -> Block {
        let text = self.words.locale.check_not_encoded();
        let remedy = Item::new(Lead::Do, self.words.by_hand()).into();
        let item = Item::new(Lead::Outcome(Outcome::CannotTell), text).with(vec![remedy]);
        self.part(vec![item.into()])
    }

    /// A part of the part that needs no heading.
    fn part(&self, body: Vec<Block>) -> Block {
        Block::Section(Section { role: Role::Part, id: None, verdict: None, heading: None, body })
    }

    /// A clash is why a kit with enough good tools is not ready, so it comes
    /// before the finding that happened to lose.
    fn clashes(&self) -> Option<Block> {
        let inverses = self.judgement.inverses.iter();
        let clashes = inverses.flat_map(|inverses| &inverses.clashes);
        let clash = |clash| Item::new(Lead::Outcome(Outcome::NotMet), self.words.clash(clash));
        let mut items: Vec<Block> = clashes.map(|one| clash(one).into()).collect();
        if self.judgement.leaves_open(Inverse::Clashes) {
            items.push(Block::Paragraph(self.words.locale.check_clashes_left_open().into()));
        }
        let heading = self.words.locale.check_clashes();
        (!items.is_empty()).then(|| Section::block(Role::Part, heading, items))
    }

    fn of_level(&self, level: Level, outcome: Outcome) -> Vec<&Finding> {
        let requirements = &self.judgement.profile.requirements;
        let level_of = |f: &Finding| requirements.get(f.requirement).map(|r| r.level);
        let findings = self.judgement.findings.iter();
        findings.filter(|f| f.outcome == outcome && level_of(f) == Some(level)).collect()
    }

    fn troubles(
        &self,
        outcome: Outcome,
        heading: fn(Locale, &dyn Display) -> String,
    ) -> Option<Block> {
        let findings = self.of_level(Level::Required, outcome);
        if findings.is_empty() {
            return None;
        }
        let shared = shared::shared(&findings);
        let told: Vec<&VesselFact> = shared.iter().map(|shared| shared.fact).collect();
        let news = |f: &&Finding| f.reasons.is_empty() || !shared::news(f, &told).is_empty();
        let fresh: Vec<&Finding> = findings.iter().copied().filter(news).collect();
        let (followers, leaders) = shared::followers(&fresh);
        let count = findings.len() - followers.len();
        let mut body: Vec<Block> = shared.iter().map(|shared| self.shared(shared)).collect();
        for finding in leaders {
            let mut item = self.trouble(finding, &told);
            let after = followers.iter().filter(|(leader, _)| *leader == finding.requirement);
            item.below.extend(after.map(|(_, follower)| self.follows(follower)));
            body.push(item.into());
        }
        Some(Section::block(Role::Part, heading(self.words.locale, &count), body))
    }

    /// A finding that is open or not met only as long as the one above it.
    fn follows(&self, finding: &Finding) -> Block {
        let reasons = self.reasons(finding, &[]).join("; ");
        let (title, clause) =
            (self.words.title(finding.requirement), self.clause(finding.requirement));
        let text = format!("{title} ({clause}): {reasons}");
        let id = Some(self.id_of(finding));
        Item {
            id,
            ..Item::new(
                Lead::Word(self.words.locale.check_follows().to_owned(), Tone::Strong),
                text,
            )
        }
        .into()
    }

    fn clause(&self, requirement: usize) -> &str {
        self.words.requirement(requirement).map_or("", |requirement| &requirement.clause)
    }

    /// A missing fact of the vessel that leaves several findings open.
    fn shared(&self, shared: &Shared<'_>) -> Block {
        let titles: Vec<_> =
            shared.requirements.iter().map(|index| self.words.title(*index)).collect();
        let open = self.words.locale.check_open_because(&titles.join("; "));
        let remedy = Item::new(Lead::Do, self.words.find_out(shared.fact));
        let text = Line::strong(self.words.unknown(shared.fact));
        Item::new(Lead::Outcome(Outcome::CannotTell), text)
            .with(vec![Block::Paragraph(open.into()), remedy.into()])
            .into()
    }

    /// A finding that is not met or not known: what is asked and where it is
    /// written, why, and what to do.
    fn trouble(&self, finding: &Finding, told: &[&VesselFact]) -> Item {
        let mut lines: Vec<Line> =
            self.reasons(finding, told).into_iter().map(Line::from).collect();
        if let Some(freeboard) = finding.freeboard.filter(|_| self.tells_freeboard(finding)) {
            let freeboard = self.words.freeboard(freeboard);
            lines.push(self.words.locale.check_at_freeboard(&freeboard).into());
        }
        let mut below = if lines.is_empty() { Vec::new() } else { vec![Block::Lines(lines)] };
        below.extend(self.words.remedy(finding, told).map(|text| Item::new(Lead::Do, text).into()));
        let requirement = self.words.requirement(finding.requirement);
        Item {
            id: Some(self.id_of(finding)),
            lead: Lead::Outcome(finding.outcome),
            text: self.words.title(finding.requirement).into(),
            end: Some(self.clause(finding.requirement).into()),
            aside: requirement.map(|of| verified(of.verified, self.words.locale).into()),
            below,
        }
    }

    fn id_of(&self, finding: &Finding) -> String {
        format!("{}-f{}", self.id, finding.requirement)
    }

    /// Of a vessel with several freeboards a finding says at which it is
    /// worst, if it hangs on the freeboard and no reason says so already.
    fn tells_freeboard(&self, finding: &Finding) -> bool {
        let said = |because: &Because| matches!(because.reason, Reason::TooShortForRail { .. });
        self.words.has_several_freeboards()
            && self.words.hangs_on_freeboard(finding.requirement)
            && !finding.reasons.iter().any(said)
    }

    /// The reasons, one line for each tool.
    fn reasons(&self, finding: &Finding, told: &[&VesselFact]) -> Vec<String> {
        let mut groups: Vec<(Option<usize>, Vec<String>)> = Vec::new();
        for because in shared::news(finding, told) {
            let text = self.words.reason_of(because);
            let same = |tool: Option<usize>| tool.is_some() && tool == because.tool;
            match groups.iter_mut().find(|(tool, _)| same(*tool)) {
                Some((_, texts)) => texts.push(text),
                None => groups.push((because.tool, vec![text])),
            }
        }
        let more = groups.iter().filter(|(tool, _)| tool.is_some()).count();
        let mut lines = Vec::new();
        let mut told = 0;
        for (tool, texts) in groups {
            let text = texts.join("; ");
            match tool {
                None => lines.push(text),
                Some(tool) if told < TOOLS_TOLD => {
                    told += 1;
                    lines.push(format!("{}: {text}", self.words.lot(tool)));
                }
                Some(_) => {}
            }
        }
        if more > TOOLS_TOLD {
            lines.push(self.words.locale.check_more_tools(&(more - TOOLS_TOLD)));
        }
        lines
    }

    fn in_order(&self) -> Option<Block> {
        let findings = self.of_level(Level::Required, Outcome::Met);
        let heading = self.words.locale.check_in_order(&findings.len());
        (!findings.is_empty())
            .then(|| Section::block(Role::Part, heading, vec![self.met(&findings)]))
    }

    fn met(&self, findings: &[&Finding]) -> Block {
        let say = self.words.locale;
        let rows = findings.iter().map(|finding| {
            let requirement = self.words.requirement(finding.requirement);
            let clause = requirement.map_or_else(String::new, |requirement| {
                format!("{}; {}", requirement.clause, verified(requirement.verified, say))
            });
            Row {
                id: Some(self.id_of(finding)),
                lead: Some(Lead::Outcome(Outcome::Met)),
                cells: vec![
                    self.words.title(finding.requirement).into(),
                    self.words.all_that_serve(finding).into(),
                    clause.into(),
                ],
            }
        });
        Block::Table(Table {
            role: Role::Met,
            caption: say.check_met_by().to_owned(),
            columns: vec![
                Column { most: Some(44), ..Column::new(say.check_head_met()) },
                Column::new(say.check_head_by()),
                Column { wide_only: true, ..Column::new(say.check_head_clause()) },
            ],
            rows: rows.collect(),
            sums: Vec::new(),
        })
    }

    fn advice(&self) -> Option<Block> {
        let met = self.of_level(Level::Recommended, Outcome::Met);
        let mut open = self.of_level(Level::Recommended, Outcome::NotMet);
        open.extend(self.of_level(Level::Recommended, Outcome::CannotTell));
        let mut body: Vec<Block> =
            open.into_iter().map(|finding| self.trouble(finding, &[]).into()).collect();
        if !met.is_empty() {
            body.push(self.met(&met));
        }
        let heading = self.words.locale.check_advice();
        (!body.is_empty()).then(|| Section::block(Role::Part, heading, body))
    }

    /// Until when and up to which freeboard the kit is ready.
    fn answers(&self) -> Block {
        let (words, say) = (&self.words, self.words.locale);
        let until = words.ready_until(self.judgement);
        let mut facts = vec![Fact::new(say.fact_ready_until(), until)];
        let up_to = words.good_up_to(self.judgement);
        facts.extend(up_to.map(|text| Fact::new(say.fact_good_up_to(), text)));
        Block::Facts(Role::Answers, facts)
    }

    fn pictures(&self) -> Vec<Block> {
        let (words, judgement, say) = (&self.words, self.judgement, self.words.locale);
        let id = |of: &str| format!("{}-{of}", self.id);
        let pictures = [
            (say.picture_reach(), picture::reach::figures(words, judgement, &id("reach"))),
            (say.picture_freeboard(), picture::freeboard::figure(words, judgement, &id("board"))),
            (say.picture_time(), picture::time::figure(words, judgement, self.asked, &id("time"))),
        ];
        let drawn = pictures.into_iter().filter_map(|(heading, drawn)| Some((heading, drawn?)));
        drawn.map(|(heading, drawn)| Block::Picture(Picture { heading, drawn })).collect()
    }

    /// A stub's notes are all there is to tell of it; those of a profile that
    /// judged are for whoever wants to know more than a glance tells.
    fn remarks(&self) -> Option<Block> {
        let profile = &self.judgement.profile;
        if profile.notes.is_empty() {
            return None;
        }
        let body = if profile.encoded {
            let text = self.words.locale.check_notes(&profile.id);
            vec![Block::Paragraph(text.into())]
        } else {
            let note = |note: String| Item::new(Lead::Note(Tone::Strong), note).into();
            profile.notes.iter().map(|text| note(text.to_string())).collect()
        };
        Some(self.part(body))
    }
}
