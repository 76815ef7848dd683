//! Imports that break the tables of DEVELOPERS.md, and import circles.

use super::source::{Module, Sources};
use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::{Path, PathBuf};

pub(super) fn repository() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).parent().unwrap().to_owned()
}

/// Which entries of a crate's root folder may import which, from the table of DEVELOPERS.md whose first heading names
/// that folder. The last cell lists names in code style; it may also say "all", "the rows above" and "each other".
pub(super) fn table(root: &str) -> BTreeMap<String, Vec<Module>> {
    let text = fs::read_to_string(repository().join("DEVELOPERS.md")).unwrap();
    let in_code = |cell: &str| -> Vec<String> { cell.split('`').skip(1).step_by(2).map(str::to_owned).collect() };
    let heading = format!("`{root}/`");
    let rows: Vec<(Vec<String>, &str)> = text
        .lines()
        .skip_while(|line| !(line.starts_with('|') && line.contains(&heading)))
        .take_while(|line| line.starts_with('|'))
        .skip(2)
        .map(|line| line.trim_matches('|').split('|').collect::<Vec<_>>())
        .map(|cells| (in_code(cells[0]), *cells.last().unwrap()))
        .collect();
    let mut rules = BTreeMap::new();
    for (at, (names, imports)) in rows.iter().enumerate() {
        let mut allowed = in_code(imports);
        for (words, meant) in [("all", &rows[..]), ("the rows above", &rows[..at]), ("each other", &rows[at..=at])] {
            if imports.split(',').any(|part| part.trim() == words) {
                allowed.extend(meant.iter().flat_map(|(names, _)| names.clone()));
            }
        }
        let allowed: Vec<Module> = allowed.iter().map(|path| path.split("::").map(str::to_owned).collect()).collect();
        rules.extend(names.iter().map(|name| (name.clone(), allowed.clone())));
    }
    rules
}

/// What breaks the rules of a crate, a line each.
pub(super) fn broken_rules(root: &str, other_crate: Option<(&str, &str)>) -> Vec<String> {
    let sources = Sources::read(&repository().join(root));
    let rules = table(root);
    let mut broken = Vec::new();
    for (module, source) in sources.0.iter().filter(|(module, _)| !module.is_empty() && *module != &["main"]) {
        let Some(allowed) = rules.get(&module[0]) else {
            broken.push(format!("{root}/{} is not in the table of DEVELOPERS.md", module[0]));
            continue;
        };
        for path in &source.uses {
            let inside = path.strip_prefix(&["crate".to_owned()][..]).map(<[String]>::to_vec);
            let other = other_crate.filter(|(name, _)| path[0] == *name);
            let target = match (inside, other) {
                // By the path as it is written, and by what it means.
                (Some(inside), _) => sources.defining(&inside).map(|real| (inside, real)),
                (None, Some((_, short))) => {
                    let named = [vec![short.to_owned()], path[1..].to_vec()].concat();
                    Some((named.clone(), named))
                }
                _ => None,
            };
            let Some((written, real)) = target.filter(|(_, real)| real.first().is_some_and(|top| *top != module[0]))
            else {
                continue;
            };
            if !allowed.iter().any(|may| written.starts_with(may) || real.starts_with(may)) {
                broken.push(format!(
                    "{}: `{}` may not import `{}`",
                    source.path.display(),
                    module[0],
                    written.join("::")
                ));
            }
        }
    }
    for name in rules.keys() {
        if !sources.0.keys().any(|module| module.first() == Some(name)) {
            broken.push(format!("DEVELOPERS.md lists {root}/{name}, which is not there"));
        }
    }
    broken.dedup();
    broken
}

/// The circles among the entries of each folder: files, and folders as a whole.
pub(super) fn circles_of_folders(root: &str) -> Vec<String> {
    let sources = Sources::read(&repository().join(root));
    let edges = sources.edges();
    let folders: BTreeSet<Module> =
        sources.0.keys().flat_map(|module| (0..module.len()).map(|n| module[..n].to_vec())).collect();
    let among = folders.iter().flat_map(|folder| {
        let entry = |module: &Module| -> Option<String> {
            let rest = module.strip_prefix(&folder[..])?;
            Some(rest.first().cloned().unwrap_or_else(|| "mod.rs".into()))
        };
        let inside = edges.iter().filter_map(|(from, to)| Some((entry(from)?, entry(to)?, from, to)));
        described(&format!("{root}/{}", folder.join("/")), inside)
    });
    among.collect()
}

/// The circles among the files of a crate. A folder's `mod.rs` and its files count as one here.
pub(super) fn circles_of_files(root: &str) -> Vec<String> {
    let edges = Sources::read(&repository().join(root)).edges();
    let apart = edges.iter().filter(|(from, to)| !from.starts_with(to) && !to.starts_with(from));
    described(root, apart.map(|(from, to)| (from.join("::"), to.join("::"), from, to)))
}

/// The circles that these imports make, each with the imports that make it. An import has the names of what imports and
/// what is imported, and the files.
pub(super) fn described<'a>(
    place: &str,
    imports: impl Iterator<Item = (String, String, &'a Module, &'a Module)>,
) -> Vec<String> {
    let mut next: BTreeMap<String, BTreeMap<String, (&Module, &Module)>> = BTreeMap::new();
    for (a, b, from, to) in imports.filter(|(a, b, ..)| a != b) {
        next.entry(a).or_default().entry(b).or_insert((from, to));
    }
    let circles = knots(&next).into_iter().map(|circle| {
        let within = circle.iter().flat_map(|from| next[from].iter()).filter(|(to, _)| circle.contains(*to));
        let lines: Vec<String> =
            within.map(|(_, (a, b))| format!("  {} imports {}", a.join("::"), b.join("::"))).collect();
        format!("{place}: {circle:?}\n{}", lines.join("\n"))
    });
    circles.collect()
}

/// The sets of entries each of which leads to every other.
pub(super) fn knots<T>(next: &BTreeMap<String, BTreeMap<String, T>>) -> Vec<BTreeSet<String>> {
    let reach = |from: &String| {
        let (mut seen, mut open) = (BTreeSet::new(), vec![from]);
        while let Some(at) = open.pop() {
            for to in next.get(at).into_iter().flat_map(BTreeMap::keys) {
                if seen.insert(to.clone()) {
                    open.push(to);
                }
            }
        }
        seen
    };
    let reached: BTreeMap<&String, BTreeSet<String>> = next.keys().map(|from| (from, reach(from))).collect();
    let mut found: Vec<BTreeSet<String>> = Vec::new();
    for (from, to) in &reached {
        let knot: BTreeSet<String> =
            to.iter().filter(|other| reached.get(other).is_some_and(|back| back.contains(*from))).cloned().collect();
        if knot.len() > 1 && !found.contains(&knot) {
            found.push(knot);
        }
    }
    found
}
