//! The parts of which a file of techniques is made: ids, texts, lines,
//! citations, and lists of names of something else in the file.
//!
//! Imports `model`. Goes on after a problem, so that all of them are found at
//! once.

use crate::load::check::requirement::{NO_SOURCE, worded};
use crate::load::form::techniques::MOST_ENTRIES;

use crate::load::check::value::{choice, filled, missing};
use crate::load::check::vocabulary::check_id;
use crate::load::form::LONGEST_NAME;
use crate::load::form::loose::Single;
use crate::load::form::profile::VERIFIED;
use crate::load::form::profile::Worded;
use crate::load::form::techniques::LineText;
use crate::load::read::limits::LONGEST_REMARK;
use crate::load::read::problem::{Problem, Problems};
use crate::load::read::spot::Spot;
use crate::load::read::suggest::{did_you_mean, nearest};
use crate::model::profile::{Requirement, Verified};
use crate::model::technique::{Cited, Line};
use crate::model::text::Text;

/// What the readers share.
pub(crate) struct Desk<'a> {
    /// The governing language.
    pub(crate) language: &'a str,
    /// Where problems go.
    pub(crate) problems: &'a mut Problems,
}

impl Desk<'_> {
    /// Tells that a key is missing.
    pub(crate) fn missing(&mut self, above: &Spot<'_>, key: &str, mend: &str) {
        missing(above, key, self.problems, mend);
    }

    /// Adds a problem.
    pub(crate) fn add(&mut self, problem: Problem) {
        self.problems.add(problem);
    }

    /// The entries of a list, as many as may be.
    pub(crate) fn entries<'t, T>(&mut self, written: Option<&'t [T]>, spot: &Spot<'_>) -> &'t [T] {
        let entries = written.unwrap_or_default();
        if entries.len() <= MOST_ENTRIES {
            return entries;
        }
        let what = format!("{} entries are too many", entries.len());
        self.add(Problem::new(spot.place(), what).expected(format!("at most {MOST_ENTRIES}")));
        &entries[..MOST_ENTRIES]
    }

    /// Tells of a text that is longer than it may be.
    fn cap(&mut self, text: &str, most: u64, spot: &Spot<'_>) {
        if text.chars().count() as u64 > most {
            self.add(
                Problem::new(spot.place(), "this text is too long")
                    .expected(format!("at most {most} characters")),
            );
        }
    }

    /// An id that must be there.
    pub(crate) fn id(&mut self, written: Option<&str>, above: &Spot<'_>, key: &str) -> String {
        let Some(id) = filled(written) else {
            let mend =
                format!("write one of lower-case letters, digits and hyphens after `{key}:`");
            self.missing(above, key, &mend);
            return String::new();
        };
        let spot = above.key(key);
        self.cap(id, LONGEST_NAME, &spot);
        check_id(id, &spot, self.problems);
        id.to_owned()
    }

    /// A text for people of at most `most` characters; none where nothing is
    /// written.
    pub(crate) fn text_of(&mut self, written: &Worded, most: u64, spot: &Spot<'_>) -> Option<Text> {
        let text = worded(written, self.language, spot, self.problems)?;
        self.cap_all(&text, most, spot);
        Some(text)
    }

    /// Tells of a text for people that is longer than it may be in some
    /// language.
    fn cap_all(&mut self, text: &Text, most: u64, spot: &Spot<'_>) {
        for said in std::iter::once(&text.main).chain(text.others.values()) {
            self.cap(said, most, spot);
        }
    }

    /// Tells of texts of a requirement that are longer than they may be here.
    pub(crate) fn cap_requirement(&mut self, requirement: &Requirement, spot: &Spot<'_>) {
        self.cap(&requirement.id, LONGEST_NAME, &spot.key("id"));
        self.cap(&requirement.clause, LONGEST_NAME, &spot.key("clause"));
        self.cap_all(&requirement.title, LONGEST_NAME, &spot.key("title"));
        if let Some(note) = &requirement.note {
            self.cap_all(note, LONGEST_REMARK, &spot.key("note"));
        }
    }

    /// A short text that must be there: a title, what is asked or said.
    pub(crate) fn title(
        &mut self,
        written: Option<&Worded>,
        above: &Spot<'_>,
        key: &str,
        mend: &str,
    ) -> Option<Text> {
        let text = written.and_then(|text| self.text_of(text, LONGEST_NAME, &above.key(key)));
        if text.is_none() {
            self.missing(above, key, mend);
        }
        text
    }

    /// A longer text that may be there: a note, a reading.
    pub(crate) fn remark(&mut self, written: Option<&Worded>, spot: &Spot<'_>) -> Option<Text> {
        self.text_of(written?, LONGEST_REMARK, spot)
    }

    /// A list of texts.
    pub(crate) fn texts(&mut self, written: Option<&[Worded]>, spot: &Spot<'_>) -> Vec<Text> {
        let mut texts = Vec::new();
        for (index, one) in self.entries(written, spot).iter().enumerate() {
            let here = spot.entry(index);
            let text = self.text_of(one, LONGEST_REMARK, &here);
            if text.is_none() {
                self.add(Problem::new(here.place(), "nothing is said here"));
            }
            texts.extend(text);
        }
        texts
    }

    /// A list of lines.
    pub(crate) fn lines(&mut self, written: Option<&[LineText]>, spot: &Spot<'_>) -> Vec<Line> {
        let mut lines = Vec::new();
        for (index, one) in self.entries(written, spot).iter().enumerate() {
            lines.extend(self.line(one, &spot.entry(index)));
        }
        lines
    }

    fn line(&mut self, written: &LineText, spot: &Spot<'_>) -> Option<Line> {
        match written {
            Single::Plain(text) => {
                let said = filled(Some(text));
                if said.is_none() {
                    self.add(Problem::new(spot.place(), "nothing is said here"));
                }
                self.cap(text, LONGEST_REMARK, spot);
                said.map(|said| Line { says: Text::plain(said), cited: None })
            }
            Single::Form(form) => {
                let says = form.says.as_ref();
                let says = says.and_then(|s| self.text_of(s, LONGEST_REMARK, &spot.key("says")));
                if says.is_none() {
                    self.missing(spot, "says", "write the line");
                }
                let cited = self.cited_if(form.clause.as_deref(), form.verified.as_deref(), spot);
                says.map(|says| Line { says, cited })
            }
        }
    }

    /// A citation that must be there.
    pub(crate) fn cited(
        &mut self,
        clause: Option<&str>,
        verified: Option<&str>,
        above: &Spot<'_>,
    ) -> Option<Cited> {
        let verified = match filled(verified) {
            Some(text) => choice(text, &VERIFIED, &above.key("verified"), self.problems),
            None => {
                let mend = "write `read`, `excerpt`, `inferred`, `memory` or `common practice`";
                self.missing(above, "verified", mend);
                None
            }
        };
        let clause = filled(clause)
            .or_else(|| (verified == Some(Verified::CommonPractice)).then_some(NO_SOURCE));
        match clause {
            Some(clause) => self.cap(clause, LONGEST_NAME, &above.key("clause")),
            None => self.missing(above, "clause", "write the source and its clause"),
        }
        Some(Cited { clause: clause?.to_owned(), verified: verified? })
    }

    /// A citation that may be there.
    pub(crate) fn cited_if(
        &mut self,
        clause: Option<&str>,
        verified: Option<&str>,
        above: &Spot<'_>,
    ) -> Option<Cited> {
        if filled(clause).is_none() && filled(verified).is_none() {
            return None;
        }
        self.cited(clause, verified, above)
    }

    /// The name of a drawing, if there is one.
    pub(crate) fn drawing(&mut self, written: Option<&str>, above: &Spot<'_>) -> Option<String> {
        let name = filled(written)?;
        check_id(name, &above.key("drawing"), self.problems);
        Some(name.to_owned())
    }

    /// The index of a name; what is not known is told.
    pub(crate) fn named(
        &mut self,
        name: &str,
        names: &[String],
        what: &str,
        spot: &Spot<'_>,
    ) -> Option<usize> {
        let name = name.trim();
        let found = names.iter().position(|known| known == name && !name.is_empty());
        if found.is_none() {
            let known = names.iter().map(String::as_str).filter(|name| !name.is_empty());
            let article = if what.starts_with('a') { "an" } else { "a" };
            self.add(
                Problem::new(spot.place(), format!("no {what} of this id is in the file"))
                    .offending(name)
                    .expected(format!("the id of {article} {what}"))
                    .mend_if(did_you_mean(nearest(name, known))),
            );
        }
        found
    }

    /// The indices of a list of names, each named once.
    pub(crate) fn all_named(
        &mut self,
        written: Option<&[String]>,
        names: &[String],
        what: &str,
        spot: &Spot<'_>,
    ) -> Vec<usize> {
        let mut found = Vec::new();
        for (index, name) in self.entries(written, spot).iter().enumerate() {
            let here = spot.entry(index);
            match self.named(name, names, what, &here) {
                Some(one) if found.contains(&one) => self.add(
                    Problem::new(here.place(), "this is named twice")
                        .offending(name)
                        .expected(format!("each {what} once"))
                        .mend("take one of them away"),
                ),
                one => found.extend(one),
            }
        }
        found
    }

    /// Tells of an id that an earlier one of the same list has too. `index`
    /// is that of the last of `ids`.
    pub(crate) fn refuse_twin(&mut self, ids: &[String], what: &str, spot: &Spot<'_>) {
        let Some((last, before)) = ids.split_last() else { return };
        if !last.is_empty() && before.contains(last) {
            self.add(
                Problem::new(spot.place(), format!("two {what} have this id"))
                    .offending(last)
                    .expected("an id that stands for one of them only")
                    .mend("give one of them another id"),
            );
        }
    }
}

/// The ids of a list, empty where there is none.
pub(crate) fn ids_of<'t>(written: impl Iterator<Item = Option<&'t str>>) -> Vec<String> {
    written.map(|id| filled(id).unwrap_or_default().to_owned()).collect()
}
