//! Stable sorts with one sorting routine for all types, for the size of the app.

use std::cmp::Ordering;

/// Sorts a list stably.
pub fn sort_by<T>(list: &mut Vec<T>, compare: impl Fn(&T, &T) -> Ordering) {
    // The inner sort knows only positions, so it is compiled once.
    fn sort(positions: &mut [u32], compare: &dyn Fn(u32, u32) -> Ordering) {
        positions.sort_by(|a, b| compare(*a, *b));
    }
    let mut positions: Vec<u32> = (0..list.len() as u32).collect();
    sort(&mut positions, &|a, b| compare(&list[a as usize], &list[b as usize]));
    let mut taken: Vec<Option<T>> = list.drain(..).map(Some).collect();
    list.extend(positions.into_iter().filter_map(|position| taken[position as usize].take()));
}

/// Sorts a list stably by a key.
pub fn sort_by_key<T, K: Ord>(list: &mut Vec<T>, key: impl Fn(&T) -> K) {
    sort_by(list, |a, b| key(a).cmp(&key(b)));
}
