//! Small vessels and rules drawn at random, with facts that nobody knows. All
//! of it is invented.

use kitmuster::measure::{Figure, Length, Quantity, Rounding, System};
use kitmuster::model::place::Place;
use kitmuster::model::profile::FreeboardFrom;
use kitmuster::model::vessel::{
    Coverage, Datum, Freeboard, FreeboardReading, How, PlannedTrip, Reading, State, Station, Tool,
    Vessel, Whereabouts,
};
use kitmuster::model::vocabulary::Vocabulary;
use std::collections::BTreeMap;

/// A foot in nanometres, by definition.
pub(super) const FOOT: i64 = 304_800_000;

/// A small generator of numbers: the same seed, the same case.
pub(super) struct Draw(u64);

impl Draw {
    pub(super) fn new(seed: u64) -> Self {
        Self(seed.wrapping_mul(0x9e37_79b9_7f4a_7c15) | 1)
    }

    /// A list in another order.
    pub(super) fn shuffle<T>(&mut self, list: &mut [T]) {
        for at in (1..list.len()).rev() {
            list.swap(at, self.below(at + 1));
        }
    }

    pub(super) fn below(&mut self, below: usize) -> usize {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        (self.0 >> 11) as usize % below
    }

    fn once_in(&mut self, times: usize) -> bool {
        self.below(times) == 0
    }

    fn one<T: Copy>(&mut self, of: &[T]) -> T {
        of[self.below(of.len())]
    }
}

/// What is known of a figure, in nanometres.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Known {
    Is(i64),
    /// Two readings that differ.
    Either(i64, i64),
    Unknown,
    /// Of a freeboard: taken from the deck, where the rule takes it from the
    /// rail.
    Below(i64),
}

/// A tool, or a lot of equal ones.
#[derive(Debug, Clone)]
pub(super) struct Listed {
    pub(super) kind: &'static str,
    pub(super) count: u32,
    pub(super) length: Known,
    pub(super) works: Option<bool>,
    pub(super) there: Option<bool>,
}

/// A vessel as far as it is known.
#[derive(Debug, Clone)]
pub(super) struct Partial {
    pub(super) freeboard: Known,
    pub(super) wheelhouse: Option<bool>,
    pub(super) traps: Option<bool>,
    pub(super) kit: Vec<Listed>,
}

/// What a rule asks of a length.
#[derive(Debug, Clone, Copy)]
pub(super) enum Asked {
    Feet(i64),
    /// A percentage of the freeboard.
    Share(i64),
    /// About a length, within half a foot.
    About(i64),
}

/// What a requirement asks of its tools.
#[derive(Debug, Clone)]
enum With {
    Nothing,
    These(String),
    /// About 3 ft, within 6 in.
    About,
    /// At least 2 ft or at least 4 ft, as one reads it.
    Readings,
}

/// One requirement.
#[derive(Debug, Clone)]
pub(super) struct Requirement {
    head: String,
    kind: &'static str,
    with: With,
    /// Its condition, its level, what it shares.
    pub(super) tail: String,
}

/// How the words of a requirement are read, where they leave that open.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Law {
    /// As they are written.
    AsWritten,
    /// *About* goes so far on either side, in nanometres.
    Within(i64),
    /// By the first or the second reading.
    Reading(bool),
}

/// One case.
#[derive(Debug, Clone)]
pub(super) struct Drawn {
    pub(super) requirements: Vec<Requirement>,
    pub(super) asked: Vec<Asked>,
    pub(super) vessel: Partial,
}

const KINDS: [(&str, &str); 3] =
    [("dip-net", "handle"), ("pliers", "overall"), ("bolt-cutters", "overall")];

fn attribute(kind: &str) -> &'static str {
    KINDS.iter().find(|(one, _)| *one == kind).map_or("overall", |(_, attribute)| attribute)
}

impl Drawn {
    /// The case of that seed.
    pub(super) fn of(seed: u64) -> Self {
        let mut draw = Draw::new(seed);
        let (mut requirements, mut asked) = (Vec::<Requirement>::new(), Vec::new());
        for index in 0..1 + draw.below(4) {
            let (kind, attribute) = draw.one(&KINDS);
            let (with, limits) = match draw.below(8) {
                0 => (With::Nothing, vec![]),
                1 => (
                    With::These(format!("{attribute}: at least 150% of freeboard")),
                    vec![Asked::Share(150)],
                ),
                2 => (With::These(format!("{attribute}: at most 2 ft")), vec![Asked::Feet(2)]),
                3 => (With::About, vec![Asked::About(3)]),
                4 => (With::Readings, vec![Asked::Feet(2), Asked::Feet(4)]),
                5 => (
                    With::These(format!(
                        "any of: [{{ {attribute}: at most 2 ft }}, {{ {attribute}: at least 4 ft }}]"
                    )),
                    vec![Asked::Feet(2), Asked::Feet(4)],
                ),
                _ => (With::These(format!("{attribute}: at least 3 ft")), vec![Asked::Feet(3)]),
            };
            asked.extend(limits);
            let count = 1 + draw.below(6) / 5;
            let head = format!(
                "id: r{index}, title: R{index}, verified: common practice, carry: {count} {kind}"
            );
            let mut line = String::from(draw.one(&[
                "",
                "",
                "",
                ", when: { freeboard: more than 3 ft }",
                ", when: { freeboard: 3 ft or less }",
                ", when: { wheelhouse: yes }",
                ", when: { wheelhouse: no }",
                ", when: { gear: trap }",
                ", when: { aboard: pliers }",
                ", when: { not aboard: pliers }",
                ", level: recommended",
            ]));
            if index > 0 && draw.once_in(8) {
                line += &format!(", may share the tool of: [r{}]", index - 1);
            }
            if index > 0 && draw.once_in(8) {
                let other: &Requirement = &requirements[index - 1];
                let attribute = self::attribute(other.kind);
                line += &format!(
                    ", met by the tool of: [{{ requirement: r{}, with: {{ {attribute}: at least 3 ft }} }}]",
                    index - 1
                );
                asked.push(Asked::Feet(3));
            }
            requirements.push(Requirement { head, kind, with, tail: line });
        }
        let unknown = draw.below(4);
        let mut vessel = Partial {
            freeboard: Known::Is(draw.one(&[2, 3, 4]) * FOOT),
            wheelhouse: Some(draw.once_in(2)),
            traps: Some(draw.once_in(2)),
            kit: (0..draw.below(4)).map(|_| listed(&mut draw)).collect(),
        };
        for _ in 0..=unknown {
            forget(&mut vessel, &mut draw);
        }
        Self { requirements, asked, vessel }
    }

    /// Every way to read the rule of that vessel, whose facts are all known.
    pub(super) fn laws(&self, vessel: &Partial) -> Vec<Vec<Law>> {
        let mut laws: Vec<Vec<Law>> = vec![Vec::new()];
        for requirement in &self.requirements {
            let readings = match requirement.with {
                With::Nothing | With::These(_) => vec![Law::AsWritten],
                With::Readings => vec![Law::Reading(false), Law::Reading(true)],
                With::About => {
                    let of_kind = vessel.kit.iter().filter(|tool| tool.kind == requirement.kind);
                    let off = of_kind.flat_map(|tool| tool.length.values());
                    let off = off.map(|length| (length - 3 * FOOT).abs());
                    let mut margins: Vec<i64> = off.filter(|off| *off > FOOT / 2).collect();
                    margins.push(FOOT / 2);
                    margins.sort_unstable();
                    margins.dedup();
                    margins.into_iter().map(Law::Within).collect()
                }
            };
            laws = laws
                .iter()
                .flat_map(|law| readings.iter().map(move |one| [&law[..], &[*one]].concat()))
                .collect();
        }
        laws
    }

    /// The rule as a file, read so.
    pub(super) fn profile(&self, law: &[Law]) -> String {
        let as_read = |(index, one): (usize, &Requirement)| {
            let attribute = attribute(one.kind);
            let with = match (&one.with, law.get(index)) {
                (With::Nothing, _) => String::new(),
                (With::These(with), _) => format!(", with: {{ {with} }}"),
                (With::About, Some(Law::Within(margin))) => {
                    let [low, high] =
                        [(3 * FOOT - margin).max(1), 3 * FOOT + margin].map(crate::kit::exact);
                    format!(", with: {{ {attribute}: from {low} to {high} }}")
                }
                (With::About, _) => {
                    format!(", with: {{ {attribute}: \"about 3 ft, within 6 in\" }}")
                }
                (With::Readings, Some(Law::Reading(second))) => {
                    let feet = if *second { 4 } else { 2 };
                    format!(", with: {{ {attribute}: at least {feet} ft }}")
                }
                (With::Readings, _) => format!(
                    ", with: {{ read as: [{{ {attribute}: at least 2 ft }}, {{ {attribute}: at least 4 ft }}] }}"
                ),
            };
            format!("  - {{ {}{with}{} }}\n", one.head, one.tail)
        };
        let lines: String = self.requirements.iter().enumerate().map(as_read).collect();
        format!(
            "format: profile/1\nid: drawn\nrule: drawn\nedition: invented for tests\ntitle: Drawn\n\
             standing: good practice\nrequirements:\n{lines}"
        )
    }
}

fn listed(draw: &mut Draw) -> Listed {
    Listed {
        kind: draw.one(&KINDS).0,
        count: draw.one(&[1, 1, 1, 2]),
        length: Known::Is(draw.one(&[1, 2, 3, 4, 6]) * FOOT),
        works: Some(!draw.once_in(6)),
        there: Some(!draw.once_in(8)),
    }
}

/// One fact more that nobody knows.
fn forget(vessel: &mut Partial, draw: &mut Draw) {
    let two =
        |draw: &mut Draw| Known::Either(draw.one(&[2, 3]) * FOOT, draw.one(&[3, 4, 6]) * FOOT);
    match draw.below(9) {
        0 => vessel.freeboard = Known::Unknown,
        1 => vessel.freeboard = two(draw),
        2 => vessel.freeboard = Known::Below(draw.one(&[2, 3, 4]) * FOOT),
        3 => vessel.wheelhouse = None,
        4 => vessel.traps = None,
        n if !vessel.kit.is_empty() => {
            let tool = draw.below(vessel.kit.len());
            let tool = &mut vessel.kit[tool];
            match n {
                5 => tool.length = two(draw),
                6 => tool.works = None,
                7 => tool.there = None,
                _ => tool.length = Known::Unknown,
            }
        }
        _ => {}
    }
}

fn figure(nanometres: i64) -> Figure {
    let length = Length::from_nanometres(nanometres).unwrap();
    Figure::reckoned(Quantity::Length(length), System::Metric, Rounding::Up)
}

impl Known {
    fn values(self) -> Vec<i64> {
        match self {
            Self::Is(one) | Self::Below(one) => vec![one],
            Self::Either(one, other) => vec![one, other],
            Self::Unknown => Vec::new(),
        }
    }
}

impl Partial {
    /// The vessel, as a file that says so would be read.
    pub(super) fn vessel(&self, vocabulary: &Vocabulary) -> Vessel {
        let reading = |nanometres: i64| FreeboardReading {
            low: figure(nanometres),
            high: figure(nanometres),
            load: None,
            by: None,
            on: None,
            how: How::Measured,
            error: None,
            place: Place::default(),
        };
        let readings: Vec<_> = self.freeboard.values().into_iter().map(reading).collect();
        let from = match self.freeboard {
            Known::Below(_) => FreeboardFrom::Deck,
            _ => FreeboardFrom::Rail,
        };
        let stations = if readings.is_empty() { Vec::new() } else { vec![Station::of(readings)] };
        let features = self.wheelhouse.map(|has| ("wheelhouse".to_owned(), has));
        let gears = self.traps.map(|has| if has { vec!["trap".to_owned()] } else { Vec::new() });
        let kit = self.kit.iter().enumerate().map(|(index, listed)| listed.tool(index, vocabulary));
        Vessel {
            name: "Drawn".to_owned(),
            register: None,
            port: None,
            declared: None,
            freeboard: Freeboard { from, stations, other: Vec::new() },
            permits: Some(Vec::new()),
            gears,
            areas: Some(Vec::new()),
            features: BTreeMap::from_iter(features),
            kit: kit.collect(),
            hooks: Some(Vec::new()),
            lines: Some(Vec::new()),
            people: Some(Vec::new()),
            trip: PlannedTrip::default(),
            coverage: Coverage { everything: true, ..Coverage::default() },
            place: Place::default(),
        }
    }
}

impl Listed {
    fn tool(&self, index: usize, vocabulary: &Vocabulary) -> Tool {
        let kind = vocabulary.find_kind(self.kind).unwrap();
        let mut tool = Tool::bare(format!("T-{index}"), kind, self.count, Place::default());
        tool.state = match self.works {
            None => State::Unknown,
            Some(true) => State::Serviceable,
            Some(false) => State::Broken,
        };
        tool.whereabouts = match self.there {
            None => Whereabouts::Unknown,
            Some(true) => Whereabouts::Aboard,
            Some(false) => Whereabouts::Missing,
        };
        let readings: Vec<Reading> = self
            .length
            .values()
            .into_iter()
            .map(|nanometres| Reading {
                datum: Datum::Figure(figure(nanometres)),
                by: None,
                on: None,
                how: How::Measured,
                error: None,
            })
            .collect();
        if !readings.is_empty() {
            tool.set(vocabulary.find_attribute(attribute(self.kind)).unwrap(), readings);
        }
        tool
    }
}
