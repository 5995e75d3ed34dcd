//! The program: a window without arguments or with a file, a job with a subcommand.

fn main() -> std::process::ExitCode {
    reinwright::command_line::run(std::env::args_os())
}
