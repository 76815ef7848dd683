//! Words that the app no longer uses, in the texts of `src/i18n/` and of the demo shop: each thing has one name, in the
//! English of shops in the United States and the Spanish of the Americas.

use crate::source_files::rust_files;

/// A word or phrase, and what is written instead.
const RETIRED: &[(&str, &str)] = &[
    ("colour", "color"),
    ("colours", "colors"),
    ("coloured", "colored"),
    ("grey", "gray"),
    ("centre", "center"),
    ("oxidising", "oxidizing"),
    ("centimetres", "centimeters"),
    ("all told", "total"),
    ("all the same", "anyway"),
    ("by the ledger", "stock shows"),
    ("anew", "again"),
    ("reckon", "calculate"),
    ("worked out", "calculated"),
    ("take back", "undo"),
    ("taken back", "undone"),
    ("take it back", "undo"),
    ("put away", "remove from list"),
    ("maker", "manufacturer"),
    ("maker's", "manufacturer's"),
    ("touch to", "tap to"),
    ("set-up", "setup"),
    ("a piece", "per piece"),
    ("the press stands", "press down"),
    ("the press stood", "downtime"),
    ("what fabrics bear", "fabric heat limits"),
    ("for each pull", "per piece"),
    ("warm red", "the name of an ink that is invented"),
    ("signal white", "the name of an ink that is invented"),
    ("racleta", "rasero"),
    ("tirada", "tiraje"),
    ("tiradas", "tirajes"),
    ("coste", "costo"),
    ("vídeo", "video"),
    ("bombilla", "foco"),
    ("lentes de seguridad", "gafas protectoras"),
    ("añadir", "agregar"),
    ("insolar", "exponer"),
    ("nailon", "nylon"),
];

/// The string literals of a file, without those in comments.
fn literals(code: &str) -> Vec<String> {
    let mut found = Vec::new();
    for line in code.lines().filter(|line| !line.trim_start().starts_with("//")) {
        let mut literal: Option<String> = None;
        let mut signs = line.chars();
        while let Some(sign) = signs.next() {
            match (sign, &mut literal) {
                ('"', None) => literal = Some(String::new()),
                ('"', Some(_)) => found.extend(literal.take()),
                ('\\', Some(text)) => {
                    // Of the escapes only the no-break space stands between words.
                    if signs.next() == Some('u') {
                        signs.by_ref().find(|sign| *sign == '}');
                        text.push(' ');
                    }
                }
                (sign, Some(text)) => text.push(sign),
                (_, None) => {}
            }
        }
    }
    found
}

/// The retired words in a text, with what to write instead.
fn retired_in(text: &str) -> Vec<(&'static str, &'static str)> {
    let lower = text.to_lowercase();
    let is_whole = |from: usize, to: usize| {
        let joins = |sign: Option<char>| sign.is_some_and(|sign| sign.is_alphanumeric() || sign == '\'');
        !joins(lower[..from].chars().next_back()) && !joins(lower[to..].chars().next())
    };
    let occurs = |word: &str| lower.match_indices(word).any(|(at, word)| is_whole(at, at + word.len()));
    RETIRED.iter().copied().filter(|(word, _)| occurs(word)).collect()
}

#[test]
fn no_text_has_a_retired_word() {
    let (mut texts, mut found) = (0, Vec::new());
    for path in ["../src/i18n", "src/demo"].into_iter().flat_map(rust_files) {
        for text in literals(&std::fs::read_to_string(&path).unwrap()) {
            texts += 1;
            for (word, instead) in retired_in(&text) {
                found.push(format!("{}: “{text}”: not “{word}” but “{instead}”", path.display()));
            }
        }
    }
    assert!(texts > 2_000, "only {texts} texts were read");
    assert!(found.is_empty(), "\n{}\n", found.join("\n"));
}

#[test]
fn a_retired_word_is_found_as_a_whole_word_only() {
    let texts = literals("    key(n) { \"Put\\u{a0}away {n}\", \"La \\\"racleta\\\"\" } // \"grey\"\n// \"colour\"");
    assert_eq!(texts, ["Put away {n}", "La racleta", "grey"]);
    assert_eq!(retired_in(&texts[0]), [("put away", "remove from list")]);
    assert_eq!(retired_in(&texts[1]), [("racleta", "rasero")]);
    assert!(retired_in("Greyhound, makers, touched, forgo on-time colourful").is_empty());
}

/// The longest caution, in characters: some five lines on a phone. Our own.
const LONGEST_CAUTION: usize = 215;

#[test]
fn every_caution_is_short() {
    let texts = literals(&std::fs::read_to_string("../src/i18n/cautions.rs").unwrap());
    assert!(texts.len() > 20, "only {} texts were read", texts.len());
    let long: Vec<_> = texts.iter().filter(|text| text.chars().count() > LONGEST_CAUTION).collect();
    assert!(long.is_empty(), "{long:#?}");
}
