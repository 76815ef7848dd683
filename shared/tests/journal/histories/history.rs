//! One history, from its seed.

mod files;

use super::crash::Moment;
use super::device::{Device, Failed, NewIds};
use super::ledger::Ledger;
use lastpull_core::facts::frozen::{rows, subject_of};
use lastpull_core::facts::{Draft, Entry, Fact, JobField, Journal, LotField, RunField};
use lastpull_core::ids::{SHOP, Subject};
use lastpull_core::job::Size;
use lastpull_core::journal::{Checkpoint, Coverage, Storage, StorageFault};
use lastpull_core::shop::Shop;
use lastpull_core::time::{Millis, WallTime};
use pollster::block_on;
use rand::rngs::StdRng;
use rand::{Rng, SeedableRng};
use std::collections::BTreeMap;
use uuid::Uuid;

thread_local! {
    /// A fact of every kind that is stored.
    static EVERY_FACT: Vec<Fact> = rows().into_iter().map(|row| row.fact).collect();
}

/// Half past nine on a June morning of 2026, as Unix time.
const MORNING: WallTime = WallTime::from_unix_ms(1_781_706_600_000);

/// What happened in a history.
pub struct Outcome {
    /// Number of facts that were acknowledged.
    pub acknowledged: u64,
    /// Number of transactions that the first device asked for.
    pub transactions: u32,
}

/// A shop's devices and the files between them.
pub struct History {
    random: StdRng,
    devices: Vec<Device>,
    ledger: Ledger,
    /// Files that were written and can still arrive, at any device, any number of times.
    files: Vec<Vec<Entry>>,
    /// Facts that a device could not save and that are in a file: they may still be saved.
    unsaved: Vec<(usize, Vec<Entry>)>,
    /// What the last import of each device brought.
    brought: BTreeMap<usize, Coverage>,
    ids: NewIds,
    recorded: u32,
    moments: u64,
}

impl History {
    /// The history of this seed: two to eight devices with nothing on them.
    pub fn of(seed: u64) -> Self {
        let mut random = StdRng::seed_from_u64(seed);
        let ids = NewIds::default();
        let count = random.random_range(2..=8);
        let devices =
            (0..count).map(|_| Device::new(&ids, MORNING + Millis::from_ms(random.random_range(0..600_000)))).collect();
        Self {
            random,
            devices,
            ledger: Ledger::default(),
            files: Vec::new(),
            unsaved: Vec::new(),
            brought: BTreeMap::new(),
            ids,
            recorded: 0,
            moments: 0,
        }
    }

    /// The same, with the app of the first device stopped at this one of its transactions.
    pub fn stopped_at(seed: u64, transaction: u32, moment: Moment) -> Self {
        let history = Self::of(seed);
        history.devices[0].disk.stop_after(transaction, moment);
        history
    }

    /// The first device imports a file of another one and cannot save some facts, which go into a file; then it saves
    /// them after all and takes the import back, and is stopped at this one of its transactions.
    pub fn stopped_while_saving_and_taking_back(seed: u64, transaction: u32, moment: Moment) -> Self {
        let mut history = Self::of(seed);
        for at in [0, 1, 0, 1] {
            history.strike(at);
            history.record(at);
        }
        history.files.push(history.devices[1].stored());
        history.read_file(0);
        history.strike(0);
        history.rescue(0);
        history.compact(0);
        history.strike(0);
        history.record(0);
        history.devices[0].disk.stop_after(transaction, moment);
        history.save_rescued(0);
        history.take_back(0);
        history
    }

    /// Whether the first device has not come to the transaction at which it is to be stopped.
    pub fn is_to_be_stopped(&self) -> bool {
        self.devices[0].disk.is_to_be_stopped()
    }

    /// Lets it happen, and checks its end.
    pub fn run(mut self) -> Outcome {
        for _ in 0..self.random.random_range(10..60) {
            self.step();
        }
        let transactions = self.devices[0].disk.transactions();
        self.end();
        Outcome { acknowledged: self.ledger.acknowledged, transactions }
    }

    fn any_device(&mut self) -> usize {
        self.random.random_range(0..self.devices.len())
    }

    /// One thing that happens at one device.
    fn step(&mut self) {
        let at = self.any_device();
        // Clocks run on, stand still, and are put back a little by the network's time.
        let by = self.random.random_range(-40_000..90_000_i64);
        let clock = &mut self.devices[at].now;
        *clock = *clock + Millis::from_ms(by.max(0) as u64) - Millis::from_ms(by.min(0).unsigned_abs());
        self.strike(at);
        match self.random.random_range(0..46) {
            0..16 => self.record(at),
            16..19 => self.record_in_another_tab(at),
            19..22 => self.compact(at),
            22..27 => self.write_file(at),
            27..32 => self.read_file(at),
            32 => self.read_damaged_file(at),
            33 => self.erase(at),
            34 => self.reopen(at),
            35 => self.set_clock(at),
            37 if self.devices.len() < 8 => {
                let clone = self.devices[at].cloned();
                self.devices.push(clone);
            }
            36 => self.devices[at].disk.fill_for_a_moment(),
            40..42 => self.rescue(at),
            42..44 => self.save_rescued(at),
            44..46 => self.take_back(at),
            _ => {
                let after = self.random.random_range(0..4);
                let moment = if self.random.random() { Moment::Before } else { Moment::After };
                self.devices[at].disk.stop_after(after, moment);
            }
        }
    }

    /// Gives a device's clock a millisecond that no other fact has: a clone may record what its original records, but not
    /// at the same moment.
    fn strike(&mut self, at: usize) {
        self.moments += 1;
        let clock = &mut self.devices[at].now;
        *clock = WallTime::from_unix_ms(clock.unix_ms() / 1_000 * 1_000 + self.moments);
    }

    /// Some facts, about few things, so that devices write about the same.
    fn facts(&mut self) -> Vec<(Subject, Fact)> {
        let count = self.random.random_range(1..=3);
        (0..count).map(|_| self.fact()).collect()
    }

    fn fact(&mut self) -> (Subject, Fact) {
        self.recorded += 1;
        let text = format!("fact {}", self.recorded);
        let [job, lot, run] = [0x10, 0x11, 0x12].map(|id| Uuid::from_u128(id + 3 * self.random.random_range(0..3)));
        let size = [None, Some(Size::S), Some(Size::M)][self.random.random_range(0..3)];
        match self.random.random_range(0..12) {
            0 => (job, Fact::JobSet(vec![JobField::Title(text)])),
            1 => (lot, Fact::LotSet(vec![LotField::Job(job), LotField::Garment(text)])),
            2 => (run, Fact::RunSet(vec![RunField::Lot(lot), RunField::Ink(text)])),
            3 => (
                run,
                [Fact::RunStarted, Fact::RunEnded, Fact::Deleted, Fact::Restored][self.random.random_range(0..4)]
                    .clone(),
            ),
            4 => (
                job,
                [Fact::JobFinished, Fact::JobReopened, Fact::Deleted, Fact::Restored][self.random.random_range(0..4)]
                    .clone(),
            ),
            5 => (SHOP, Fact::ShopNamed(text)),
            6 => (SHOP, Fact::Unknown { kind: "later".into(), body: format!(r#"{{"later":"{text}"}}"#) }),
            7..9 => {
                let fact = EVERY_FACT.with(|facts| facts[self.random.random_range(0..facts.len())].clone());
                (subject_of(&fact), fact)
            }
            _ => (run, Fact::Pulled { pieces: self.random.random_range(1..4), size }),
        }
    }

    fn record(&mut self, at: usize) {
        let facts = self.facts();
        match self.devices[at].record(&facts) {
            Ok(entries) => self.ledger.acknowledge(&entries),
            Err(failed) => {
                // Stopped, before or after the facts were stored, or while they were folded.
                self.restart(at, &failed);
                let stored = self.devices[at].stored();
                self.ledger.find(&facts, &stored);
            }
        }
    }

    /// Another tab of the device saves, and tells this one.
    fn record_in_another_tab(&mut self, at: usize) {
        let facts = self.facts();
        let entries = self.record_beside(at, &facts);
        if let Err(failed) = self.devices[at].show(&entries) {
            self.restart(at, &failed);
        }
    }

    fn record_beside(&mut self, at: usize, facts: &[(Subject, Fact)]) -> Vec<Entry> {
        let entries = record_on_disk(&self.devices[at], facts);
        self.ledger.acknowledge(&entries);
        entries
    }

    fn compact(&mut self, at: usize) {
        if let Err(failed) = self.devices[at].compact() {
            self.restart(at, &failed);
        }
    }

    /// A device is erased, after its file was written.
    fn erase(&mut self, at: usize) {
        let file = self.devices[at].stored();
        self.files.push(file.clone());
        self.brought.remove(&at);
        if let Err(failed) = self.devices[at].erase() {
            self.restart(at, &failed);
            let left = self.devices[at].stored();
            assert!(left.is_empty() || left == file, "all of it is erased, or nothing");
        }
    }

    /// The app is closed and opened.
    fn reopen(&mut self, at: usize) {
        if let Err(failed) = self.devices[at].reload() {
            self.restart(at, &failed);
        }
        expect_folded(&self.devices[at]);
    }

    /// Somebody sets a clock by hand, up to three days wrong.
    fn set_clock(&mut self, at: usize) {
        let days = Millis::from_days(3).ms();
        self.devices[at].now = MORNING + Millis::from_ms(self.random.random_range(0..days));
    }

    /// Opens the app again after it was stopped. No device may fail for another reason.
    fn restart(&mut self, at: usize, failed: &Failed) {
        let device = &mut self.devices[at];
        let expected = device.disk.is_stopped() || *failed == Failed::Storage(StorageFault::Full);
        assert!(expected, "nothing else stops a device: {failed:?}");
        device.disk.restart();
        device.reload().unwrap();
        expect_folded(device);
    }

    /// All devices and all files meet, twice.
    pub fn end(&mut self) {
        for device in &mut self.devices {
            device.disk.restart();
        }
        for _ in 0..2 {
            for at in 0..self.devices.len() {
                let files = std::mem::take(&mut self.files);
                for file in &files {
                    self.devices[at].take_in(file, |_| ()).unwrap();
                }
                self.files = files;
                self.files.push(self.devices[at].stored());
            }
        }
        let first = Checkpoint::of(&Shop::fold(&Journal::stored(self.devices[0].stored()))).bytes;
        for device in &mut self.devices {
            self.ledger.expect(device.stored());
            device.reload().unwrap();
            assert_eq!(device.shop_bytes(), first, "the same bytes on every device");
            expect_folded(device);
        }
    }
}

fn record_on_disk(device: &Device, facts: &[(Subject, Fact)]) -> Vec<Entry> {
    let draft = |(subject, fact): &(Subject, Fact)| Draft { at: device.now, subject: *subject, fact: fact.clone() };
    let drafts: Vec<_> = facts.iter().map(draft).collect();
    block_on(device.disk.disk().append(&drafts)).unwrap()
}

/// The shop in memory is the fold of what is stored.
fn expect_folded(device: &Device) {
    let journal = Journal::stored(device.stored());
    assert_eq!(device.shop_bytes(), Checkpoint::of(&Shop::fold(&journal)).bytes, "folded bit by bit and at once");
}
