//! The invented shop is the same in both languages, but for its texts.

use super::*;
use crate::demo::day::tests::{NOW, facts, shop_in};
use crate::form::TYPED_NAME;
use crate::journal::JournalFact;
use crate::shop::Shop;
use std::collections::{BTreeMap, BTreeSet};
use std::fmt::Debug;

const LANGUAGES: [Language; 2] = [Language::English, Language::Spanish];

/// Texts longer than three letters that are the same in both languages: the screens of a run.
const SAME_IN_BOTH: [&str; 2] = ["12, 13", "14, 15"];

/// The texts in a value, and the value without them. In what `Debug` prints, only texts are in quotes.
fn texts_and_rest(value: &impl Debug) -> (Vec<String>, String) {
    let (mut texts, mut rest, mut text) = (Vec::new(), String::new(), None::<String>);
    let printed = format!("{value:?}");
    let mut signs = printed.chars();
    while let Some(sign) = signs.next() {
        match (sign, &mut text) {
            ('"', None) => text = Some(String::new()),
            ('"', Some(_)) => texts.extend(text.take()),
            ('\\', Some(text)) => text.extend(signs.next()),
            (sign, Some(text)) => text.push(sign),
            (sign, None) => rest.push(sign),
        }
    }
    (texts, rest)
}

#[test]
fn the_facts_of_both_languages_differ_in_their_texts_only() {
    let [english, spanish] = LANGUAGES.map(|language| facts(NOW, language));
    assert_eq!(english.len(), spanish.len());
    let mut translations = BTreeMap::new();
    for (english, spanish) in english.iter().zip(&spanish) {
        let ((texts, rest), (translated, other_rest)) = (texts_and_rest(english), texts_and_rest(spanish));
        assert_eq!((rest, texts.len()), (other_rest, translated.len()));
        for (text, translated) in texts.into_iter().zip(translated) {
            let before = translations.insert(text.clone(), translated.clone());
            assert!(before.is_none_or(|before| before == translated), "“{text}” has two translations");
        }
    }
    let distinct: BTreeSet<_> = translations.values().collect();
    assert_eq!(distinct.len(), translations.len(), "a Spanish text translates two English ones: {translations:#?}");
}

#[test]
fn no_english_text_is_left_in_the_spanish_shop() {
    let [english, spanish] = LANGUAGES.map(|language| {
        let texts = facts(NOW, language).iter().flat_map(|draft| texts_and_rest(draft).0).collect::<BTreeSet<_>>();
        assert!(texts.len() > 70, "{texts:?}");
        texts
    });
    let left: Vec<_> = english.intersection(&spanish).filter(|text| text.chars().count() > 3).collect();
    assert_eq!(left, SAME_IN_BOTH);
}

#[test]
fn both_languages_fold_to_shops_that_differ_in_their_texts_only() {
    let [english, spanish] = LANGUAGES.map(|language| shop_in(NOW, language).0);
    // Without the lists by the id of a name, which is made of the text.
    let parts = |shop: &Shop| {
        let Shop { jobs, lots, runs, order, screens, exposure_log, failures, ink, heat, .. } = shop;
        let heaters: Vec<_> = heat.heaters().collect();
        let sheets: Vec<_> = heat.sheets().collect();
        let trials: Vec<_> = heat.trials().collect();
        let settlings: Vec<_> = heat.settlings().collect();
        let heat = (heaters, sheets, settlings, trials, heat.tests().collect::<Vec<_>>());
        texts_and_rest(&(jobs, lots, runs, order, screens, exposure_log, failures, ink, heat))
    };
    let ((texts, rest), (translated, other_rest)) = (parts(&english), parts(&spanish));
    assert!(rest == other_rest, "what is beside the texts differs");
    assert!(texts.len() == translated.len() && texts.len() > 200, "{} texts", texts.len());
    assert_eq!((english.name.as_str(), spanish.name.as_str()), ("Two Kettles Print Shop", "Serigrafía Las Dos Ollas"));
}

#[test]
fn the_texts_of_both_languages_could_have_been_typed() {
    for language in LANGUAGES {
        for draft in facts(NOW, language) {
            assert!(draft.fact.in_bounds(), "{draft:?}");
            for text in texts_and_rest(&draft).0 {
                assert!(text.trim() == text && text.chars().count() <= TYPED_NAME, "“{text}”");
            }
        }
    }
}
