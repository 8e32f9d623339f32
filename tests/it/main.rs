//! Everything that is checked from outside: one binary for all of it.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::disallowed_methods,
    clippy::print_stderr
)]
#![allow(missing_docs)]

mod asked;
mod audit;
mod boundaries;
mod broken;
mod cheapest;
mod completions;
mod coverage;
mod demand;
mod everyday;
#[cfg(unix)]
mod faults;
mod fleets;
mod floors;
mod fuzz_found;
#[cfg(unix)]
mod hostile;
mod kit;
mod messages;
mod numbers;
mod options;
mod options_card;
mod options_cases;
mod options_properties;
mod outfit;
mod pages;
mod properties;
mod quote;
mod quote_pages;
mod record;
mod run;
mod schema;
mod sentences;
mod shapes;
mod sheet;
mod situations;
mod statements;
mod suppliers;
mod supply_chain;
mod terminal;
mod traps;
mod unsaid;
mod verdicts;
mod whole;
mod words;
mod worst;
