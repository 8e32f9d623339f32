//! "Did you mean": the known word nearest to one that is not known.
//!
//! Imports nothing of this crate.

/// The nearest of the candidates, if it is near enough to be meant.
pub(crate) fn nearest<'a>(
    given: &str,
    candidates: impl IntoIterator<Item = &'a str>,
) -> Option<&'a str> {
    let given = given.trim().to_lowercase();
    let limit = (given.chars().count() / 3).clamp(1, 3);
    nearest_within(&given, candidates, limit)
}

/// The nearest of the candidates within `limit` strokes of the pen.
pub(crate) fn nearest_within<'a>(
    given: &str,
    candidates: impl IntoIterator<Item = &'a str>,
    limit: usize,
) -> Option<&'a str> {
    let mut best: Option<(usize, &str)> = None;
    let length = given.chars().count();
    // Lengths that differ by more are further apart than that, and comparing
    // words takes as long as both are.
    let near = |word: &&str| word.chars().count().abs_diff(length) <= limit;
    for candidate in candidates.into_iter().filter(near) {
        let distance = strsim::osa_distance(given, &candidate.to_lowercase());
        if distance <= limit && best.is_none_or(|(least, _)| distance < least) {
            best = Some((distance, candidate));
        }
    }
    best.map(|(_, candidate)| candidate)
}

/// How far a tag may be from a known one and still be taken for a slip: two
/// strokes, or one in a word of up to four letters.
pub(crate) fn slip_of<'a>(
    given: &str,
    candidates: impl IntoIterator<Item = &'a str>,
) -> Option<&'a str> {
    let limit = if given.chars().count() <= 4 { 1 } else { 2 };
    nearest_within(&given.to_lowercase(), candidates, limit)
}

/// The advice that goes with a suggestion.
pub(crate) fn did_you_mean(suggestion: Option<&str>) -> Option<String> {
    suggestion.map(|word| format!("did you mean `{word}`?"))
}

/// The words in a row: `a`, `b` or `c`.
pub(crate) fn or_list(words: &[&str]) -> String {
    let quoted: Vec<String> = words.iter().map(|word| format!("`{word}`")).collect();
    match quoted.split_last() {
        None => String::new(),
        Some((last, [])) => last.clone(),
        Some((last, rest)) => format!("{} or {last}", rest.join(", ")),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_slip_finds_its_word_and_a_stranger_finds_none() {
        let words = ["handle", "overall", "reach"];
        assert_eq!(nearest("hadnle", words), Some("handle"));
        assert_eq!(nearest("Handel", words), Some("handle"));
        assert_eq!(nearest("colour", words), None);
        assert_eq!(slip_of("gulf", ["golf"]), Some("golf"));
        assert_eq!(slip_of("gulf", ["gilt"]), None);
    }

    #[test]
    fn words_stand_in_a_row() {
        assert_eq!(or_list(&["a", "b", "c"]), "`a`, `b` or `c`");
        assert_eq!(or_list(&["a"]), "`a`");
    }
}
