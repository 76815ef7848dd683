//! Whether the forecast's chances hold, on days as they are: invented shops in which level, start, drift,
//! changes, correlation, stops and misprints are known, and forecasts that are not told.

mod shops;
mod tally;

use shops::{Habit, LEVEL};
use tally::{Cell, Tally, tally, waiting};

const CHANGES: Habit = Habit { change: 8.0, told: true, ..LEVEL };
const ALIKE: Habit = Habit { alike: 0.4, ..LEVEL };
const SLOW_START: Habit = Habit { start: 0.6, ..LEVEL };
const SLOWER: Habit = Habit { drift: 0.005, ..LEVEL };
const ALL: Habit = Habit { alike: 0.4, start: 0.6, drift: 0.005, ..CHANGES };
const STOPS: Habit = Habit { stops: (0.02, 0.05), ..LEVEL };
const FEW_MISPRINTS: Habit = Habit { misprints: 0.03, ..LEVEL };
const MISPRINTS: Habit = Habit { misprints: 0.06, ..LEVEL };

/// What a real day does.
const DAYS: [(&str, Habit); 10] = [
    ("level, independent", LEVEL),
    ("8 s at every twelfth, told", CHANGES),
    ("8 s at every twelfth, untold", Habit { told: false, ..CHANGES }),
    ("neighbours alike", ALIKE),
    ("first five 1.6 times as long", SLOW_START),
    ("0.5 % slower with every piece", SLOWER),
    ("all of these", ALL),
    ("stops", STOPS),
    ("misprints 3 %", FEW_MISPRINTS),
    ("misprints 6 %", MISPRINTS),
];

/// What the model was not made for.
const OTHER_DAYS: [(&str, Habit); 8] = [
    ("stops that vary", Habit { stops_vary: true, ..STOPS }),
    ("first five 0.7 times as long", Habit { start: -0.3, ..LEVEL }),
    ("two sizes in turn", Habit { in_turn: 0.2, ..LEVEL }),
    ("long gaps now and then", Habit { long_gaps: 0.04, ..LEVEL }),
    ("alike to the next only", Habit { only_next: true, ..ALIKE }),
    ("faster with every piece", Habit { drift: -0.002, ..LEVEL }),
    ("even pieces", Habit { cv: (0.08, 0.15), ..LEVEL }),
    ("a fifth faster or slower from the middle", Habit { shift: 0.2, ..LEVEL }),
];

const COUNTED: [usize; 3] = [5, 10, 20];

fn sum<'a>(cells: impl IntoIterator<Item = &'a Cell>) -> Tally {
    let mut sum = Tally::default();
    cells.into_iter().for_each(|cell| sum.merge(&cell.2));
    sum
}

/// From ten gaps on.
fn from_ten(cells: &[Cell]) -> Tally {
    sum(cells.iter().filter(|cell| cell.1 >= 10))
}

fn rows(days: &[(&str, Habit)], history: bool, shops: u32) -> Vec<(String, Vec<Cell>)> {
    let row = |(name, habit): &(&str, Habit)| {
        let cells = tally(*habit, history, &COUNTED, shops, 7);
        let each: Vec<String> = cells.iter().map(|cell| format!("{:.2}", cell.2.coverage())).collect();
        println!("{name:42} {} | {}", sum(&cells).line(), each.join(" "));
        ((*name).to_owned(), cells)
    };
    days.iter().map(row).collect()
}

#[test]
fn with_six_runs_alike_the_80_percent_interval_holds_whatever_the_day() {
    let mut all = Tally::default();
    for (name, cells) in rows(&DAYS, true, 110) {
        let row = sum(&cells);
        assert!((0.75..=0.87).contains(&row.coverage()), "{name}: {}", row.line());
        assert!(row.chance_off_beyond_doubt() <= 0.05, "{name}: {}", row.line());
        all.merge(&row);
        if name.starts_with("level") {
            assert!(row.width() <= 1.1, "{}", row.line());
        }
    }
    assert!(all.worst_chance() < 0.05, "{}", all.line());
}

/// A change that nothing foretells: about 0.55 is covered, and the chances are off.
fn comes_unforeseen(name: &str) -> bool {
    name.ends_with("from the middle")
}

/// How much must be covered on other days: our own floors.
fn least_covered(name: &str) -> f64 {
    if comes_unforeseen(name) { 0.5 } else { 0.74 }
}

#[test]
fn it_holds_on_days_that_the_model_was_not_made_for() {
    for (name, cells) in rows(&OTHER_DAYS[1..], true, 60) {
        let row = sum(&cells);
        // Sixty shops of each: the long test below holds the rows to account.
        assert!((least_covered(&name) - 0.05..=0.95).contains(&row.coverage()), "{name}: {}", row.line());
        assert!(comes_unforeseen(&name) || row.chance_off_beyond_doubt() <= 0.05, "{name}: {}", row.line());
    }
}

#[test]
fn without_history_it_holds_from_ten_gaps_on() {
    let days = DAYS
        .iter()
        .filter(|(name, _)| !name.starts_with("first") && !name.starts_with("0.5") && *name != "all of these");
    for (name, cells) in rows(&days.copied().collect::<Vec<_>>(), false, 110) {
        let row = from_ten(&cells);
        assert!((0.70..=0.95).contains(&row.coverage()), "{name}: {}", row.line());
        if name.starts_with("level") {
            assert!(sum(&cells).width() <= 1.3, "{}", sum(&cells).line());
        }
    }
}

#[test]
fn the_last_of_five_waiting_runs_shares_the_error_of_their_history() {
    for (earlier, habit) in [(1, LEVEL), (3, LEVEL), (6, LEVEL), (6, ALL), (6, STOPS)] {
        let tally = waiting(habit, earlier, 250, 9);
        println!("five waiting after {earlier}: {}", tally.line());
        assert!((0.72..=0.92).contains(&tally.coverage()), "{earlier} earlier: {}", tally.line());
    }
}

#[test]
fn a_start_that_the_shop_knows_is_not_forgotten_at_the_sixth_gap() {
    for cell in tally(SLOW_START, true, &[5, 6], 200, 7) {
        println!("slow start, {} at {}: {}", cell.0, cell.1, cell.2.line());
        assert!((0.75..=0.89).contains(&cell.2.coverage()), "{} at {}: {}", cell.0, cell.1, cell.2.line());
    }
}

/// Minutes with optimisation; `./dev test --long` runs it. `cargo test --release -p lastpull-core --test all calibration -- --ignored
/// --nocapture` prints every row and holds each cell to account.
#[test]
#[ignore = "minutes with optimisation"]
fn every_cell_holds_over_thousands_of_shops() {
    let shops = 2_000;
    println!("six to ten runs alike");
    // Of fifteen thousand shops a tenth's part has a standard error of about 0.005; of two thousand, 0.015.
    for (name, cells) in rows(&DAYS, true, 15_000) {
        for (length, gaps, cell) in &cells {
            assert!((0.74..=0.87).contains(&cell.coverage()), "{name}, {gaps} of {length}: {}", cell.line());
        }
        assert!(sum(&cells).worst_chance() <= 0.05, "{name}: {}", sum(&cells).line());
    }
    for (name, cells) in rows(&OTHER_DAYS, true, shops) {
        assert!((least_covered(&name)..=0.92).contains(&sum(&cells).coverage()), "{name}: {}", sum(&cells).line());
    }
    println!("no history");
    rows(&DAYS, false, shops);
    rows(&OTHER_DAYS, false, shops);
    for history in [true, false] {
        let cells = tally(Habit { at_once: 12, ..LEVEL }, history, &[2], shops, 7);
        println!("by the dozen, two of twelve, history {history}: {}", sum(&cells).line());
        assert!((0.75..=0.92).contains(&sum(&cells).coverage()), "{}", sum(&cells).line());
    }
    for earlier in [1, 2, 3, 6, 12] {
        println!("five waiting after {earlier}: {}", waiting(LEVEL, earlier, shops, 9).line());
    }
}
