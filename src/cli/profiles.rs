//! The command `profiles`: which profiles there are.
//!
//! Imports `load` and `report`.

use super::arguments::ProfilesArguments;
use super::exit::Exit;
use super::library;
use super::output::{self, Terminal};
use super::stop::Stop;
use crate::measure::DaySpan;
use crate::report::{self, Locale};

/// Lists the profiles, or those that were named with their notes.
pub(super) fn run(arguments: &ProfilesArguments, terminal: &Terminal) -> Result<Exit, Stop> {
    let mut refusals = Vec::new();
    let library = library::open(arguments.requirements.as_deref(), &mut refusals)?;
    if !refusals.is_empty() {
        return Err(Stop::Refused(refusals));
    }
    let mut chosen = Vec::new();
    for id in &arguments.ids {
        chosen.extend(library::of_id(&library, id, DaySpan::ALWAYS)?);
    }
    let named = !arguments.ids.is_empty();
    let listed = if named { &chosen } else { &library.profiles };
    output::print(&report::profiles(listed, named, Locale::default(), terminal.width))?;
    Ok(Exit::Ready)
}
