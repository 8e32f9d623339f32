//! The command `words`: what a vessel's file may say.
//!
//! Imports `load` and `report`.

use super::arguments::WordsArguments;
use super::exit::Exit;
use super::library;
use super::output::{self, Terminal};
use super::stop::Stop;
use crate::model::vocabulary::Vocabulary;
use crate::report::{self, Locale, desk};

/// Lists the vocabulary, or one kind with its keys.
pub(super) fn run(arguments: &WordsArguments, terminal: &Terminal) -> Result<Exit, Stop> {
    let mut refusals = Vec::new();
    let library = library::open(arguments.requirements.as_deref(), &mut refusals)?;
    if !refusals.is_empty() {
        return Err(Stop::Refused(refusals));
    }
    let vocabulary = &library.vocabulary;
    // A kind may be several words, which nobody need put in quotes.
    let name = arguments.kind.join(" ");
    let page = if name.is_empty() {
        report::vocabulary(vocabulary, Locale::default(), terminal.width)
    } else {
        let kind = vocabulary.find_kind(&name).ok_or_else(|| unknown(vocabulary, &name))?;
        report::kind(vocabulary, kind, Locale::default(), terminal.width)
    };
    output::print(&page)?;
    Ok(Exit::Ready)
}

/// That no kind is called so, with those that may be meant.
fn unknown(vocabulary: &Vocabulary, name: &str) -> Stop {
    let mend = match near(vocabulary, name).as_slice() {
        [] => desk::command_words_lists().to_owned(),
        near => {
            let near = near.iter().cloned();
            let near = near.reduce(|one, next| desk::command_near(&one, &next));
            desk::command_did_you_mean(&near.unwrap_or_default())
        }
    };
    Stop::usage(desk::command_no_kind(&name), mend)
}

/// The kinds of which a part was typed, at most three, else the one that was
/// misspelled by a few strokes.
fn near(vocabulary: &Vocabulary, name: &str) -> Vec<String> {
    if let Some(wide) = vocabulary.find_wide_kind(name) {
        return wide.may_be.iter().map(|kind| format!("`{}`", vocabulary.kind(*kind).id)).collect();
    }
    let typed = crate::model::vocabulary::fold(name);
    let names = vocabulary.kind_names.keys();
    let parts = names.clone().filter(|known| typed.len() >= 3 && known.contains(&typed));
    let mut chosen: Vec<_> = parts.collect();
    if chosen.is_empty() {
        let most = (typed.chars().count() / 3).min(3);
        let distances = names.map(|known| (strsim::osa_distance(&typed, known), known));
        let slip = distances.filter(|(distance, _)| *distance <= most);
        chosen.extend(slip.min_by_key(|(distance, _)| *distance).map(|(_, known)| known));
    }
    let mut ids: Vec<String> = Vec::new();
    for kind in chosen.into_iter().filter_map(|known| vocabulary.kind_names.get(known)) {
        let id = format!("`{}`", vocabulary.kind(*kind).id);
        if !ids.contains(&id) && ids.len() < 3 {
            ids.push(id);
        }
    }
    ids
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::load::Library;

    #[test]
    fn a_slip_or_a_part_of_a_kinds_name_finds_the_kind() {
        let words = Library::shipped().unwrap().vocabulary;
        assert_eq!(near(&words, "dip nett"), ["`dip-net`"]);
        assert_eq!(near(&words, "gag"), ["`canine-gag`"]);
        assert!(near(&words, "harpoon").is_empty());
    }
}
