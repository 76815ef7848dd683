//! How options, lists, tuples and maps are encoded.

use super::{Encode, Reader, encode_number};
use std::collections::{BTreeMap, BTreeSet};

impl<T: Encode> Encode for Box<T> {
    fn encode(&self, out: &mut Vec<u8>) {
        T::encode(self, out);
    }

    fn decode(from: &mut Reader<'_>) -> Self {
        Self::new(T::decode(from))
    }
}

impl<T: Encode> Encode for Option<T> {
    fn encode(&self, out: &mut Vec<u8>) {
        out.push(u8::from(self.is_some()));
        if let Some(value) = self {
            value.encode(out);
        }
    }

    fn decode(from: &mut Reader<'_>) -> Self {
        bool::decode(from).then(|| T::decode(from))
    }

    fn is_new(&self) -> bool {
        self.as_ref().is_some_and(T::is_new)
    }
}

impl<T: Encode> Encode for Vec<T> {
    fn encode(&self, out: &mut Vec<u8>) {
        encode_number(self.len() as u64, out);
        for value in self {
            value.encode(out);
        }
    }

    fn decode(from: &mut Reader<'_>) -> Self {
        let length = from.length();
        let mut list = Self::new();
        for _ in 0..length {
            // A false length is detected before the list grows to it.
            if from.has_failed() {
                break;
            }
            list.push(T::decode(from));
        }
        list
    }

    fn is_new(&self) -> bool {
        self.iter().any(T::is_new)
    }
}

impl<T: Encode, const N: usize> Encode for [T; N] {
    fn encode(&self, out: &mut Vec<u8>) {
        for value in self {
            value.encode(out);
        }
    }

    fn decode(from: &mut Reader<'_>) -> Self {
        std::array::from_fn(|_| T::decode(from))
    }

    fn is_new(&self) -> bool {
        self.iter().any(T::is_new)
    }
}

macro_rules! tuples {
    ($(($($name:ident $at:tt),*)),*) => {$(
        impl<$($name: Encode),*> Encode for ($($name,)*) {
            fn encode(&self, out: &mut Vec<u8>) {
                $(self.$at.encode(out);)*
            }

            fn decode(from: &mut Reader<'_>) -> Self {
                ($($name::decode(from),)*)
            }

            fn is_new(&self) -> bool {
                false $(|| self.$at.is_new())*
            }
        }
    )*};
}
tuples!((A 0, B 1), (A 0, B 1, C 2), (A 0, B 1, C 2, D 3));

impl<K: Encode + Ord, V: Encode> Encode for BTreeMap<K, V> {
    fn encode(&self, out: &mut Vec<u8>) {
        encode_number(self.len() as u64, out);
        for (key, value) in self {
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
        // Not `collect`: it sorts first, and would compile a sort for every type of key and value.
        let mut map = Self::new();
        for (key, value) in rows {
            map.insert(key, value);
        }
        map
    }
}

impl<K: Encode + Ord> Encode for BTreeSet<K> {
    fn encode(&self, out: &mut Vec<u8>) {
        encode_number(self.len() as u64, out);
        for key in self {
            key.encode(out);
        }
    }

    fn decode(from: &mut Reader<'_>) -> Self {
        let mut set = Self::new();
        for key in Vec::decode(from) {
            set.insert(key);
        }
        set
    }
}
