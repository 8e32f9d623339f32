//! The pages of every command for the shipped vessels.

use super::leftovers::Known;
use crate::engine::{self, Depth, Request};
use crate::fleet::compare::compare;
use crate::fleet::draft::under_draft;
use crate::fleet::record::{AuditRecord, Entry, Making, Whole, again, newer};
use crate::fleet::{self, Audit, Files, Order, Orders, Records, Row, Selection};
use crate::freeing::{self, Options, Prepared, Question, Terms};
use crate::load::{self, Library, Refusal, Source};
use crate::measure::{Day, Units};
use crate::model::catalogue::Catalogue;
use crate::model::check::Check;
use crate::model::finding::Verdict;
use crate::model::vessel::{Trust, Vessel};
use crate::report::words::locale::Language;
use crate::report::{self, Locale, Subject};
use std::path::{Path, PathBuf};

/// Wider than any line, so that no text is broken.
const WIDTH: usize = 1_000;

const LOCALE: Locale = Locale { language: Language::MadeUp, units: Units::Both };

/// What is read and what pages are made of it.
pub(super) struct Press<'k> {
    library: Library,
    catalogues: Vec<Catalogue>,
    known: &'k mut Known,
    pages: Vec<(String, String)>,
}

fn day(text: &str) -> Day {
    Day::parse(text).unwrap()
}

/// The pages of all commands by their names; what their files say is learned.
pub(super) fn all(known: &mut Known) -> Vec<(String, String)> {
    let library = Library::shipped().unwrap();
    let catalogue =
        |name: &str| load::load_catalogue(Path::new(name), &library.vocabulary).unwrap().0;
    let catalogues = ["suppliers/port-ansel-chandlery.yaml", "suppliers/tarnholt-ship-stores.yaml"];
    let catalogues = catalogues.map(catalogue).into();
    let mut press = Press { library, catalogues, known, pages: Vec::new() };
    press.known.learn(&press.library.vocabulary);
    press.known.learn(&press.library.profiles);
    press.known.learn(&press.library.practice);
    press.known.learn(&press.catalogues);
    press.known.learn(&["USD"]);
    press.learn_pieces();
    let files = Files::find(&[PathBuf::from("vessels")]);
    for (index, path) in files.vessels.iter().flatten().enumerate() {
        let (vessel, source) = load::load_vessel(path, &press.library.vocabulary).unwrap();
        press.known.learn(&vessel);
        press.vessel(&vessel, &source);
        #[cfg(feature = "quote")]
        if index % 3 == 0 {
            press.quote(&vessel, &source);
        }
    }
    press.lists();
    press.fleet(&files);
    press.pages
}

impl Press<'_> {
    fn page(&mut self, name: &str, text: String) {
        self.pages.push((name.to_owned(), text));
    }

    /// What pages take apart of the files' texts.
    fn learn_pieces(&mut self) {
        let practice = self.library.practice.as_ref().unwrap();
        // A situation's title, of which the place stands in a heading.
        let situations = practice.situations.iter().chain(&practice.along);
        let titles = situations.map(|situation| situation.title.to_string());
        let pieces: Vec<_> = titles
            .filter_map(|title| title.rsplit_once(", ").map(|(a, b)| [a.to_owned(), b.to_owned()]))
            .collect();
        self.known.learn(&pieces);
        // What is never done, below a heading that says so.
        let nevers = practice.nevers.iter().map(|never| never.says.to_string());
        let nevers: Vec<_> =
            nevers.filter_map(|says| says.get("never ".len()..).map(str::to_owned)).collect();
        self.known.learn(&nevers);
        // A title that is broken to stand in a narrow column.
        let requirements = self.library.profiles.iter().flat_map(|of| &of.requirements);
        let titles: Vec<_> = requirements.map(|of| of.title.to_string()).collect();
        let lines =
            titles.iter().flat_map(|title| (38..=44).flat_map(|w| textwrap::wrap(title, w)));
        self.known.learn(&lines.collect::<Vec<_>>());
    }

    fn check(&self, vessel: &Vessel, trust: Trust, on: Day, back: Option<Day>) -> Check {
        engine::check(&Request {
            vocabulary: &self.library.vocabulary,
            profiles: &self.library.profiles,
            asked: &[],
            vessel,
            inspections: &[],
            departure: on,
            back,
            trust,
            depth: Depth::Whole,
        })
    }

    /// What `check`, `options`, `sheet` and `quote` make of one vessel.
    fn vessel(&mut self, vessel: &Vessel, source: &Source) {
        let (library, catalogues) = (self.library.clone(), self.catalogues.clone());
        let (locale, sources) = (LOCALE, [source.clone()]);
        let vocabulary = &library.vocabulary;
        let practice = library.practice.as_ref().unwrap();
        let prepared = Prepared::new(practice);
        let terms = Terms { vocabulary, prepared: &prepared, catalogues: &catalogues };
        let back = Some(day("2026-03-20"));
        let check = self.check(vessel, Trust::All, day("2026-03-09"), back);
        let options = freeing::of_check(&terms, &check);
        let shown = report::options::Shown {
            options: &options,
            practice,
            vocabulary,
            catalogues: &catalogues,
            sources: &sources,
            notices: &check.notices,
            locale,
        };
        let freeing = Some(shown);
        let subject = Subject { check: &check, vocabulary, sources: &sources, locale, freeing };
        let name = |page: &str| format!("{page} of {}", vessel.name);
        self.page(&name("check"), report::table(&subject, WIDTH));
        self.page(&name("check html"), report::check_html(&subject));
        self.page(&name("options"), report::options::table(&shown, WIDTH));
        self.page(&name("card"), report::options::html(&shown));
        for case in ["alongside,outside,circle,buried", "deck,swallowed", "alongside,tangled"] {
            let Ok(question) = Question::parse(case, practice) else { continue };
            let Ok(answers) = question.answers(practice) else { continue };
            let text = report::options::case(&shown, &question, &answers, WIDTH);
            self.page(&name("case"), text);
        }
        // The same where only measured figures are believed, later, with no
        // day of return.
        let late = self.check(vessel, Trust::Measured, day("2026-12-09"), None);
        self.page(&name("inspector"), report::sheet::for_inspector(&subject, Some(&late)));
        self.page(&name("skipper"), report::sheet::for_skipper(&subject, &late));
        let subject = Subject { check: &late, freeing: None, ..subject };
        self.page(&name("check"), report::table(&subject, WIDTH));
        self.page(&name("check html"), report::check_html(&subject));
    }

    #[cfg(feature = "quote")]
    fn quote(&mut self, vessel: &Vessel, source: &Source) {
        use crate::quote::{OneVessel, Order, quote};
        let one = OneVessel {
            file: source.file.clone(),
            vessel: vessel.clone(),
            inspections: Vec::new(),
            departure: day("2026-03-09"),
            back: Some(day("2026-03-20")),
        };
        let quote = quote(&Order {
            vocabulary: &self.library.vocabulary,
            profiles: &self.library.profiles,
            asked: &[],
            catalogues: &self.catalogues,
            vessels: &[one],
            ordered: day("2026-02-02"),
            with_recommended: true,
            one_supplier: false,
            explain: true,
            patience: std::time::Duration::from_secs(5),
        });
        let Ok(quote) = quote else { return };
        let shown = report::quote::Shown {
            quote: &quote,
            catalogues: &self.catalogues,
            vocabulary: &self.library.vocabulary,
            locale: LOCALE,
            customer: None,
            one_supplier: false,
            undated: &[0],
            refused: &[],
            left_out: &[],
        };
        let (table, html) = (report::quote::table(&shown, WIDTH), report::quote::html(&shown));
        self.page(&format!("quote {}", vessel.name), table);
        self.page(&format!("quote html {}", vessel.name), html);
    }

    /// The lists of what there is, and a refused file.
    fn lists(&mut self) {
        let (library, locale) = (self.library.clone(), LOCALE);
        self.page("profiles", report::profiles(&library.profiles, true, locale, WIDTH));
        self.page("words", report::vocabulary(&library.vocabulary, locale, WIDTH));
        for kind in library.vocabulary.kind_names.values() {
            self.page("words of a kind", report::kind(&library.vocabulary, *kind, locale, WIDTH));
        }
        self.page("schemas", report::wire::schema::list());
        let refusal = self.refusal();
        self.page("refused", report::refusals(&[refusal], WIDTH));
        self.known.learn(&report::wire::schema::FORMATS.iter().map(|f| f.name).collect::<Vec<_>>());
    }

    fn refusal(&mut self) -> Refusal {
        let text =
            "format: vessel/1\nname: Almeja\nkit: [{ mark: A, kind: pliers, overall: 6 }, 7]\n";
        let refusal = load::read_vessel("bad.yaml", text, &self.library.vocabulary).unwrap_err();
        self.known.learn(&refusal);
        refusal
    }

    /// What `audit` and `verify` make of all vessels.
    fn fleet(&mut self, files: &Files) {
        let (library, locale) = (self.library.clone(), LOCALE);
        let (mut records, refused) =
            Records::read(files.records.iter().map(PathBuf::as_path), &library.vocabulary);
        assert!(refused.is_empty());
        self.known.learn(files);
        let orders = |date: &str, on: &str| Orders {
            library: &library,
            asked: &[],
            on: Some(day(on)),
            back: None,
            date: day(date),
            trust: Trust::All,
            depth: Depth::Whole,
        };
        let (then, now) = (orders("2026-02-02", "2026-01-09"), orders("2026-11-02", "2026-11-09"));
        let left_out = fleet::settle(&now, &files.vessels, &mut records);
        let selection = Selection::default();
        let record = self.record(&then, files, &selection, &Records::default());
        let mut rows = fleet::rows(&now, &files.vessels, &records, |row| row, || ());
        rows.push(Row::Refused(self.refusal()));
        let against = compare(&record, &now, &selection, &rows);
        let draft = library.find("us-gulf-reef-fish-before-2019").unwrap();
        let drafted = under_draft(draft, &now, &selection, &rows);
        let mut audit =
            Audit::new(now.date, now.trust, rows, &library.vocabulary, &selection, Order::Input);
        audit.left_out = left_out;
        let practice = library.practice.as_ref().unwrap();
        let prepared = Prepared::new(practice);
        let terms = Terms {
            vocabulary: &library.vocabulary,
            prepared: &prepared,
            catalogues: &self.catalogues,
        };
        let options: Vec<Options> =
            audit.judged().map(|judged| freeing::of_check(&terms, &judged.check)).collect();
        let catalogues = self.catalogues.clone();
        let of = report::audit::Fleet {
            audit: &audit,
            vocabulary: &library.vocabulary,
            locale,
            against: Some(&against),
            draft: Some(&drafted),
            freeing: Some(report::audit::Freeing {
                practice,
                options: &options,
                catalogues: &catalogues,
            }),
        };
        self.page("audit", report::audit::table(&of, WIDTH));
        self.page("audit html", report::audit::html(&of));
        self.page("audit csv", report::audit::in_one_line(&against));
        self.page("audit csv", report::audit::draft_in_one_line(&drafted));
    }

    /// An audit on record, of which something was changed since, and the page
    /// that tells so.
    fn record(
        &mut self,
        orders: &Orders<'_>,
        files: &Files,
        selection: &Selection,
        records: &Records,
    ) -> AuditRecord {
        let rows = fleet::rows(orders, &files.vessels, records, |row| row, || ());
        let entries = rows.iter().filter_map(|row| match row {
            Row::Vessel(judged) => Some(Entry::new(judged, orders.date)),
            Row::Refused(_) => None,
        });
        let making = Making { orders, selection, auditor: Some("Auditor") };
        let mut record = making.record(entries.collect(), &[]);
        record.vessels[1].name = "Gone Away".to_owned();
        record.vessels[1].register = None;
        record.vessels[2].verdict = Verdict::CannotTell;
        for judgement in record.vessels.iter_mut().skip(3).flat_map(|vessel| &mut vessel.profiles) {
            judgement.findings.pop();
        }
        self.known.learn(&record);
        let (again, newer) = (again(&record).unwrap(), newer(&record, orders.library));
        let of = report::audit::record::Verified {
            record: &record,
            whole: &Whole::Unsaid,
            again: &again,
            newer: &newer,
            locale: LOCALE,
        };
        self.page("verify", report::audit::record::verified(&of, WIDTH));
        record
    }
}
