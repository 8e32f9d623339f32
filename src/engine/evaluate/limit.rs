//! Whether a quantity keeps a limit, exactly, and what the limit comes to: a
//! share of the freeboard, or of the thickest hook or line.

use super::point::Point;
use crate::measure::{Answer, Figure, Length, Percent, Quantity, QuantityKind, Rounding, System};
use crate::model::reason::{Demand, VesselFact};
use crate::model::rule::{Base, Bound, Limit};
use crate::model::vessel::{Datum, GearPiece};
use std::sync::Arc;

/// Whether the quantity keeps the limit at this point.
pub(crate) fn keeps(limit: &Limit, quantity: Quantity, point: &Point<'_>) -> Answer {
    match limit {
        // Nothing is no length: a pole without a handle has none.
        Limit::Any => (quantity.steps() > 0).into(),
        Limit::AtLeast(bound) => at_least(bound, quantity, point),
        Limit::LessThan(bound) => at_least(bound, quantity, point).negated(),
        Limit::AtMost(bound) => at_most(bound, quantity, point),
        Limit::MoreThan(bound) => at_most(bound, quantity, point).negated(),
        Limit::Within(low, high) => {
            at_least(low, quantity, point).and(at_most(high, quantity, point))
        }
        Limit::About { low, high, margin } => {
            let (value, margin) = (quantity.steps(), margin.quantity.steps());
            let near =
                value >= low.quantity.steps() - margin && value <= high.quantity.steps() + margin;
            if near { Answer::Yes } else { Answer::Unknown }
        }
    }
}

/// What every figure that a reading can mean says of the limit: the middle
/// and both ends of the tape's error. A range is asked side by side, since it
/// can lie between two figures that miss it on either side.
pub(crate) fn keeps_all(limit: &Limit, can_mean: &[Quantity], point: &Point<'_>) -> Answer {
    let all = |side: &dyn Fn(Quantity) -> Answer| {
        Answer::consensus(can_mean.iter().map(|quantity| side(*quantity)))
    };
    match limit {
        Limit::Within(low, high) => {
            all(&|q| at_least(low, q, point)).and(all(&|q| at_most(high, q, point)))
        }
        _ => all(&|q| keeps(limit, q, point)),
    }
}

/// A percentage is compared by cross-multiplying: a whole count of
/// nanometres is at least `p` of a base exactly if it is at least that
/// rounded up to a whole count.
fn at_least(bound: &Bound, quantity: Quantity, point: &Point<'_>) -> Answer {
    match bound {
        Bound::Fixed { figure, .. } => (quantity.steps() >= figure.quantity.steps()).into(),
        Bound::Share(percent, base) => {
            let keeps = |value, p, base: Length| value >= base.percent_up(p);
            share(quantity, *percent, *base, point, Answer::No, keeps)
        }
        Bound::Greater(limbs) => Answer::all(limbs.iter().map(|b| at_least(b, quantity, point))),
        Bound::Lesser(limbs) => Answer::any(limbs.iter().map(|b| at_least(b, quantity, point))),
    }
}

fn at_most(bound: &Bound, quantity: Quantity, point: &Point<'_>) -> Answer {
    match bound {
        Bound::Fixed { figure, .. } => (quantity.steps() <= figure.quantity.steps()).into(),
        Bound::Share(percent, base) => {
            let keeps = |value, p, base: Length| value <= base.percent_down(p);
            share(quantity, *percent, *base, point, Answer::Yes, keeps)
        }
        Bound::Greater(limbs) => Answer::any(limbs.iter().map(|b| at_most(b, quantity, point))),
        Bound::Lesser(limbs) => Answer::all(limbs.iter().map(|b| at_most(b, quantity, point))),
    }
}

/// `lasting` is the answer that stays as the base grows: the least that the
/// base can be settles it, though the most is not known.
fn share(
    quantity: Quantity,
    percent: Percent,
    base: Base,
    point: &Point<'_>,
    lasting: Answer,
    keeps: impl Fn(Length, Percent, Length) -> bool,
) -> Answer {
    let Some(value) = quantity.length() else { return Answer::Unknown };
    let at = |base| Answer::from(keeps(value, percent, base));
    match (point.base(base), point.so_far(base)) {
        (Ok(ends), _) => Answer::consensus(ends.map(at)),
        (Err(_), Some(least)) if at(least) == lasting => lasting,
        _ => Answer::Unknown,
    }
}

/// The figures, in steps, at which a quantity comes to keep the bound or
/// ceases to, as far as the bases are known.
pub(crate) fn turns(bound: &Bound, point: &Point<'_>) -> Vec<i64> {
    match bound {
        Bound::Fixed { figure, .. } => vec![figure.quantity.steps()],
        Bound::Share(percent, base) => {
            let ends = point.base(*base).into_iter().flatten().chain(point.so_far(*base));
            let at = |base: Length| [base.percent_down(*percent), base.percent_up(*percent)];
            ends.flat_map(at).map(Length::nanometres).collect()
        }
        Bound::Greater(limbs) | Bound::Lesser(limbs) => {
            limbs.iter().flat_map(|limb| turns(limb, point)).collect()
        }
    }
}

/// The fact of the vessel that the limit needs and that is not known.
pub(crate) fn missing_fact(limit: &Limit, point: &Point<'_>) -> Option<VesselFact> {
    limit.bounds().find_map(|bound| bound_missing(bound, point))
}

fn bound_missing(bound: &Bound, point: &Point<'_>) -> Option<VesselFact> {
    match bound {
        Bound::Fixed { .. } => None,
        Bound::Share(_, base) => point.base(*base).err(),
        Bound::Greater(limbs) | Bound::Lesser(limbs) => {
            limbs.iter().find_map(|limb| bound_missing(limb, point))
        }
    }
}

/// What the limit comes to at this point.
pub(crate) fn demand(limit: &Limit, point: &Point<'_>) -> Demand {
    let least = |bound| worked_out(bound, point, Rounding::Up);
    let most = |bound| worked_out(bound, point, Rounding::Down);
    let demand = match limit {
        Limit::Any => None,
        Limit::AtLeast(bound) => least(bound).map(Demand::Least),
        Limit::MoreThan(bound) => most(bound).map(Demand::Above),
        Limit::AtMost(bound) => most(bound).map(Demand::Most),
        Limit::LessThan(bound) => least(bound).map(Demand::Below),
        Limit::Within(low, high) => {
            least(low).zip(most(high)).map(|(low, high)| Demand::Between(low, high))
        }
        Limit::About { .. } => Some(Demand::About(Arc::new(limit.clone()))),
    };
    demand.unwrap_or(Demand::Open)
}

/// The least that the limit comes to at this point, where it is a least.
pub(crate) fn least(limit: &Limit, point: &Point<'_>) -> Option<Quantity> {
    match limit {
        Limit::AtLeast(bound) => amount(bound, point, Rounding::Up).map(|(least, _)| least),
        _ => None,
    }
}

/// The bound as one figure: the profile's own, or the one worked out.
fn worked_out(bound: &Bound, point: &Point<'_>, rounding: Rounding) -> Option<Figure> {
    let (quantity, written) = amount(bound, point, rounding)?;
    let reckoned = || Figure::reckoned(quantity, point.system(), rounding);
    Some(written.cloned().unwrap_or_else(reckoned))
}

/// What the bound comes to, and the profile's own figure if it is one. Limbs
/// whose base is not known are left out of a *greater* (what is known already
/// binds); a *lesser* needs them all.
fn amount<'b>(
    bound: &'b Bound,
    point: &Point<'_>,
    rounding: Rounding,
) -> Option<(Quantity, Option<&'b Figure>)> {
    match bound {
        Bound::Fixed { figure, .. } => Some((figure.quantity, Some(figure))),
        Bound::Share(percent, base) => {
            let [low, high] = point.shown(*base)?;
            let length = match rounding {
                Rounding::Up => high.percent_up(*percent),
                Rounding::Down => low.percent_down(*percent),
            };
            Some((Quantity::Length(length), None))
        }
        Bound::Greater(limbs) => limbs
            .iter()
            .filter_map(|limb| amount(limb, point, rounding))
            .reduce(|a, b| if b.0.steps() > a.0.steps() { b } else { a }),
        Bound::Lesser(limbs) => {
            let amounts = limbs.iter().map(|limb| amount(limb, point, rounding));
            let amounts = amounts.collect::<Option<Vec<_>>>()?;
            amounts.into_iter().min_by_key(|(quantity, _)| quantity.steps())
        }
    }
}

/// By how much the quantity misses what is demanded.
pub(crate) fn missed_by(demand: &Demand, quantity: Quantity) -> Option<Quantity> {
    let value = quantity.steps();
    let by = match demand {
        Demand::Least(figure) => figure.quantity.steps() - value,
        Demand::Above(figure) => figure.quantity.steps() + 1 - value,
        Demand::Most(figure) => value - figure.quantity.steps(),
        Demand::Below(figure) => value + 1 - figure.quantity.steps(),
        Demand::Between(low, high) => {
            (low.quantity.steps() - value).max(value - high.quantity.steps())
        }
        Demand::About(_) | Demand::OneOf(_) | Demand::Is(_) | Demand::Open => return None,
    };
    (by > 0 && quantity.kind() != QuantityKind::HookSize)
        .then(|| Quantity::from_steps(quantity.kind(), by))
}

/// A quantity that keeps the limit in every one of the points, if one limit
/// alone is at stake.
pub(crate) fn example(limit: &Limit, kind: QuantityKind, points: &[Point<'_>]) -> Option<Figure> {
    let mut candidates: Vec<i64> = Vec::new();
    for point in points {
        match limit {
            Limit::Any => candidates.push(Length::from_millimetres(1000).nanometres()),
            Limit::About { low, .. } => candidates.push(low.quantity.steps()),
            _ => {
                for bound in limit.bounds() {
                    for rounding in [Rounding::Up, Rounding::Down] {
                        let figure = worked_out(bound, point, rounding)?;
                        let steps = figure.quantity.steps();
                        candidates.extend([steps, steps + 1, steps - 1]);
                    }
                }
            }
        }
    }
    if kind == QuantityKind::Count && matches!(limit, Limit::Any) {
        candidates.push(1);
    }
    candidates.sort_unstable();
    let quantity = candidates
        .into_iter()
        .map(|steps| Quantity::from_steps(kind, steps))
        .find(|q| points.iter().all(|point| keeps(limit, *q, point) == Answer::Yes))?;
    Some(Figure::reckoned(quantity, System::Customary, Rounding::Up))
}

impl Point<'_> {
    /// The length that a percentage is taken of, from the least to the most
    /// that it may be, or the fact that is missing.
    pub(crate) fn base(&self, base: Base) -> Result<[Length; 2], VesselFact> {
        let (kind, pieces, attribute, fact) = match base {
            Base::Freeboard => {
                return self.freeboard.map(|f| [f, f]).map_err(VesselFact::from);
            }
            Base::HeaviestHook => ("hook", &self.vessel.hooks, "wire", VesselFact::Hooks),
            Base::ThickestLine | Base::ThickestLeader => {
                ("fishing-line", &self.vessel.lines, "diameter", VesselFact::Lines)
            }
        };
        let coverage = &self.vessel.coverage;
        let whole = self.vocabulary.find_kind(kind).is_some_and(|kind| coverage.is_whole(kind));
        let pieces = pieces.as_deref().filter(|_| whole);
        match base {
            Base::ThickestLeader => {
                pieces.and_then(|pieces| self.thickest_leader(pieces)).ok_or(fact)
            }
            _ => self.thickest(pieces, attribute).ok_or(fact),
        }
    }

    /// What a limit is worked out from: the base, or for a limit that is
    /// missed for certain the least that it can be.
    pub(crate) fn shown(&self, base: Base) -> Option<[Length; 2]> {
        let so_far = || self.so_far(base).filter(|_| self.missed).map(|least| [least; 2]);
        self.base(base).ok().or_else(so_far)
    }

    /// The thickest hook or line that is known, whatever the others are.
    pub(crate) fn so_far(&self, base: Base) -> Option<Length> {
        let (pieces, attribute) = match base {
            Base::Freeboard => return None,
            Base::HeaviestHook => (&self.vessel.hooks, "wire"),
            Base::ThickestLine | Base::ThickestLeader => (&self.vessel.lines, "diameter"),
        };
        let counts = |piece: &&GearPiece| {
            base != Base::ThickestLeader || self.is_leader(piece) == Answer::Yes
        };
        let each = pieces.iter().flatten().filter(counts);
        each.filter_map(|one| self.thickest(Some(std::slice::from_ref(one)), attribute))
            .map(|[least, _]| least)
            .max()
    }

    fn is_leader(&self, piece: &GearPiece) -> Answer {
        let Some(part) = self.vocabulary.find_attribute("part") else { return Answer::Unknown };
        Answer::consensus(piece.tool.counted(part).map(|reading| match &reading.datum {
            Datum::Word(word) => Answer::from(word == "leader"),
            _ => Answer::Unknown,
        }))
    }

    /// The thickest leader: at least that of the lines that are one for
    /// certain, at most that of those that may be.
    fn thickest_leader(&self, pieces: &[GearPiece]) -> Option<[Length; 2]> {
        let (mut sure, mut maybe) = (Vec::new(), Vec::new());
        for piece in pieces {
            let is = self.is_leader(piece);
            sure.extend((is == Answer::Yes).then(|| piece.clone()));
            maybe.extend((is != Answer::No).then(|| piece.clone()));
        }
        if sure.is_empty() {
            // Where none is a leader for certain the hooks hang on some line.
            let each =
                pieces.iter().map(|one| self.thickest(Some(std::slice::from_ref(one)), "diameter"));
            let ends = each.collect::<Option<Vec<_>>>()?;
            return Some([ends.iter().map(|e| e[0]).min()?, ends.iter().map(|e| e[1]).max()?]);
        }
        let [_, high] = self.thickest(Some(&maybe), "diameter")?;
        let [low, _] = self.thickest(Some(&sure), "diameter")?;
        Some([low, high])
    }

    /// The greatest of the attribute over all pieces; none where a piece
    /// says nothing of it, or pieces may be aboard that nobody listed.
    fn thickest(&self, pieces: Option<&[GearPiece]>, attribute: &str) -> Option<[Length; 2]> {
        let attribute = self.vocabulary.find_attribute(attribute)?;
        let mut thickest = [Length::ZERO; 2];
        for piece in pieces? {
            let figures = piece.tool.counted(attribute).filter_map(|reading| {
                let Datum::Figure(figure) = &reading.datum else { return None };
                let error = reading.error.as_ref().and_then(Figure::length);
                Some((figure.length()?, error.unwrap_or(Length::ZERO)))
            });
            let spans: Vec<_> = figures.map(|(l, e)| (l.less(e), l.plus(e))).collect();
            thickest[0] = thickest[0].max(spans.iter().map(|(low, _)| *low).min()?);
            thickest[1] = thickest[1].max(spans.iter().map(|(_, high)| *high).max()?);
        }
        Some(thickest)
    }
}
