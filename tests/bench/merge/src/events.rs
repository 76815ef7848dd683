//! The events that all three implementations merge: two weeks of work recorded on five phones.

use lastpull_core::job::Size;
use lastpull_core::facts::{Entry, Fact, JobField};
use lastpull_core::journal::Stamp;
use lastpull_core::run::{MisprintCause, StopCause};
use lastpull_core::time::{Millis, WallTime};
use uuid::Uuid;

/// Number of phones.
pub const DEVICES: u64 = 5;
/// Number of facts recorded by each phone.
pub const EACH: u64 = 10_000;
/// Number of facts in all.
pub const ALL: u32 = (DEVICES * EACH) as u32;

const RUNS: u64 = 200;
const RUNS_OF_A_JOB: u64 = 4;
/// Number of consecutive facts of one phone about one run: each phone works on 80 runs, and each run has two phones.
const STRETCH: u64 = 125;
const STRETCHES_A_DAY: u64 = 6;
const SIZES: [Size; 5] = [Size::S, Size::M, Size::L, Size::Xl, Size::Xxl];

const MINUTE: Millis = Millis::from_minutes(1);
const DAY: Millis = Millis::from_days(1);
/// Monday, 21 September 2026, 13:00 UTC: morning in a shop in the middle of the United States.
const MONDAY_MORNING: WallTime = WallTime::from_unix_ms(1_789_995_600_000);

/// The facts of one phone, in the order in which it recorded them.
///
/// Of 125 facts 120 are pulls of one piece, 40 s apart give or take 6 s, one size after the other;
/// two are misprints, one a stop, one its end, and one a new title of the job.
pub fn of_device(number: u64) -> Vec<Entry> {
    let mut noise = Noise(number);
    let device = noise.uuid();
    let mut entries = Vec::new();
    let mut at = MONDAY_MORNING;
    for seq in 1..=EACH {
        let (stretch, step) = ((seq - 1) / STRETCH, (seq - 1) % STRETCH);
        if step == 0 {
            let morning = MONDAY_MORNING + stretch / STRETCHES_A_DAY * DAY;
            let set_up = 10 * MINUTE;
            at = if stretch % STRETCHES_A_DAY == 0 { morning } else { at + set_up };
        }
        at += if step == 61 { 3 * MINUTE } else { Millis::from_ms(34_000 + noise.next() % 12_000) };
        let run = (number * RUNS / DEVICES + stretch) % RUNS;
        let (subject, fact) = fact(run, step, seq);
        entries.push(Entry { device, seq, stamp: Stamp { wall: at, counter: 0 }, at, subject, fact });
    }
    entries
}

fn fact(run: u64, step: u64, seq: u64) -> (Uuid, Fact) {
    let size = Some(SIZES[(step / 25) as usize]);
    let misprint = |cause, was_counted| Fact::Misprinted { pieces: 1, size, cause, was_counted };
    let fact = match step {
        0 => {
            let job = run / RUNS_OF_A_JOB;
            let title = format!("Reunion tees {job}, proof {seq}");
            return (Noise(1_000 + job).uuid(), Fact::JobSet(vec![JobField::Title(title)]));
        }
        20 => misprint(MisprintCause::Smudge, true),
        60 => Fact::Stopped(StopCause::Ink),
        61 => Fact::Resumed,
        90 => misprint(MisprintCause::Pinhole, false),
        _ => Fact::Pulled { pieces: 1, size },
    };
    (Noise(2_000 + run).uuid(), fact)
}

/// Pseudorandom numbers, the same in every run. Method: `SplitMix64`, G. Steele et al.,
/// "Fast splittable pseudorandom number generators", OOPSLA 2014.
struct Noise(u64);

impl Noise {
    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut mixed = self.0;
        mixed = (mixed ^ (mixed >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        mixed ^ (mixed >> 31)
    }

    fn uuid(&mut self) -> Uuid {
        Uuid::from_u64_pair(self.next(), self.next())
    }
}
