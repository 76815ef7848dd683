//! How long the pace takes at a count. `cargo test --release -p lastpull-core --test all timing -- --ignored --nocapture`
//! prints it.

use crate::shop::{HOUR, TestShop, clock};
use lastpull_core::ids::RunId;
use lastpull_core::job::{Fabric, Size};
use lastpull_core::run::run_pace;
use lastpull_core::shop::Shop;
use std::time::{Duration, Instant};

/// A shop with thirty earlier runs of 36, and one on the press with so many pulled; seconds after opening.
fn on_press(pulled: u64) -> (Shop, RunId, u64) {
    let mut press = TestShop::new();
    for turn in 0..30 {
        let other = press.order("Earlier", None, Fabric::Cotton, &[(Size::M, 36)]);
        press.start_at(turn * 2_000, other).pulls(other, turn * 2_000, 40, 36).end_at(turn * 2_000 + 1_500, other);
    }
    let run = press.order("Now", None, Fabric::Cotton, &[(Size::M, pulled as u32 + 144)]);
    let start = 40 * HOUR;
    (0..pulled).for_each(|piece| {
        press.pull_at(start + piece * 40 + piece % 7 * 3, run);
    });
    (press.shop(), run, start + pulled * 40 + 25)
}

/// The shortest of many: others may use the processor.
fn time_of_a_count(pulled: u64) -> Duration {
    let (shop, run, now) = on_press(pulled);
    let once = || {
        let start = Instant::now();
        assert!(run_pace(&shop, run, clock(now)).pace.is_some());
        start.elapsed()
    };
    (0..400).map(|_| once()).min().unwrap_or_default()
}

#[test]
#[ignore = "meaningful with optimisation only"]
fn the_pace_at_a_count_takes_less_than_a_millisecond_of_long_runs_too() {
    for pulled in [0, 36, 144, 1_000, 5_000] {
        let time = time_of_a_count(pulled);
        println!("{pulled} pulled: {time:?}");
        assert!(time < Duration::from_millis(1), "{pulled} pulled: {time:?}");
    }
}
