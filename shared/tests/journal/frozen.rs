//! Whether what is written on phones and in backup files still reads, byte for byte.

use crate::source_files::rust_files;
use lastpull_core::codec::to_bytes;
use lastpull_core::exchange::read_backup;
use lastpull_core::facts::frozen::{FOLD_SHA256, Row, hex, history, rows, subject_of};
use lastpull_core::facts::{Entry, Fact, Journal};
use lastpull_core::journal::{Checkpoint, JournalFact, Packed, Stamp, record, segment};
use lastpull_core::run::Location;
use lastpull_core::shop::Shop;
use lastpull_core::time::WallTime;
use sha2::{Digest, Sha256};
use std::collections::{BTreeMap, BTreeSet};
use uuid::Uuid;

/// The row as it is to be entered in its table.
fn to_enter(row: &Row) -> String {
    let [json, packed] = &row.written;
    // As many as the text needs: clippy refuses one more.
    let hashes = if json.contains("\"#") { "##" } else { "#" };
    format!("{} {} => r{hashes}\"{json}\"{hashes}, \"{packed}\";", row.type_name, row.variant)
}

/// Types that read JSON and need no row: the envelopes and the bare numbers `WallTime`, in them and in
/// `ScreenFact::Undone`, and `TimeOfDay`, in the rows of due times and closings, whose own tests pin them, and types of
/// tests.
const ENVELOPES: [&str; 8] = ["Heading", "HybridClock", "Kind", "Stamp", "TimeOfDay", "WallTime", "Whole", "WireIn"];

fn reads_json(after_derive: &str) -> bool {
    after_derive.split(')').next().is_some_and(|derives| derives.contains("Deserialize"))
}

/// The folded shop's bytes as a hash, in hexadecimal.
fn hash_of(shop: &Shop) -> String {
    hex(&Sha256::digest(to_bytes(shop)))
}

/// Everything frozen in `history` when these files were made, by version 1 of the formats: `backup_v1_all.zip` is a
/// backup file, `segments_v1_all.bin` the segments of the same entries, each behind its length in four bytes, low
/// byte first.
fn backup_v1_all() -> Vec<Entry> {
    let bytes: &[u8] = include_bytes!("../data/backup_v1_all.zip");
    pollster::block_on(read_backup(bytes)).unwrap().facts.entries().collect()
}

fn segments_v1_all() -> Vec<Entry> {
    let mut rest: &[u8] = include_bytes!("../data/segments_v1_all.bin");
    let mut entries = Vec::new();
    while let Some((length, behind)) = rest.split_first_chunk() {
        let (bytes, after) = behind.split_at(u32::from_le_bytes(*length) as usize);
        entries.extend(segment::unpack(bytes).unwrap());
        rest = after;
    }
    entries
}

#[test]
fn every_row_is_written_as_it_was_frozen() {
    let changed: Vec<_> = rows().iter().filter(|row| row.written != [row.json, row.packed]).map(to_enter).collect();
    assert!(changed.is_empty(), "phones and backup files do not read these:\n{}", changed.join("\n"));
}

#[test]
fn every_row_reads_back_from_its_frozen_json_and_bytes() {
    let unread: Vec<_> = rows().iter().filter(|row| row.reads != [true; 2]).map(to_enter).collect();
    assert!(unread.is_empty(), "the frozen JSON or bytes of these read as something else:\n{}", unread.join("\n"));
}

#[test]
fn the_variants_of_each_enum_are_numbered_from_0_without_gaps() {
    let mut numbers: BTreeMap<&str, BTreeSet<(u32, &str)>> = BTreeMap::new();
    for row in rows() {
        if let Some(number) = row.number {
            assert!(row.packed.starts_with(&hex(&[number as u8])), "{} {}", row.type_name, row.variant);
            numbers.entry(row.type_name).or_default().insert((number, row.variant));
        }
    }
    for (name, variants) in numbers {
        assert!(variants.iter().map(|(number, _)| *number).eq(0..variants.len() as u32), "{name} {variants:?}");
    }
}

/// Whether a type is written only in the draft of a form, which is dropped if it cannot be read: no fact holds it.
fn is_in_drafts_only(name: &str) -> bool {
    name.ends_with("Form") || ["BatchTimeKind", "ExposureMethodKind", "LayerKind", "LengthUnit"].contains(&name)
}

/// The `match` in the rows finds a new variant; this finds a new type.
#[test]
fn every_type_that_reads_json_has_a_row() {
    let listed: BTreeSet<&str> = rows().iter().map(|row| row.type_name).collect();
    let mut missing = Vec::new();
    for path in rust_files("src") {
        let text = std::fs::read_to_string(&path).unwrap();
        for derived in text.split("#[derive(").skip(1).filter(|rest| reads_json(rest)) {
            let mut words = derived.split_whitespace().skip_while(|word| !["enum", "struct"].contains(word));
            let name = words.nth(1).unwrap().trim_end_matches(|letter: char| !letter.is_alphanumeric());
            let name = name.split('<').next().unwrap();
            if !ENVELOPES.contains(&name) && !is_in_drafts_only(name) && !listed.contains(name) {
                missing.push(format!("{name} in {}", path.display()));
            }
        }
    }
    assert!(missing.is_empty(), "add rows in facts/frozen for {missing:#?}");
}

#[test]
fn every_row_survives_the_line_the_record_and_the_segment() {
    for row in rows() {
        let stamp = Stamp { wall: WallTime::from_unix_ms(1), counter: 0 };
        let (device, subject) = (Uuid::from_u128(1), subject_of(&row.fact));
        let entry = Entry { device, seq: 1, stamp, at: WallTime::from_unix_ms(5), subject, fact: row.fact.clone() };
        assert_eq!(Entry::from_line(&entry.to_line()).as_ref(), Ok(&entry));
        assert_eq!(record::decode(&record::encode(&entry)).as_ref(), Ok(&entry));
        assert_eq!(segment::unpack(&Packed::sorted([&entry]).segments()[0].bytes), Ok(vec![entry]));
    }
}

#[test]
fn the_fold_of_all_rows_has_the_pinned_hash() {
    let hash = hash_of(&Shop::fold(&Journal::of(history()).unwrap()));
    assert!(
        hash == FOLD_SHA256,
        "a row was added, or the same facts fold to other bytes. If that is meant, put into facts/frozen/folded.rs:\n\
         pub const FOLD_SHA256: &str = \"{hash}\";"
    );
}

#[test]
fn a_checkpoint_is_read_only_by_the_version_and_fold_that_wrote_it() {
    let shop = Shop::fold(&Journal::of(history()).unwrap());
    let written = Checkpoint::of(&shop).bytes;
    assert_eq!(Checkpoint { bytes: written.clone() }.shop(), Some(shop.clone()));
    let changed = |at: usize| {
        let mut bytes = written.clone();
        bytes[at] ^= 1;
        Checkpoint { bytes }.shop()
    };
    assert_eq!([0, 1, FOLD_SHA256.len()].map(changed), [None, None, None]);
    // As the version before this layout wrote it.
    assert_eq!(Checkpoint { bytes: [&[6], &to_bytes(&shop)[..]].concat() }.shop(), None);
}

#[test]
fn the_backup_and_the_segments_of_version_1_hold_the_same_facts() {
    let journal = Journal::of(backup_v1_all()).unwrap();
    assert_eq!(Journal::of(segments_v1_all()).unwrap(), journal);
    let known: BTreeSet<String> = history().iter().map(|entry| entry.fact.to_json().get().to_owned()).collect();
    for entry in journal.in_order() {
        let json = entry.fact.to_json();
        assert!(known.contains(json.get()), "a row was changed or removed: {}", json.get());
        let is_newer = json.get().starts_with(r#"{"laser_engraved""#);
        assert_eq!(matches!(entry.fact, Fact::Unknown { .. }), is_newer, "{}", json.get());
    }
}

#[test]
fn the_backup_file_of_version_1_folds_to_the_same_shop() {
    let shop = Shop::fold(&Journal::of(backup_v1_all()).unwrap());
    let counts = [
        ("facts", shop.fact_count() as usize, 1388),
        ("jobs", shop.jobs().count(), 12),
        ("runs", shop.runs().count(), 106),
        ("dryers and flash units", shop.heat.heaters().count(), 16),
        ("ink sheets", shop.heat.sheets().count(), 9),
        ("settlings", shop.heat.settlings().count(), 5),
        ("cure tests", shop.heat.tests().count(), 29),
        ("trials", shop.heat.trials().count(), 19),
        ("room readings", shop.heat.climate().len(), 2),
        ("screens in the shop", shop.screens.iter().count(), 5),
        ("lamps", shop.exposure_log.lamps().count(), 9),
        ("emulsions", shop.exposure_log.emulsions().count(), 8),
        ("exposures not deleted", shop.exposure_log.exposures().count(), 4),
        ("charges not deleted", shop.exposure_log.bath.charges().len(), 0),
        ("batches not deleted", shop.exposure_log.bath.batches(WallTime::EPOCH, WallTime::MAX).len(), 3),
        ("failures not deleted", shop.failures.iter().count(), 10),
        ("photos shown", shop.photos.total().count as usize, 2),
        ("components not deleted", shop.ink.components().count(), 6),
        ("recipes not deleted", shop.ink.recipes().count(), 3),
        ("pots not deleted", shop.ink.pots().count(), 5),
        ("garments read", shop.ink.garments().count(), 6),
        ("facts of newer versions", shop.unknown.values().sum::<u32>() as usize, 1),
    ];
    for (what, count, pinned) in counts {
        assert_eq!(count, pinned, "{what}");
    }
    assert_eq!(shop.name, "Nudo Press");
    assert_eq!(shop.crew, ["Inés", "Moss"]);
    let run = shop.run(Uuid::from_u128(0x12)).unwrap();
    assert_eq!((run.ink.as_str(), run.location, run.set_up.hits), ("Brick red", Location::Other, 2));
    assert_eq!((run.progress.good(), run.progress.misprints(), run.checks.len()), (24, 10, 15));
}
