//! The pictures: named and described, within their frames, and with the same
//! figures as the check.

use super::{all, audit, checks, list, one, said, text};
use crate::run::{kitmuster, write};
use scraper::{ElementRef, Html};

fn number(element: ElementRef<'_>, name: &str) -> Option<f64> {
    let written = element.value().attr(name)?;
    let number: f64 = written.parse().unwrap_or_else(|_| panic!("{name}={written}"));
    assert!(number.is_finite(), "{name}={written}");
    Some(number)
}

fn frame(svg: ElementRef<'_>) -> (f64, f64) {
    let written = svg.value().attr("viewBox").unwrap();
    let numbers: Vec<f64> = written.split(' ').map(|n| n.parse().unwrap()).collect();
    assert_eq!(&numbers[..2], [0.0, 0.0], "{written}");
    (numbers[2], numbers[3])
}

#[test]
fn every_picture_is_named_and_described_and_has_its_facts_beside_it() {
    for page in [audit("vessels"), audit("tests/browser/hostile")] {
        let pictures = all(page.root_element(), "svg");
        assert!(pictures.len() > 5);
        for svg in pictures {
            assert_eq!(svg.value().attr("role"), Some("img"));
            let (title, desc) = (one(svg, "title"), one(svg, "desc"));
            let ids = [title, desc].map(|e| e.value().id().unwrap().to_owned());
            assert_eq!(svg.value().attr("aria-labelledby").unwrap(), ids.join(" "));
            assert!(text(title).len() > 10 && text(desc).len() > 20, "{}", svg.html());
            let figure = svg.parent().and_then(ElementRef::wrap).unwrap();
            assert!(text(one(figure, "figcaption")).len() > 20, "{}", figure.html());
        }
    }
}

#[test]
fn everything_drawn_lies_within_its_frame() {
    let mut shapes = 0;
    for page in [audit("vessels"), audit("tests/browser/hostile")] {
        for svg in all(page.root_element(), "svg") {
            let (width, height) = frame(svg);
            for shape in all(svg, "line, rect, circle, text") {
                let at = |name: &str| number(shape, name);
                let (x, y) = (at("x").or(at("cx")), at("y").or(at("cy")));
                let grown = at("r").unwrap_or(0.0);
                let right = x.map(|x| x + at("width").unwrap_or(grown));
                let bottom = y.map(|y| y + at("height").unwrap_or(grown));
                let left = x.map(|x| x - grown);
                let top = y.map(|y| y - grown);
                for x in [left, right, at("x1"), at("x2")].into_iter().flatten() {
                    assert!(
                        (-0.1..=width + 0.1).contains(&x),
                        "{} in {}",
                        shape.html(),
                        svg.html()
                    );
                }
                for y in [top, bottom, at("y1"), at("y2")].into_iter().flatten() {
                    assert!(
                        (-0.1..=height + 0.1).contains(&y),
                        "{} in {}",
                        shape.html(),
                        svg.html()
                    );
                }
                shapes += 1;
            }
        }
    }
    assert!(shapes > 1000, "only {shapes} shapes");
}

#[test]
fn the_reach_drawing_tells_the_figures_of_the_check() {
    let mut told = 0;
    for page in [audit("vessels"), audit("tests/browser/hostile")] {
        for (article, check) in checks(&page) {
            let figures: Vec<_> = all(article, ".panels figure").into_iter().map(text).collect();
            for finding in list(&check["profiles"]).iter().flat_map(|p| list(&p["findings"])) {
                let short = list(&finding["reasons"]).iter();
                let short = short.filter(|reason| reason["code"] == "too-short-for-rail");
                for reason in short.take(1) {
                    let mark = said(&reason["tool"]);
                    let figure =
                        figures.iter().find(|f| f.contains(mark) && f.contains("too short"));
                    let figure = figure.unwrap_or_else(|| panic!("{mark}: {figures:?}"));
                    for part in [&reason["has"]["text"], &reason["by"]["text"]] {
                        assert!(figure.contains(said(part)), "{part}: {figure}");
                    }
                    let least = said(&reason["demand"]["text"]);
                    assert!(figure.contains(least), "{least}: {figure}");
                    told += 1;
                }
            }
        }
    }
    assert!(told > 2, "only {told} tools are too short");
}

/// The page of a vessel with one long tool under a rule that asks 100 % of
/// the freeboard.
fn page(freeboard: &str, handle: &str) -> Html {
    let folder = tempfile::tempdir().unwrap();
    let rule = "format: profile/1\nid: one-pole\nrule: one-pole\nedition: first\nencoding: 1\n\
        title: One pole\nsource: invented\nlanguage: en\nstanding: rule\n\
        freeboard from: top of the rail\nrequirements:\n  - id: cutter\n    title: Cutter\n    \
        clause: \"1\"\n    verified: read\n    carry: 1 long-handled line cutter\n    \
        with: { handle: at least 100% of freeboard }\n";
    let vessel = format!(
        "format: vessel/1\nname: Pole Star\n{freeboard}permits: []\ngear: []\nareas: []\n\
         trip: {{ depart: 2026-12-02, return: 2026-12-03 }}\nkit:\n  - {{ mark: LC-1, \
         kind: long-handled line cutter, {handle}condition: serviceable }}\n"
    );
    let rule = write(folder.path(), "one-pole.yaml", rule);
    let vessel = write(folder.path(), "vessel.yaml", &vessel);
    let ran = kitmuster(&["check", &vessel, "--profile", &rule, "--format", "html"]);
    assert!(ran.status < 2, "{}", ran.stderr);
    Html::parse_document(&ran.stdout)
}

/// The text of her pictures.
fn drawn(freeboard: &str, handle: &str) -> String {
    let page = page(freeboard, handle);
    let pictures = all(page.root_element(), ".picture").into_iter().map(text);
    pictures.collect::<Vec<_>>().join("\n")
}

#[test]
fn a_legal_length_that_does_not_reach_or_only_touches_is_shown_as_such() {
    // 12 in of 6 ft are held inboard; at 30 degrees the other 60 in reach
    // 60 in x cos 30 = 51.96 in down.
    let above = drawn("freeboard: 6 ft\n", "handle: 6 ft, ");
    assert!(above.contains("it ends 1 ft 8 1/4 in (510 mm) above the water"), "{above}");
    assert!(!above.contains("too short"), "{above}");
    let touches = drawn("freeboard: 50 in\n", "handle: 6 ft, ");
    assert!(touches.contains("it only just touches the water"), "{touches}");
    let into = drawn("freeboard: 4 ft\n", "handle: 6 ft, ");
    assert!(into.contains("3 3/4 in (100 mm) into the water"), "{into}");
    for told in [&above, &touches, &into] {
        assert!(told.contains("12 in (305 mm)") && told.contains("30 degrees"), "{told}");
        assert!(told.contains("common practice, no source"), "{told}");
    }
}

#[test]
fn without_a_freeboard_the_drawing_says_so() {
    let unknown = drawn("", "handle: 6 ft, ");
    assert!(unknown.contains("Not drawn: the freeboard is not known"), "{unknown}");
    let deck = drawn("freeboard: 4 ft from the working deck\n", "handle: 6 ft, ");
    assert!(deck.contains("taken from the working deck"), "{deck}");
    assert!(deck.contains("counts from the top of the rail"), "{deck}");
}

#[test]
fn both_ends_of_a_range_are_drawn_and_told() {
    let range = drawn("freeboard: 3 ft 10 in to 4 ft 2 in\n", "handle: 4 ft, ");
    for part in ["freeboard 3 ft 10 in", "to 4 ft 2 in", "2 in (51 mm) too short"] {
        assert!(range.contains(part), "{part}: {range}");
    }
}

#[test]
fn an_unmeasured_tool_is_drawn_as_long_as_is_asked_and_called_unmeasured() {
    let told = drawn("freeboard: 4 ft\n", "");
    assert!(told.contains("handle not measured, at least 4 ft (1.22 m) asked"), "{told}");
}

#[test]
fn the_freeboard_line_tells_every_stretch() {
    let page = audit("vessels");
    let mut stretches = 0;
    for (article, check) in checks(&page) {
        for (number, profile) in list(&check["profiles"]).iter().enumerate() {
            let id = format!("#{}-p{number}-board", article.value().id().unwrap());
            let Some(svg) = all(article, &id).into_iter().next() else { continue };
            let all_of_it = list(&profile["stretches"]);
            let drawn = all(svg, ".lane-good, .lane-open, .lane-bad");
            let mut same: Vec<_> = all_of_it.iter().map(|s| (&s["verdict"], &s["fails"])).collect();
            same.dedup();
            assert_eq!(drawn.len(), same.len());
            let facts = text(one(svg, "desc"));
            for title in list(&profile["good_up_to"]["gives_out"]) {
                let findings = list(&profile["findings"]).iter();
                let titles =
                    findings.filter(|f| f["requirement"] == *title).map(|f| said(&f["title"]));
                for title in titles {
                    assert!(facts.contains(title), "{title}: {facts}");
                }
            }
            stretches += drawn.len();
        }
    }
    assert!(stretches > 20, "only {stretches} stretches");
}

#[test]
fn the_time_line_tells_the_last_good_day_of_what_serves() {
    let page = audit("vessels");
    let root = page.root_element();
    let of = |name: &str| {
        let articles = all(root, "article.vessel");
        let article = articles.into_iter().find(|a| text(one(*a, "h2")) == name).unwrap();
        all(article, ".picture").into_iter().map(text).collect::<Vec<_>>().join("\n")
    };
    let shearwater = of("Amber Shearwater");
    assert!(shearwater.contains("ready until 2027-09-13"), "{shearwater}");
    assert!(shearwater.contains("good through 2027-09-13"), "{shearwater}");
    let petrel = of("Winter Petrel");
    assert!(petrel.contains("certificate of"), "{petrel}");
    assert!(petrel.contains("good through 2024-03-07"), "{petrel}");
    let whimbrel = of("Night Whimbrel");
    assert!(whimbrel.contains("✕ to 2026-12-09, during the trip"), "{whimbrel}");
    assert!(whimbrel.contains("inspection of BC-1: good through 2026-12-09"), "{whimbrel}");
    assert!(of("Marlow Tern").contains("Nothing that serves has a last day"), "Marlow Tern");
}

#[test]
fn her_own_freeboard_is_marked_and_told_where_it_is_the_rules() {
    for (freeboard, marks, told) in [
        ("4 ft", 1, "The vessel's own freeboard: 4 ft (1.219 m) from the top of the rail"),
        (
            "3 ft 10 in to 4 ft 2 in",
            2,
            "The vessel's own freeboards: 3 ft 10 in (1.168 m) to 4 ft 2 in (1.27 m) from the top",
        ),
        (
            "4 ft from the working deck",
            0,
            "The vessel's own freeboard, from the top of the rail, is not known",
        ),
    ] {
        let page = page(&format!("freeboard: {freeboard}\n"), "handle: 6 ft, ");
        let board = one(page.root_element(), "svg[id$=\"-board\"]");
        assert_eq!(all(board, "line.own").len(), marks, "{freeboard}");
        assert!(text(one(board, "desc")).contains(told), "{}", board.html());
    }
}

#[test]
fn what_serves_twice_is_named_once_on_the_time_line() {
    let folder = tempfile::tempdir().unwrap();
    let vessel = std::fs::read_to_string(crate::run::home().join("vessels/winter-petrel.yaml"));
    let dated = vessel.unwrap().replace("    end: j\n", "    end: j\n    expires: 2024-05-01\n");
    let path = write(folder.path(), "v.yaml", &dated);
    let ran = kitmuster(&["check", &path, "--format", "html"]);
    let page = Html::parse_document(&ran.stdout);
    let keys: Vec<_> = all(page.root_element(), "ul.keyed li").into_iter().map(text).collect();
    let told: Vec<_> = keys.iter().filter(|key| key.contains("DE-1")).collect();
    assert_eq!(told.len(), 1, "{keys:?}");
    assert_eq!(told[0].matches("DE-1").count(), 1, "{told:?}");
}
