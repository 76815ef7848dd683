//! The files of a crate, what each exports and what it uses.

use super::tokens::{is_word, paths_at, tokens};
use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::{Path, PathBuf};

/// A module as its path from the crate's root: `["store", "open"]`.
pub(super) type Module = Vec<String>;

/// The code of one file.
pub(super) struct Source {
    pub(super) path: PathBuf,
    pub(super) tokens: Vec<String>,
    /// Names that the file re-exports, with the path each stands for.
    pub(super) exports: Vec<(String, Module)>,
    /// Paths that the file uses, from the crate's root or of another crate.
    pub(super) uses: BTreeSet<Module>,
}

/// The files of a crate, by module.
pub(super) struct Sources(pub(super) BTreeMap<Module, Source>);

impl Sources {
    pub(super) fn read(root: &Path) -> Self {
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
    pub(super) fn defining(&self, path: &Module) -> Option<Module> {
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
    pub(super) fn edges(&self) -> BTreeSet<(Module, Module)> {
        let all = self.0.iter().flat_map(|(module, source)| {
            source.uses.iter().filter_map(|path| path.strip_prefix(&["crate".to_owned()][..])).filter_map(move |path| {
                let target = self.defining(&path.to_vec())?;
                (&target != module).then(|| (module.clone(), target))
            })
        });
        all.collect()
    }
}

pub(super) fn collect(root: &Path, folder: &Path, found: &mut BTreeMap<Module, PathBuf>) {
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
    pub(super) fn read(path: PathBuf, tokens: Vec<String>, module: &Module, modules: &BTreeSet<Module>) -> Self {
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
