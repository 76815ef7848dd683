//! Which folder of a crate may import which, as the tables of DEVELOPERS.md say, and no import circles.
//!
//! Reads every `use` and every path written out in the code of `src/` (the app) and `shared/src/` (the core), and
//! follows re-exports to the file that defines the item. Comments, strings and `#[cfg(test)]` items do not count.

mod rules;
mod source;
mod tokens;

use rules::{broken_rules, circles_of_files, circles_of_folders};
use source::Source;
use std::collections::BTreeSet;
use std::path::PathBuf;
use tokens::tokens;

#[track_caller]
fn none(found: &[String]) {
    assert!(found.is_empty(), "\n{}\n", found.join("\n"));
}

#[test]
fn the_app_imports_only_what_the_table_allows() {
    none(&broken_rules("src", Some(("lastpull_core", "core"))));
}

#[test]
fn the_app_has_no_import_circles() {
    none(&circles_of_folders("src"));
}

#[test]
fn the_core_imports_only_what_the_table_allows() {
    none(&broken_rules("shared/src", None));
}

/// By file, not by folder: the core's subjects know each other, and `shop` holds all of them.
#[test]
fn the_core_has_no_import_circles() {
    none(&circles_of_files("shared/src"));
}

#[test]
fn paths_are_read_from_trees_and_from_code() {
    let code = tokens(
        "use crate::a::{b, c::{D, self}}; // crate::no\nlet x = \"crate::no\"; x::<crate::e::F>(crate::g::h());",
    );
    let modules = BTreeSet::from([vec!["here".to_owned()]]);
    let source = Source::read(PathBuf::new(), code, &vec!["here".to_owned()], &modules);
    let uses: Vec<String> =
        source.uses.iter().map(|path| path.join("::")).filter(|path| path.starts_with("crate")).collect();
    assert_eq!(uses, ["crate::a::b", "crate::a::c", "crate::a::c::D", "crate::e::F", "crate::g::h"]);
}

#[test]
fn items_that_only_tests_compile_are_left_out() {
    let code = tokens("#[cfg(test)] mod tests { use crate::no; } #[cfg(test)] mod more; use crate::yes;");
    assert_eq!(code, ["use", "crate", "::", "yes", ";"]);
}
