//! All screens of the shop, grouped by state.

use crate::collections::sort_by_key;
use crate::facts::{MeshSheet, ScreenState};
use crate::ids::Subject;
use crate::screen::inventory::carried::{RunsByScreen, assigned_runs, runs_by_screen};
use crate::screen::{AgeWarning, AssignedRun, Screen, age_warning};
use crate::shop::Shop;
use crate::text::lowercase_latin;
use crate::time::{Millis, WallTime};

/// Which screens to show.
#[derive(Clone, Debug, PartialEq, Default)]
pub struct ScreenFilter {
    /// Only those in this state.
    pub state: Option<ScreenState>,
    /// Only those with an age warning.
    pub warned: bool,
    /// Only those whose label, mesh, emulsion, notes, colour or jobs contain every word of this text.
    pub search: String,
}

/// A screen on the board.
#[derive(Clone, Debug, PartialEq)]
pub struct ScreenRow {
    /// Its id.
    pub id: Subject,
    /// The label on the frame.
    pub label: String,
    /// Its mesh.
    pub mesh: Option<MeshSheet>,
    /// Its tension, in tenths of N/cm.
    pub tension: Option<u16>,
    /// Its state.
    pub state: ScreenState,
    /// Wall time since when it has been in that state.
    pub since: WallTime,
    /// How long it has been in that state.
    pub age: Millis,
    /// Its age warning, if it has one.
    pub warning: Option<AgeWarning>,
    /// The runs whose art is on it, or that name it.
    pub assigned: Vec<AssignedRun>,
    /// The colour of the art that it prints; empty if not entered.
    pub colour: String,
}

/// The screens in one state.
#[derive(Clone, Debug, PartialEq)]
pub struct ScreenGroup {
    /// The state.
    pub state: ScreenState,
    /// Number of screens of the shop in this state, shown or not.
    pub count: u32,
    /// The screens shown, by label.
    pub rows: Vec<ScreenRow>,
}

/// All screens of the shop, after filtering.
#[derive(Clone, Debug, PartialEq, Default)]
pub struct ScreenBoard {
    /// One group per state, in the order a screen goes through them; states without a screen are left out.
    pub groups: Vec<ScreenGroup>,
    /// Number of screens in the shop.
    pub total: u32,
    /// Number of them with an age warning.
    pub warned: u32,
    /// Number of screens shown.
    pub shown: u32,
}

/// The board at wall time `now`.
pub fn screen_board(shop: &Shop, filter: &ScreenFilter, now: WallTime) -> ScreenBoard {
    let runs_by_screen = runs_by_screen(shop);
    let words: Vec<String> = filter.search.split_whitespace().map(lowercase_latin).collect();
    let mut board = ScreenBoard::default();
    let mut groups: Vec<ScreenGroup> =
        ScreenState::ALL.into_iter().map(|state| ScreenGroup { state, count: 0, rows: Vec::new() }).collect();
    for (id, screen) in shop.screens.iter() {
        let row = screen_row(shop, id, screen, &runs_by_screen, now);
        board.total += 1;
        board.warned += u32::from(row.warning.is_some());
        let Some(group) = groups.iter_mut().find(|group| group.state == screen.state) else { continue };
        group.count += 1;
        let asked = filter.state.is_none_or(|state| state == screen.state)
            && (!filter.warned || row.warning.is_some())
            && has_words(screen, &row, &words);
        if asked {
            board.shown += 1;
            group.rows.push(row);
        }
    }
    for group in &mut groups {
        sort_by_key(&mut group.rows, |row| (label_key(&row.label), row.id));
    }
    groups.retain(|group| group.count > 0);
    board.groups = groups;
    board
}

pub(crate) fn screen_row(
    shop: &Shop,
    id: Subject,
    screen: &Screen,
    runs_by_screen: &RunsByScreen,
    now: WallTime,
) -> ScreenRow {
    ScreenRow {
        id,
        label: screen.label.clone(),
        mesh: screen.mesh,
        tension: screen.tension,
        state: screen.state,
        since: screen.since,
        age: now.since(screen.since),
        warning: age_warning(screen, shop.screens.limits, now),
        assigned: assigned_runs(shop, id, runs_by_screen),
        colour: screen.colour.clone(),
    }
}

fn has_words(screen: &Screen, row: &ScreenRow, words: &[String]) -> bool {
    if words.is_empty() {
        return true;
    }
    let mut text =
        [&screen.label, &screen.emulsion, &screen.notes, &screen.colour].map(|part| lowercase_latin(part)).join(" ");
    if let Some(mesh) = screen.mesh {
        text = format!("{text} {}", mesh.count.per_inch());
    }
    for carried in &row.assigned {
        text = format!(
            "{text} {} {} {}",
            lowercase_latin(&carried.title),
            lowercase_latin(&carried.client),
            lowercase_latin(&carried.ink)
        );
    }
    words.iter().all(|word| text.contains(word.as_str()))
}

/// Sort key that orders labels by number: "A2" before "A10".
fn label_key(label: &str) -> String {
    let mut key = String::new();
    let mut digits = String::new();
    for letter in lowercase_latin(label).chars().chain([' ']) {
        if letter.is_ascii_digit() {
            digits.push(letter);
        } else {
            if !digits.is_empty() {
                key.push_str(&"0".repeat(8_usize.saturating_sub(digits.len())));
                key.push_str(&digits);
                digits.clear();
            }
            key.push(letter);
        }
    }
    key
}

#[cfg(test)]
mod tests {
    use super::label_key;

    #[test]
    fn the_tenth_screen_comes_after_the_second() {
        let mut labels = vec!["B1", "a10", "A2", "12", "7", "A 1"];
        labels.sort_by_key(|label| label_key(label));
        assert_eq!(labels, ["7", "12", "A 1", "A2", "a10", "B1"]);
    }
}
