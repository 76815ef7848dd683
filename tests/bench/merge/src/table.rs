//! Prints the results.

use std::time::Duration;

/// Budget: how many times faster than yrs.
const YRS: f64 = 5.0;
/// Budget: how many times faster than automerge.
const AUTOMERGE: f64 = 50.0;
/// Budget: bytes per entry.
const BYTES: f64 = 20.0;

/// Prints times that have a budget: ours, yrs, automerge.
pub fn budgeted(what: &str, [ours, yrs, automerge]: [Duration; 3]) {
    let against = |other, budget: f64| {
        let ratio = ratio(other, ours);
        format!("{} ({ratio:.1}x; budget >={budget}x{})", ms(other), missed(ratio < budget))
    };
    line(what, ours, &against(yrs, YRS), &against(automerge, AUTOMERGE));
}

/// Prints times without a budget: ours, yrs, automerge.
pub fn plain(what: &str, [ours, yrs, automerge]: [Duration; 3]) {
    let against = |other| format!("{} ({:.1}x)", ms(other), ratio(other, ours));
    line(what, ours, &against(yrs), &against(automerge));
}

fn line(what: &str, ours: Duration, yrs: &str, automerge: &str) {
    println!("{what:<34} ours {}   yrs {yrs}   automerge {automerge}", ms(ours));
}

fn ms(time: Duration) -> String {
    format!("{:.1} ms", time.as_secs_f64() * 1_000.0)
}

fn ratio(other: Duration, ours: Duration) -> f64 {
    other.as_secs_f64() / ours.as_secs_f64()
}

/// Prints bytes per entry: ours, yrs, automerge.
pub fn bytes(what: &str, packed: [&[Vec<u8>]; 3], entries: u32) {
    let [ours, yrs, automerge] = packed.map(|files| {
        let all: usize = files.iter().map(Vec::len).sum();
        all as f64 / f64::from(entries)
    });
    let missed = missed(ours > BYTES);
    println!("{what:<34} ours {ours:.1} B (budget <={BYTES} B{missed})   yrs {yrs:.1} B   automerge {automerge:.1} B");
}

fn missed(is_missed: bool) -> &'static str {
    if is_missed { " MISSED" } else { "" }
}
