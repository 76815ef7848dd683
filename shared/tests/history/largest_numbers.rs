//! Facts whose numbers are as large as a file may hold, more of them than a number of pieces holds: sums stop at a limit
//! and never start again from zero. As it ships the app does not notice an overflow; this test does.

use super::page_answers::{of_a_thing, of_the_day, of_the_press, of_the_shop};
use crate::shop::PHONE;
use lastpull_core::facts::{Entry, Fact, JobField, LotField, RunField};
use lastpull_core::failure::{FailureFact, FailureField, FailureKind, Suspects, Verdict, run_pieces};
use lastpull_core::ids::{SHOP, Subject};
use lastpull_core::ink::{
    ComponentField, InkFact, PotField, PourStep, component_card, pot_card, stock_left, stock_view,
};
use lastpull_core::job::{Size, SizePieces, job_card, job_row};
use lastpull_core::journal::Stamp;
use lastpull_core::run::{MisprintCause, StopCause, count_view};
use lastpull_core::shop::Shop;
use lastpull_core::time::{WallClock, WallTime};
use lastpull_core::units::{Grams, Seconds};
use uuid::Uuid;

/// Most pieces in one fact.
const PIECES: i32 = 1_000_000;
/// So many facts of that many pieces are more pieces than 32 bits hold.
const MANY: usize = 4_400;
const LOTS: u128 = 11;
const RUNS: u128 = 30;

const JOB: Uuid = Uuid::from_u128(0x100);
const RUN: Uuid = Uuid::from_u128(0x300);
const FAILURE: Uuid = Uuid::from_u128(0x1000);
const COMPONENT: Uuid = Uuid::from_u128(0x2000);
const POT: Uuid = Uuid::from_u128(0x2001);
const EVENT: u128 = 0x3000;

fn sizes() -> impl Iterator<Item = Size> {
    [Size::One].into_iter().chain(Size::YOUTH).chain(Size::ADULT)
}

/// The latest time that a file may name, in ms.
const LATEST: u64 = 16_725_225_600_000;

fn facts() -> Vec<(Subject, Fact)> {
    let mut facts = vec![
        (SHOP, Fact::SetUpAllowance(Seconds::from_milliseconds(u32::MAX))),
        (JOB, Fact::JobSet(vec![JobField::Title("All".into())])),
        (COMPONENT, Fact::Ink(InkFact::ComponentSet(vec![ComponentField::LowAt(Some(Grams::MOST))]))),
        (POT, Fact::Ink(InkFact::PotSet(vec![PotField::Run(Some(RUN)), PotField::Capacity(Some(Grams::MOST))]))),
    ];
    let pieces: Vec<_> = sizes().map(|size| SizePieces { size, pieces: PIECES as u32 }).collect();
    for lot in 0..LOTS {
        let id = Uuid::from_u128(0x200 + lot);
        facts.push((id, Fact::LotSet(vec![LotField::Job(JOB), LotField::Pieces(pieces.clone())])));
        for run in 0..RUNS {
            let run = Uuid::from_u128(RUN.as_u128() + lot * RUNS + run);
            facts.push((run, Fact::RunSet(vec![RunField::Lot(id), RunField::Ink("Moss".into())])));
            facts.push((run, Fact::RunStarted));
        }
    }
    let all: Vec<_> = sizes().map(Some).chain([None]).collect();
    for at in 0..MANY {
        let size = all[at % all.len()];
        let (pieces, cause) = (PIECES, if at % 2 == 0 { MisprintCause::Smudge } else { MisprintCause::Other });
        facts.push((RUN, Fact::Pulled { pieces, size }));
        facts.push((RUN, Fact::Misprinted { pieces, size, cause, was_counted: false }));
        let next = Uuid::from_u128(RUN.as_u128() + 1);
        facts.push((next, Fact::Pulled { pieces: -pieces, size }));
        facts.push((next, Fact::Misprinted { pieces, size, cause, was_counted: true }));
        let mut event =
            |kind: u128, fact| facts.push((Uuid::from_u128(EVENT + 4 * at as u128 + kind), Fact::Ink(fact)));
        let (grams, note) = (Grams::MOST, String::new);
        event(0, InkFact::Delivered { component: COMPONENT, grams, note: note(), by: None });
        let (pot, component, step, reading) = (POT, COMPONENT, PourStep::TopUp, None);
        event(1, InkFact::Poured { pot, component, grams, step, note: note(), reading, by: None });
        if at % 2 == 0 {
            facts.push((
                Uuid::from_u128(FAILURE.as_u128() + at as u128 % 400),
                Fact::Failure(FailureFact::Set(vec![
                    FailureField::Run(RUN),
                    FailureField::Kind(FailureKind::Pinhole),
                    FailureField::Since(Some(PIECES as u32)),
                    FailureField::Suspects(
                        all.iter().map(|size| Suspects { size: *size, pieces: PIECES as u32 }).collect(),
                    ),
                ])),
            ));
            let verdict = if at % 4 == 0 { Verdict::Spoiled } else { Verdict::Good };
            facts.push((FAILURE, Fact::Failure(FailureFact::Judged { pieces, size, verdict, by: None })));
        }
        if at % 1_000 == 999 {
            facts.push((RUN, Fact::Stopped(StopCause::Ink)));
            facts.push((RUN, Fact::Resumed));
        }
    }
    facts
}

fn shop(facts: Vec<(Subject, Fact)>, at: impl Fn(u64) -> u64) -> Shop {
    let entry = |(number, (subject, fact)): (usize, (Subject, Fact))| {
        let (seq, stamp) = (number as u64 + 1, Stamp { wall: WallTime::from_unix_ms(number as u64), counter: 0 });
        Entry { device: PHONE, seq, stamp, at: WallTime::from_unix_ms(at(seq)), subject, fact }
    };
    let entries: Vec<Entry> = facts.into_iter().enumerate().map(entry).collect();
    for entry in entries.iter().step_by(97) {
        assert_eq!(Entry::from_line(&entry.to_line()).as_ref(), Ok(entry), "a file may hold it");
    }
    let mut shop = Shop::default();
    assert!(shop.apply_all(&entries));
    shop
}

fn ask_everything(shop: &Shop, clock: WallClock) {
    of_the_day(shop, clock);
    of_the_shop(shop, clock);
    for id in [RUN, Uuid::from_u128(RUN.as_u128() + 1)] {
        of_the_press(shop, id, clock);
    }
    for id in [JOB, Uuid::from_u128(0x200), RUN, FAILURE, COMPONENT, POT] {
        of_a_thing(shop, id, clock);
    }
    stock_view(shop);
    component_card(shop, COMPONENT);
    pot_card(shop, POT);
}

#[test]
fn sums_of_the_largest_numbers_stop_at_a_limit() {
    let clock = WallClock::fixed(WallTime::from_unix_ms(4_000_000_000), -300);
    let mut facts = facts();
    let shop_now = shop(facts.clone(), |seq| seq * 30_000);
    let most = 1_000_000_000;
    let count = count_view(&shop_now, RUN, PHONE, clock, &[]);
    assert_eq!((count.good, count.misprints, count.left, count.over), (most, most, 0, most - 15_000_000));
    let pieces = run_pieces(&shop_now, RUN);
    assert_eq!((pieces.good + pieces.suspect, pieces.spoiled), (most, most));
    let row = job_row(&shop_now, clock, JOB).unwrap();
    assert_eq!((row.planned, row.complete), (u32::MAX, false));
    let card = job_card(&shop_now, JOB).unwrap();
    assert_eq!((card.planned, card.good, card.complete), (u32::MAX, 15_000_000, false));
    // As much was poured as was delivered.
    assert_eq!(stock_left(&shop_now, COMPONENT), Some(Grams::ZERO));
    ask_everything(&shop_now, clock);
    facts.push((RUN, Fact::RunEnded));
    facts.push((JOB, Fact::JobFinished));
    ask_everything(&shop(facts, |seq| seq * 30_000), clock);
}

#[test]
fn times_from_the_first_to_the_last_that_a_file_may_name_are_reckoned_with() {
    let mut facts = facts();
    facts.truncate(1_500);
    for at in [|seq: u64| if seq.is_multiple_of(2) { LATEST } else { 0 }, |seq: u64| LATEST - seq, |_: u64| LATEST] {
        let shop = shop(facts.clone(), at);
        for now in [0, 4_000_000_000, LATEST] {
            ask_everything(&shop, WallClock::fixed(WallTime::from_unix_ms(now), -300));
        }
    }
}
