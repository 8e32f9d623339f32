//! An integer program as plain rows and columns, and its solution by branch
//! and bound over the linear programs that `microlp` solves.
//!
//! Floating point lives here; what comes out is rounded to whole numbers and
//! reckoned again by whoever asked.
//!
//! `microlp` solves integer programs too, and was tried first: an order for 20
//! vessels with scarce stock (600 columns) found no basket in 60 s. Best bound
//! first with a dive from each node, delivery settled before packs and packs before
//! pieces, bounds rounded up to the next coin, prove the same order in 0.1 s. Open
//! nodes hold their solutions in 256 MB together; one without keeps its bounds and
//! is worked out again from the root.

use microlp::{
    ComparisonOp, Error, LinearExpr, OptimizationDirection, Problem, Solution, SolveOptions,
    Variable,
};
use std::cmp::Ordering;
use std::collections::{BTreeMap, BinaryHeap};
use std::rc::Rc;
use std::time::Instant;

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
    /// Columns of a higher rank are settled before those of a lower one.
    pub(super) rank: u8,
}

/// An integer program.
#[derive(Debug, Clone, Default)]
pub(super) struct Program {
    pub(super) columns: Vec<Column>,
    pub(super) rows: Vec<Row>,
    /// Columns that are the least whole number with which a row holds, with
    /// that row.
    pub(super) least_with: Vec<(usize, usize)>,
}

/// What the solver found.
#[derive(Debug, Clone)]
pub(super) struct Found {
    /// The value of each column, whole ones rounded.
    pub(super) values: Vec<f64>,
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

/// What is asked of a search.
#[derive(Debug, Clone, Copy)]
pub(super) struct Goal<'g> {
    /// What is to be least.
    pub(super) objective: &'g Sum,
    /// Objectives of whole solutions are multiples of this.
    pub(super) step: f64,
    /// When to stop.
    pub(super) deadline: Instant,
}

/// How far from a whole number a value may be that counts as one. The solver
/// keeps its rows to a tenth of that; anything coarser would let it save the
/// coin on which a tax's rounding turns.
const WHOLE: f64 = 1e-9;

/// How much room the solutions of open nodes may take together, in bytes.
const MOST_HELD: usize = 256 << 20;

/// How far from its right side a row of whole values may be.
const NEARLY: f64 = 1e-6;

impl Program {
    /// A new column of whole numbers up to `most`.
    pub(super) fn whole(&mut self, most: u32) -> usize {
        self.ranked(most, 1)
    }

    /// The same, of another rank than that of most columns, which is one.
    pub(super) fn ranked(&mut self, most: u32, rank: u8) -> usize {
        self.columns.push(Column { most: f64::from(most), whole: true, rank });
        self.columns.len() - 1
    }

    /// A new column of any amount.
    pub(super) fn amount(&mut self) -> usize {
        self.columns.push(Column { most: f64::INFINITY, whole: false, rank: 0 });
        self.columns.len() - 1
    }

    pub(super) fn row(&mut self, sum: Sum, side: Side, right: f64) {
        self.rows.push(Row { sum, side, right });
    }

    /// Finds values with the least objective.
    pub(super) fn least(&self, goal: &Goal<'_>) -> Result<Found, Failure> {
        self.least_in(goal, MOST_HELD)
    }

    /// The same with so much room for the solutions of open nodes, in bytes.
    fn least_in(&self, goal: &Goal<'_>, room: usize) -> Result<Found, Failure> {
        let (root, variables) = self.root(goal)?;
        let most_held = room / self.bytes_of_a_solution();
        let (best, lost, held) = (None, f64::INFINITY, 0);
        Tree { program: self, goal, variables, root, most_held, held, best, lost }.search()
    }

    /// How much room a solution of the linear program takes, about: the rows
    /// twice over, what the basis is taken apart into, and some twenty numbers
    /// for each row and column (measured on orders for 1 to 50 vessels).
    fn bytes_of_a_solution(&self) -> usize {
        let filled: usize = self.rows.iter().map(|row| row.sum.len()).sum();
        160 * filled + 320 * (self.rows.len() + self.columns.len()) + 1
    }

    /// What no solution is below: that of the linear program.
    pub(super) fn below_any(&self, goal: &Goal<'_>) -> Option<f64> {
        self.root(goal).ok().map(|(root, _)| root.objective())
    }

    /// The linear program, solved.
    fn root(&self, goal: &Goal<'_>) -> Result<(Solution, Vec<Variable>), Failure> {
        let mut problem = Problem::new(OptimizationDirection::Minimize);
        let mut costs = vec![0.0; self.columns.len()];
        goal.objective.iter().for_each(|(column, factor)| costs[*column] += factor);
        let add = |(column, cost): (&Column, f64)| problem.add_var(cost, (0.0, column.most));
        let variables: Vec<Variable> = self.columns.iter().zip(costs).map(add).collect();
        for row in &self.rows {
            let side = match row.side {
                Side::AtMost => ComparisonOp::Le,
                Side::AtLeast => ComparisonOp::Ge,
                Side::Equal => ComparisonOp::Eq,
            };
            problem.add_constraint(expression(&row.sum, &variables), side, row.right);
        }
        let mut options = SolveOptions::default();
        options.time_limit = Some(goal.deadline.saturating_duration_since(Instant::now()));
        match problem.solve_with(options) {
            Ok(solved) => match solved.into_solution() {
                Ok(solution) => Ok((solution, variables)),
                Err(_) => Err(Failure::OutOfTime),
            },
            Err(Error::Infeasible) => Err(Failure::Infeasible),
            Err(other) => Err(Failure::Gave(other.to_string())),
        }
    }

    /// The least whole value of the column with which the row holds.
    fn least_whole(&self, column: usize, row: usize, values: &[f64]) -> f64 {
        let row = &self.rows[row];
        let own = row.sum.iter().filter(|(at, _)| *at == column).map(|(_, factor)| factor);
        let rest = row.sum.iter().filter(|(at, _)| *at != column).map(|(at, f)| f * values[*at]);
        let wanted = (row.right - rest.sum::<f64>()) / own.sum::<f64>();
        (wanted - 1e-7).ceil().max(0.0)
    }

    /// Whether whole values keep every row.
    fn holds(&self, values: &[f64]) -> bool {
        self.rows.iter().all(|row| {
            let left: f64 = row.sum.iter().map(|(column, factor)| factor * values[*column]).sum();
            let near = NEARLY * (1.0 + row.right.abs());
            match row.side {
                Side::AtMost => left <= row.right + near,
                Side::AtLeast => left >= row.right - near,
                Side::Equal => (left - row.right).abs() <= near,
            }
        })
    }
}

/// The columns with their factors, each once.
fn expression(sum: &Sum, variables: &[Variable]) -> LinearExpr {
    let mut factors: BTreeMap<usize, f64> = BTreeMap::new();
    for (column, factor) in sum {
        *factors.entry(*column).or_default() += factor;
    }
    let mut expression = LinearExpr::empty();
    factors.into_iter().for_each(|(column, factor)| expression.add(variables[column], factor));
    expression
}

/// A part of the search: a linear program with bounds added, solved.
struct Node {
    bound: f64,
    depth: u32,
    /// Nothing where there was no room to hold it: it is then worked out once
    /// more from the root.
    solution: Option<Solution>,
    /// The bounds that were added, the last one first.
    added: Option<Rc<Added>>,
}

/// A bound on a column, and those before it.
struct Added {
    column: usize,
    side: ComparisonOp,
    right: f64,
    before: Option<Rc<Added>>,
}

impl PartialEq for Node {
    fn eq(&self, other: &Self) -> bool {
        self.cmp(other) == Ordering::Equal
    }
}

impl Eq for Node {}

impl PartialOrd for Node {
    fn partial_cmp(&self, other: &Self) -> Option<Ordering> {
        Some(self.cmp(other))
    }
}

impl Ord for Node {
    /// The least bound first, of equals the deepest.
    fn cmp(&self, other: &Self) -> Ordering {
        other.bound.total_cmp(&self.bound).then(self.depth.cmp(&other.depth))
    }
}

/// The search: best bound first, and from each node straight down to a whole
/// solution, so that there is one early.
struct Tree<'t> {
    program: &'t Program,
    goal: &'t Goal<'t>,
    variables: Vec<Variable>,
    root: Solution,
    /// How many open nodes may hold their solution, and how many do.
    most_held: usize,
    held: usize,
    best: Option<(f64, Vec<f64>)>,
    /// The least bound of what could not be looked at.
    lost: f64,
}

impl Tree<'_> {
    fn search(mut self) -> Result<Found, Failure> {
        let mut open: BinaryHeap<Node> = BinaryHeap::new();
        let (bound, solution) = (self.root.objective(), Some(self.root.clone()));
        let mut next = Some(Node { bound, depth: 0, solution, added: None });
        loop {
            let node = match next.take() {
                Some(node) => node,
                None => {
                    let Some(node) = open.pop() else { break };
                    self.held -= usize::from(node.solution.is_some());
                    node
                }
            };
            if self.is_beaten(node.bound) {
                continue;
            }
            if self.is_late() {
                self.lost = self.lost.min(node.bound);
                break;
            }
            let mut below = self.below(node).into_iter();
            next = below.next();
            for mut node in below {
                if self.held >= self.most_held {
                    node.solution = None;
                }
                self.held += usize::from(node.solution.is_some());
                debug_assert!(self.held <= self.most_held);
                open.push(node);
            }
        }
        let left = open.peek().map_or(f64::INFINITY, |node| node.bound);
        let least = self.lost.min(left);
        match self.best.take() {
            Some((objective, values)) => {
                let proved = self.rounded_up(least) >= objective - self.goal.step / 2.0;
                let bound = if proved { objective } else { least };
                Ok(Found { values, bound, proved })
            }
            None if least < f64::INFINITY => Err(Failure::OutOfTime),
            None => Err(Failure::Infeasible),
        }
    }

    fn is_late(&self) -> bool {
        Instant::now() >= self.goal.deadline
    }

    /// The solution of a node: the one that it holds, or the root's with its
    /// bounds added once more. Nothing where that did not work out in time.
    fn solution(&self, node: &mut Node) -> Option<Solution> {
        if let Some(held) = node.solution.take() {
            return Some(held);
        }
        let mut bounds = Vec::new();
        let mut last = node.added.as_ref();
        while let Some(added) = last {
            bounds.push(Rc::clone(added));
            last = added.before.as_ref();
        }
        bounds.iter().rev().try_fold(self.root.clone(), |solution, added| {
            if self.is_late() {
                return None;
            }
            let row = expression(&vec![(added.column, 1.0)], &self.variables);
            let solved = solution.add_constraint(row, added.side, added.right).ok()?;
            solved.into_solution().ok()
        })
    }

    /// The next multiple of the step: no whole solution lies between.
    fn rounded_up(&self, bound: f64) -> f64 {
        (bound / self.goal.step - 1e-3).ceil() * self.goal.step
    }

    fn is_beaten(&self, bound: f64) -> bool {
        let best = self.best.as_ref();
        best.is_some_and(|(best, _)| self.rounded_up(bound) >= best - self.goal.step / 2.0)
    }

    /// The two halves below a node, the better one first; none below one that
    /// is whole.
    fn below(&mut self, mut node: Node) -> Vec<Node> {
        let Some(solution) = self.solution(&mut node) else {
            self.lost = self.lost.min(node.bound);
            return Vec::new();
        };
        let Some((column, value)) = self.broken(&solution) else {
            self.keep(&solution, node.bound);
            return Vec::new();
        };
        let sides = [(ComparisonOp::Le, value.floor()), (ComparisonOp::Ge, value.ceil())];
        let mut below = Vec::new();
        for (side, right) in sides {
            let row = expression(&vec![(column, 1.0)], &self.variables);
            let added = || Rc::new(Added { column, side, right, before: node.added.clone() });
            match solution.clone().add_constraint(row, side, right) {
                Ok(solved) => match solved.into_solution() {
                    Ok(solution) => below.push(Node {
                        bound: solution.objective().max(node.bound),
                        depth: node.depth + 1,
                        solution: Some(solution),
                        added: Some(added()),
                    }),
                    Err(_) => self.lost = self.lost.min(node.bound),
                },
                Err(Error::Infeasible) => {}
                Err(_) => self.lost = self.lost.min(node.bound),
            }
        }
        below.retain(|node| !self.is_beaten(node.bound));
        below.sort_by(|one, other| one.bound.total_cmp(&other.bound));
        below
    }

    /// The whole column of the highest rank that matters most and has a
    /// broken value.
    fn broken(&self, solution: &Solution) -> Option<(usize, f64)> {
        let costs = &self.goal.objective;
        let mut worth = vec![0.0_f64; self.variables.len()];
        costs.iter().for_each(|(column, factor)| worth[*column] += factor.abs());
        let broken = self.program.columns.iter().enumerate().filter_map(|(at, column)| {
            let value = solution.var_value_raw(self.variables[at]);
            let off = (value - value.round()).abs();
            (column.whole && off > WHOLE).then(|| (column.rank, off * (1.0 + worth[at]), at, value))
        });
        let most = broken.max_by(|one, other| {
            one.0.cmp(&other.0).then(one.1.total_cmp(&other.1)).then(other.2.cmp(&one.2))
        });
        most.map(|(_, _, at, value)| (at, value))
    }

    fn keep(&mut self, solution: &Solution, bound: f64) {
        let mut values: Vec<f64> = self
            .program
            .columns
            .iter()
            .zip(&self.variables)
            .map(|(column, variable)| {
                let value = solution.var_value_raw(*variable);
                if column.whole { value.round() } else { value }
            })
            .collect();
        // The solver lets a row slip by a hair, which may be the hair on which
        // a rounding turns.
        for (column, row) in &self.program.least_with {
            values[*column] = self.program.least_whole(*column, *row, &values);
        }
        let objective: f64 = self.goal.objective.iter().map(|(at, f)| f * values[*at]).sum();
        if objective > bound + self.goal.step / 2.0 || !self.program.holds(&values) {
            self.lost = self.lost.min(bound);
        }
        if !self.program.holds(&values) {
            return;
        }
        if self.best.as_ref().is_none_or(|(best, _)| objective < *best) {
            self.best = Some((objective, values));
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;
    use std::time::Duration;

    /// Rows that each ask for so much of three columns out of eight, up to
    /// three of each, at these prices.
    fn program(asked: &[([usize; 3], u8)]) -> (Program, Sum) {
        let mut program = Program::default();
        let columns: Vec<usize> = (0..8).map(|_| program.whole(3)).collect();
        for (of, least) in asked {
            let sum = of.iter().map(|at| (columns[*at], 2.0 + (*at % 3) as f64)).collect();
            program.row(sum, Side::AtLeast, f64::from(*least));
        }
        let cost = columns.iter().map(|at| (*at, 5.0 + (*at * 7 % 5) as f64)).collect();
        (program, cost)
    }

    /// The least cost by trying every whole value of every column.
    fn tried(program: &Program, cost: &Sum) -> Option<f64> {
        let all = (0..4_usize.pow(8))
            .map(|number| (0..8).map(|at| (number >> (2 * at) & 3) as f64).collect::<Vec<f64>>());
        let kept = all.filter(|values| program.holds(values));
        kept.map(|values| cost.iter().map(|(at, f)| f * values[*at]).sum()).min_by(f64::total_cmp)
    }

    proptest! {
        #![proptest_config(ProptestConfig {
            cases: 40, failure_persistence: None, ..ProptestConfig::default()
        })]

        #[test]
        fn with_little_room_for_solutions_or_none_the_least_is_found_too(
            asked in prop::collection::vec((prop::array::uniform3(0_usize..8), 1_u8..12), 3..8)
        ) {
            let (program, cost) = program(&asked);
            let deadline = Instant::now() + Duration::from_secs(60);
            let goal = Goal { objective: &cost, step: 1.0, deadline };
            let brute = tried(&program, &cost);
            for room in [0, 3 * program.bytes_of_a_solution(), MOST_HELD] {
                match program.least_in(&goal, room) {
                    Ok(found) => {
                        let sum = |at: &(usize, f64)| at.1 * found.values[at.0];
                        prop_assert_eq!(Some(cost.iter().map(sum).sum()), brute);
                        prop_assert!(found.proved);
                    }
                    Err(failure) => prop_assert_eq!((failure, brute), (Failure::Infeasible, None)),
                }
            }
        }
    }

    #[test]
    fn after_the_deadline_nothing_is_searched() {
        let (program, cost) = program(&[([0, 1, 2], 11), ([2, 3, 4], 11), ([4, 5, 6], 11)]);
        let goal = Goal { objective: &cost, step: 1.0, deadline: Instant::now() };
        assert_eq!(program.least(&goal).unwrap_err(), Failure::OutOfTime);
    }

    #[test]
    fn an_amount_need_not_be_whole() {
        let mut program = Program::default();
        let columns = [program.whole(9), program.whole(9), program.amount()];
        for column in columns {
            program.row(vec![(column, 2.0)], Side::AtLeast, 5.0);
        }
        let cost = columns.map(|column| (column, 1.0)).to_vec();
        let deadline = Instant::now() + Duration::from_secs(60);
        let found = program.least(&Goal { objective: &cost, step: 0.5, deadline }).unwrap();
        assert_eq!(found.values, [3.0, 3.0, 2.5]);
    }

    /// A search for the least whole number of which the double compares so
    /// with five; where something was found before, out of time.
    fn half_of_five(side: Side, before: Option<(Option<f64>, f64)>) -> Result<Found, Failure> {
        let mut program = Program::default();
        let column = program.whole(9);
        program.row(vec![(column, 2.0)], side, 5.0);
        let cost = vec![(column, 1.0)];
        let deadline = Instant::now() + Duration::from_secs(60);
        let mut goal = Goal { objective: &cost, step: 1.0, deadline };
        let (root, variables) = program.root(&goal)?;
        let (best, lost) = before.unwrap_or((None, f64::INFINITY));
        if before.is_some() {
            goal.deadline = Instant::now();
        }
        let best = best.map(|best| (best, vec![best]));
        let (program, goal) = (&program, &goal);
        Tree { program, goal, variables, root, most_held: 1, held: 0, best, lost }.search()
    }

    #[test]
    fn what_was_not_looked_at_bounds_what_was_found() {
        let found = half_of_five(Side::AtLeast, None).unwrap();
        assert_eq!((found.values, found.bound, found.proved), (vec![3.0], 3.0, true));
        let before = |best, lost| half_of_five(Side::AtLeast, Some((best, lost)));
        // No whole number lies between 2.6 and 3.
        let found = before(Some(3.0), 2.6).unwrap();
        assert_eq!((found.bound, found.proved), (3.0, true));
        let found = before(Some(4.0), 2.6).unwrap();
        assert_eq!((found.bound, found.proved), (2.5, false));
        assert_eq!(before(None, f64::INFINITY).unwrap_err(), Failure::OutOfTime);
    }

    #[test]
    fn where_no_whole_number_does_there_is_no_solution() {
        assert_eq!(half_of_five(Side::Equal, None).unwrap_err(), Failure::Infeasible);
    }
}
