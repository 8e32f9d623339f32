//! The command `verify`: an audit on record, judged again.
//!
//! Imports `load`, `fleet` and `report`. The rules are those of the record;
//! those that this program ships are only told where they differ.

use super::arguments::VerifyArguments;
use super::exit::Exit;
use super::output::{self, Terminal};
use super::stop::Stop;
use crate::fleet::record::{self, AuditRecord, LARGEST_RECORD, Refused};
use crate::load::{self, Library};
use crate::report::{self, Locale, audit::record::Verified, desk};
use std::path::Path;

/// Judges the record again and prints what differs.
pub(super) fn run(arguments: &VerifyArguments, terminal: &Terminal) -> Result<Exit, Stop> {
    let path = &arguments.record;
    let text = text(path)?;
    let record = read(path, &text)?;
    let whole = record::whole(&text);
    let again = record::again(&record).map_err(|refused| match refused {
        Refused::Library(refusal) => {
            let mut told = refusal;
            told.file = path.display().to_string();
            Stop::Refused(vec![told])
        }
        Refused::Asked(id) => unusable(path, &desk::command_record_asks(&id)),
    })?;
    let shipped = Library::shipped().map_err(|refusal| Stop::Refused(vec![refusal]))?;
    let newer = record::newer(&record, &shipped);
    let locale = Locale::default();
    let of = Verified { record: &record, whole: &whole, again: &again, newer: &newer, locale };
    output::print(&report::audit::record::verified(&of, terminal.width))?;
    Ok(if of.is_the_same() { Exit::Ready } else { Exit::NotReady })
}

/// Reads a record, with everything that it must hold.
pub(super) fn open(path: &Path) -> Result<AuditRecord, Stop> {
    read(path, &text(path)?)
}

fn text(path: &Path) -> Result<String, Stop> {
    load::read_long(path, LARGEST_RECORD).map_err(|refusal| Stop::Refused(vec![refusal]))
}

fn read(path: &Path, text: &str) -> Result<AuditRecord, Stop> {
    record::read(text).map_err(|broken| {
        let told = report::audit::record::broken(&broken);
        unusable(path, &told)
    })
}

fn unusable(path: &Path, why: &str) -> Stop {
    Stop::usage(desk::command_no_record(&path.display(), &why), desk::command_take_record())
}
