//! Every test of the core from outside it, as one program: linking twenty took longer than running them.

mod checks;
mod colour;
mod counting;
mod day;
mod failure;
mod fan;
mod fold;
mod forecast;
mod frozen;
mod heat;
mod heat_room;
mod heat_tests;
mod import_rules;
mod ink;
mod jobs;
mod parts;
mod rail;
mod screens;
mod shop;
mod standing;
mod stencil;
mod stencil_room;
mod verdict;

/// A file that no line above names would compile nowhere, and its tests would pass unrun.
#[test]
fn every_file_beside_this_one_is_among_the_tests() {
    let named: Vec<&str> =
        include_str!("all.rs").lines().filter_map(|line| line.strip_prefix("mod ")?.strip_suffix(';')).collect();
    let folder = std::fs::read_dir(concat!(env!("CARGO_MANIFEST_DIR"), "/tests")).unwrap();
    let files = folder.map(|file| file.unwrap().file_name().into_string().unwrap());
    let unnamed: Vec<String> = files
        .filter_map(|file| Some(file.strip_suffix(".rs")?.to_owned()))
        .filter(|file| file != "all" && !named.contains(&file.as_str()))
        .collect();
    assert!(unnamed.is_empty(), "a line `mod …;` in shared/tests/all.rs is missing for {unnamed:?}");
}
