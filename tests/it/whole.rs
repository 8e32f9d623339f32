//! How far the long searches go: a small share of them in `cargo test`, the
//! same cases each time, and all of it where `KITMUSTER_WHOLE` is set, as in
//! `.ci/run`.

/// The number of cases of a search: `small`, or `whole` where that is asked.
pub(crate) fn cases<T>(small: T, whole: T) -> T {
    if is_whole() { whole } else { small }
}

/// Whether every search goes all its way.
pub(crate) fn is_whole() -> bool {
    std::env::var_os("KITMUSTER_WHOLE").is_some_and(|set| !set.is_empty() && set != "0")
}
