//! Lines and columns of what a finding points at.
//!
//! Imports `load` for its sources. Positions are looked up here, at the edge,
//! and only for files that are asked about: the engine knows key paths alone.

use crate::load::{Position, Source};
use crate::model::place::Place;
use std::cell::OnceCell;

/// The files that were read, with the positions in each once somebody asks.
pub struct Places<'a> {
    sources: &'a [Source],
    positions: Vec<OnceCell<crate::load::Positions>>,
}

impl<'a> Places<'a> {
    /// The places of these files.
    pub fn new(sources: &'a [Source]) -> Self {
        Self { sources, positions: sources.iter().map(|_| OnceCell::new()).collect() }
    }

    /// Line and column of a place; none where its file was not read here.
    pub fn locate(&self, place: &Place) -> Option<Position> {
        let index = self.sources.iter().position(|source| source.file == place.file)?;
        let positions = self.positions[index].get_or_init(|| self.sources[index].positions());
        positions.locate(&place.key)
    }
}
