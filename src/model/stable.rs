//! Stable words for programs: a table that is at once the function from a
//! value to its word and the list of all words, so that no list of them can
//! fall behind.
//!
//! Imports nothing.

/// Declares a function from a value to its stable word, and beside it the
/// list of the words.
macro_rules! stable_words {
    (
        $(#[$meta:meta])*
        $vis:vis fn $name:ident($of:ty) in $all:ident {
            $($pattern:pat => $word:literal,)+
        }
    ) => {
        $(#[$meta])*
        $vis fn $name(one: $of) -> &'static str {
            match one {
                $($pattern => $word,)+
            }
        }

        /// Every word of the table beside.
        $vis const $all: &[&str] = &[$($word),+];
    };
}

pub(crate) use stable_words;

#[cfg(test)]
mod tests {
    stable_words! {
        /// Yes, no, or a number.
        fn said(Result<bool, u32>) in SAID {
            Ok(true) => "yes",
            Ok(false) => "no",
            Err(_) => "a-number",
        }
    }

    #[test]
    fn a_table_is_the_function_and_the_list() {
        assert_eq!([said(Ok(true)), said(Ok(false)), said(Err(3))], SAID);
    }
}
