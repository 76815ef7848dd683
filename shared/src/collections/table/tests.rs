use super::*;
use crate::codec::{from_bytes, to_bytes};
use proptest::prelude::*;
use std::collections::BTreeMap;

fn id(n: u128) -> Uuid {
    Uuid::from_u128(n)
}

/// A table with these rows as its own.
fn table_of(rows: &BTreeMap<Uuid, String>) -> Table<String> {
    let mut table = Table::default();
    rows.iter().for_each(|(id, word)| table.insert(*id, word.clone()));
    table
}

#[test]
fn a_table_matches_btreemap_in_content_order_and_bytes() {
    let (mut ours, mut theirs) = (Table::default(), BTreeMap::new());
    for (n, word) in [(5, "five"), (1, "one"), (9, "nine"), (5, "fife"), (3, "three")] {
        ours.insert(id(n), word.to_owned());
        theirs.insert(id(n), word.to_owned());
    }
    assert_eq!(ours.remove(&id(1)), theirs.remove(&id(1)));
    assert_eq!(ours.remove(&id(4)), None);
    ours.get_or_insert_default(id(4)).push('!');
    theirs.entry(id(4)).or_default().push('!');
    // Its position changed when another row was removed.
    ours.insert(id(3), "drei".to_owned());
    theirs.insert(id(3), "drei".to_owned());
    assert!(ours.iter().eq(theirs.iter()));
    for n in 0..10 {
        assert_eq!(ours.get(&id(n)), theirs.get(&id(n)));
    }
    let mut bytes = Vec::new();
    ours.encode_map(&mut bytes);
    assert_eq!(bytes, postcard::to_allocvec(&theirs).unwrap());
    let mut reader = Reader::of(&bytes);
    let back = Table::<String>::decode_map(&mut reader);
    assert_eq!(reader.finish(back), Some(ours));
}

#[test]
fn a_duplicate_id_fails_to_decode() {
    let mut bytes = vec![2];
    for _ in 0..2 {
        id(7).encode(&mut bytes);
        1u32.encode(&mut bytes);
    }
    let mut reader = Reader::of(&bytes);
    let read = Table::<u32>::decode_map(&mut reader);
    assert_eq!(reader.finish(read), None);
}

#[test]
fn ids_that_are_not_in_order_and_rows_beyond_their_bytes_fail_to_decode() {
    let table = table_of(&BTreeMap::from([(id(1), "one".to_owned()), (id(2), "two".to_owned())]));
    let bytes = to_bytes(&table);
    assert_eq!(from_bytes(&bytes), Some(table));
    // The number of rows, then sixteen bytes of the first id, and four of where its row ends.
    let mut same = bytes.clone();
    same[1 + LINE + 15] = 1;
    assert_eq!(from_bytes::<Table<String>>(&same), None);
    let mut backwards = bytes.clone();
    backwards[1 + 16] = 200;
    assert_eq!(from_bytes::<Table<String>>(&backwards), None);
    for length in 0..bytes.len() {
        assert_eq!(from_bytes::<Table<String>>(&bytes[..length]), None);
    }
    let mut many = bytes;
    many[0] = 120;
    assert_eq!(from_bytes::<Table<String>>(&many), None);
}

#[test]
fn a_stored_row_is_decoded_when_it_is_asked_for_and_no_other() {
    let rows: BTreeMap<Uuid, String> = (0..100).map(|n| (id(n), n.to_string())).collect();
    let mut table: Table<String> = from_bytes(&to_bytes(&table_of(&rows))).unwrap();
    assert_eq!((table.len(), table.rows_in_memory()), (100, 0));
    assert!(table.contains_key(&id(7)) && !table.contains_key(&id(100)));
    assert!(table.keys().eq(rows.keys()));
    table.get_mut(&id(3)).unwrap().push('!');
    table.remove(&id(4));
    table.insert(id(200), "new".to_owned());
    let bytes = to_bytes(&table);
    assert_eq!((table.len(), table.rows_in_memory()), (100, 2));
    assert_eq!(table.get(&id(7)).map(String::as_str), Some("7"));
    assert_eq!(table.iter().next_back().map(|(_, word)| word.as_str()), Some("new"));
    assert_eq!(table.rows_in_memory(), 3);
    assert_eq!(from_bytes(&bytes), Some(table));
}

#[derive(Clone, Debug)]
enum Step {
    Insert(u128, String),
    Remove(u128),
    Change(u128),
    Read(u128),
    Reopen,
}

fn any_step() -> impl Strategy<Value = Step> {
    let id = 0..12u128;
    prop_oneof![
        4 => (id.clone(), "[a-z]{0,4}").prop_map(|(id, word)| Step::Insert(id, word)),
        2 => id.clone().prop_map(Step::Remove),
        2 => id.clone().prop_map(Step::Change),
        2 => id.prop_map(Step::Read),
        1 => Just(Step::Reopen),
    ]
}

proptest! {
    #[test]
    fn stored_and_own_rows_together_match_btreemap(steps in prop::collection::vec(any_step(), 0..60)) {
        let (mut ours, mut theirs) = (Table::<String>::default(), BTreeMap::<Uuid, String>::new());
        for step in steps {
            match step {
                Step::Insert(n, word) => {
                    ours.insert(id(n), word.clone());
                    theirs.insert(id(n), word);
                }
                Step::Remove(n) => prop_assert_eq!(ours.remove(&id(n)), theirs.remove(&id(n))),
                Step::Change(n) => {
                    ours.get_or_insert_default(id(n)).push('!');
                    theirs.entry(id(n)).or_default().push('!');
                }
                Step::Read(n) => prop_assert_eq!(ours.get(&id(n)), theirs.get(&id(n))),
                Step::Reopen => ours = from_bytes(&to_bytes(&ours)).unwrap(),
            }
            prop_assert_eq!(ours.len(), theirs.len());
        }
        // What was read, changed or stored in between does not show in the bytes.
        prop_assert_eq!(to_bytes(&ours), to_bytes(&table_of(&theirs)));
        prop_assert!(ours.iter().eq(theirs.iter()));
        prop_assert!(ours.iter().rev().eq(theirs.iter().rev()));
        let (mut here, mut there) = (ours.iter(), theirs.iter());
        for back in [false, true, true, false, true, false, false] {
            prop_assert_eq!(if back { here.next_back() } else { here.next() }, if back { there.next_back() } else { there.next() });
        }
        prop_assert!(ours.clone().into_rows().eq(theirs));
    }
}
