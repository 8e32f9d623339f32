//! A profile: as one more of the library and as a draft beside it. What is
//! read judges a vessel and can be printed.

use crate::{aboard, told};
use kitmuster::engine::Depth;
use kitmuster::load::Library;
use kitmuster::report::{self, Locale};
use std::sync::OnceLock;

const NAME: &str = "profile.yaml";

/// The vocabulary and the two lists that others are built on: small, since
/// the whole library is judged again with each profile that joins it.
fn small() -> &'static Library {
    static SMALL: OnceLock<Library> = OnceLock::new();
    SMALL.get_or_init(|| {
        let texts = [
            ("vocabulary.yaml", include_str!("../../requirements/vocabulary.yaml")),
            ("us-622-appendix-f.yaml", include_str!("../../requirements/us-622-appendix-f.yaml")),
        ];
        Library::from_texts(&texts).expect("a part of the shipped library is sound")
    })
}

pub fn run(text: &str) {
    let draft = small().draft_text(NAME, text);
    let joined = small().clone().add_text(NAME, text);
    match (draft, joined) {
        (Err(refusal), Ok(_)) => panic!("joins the library and is no draft: {refusal}"),
        (Err(refusal), Err(_)) => told::refusal(&refusal, NAME, text),
        (Ok(profile), joined) => {
            // A draft alone may be in force on days of another edition.
            if let Err(refusal) = joined {
                told::refusal(&refusal, NAME, text);
                assert!(refusal.to_string().contains("in force on some"), "{refusal}");
            }
            told::page(&report::profiles(&[profile.clone()], true, Locale::default(), told::WIDTH));
            if !profile.base {
                let (vessel, source) = aboard::vessel().clone();
                let asked = [profile];
                let check = aboard::orders(&asked, Depth::Findings).check(vessel, &[]);
                aboard::print(&check, &[source], &small().vocabulary);
            }
        }
    }
}
