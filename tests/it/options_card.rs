//! The wall card: the same answers as the JSON, every step, prohibition and
//! caution where it belongs, and nothing in it that does anything.

mod paper;

use crate::run::{self, Ran, home, write};
use kitmuster::freeing;
use kitmuster::freeing::Prepared;
use kitmuster::load::{self, Library};
use kitmuster::measure::Day;
use kitmuster::model::technique::{Practice, Technique};
use kitmuster::model::vessel::Trust;
use kitmuster::report::Locale;
use kitmuster::report::options as report;
use scraper::{ElementRef, Html, Selector};
use serde_json::Value;
use std::collections::BTreeSet;
use std::sync::Arc;

const VESSELS: [&str; 6] = [
    "amber-shearwater",
    "copper-dunlin",
    "ida-quarrel",
    "marlow-tern",
    "salt-pomelo",
    "long-meridian",
];

fn run_options(vessel: &str, format: &str) -> Ran {
    run::kitmuster(&[
        "options",
        vessel,
        "--on",
        "2026-12-02",
        "--return",
        "2026-12-09",
        "--format",
        format,
    ])
}

fn shipped(name: &str) -> String {
    home().join(format!("vessels/{name}.yaml")).to_string_lossy().into_owned()
}

fn practice() -> Arc<Practice> {
    Library::shipped().unwrap().practice.unwrap()
}

fn all<'a>(below: ElementRef<'a>, selector: &str) -> Vec<ElementRef<'a>> {
    below.select(&Selector::parse(selector).unwrap()).collect()
}

fn text(element: ElementRef<'_>) -> String {
    let text = element.text().collect::<String>().replace('\u{a0}', " ");
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

fn strings(value: &Value) -> Vec<&str> {
    value.as_array().unwrap().iter().map(|one| one.as_str().unwrap()).collect()
}

/// The technique that a box of the card shows, by its title, or the first that
/// a card tells in its own words.
fn technique_of<'a>(practice: &'a Practice, root: ElementRef<'_>, place: &str) -> &'a Technique {
    let on_card = all(root, &format!("section.card[id=\"{place}\"] .way-here b"));
    if let Some(title) = on_card.first() {
        let title = text(*title).trim_end_matches(':').to_owned();
        return practice.techniques.iter().find(|t| t.title.to_string() == title).unwrap();
    }
    let boxes = all(root, &format!("article.box[id=\"{place}\"]"));
    assert_eq!(boxes.len(), 1, "{place}");
    let heading = text(all(boxes[0], "h3")[0]);
    let title = heading.strip_prefix(place).unwrap().trim();
    practice.techniques.iter().find(|t| t.title.to_string() == title).unwrap()
}

#[test]
fn every_situation_of_the_json_stands_once_with_its_best_way_or_a_loud_word() {
    let practice = practice();
    for vessel in VESSELS {
        let json = run_options(&shipped(vessel), "json").json();
        let page = Html::parse_document(&run_options(&shipped(vessel), "html").stdout);
        let root = page.root_element();
        for situation in json["situations"].as_array().unwrap() {
            let id = situation["id"].as_str().unwrap();
            let places = all(root, &format!("[data-case=\"{id}\"]"));
            assert_eq!(places.len(), 1, "{vessel}: {id}");
            let within = |selector: &str| {
                let of = all(root, selector);
                of.iter().any(|e| e.descendants().any(|node| node.id() == places[0].id()))
            };
            let (loud, unclear) = (within(".loud.bad"), within(".loud.open"));
            if situation["hooks"] == "none-aboard" {
                assert_eq!(places[0].value().name(), "span", "{vessel}: {id}");
                continue;
            }
            match situation["standing"].as_str().unwrap() {
                "nothing" => assert!(loud, "{vessel}: {id}"),
                "cannot-tell" => assert!(unclear, "{vessel}: {id}"),
                _ => {
                    assert!(!loud && !unclear, "{vessel}: {id}");
                    let best = &situation["choices"]
                        [usize::try_from(situation["best"].as_u64().unwrap()).unwrap()];
                    let refs = all(places[0], ".way > a.ref");
                    let led: Vec<&str> = refs
                        .iter()
                        .map(|a| technique_of(&practice, root, &text(*a)).id.as_str())
                        .collect();
                    assert_eq!(led, strings(&best["techniques"]), "{vessel}: {id}");
                    for tool in best["tools"].as_array().unwrap() {
                        let marks = text(all(places[0], ".uses")[0]);
                        assert!(
                            marks.contains(tool["mark"].as_str().unwrap()),
                            "{vessel}: {id}: {marks}"
                        );
                    }
                    let labels = all(places[0], ".better .label").len();
                    // The best of those that are closed, and of those open to doubt.
                    let best = usize::try_from(situation["best"].as_u64().unwrap()).unwrap();
                    // The best itself where its tools are short.
                    let choices = situation["choices"].as_array().unwrap();
                    let short = choices[best]["short"] == true;
                    let better = &choices[..best + usize::from(short)];
                    let answers: BTreeSet<(&str, bool)> = better
                        .iter()
                        .map(|c| (c["answer"].as_str().unwrap(), c["short"] == true))
                        .collect();
                    assert_eq!(labels, answers.len(), "{vessel}: {id}");
                }
            }
        }
    }
}

#[test]
fn loud_boxes_say_that_there_is_no_way_and_what_to_get_or_measure_first() {
    let page = Html::parse_document(&run_options(&shipped("copper-dunlin"), "html").stdout);
    let root = page.root_element();
    let bad = text(all(root, ".loud.bad")[0]);
    assert!(bad.contains("NO WAY AT ALL with this kit"), "{bad}");
    assert!(bad.contains("Get first: Bring a long-handled line cutter"), "{bad}");
    let open = text(all(root, ".loud.open")[0]);
    assert!(open.contains("CAN'T TELL whether any way is open"), "{open}");
    assert!(
        open.contains("Measure first: Measure the monofilament that it cuts of MC-1"),
        "{open}"
    );
}

/// What a technique says beside its steps, with its source.
fn said(technique: &Technique) -> Vec<String> {
    let says = technique.stop.iter().chain(technique.cautions.iter().map(|c| &c.says));
    says.map(ToString::to_string).chain([technique.cited.clause.clone()]).collect()
}

#[test]
fn each_technique_that_is_the_best_somewhere_stands_once_with_all_that_it_says() {
    let practice = practice();
    for vessel in VESSELS {
        let page = Html::parse_document(&run_options(&shipped(vessel), "html").stdout);
        let root = page.root_element();
        let led: BTreeSet<String> = all(root, "a.ref").into_iter().map(text).collect();
        let boxes = all(root, "article.box");
        let shown: BTreeSet<String> =
            boxes.iter().map(|b| b.value().id().unwrap().to_owned()).collect();
        assert_eq!(boxes.len(), shown.len(), "{vessel}");
        for of in boxes {
            let technique = technique_of(&practice, root, of.value().id().unwrap());
            let steps: Vec<String> = all(of, ".steps li").into_iter().map(text).collect();
            let own: Vec<String> = technique.steps.iter().map(|s| s.says.to_string()).collect();
            assert_eq!(steps, own, "{vessel}: {}", technique.id);
            let whole = text(of);
            for says in said(technique) {
                assert!(whole.contains(&says), "{vessel}: {}: {says}", technique.id);
            }
        }
        let mut on_cards = BTreeSet::new();
        for card in all(root, "section.card:has(.way-here)") {
            let place = card.value().id().unwrap();
            let technique = technique_of(&practice, root, place);
            let whole = text(all(card, ".way-here")[0]);
            let steps = technique.steps.iter().map(|step| step.says.to_string());
            for says in said(technique).into_iter().chain(steps) {
                assert!(whole.contains(&says), "{vessel}: {}: {says}", technique.id);
            }
            on_cards.insert(place.to_owned());
        }
        assert_eq!(led, shown.union(&on_cards).cloned().collect(), "{vessel}");
    }
}

#[test]
fn what_closes_a_better_choice_stands_on_the_same_page_once_with_what_opens_it() {
    let page = Html::parse_document(&run_options(&shipped("salt-pomelo"), "html").stdout);
    let mut told = 0;
    for sheet in all(page.root_element(), ".sheet") {
        let asked: BTreeSet<String> = all(sheet, ".better .label").into_iter().map(text).collect();
        let rows: Vec<String> = all(sheet, ".closed .label").into_iter().map(text).collect();
        assert_eq!(rows.iter().cloned().collect::<BTreeSet<_>>(), asked);
        assert_eq!(rows.len(), asked.len());
        let texts: Vec<String> = all(sheet, ".closed li div").into_iter().map(text).collect();
        assert_eq!(texts.iter().collect::<BTreeSet<_>>().len(), texts.len(), "{texts:?}");
        for row in &texts {
            assert!(row.contains("Opens it: "), "{row}");
            told += 1;
        }
    }
    assert_eq!(told, 4);
}

#[test]
fn every_page_has_the_cautions_and_what_the_card_is_not() {
    let practice = practice();
    let page = Html::parse_document(&run_options(&shipped("marlow-tern"), "html").stdout);
    let sheets = all(page.root_element(), ".sheet");
    assert_eq!(sheets.len(), 3);
    for sheet in sheets {
        let foot = text(all(sheet, ".foot")[0]);
        for caution in &practice.cautions {
            assert!(foot.contains(&caution.to_string()), "{foot}");
        }
        for word in [
            "An aid for trained crews",
            "permit",
            "local law",
            "veterinarian's word",
            "Marlow Tern",
        ] {
            assert!(foot.contains(word), "{word}: {foot}");
        }
    }
}

#[test]
fn each_prohibition_that_applies_stands_once_on_its_page() {
    let practice = practice();
    let page = Html::parse_document(&run_options(&shipped("marlow-tern"), "html").stdout);
    let mut said: BTreeSet<String> = BTreeSet::new();
    for (sheet, word) in
        all(page.root_element(), "section.sheet").into_iter().zip(["alongside", "aboard"])
    {
        let nevers: Vec<String> = all(sheet, ".never li").into_iter().map(text).collect();
        assert_eq!(nevers.iter().collect::<BTreeSet<_>>().len(), nevers.len(), "{nevers:?}");
        let here = practice.situations.iter().chain(&practice.along).filter(|situation| {
            let index = practice.facts[0].words.iter().position(|w| w.word == word).unwrap();
            situation.when.words(0) == Some(&[index])
        });
        let applies: BTreeSet<String> = here
            .flat_map(|situation| practice.nevers_of(situation))
            .map(|never| never.says.to_string())
            .collect();
        let heads = |says: &str| format!("Never {}.", says.trim_end_matches('.'));
        let shown: BTreeSet<String> = nevers.iter().map(|says| heads(says)).collect();
        assert_eq!(shown, applies, "{word}");
        said.extend(shown);
    }
    let known: BTreeSet<String> = practice.nevers.iter().map(|n| n.says.to_string()).collect();
    assert_eq!(said, known, "every prohibition stands on some page");
}

#[test]
fn the_cards_for_recovery_and_release_stand_together_with_steps_and_sources() {
    let practice = practice();
    let page = Html::parse_document(&run_options(&shipped("marlow-tern"), "html").stdout);
    let cards = all(page.root_element(), ".sheet section.card");
    assert_eq!(cards.len(), practice.cards.len());
    for (card, own) in cards.into_iter().zip(&practice.cards) {
        let whole = text(card);
        assert!(text(all(card, "h2")[0]).ends_with(&own.title.to_string()), "{whole}");
        assert_eq!(all(card, ".steps li").len(), own.steps.len());
        assert_eq!(all(card, "svg[role=img] title").len(), 1);
        for line in own.steps.iter().chain(&own.nevers).chain(&own.cautions) {
            assert!(whole.contains(&line.says.to_string()), "{}: {whole}", line.says);
            if let Some(cited) = &line.cited {
                assert!(whole.contains(&cited.clause), "{}: {whole}", cited.clause);
            }
        }
        assert!(
            whole.contains(&own.cited.clause) && whole.contains("edition before 20 December 2019")
        );
        assert!(whole.contains("the clause was read"), "{whole}");
    }
}

#[test]
fn headings_go_down_step_by_step_and_every_link_has_its_place() {
    for vessel in VESSELS {
        let page = Html::parse_document(&run_options(&shipped(vessel), "html").stdout);
        let root = page.root_element();
        let mut before = 0;
        for heading in all(root, "h1, h2, h3, h4, h5, h6") {
            let level: usize = heading.value().name()[1..].parse().unwrap();
            assert!(level <= before + 1, "{vessel}: {}", text(heading));
            before = level;
        }
        assert_eq!(all(root, "h1").len(), 1);
        let ids: Vec<&str> = all(root, "[id]").iter().filter_map(|e| e.value().id()).collect();
        let unique: BTreeSet<&str> = ids.iter().copied().collect();
        assert_eq!(ids.len(), unique.len(), "{vessel}: {ids:?}");
        for link in all(root, "a") {
            let place = link.value().attr("href").unwrap().strip_prefix('#').unwrap();
            assert!(unique.contains(place), "{vessel}: {place}");
        }
    }
}

/// A vessel whose name and marks are markup.
const HOSTILE: &str = "format: vessel/1
name: <script>alert(1)</script>
declared: { by: A. Ferrow, on: 2026-11-20, figures: measured, condition: serviceable }
freeboard: 2 ft 10 in
trip: { depart: 2026-12-02, return: 2026-12-09 }
kit:
  - { mark: </style><img src=x onerror=alert(2)>, kind: dip net, handle: 7 ft }
  - { mark: T-1, kind: tire }
";

#[test]
fn a_name_and_a_mark_that_are_markup_are_shown_and_do_nothing() {
    let folder = tempfile::tempdir().unwrap();
    let path = write(folder.path(), "vessel.yaml", HOSTILE);
    let ran = run_options(&path, "html");
    assert!(ran.stdout.contains("&lt;script&gt;alert(1)&lt;/script&gt;"), "{}", ran.page());
    assert!(!ran.stdout.contains("<script") && !ran.stdout.contains("<img"), "{}", ran.page());
    let page = Html::parse_document(&ran.stdout);
    let root = page.root_element();
    assert_eq!(all(root, "style").len(), 1);
    let uses: Vec<String> = all(root, ".uses").into_iter().map(text).collect();
    assert!(uses.iter().any(|u| u.contains("</style><img src=x onerror=alert(2)>")), "{uses:?}");
}

#[test]
fn characters_that_steer_a_screen_are_shown_by_their_codes() {
    let library = Library::shipped().unwrap();
    let practice = practice();
    let (mut vessel, source) =
        load::read_vessel("vessel.yaml", HOSTILE, &library.vocabulary).unwrap();
    // The loader refuses such text; a card is safe all the same.
    vessel.name = "Tern\u{202e}\u{1b}[31m".to_owned();
    vessel.kit[0].mark = "DN\u{200b}-\u{7}1".to_owned();
    let days = ["2026-12-02", "2026-12-09"].map(|day| Day::parse(day).unwrap());
    let options = freeing::options(&freeing::Request {
        terms: freeing::Terms {
            vocabulary: &library.vocabulary,
            prepared: &Prepared::new(&practice),
            catalogues: &[],
        },
        vessel: &vessel,
        inspections: &[],
        departure: days[0],
        back: Some(days[1]),
        trust: Trust::All,
    });
    let card = report::html(&report::Shown {
        options: &options,
        practice: &practice,
        vocabulary: &library.vocabulary,
        catalogues: &[],
        sources: &[source],
        notices: &[],
        locale: Locale::default(),
    });
    assert!(!card.contains(['\u{202e}', '\u{200b}', '\u{1b}', '\u{7}']));
    assert!(card.contains("Tern\\u{202e}\\u{1b}[31m"), "{card}");
    assert!(card.contains("DN\\u{200b}-\\u{7}1"), "{card}");
}

#[test]
fn the_card_is_one_file_that_asks_for_nothing() {
    let text = run_options(&shipped("marlow-tern"), "html").stdout;
    for word in ["http:", "https:", "url(", "@import", "<script", "<link", "src="] {
        assert!(!text.contains(word), "{word}");
    }
    assert!(text.contains("default-src 'none'"));
}

/// Marlow Tern's only cutter that reaches the water is too short: should the
/// net fail, nothing cuts the line. Amber Shearwater has one that does.
#[test]
fn a_way_behind_which_nothing_cuts_the_line_says_so() {
    let of = |vessel: &str| {
        let page = Html::parse_document(&run_options(&shipped(vessel), "html").stdout);
        let said: Vec<String> = all(page.root_element(), ".else").into_iter().map(text).collect();
        said
    };
    let lacking = |said: &[String]| said.iter().filter(|s| *s == "else no line cut").count();
    let (without, with) = (of("salt-pomelo"), of("amber-shearwater"));
    assert_eq!(lacking(&without), 3, "{without:?}");
    assert_eq!(lacking(&with), 0, "{with:?}");
    assert!(with.len() > 5, "{with:?}");
}

#[test]
fn what_bears_on_the_whole_card_stands_on_it() {
    let folder = tempfile::tempdir().unwrap();
    let notes = |trip: &str| {
        let vessel = std::fs::read_to_string(shipped("marlow-tern")).unwrap();
        let planned = vessel.lines().find(|line| line.starts_with("trip:")).unwrap();
        let path = write(folder.path(), "v.yaml", &vessel.replace(planned, trip));
        let typed = ["options", &path, "--format", "html"];
        let page = Html::parse_document(&run::kitmuster(&typed).stdout);
        all(page.root_element(), "p.note").into_iter().map(text).collect::<Vec<_>>()
    };
    assert_eq!(notes("trip: { depart: 2026-12-02, return: 2026-12-09 }"), [""; 0]);
    let alone = notes("trip: { depart: 2026-12-02 }");
    assert_eq!(alone, ["Note: no day of return is known: judged as a trip of one day."]);
}
