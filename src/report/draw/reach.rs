//! The reach drawing: the vessel's side with rail and water line, and a long
//! tool held at the rail; all tools of a vessel to one scale.
//!
//! How a tool is held comes from the words that tell of it.

use super::svg::{WIDTH, area, drawn, image, label, label_to, line, n};
use crate::measure::Length;
use crate::report::words::pages::{GRIP, reach_down};
use maud::{Markup, html};

/// Where the vessel's side is, from the left.
const SIDE: f64 = 130.0;
/// Where the rail is, from the top.
const RAIL: f64 = 72.0;
/// How wide a label on the side may be, and one of the legend.
const ROOM: f64 = SIDE - 22.0;
const LEGEND: f64 = WIDTH - 156.0;
/// The sine and cosine of the working slant of 30 degrees.
const SINE: f64 = 0.5;
const COSINE: f64 = 0.866;

/// A long tool at the rail; its figures in the picture's one system of units,
/// with what the legend says of them.
pub(in crate::report) struct Tool {
    /// Whether it hangs straight, as a rope does.
    pub(in crate::report) hangs: bool,
    /// How long it is, where that was measured, and what the legend says.
    pub(in crate::report) has: (Option<Length>, String),
    /// How long it has to be.
    pub(in crate::report) least: Option<(Length, String)>,
    /// By how much it is too short.
    pub(in crate::report) short: Option<String>,
}

/// The water below the rail: the lowest and the highest freeboard.
pub(in crate::report) struct Waters {
    /// The lowest, with its label.
    pub(in crate::report) low: (Length, String),
    /// The highest, with its label; below that of the lowest, if they differ.
    pub(in crate::report) high: (Length, String),
    /// What the freeboard was taken from.
    pub(in crate::report) from: &'static str,
    /// What the water is called.
    pub(in crate::report) water: &'static str,
}

/// Drawing units for each millimetre, and the lower edge: everything fits.
#[derive(Clone, Copy)]
pub(in crate::report) struct Scale {
    scale: f64,
    bottom: f64,
}

impl Scale {
    /// One for all tools of a vessel.
    pub(in crate::report) fn of(tools: &[Tool], waters: &Waters) -> Self {
        let deepest = |tool: &Tool| drawn(reach_down(tool.longest(), tool.hangs));
        let down = tools.iter().map(deepest).fold(drawn(waters.high.0), f64::max);
        let scale = (190.0 / down.max(1.0)).min(0.16);
        Self { scale, bottom: RAIL + down * scale + 26.0 }
    }
}

impl Tool {
    fn asked(&self) -> Option<Length> {
        self.least.as_ref().map(|(least, _)| *least)
    }

    fn longest(&self) -> Length {
        self.has.0.max(self.asked()).unwrap_or(Length::ZERO)
    }
}

/// The tool at the rail as an image.
pub(in crate::report) fn picture(
    id: &str,
    texts: (&str, &str),
    tool: &Tool,
    waters: &Waters,
    scale: Scale,
) -> Markup {
    let body = html! {
        (vessel(waters, scale))
        (held(tool, scale))
        (legend(tool))
    };
    image(id, scale.bottom, texts, &body)
}

/// The vessel's side, the rail, the water and the freeboard between them.
fn vessel(waters: &Waters, Scale { scale, bottom }: Scale) -> Markup {
    let at = |freeboard: Length| RAIL + drawn(freeboard) * scale;
    let (upper, lower) = (at(waters.low.0), at(waters.high.0));
    let middle = ((RAIL + lower) / 2.0 + 6.0).max(RAIL + 20.0);
    html! {
        (area("water", (SIDE, upper), (WIDTH - SIDE, bottom - upper)))
        (area("hull", (0.0, RAIL), (SIDE, bottom - RAIL)))
        (line("surface", (SIDE, lower), (WIDTH, lower)))
        @if waters.low.0 != waters.high.0 { (line("surface", (SIDE, upper), (WIDTH, upper))) }
        (line("side", (SIDE, RAIL), (SIDE, bottom)))
        (line("rail-cap", (0.0, RAIL), (SIDE + 3.0, RAIL)))
        (label("", (4.0, RAIL - 9.0), ROOM, waters.from))
        (line("span", (SIDE - 10.0, RAIL + 3.0), (SIDE - 10.0, lower)))
        (line("span", (SIDE - 15.0, lower), (SIDE, lower)))
        @if waters.low.0 == waters.high.0 {
            (label_to("", (SIDE - 18.0, middle), ROOM, &waters.high.1))
        } @else {
            (line("span", (SIDE - 15.0, upper), (SIDE, upper)))
            (label_to("", (SIDE - 18.0, middle - 10.0), ROOM, &waters.low.1))
            (label_to("", (SIDE - 18.0, middle + 9.0), ROOM, &waters.high.1))
        }
        (label_to("", (WIDTH - 5.0, lower + 19.0), ROOM, waters.water))
    }
}

/// The place of a point of the tool, so far from its grip end.
fn point(along: f64, hangs: bool, scale: f64) -> (f64, f64) {
    let outboard = (along - drawn(GRIP)) * scale;
    if hangs && outboard > 0.0 {
        return (SIDE + 8.0, RAIL + outboard);
    }
    (SIDE + outboard * SINE, RAIL + outboard * COSINE)
}

/// The tool with its grip, its end, what is asked and what it lacks.
fn held(tool: &Tool, Scale { scale, .. }: Scale) -> Markup {
    let (has, asked) = (tool.has.0, tool.asked());
    let place = |length: Length| point(drawn(length), tool.hangs, scale);
    let (grip, rail) = (place(Length::ZERO), (SIDE, RAIL));
    let bend = point(drawn(GRIP) + 0.001, tool.hangs, scale);
    let class = if has.is_some() { "pole" } else { "pole guess" };
    html! {
        @if let Some((has, asked)) = has.zip(asked).filter(|(has, asked)| has < asked) {
            (line("missing", place(has), place(asked)))
        }
        @if let Some(length) = has.or(asked) {
            (line("grip", grip, rail))
            (line(class, grip, rail))
            @if tool.hangs { (line(class, rail, bend)) }
            (line(class, bend, place(length)))
            circle class="hand" cx=(n(grip.0)) cy=(n(grip.1)) r="6" {}
        }
        @if let Some((x, y)) = has.map(place) {
            circle class="tip" cx=(n(x)) cy=(n(y)) r="5" {}
        }
        @if let Some((x, y)) = asked.map(place) {
            @let (dx, dy) = if tool.hangs { (12.0, 0.0) } else { (12.0 * COSINE, -12.0 * SINE) };
            (line("asked", (x - dx, y - dy), (x + dx, y + dy)))
        }
    }
}

/// The figures, each behind the sign that it has in the drawing.
fn legend(tool: &Tool) -> Markup {
    html! {
        circle class="tip" cx="141" cy="13" r="5" {}
        (label("", (152.0, 18.0), LEGEND, &tool.has.1))
        @if let Some((_, least)) = &tool.least {
            (line("asked", (134.0, 33.0), (147.0, 33.0)))
            (label("", (152.0, 38.0), LEGEND, least))
        }
        @if let Some(short) = &tool.short {
            (line("missing", (134.0, 53.0), (147.0, 53.0)))
            (label("lack", (152.0, 58.0), LEGEND, short))
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn tool(hangs: bool, has: Option<u32>, least: u32) -> Tool {
        let least = Some((Length::from_millimetres(least), String::new()));
        Tool { hangs, has: (has.map(Length::from_millimetres), String::new()), least, short: None }
    }

    fn waters(low: u32, high: u32) -> Waters {
        let at = |millimetres| (Length::from_millimetres(millimetres), String::new());
        Waters { low: at(low), high: at(high), from: "", water: "" }
    }

    #[test]
    fn a_pole_slants_and_a_rope_hangs_to_one_scale() {
        // 12 in of each are held inboard; the rope reaches 2 m down, the pole
        // asked for 1.732 m. 190 for 2 m.
        let pole = tool(false, Some(1305), 2305);
        let rope = tool(true, Some(1805), 2305);
        let waters = waters(1000, 2000);
        let tools = [pole, rope];
        let scale = Scale::of(&tools, &waters);
        let [pole, rope] = tools.map(|tool| held(&tool, scale).into_string());
        for expected in [
            "<line class=\"pole\" x1=\"115.5\" y1=\"46.9\" x2=\"130\" y2=\"72\">",
            "<line class=\"missing\" x1=\"177.5\" y1=\"154.3\" x2=\"225\" y2=\"236.5\">",
            "<line class=\"asked\" x1=\"214.6\" y1=\"242.5\" x2=\"235.4\" y2=\"230.5\">",
        ] {
            assert!(pole.contains(expected), "{expected}: {pole}");
        }
        for expected in [
            "<line class=\"pole\" x1=\"138\" y1=\"72\" x2=\"138\" y2=\"214.5\">",
            "<line class=\"missing\" x1=\"138\" y1=\"214.5\" x2=\"138\" y2=\"262\">",
        ] {
            assert!(rope.contains(expected), "{expected}: {rope}");
        }
        let vessel = vessel(&waters, scale).into_string();
        for expected in [
            "<line class=\"surface\" x1=\"130\" y1=\"167\" x2=\"328\" y2=\"167\">",
            "<line class=\"surface\" x1=\"130\" y1=\"262\" x2=\"328\" y2=\"262\">",
            // The labels of both freeboards, about half way down.
            "x=\"112\" y=\"163\"",
            "x=\"112\" y=\"182\"",
        ] {
            assert!(vessel.contains(expected), "{expected}: {vessel}");
        }
        assert!(scale.bottom > 287.9 && scale.bottom < 288.1, "{}", scale.bottom);
    }

    #[test]
    fn what_is_long_enough_lacks_nothing_and_what_nobody_measured_is_a_guess() {
        let waters = waters(1000, 1000);
        for (has, missing, guess) in
            [(Some(2304), true, false), (Some(2305), false, false), (None, false, true)]
        {
            let tool = tool(false, has, 2305);
            let drawn = held(&tool, Scale::of(&[], &waters)).into_string();
            assert_eq!(drawn.contains("missing"), missing, "{drawn}");
            assert_eq!(drawn.contains("pole guess"), guess, "{drawn}");
        }
    }

    #[test]
    fn the_legend_tells_each_figure_that_is_drawn() {
        let mut tool = tool(false, Some(2000), 2305);
        tool.has.1 = "aboard".into();
        tool.least.as_mut().unwrap().1 = "asked".into();
        tool.short = Some("too short".into());
        let waters = waters(1000, 1000);
        let scale = Scale::of(&[], &waters);
        let drawn = picture("id", ("", ""), &tool, &waters, scale).into_string();
        for told in [">aboard<", ">asked<", ">too short<"] {
            assert!(drawn.contains(told), "{told}: {drawn}");
        }
    }
}
