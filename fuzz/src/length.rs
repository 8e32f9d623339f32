//! A length as people write it: what is read prints and reads again to the
//! same nanometre, and its print is never off to the wrong side.

use kitmuster::measure::{Length, Rounding, System};

/// An inch in nanometres (NIST SP 811 Appendix B).
const INCH: i64 = 25_400_000;

pub fn run(text: &str) {
    let (length, _) = match Length::parse(text) {
        Ok(read) => read,
        Err(error) => return assert!(!error.to_string().trim().is_empty()),
    };
    let exact = length.nanometres();
    assert_eq!(again(&length.show_metric_exact()), exact);
    for system in [System::Metric, System::Customary] {
        if let Some(shown) = length.show_exact(system) {
            assert_eq!(again(&shown), exact, "{shown}");
        }
        // The print of the longest may lie above what is read.
        if Length::from_nanometres(exact + INCH).is_none() {
            continue;
        }
        let up = again(&length.show(system, Rounding::Up));
        let down = again(&length.show(system, Rounding::Down));
        let nearest = again(&length.show_nearest(system));
        assert!(down <= exact && exact <= up, "{down} {exact} {up}");
        assert!(down <= nearest && nearest <= up, "{down} {nearest} {up}");
        assert!(up - down <= INCH / 16, "{down} {up}");
    }
}

fn again(shown: &str) -> i64 {
    Length::parse(shown).unwrap_or_else(|error| panic!("`{shown}`: {error}")).0.nanometres()
}
