//! The `two-frames` command: parse, call, report.
fn main() {}
