//! What the wall card says once on paper, so that it keeps to few pages, and
//! where it says it.

use super::{VESSELS, all, practice, run_options, shipped, technique_of, text};
use scraper::Html;
use std::collections::BTreeSet;

#[test]
fn the_card_for_a_limp_turtle_takes_the_place_of_the_box_that_would_repeat_it() {
    let practice = practice();
    let page = Html::parse_document(&run_options(&shipped("marlow-tern"), "html").stdout);
    let root = page.root_element();
    for case in ["limp-boardable", "limp-aboard"] {
        let line = all(root, &format!("[data-case=\"{case}\"]"))[0];
        let link = all(line, ".way > a.ref")[0];
        let technique = technique_of(&practice, root, &text(link));
        assert_eq!(technique.id, "recover", "{case}");
        let card = link.value().attr("href").unwrap();
        assert_eq!(all(root, &format!("section.card{card} svg[role=img]")).len(), 1, "{case}");
        assert!(text(all(line, ".uses")[0]).contains("TI-1"), "{case}: {}", text(line));
    }
}

/// On paper the cautions that several boxes of a page share stand once above
/// them, with the boxes; on a screen each box has its own.
#[test]
fn a_caution_that_boxes_share_stands_once_on_paper_and_in_each_box_on_a_screen() {
    let practice = practice();
    let mut told = 0;
    for vessel in VESSELS {
        let page = Html::parse_document(&run_options(&shipped(vessel), "html").stdout);
        let root = page.root_element();
        for sheet in all(root, "section.sheet") {
            let mut wanted: Vec<(String, Vec<String>)> = Vec::new();
            for of in all(sheet, "article.box") {
                let place = of.value().id().unwrap();
                for caution in &technique_of(&practice, root, place).cautions {
                    let clause = caution.cited.as_ref().map_or("", |cited| &cited.clause);
                    let whole = format!("{} ({clause}", caution.says);
                    match wanted.iter_mut().find(|(own, _)| *own == whole) {
                        Some((_, places)) => places.push(place.to_owned()),
                        None => wanted.push((whole, vec![place.to_owned()])),
                    }
                }
            }
            let once: Vec<String> = all(sheet, ".shared.on-paper").into_iter().map(text).collect();
            assert_eq!(once.len(), wanted.iter().filter(|(_, places)| places.len() > 1).count());
            for (whole, places) in wanted {
                let line = once.iter().filter(|line| line.contains(&whole)).collect::<Vec<_>>();
                for place in &places {
                    let own: Vec<bool> = all(sheet, &format!("#{place} > .own"))
                        .into_iter()
                        .filter(|own| text(*own).contains(&whole))
                        .map(|own| own.value().classes().any(|class| class == "on-screen"))
                        .collect();
                    assert_eq!(own, [places.len() > 1], "{vessel}: {place}");
                }
                if places.len() > 1 {
                    assert!(line[0].starts_with(&format!("{}: ", places.join(", "))), "{line:?}");
                    told += 1;
                }
            }
        }
    }
    assert!(told > 0);
}

/// A drawing that two boxes of a page share is on paper in one of them, and
/// the other says which.
#[test]
fn a_drawing_stands_once_on_a_page_of_paper_and_in_each_box_on_a_screen() {
    let practice = practice();
    let page = Html::parse_document(&run_options(&shipped("amber-shearwater"), "html").stdout);
    let root = page.root_element();
    let mut again = 0;
    for sheet in all(root, "section.sheet") {
        let mut drawn: BTreeSet<String> = BTreeSet::new();
        for of in all(sheet, "article.box") {
            let place = of.value().id().unwrap();
            let Some(name) = technique_of(&practice, root, place).drawing.clone() else { continue };
            assert_eq!(all(of, "svg[role=img] title").len(), 1, "{place}");
            if all(of, ".on-screen svg").is_empty() {
                assert!(drawn.insert(name), "{place}");
                continue;
            }
            let says = text(all(of, ".small .on-paper")[0]);
            let other = says.trim_start_matches("Drawn at ").trim_end_matches('.');
            let other = technique_of(&practice, root, other);
            assert_eq!(other.drawing.as_deref(), Some(name.as_str()), "{place}: {says}");
            again += 1;
        }
    }
    assert_eq!(again, 1);
}
