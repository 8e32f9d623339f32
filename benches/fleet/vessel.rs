//! One invented vessel: a ready kit of its fishery, then what is wrong with
//! it.

use super::draw::Draw;
use super::kits::{APPENDIX_F, HOUSE, LONGLINE, Template};
use super::words::{FAMILY, FIRST, PORTS, REMARKS, SECOND, STOWED};
use kitmuster::measure::{Length, Rounding, System};
use std::fmt::Write;

/// The fishery, and so the rule.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Fishery {
    Gulf,
    GulfCharter,
    SouthAtlantic,
    /// Before the edition of 2024.
    Longline,
    /// Under the edition of 2024, of which only a stub is known.
    LonglineNow,
    /// Bound by none.
    Elsewhere,
}

/// What is wrong with a kit.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Fault {
    None,
    ShortCutter,
    ToolMissing,
    NotMeasured,
    Lapsed,
    Broken,
    PartialList,
}

struct Plan {
    fishery: Fishery,
    fault: Fault,
    /// The tool that the fault concerns, by index.
    struck: usize,
    system: System,
    /// In sixteenths of an inch, or in whole centimetres.
    freeboard: Length,
    highest: Length,
    year: i64,
    declared: String,
}

/// The name of the vessel's file and its text.
pub(crate) fn written(seed: u64, number: u64, broken: u64) -> (String, String) {
    let mut draw = Draw::of(seed, number);
    let name = format!("{} {} {}", draw.one(&FIRST), draw.one(&SECOND), draw.between(1, 99));
    let plan = plan(&mut draw);
    let mut text = head(&name, number, &plan, &mut draw);
    text.push_str(&kit(&plan, &mut draw));
    text.push_str(&papers_and_gear(&plan, &mut draw));
    if draw.below(1000) < broken {
        text = spoilt(&text, &mut draw);
    }
    (name.to_lowercase().replace(' ', "-"), text)
}

fn plan(draw: &mut Draw) -> Plan {
    let fishery = match draw.below(100) {
        0..45 => Fishery::Gulf,
        45..55 => Fishery::GulfCharter,
        55..75 => Fishery::SouthAtlantic,
        75..83 => Fishery::Longline,
        83..90 => Fishery::LonglineNow,
        _ => Fishery::Elsewhere,
    };
    let fault = match draw.below(100) {
        0..60 => Fault::None,
        60..72 => Fault::ShortCutter,
        72..80 => Fault::ToolMissing,
        80..88 => Fault::NotMeasured,
        88..94 => Fault::Lapsed,
        94..97 => Fault::Broken,
        _ => Fault::PartialList,
    };
    let system = if draw.percent(25) { System::Metric } else { System::Customary };
    let freeboard = match system {
        System::Customary => inches(draw.between(20 * 2, 66 * 2), 2),
        System::Metric => millimetres(draw.between(50, 170) * 10),
    };
    let higher = if draw.percent(15) { draw.between(1, 6) } else { 0 };
    let highest = match system {
        System::Customary => freeboard.plus(inches(higher, 1)),
        System::Metric => freeboard.plus(millimetres(higher * 25)),
    };
    let year = if fishery == Fishery::Longline { 2024 } else { 2026 };
    let declared = format!("{year}-{:02}-{:02}", draw.between(1, 3), draw.between(1, 28));
    let struck = usize::try_from(draw.below(14)).unwrap();
    Plan { fishery, fault, struck, system, freeboard, highest, year, declared }
}

fn inches(count: i64, parts: i64) -> Length {
    Length::from_nanometres(count * 25_400_000 / parts).unwrap()
}

fn millimetres(count: i64) -> Length {
    Length::from_nanometres(count * 1_000_000).unwrap()
}

fn person(draw: &mut Draw) -> String {
    let initial = char::from(b'A' + u8::try_from(draw.below(26)).unwrap());
    format!("{initial}. {}", draw.one(&FAMILY))
}

fn head(name: &str, number: u64, plan: &Plan, draw: &mut Draw) -> String {
    let (permits, gear, areas) = match plan.fishery {
        Fishery::Gulf => ("gulf-reef-fish-commercial", "bottom-longline", "gulf-of-mexico"),
        Fishery::GulfCharter => {
            ("gulf-reef-fish-charter-headboat", "rod-and-reel", "gulf-of-mexico")
        }
        Fishery::SouthAtlantic => {
            ("south-atlantic-snapper-grouper-commercial", "bandit-gear", "south-atlantic")
        }
        Fishery::Longline | Fishery::LonglineNow => {
            ("atlantic-hms", "pelagic-longline", "atlantic")
        }
        Fishery::Elsewhere => ("", "pelagic-longline", "elsewhere"),
    };
    let month = draw.between(4, 9);
    let (leaves, days) = (draw.between(1, 14), draw.between(0, 14));
    let covers = if plan.fault == Fault::PartialList { "covers: listed things only\n" } else { "" };
    let year = plan.year;
    format!(
        "# An invented vessel.\nformat: vessel/1\nname: {name}\nregister: PX-{number:06}\n\
         port: {}\ndeclared:\n  by: {}\n  on: {}\n  figures: measured\n  \
         condition: serviceable\n{covers}{}permits: [{permits}]\ngear: [{gear}]\n\
         areas: [{areas}]\nfeatures: {{ wheelhouse: {} }}\n\
         trip: {{ depart: {year}-{month:02}-{leaves:02}, return: {year}-{month:02}-{:02} }}\n",
        draw.one(&PORTS),
        person(draw),
        plan.declared,
        freeboard(plan, draw),
        if draw.percent(80) { "yes" } else { "no" },
        leaves + days,
    )
}

/// One line for most; a range, two stations, rival readings or a tape error
/// for some.
fn freeboard(plan: &Plan, draw: &mut Draw) -> String {
    let show = |length: Length| length.show(plan.system, Rounding::Up);
    let (low, high) = (show(plan.freeboard), show(plan.highest));
    if plan.highest > plan.freeboard {
        return format!("freeboard: {low} to {high}\n");
    }
    let step = inches(draw.between(1, 8), 4);
    let (error, other) = (show(step), show(plan.freeboard.less(step)));
    match draw.below(100) {
        0..4 => format!(
            "freeboard:\n  from: top of the rail\n  stations:\n    - {{ name: starboard, \
             freeboard: {low} }}\n    - {{ name: aft, freeboard: {other} }}\n"
        ),
        4..6 => format!(
            "freeboard:\n  - {{ value: {low}, how: measured }}\n  \
             - {{ value: {other}, how: stated }}\n"
        ),
        6..8 => format!("freeboard: {{ value: {low}, how: measured, error: {error} }}\n"),
        8..9 => "freeboard: unknown\n".to_owned(),
        9..10 => format!("freeboard: {low} from the working deck\n"),
        _ => format!("freeboard: {low}\n"),
    }
}

fn kit(plan: &Plan, draw: &mut Draw) -> String {
    let templates = match plan.fishery {
        Fishery::Gulf | Fishery::GulfCharter | Fishery::SouthAtlantic => APPENDIX_F,
        Fishery::Longline | Fishery::LonglineNow => LONGLINE,
        Fishery::Elsewhere => HOUSE,
    };
    let mut text = "\nkit:\n".to_owned();
    let mut before = "";
    let mut same = 1;
    for (index, template) in templates.iter().enumerate() {
        same = if template.letters == before { same + 1 } else { 1 };
        before = template.letters;
        let struck = index == plan.struck;
        if !(struck && plan.fault == Fault::ToolMissing) {
            tool(template, same, struck, plan, draw, &mut text);
        }
    }
    text
}

fn tool(
    template: &Template,
    same: u32,
    struck: bool,
    plan: &Plan,
    draw: &mut Draw,
    text: &mut String,
) {
    let _ = writeln!(text, "  - mark: {}-{same}\n    kind: {}", template.letters, template.kind);
    let unmeasured = (struck && plan.fault == Fault::NotMeasured)
        .then(|| draw.below(template.lines.len() as u64));
    let cutter_gone = plan.fault == Fault::ToolMissing && plan.struck == 0;
    for (line, (key, value)) in template.lines.iter().enumerate() {
        if unmeasured != Some(line as u64) && !(*key == "fits" && cutter_gone) {
            let _ = writeln!(text, "    {key}: {}", figure(template, value, plan, draw));
        }
    }
    if let Some(clause) = template.clause {
        let _ = writeln!(
            text,
            "    conforms: [{{ to: \"{clause}\", on: {}-01-09, by: Port Ansel Chandlery }}]",
            plan.year
        );
    }
    if plan.fishery == Fishery::Elsewhere {
        let year = if struck && plan.fault == Fault::Lapsed { plan.year - 2 } else { plan.year };
        let _ = writeln!(text, "    inspected: {year}-01-{:02}", draw.between(2, 28));
    } else if struck && plan.fault == Fault::Lapsed {
        let month = draw.between(3, 12);
        let _ = writeln!(text, "    expires: {}-{month:02}-20", plan.year);
    }
    if struck && plan.fault == Fault::Broken {
        text.push_str("    condition: broken\n");
    }
    if draw.percent(25) {
        let _ = writeln!(text, "    stowed: {}", draw.one(&STOWED));
    }
    if draw.percent(8) {
        let _ = writeln!(text, "    remark: {}", draw.one(&REMARKS));
    }
    if draw.percent(3) {
        let _ = writeln!(text, "    {}", seldom(plan, draw));
    }
}

/// What few tools say of themselves.
fn seldom(plan: &Plan, draw: &mut Draw) -> String {
    let year = plan.year;
    match draw.below(7) {
        0 => "where: ashore".to_owned(),
        1 => "where: unknown".to_owned(),
        2 => format!(
            "where: {{ lent to: Hollow Wigeon, from: {year}-04-01, until: {year}-{:02}-15 }}",
            draw.between(4, 9)
        ),
        3 => format!("acquired: {year}-{:02}-02", draw.between(1, 9)),
        4 => "condition: unknown".to_owned(),
        5 => "parts: [P-1]".to_owned(),
        _ => format!("changes: [{{ what: lengthened, on: {year}-02-15 }}]"),
    }
}

/// A figure as the vessel writes it; a long tool with a little to spare, but
/// for the short cutter.
fn figure(template: &Template, value: &str, plan: &Plan, draw: &mut Draw) -> String {
    let short = template.letters == "LC" && plan.fault == Fault::ShortCutter;
    let least = |thousandths: i64| {
        let needed = plan.highest.nanometres() * thousandths / 1000 / 12_700_000 + 1;
        needed.max(144)
    };
    let reach = |needed: i64, draw: &mut Draw| {
        let halves = if short { needed - draw.between(1, 8) } else { needed + draw.between(0, 12) };
        match plan.system {
            System::Customary => inches(halves, 2).show(System::Customary, Rounding::Up),
            System::Metric => millimetres(halves * 127 / 10 + 1).show(System::Metric, Rounding::Up),
        }
    };
    let plain = match value {
        "reach" => reach(least(1500), draw),
        "drop" => reach(least(1000), draw),
        other => match Length::parse(other) {
            Ok((length, System::Customary)) if plan.system == System::Metric => {
                length.show_exact(System::Metric).unwrap()
            }
            _ => other.to_owned(),
        },
    };
    if matches!(value, "reach" | "drop") && draw.percent(4) {
        let label = millimetres(draw.between(1500, 2500)).show(System::Metric, Rounding::Up);
        return format!("[{{ value: {plain}, how: measured }}, {{ value: {label}, how: label }}]");
    }
    plain
}

fn papers_and_gear(plan: &Plan, draw: &mut Draw) -> String {
    let mut text = String::new();
    if plan.fishery != Fishery::Elsewhere {
        let kept = if draw.percent(95) { "wheelhouse" } else { "plain view" };
        let state = if draw.percent(97) { "aboard" } else { "lost" };
        let edition = if plan.year == 2026 {
            "    edition: \"2019\"\n    form: paper\n"
        } else {
            "    form: paper\n"
        };
        let _ = write!(
            text,
            "\ndocuments:\n  - kind: careful-release document\n{edition}    kept: wheelhouse\n    \
             state: {state}\n  - kind: handling placard\n    kept: {kept}\n    state: posted\n"
        );
    }
    if matches!(plan.fishery, Fishery::Longline | Fishery::LonglineNow) {
        let lapsed = i64::from(plan.fault == Fault::Lapsed) * 3;
        let issued = plan.year - 1 - lapsed;
        let _ = write!(
            text,
            "\nhooks:\n  - {{ name: circle hooks, type: circle, size: 18/0, wire: 5 mm, \
             offset: 0 degrees }}\n\nlines:\n  - {{ name: mainline, diameter: 3.6 mm }}\n\npeople:\n  \
             - name: {}\n    roles: [owner, operator]\n    certificates: [{{ kind: workshop \
             certificate, issued: {issued}-05-17, number: W-{:04} }}]\n",
            person(draw),
            draw.below(10_000)
        );
    } else {
        text.push_str(
            "\nhooks:\n  - { name: circle hooks, type: circle, size: 13/0, wire: 4.5 mm }\n",
        );
    }
    text
}

/// A file that is refused: a unit left out, a key misspelled, or cut short
/// inside a bracket.
fn spoilt(text: &str, draw: &mut Draw) -> String {
    match draw.below(3) {
        0 => text.replacen(" in\n", "\n", 1).replacen(" m\n", "\n", 1),
        1 => text.replacen("mark:", "marck:", 1),
        _ => text[..text.rfind('[').unwrap_or(0) + 1].to_owned(),
    }
}
