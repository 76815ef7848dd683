//! Invented histories of shops with two to eight devices: they count, pack, exchange files that are late, partial,
//! repeated, lost or damaged, take imports back, save what is in a file already, have wrong clocks, full disks and two
//! tabs, are cloned and erased, and are stopped at any transaction. In the end every fact that was acknowledged is on
//! every device, once, and all devices have folded the same bytes.
//!
//! `LASTPULL_LONG=1` runs 100,000 of them. A failed one prints its seed; `LASTPULL_HISTORY=<seed>` runs that one alone.

mod crash;
mod device;
mod history;
mod ledger;

use crash::Moment;
use history::{History, Outcome};
use std::sync::atomic::{AtomicU64, Ordering};

/// How many histories run by default, and how many with `LASTPULL_LONG`.
const HISTORIES: u64 = 100;
const LONG: u64 = 100_000;

/// Prints the seed of a history that panics.
struct Seed(u64);

impl Drop for Seed {
    fn drop(&mut self) {
        if std::thread::panicking() {
            eprintln!("history {0} failed; LASTPULL_HISTORY={0} runs it alone", self.0);
        }
    }
}

/// Runs the history of a seed.
fn run(seed: u64) -> Outcome {
    let seed = Seed(seed);
    History::of(seed.0).run()
}

#[test]
fn no_acknowledged_fact_is_lost_and_all_devices_fold_the_same_bytes() {
    if let Ok(seed) = std::env::var("LASTPULL_HISTORY") {
        run(seed.parse().unwrap());
        return;
    }
    let count = if std::env::var_os("LASTPULL_LONG").is_some() { LONG } else { HISTORIES };
    let (next, acknowledged) = (AtomicU64::new(0), AtomicU64::new(0));
    std::thread::scope(|scope| {
        for _ in 0..std::thread::available_parallelism().map_or(1, usize::from) {
            scope.spawn(|| {
                loop {
                    let seed = next.fetch_add(1, Ordering::Relaxed);
                    if seed >= count {
                        break;
                    }
                    acknowledged.fetch_add(run(seed).acknowledged, Ordering::Relaxed);
                }
            });
        }
    });
    println!("{count} histories, {} facts acknowledged, none lost", acknowledged.into_inner());
}

/// Every transaction of the first device in a few histories, each stopped on both sides of its commit.
#[test]
fn a_stop_at_any_transaction_loses_nothing() {
    let mut stops = 0;
    for seed in 0..6 {
        let seed = Seed(seed);
        for moment in [Moment::Before, Moment::After] {
            let mut transaction = 0;
            while History::stopped_at(seed.0, transaction, moment).run().transactions > transaction {
                transaction += 1;
                stops += 1;
            }
        }
    }
    assert!(stops > 20, "{stops} stops");
}

#[test]
fn a_stop_while_saving_exported_facts_or_taking_back_loses_nothing() {
    for moment in [Moment::Before, Moment::After] {
        let mut transaction = 0;
        loop {
            let seed = Seed(u64::from(transaction));
            let mut history = History::stopped_while_saving_and_taking_back(seed.0, transaction, moment);
            let is_over = history.is_to_be_stopped();
            history.end();
            if is_over {
                break;
            }
            transaction += 1;
        }
        assert!(transaction > 4, "{transaction} transactions");
    }
}
