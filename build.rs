//! What is made when the crate is built: the shipped profiles are embedded
//! again when a file is added, and the files of messages become typed
//! functions.
#![allow(
    clippy::disallowed_methods,
    clippy::print_stderr,
    reason = "the build reads and writes its own files, and its words go to cargo"
)]

use std::path::Path;
use std::process::ExitCode;
use std::{env, fs};

#[path = "src/report/words/generate.rs"]
mod generate;

/// What crews read, what is read at a desk, and what is wrong in files.
const CREW: &str = "crew.en.ftl";
const DESK: &str = "desk.en.ftl";
const PROBLEMS: &str = "problems.en.ftl";

fn main() -> ExitCode {
    println!("cargo:rerun-if-changed=requirements");
    println!("cargo:rerun-if-changed=src/report/words/messages");
    println!("cargo:rerun-if-changed=src/report/words/generate.rs");
    let folder = Path::new("src/report/words/messages");
    let out = Path::new(&env::var_os("OUT_DIR").unwrap_or_default()).join("messages.rs");
    let made = [CREW, DESK, PROBLEMS]
        .map(|name| fs::read_to_string(folder.join(name)))
        .into_iter()
        .collect::<Result<Vec<_>, _>>();
    let made = made.map(|texts| {
        let english = |at: usize, name| generate::File { name, language: "en", text: &texts[at] };
        generate::code(&[english(0, CREW)], english(1, DESK), english(2, PROBLEMS))
    });
    let problem = match made {
        Ok(Ok(code)) => match fs::write(out, code) {
            Ok(()) => return ExitCode::SUCCESS,
            Err(error) => error.to_string(),
        },
        Ok(Err(problems)) => problems.join("\n"),
        Err(error) => error.to_string(),
    };
    eprintln!("{problem}");
    ExitCode::FAILURE
}
