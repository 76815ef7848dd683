//! The source files that tests read.

use std::path::PathBuf;

/// The Rust files in a folder of the project and in the folders below it, by name. `folder` is relative to the core's.
pub fn rust_files(folder: &str) -> Vec<PathBuf> {
    let (mut folders, mut files) = (vec![PathBuf::from(env!("CARGO_MANIFEST_DIR")).join(folder)], Vec::new());
    while let Some(folder) = folders.pop() {
        for path in folder.read_dir().unwrap().map(|entry| entry.unwrap().path()) {
            if path.is_dir() {
                folders.push(path);
            } else if path.extension().is_some_and(|extension| extension == "rs") {
                files.push(path);
            }
        }
    }
    files.sort();
    files
}
