//! An integer program as plain rows and columns, and its solution by the
//! solver behind `good_lp`.
//!
//! Floating point lives here; what comes out is rounded to whole numbers and
//! reckoned again by whoever asked.

use good_lp::{
    Expression, ProblemVariables, ResolutionError, Solution, SolverModel, Variable, WithTimeLimit,
    solvers::{SolutionStatus, microlp::microlp},
    variable,
};
use std::time::Duration;

/// Columns with their factors.
pub(super) type Sum = Vec<(usize, f64)>;

/// How a row compares with its right side.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Side {
    /// At most.
    AtMost,
    /// At least.
    AtLeast,
    /// Just as much.
    Equal,
}

/// One row.
#[derive(Debug, Clone)]
pub(super) struct Row {
    pub(super) sum: Sum,
    pub(super) side: Side,
    pub(super) right: f64,
}

/// One column, from zero to its most.
#[derive(Debug, Clone, Copy)]
pub(super) struct Column {
    pub(super) most: f64,
    pub(super) whole: bool,
}

/// An integer program.
#[derive(Debug, Clone, Default)]
pub(super) struct Program {
    pub(super) columns: Vec<Column>,
    pub(super) rows: Vec<Row>,
}

/// What the solver found.
#[derive(Debug, Clone)]
pub(super) struct Found {
    /// The value of each column, whole ones rounded.
    pub(super) values: Vec<f64>,
    /// The objective.
    pub(super) objective: f64,
    /// Nothing below this can be reached.
    pub(super) bound: f64,
    /// Whether the objective is proved to be the least.
    pub(super) proved: bool,
}

/// Why there is no solution.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) enum Failure {
    /// There is none.
    Infeasible,
    /// The time ran out before one was found.
    OutOfTime,
    /// The solver gave up.
    Gave(String),
}

impl Program {
    /// A new column of whole numbers up to `most`.
    pub(super) fn whole(&mut self, most: u32) -> usize {
        self.columns.push(Column { most: f64::from(most), whole: true });
        self.columns.len() - 1
    }

    /// A new column of any amount.
    pub(super) fn amount(&mut self) -> usize {
        self.columns.push(Column { most: f64::INFINITY, whole: false });
        self.columns.len() - 1
    }

    pub(super) fn row(&mut self, sum: Sum, side: Side, right: f64) {
        self.rows.push(Row { sum, side, right });
    }

    /// Finds values with the least objective.
    pub(super) fn least(&self, objective: &Sum, patience: Duration) -> Result<Found, Failure> {
        let mut variables = ProblemVariables::new();
        let columns: Vec<Variable> = self
            .columns
            .iter()
            .map(|column| {
                let definition = variable().min(0.0).max(column.most);
                variables.add(if column.whole { definition.integer() } else { definition })
            })
            .collect();
        let expression = |sum: &Sum| {
            let mut expression = Expression::with_capacity(sum.len());
            sum.iter().for_each(|(column, factor)| expression.add_mul(*factor, columns[*column]));
            expression
        };
        let mut model = variables
            .minimise(expression(objective))
            .using(microlp)
            .with_time_limit(patience.as_secs_f64());
        for row in &self.rows {
            let left = expression(&row.sum);
            model.add_constraint(match row.side {
                Side::AtMost => left.leq(row.right),
                Side::AtLeast => left.geq(row.right),
                Side::Equal => left.eq(row.right),
            });
        }
        let solution = model.solve().map_err(failure)?;
        let values: Vec<f64> = columns
            .iter()
            .zip(&self.columns)
            .map(|(variable, column)| {
                let value = solution.value(*variable);
                if column.whole { value.round() } else { value }
            })
            .collect();
        let objective: f64 = objective.iter().map(|(column, f)| f * values[*column]).sum();
        let proved = matches!(solution.status(), SolutionStatus::Optimal);
        let bound = match solution.into_inner().stats().best_bound {
            _ if proved => objective,
            Some(bound) => bound.clamp(0.0, objective),
            None => 0.0,
        };
        Ok(Found { values, objective, bound, proved })
    }
}

fn failure(error: ResolutionError) -> Failure {
    match error {
        ResolutionError::Infeasible => Failure::Infeasible,
        ResolutionError::Other(_) => Failure::OutOfTime,
        other => Failure::Gave(other.to_string()),
    }
}
