//! The words of Rust code, and the paths among them.

use super::source::Module;

/// The words and marks of Rust code, without comments, strings and items that only tests compile.
pub(super) fn tokens(text: &str) -> Vec<String> {
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
pub(super) fn without_tests(tokens: &[String]) -> Vec<String> {
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

pub(super) fn is_word(token: &str) -> bool {
    token.chars().next().is_some_and(|c| c.is_alphabetic() || c == '_')
}

/// The paths that begin at a token, all branches of a `{…}`; and the token behind.
pub(super) fn paths_at(tokens: &[String], mut i: usize, prefix: &[String]) -> (Vec<Module>, usize) {
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
