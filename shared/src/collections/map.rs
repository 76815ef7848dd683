//! A small map. It is written to bytes and JSON exactly as a `BTreeMap` is; it is for keys whose number is
//! bounded, since a new key moves all behind it. What a hostile file can make grow without end stays in a
//! `BTreeMap`.

use crate::codec::{Encode, Reader, encode_number};
use serde::de::{Deserialize, Deserializer, MapAccess, Visitor};
use serde::ser::{Serialize, Serializer};
use std::borrow::Borrow;
use std::cmp::Ordering;
use std::fmt;
use std::marker::PhantomData;

/// A map sorted by key, stored as one list.
#[derive(Clone, PartialEq, Eq)]
pub struct Map<K, V> {
    rows: Vec<(K, V)>,
}

impl<K, V> Default for Map<K, V> {
    fn default() -> Self {
        Self::new()
    }
}

impl<K, V> Map<K, V> {
    /// An empty map.
    pub const fn new() -> Self {
        Self { rows: Vec::new() }
    }

    /// Number of keys.
    pub fn len(&self) -> usize {
        self.rows.len()
    }

    /// Whether the map is empty.
    pub fn is_empty(&self) -> bool {
        self.rows.is_empty()
    }

    /// Keys and values in the order of the keys.
    pub fn iter(&self) -> impl DoubleEndedIterator<Item = (&K, &V)> + ExactSizeIterator + Clone {
        self.rows.iter().map(|(key, value)| (key, value))
    }

    /// Keys and mutable values in the order of the keys.
    pub fn iter_mut(&mut self) -> impl Iterator<Item = (&K, &mut V)> {
        self.rows.iter_mut().map(|(key, value)| (&*key, value))
    }

    /// All keys in order.
    pub fn keys(&self) -> impl DoubleEndedIterator<Item = &K> + Clone {
        self.rows.iter().map(|(key, _)| key)
    }

    /// The values in the order of their keys.
    pub fn values(&self) -> impl DoubleEndedIterator<Item = &V> + Clone {
        self.rows.iter().map(|(_, value)| value)
    }

    /// Removes all entries.
    pub fn clear(&mut self) {
        self.rows.clear();
    }

    /// Keeps only the entries for which `keep` returns `true`.
    pub fn retain(&mut self, mut keep: impl FnMut(&K, &mut V) -> bool) {
        self.rows.retain_mut(|(key, value)| keep(key, value));
    }
}

impl<K: Ord, V> Map<K, V> {
    fn position<Q: Ord + ?Sized>(&self, key: &Q) -> Result<usize, usize>
    where
        K: Borrow<Q>,
    {
        // The last key is the one most asked for: the current quarter of an hour, the size on the press.
        let Some((last, before)) = self.rows.split_last() else { return Err(0) };
        match last.0.borrow().cmp(key) {
            Ordering::Less => Err(self.rows.len()),
            Ordering::Equal => Ok(before.len()),
            Ordering::Greater => before.binary_search_by(|(other, _)| other.borrow().cmp(key)),
        }
    }

    /// The value of a key.
    pub fn get<Q: Ord + ?Sized>(&self, key: &Q) -> Option<&V>
    where
        K: Borrow<Q>,
    {
        self.position(key).ok().map(|position| &self.rows[position].1)
    }

    /// The value of a key, mutably.
    pub fn get_mut<Q: Ord + ?Sized>(&mut self, key: &Q) -> Option<&mut V>
    where
        K: Borrow<Q>,
    {
        self.position(key).ok().map(|position| &mut self.rows[position].1)
    }

    /// Whether a key is there.
    pub fn contains_key<Q: Ord + ?Sized>(&self, key: &Q) -> bool
    where
        K: Borrow<Q>,
    {
        self.position(key).is_ok()
    }

    /// Inserts a value and returns the one it replaces.
    pub fn insert(&mut self, key: K, value: V) -> Option<V> {
        match self.position(&key) {
            Ok(position) => Some(std::mem::replace(&mut self.rows[position].1, value)),
            Err(position) => {
                self.rows.insert(position, (key, value));
                None
            }
        }
    }

    /// Removes and returns the value of a key.
    pub fn remove<Q: Ord + ?Sized>(&mut self, key: &Q) -> Option<V>
    where
        K: Borrow<Q>,
    {
        self.position(key).ok().map(|position| self.rows.remove(position).1)
    }

    /// The value of a key, inserted if it is not there.
    pub fn get_or_insert_with(&mut self, key: K, value: impl FnOnce() -> V) -> &mut V {
        let position = match self.position(&key) {
            Ok(position) => position,
            Err(position) => {
                self.rows.insert(position, (key, value()));
                position
            }
        };
        &mut self.rows[position].1
    }

    /// The value of a key, inserted as the default if it is not there.
    pub fn get_or_insert_default(&mut self, key: K) -> &mut V
    where
        V: Default,
    {
        self.get_or_insert_with(key, V::default)
    }
}

impl<K: fmt::Debug, V: fmt::Debug> fmt::Debug for Map<K, V> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.debug_map().entries(self.iter()).finish()
    }
}

impl<K: Ord, V> Extend<(K, V)> for Map<K, V> {
    fn extend<I: IntoIterator<Item = (K, V)>>(&mut self, rows: I) {
        for (key, value) in rows {
            self.insert(key, value);
        }
    }
}

impl<K: Ord, V> FromIterator<(K, V)> for Map<K, V> {
    fn from_iter<I: IntoIterator<Item = (K, V)>>(rows: I) -> Self {
        let mut map = Self::new();
        map.extend(rows);
        map
    }
}

impl<K: Ord, V, const N: usize> From<[(K, V); N]> for Map<K, V> {
    fn from(rows: [(K, V); N]) -> Self {
        rows.into_iter().collect()
    }
}

impl<K, V> IntoIterator for Map<K, V> {
    type Item = (K, V);
    type IntoIter = std::vec::IntoIter<(K, V)>;

    fn into_iter(self) -> Self::IntoIter {
        self.rows.into_iter()
    }
}

impl<'a, K, V> IntoIterator for &'a Map<K, V> {
    type Item = (&'a K, &'a V);
    type IntoIter = std::iter::Map<std::slice::Iter<'a, (K, V)>, fn(&'a (K, V)) -> (&'a K, &'a V)>;

    fn into_iter(self) -> Self::IntoIter {
        self.rows.iter().map(|(key, value)| (key, value))
    }
}

impl<'a, K, V> IntoIterator for &'a mut Map<K, V> {
    type Item = (&'a K, &'a mut V);
    type IntoIter = std::iter::Map<std::slice::IterMut<'a, (K, V)>, fn(&'a mut (K, V)) -> (&'a K, &'a mut V)>;

    fn into_iter(self) -> Self::IntoIter {
        self.rows.iter_mut().map(|(key, value)| (&*key, value))
    }
}

impl<K: Ord + Borrow<Q>, V, Q: Ord + ?Sized> std::ops::Index<&Q> for Map<K, V> {
    type Output = V;

    fn index(&self, key: &Q) -> &V {
        self.get(key).expect("a key of the map")
    }
}

impl<K: Encode + Ord, V: Encode> Encode for Map<K, V> {
    fn encode(&self, out: &mut Vec<u8>) {
        encode_number(self.rows.len() as u64, out);
        for (key, value) in &self.rows {
            key.encode(out);
            value.encode(out);
        }
    }

    fn decode(from: &mut Reader<'_>) -> Self {
        let rows = Vec::<(K, V)>::decode(from);
        // Keys are written in order; anything else was not written by this codec.
        if rows.windows(2).any(|pair| pair[0].0 >= pair[1].0) {
            from.fail();
        }
        Self { rows }
    }
}

impl<K: Serialize, V: Serialize> Serialize for Map<K, V> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_map(self)
    }
}

impl<'de, K: Deserialize<'de> + Ord, V: Deserialize<'de>> Deserialize<'de> for Map<K, V> {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        struct Rows<K, V>(PhantomData<(K, V)>);

        impl<'de, K: Deserialize<'de> + Ord, V: Deserialize<'de>> Visitor<'de> for Rows<K, V> {
            type Value = Map<K, V>;

            fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                f.write_str("a map")
            }

            fn visit_map<A: MapAccess<'de>>(self, mut rows: A) -> Result<Self::Value, A::Error> {
                let mut map = Map::new();
                while let Some((key, value)) = rows.next_entry()? {
                    map.insert(key, value);
                }
                Ok(map)
            }
        }

        deserializer.deserialize_map(Rows(PhantomData))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::collections::sort_by_key;
    use std::collections::BTreeMap;

    #[test]
    fn a_map_matches_btreemap_in_content_and_bytes() {
        let rows = [(5, "five"), (1, "one"), (9, "nine"), (5, "fife"), (3, "three")];
        let (mut ours, mut theirs) = (Map::new(), BTreeMap::new());
        for (key, value) in rows {
            assert_eq!(ours.insert(key, value), theirs.insert(key, value));
        }
        assert_eq!(ours.remove(&3), theirs.remove(&3));
        assert_eq!(ours.remove(&4), None);
        assert_eq!(ours.get(&9), theirs.get(&9));
        assert!(ours.iter().eq(theirs.iter()));
        let bytes = postcard::to_allocvec(&theirs).unwrap();
        assert_eq!(postcard::to_allocvec(&ours).unwrap(), bytes);
        assert_eq!(postcard::from_bytes::<Map<i32, &str>>(&bytes).unwrap(), ours);
        assert_eq!(serde_json::to_string(&ours).unwrap(), serde_json::to_string(&theirs).unwrap());
        *ours.get_or_insert_default(7) = "seven";
        assert_eq!(ours.keys().copied().collect::<Vec<i32>>(), [1, 5, 7, 9]);
    }

    #[test]
    fn sorting_is_stable() {
        let mut list: Vec<(u8, usize)> = (0..200).map(|at| ((at * 37 % 11) as u8, at)).collect();
        let mut expected = list.clone();
        expected.sort_by_key(|row| row.0);
        sort_by_key(&mut list, |row| row.0);
        assert_eq!(list, expected);
    }
}
