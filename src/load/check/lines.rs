//! The parts of which a file of techniques is made: ids, texts, lines,
//! citations, and lists of names of something else in the file.
//!
//! Imports `model`. Goes on after a problem, so that all of them are found at
//! once.

use crate::load::check::requirement::{clause, verified, worded};
use crate::load::check::vocabulary::check_id;
use crate::load::form::LONGEST_NAME;
use crate::load::form::loose::Single;
use crate::load::form::profile::Worded;
use crate::load::form::techniques::{LineText, MOST_ENTRIES};
use crate::load::read::fault::{Fault, Part};
use crate::load::read::spot::{Spot, filled, said};
use crate::load::read::tree::LONGEST_REMARK;
use crate::model::profile::Requirement;
use crate::model::technique::{Cited, Line};
use crate::model::text::Text;

impl Spot<'_> {
    /// Reads the entries of a list, as many as there may be.
    pub(crate) fn listed<T, R>(
        &self,
        key: &str,
        written: Option<&[T]>,
        by: impl FnMut(&Spot<'_>, &T) -> Option<R>,
    ) -> Vec<R> {
        let entries = written.unwrap_or_default();
        if entries.len() > MOST_ENTRIES {
            let fault = Fault::TooManyEntries { entries: entries.len(), most: MOST_ENTRIES };
            self.key(key).wrong(fault).tell();
        }
        self.each(key, entries.iter().take(MOST_ENTRIES), by)
    }

    /// Tells of a text that is longer than it may be.
    fn cap(&self, text: &str, most: u64) {
        if text.chars().count() as u64 > most {
            self.wrong(Fault::TextTooLong(most)).tell();
        }
    }

    fn cap_all(&self, text: &Text, most: u64) {
        for said in std::iter::once(&text.main).chain(text.others.values()) {
            self.cap(said, most);
        }
    }

    /// Tells of texts of a requirement that are longer than they may be here.
    pub(crate) fn cap_requirement(&self, requirement: &Requirement) {
        self.key("id").cap(&requirement.id, LONGEST_NAME);
        self.key("clause").cap(&requirement.clause, LONGEST_NAME);
        self.key("title").cap_all(&requirement.title, LONGEST_NAME);
        if let Some(note) = &requirement.note {
            self.key("note").cap_all(note, LONGEST_REMARK);
        }
    }

    /// An id that must be there.
    pub(crate) fn id(&self, key: &str, written: &Option<String>) -> String {
        let fault = Fault::NoPartId(key.to_owned());
        let Some(id) = self.must(key, filled(written), fault) else { return String::new() };
        let spot = self.key(key);
        spot.cap(id, LONGEST_NAME);
        check_id(id, &spot);
        id.to_owned()
    }

    /// An id that must be there, and that no earlier one of these is.
    pub(crate) fn own_id(
        &self,
        written: &Option<String>,
        ids: &mut Vec<String>,
        part: Part,
    ) -> String {
        let id = self.id("id", written);
        self.refuse_twin(&id, ids, part);
        id
    }

    /// Tells of an id that an earlier one has too.
    pub(crate) fn refuse_twin(&self, id: &str, ids: &mut Vec<String>, part: Part) {
        if !id.is_empty() && ids.iter().any(|known| known == id) {
            self.key("id").wrong(Fault::PartTwin(part)).of(id).tell();
        }
        ids.push(id.to_owned());
    }

    /// A text for people of at most `most` characters; none where nothing is
    /// written.
    fn text_of(&self, written: &Worded, most: u64, language: &str) -> Option<Text> {
        let text = worded(written, language, self)?;
        self.cap_all(&text, most);
        Some(text)
    }

    /// A short text that must be there: a title, what is asked or said.
    pub(crate) fn title(
        &self,
        key: &str,
        written: &Option<Worded>,
        language: &str,
        fault: Fault,
    ) -> Option<Text> {
        let text = written.as_ref();
        let text = text.and_then(|text| self.key(key).text_of(text, LONGEST_NAME, language));
        self.must(key, text, fault)
    }

    /// A longer text that may be there: a note, a reading.
    pub(crate) fn remark(
        &self,
        key: &str,
        written: &Option<Worded>,
        language: &str,
    ) -> Option<Text> {
        self.key(key).text_of(written.as_ref()?, LONGEST_REMARK, language)
    }

    /// A list of texts.
    pub(crate) fn texts(
        &self,
        key: &str,
        written: &Option<Vec<Worded>>,
        language: &str,
    ) -> Vec<Text> {
        self.listed(key, written.as_deref(), |at, one| {
            let text = at.text_of(one, LONGEST_REMARK, language);
            text.or_else(|| at.wrong(Fault::NothingSaid).none())
        })
    }

    /// A list of lines.
    pub(crate) fn lines(
        &self,
        key: &str,
        written: &Option<Vec<LineText>>,
        language: &str,
    ) -> Vec<Line> {
        self.listed(key, written.as_deref(), |at, one| at.line(one, language))
    }

    /// The steps, of which there is at least one.
    pub(crate) fn steps(&self, written: &Option<Vec<LineText>>, language: &str) -> Vec<Line> {
        let steps = self.lines("steps", written, language);
        if steps.is_empty() {
            self.missing("steps", Fault::NoSteps);
        }
        steps
    }

    fn line(&self, written: &LineText, language: &str) -> Option<Line> {
        match written {
            Single::Plain(text) => {
                self.cap(text, LONGEST_REMARK);
                let said = said(text).or_else(|| self.wrong(Fault::NothingSaid).none());
                said.map(|said| Line { says: Text::plain(said), cited: None })
            }
            Single::Form(form) => {
                let says = self.remark("says", &form.says, language);
                let says = self.must("says", says, Fault::NoLineText);
                let cited = self.cited_if(&form.clause, &form.verified);
                says.map(|says| Line { says, cited })
            }
        }
    }

    /// A citation that must be there.
    pub(crate) fn cited(&self, written: &Option<String>, how: &Option<String>) -> Option<Cited> {
        let verified = verified(how, self);
        let clause = clause(written, verified);
        let clause = self.must("clause", clause, Fault::NoCitedClause);
        if let Some(clause) = clause {
            self.key("clause").cap(clause, LONGEST_NAME);
        }
        Some(Cited { clause: clause?.to_owned(), verified: verified? })
    }

    /// A citation that may be there.
    pub(crate) fn cited_if(
        &self,
        clause: &Option<String>,
        verified: &Option<String>,
    ) -> Option<Cited> {
        filled(clause).or(filled(verified))?;
        self.cited(clause, verified)
    }

    /// The name of a drawing, if there is one.
    pub(crate) fn drawing(&self, written: &Option<String>) -> Option<String> {
        self.read("drawing", written, |at, name| {
            check_id(name, at);
            Some(name.to_owned())
        })
    }

    /// The index of a name; what is not known is told.
    pub(crate) fn named(&self, name: &str, names: &[String], part: Part) -> Option<usize> {
        let name = name.trim();
        let found = names.iter().position(|known| known == name && !name.is_empty());
        found.or_else(|| {
            let known = names.iter().map(String::as_str).filter(|name| !name.is_empty());
            self.wrong(Fault::UnknownPart(part)).unlike(name, known).none()
        })
    }

    /// The indices of a list of names, each named once.
    pub(crate) fn all_named(
        &self,
        key: &str,
        written: Option<&[String]>,
        names: &[String],
        part: Part,
    ) -> Vec<usize> {
        let mut found = Vec::new();
        self.listed(key, written, |at, name| {
            let one = at.named(name, names, part)?;
            if found.contains(&one) {
                at.wrong(Fault::PartNamedTwice(part)).of(name).tell();
            } else {
                found.push(one);
            }
            Some(())
        });
        found
    }
}

/// The ids of a list, empty where there is none.
pub(crate) fn ids_of<'t>(written: impl Iterator<Item = &'t Option<String>>) -> Vec<String> {
    written.map(|id| filled(id).unwrap_or_default().to_owned()).collect()
}
