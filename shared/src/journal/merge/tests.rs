//! The merge of packed streams does what the merge of whole journals does.

use super::*;
use crate::facts::Fact;
use crate::journal::{Head, MemoryStorage, Stamp};
use pollster::block_on;
use proptest::prelude::*;
use uuid::Uuid;

type Storage = MemoryStorage<Fact>;

/// An entry of one of three devices, all of whose facts tell which entry it is. `line` differs between the facts that a
/// forked device gave one number.
fn entry(device: u8, seq: u64, wall: u64, line: u8) -> Entry<Fact> {
    let stamp = Stamp { wall: WallTime::from_unix_ms(1_000_000 + wall), counter: u32::from(line) };
    let fact = match seq % 4 {
        0 => Fact::Unknown { kind: "later".into(), body: format!(r#"{{"later":[{seq},{line}]}}"#) },
        1 => Fact::ShopNamed(format!("{device}/{seq}/{line}")),
        // A fact of this version, as a version stored it that did not know it.
        2 if line == 0 => Fact::Unknown { kind: "run_ended".into(), body: r#""run_ended""#.into() },
        _ => Fact::Pulled { pieces: i32::from(line) + 1, size: None },
    };
    let device = Uuid::from_u128(0x0700_0000_0000_0000_0000_0000_0000 + u128::from(device));
    Entry { device, seq, stamp, at: stamp.wall, subject: Uuid::from_u128(u128::from(seq % 5)), fact }
}

/// Something that happens to a device's storage.
#[derive(Clone, Debug)]
enum Event {
    /// It counts this many pieces, with a clock that may jump.
    Count(u8, u64),
    /// It packs its tail.
    Pack,
    /// Entries arrive: of a device, from a number on, so many, with clocks that rise or jump; forged ones of another line;
    /// in another order.
    Arrive { device: u8, first: u64, count: u64, jumps: bool, line: u8, mixed: bool },
    /// A file of its own, as it was before: in part.
    Own(u64),
}

fn event() -> impl Strategy<Value = Event> {
    let arrive = (0..4u8, 1..12u64, 1..12u64, any::<bool>(), 0..12u8, 0..8u8).prop_map(
        |(device, first, count, jumps, line, mixed)| Event::Arrive {
            device,
            first,
            count,
            jumps,
            line: u8::from(line == 0),
            mixed: mixed == 0,
        },
    );
    prop_oneof![
        3 => (1..4u8, 0..3_000u64).prop_map(|(count, at)| Event::Count(count, at)),
        1 => Just(Event::Pack),
        5 => arrive,
        2 => (0..9u64).prop_map(Event::Own),
    ]
}

fn folded(entries: &mut dyn Iterator<Item = Entry<Fact>>) -> Checkpoint {
    Checkpoint { bytes: entries.flat_map(|entry| crate::journal::record::encode(&entry)).collect() }
}

fn storage() -> Storage {
    let ids = std::cell::Cell::new(0xd0);
    MemoryStorage::new(move || {
        ids.set(ids.get() + 1);
        Uuid::from_u128(ids.get())
    })
}

/// Does the same on both storages, the first of which merges streams. Returns the results.
fn happen(event: &Event, by_streams: &Storage, whole: &Storage) -> Vec<Option<Result<Merged, MergeProblem>>> {
    [(by_streams, true), (whole, false)]
        .map(|(storage, streams)| {
            let now = WallTime::from_unix_ms(1_001_000);
            let merge = |file: &[Entry<Fact>]| {
                Some(block_on(merge_by(storage, &Packed::arriving(file.to_vec()), now, folded, streams)))
            };
            match event {
                Event::Count(count, at) => {
                    let draft = crate::journal::contract::pull(1_000_000 + at);
                    block_on(super::super::Storage::append(storage, &vec![draft; usize::from(*count)])).unwrap();
                    None
                }
                Event::Pack => {
                    let head: Head = block_on(super::super::Storage::open(storage)).unwrap().head;
                    let checkpoint = Checkpoint { bytes: vec![] };
                    let added = Packed::default();
                    block_on(super::super::Storage::compact(storage, &head, &added, head.clock, &checkpoint)).unwrap();
                    None
                }
                Event::Arrive { device, first, count, jumps, line, mixed } => {
                    let wall = |seq: u64| if *jumps { seq * 977 % 5_000 } else { seq * 100 };
                    let mut file: Vec<_> =
                        (*first..first + count).map(|seq| entry(*device, seq, wall(seq), *line)).collect();
                    if *mixed {
                        file.reverse();
                        file.push(file[0].clone());
                    }
                    merge(&file)
                }
                Event::Own(skip) => {
                    let mut file = block_on(super::super::Storage::read_all(storage)).unwrap();
                    file.retain(|entry| entry.seq > *skip);
                    merge(&file)
                }
            }
        })
        .into()
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(400))]

    #[test]
    fn streams_merge_to_the_bytes_that_whole_journals_merge_to(events in prop::collection::vec(event(), 1..14)) {
        let (by_streams, whole) = (storage(), storage());
        for event in events {
            let results = happen(&event, &by_streams, &whole);
            prop_assert_eq!(&results[0], &results[1], "{:?}", event);
            let raw = |storage: &Storage| block_on(super::super::Storage::read_raw(storage));
            prop_assert_eq!(raw(&by_streams), raw(&whole), "{:?}", event);
            let opened = |storage: &Storage| block_on(super::super::Storage::open(storage)).unwrap();
            prop_assert_eq!(opened(&by_streams), opened(&whole));
        }
    }
}

/// The property above would hold if nothing were merged as streams.
#[test]
fn a_file_as_the_app_writes_it_is_merged_as_a_stream() {
    let here: Vec<_> = (1..5).map(|seq| entry(1, seq, seq * 100, 0)).collect();
    let file: Vec<_> = (1..9).map(|seq| entry(1, seq, 10_000 - seq, 0)).collect();
    let (here, more) = (Packed::of(&here), Packed::of(&file[4..]));
    assert!(here.is_plain() && more.is_plain() && more.agrees_with(&here));
    assert!(!Packed::of(&file).agrees_with(&here), "with other stamps");
    let order: Vec<u64> = in_order(&[&here, &more]).map(|entry| entry.seq).collect();
    assert_eq!(order, [1, 2, 3, 4, 8, 7, 6, 5]);
}
