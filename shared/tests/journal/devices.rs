//! Phones that count, exchange files, lose some, are cloned, set back and have wrong clocks: whatever happens, once
//! everything has reached everybody they agree byte for byte, and every piece is counted once.

mod filing;
mod taken_back;

use lastpull_core::facts::{Draft, Entry, Fact, JobField, Journal, MemoryStorage};
use lastpull_core::journal::{Checkpoint, Fork, Head, Merged, Packed, Storage, assign_sequence, merge};
use lastpull_core::shop::Shop;
use lastpull_core::time::WallTime;
use pollster::block_on;
use proptest::prelude::*;
use proptest::sample::Index;
use std::cell::Cell;
use std::collections::BTreeSet;
use std::rc::Rc;
use uuid::Uuid;

const RUN: Uuid = Uuid::from_u128(0x12);
const JOB: Uuid = Uuid::from_u128(0x10);
/// 2026-11-25T13:00Z.
const MORNING: u64 = 1_795_611_600_000;

/// A phone: its store, and by how many milliseconds its clock is wrong.
#[derive(Clone)]
struct Phone {
    storage: MemoryStorage,
    clock_error: i64,
}

/// All phones of a shop, and the true time.
struct Phones {
    phones: Vec<Phone>,
    /// Milliseconds since morning. No two facts are of the same millisecond, so that no two clones record the same fact.
    now: u64,
    recorded: u64,
    ids: Rc<Cell<u128>>,
}

/// Something that happens.
#[derive(Clone, Debug)]
enum Event {
    Count(Index, u8),
    Name(Index),
    Clone(Index),
    SetClock(Index, i64),
    /// A file of one is brought into another one; nothing, if it is lost.
    Hand(Index, Index, bool),
    Pack(Index),
}

fn checkpoint(journal: &Journal) -> Checkpoint {
    Checkpoint::of(&Shop::fold(journal))
}

fn folded(entries: &mut dyn Iterator<Item = Entry>) -> Checkpoint {
    Checkpoint::of(&Shop::fold_entries(entries))
}

impl Phones {
    fn new(count: usize) -> Self {
        let mut all = Self { phones: Vec::new(), now: 0, recorded: 0, ids: Rc::new(Cell::new(0xd0)) };
        for _ in 0..count {
            let ids = all.ids.clone();
            let new_id = move || {
                ids.set(ids.get() + 1);
                Uuid::from_u128(ids.get())
            };
            all.phones.push(Phone { storage: MemoryStorage::new(new_id), clock_error: 0 });
        }
        all
    }

    fn at(&self, phone: &Phone) -> WallTime {
        WallTime::from_unix_ms((MORNING + self.now).saturating_add_signed(phone.clock_error))
    }

    fn record(&mut self, phone: usize, subject: Uuid, fact: Fact) {
        self.now += 1 + self.recorded % 1_000;
        let draft = Draft { at: self.at(&self.phones[phone]), subject, fact };
        block_on(self.phones[phone].storage.append(&[draft])).unwrap();
        self.recorded += 1;
    }

    fn count(&mut self, phone: usize) {
        self.record(phone, RUN, Fact::Pulled { pieces: 1, size: None });
    }

    fn clone_of(&mut self, phone: usize) -> usize {
        let storage = self.phones[phone].storage.cloned_device();
        self.phones.push(Phone { storage, ..self.phones[phone].clone() });
        self.phones.len() - 1
    }

    fn file(&self, phone: usize) -> Vec<Entry> {
        block_on(self.phones[phone].storage.read_all()).unwrap()
    }

    fn bring_in(&mut self, file: Vec<Entry>, phone: usize) -> Merged {
        let now = self.at(&self.phones[phone]);
        block_on(merge(&self.phones[phone].storage, &Packed::arriving(file), now, folded)).unwrap()
    }

    fn hand(&mut self, from: usize, to: usize) -> Merged {
        self.bring_in(self.file(from), to)
    }

    /// Packs the tail, as the app does now and then.
    fn pack(&self, phone: usize) {
        let storage = &self.phones[phone].storage;
        let head = block_on(storage.open()).unwrap().head;
        let all = Journal::stored(self.file(phone));
        block_on(storage.compact(&head, &Packed::default(), head.clock, &checkpoint(&all))).unwrap();
    }

    /// Hands every file to everybody until nobody learns anything.
    fn exchange(&mut self) {
        for _ in 0..self.phones.len() + 2 {
            let mut new = 0;
            for from in 0..self.phones.len() {
                for to in 0..self.phones.len() {
                    new += self.hand(from, to).new;
                }
            }
            if new == 0 {
                return;
            }
        }
        panic!("the phones never agree");
    }

    /// The shop as this phone opens it: from the checkpoint and the tail, as the app does.
    fn opened(&self, phone: usize) -> Shop {
        let opened = block_on(self.phones[phone].storage.open()).unwrap();
        let mut shop = opened.checkpoint.map_or_else(Shop::default, |checkpoint| checkpoint.shop().unwrap());
        assert!(shop.apply_all(&opened.tail), "phone {phone} folds everything again at each start");
        assert_eq!(shop.fact_count(), opened.head.coverage.len());
        shop
    }

    /// The shop folded from everything that is stored.
    fn folded(&self, phone: usize) -> Shop {
        Shop::fold(&Journal::stored(self.file(phone)))
    }

    fn good(&self, phone: usize) -> u32 {
        self.folded(phone).run(RUN).map_or(0, |run| run.progress.good())
    }

    fn happen(&mut self, event: &Event) {
        let phones = self.phones.len();
        match event {
            Event::Count(phone, times) => (0..*times).for_each(|_| self.count(phone.index(phones))),
            Event::Name(phone) => {
                let title = format!("title {}", self.recorded);
                self.record(phone.index(phones), JOB, Fact::JobSet(vec![JobField::Title(title)]));
            }
            Event::Clone(phone) if phones < 8 => drop(self.clone_of(phone.index(phones))),
            Event::Clone(_) => {}
            Event::SetClock(phone, error) => self.phones[phone.index(phones)].clock_error = *error,
            Event::Hand(from, to, lost) => {
                if !lost {
                    self.hand(from.index(phones), to.index(phones));
                }
            }
            Event::Pack(phone) => self.pack(phone.index(phones)),
        }
    }
}

fn any_event() -> impl Strategy<Value = Event> {
    let phone = any::<Index>;
    let clock = prop_oneof![
        2 => Just(0),
        3 => -100_000_000..100_000_000i64,
        1 => Just(400_000_000_000i64),
        1 => Just(-1_795_000_000_000i64),
    ];
    prop_oneof![
        8 => (phone(), 1..6u8).prop_map(|(phone, times)| Event::Count(phone, times)),
        3 => phone().prop_map(Event::Name),
        2 => phone().prop_map(Event::Clone),
        2 => (phone(), clock).prop_map(|(phone, error)| Event::SetClock(phone, error)),
        6 => (phone(), phone(), prop::bool::weighted(0.2)).prop_map(|(from, to, lost)| Event::Hand(from, to, lost)),
        1 => phone().prop_map(Event::Pack),
    ]
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(40))]

    #[test]
    fn phones_that_heard_of_everything_agree_byte_for_byte(
        count in 2..5usize,
        events in prop::collection::vec(any_event(), 1..60),
    ) {
        let mut phones = Phones::new(count);
        let mut pieces = 0;
        for event in &events {
            phones.happen(event);
            pieces += if let Event::Count(_, times) = event { u32::from(*times) } else { 0 };
        }
        phones.exchange();
        let first = Checkpoint::of(&phones.opened(0)).bytes;
        for phone in 0..phones.phones.len() {
            prop_assert_eq!(phones.good(phone), pieces);
            prop_assert_eq!(phones.folded(phone).fact_count(), phones.recorded);
            prop_assert_eq!(&Checkpoint::of(&phones.opened(phone)).bytes, &first, "phone {}", phone);
            prop_assert_eq!(&Checkpoint::of(&phones.folded(phone)).bytes, &first, "phone {} folded", phone);
        }
    }

    /// Nothing is refused however often files go round, and what is counted afterwards reaches everybody.
    #[test]
    fn counting_goes_on_after_every_exchange(events in prop::collection::vec(any_event(), 1..30), more in 1..5u8) {
        let mut phones = Phones::new(2);
        events.iter().for_each(|event| phones.happen(event));
        phones.exchange();
        let before = phones.good(0);
        for phone in 0..phones.phones.len() {
            (0..more).for_each(|_| phones.count(phone));
            // Every fact of its own comes after everything that it has seen: nothing is folded again at a touch.
            phones.opened(phone);
        }
        phones.exchange();
        let all = before + u32::from(more) * phones.phones.len() as u32;
        for phone in 0..phones.phones.len() {
            prop_assert_eq!(phones.good(phone), all);
        }
    }

    /// A line that is lost in a file is missed, and nothing else is; it is taken from any other file.
    #[test]
    fn files_with_missing_lines_lose_nothing_for_good(
        counts in prop::collection::vec(1..6u8, 1..4),
        lost in prop::collection::vec(any::<Index>(), 0..6),
    ) {
        let mut phones = Phones::new(3);
        for (round, times) in counts.iter().enumerate() {
            (0..*times).for_each(|_| phones.count(round % 2));
            let mut file = phones.file(round % 2);
            for line in &lost {
                if !file.is_empty() {
                    file.remove(line.index(file.len()));
                }
            }
            phones.bring_in(file, 2);
        }
        phones.exchange();
        let pieces: u32 = counts.iter().map(|times| u32::from(*times)).sum();
        for phone in 0..3 {
            prop_assert_eq!(phones.good(phone), pieces);
        }
    }
}

#[test]
fn a_cloned_phone_and_its_original_take_in_each_others_files() {
    let mut phones = Phones::new(1);
    (0..3).for_each(|_| phones.count(0));
    let clone = phones.clone_of(0);
    (0..2).for_each(|_| phones.count(0));
    (0..4).for_each(|_| phones.count(clone));
    let device = block_on(phones.phones[0].storage.open()).unwrap().device;
    let merged = phones.hand(clone, 0);
    assert_eq!((merged.new, merged.known), (4, 3));
    assert_eq!(merged.forks, [Fork { device, first: 4 }]);
    assert_eq!(phones.good(0), 9);
    // The clone learns of it from the other's file, and both count under ids of their own from now on.
    assert!(phones.hand(0, clone).renewed.is_some());
    let ids: BTreeSet<Uuid> =
        [0, clone].map(|phone| block_on(phones.phones[phone].storage.open()).unwrap().device).into();
    assert_eq!(ids.len(), 2);
    assert!(!ids.contains(&device));
    phones.count(0);
    phones.count(clone);
    let again = phones.hand(clone, 0);
    assert_eq!((again.forks.len(), again.renewed), (0, None));
    phones.exchange();
    assert_eq!((phones.good(0), phones.good(clone)), (11, 11));
}

#[test]
fn a_phone_that_was_set_back_takes_its_newer_backup_and_a_new_id() {
    let mut phones = Phones::new(1);
    (0..3).for_each(|_| phones.count(0));
    let last_week = phones.clone_of(0);
    (0..5).for_each(|_| phones.count(0));
    let backup = phones.file(0);
    // Nothing was counted since: no number is taken twice, but the phone must not give them again.
    let merged = phones.bring_in(backup.clone(), last_week);
    assert_eq!((merged.new, merged.forks.len()), (5, 0));
    assert!(merged.renewed.is_some());
    phones.count(last_week);
    assert_eq!(phones.good(last_week), 9);
    assert_eq!(phones.bring_in(backup, last_week).new, 0);
}

#[test]
fn a_number_of_this_device_far_ahead_does_not_spoil_its_backups() {
    let mut phones = Phones::new(2);
    (0..3).for_each(|_| phones.count(0));
    let own = phones.file(0);
    let forged = |seq: u64| Entry { seq, ..own[2].clone() };
    let far = forged(1 << 42);
    let storage = &phones.phones[0].storage;
    let refused = block_on(merge(storage, &Packed::arriving([far]), WallTime::MAX, folded));
    assert!(refused.is_err(), "{refused:?}");
    assert_eq!(phones.file(0), own, "nothing was changed");
    assert!(phones.bring_in(vec![forged(900)], 0).renewed.is_some());
    phones.count(0);
    for entry in phones.file(0) {
        assert_eq!(Entry::from_line(&entry.to_line()), Ok(entry));
    }
    assert_eq!(phones.hand(0, 1).new, 5);
}

#[test]
fn a_forged_line_does_not_lock_out_the_device_it_names() {
    let mut phones = Phones::new(2);
    (0..3).for_each(|_| phones.count(0));
    let mut forged = phones.file(0).remove(2);
    forged.seq = 4;
    forged.subject = Uuid::from_u128(0x99);
    phones.bring_in(vec![forged], 1);
    (0..3).for_each(|_| phones.count(0));
    assert_eq!(phones.hand(0, 1).new, 6);
    assert_eq!(phones.good(1), 6);
}

#[test]
fn three_copies_of_a_phone_that_parted_at_different_times_agree() {
    let mut phones = Phones::new(1);
    (0..4).for_each(|_| phones.count(0));
    let early = phones.clone_of(0);
    (0..5).for_each(|_| phones.count(0));
    let late = phones.clone_of(0);
    for phone in [0, early, late] {
        (0..6).for_each(|_| phones.count(phone));
    }
    // Two orders of meeting.
    phones.hand(late, 0);
    phones.hand(early, late);
    phones.exchange();
    let shops: BTreeSet<Vec<u8>> = (0..3).map(|phone| Checkpoint::of(&phones.opened(phone)).bytes).collect();
    assert_eq!(shops.len(), 1);
    assert_eq!(phones.good(early), 27);
}

#[test]
fn a_fact_dated_years_ahead_is_overridden_and_does_not_date_later_ones() {
    let mut phones = Phones::new(2);
    phones.phones[1].clock_error = 400_000_000_000;
    phones.record(1, JOB, Fact::JobSet(vec![JobField::Title("from 2039".into())]));
    let merged = phones.hand(1, 0);
    assert_eq!(merged.far_ahead, 1);
    phones.record(0, JOB, Fact::JobSet(vec![JobField::Title("edited".into())]));
    phones.count(0);
    let shop = phones.opened(0);
    assert_eq!(shop.job(JOB).unwrap().title, "edited");
    assert_eq!(shop.run(RUN).unwrap().progress.pulls()[0].at, phones.at(&phones.phones[0]));
    phones.hand(0, 1);
    assert_eq!(phones.opened(1).job(JOB).unwrap().title, "edited");
}

#[test]
fn a_clock_that_jumps_back_is_reported_and_later_times_are_right() {
    const HOURS: i64 = 3 * 3_600_000;
    let mut phones = Phones::new(1);
    (0..3).for_each(|_| phones.count(0));
    assert_eq!(phones.opened(0).clock_behind(phones.at(&phones.phones[0])), None);
    phones.phones[0].clock_error = HOURS;
    phones.count(0);
    phones.phones[0].clock_error = 0;
    let behind = phones.opened(0).clock_behind(phones.at(&phones.phones[0])).unwrap();
    assert_eq!(behind.whole_minutes(), 180);
    let mut times = Vec::new();
    for _ in 0..9 {
        phones.now += 40_000;
        phones.count(0);
        times.push(phones.at(&phones.phones[0]));
    }
    let shop = phones.opened(0);
    let run = shop.run(RUN).unwrap();
    let counted: Vec<WallTime> = run.progress.pulls()[4..].iter().map(|pull| pull.at).collect();
    assert_eq!(counted, times);
    let pace = run.progress.pace().unwrap();
    assert!((30.0..42.0).contains(&pace.mean), "{pace:?}");
}

#[test]
fn what_a_device_records_after_a_fork_has_numbers_from_1() {
    let mut head = Head::default();
    let draft = Draft { at: WallTime::from_unix_ms(5), subject: RUN, fact: Fact::RunStarted };
    let entry = assign_sequence(&mut head, Uuid::from_u128(9), &[draft]).remove(0);
    assert_eq!((entry.seq, entry.at.unix_ms()), (1, 5));
}
