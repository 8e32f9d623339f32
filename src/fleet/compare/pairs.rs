//! Which vessel of one audit is which of another: by register where both
//! have one, else by bare name.

use super::laid::last;
use crate::fleet::bare;
use std::collections::{BTreeMap, BTreeSet};

/// What a vessel is known by.
#[derive(Debug, Clone)]
pub(super) struct Named<'a> {
    name: String,
    register: Option<String>,
    file: &'a str,
}

/// Which is which, by index.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub(super) struct Pairs {
    /// In both, in the order of the later audit.
    pub(super) both: Vec<(usize, usize)>,
    /// In the earlier audit alone.
    pub(super) old: Vec<usize>,
    /// In the later audit alone.
    pub(super) new: Vec<usize>,
    /// Those of which it cannot be told which is which.
    pub(super) unclear: Vec<Open>,
}

/// Vessels of which it cannot be told which is which.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Open {
    pub(super) by: Shared,
    pub(super) old: Vec<usize>,
    pub(super) new: Vec<usize>,
}

/// What several vessels share.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Shared {
    /// A register number that stands in this many files then, and in this
    /// many now.
    Register(usize, usize),
    /// A name, with no register that tells them apart.
    Name,
}

impl<'a> Named<'a> {
    pub(super) fn new(name: &str, register: Option<&str>, file: &'a str) -> Self {
        let register = register.map(bare).filter(|register| !register.is_empty());
        Self { name: bare(name), register, file }
    }

    /// Whether the two may be one vessel: the same register, or the same name
    /// where one of them has none.
    pub(super) fn may_be(&self, other: &Self) -> bool {
        match (&self.register, &other.register) {
            (Some(a), Some(b)) => a == b,
            _ => self.name == other.name,
        }
    }
}

/// Finds which is which. Registers go first; among several of one register or
/// name the file decides, and where it does not, none is taken for another.
pub(super) fn pairs(old: &[Named<'_>], new: &[Named<'_>]) -> Pairs {
    let mut found = Finding { old, new, both: BTreeMap::new(), taken: BTreeSet::new() };
    let mut open = Vec::new();
    found.by(|named| named.register.clone(), &mut open);
    found.by(|named| Some(named.name.clone()), &mut open);
    let unclear = found.unclear(&open);
    let (both, taken) = (found.both, found.taken);
    let left = |index: &usize| {
        !taken.contains(index) && !unclear.iter().any(|open| open.old.contains(index))
    };
    let come = |index: &usize| {
        !both.contains_key(index) && !unclear.iter().any(|open| open.new.contains(index))
    };
    Pairs {
        old: (0..old.len()).filter(left).collect(),
        new: (0..new.len()).filter(come).collect(),
        both: both.iter().map(|(new, old)| (*old, *new)).collect(),
        unclear,
    }
}

struct Finding<'f, 'a> {
    old: &'f [Named<'a>],
    new: &'f [Named<'a>],
    /// The old one of each new one.
    both: BTreeMap<usize, usize>,
    /// The old ones that were found again.
    taken: BTreeSet<usize>,
}

/// Old and new ones that may be one another.
type Candidates = (Vec<usize>, Vec<usize>);

impl Finding<'_, '_> {
    /// All that share a key, whether they were found or not.
    fn groups(
        &self,
        key: impl Fn(&Named<'_>) -> Option<String>,
        left: bool,
    ) -> BTreeMap<String, Candidates> {
        let mut groups: BTreeMap<String, Candidates> = BTreeMap::new();
        for (index, named) in self.old.iter().enumerate() {
            if let Some(key) = key(named).filter(|_| !left || !self.taken.contains(&index)) {
                groups.entry(key).or_default().0.push(index);
            }
        }
        for (index, named) in self.new.iter().enumerate() {
            if let Some(key) = key(named).filter(|_| !left || !self.both.contains_key(&index)) {
                groups.entry(key).or_default().1.push(index);
            }
        }
        groups.retain(|_, (olds, news)| !olds.is_empty() && !news.is_empty());
        groups
    }

    fn by(&mut self, key: impl Fn(&Named<'_>) -> Option<String>, open: &mut Vec<Candidates>) {
        for (olds, news) in self.groups(key, true).into_values() {
            self.within(olds, news, open);
        }
    }

    /// Pairs what shares a register or a name.
    fn within(&mut self, mut olds: Vec<usize>, mut news: Vec<usize>, open: &mut Vec<Candidates>) {
        self.by_file(&mut olds, &mut news, |file| file);
        self.by_file(&mut olds, &mut news, last);
        let may = |old: &usize, new: &usize| self.old[*old].may_be(&self.new[*new]);
        if let ([old], [new]) = (&*olds, &*news)
            && may(old, new)
        {
            self.pair(*old, *new);
            return;
        }
        let (all_olds, all_news) = (olds.clone(), news.clone());
        olds.retain(|old| all_news.iter().any(|new| may(old, new)));
        news.retain(|new| all_olds.iter().any(|old| may(old, new)));
        if !olds.is_empty() {
            open.push((olds, news));
        }
    }

    /// Pairs those whose files are called the same, as far as one alone is.
    fn by_file(&mut self, olds: &mut Vec<usize>, news: &mut Vec<usize>, of: fn(&str) -> &str) {
        for new in news.clone() {
            let file = of(self.new[new].file);
            let same = |old: &&usize| {
                of(self.old[**old].file) == file && self.old[**old].may_be(&self.new[new])
            };
            let several = news.iter().filter(|other| of(self.new[**other].file) == file).count();
            let found: Vec<usize> = olds.iter().filter(same).copied().collect();
            if let ([old], 1) = (&*found, several) {
                self.pair(*old, new);
                olds.retain(|other| other != old);
                news.retain(|other| *other != new);
            }
        }
    }

    fn pair(&mut self, old: usize, new: usize) {
        self.both.insert(new, old);
        self.taken.insert(old);
    }

    /// What is left of those that may be one another, and whoever shares a
    /// register with one that was found.
    fn unclear(&self, open: &[Candidates]) -> Vec<Open> {
        let left = |(olds, news): &Candidates| -> Candidates {
            let olds = olds.iter().filter(|old| !self.taken.contains(old));
            let news = news.iter().filter(|new| !self.both.contains_key(new));
            (olds.copied().collect(), news.copied().collect())
        };
        let mut unclear: Vec<Open> = Vec::new();
        for all in self.groups(|named| named.register.clone(), false).values() {
            let (old, new) = left(all);
            if !(old.is_empty() && new.is_empty()) {
                let by = Shared::Register(all.0.len(), all.1.len());
                unclear.push(Open { by, old, new });
            }
        }
        for all in open {
            let (old, new) = left(all);
            let told = |new: &usize| unclear.iter().any(|open| open.new.contains(new));
            if !old.is_empty() && !new.is_empty() && !new.iter().all(told) {
                unclear.push(Open { by: Shared::Name, old, new });
            }
        }
        unclear
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn found(old: &[(&str, &str, &str)], new: &[(&str, &str, &str)]) -> Pairs {
        fn named<'a>(of: &[(&'a str, &'a str, &'a str)]) -> Vec<Named<'a>> {
            of.iter().map(|(name, register, file)| Named::new(name, Some(register), file)).collect()
        }
        pairs(&named(old), &named(new))
    }

    #[test]
    fn a_register_outlives_a_name_and_a_file() {
        let pairs = found(&[("Tern", "A 1", "x")], &[("Gull", "a1", "y")]);
        assert_eq!(pairs.both, [(0, 0)]);
    }

    #[test]
    fn two_registers_are_two_vessels_of_one_name() {
        let pairs = found(&[("Tern", "A1", "x")], &[("Tern", "A2", "x")]);
        assert_eq!((pairs.both, pairs.old, pairs.new), (vec![], vec![0], vec![0]));
        assert!(pairs.unclear.is_empty());
    }

    #[test]
    fn a_name_does_where_one_has_no_register() {
        let pairs = found(&[("Marlow Tern", "", "x")], &[("marlow  tern", "A2", "y")]);
        assert_eq!(pairs.both, [(0, 0)]);
    }

    #[test]
    fn of_several_of_one_name_the_file_decides_or_nothing() {
        let two = [("Tern", "", "x"), ("Tern", "", "y")];
        assert_eq!(found(&two, &two).both, [(0, 0), (1, 1)]);
        let pairs = found(&two, &[("Tern", "", "z")]);
        let unclear = vec![Open { by: Shared::Name, old: vec![0, 1], new: vec![0] }];
        assert_eq!(pairs, Pairs { unclear, ..Pairs::default() });
        // One is found by its file, which leaves one for the other.
        assert_eq!(found(&two, &[("Tern", "", "z"), ("Tern", "", "y")]).both, [(0, 0), (1, 1)]);
    }

    #[test]
    fn who_left_and_who_came_is_told() {
        let pairs = found(&[("A", "1", "a"), ("B", "", "b")], &[("B", "", "b"), ("C", "", "c")]);
        assert_eq!((pairs.both, pairs.old, pairs.new), (vec![(1, 0)], vec![0], vec![1]));
    }

    #[test]
    fn a_folder_that_was_moved_takes_the_names_of_its_files_along() {
        let then = [("Tern", "", "a/x"), ("Tern", "", "a/y")];
        let now = [("Tern", "", "./b/y"), ("Tern", "", "./b/x")];
        assert_eq!(found(&then, &now).both, [(1, 0), (0, 1)]);
        // Two folders that hold a file of that name are no help.
        let pairs = found(&then, &[("Tern", "", "b/x"), ("Tern", "", "c/x")]);
        let unclear = vec![Open { by: Shared::Name, old: vec![0, 1], new: vec![0, 1] }];
        assert_eq!(pairs, Pairs { unclear, ..Pairs::default() });
    }

    #[test]
    fn a_register_in_two_files_is_told_with_all_that_have_it() {
        let then = [("Tern", "R1", "x")];
        let now = [("Gull", "R1", "y"), ("Plover", "R1", "z"), ("Tern", "R2", "t")];
        let pairs = found(&then, &now);
        let by = Shared::Register(1, 2);
        assert_eq!(pairs.unclear, [Open { by, old: vec![0], new: vec![0, 1] }]);
        assert_eq!((pairs.old, pairs.new), (vec![], vec![2]), "another register is another vessel");
        // One is found by its file; the other is not plainly new.
        let pairs = found(&then, &[("Tern", "R1", "x"), ("Plover", "R1", "z")]);
        assert_eq!((pairs.both, pairs.new), (vec![(0, 0)], vec![]));
        let by = Shared::Register(1, 2);
        assert_eq!(pairs.unclear, [Open { by, old: vec![], new: vec![1] }]);
    }

    #[test]
    fn another_register_is_another_vessel_beside_an_unclear_name() {
        let now = [("Tern", "", "y"), ("Tern", "", "z"), ("Tern", "R9", "t")];
        let pairs = found(&[("Tern", "R1", "x")], &now);
        assert_eq!(pairs.unclear, [Open { by: Shared::Name, old: vec![0], new: vec![0, 1] }]);
        assert_eq!(pairs.new, [2]);
    }
}
