//! Which screens of the shop does a run's line of labels name?

use crate::facts::ScreenState;
use crate::ids::{RunId, Subject};
use crate::shop::Shop;
use crate::text::lowercase_latin;

/// A label in a run's line, and the screen with that label.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LabelMatch {
    /// The label: as on the frame if the shop has that screen, otherwise as typed.
    pub label: String,
    /// The screen; `None` if the shop has none with that label.
    pub screen: Option<Subject>,
}

/// The words of a label or of a line of labels, separated by commas, semicolons, slashes, plus signs or
/// white space.
fn words(text: &str) -> impl Iterator<Item = &str> {
    text.split(|letter: char| letter.is_whitespace() || matches!(letter, ',' | '+' | ';' | '/'))
        .filter(|word| !word.is_empty())
}

/// A label in the form in which labels are compared: lower case, with one space between words.
pub(crate) fn normalized_label(text: &str) -> String {
    words(text).map(lowercase_latin).collect::<Vec<_>>().join(" ")
}

/// The labels of a line, in its order, each once. If one label is the beginning of another ("Frame 3" and
/// "Frame 3 wide"), the longest match is used. If two screens have the same label, which can happen when
/// two devices add them, one that has not failed is preferred.
pub fn match_labels(shop: &Shop, line: &str) -> Vec<LabelMatch> {
    let known: Vec<(String, Subject, bool)> = shop
        .screens
        .iter()
        .map(|(id, screen)| (normalized_label(&screen.label), id, screen.state == ScreenState::Failed))
        .filter(|(label, ..)| !label.is_empty())
        .collect();
    let typed: Vec<&str> = words(line).collect();
    let mut matches: Vec<LabelMatch> = Vec::new();
    let mut at = 0;
    while at < typed.len() {
        let fit = known
            .iter()
            .filter_map(|(label, id, failed)| {
                let length = label.split(' ').count();
                let here = typed.get(at..at + length)?;
                let same = here.iter().zip(label.split(' ')).all(|(typed, known)| lowercase_latin(typed) == known);
                same.then_some((length, !failed, *id))
            })
            .max_by_key(|(length, sound, id)| (*length, *sound, std::cmp::Reverse(*id)));
        let label = match fit.and_then(|(_, _, id)| shop.screens.get(id)) {
            Some(screen) => screen.label.clone(),
            None => typed[at].to_owned(),
        };
        let found = LabelMatch { label, screen: fit.map(|(_, _, id)| id) };
        if !matches.contains(&found) {
            matches.push(found);
        }
        at += fit.map_or(1, |(length, ..)| length);
    }
    matches
}

/// The labels of a run and their screens.
pub fn screens_of(shop: &Shop, run: RunId) -> Vec<LabelMatch> {
    shop.run(run).map(|run| match_labels(shop, &run.set_up.screens)).unwrap_or_default()
}

/// The line of a run without one screen's label.
pub(crate) fn without_screen(shop: &Shop, line: &str, screen: Subject) -> String {
    let others = match_labels(shop, line).into_iter().filter(|found| found.screen != Some(screen));
    others.map(|found| found.label).collect::<Vec<_>>().join(", ")
}

/// The line of a run with one screen's label replaced by another; appended if the old screen is not in the
/// line.
pub(crate) fn replace_label(shop: &Shop, line: &str, old: Option<Subject>, new: &str) -> String {
    let mut labels: Vec<String> = Vec::new();
    let mut put = false;
    for found in match_labels(shop, line) {
        let swap = found.screen.is_some() && found.screen == old;
        put |= swap;
        labels.push(if swap { new.to_owned() } else { found.label });
    }
    if !put {
        labels.push(new.to_owned());
    }
    labels.join(", ")
}
