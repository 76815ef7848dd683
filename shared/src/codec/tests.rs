use super::*;
use proptest::prelude::*;
use serde::{Deserialize, Serialize};
use std::collections::{BTreeMap, BTreeSet};
use uuid::Uuid;

#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, Encode)]
enum Kind {
    Bare,
    Pair(u8, i32),
    Named { text: String, list: Vec<Option<u16>> },
}

#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, Encode)]
struct Whole {
    kinds: Vec<Kind>,
    map: BTreeMap<u32, (bool, i64)>,
    set: BTreeSet<u64>,
    array: [Option<i16>; 3],
    id: Uuid,
    number: f64,
}

fn any_whole() -> impl Strategy<Value = Whole> {
    let kind = prop_oneof![
        Just(Kind::Bare),
        any::<(u8, i32)>().prop_map(|(a, b)| Kind::Pair(a, b)),
        (".{0,9}", any::<Vec<Option<u16>>>()).prop_map(|(text, list)| Kind::Named { text, list }),
    ];
    let map = prop::collection::btree_map(any::<u32>(), any::<(bool, i64)>(), 0..9);
    let set = prop::collection::btree_set(any::<u64>(), 0..9);
    (prop::collection::vec(kind, 0..6), map, set, any::<[Option<i16>; 3]>(), any::<u128>(), -1e9..1e9f64).prop_map(
        |(kinds, map, set, array, id, number)| Whole { kinds, map, set, array, id: Uuid::from_u128(id), number },
    )
}

proptest! {
    /// Checked against the `postcard` crate.
    #[test]
    fn encoded_bytes_match_postcard_and_round_trip(whole in any_whole()) {
        let bytes = to_bytes(&whole);
        prop_assert_eq!(&bytes, &postcard::to_allocvec(&whole).unwrap());
        prop_assert_eq!(from_bytes::<Whole>(&bytes), Some(whole));
    }

    #[test]
    fn arbitrary_bytes_decode_as_postcard_decodes_them(bytes in prop::collection::vec(any::<u8>(), 0..60)) {
        let theirs = postcard::take_from_bytes::<Whole>(&bytes).ok();
        let mut reader = Reader::of(&bytes);
        let whole = Whole::decode(&mut reader);
        let ours = (!reader.has_failed()).then(|| (whole, &bytes[bytes.len() - reader.left()..]));
        // Postcard accepts duplicate keys, and so do we.
        prop_assert_eq!(ours.map(|(whole, rest)| (to_bytes(&whole), rest)), theirs.map(|(whole, rest)| (to_bytes(&whole), rest)));
    }

    #[test]
    fn truncated_bytes_are_refused(whole in any_whole(), cut in any::<prop::sample::Index>()) {
        let bytes = to_bytes(&whole);
        prop_assert_eq!(from_bytes::<Whole>(&bytes[..cut.index(bytes.len())]), None);
    }
}

#[test]
fn a_false_length_allocates_no_memory() {
    let mut bytes = Vec::new();
    encode_number(u64::MAX, &mut bytes);
    assert_eq!(from_bytes::<Vec<u64>>(&bytes), None);
    assert_eq!(from_bytes::<String>(&bytes), None);
}
