//! The phrases under `with:` that limit a quantity, like `at least the
//! greater of 150% of freeboard and 6 ft (1.8 m)`.

use crate::load::read::fault::Fault;
use crate::load::read::problem::{Told, Wrong};
use crate::load::read::spot::Spot;
use crate::measure::{Figure, LengthUnit, Percent, Quantity, QuantityKind};
use crate::model::rule::{Base, Bound, Limit};

/// Makes a limit of its bound.
type Build = fn(Bound) -> Limit;

/// The words with which a limit begins.
static OPENINGS: [&str; 8] =
    ["any", "at least", "more than", "at most", "less than", "exactly", "from", "about"];

const BASES: [(&str, Base); 4] = [
    ("freeboard", Base::Freeboard),
    ("the heaviest hook aboard", Base::HeaviestHook),
    ("the thickest line aboard", Base::ThickestLine),
    ("the thickest leader aboard", Base::ThickestLeader),
];

/// The longest nesting of `the greater of` in one phrase.
const DEEPEST: usize = 4;

/// Reads a limit on a quantity of the given kind.
pub(crate) fn limit(
    text: &str,
    kind: QuantityKind,
    unit: LengthUnit,
    spot: &Spot<'_>,
) -> Told<Limit> {
    let reader = Reader { kind, unit, spot, whole: text };
    let text = text.trim();
    if text == "any" {
        return Ok(Limit::Any);
    }
    let simple: [(&str, Build); 5] = [
        ("at least ", Limit::AtLeast),
        ("more than ", Limit::MoreThan),
        ("at most ", Limit::AtMost),
        ("less than ", Limit::LessThan),
        ("exactly ", |bound| Limit::Within(bound.clone(), bound)),
    ];
    for (opening, build) in simple {
        if let Some(rest) = text.strip_prefix(opening) {
            return reader.only_bound(rest).map(build);
        }
    }
    if let Some(rest) = text.strip_prefix("from ") {
        return reader.range(rest);
    }
    if let Some(rest) = text.strip_prefix("about ") {
        return reader.about(rest);
    }
    let fault = match Figure::parse(text, kind) {
        Ok(_) => Fault::LimitWithoutOpening { openings: &OPENINGS, text: text.to_owned() },
        Err(_) => Fault::NoLimit(&OPENINGS),
    };
    spot.wrong(fault).of(text).refused()
}

struct Reader<'a> {
    kind: QuantityKind,
    unit: LengthUnit,
    spot: &'a Spot<'a>,
    whole: &'a str,
}

impl Reader<'_> {
    fn wrong(&self, fault: Fault) -> Wrong<'_> {
        self.spot.wrong(fault).of(self.whole.trim())
    }

    /// A bound, and nothing after it.
    fn only_bound(&self, text: &str) -> Told<Bound> {
        let (bound, rest) = self.bound(text, 0)?;
        self.nothing_left(rest)?;
        Ok(bound)
    }

    fn nothing_left(&self, rest: &str) -> Told<()> {
        if rest.trim().is_empty() {
            return Ok(());
        }
        self.wrong(Fault::AfterBound(rest.trim().to_owned())).refused()
    }

    /// `B to B`.
    fn range(&self, text: &str) -> Told<Limit> {
        let (low, rest) = self.bound(text, 0)?;
        let rest = self.after(rest, "to ", "from B to B")?;
        let high = self.only_bound(rest)?;
        if let (Bound::Fixed { figure: l, .. }, Bound::Fixed { figure: h, .. }) = (&low, &high)
            && l.quantity.steps() > h.quantity.steps()
        {
            return self.wrong(Fault::RangeReversed).refused();
        }
        Ok(Limit::Within(low, high))
    }

    /// `F, within F` or `F to F, within F`.
    fn about(&self, text: &str) -> Told<Limit> {
        let (low, mut rest) = self.fixed(text)?;
        let mut high = low.clone();
        if let Some(after) = rest.trim_start().strip_prefix("to ") {
            (high, rest) = self.fixed(after)?;
        }
        let Some(rest) = rest.trim_start().strip_prefix(", within ") else {
            return self.wrong(Fault::NoMargin).refused();
        };
        let (margin, rest) = self.fixed(rest)?;
        self.nothing_left(rest)?;
        if low.quantity.steps() > high.quantity.steps() {
            return self.wrong(Fault::AboutReversed).refused();
        }
        Ok(Limit::About { low, high, margin })
    }

    /// What follows a linking word.
    fn after<'t>(&self, rest: &'t str, link: &'static str, shape: &'static str) -> Told<&'t str> {
        match rest.trim_start().strip_prefix(link) {
            Some(rest) => Ok(rest),
            None => self.wrong(Fault::NoLink { link: link.trim(), shape }).refused(),
        }
    }

    /// A bound off the front, with what follows it.
    fn bound<'t>(&self, text: &'t str, depth: usize) -> Told<(Bound, &'t str)> {
        let text = text.trim_start();
        if depth > DEEPEST {
            return self.wrong(Fault::BoundTooDeep).refused();
        }
        for (opening, build) in [
            ("the greater of ", Bound::Greater as fn(Vec<Bound>) -> Bound),
            ("the lesser of ", Bound::Lesser),
        ] {
            if let Some(rest) = text.strip_prefix(opening) {
                return self.several(rest, depth).map(|(bounds, rest)| (build(bounds), rest));
            }
        }
        for (name, base) in BASES {
            if let Some(rest) = strip_word(text, name) {
                self.base_fits(name)?;
                return Ok((Bound::Share(Percent::ONE_HUNDRED, base), rest));
            }
        }
        if let Some((percent, rest)) = text.split_once('%')
            && !percent.trim_end().contains([' ', '('])
        {
            return self.share(percent, rest);
        }
        let (figure, bracket, rest) = self.figure(text)?;
        Ok((Bound::Fixed { figure, bracket }, rest))
    }

    /// `B, B and B`.
    fn several<'t>(&self, text: &'t str, depth: usize) -> Told<(Vec<Bound>, &'t str)> {
        let (first, mut rest) = self.bound(text, depth + 1)?;
        let mut bounds = vec![first];
        loop {
            let trimmed = rest.trim_start();
            let (after, last) = if let Some(after) = trimmed.strip_prefix("and ") {
                (after, true)
            } else if let Some(after) = trimmed.strip_prefix(", ") {
                (after, false)
            } else {
                let fault = Fault::NoLink { link: "and", shape: "the greater of B and B" };
                return self.wrong(fault).refused();
            };
            let (bound, tail) = self.bound(after, depth + 1)?;
            bounds.push(bound);
            rest = tail;
            if last {
                return Ok((bounds, rest));
            }
        }
    }

    fn share<'t>(&self, percent: &str, rest: &'t str) -> Told<(Bound, &'t str)> {
        let share = Percent::parse(&format!("{}%", percent.trim_end()))
            .map_err(|error| self.wrong(Fault::NoPercentage(error)))?;
        if share == Percent::parse("0%").unwrap_or(Percent::ONE_HUNDRED) {
            return self.wrong(Fault::NoughtPercent).refused();
        }
        let of = self.after(rest, "of ", "150% of freeboard")?.trim_start();
        for (name, base) in BASES {
            if let Some(rest) = strip_word(of, name) {
                self.base_fits(name)?;
                return Ok((Bound::Share(share, base), rest));
            }
        }
        self.wrong(Fault::PercentageOfElse(BASES.map(|(name, _)| name).to_vec())).refused()
    }

    /// Every base is a length, so the attribute must be one.
    fn base_fits(&self, base: &'static str) -> Told<()> {
        if self.kind == QuantityKind::Length {
            return Ok(());
        }
        self.wrong(Fault::BaseIsLength { base, example: self.kind.example() }).refused()
    }

    /// A figure without a percentage or a bracket's use.
    fn fixed<'t>(&self, text: &'t str) -> Told<(Figure, &'t str)> {
        self.figure(text).map(|(figure, _, rest)| (figure, rest))
    }

    /// A figure with its bracket off the front.
    fn figure<'t>(&self, text: &'t str) -> Told<(Figure, Option<String>, &'t str)> {
        let text = text.trim_start();
        let end = [" and ", " to ", ", ", " ("]
            .iter()
            .filter_map(|stop| text.find(stop))
            .min()
            .unwrap_or(text.len());
        let (written, mut rest) = text.split_at(end);
        let figure = Figure::parse(written, self.kind)
            .map_err(|error| self.spot.no_figure(error, written, self.kind, self.unit))?;
        let mut bracket = None;
        if let Some(inside) = rest.trim_start().strip_prefix('(') {
            let (text, after) =
                inside.split_once(')').ok_or_else(|| self.wrong(Fault::BracketNotClosed))?;
            bracket = Some(text.trim().to_owned());
            rest = after;
        }
        Ok((figure, bracket, rest))
    }
}

/// What follows a whole word or phrase.
fn strip_word<'t>(text: &'t str, word: &str) -> Option<&'t str> {
    let rest = text.strip_prefix(word)?;
    (!rest.starts_with(|c: char| c.is_alphanumeric() || c == '-')).then_some(rest)
}

/// A figure that may carry a bracket, alone: `4 ft (1.2 m)`.
pub(crate) fn bracketed_length(text: &str, spot: &Spot<'_>) -> Told<Figure> {
    let (kind, unit) = (QuantityKind::Length, LengthUnit::Feet);
    let reader = Reader { kind, unit, spot, whole: text };
    let (figure, rest) = reader.fixed(text)?;
    reader.nothing_left(rest)?;
    match figure.quantity {
        Quantity::Length(_) => Ok(figure),
        _ => reader.wrong(Fault::NoLengthHere).refused(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::load::read::problem::Problems;
    use crate::measure::Length;
    use std::sync::Arc;

    fn read(text: &str, kind: QuantityKind) -> Told<Limit> {
        let (file, problems): (Arc<str>, _) = ("a.yaml".into(), Problems::default());
        limit(text, kind, LengthUnit::Feet, &Spot::top(&file, &problems))
    }

    fn fixed(text: &str, bracket: Option<&str>) -> Bound {
        let figure = Figure::parse(text, QuantityKind::Length).unwrap();
        Bound::Fixed { figure, bracket: bracket.map(str::to_owned) }
    }

    /// 50 CFR part 622 Appendix F, A.1: 150 percent of the freeboard, or
    /// 6 ft (1.8 m), whichever is greater.
    #[test]
    fn a_reach_rule_is_read() {
        let share = Bound::Share(Percent::parse("150%").unwrap(), Base::Freeboard);
        assert_eq!(
            read(
                "at least the greater of 150% of freeboard and 6 ft (1.8 m)",
                QuantityKind::Length
            )
            .unwrap(),
            Limit::AtLeast(Bound::Greater(vec![share, fixed("6 ft", Some("1.8 m"))]))
        );
    }

    #[test]
    fn ranges_and_margins_are_read() {
        let kind = QuantityKind::Length;
        assert_eq!(
            read("from 16 in (40.6 cm) to 24 in (60.7 cm)", kind).unwrap(),
            Limit::Within(fixed("16 in", Some("40.6 cm")), fixed("24 in", Some("60.7 cm")))
        );
        let Limit::About { low, high, margin } =
            read("about 4 in to 6 in (15.2 cm), within 1/2 in", kind).unwrap()
        else {
            panic!("not about");
        };
        assert_eq!((low.written, high.written), ("4 in".into(), "6 in".into()));
        assert_eq!(margin.length(), Length::parse("1/2 in").ok().map(|(l, _)| l));
        assert_eq!(read("exactly 3/8 in", kind).unwrap(), {
            let bound = fixed("3/8 in", None);
            Limit::Within(bound.clone(), bound)
        });
        assert_eq!(read("any", kind).unwrap(), Limit::Any);
        assert_eq!(
            read("at least the heaviest hook aboard", kind).unwrap(),
            Limit::AtLeast(Bound::Share(Percent::ONE_HUNDRED, Base::HeaviestHook))
        );
        let nested = "at most the lesser of the greater of 1 ft and freeboard and 2 ft";
        assert!(
            matches!(read(nested, kind).unwrap(), Limit::AtMost(Bound::Lesser(b)) if b.len() == 2)
        );
    }

    #[test]
    fn what_is_no_limit_is_refused() {
        let length = [
            "6 ft",
            "at least 6",
            "at least",
            "least 6 ft",
            "at least 6 ft or so",
            "from 2 in to 1 in",
            "from 1 in",
            "about 3 in",
            "at least 150% of the mast",
            "at least 0% of freeboard",
            "at least the greater of 6 ft",
            "at least 6 ft (1.8 m",
            "at least freeboards",
            "",
            "at least 6 ft to 7 ft",
            "any length",
        ];
        for text in length {
            assert!(read(text, QuantityKind::Length).is_err(), "{text}");
        }
        assert!(read("at least 150% of freeboard", QuantityKind::Mass).is_err());
        assert!(read("at least freeboard", QuantityKind::Count).is_err());
        assert!(read("at least 6 ft", QuantityKind::Mass).is_err());
        assert!(read("at least 100 lb (45.4 kg)", QuantityKind::Mass).is_ok());
    }

    #[test]
    fn a_bare_figure_shows_how_to_write_a_limit() {
        let problem = read("6 ft", QuantityKind::Length).unwrap_err();
        assert_eq!(problem.wording().mend.unwrap(), "write `at least 6 ft` or the like");
    }
}
