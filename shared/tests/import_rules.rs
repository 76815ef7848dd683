//! Which folder of a crate may import which, as the tables of DEVELOPERS.md say, and no import circles.
//!
//! Reads every `use` and every path written out in the code of `src/` (the app) and `shared/src/` (the core), and
//! follows re-exports to the file that defines the item. Comments, strings and `#[cfg(test)]` items do not count.

use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::{Path, PathBuf};

/// A module as its path from the crate's root: `["store", "open"]`.
type Module = Vec<String>;

/// The code of one file.
struct Source {
    path: PathBuf,
    tokens: Vec<String>,
    /// Names that the file re-exports, with the path each stands for.
    exports: Vec<(String, Module)>,
    /// Paths that the file uses, from the crate's root or of another crate.
    uses: BTreeSet<Module>,
}

/// The files of a crate, by module.
struct Sources(BTreeMap<Module, Source>);

fn repository() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).parent().unwrap().to_owned()
}

/// The words and marks of Rust code, without comments, strings and items that only tests compile.
fn tokens(text: &str) -> Vec<String> {
    let chars: Vec<char> = text.chars().collect();
    let at = |index: usize| chars.get(index).copied().unwrap_or('\0');
    let (mut out, mut i) = (Vec::new(), 0);
    while i < chars.len() {
        let c = chars[i];
        if c == '/' && at(i + 1) == '/' {
            while i < chars.len() && chars[i] != '\n' {
                i += 1;
            }
        } else if c == '/' && at(i + 1) == '*' {
            while i < chars.len() && !(chars[i] == '*' && at(i + 1) == '/') {
                i += 1;
            }
            i += 2;
        } else if c == 'r' && (at(i + 1) == '"' || (at(i + 1) == '#' && matches!(at(i + 2), '"' | '#'))) {
            let hashes = chars[i + 1..].iter().take_while(|c| **c == '#').count();
            i += hashes + 2;
            while i < chars.len()
                && !(chars[i] == '"' && chars[i + 1..].iter().take(hashes).filter(|c| **c == '#').count() == hashes)
            {
                i += 1;
            }
            i += hashes + 1;
        } else if c == '"' {
            i += 1;
            while i < chars.len() && chars[i] != '"' {
                i += if chars[i] == '\\' { 2 } else { 1 };
            }
            i += 1;
        } else if c == '\'' && (at(i + 1) == '\\' || at(i + 2) == '\'') {
            i += if at(i + 1) == '\\' { 3 } else { 2 };
            while i < chars.len() && chars[i] != '\'' {
                i += 1;
            }
            i += 1;
        } else if c.is_alphanumeric() || c == '_' {
            let start = i;
            while i < chars.len() && (chars[i].is_alphanumeric() || chars[i] == '_') {
                i += 1;
            }
            out.push(chars[start..i].iter().collect());
        } else if c == ':' && at(i + 1) == ':' {
            out.push("::".into());
            i += 2;
        } else {
            if !c.is_whitespace() {
                out.push(c.into());
            }
            i += 1;
        }
    }
    without_tests(&out)
}

/// Leaves out each item behind `#[cfg(test)]`, or `#[cfg(all(test, …))]`.
fn without_tests(tokens: &[String]) -> Vec<String> {
    let is = |i: usize, words: &[&str]| {
        words.iter().enumerate().all(|(n, word)| tokens.get(i + n).is_some_and(|t| t == word))
    };
    let (mut out, mut i) = (Vec::new(), 0);
    while i < tokens.len() {
        if is(i, &["#", "[", "cfg", "(", "test"]) || is(i, &["#", "[", "cfg", "(", "all", "(", "test"]) {
            let mut depth = 0;
            loop {
                match tokens.get(i).map(String::as_str) {
                    Some("{" | "(" | "[") => depth += 1,
                    Some("}") if depth == 1 => break,
                    Some("}" | ")" | "]") => depth -= 1,
                    Some(";") if depth == 0 => break,
                    None => break,
                    _ => {}
                }
                i += 1;
            }
            i += 1;
        } else {
            out.push(tokens[i].clone());
            i += 1;
        }
    }
    out
}

fn is_word(token: &str) -> bool {
    token.chars().next().is_some_and(|c| c.is_alphabetic() || c == '_')
}

/// The paths that begin at a token, all branches of a `{…}`; and the token behind.
fn paths_at(tokens: &[String], mut i: usize, prefix: &[String]) -> (Vec<Module>, usize) {
    let mut path = prefix.to_vec();
    loop {
        match tokens.get(i).map(String::as_str) {
            Some("{") => {
                let mut all = Vec::new();
                i += 1;
                while tokens.get(i).is_some_and(|token| token != "}") {
                    if tokens[i] == "," {
                        i += 1;
                        continue;
                    }
                    let (more, next) = paths_at(tokens, i, &path);
                    all.extend(more);
                    // `as name`, and anything that is no use tree, is passed over.
                    i = next.max(i + 1);
                    while tokens.get(i).is_some_and(|token| token != "," && token != "}") {
                        i += 1;
                    }
                }
                return (all, i + 1);
            }
            Some("*") => {
                path.push("*".into());
                return (vec![path], i + 1);
            }
            Some(word) if is_word(word) => {
                if word != "self" || path.is_empty() {
                    path.push(word.to_owned());
                }
                i += 1;
                if tokens.get(i).is_none_or(|token| token != "::") {
                    return (vec![path], i);
                }
                i += 1;
            }
            // `::<T>`, or what is no path.
            _ => return (vec![path], i),
        }
    }
}

impl Sources {
    fn read(root: &Path) -> Self {
        let mut texts = BTreeMap::new();
        collect(root, root, &mut texts);
        let modules: BTreeSet<Module> = texts.keys().cloned().collect();
        let mut sources: BTreeMap<Module, Source> = texts
            .into_iter()
            .map(|(module, path)| {
                let tokens = tokens(&fs::read_to_string(&path).unwrap());
                let source = Source::read(path, tokens, &module, &modules);
                (module, source)
            })
            .collect();
        // Files that only tests compile are declared nowhere else.
        let declared: BTreeSet<Module> = sources.iter().flat_map(|(module, source)| source.children(module)).collect();
        sources.retain(|module, _| module.is_empty() || module == &["main"] || declared.contains(module));
        Self(sources)
    }

    /// The file that defines what a path means, and the module; `None` for another crate's.
    fn defining(&self, path: &Module) -> Option<Module> {
        let known = (0..=path.len()).rev().map(|n| &path[..n]).find(|head| self.0.contains_key(*head))?;
        let rest = &path[known.len()..];
        let source = &self.0[known];
        let Some(name) = rest.first() else { return Some(known.to_vec()) };
        for (exported, target) in &source.exports {
            let real = if exported == "*" {
                let target = target[..target.len() - 1].to_vec();
                if !self.0.get(&target).is_some_and(|child| child.defines(name)) {
                    continue;
                }
                [target, rest.to_vec()].concat()
            } else if exported == name {
                [target.clone(), rest[1..].to_vec()].concat()
            } else {
                continue;
            };
            return self.defining(&real);
        }
        Some(known.to_vec())
    }

    /// Which file imports which.
    fn edges(&self) -> BTreeSet<(Module, Module)> {
        let all = self.0.iter().flat_map(|(module, source)| {
            source.uses.iter().filter_map(|path| path.strip_prefix(&["crate".to_owned()][..])).filter_map(move |path| {
                let target = self.defining(&path.to_vec())?;
                (&target != module).then(|| (module.clone(), target))
            })
        });
        all.collect()
    }
}

fn collect(root: &Path, folder: &Path, found: &mut BTreeMap<Module, PathBuf>) {
    for entry in fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        if path.is_dir() {
            collect(root, &path, found);
        } else if path.extension().is_some_and(|extension| extension == "rs") {
            let inside = path.strip_prefix(root).unwrap().with_extension("");
            let mut module: Module =
                inside.components().map(|part| part.as_os_str().to_str().unwrap().to_owned()).collect();
            if module.last().is_some_and(|last| last == "mod" || last == "lib") {
                module.pop();
            }
            found.insert(module, path);
        }
    }
}

impl Source {
    fn read(path: PathBuf, tokens: Vec<String>, module: &Module, modules: &BTreeSet<Module>) -> Self {
        let absolute = |path: &Module| -> Module {
            let mut here = module.clone();
            let mut rest = &path[..];
            match path[0].as_str() {
                "crate" => return path.clone(),
                "self" | "super" => {}
                // A module below this one, or another crate.
                child if modules.contains(&[module.clone(), vec![child.to_owned()]].concat()) => {}
                _ => return path.clone(),
            }
            while let Some(first) = rest.first().filter(|first| *first == "self" || *first == "super") {
                if first == "super" {
                    here.pop();
                }
                rest = &rest[1..];
            }
            [vec!["crate".into()], here, rest.to_vec()].concat()
        };
        let (mut exports, mut uses, mut i) = (Vec::new(), BTreeSet::new(), 0);
        while i < tokens.len() {
            let is_use = tokens[i] == "use";
            let begins = is_word(&tokens[i]) && tokens.get(i + 1).is_some_and(|next| next == "::");
            let follows = i > 0 && tokens[i - 1] == "::";
            if !is_use && (!begins || follows) {
                i += 1;
                continue;
            }
            let (paths, next) = paths_at(&tokens, if is_use { i + 1 } else { i }, &[]);
            let public = is_use && i > 0 && (tokens[i - 1] == "pub" || tokens[i - 1] == ")");
            for path in paths.iter().filter(|path| !path.is_empty()) {
                let path = absolute(path);
                // What a folder exports of its own files is no import of theirs.
                let own = path[0] == "crate" && path[1..].starts_with(module) && path.len() > module.len() + 1;
                if public && own {
                    exports.push((path.last().unwrap().clone(), path[1..].to_vec()));
                } else {
                    uses.insert(path);
                }
            }
            i = next.max(i + 1);
        }
        Self { path, tokens, exports, uses }
    }

    /// The modules that this file declares.
    fn children(&self, module: &Module) -> Vec<Module> {
        let pairs = self.tokens.windows(3).filter(|three| three[0] == "mod" && three[2] == ";");
        pairs.map(|three| [module.clone(), vec![three[1].clone()]].concat()).collect()
    }

    /// Whether an item of this name is defined here, by itself or by a macro that takes lists of names.
    fn defines(&self, name: &str) -> bool {
        let item = ["fn", "struct", "enum", "union", "const", "static", "type", "trait", "mod", "!"];
        self.tokens.windows(3).any(|three| {
            three[1] == name
                && (item.contains(&three[0].as_str()) || ("{}".contains(&three[0]) && "{([".contains(&three[2])))
        })
    }
}

/// Which entries of a crate's root folder may import which, from the table of DEVELOPERS.md whose first heading names
/// that folder. The last cell lists names in code style; it may also say "all", "the rows above" and "each other".
fn table(root: &str) -> BTreeMap<String, Vec<Module>> {
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
fn broken_rules(root: &str, other_crate: Option<(&str, &str)>) -> Vec<String> {
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
fn circles_of_folders(root: &str) -> Vec<String> {
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
fn circles_of_files(root: &str) -> Vec<String> {
    let edges = Sources::read(&repository().join(root)).edges();
    let apart = edges.iter().filter(|(from, to)| !from.starts_with(to) && !to.starts_with(from));
    described(root, apart.map(|(from, to)| (from.join("::"), to.join("::"), from, to)))
}

/// The circles that these imports make, each with the imports that make it. An import has the names of what imports and
/// what is imported, and the files.
fn described<'a>(place: &str, imports: impl Iterator<Item = (String, String, &'a Module, &'a Module)>) -> Vec<String> {
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
fn knots<T>(next: &BTreeMap<String, BTreeMap<String, T>>) -> Vec<BTreeSet<String>> {
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
