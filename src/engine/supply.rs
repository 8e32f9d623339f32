//! What a purchase makes of a tool: one as it comes, one with a piece on it,
//! one that was mended.

use crate::measure::{Day, Figure, Length, Quantity, QuantityKind, Rounding, System};
use crate::model::catalogue::Given;
use crate::model::vessel::{Change, Datum, How, Reading, State, Statement, Tool};
use crate::model::vocabulary::{AttributeId, Vocabulary};

/// The change of the vocabulary that an extension makes.
const LENGTHENED: &str = "lengthened";
/// The change of the vocabulary that a repair makes.
const REPAIRED: &str = "repaired";

/// The tool as it is aboard once it is delivered on that day; what its
/// supplier declares of it is declared on the other.
pub fn delivered(given: &Given, supplier: &str, arrives: Day, declared: Day) -> Tool {
    let mut tool = given.tool.clone();
    tool.acquired = Some(arrives);
    tool.inspected = given.inspected.then_some(arrives);
    tool.expires = given.lasts.map(|lasts| arrives.through(lasts));
    let statement = |clause: &String| Statement {
        to: clause.clone(),
        on: declared,
        by: Some(supplier.to_owned()),
    };
    tool.conforms = given.conforms.iter().map(statement).collect();
    tool
}

/// Mends the tool on that day, if it does not work.
pub fn mend(tool: &mut Tool, on: Day, vocabulary: &Vocabulary) {
    if tool.state != State::Serviceable {
        tool.state = State::Serviceable;
        note(tool, REPAIRED, on, vocabulary);
    }
}

/// Puts so many pieces on the tool on that day, every length that grows with
/// them reckoned from the one before.
pub fn lengthen(tool: &mut Tool, (by, pieces): (Length, u32), on: Day, vocabulary: &Vocabulary) {
    let by = (0..pieces).fold(Length::ZERO, |sum, _| sum.plus(by));
    let grow: Vec<_> = lengths(tool, vocabulary).collect();
    for attribute in grow {
        let longer = tool.counted(attribute).map(|reading| longer(reading, by, on)).collect();
        tool.set(attribute, longer);
    }
    note(tool, LENGTHENED, on, vocabulary);
}

/// The lengths of a tool that grow when it is lengthened.
pub fn lengths<'t>(
    tool: &'t Tool,
    vocabulary: &'t Vocabulary,
) -> impl Iterator<Item = AttributeId> + 't {
    let grows = vocabulary.changes.get(LENGTHENED).and_then(|grows| grows.as_deref());
    let known = move |id: &AttributeId| {
        tool.readings(*id).iter().any(|reading| matches!(reading.datum, Datum::Figure(_)))
    };
    grows.into_iter().flatten().copied().filter(known)
}

fn note(tool: &mut Tool, what: &str, on: Day, vocabulary: &Vocabulary) {
    if vocabulary.changes.contains_key(what) {
        tool.changes.push(Change { what: what.to_owned(), on });
    }
}

/// The reading as it is once the piece is on, reckoned from the one before.
fn longer(reading: &Reading, by: Length, on: Day) -> Reading {
    let mut longer = reading.clone();
    if let Datum::Figure(figure) = &reading.datum
        && let Some(length) = figure.length()
    {
        longer.datum = Datum::Figure(exact(length.plus(by), figure.system));
        longer.on = Some(on);
        longer.how = How::Stated;
    }
    longer
}

/// The length as a figure whose text says it to the last digit, in that
/// system if it can.
fn exact(length: Length, system: System) -> Figure {
    let quantity = Quantity::Length(length);
    let as_said = |figure: &Figure| {
        Figure::parse(&figure.written, QuantityKind::Length).is_ok_and(|f| f.quantity == quantity)
    };
    let one = Figure::reckoned(quantity, system, Rounding::Down);
    let metric = || Figure { written: length.show_metric_exact(), ..one.clone() };
    if as_said(&one) { one } else { Figure { system: System::Metric, ..metric() } }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Feet and inches where they say the length to the last digit; metric
    /// figures, and so a metric length, where they do not.
    #[test]
    fn a_length_is_said_to_the_last_digit() {
        let feet = Length::parse("8 ft 1/16 in").unwrap().0;
        let said = exact(feet, System::Customary);
        assert_eq!((said.quantity, said.system), (Quantity::Length(feet), System::Customary));
        let odd = Length::parse("2.000001 mm").unwrap().0;
        let said = exact(odd, System::Customary);
        assert_eq!((said.quantity, said.system), (Quantity::Length(odd), System::Metric));
        assert_eq!(Length::parse(&said.written).unwrap().0, odd);
    }
}
