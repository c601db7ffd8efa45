//! The `foilwork` command. All of it lives in `foilwork::cli`, so that the Python console script runs the same code.

fn main() -> std::process::ExitCode {
    foilwork::cli::run(std::env::args_os().collect()).into()
}
