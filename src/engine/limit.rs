//! Whether a quantity keeps a limit, exactly, and what the limit comes to.

use super::scene::Scene;
use crate::measure::{Answer, Figure, Length, Percent, Quantity, QuantityKind, Rounding, System};
use crate::model::reason::{Demand, VesselFact};
use crate::model::rule::{Base, Bound, Limit};
use std::sync::Arc;

/// Whether the quantity keeps the limit in this scene.
pub(super) fn keeps(limit: &Limit, quantity: Quantity, scene: &Scene<'_>) -> Answer {
    match limit {
        Limit::Any => Answer::Yes,
        Limit::AtLeast(bound) => at_least(bound, quantity, scene),
        Limit::LessThan(bound) => at_least(bound, quantity, scene).negated(),
        Limit::AtMost(bound) => at_most(bound, quantity, scene),
        Limit::MoreThan(bound) => at_most(bound, quantity, scene).negated(),
        Limit::Within(low, high) => {
            at_least(low, quantity, scene).and(at_most(high, quantity, scene))
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
pub(super) fn keeps_all(limit: &Limit, can_mean: &[Quantity], scene: &Scene<'_>) -> Answer {
    let all = |side: &dyn Fn(Quantity) -> Answer| {
        Answer::consensus(can_mean.iter().map(|quantity| side(*quantity)))
    };
    match limit {
        Limit::Within(low, high) => {
            all(&|q| at_least(low, q, scene)).and(all(&|q| at_most(high, q, scene)))
        }
        _ => all(&|q| keeps(limit, q, scene)),
    }
}

/// A percentage is compared by cross-multiplying: a whole count of
/// nanometres is at least `p` of a base exactly if it is at least that
/// rounded up to a whole count.
fn at_least(bound: &Bound, quantity: Quantity, scene: &Scene<'_>) -> Answer {
    match bound {
        Bound::Fixed { figure, .. } => (quantity.steps() >= figure.quantity.steps()).into(),
        Bound::Share(percent, base) => {
            let keeps = |value, p, base: Length| value >= base.percent_up(p);
            share(quantity, *percent, *base, scene, Answer::No, keeps)
        }
        Bound::Greater(limbs) => Answer::all(limbs.iter().map(|b| at_least(b, quantity, scene))),
        Bound::Lesser(limbs) => Answer::any(limbs.iter().map(|b| at_least(b, quantity, scene))),
    }
}

fn at_most(bound: &Bound, quantity: Quantity, scene: &Scene<'_>) -> Answer {
    match bound {
        Bound::Fixed { figure, .. } => (quantity.steps() <= figure.quantity.steps()).into(),
        Bound::Share(percent, base) => {
            let keeps = |value, p, base: Length| value <= base.percent_down(p);
            share(quantity, *percent, *base, scene, Answer::Yes, keeps)
        }
        Bound::Greater(limbs) => Answer::any(limbs.iter().map(|b| at_most(b, quantity, scene))),
        Bound::Lesser(limbs) => Answer::all(limbs.iter().map(|b| at_most(b, quantity, scene))),
    }
}

/// `lasting` is the answer that stays as the base grows: the least that the
/// base can be settles it, though the most is not known.
fn share(
    quantity: Quantity,
    percent: Percent,
    base: Base,
    scene: &Scene<'_>,
    lasting: Answer,
    keeps: impl Fn(Length, Percent, Length) -> bool,
) -> Answer {
    let Some(value) = quantity.length() else { return Answer::Unknown };
    let at = |base| Answer::from(keeps(value, percent, base));
    match (scene.base(base), scene.so_far(base)) {
        (Ok(ends), _) => Answer::consensus(ends.map(at)),
        (Err(_), Some(least)) if at(least) == lasting => lasting,
        _ => Answer::Unknown,
    }
}

/// The fact of the vessel that the limit needs and that is not known.
pub(super) fn missing_fact(limit: &Limit, scene: &Scene<'_>) -> Option<VesselFact> {
    bounds(limit).find_map(|bound| bound_missing(bound, scene))
}

fn bound_missing(bound: &Bound, scene: &Scene<'_>) -> Option<VesselFact> {
    match bound {
        Bound::Fixed { .. } => None,
        Bound::Share(_, base) => scene.base(*base).err(),
        Bound::Greater(limbs) | Bound::Lesser(limbs) => {
            limbs.iter().find_map(|limb| bound_missing(limb, scene))
        }
    }
}

/// The bounds of a limit.
pub(super) fn bounds(limit: &Limit) -> impl Iterator<Item = &Bound> {
    let (first, second) = match limit {
        Limit::Any | Limit::About { .. } => (None, None),
        Limit::AtLeast(b) | Limit::MoreThan(b) | Limit::AtMost(b) | Limit::LessThan(b) => {
            (Some(b), None)
        }
        Limit::Within(low, high) => (Some(low), Some(high)),
    };
    first.into_iter().chain(second)
}

/// Whether the limit grows with the freeboard.
pub(super) fn reaches(limit: &Limit) -> bool {
    hangs_on(limit, Base::Freeboard)
}

/// Whether a share of the base stands anywhere in the limit.
pub(super) fn hangs_on(limit: &Limit, base: Base) -> bool {
    fn in_bound(bound: &Bound, base: Base) -> bool {
        match bound {
            Bound::Fixed { .. } => false,
            Bound::Share(_, of) => *of == base,
            Bound::Greater(limbs) | Bound::Lesser(limbs) => {
                limbs.iter().any(|limb| in_bound(limb, base))
            }
        }
    }
    bounds(limit).any(|bound| in_bound(bound, base))
}

/// What the limit comes to in this scene.
pub(super) fn demand(limit: &Limit, scene: &Scene<'_>) -> Demand {
    let least = |bound| worked_out(bound, scene, Rounding::Up);
    let most = |bound| worked_out(bound, scene, Rounding::Down);
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

/// The least that the limit comes to in this scene, where it is a least.
pub(super) fn least(limit: &Limit, scene: &Scene<'_>) -> Option<Quantity> {
    match limit {
        Limit::AtLeast(bound) => amount(bound, scene, Rounding::Up).map(|(least, _)| least),
        _ => None,
    }
}

/// The bound as one figure: the profile's own, or the one worked out.
fn worked_out(bound: &Bound, scene: &Scene<'_>, rounding: Rounding) -> Option<Figure> {
    let (quantity, written) = amount(bound, scene, rounding)?;
    let reckoned = || Figure::reckoned(quantity, scene.system(), rounding);
    Some(written.cloned().unwrap_or_else(reckoned))
}

/// What the bound comes to, and the profile's own figure if it is one. Limbs
/// whose base is not known are left out of a *greater* (what is known already
/// binds); a *lesser* needs them all.
fn amount<'b>(
    bound: &'b Bound,
    scene: &Scene<'_>,
    rounding: Rounding,
) -> Option<(Quantity, Option<&'b Figure>)> {
    match bound {
        Bound::Fixed { figure, .. } => Some((figure.quantity, Some(figure))),
        Bound::Share(percent, base) => {
            let [low, high] = scene.shown(*base)?;
            let length = match rounding {
                Rounding::Up => high.percent_up(*percent),
                Rounding::Down => low.percent_down(*percent),
            };
            Some((Quantity::Length(length), None))
        }
        Bound::Greater(limbs) => limbs
            .iter()
            .filter_map(|limb| amount(limb, scene, rounding))
            .reduce(|a, b| if b.0.steps() > a.0.steps() { b } else { a }),
        Bound::Lesser(limbs) => {
            let amounts = limbs.iter().map(|limb| amount(limb, scene, rounding));
            let amounts = amounts.collect::<Option<Vec<_>>>()?;
            amounts.into_iter().min_by_key(|(quantity, _)| quantity.steps())
        }
    }
}

/// By how much the quantity misses what is demanded.
pub(super) fn missed_by(demand: &Demand, quantity: Quantity) -> Option<Quantity> {
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

/// A quantity that keeps the limit in every one of the scenes, if one limit
/// alone is at stake.
pub(super) fn example(limit: &Limit, kind: QuantityKind, scenes: &[Scene<'_>]) -> Option<Figure> {
    let mut candidates: Vec<i64> = Vec::new();
    for scene in scenes {
        match limit {
            Limit::Any => candidates.push(Length::from_millimetres(1000).nanometres()),
            Limit::About { low, .. } => candidates.push(low.quantity.steps()),
            _ => {
                for bound in bounds(limit) {
                    for rounding in [Rounding::Up, Rounding::Down] {
                        let figure = worked_out(bound, scene, rounding)?;
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
        .find(|q| scenes.iter().all(|scene| keeps(limit, *q, scene) == Answer::Yes))?;
    Some(Figure::reckoned(quantity, System::Customary, Rounding::Up))
}
