//! Whatever the order, overlap and repetition in which devices' files arrive, the shop is the same.

use lastpull_core::ink::Colour;
use lastpull_core::job::{Fabric, Size, SizePieces};
use lastpull_core::journal::{Checkpoint, Entry, Fact, JobField, Journal, LotField, RunField, Stamp, record, segment};
use lastpull_core::photo::{PhotoFact, PhotoId};
use lastpull_core::run::{CheckItem, CheckOutcome, Expected, MisprintCause, StopCause};
use lastpull_core::shop::Shop;
use proptest::prelude::*;
use proptest::sample::{Index, select};
use uuid::Uuid;

const DEVICES: u128 = 6;

fn any_fact() -> impl Strategy<Value = (Uuid, Fact)> {
    let subject = (0x10u128..0x14).prop_map(Uuid::from_u128);
    let size = prop::option::of(select(vec![Size::S, Size::M, Size::YouthL]));
    let text = "[a-zñ ]{0,6}";
    let fact = prop_oneof![
        8 => (1..4i32, size.clone()).prop_map(|(pieces, size)| Fact::Pulled { pieces, size }),
        2 => (-3..0i32, size.clone()).prop_map(|(pieces, size)| Fact::Pulled { pieces, size }),
        2 => (prop_oneof![Just(1), Just(-1)], size, any::<bool>()).prop_map(|(pieces, size, was_counted)| {
            Fact::Misprinted { pieces, size, cause: MisprintCause::Smudge, was_counted }
        }),
        1 => Just(Fact::RunStarted),
        1 => Just(Fact::RunEnded),
        1 => Just(Fact::Stopped(StopCause::Ink)),
        1 => Just(Fact::Resumed),
        1 => Just(Fact::Deleted),
        1 => Just(Fact::Restored),
        1 => Just(Fact::JobFinished),
        1 => Just(Fact::JobReopened),
        1 => text.prop_map(|t| Fact::JobSet(vec![JobField::Title(t.clone()), JobField::Client(t)])),
        1 => text.prop_map(|t| Fact::LotSet(vec![
            LotField::Job(Uuid::from_u128(0x10)),
            LotField::Garment(t),
            LotField::Fabric(Fabric::Polyester),
            LotField::Colour(Colour::BLACK),
            LotField::Pieces(vec![SizePieces { size: Size::M, pieces: 9 }]),
        ])),
        1 => text.prop_map(|t| Fact::RunSet(vec![RunField::Lot(Uuid::from_u128(0x11)), RunField::Ink(t), RunField::Hits(2)])),
        1 => (0..3u32).prop_map(|n| Fact::CheckMade {
            item: CheckItem::Hits,
            expected: Expected::Count(n),
            outcome: CheckOutcome::Ticked,
            by: None,
        }),
        1 => (0..3u8).prop_map(|n| {
            Fact::Photo(PhotoFact::Taken { photo: PhotoId([n; 32]), width: 160, height: 120, bytes: 9 })
        }),
        1 => (0..3u8).prop_map(|n| Fact::Photo(PhotoFact::Dropped(PhotoId([n; 32])))),
        1 => text.prop_map(|t| Fact::Unknown { kind: "later".into(), body: format!("{{\"later\":\"{t}\"}}") }),
    ];
    (subject, fact)
}

/// Facts of six devices, each numbered from 1, at wall times that collide and cross.
fn any_entries() -> impl Strategy<Value = Vec<Entry>> {
    prop::collection::vec((0..DEVICES, 0..2_000_000u64, any_fact()), 1..60).prop_map(|rows| {
        let mut next = [1u64; DEVICES as usize];
        rows.into_iter()
            .map(|(device, wall, (subject, fact))| {
                let seq = next[device as usize];
                next[device as usize] += 1;
                let stamp = Stamp { wall: wall / 1000 * 1000, counter: (wall % 3) as u32 };
                Entry { device: Uuid::from_u128(device + 1), seq, stamp, subject, fact }
            })
            .collect()
    })
}

fn bytes_of(journal: &Journal) -> Vec<u8> {
    Checkpoint::of(&Shop::fold(journal)).bytes
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(300))]

    #[test]
    fn any_order_overlap_and_repetition_folds_to_the_same_bytes(
        entries in any_entries(),
        files in prop::collection::vec(prop::collection::vec(any::<Index>(), 0..80), 1..6),
    ) {
        let whole = Journal::of(entries.clone()).unwrap();
        let mut pieced = Journal::default();
        for file in &files {
            pieced.absorb(file.iter().map(|index| index.get(&entries).clone()).collect()).unwrap();
        }
        pieced.absorb(entries.iter().rev().cloned().collect()).unwrap();
        prop_assert_eq!(&whole, &pieced);
        prop_assert_eq!(bytes_of(&whole), bytes_of(&pieced));
    }

    #[test]
    fn a_checkpoint_and_what_came_after_fold_to_the_same_bytes(entries in any_entries(), cut in any::<Index>()) {
        let journal = Journal::of(entries).unwrap();
        let ordered: Vec<Entry> = journal.in_order().into_iter().cloned().collect();
        let (before, after) = ordered.split_at(cut.index(ordered.len()));
        let mut shop = Shop::default();
        prop_assert!(shop.apply_all(before));
        let mut opened = Checkpoint::of(&shop).shop().unwrap();
        prop_assert!(opened.apply_all(after));
        prop_assert_eq!(Checkpoint::of(&opened).bytes, bytes_of(&journal));
    }

    #[test]
    fn a_fact_from_before_the_checkpoint_is_not_folded_on_top(entries in any_entries()) {
        let journal = Journal::of(entries).unwrap();
        let mut shop = Shop::fold(&journal);
        let first = journal.in_order()[0].clone();
        let before = shop.clone();
        prop_assert!(!shop.apply_all(&[first]));
        prop_assert_eq!(shop, before);
    }

    #[test]
    fn every_entry_survives_the_line_the_record_and_the_segment(entries in any_entries()) {
        for entry in &entries {
            prop_assert_eq!(&Entry::from_line(&entry.to_line()).unwrap(), entry);
            prop_assert_eq!(&record::decode(&record::encode(entry)).unwrap(), entry);
        }
        let packed = segment::pack(&entries);
        let back: Vec<Entry> = packed.iter().flat_map(|s| segment::unpack(&s.bytes).unwrap()).collect();
        prop_assert_eq!(Journal::of(back).unwrap(), Journal::of(entries).unwrap());
    }

    #[test]
    fn damaged_bytes_never_panic(bytes in prop::collection::vec(any::<u8>(), 0..200)) {
        let _ = record::decode(&bytes);
        let _ = segment::unpack(&bytes);
        let _ = pollster::block_on(lastpull_core::exchange::read_backup(bytes.as_slice())).map(|backup| backup.entries);
        let mut ours = vec![1u8];
        ours.extend(&bytes);
        let _ = record::decode(&ours);
        let _ = segment::unpack(&ours);
        let _ = Checkpoint { bytes: ours }.shop();
    }
}

#[test]
fn two_phones_that_counted_the_same_run_add_up() {
    let run = Uuid::from_u128(3);
    let pull = |device: u128, seq: u64, wall: u64| Entry {
        device: Uuid::from_u128(device),
        seq,
        stamp: Stamp { wall, counter: 0 },
        subject: run,
        fact: Fact::Pulled { pieces: 1, size: None },
    };
    let mut journal = Journal::of((1..=10).map(|n| pull(1, n, n * 40)).collect()).unwrap();
    journal.absorb((1..=7).map(|n| pull(2, n, n * 50)).collect()).unwrap();
    assert_eq!(Shop::fold(&journal).run(run).unwrap().progress.good(), 17);
}

#[test]
fn the_later_stamp_wins_a_field_whichever_file_came_last() {
    let job = Uuid::from_u128(3);
    let title = |device: u128, wall: u64, text: &str| Entry {
        device: Uuid::from_u128(device),
        seq: 1,
        stamp: Stamp { wall, counter: 0 },
        subject: job,
        fact: Fact::JobSet(vec![JobField::Title(text.into())]),
    };
    let early = title(1, 10, "early");
    let late = title(2, 20, "late");
    for order in [[early.clone(), late.clone()], [late, early]] {
        let mut journal = Journal::default();
        for entry in order {
            journal.absorb(vec![entry]).unwrap();
        }
        assert_eq!(Shop::fold(&journal).job(job).unwrap().title, "late");
    }
}
