//! The program `kitmuster`: hands its arguments to `cli` and its exit code to
//! the shell; nothing else may be done here.

fn main() -> std::process::ExitCode {
    kitmuster::cli::run(std::env::args_os())
}
