//! Facts that an older version stored without knowing them, after the update that knows them.

use super::any_entries::bytes_of;
use lastpull_core::exchange::{BackupWriter, read_backup};
use lastpull_core::facts::frozen::{history, rows};
use lastpull_core::facts::{Entry, Fact, Journal};
use lastpull_core::journal::{JournalFact, Packed, record, segment};
use lastpull_core::shop::Shop;
use lastpull_core::time::WallTime;

/// The entry as a version stores it that does not know its fact.
fn as_unknown(entry: &Entry) -> Entry {
    if entry.fact.as_unknown().is_some() {
        return entry.clone();
    }
    let body = entry.fact.to_json().get().to_owned();
    Entry { fact: Fact::Unknown { kind: "newer".into(), body }, ..entry.clone() }
}

fn stored_as_unknown() -> Vec<Entry> {
    history().iter().map(as_unknown).collect()
}

fn backup_of(entries: &[Entry]) -> Vec<u8> {
    let (out, first) = BackupWriter::new(entries, WallTime::from_unix_ms(9)).unwrap();
    [first, out.finish()].concat()
}

#[test]
fn facts_stored_as_unknown_are_folded_once_they_are_known() {
    let known = Journal::of(history()).unwrap();
    let updated = Journal::of(stored_as_unknown()).unwrap();
    assert_eq!(updated, known);
    assert_eq!(bytes_of(&updated), bytes_of(&known));
    assert_eq!(Shop::fold(&updated).unknown, Shop::fold(&known).unknown);
}

#[test]
fn a_record_and_a_segment_of_unknown_facts_are_recognized_after_reading() {
    let entries = stored_as_unknown();
    let records: Vec<Entry> =
        entries.iter().map(|entry| record::decode::<Fact>(&record::encode(entry)).unwrap().recognized()).collect();
    assert_eq!(records, history());
    let unpacked =
        Packed::sorted(&entries).segments().iter().flat_map(|s| segment::unpack(&s.bytes).unwrap()).collect();
    assert_eq!(Journal::of(unpacked).unwrap(), Journal::of(history()).unwrap());
}

#[test]
fn a_known_fact_does_not_contradict_itself_stored_as_unknown() {
    for (here, arriving) in [(history(), stored_as_unknown()), (stored_as_unknown(), history())] {
        let facts = here.len() as u64;
        let mut journal = Journal::of(here).unwrap();
        let absorbed = journal.absorb(arriving).unwrap();
        assert_eq!((absorbed.new, absorbed.known), (0, facts));
    }
}

#[test]
fn a_backup_of_unknown_facts_is_read_by_the_version_that_knows_them() {
    let file = backup_of(&stored_as_unknown());
    assert_eq!(file, backup_of(&history()), "every fact is written as it was received");
    let mut journal = Journal::of(stored_as_unknown()).unwrap();
    let read = pollster::block_on(read_backup(file.as_slice())).unwrap().facts.entries().collect();
    assert_eq!(journal.absorb(read).unwrap().new, 0);
}

#[test]
fn an_unknown_fact_that_is_not_taken_in_stays_as_it_was_received() {
    let [oversized, later] = [r#"{"shop_named":"NAME"}"#.replace("NAME", &"x".repeat(500)), r#"{"later":[1]}"#.into()]
        .map(|body| Fact::Unknown { kind: "newer".into(), body });
    for fact in [oversized, later] {
        assert_eq!(fact.clone().recognized(), fact);
    }
    for row in rows() {
        assert_eq!(row.fact.clone().recognized(), row.fact);
    }
}
