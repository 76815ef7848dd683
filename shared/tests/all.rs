//! Every test of the core from outside it, as one program: linking twenty took longer than running them.

use std::path::Path;

mod catalogue;
mod failure;
mod heat;
mod history;
mod import_rules;
mod ink;
mod job;
mod journal;
mod plan;
mod run;
mod screen;
mod shop;
mod source_files;
mod time;

/// A file that no `mod` line names would compile nowhere, and its tests would pass unrun.
#[test]
fn every_file_here_is_among_the_tests() {
    let tests = Path::new(concat!(env!("CARGO_MANIFEST_DIR"), "/tests"));
    let mut unnamed = unnamed_in(tests, "all.rs");
    for folder in tests.read_dir().unwrap().map(|entry| entry.unwrap().path()).filter(|path| path.is_dir()) {
        if folder.file_name().is_some_and(|name| name != "data") {
            unnamed.extend(unnamed_in(&folder, "mod.rs"));
        }
    }
    assert!(unnamed.is_empty(), "a line `mod …;` is missing for {unnamed:?}");
}

/// The files and folders of tests beside `root` that it does not name.
fn unnamed_in(folder: &Path, root: &str) -> Vec<String> {
    let text = std::fs::read_to_string(folder.join(root)).unwrap();
    let named: Vec<&str> = text
        .lines()
        .filter_map(|line| line.trim_start_matches("pub ").strip_prefix("mod ")?.strip_suffix(';'))
        .collect();
    let entries = folder.read_dir().unwrap().map(|entry| entry.unwrap());
    entries
        .map(|entry| entry.file_name().into_string().unwrap())
        .filter(|name| name != root && name != "data" && !name.ends_with(".proptest-regressions"))
        .filter(|name| !named.contains(&name.trim_end_matches(".rs")))
        .map(|name| folder.join(name).display().to_string())
        .collect()
}
