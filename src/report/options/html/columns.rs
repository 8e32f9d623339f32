//! In which order the boxes of a page stand, so that two columns of paper
//! hold them with little room lost.
//!
//! Imports `model`. Heights are guesses from how much is written, in tenths
//! of a millimetre; the browser lays out, so a wrong guess costs paper only.

use super::parts::cited;
use crate::model::technique::{Line, Technique};
use crate::report::Locale;

/// What fits on a line of a column: of a heading, of a step, of a step beside
/// a drawing, of a caution and of small print, in letters of the narrow type.
const HEADING: usize = 32;
const STEP: usize = 50;
const BESIDE: usize = 33;
const CAUTION: usize = 58;
const SMALL: usize = 66;

/// How high such lines are, and what a box has around them.
const HEADING_LINE: usize = 64;
const STEP_LINE: usize = 45;
const CAUTION_LINE: usize = 38;
const SMALL_LINE: usize = 34;
const FRAME: usize = 40;
/// How high a drawing is.
const DRAWING: usize = 210;

/// How much must be won before boxes leave the order of their techniques.
const WORTH_IT: usize = 40;

/// Of how many boxes every split is tried; those after them stay in the first
/// column.
const MOST: usize = 12;

/// Lines that a text takes.
fn lines(text: &str, room: usize) -> usize {
    text.chars().count().div_ceil(room).max(1)
}

/// How high the box of a technique is, with the cautions that stand in it and
/// with or without a drawing.
pub(super) fn height(
    technique: &Technique,
    cautions: &[&Line],
    drawn: bool,
    locale: Locale,
) -> usize {
    let mut left = if drawn { DRAWING } else { 0 };
    let mut high = FRAME + HEADING_LINE * lines(&format!("{} A1 ", technique.title), HEADING);
    for step in &technique.steps {
        let room = if left > 0 { BESIDE } else { STEP };
        let own = STEP_LINE * lines(&step.says.to_string(), room);
        high += own;
        left = left.saturating_sub(own);
    }
    let stops: Vec<String> = technique.stop.iter().map(ToString::to_string).collect();
    if !stops.is_empty() {
        let room = if left > STEP_LINE { BESIDE } else { STEP };
        let label = locale.options_card_stop_when();
        let own = STEP_LINE * lines(&format!("{label} {}", stops.join(" ")), room);
        high += own;
        left = left.saturating_sub(own);
    }
    high += left;
    for caution in cautions {
        let clause = caution.cited.as_ref().map_or("", |cited| &cited.clause);
        high += CAUTION_LINE * lines(&format!("{} ({clause})", caution.says), CAUTION);
    }
    high + SMALL_LINE * lines(&cited(&technique.cited, locale), SMALL)
}

/// How high a box of rows is, by the texts of its rows, over one column or
/// over both.
pub(super) fn height_of_rows(rows: &[String], whole: bool) -> usize {
    if rows.is_empty() {
        return 0;
    }
    let times = if whole { 2 } else { 1 };
    let rows = rows.iter().map(|row| 10 + CAUTION_LINE * lines(row, 54 * times));
    FRAME + HEADING_LINE + rows.sum::<usize>()
}

/// The order of boxes, each with its height, of which a browser makes two
/// columns of the least height; and that height. What is `last` ends the
/// second column, whatever the order of the others.
pub(super) fn order(boxes: &[(usize, usize)], last: usize) -> (Vec<usize>, usize) {
    let bit = |at: usize| u32::try_from(at).unwrap_or(u32::MAX);
    let as_they_are = boxes.iter().map(|(index, _)| *index).collect::<Vec<_>>();
    let splits = 0..1_usize << boxes.len().min(MOST);
    let tried = splits.map(|split| {
        let side = |wanted: usize| {
            let own = boxes
                .iter()
                .enumerate()
                .filter(move |(at, _)| split.checked_shr(bit(*at)).unwrap_or(0) & 1 == wanted);
            own.map(|(_, own)| *own)
        };
        let high = |wanted: usize| side(wanted).map(|(_, high)| high).sum::<usize>();
        let order: Vec<usize> = side(0).chain(side(1)).map(|(index, _)| index).collect();
        let moved = if order == as_they_are { 0 } else { WORTH_IT };
        let height = high(0).max(high(1) + last);
        (height + moved, height, order)
    });
    let best = tried.min_by_key(|(cost, _, _)| *cost);
    best.map_or((as_they_are, 0), |(_, height, order)| (order, height))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::load::Library;
    use crate::model::text::Text;

    #[test]
    fn boxes_keep_their_order_unless_another_saves_paper() {
        assert_eq!(order(&[(4, 300), (7, 300)], 0), (vec![4, 7], 300));
        assert_eq!(order(&[(0, 300), (1, 320), (2, 300), (3, 320)], 0), (vec![0, 1, 2, 3], 620));
        // In their order 1200 would be the best, in any 900.
        assert_eq!(order(&[(0, 300), (1, 900), (2, 300), (3, 300)], 0), (vec![0, 2, 3, 1], 900));
        // The same, but won by too little.
        assert_eq!(order(&[(0, 300), (1, 320), (2, 20)], 0), (vec![0, 1, 2], 340));
        // What ends the second column counts.
        assert_eq!(order(&[(0, 300), (1, 300)], 500), (vec![0, 1], 600));
        assert_eq!(order(&[(0, 300), (1, 300)], 200), (vec![0, 1], 500));
    }

    #[test]
    fn no_box_is_lost_however_many_there_are() {
        for count in [0, 1, 13, 80] {
            let boxes: Vec<(usize, usize)> = (0..count).map(|index| (index, 100)).collect();
            let (mut order, _) = order(&boxes, 0);
            order.sort_unstable();
            assert_eq!(order, (0..count).collect::<Vec<_>>());
        }
    }

    #[test]
    fn a_box_is_as_high_as_what_is_written_in_it() {
        let practice = Library::shipped().unwrap().practice.unwrap();
        let line = |letters| Line { says: Text::plain("x".repeat(letters)), cited: None };
        let technique = |steps: &[usize], stop: &[usize]| {
            let mut technique = practice.techniques[0].clone();
            technique.title = Text::plain("short");
            technique.steps = steps.iter().map(|letters| line(*letters)).collect();
            technique.stop = stop.iter().map(|letters| line(*letters).says).collect();
            technique
        };
        let high = |steps: &[usize], stop: &[usize], drawn| {
            let around = height(&technique(&[], &[]), &[], false, Locale::default());
            height(&technique(steps, stop), &[], drawn, Locale::default()) - around
        };
        // Lines of 50 letters at 45 each, beside a drawing of 210 of 33.
        assert_eq!(high(&[40, 51], &[], false), 45 + 90);
        assert_eq!(high(&[33], &[], true), 210);
        assert_eq!(high(&[40, 40, 40, 40], &[], true), 3 * 90 + 45);
        assert_eq!(high(&[], &[80], false), 90);
        assert_eq!(high(&[40], &[60], true), 90 + 135);
        assert_eq!(high(&[40, 40], &[30], true), 2 * 90 + 45);
        let plain = technique(&[], &[]);
        let small = lines(&cited(&plain.cited, Locale::default()), SMALL);
        assert_eq!(height(&plain, &[], false, Locale::default()), 40 + 64 + 34 * small);
        let caution = line(56);
        let cautioned = height(&plain, &[&caution, &caution], false, Locale::default());
        assert_eq!(cautioned - height(&plain, &[], false, Locale::default()), 4 * 38);
        let rows = ["x".repeat(55), "x".repeat(109)];
        assert_eq!(height_of_rows(&rows, false), 40 + 64 + (10 + 2 * 38) + (10 + 3 * 38));
        assert_eq!(height_of_rows(&rows, true), 40 + 64 + (10 + 38) + (10 + 2 * 38));
    }
}
