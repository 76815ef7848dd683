//! The stored format in full: every stored enum and struct, with the JSON and the packed bytes of each variant.
//!
//! The JSON is what a line of `journal.ndjson` holds, the packed bytes are what a phone's journal holds. Both are
//! frozen: a row below is never edited or removed. The tests compare each row with what the code writes and reads
//! today, so that reordering or renaming a variant or a field fails. The generator of the property tests and
//! [`FOLD_SHA256`] draw on the same rows.
//!
//! To add a variant, add it at the end of its enum; the `match` in `frozen!` does not compile until the variant
//! has a row. Write the row with two empty literals and run the tests: they report what to write there, to be
//! checked by eye. A new stored type gets a block of its own.
//!
//! Only tests use this module, but for [`FOLD_SHA256`]; nothing in the app may, or the rows become part of it.

mod fact;
mod failure;
mod folded;
mod heat;
mod history;
mod ink;
mod job;
mod prelude;
mod run;
mod screen;
mod stencil;
mod units;

pub use fact::subject_of;
pub use folded::FOLD_SHA256;
pub use history::history;

use crate::codec::{Encode, from_bytes, to_bytes};
use crate::facts::Fact;
use serde::Serialize;
use serde::de::DeserializeOwned;
use std::fmt::{Debug, Write};

/// A sample of one variant of a stored enum, or of a stored struct.
#[derive(Clone, Debug)]
pub struct Row {
    /// Name of the stored type.
    pub type_name: &'static str,
    /// Name of the variant; empty for a struct.
    pub variant: &'static str,
    /// Number of the variant in packed bytes; `None` for a struct.
    pub number: Option<u32>,
    /// The frozen JSON.
    pub json: &'static str,
    /// The frozen packed bytes, in hexadecimal.
    pub packed: &'static str,
    /// The sample as this version writes it: JSON, and packed bytes in hexadecimal.
    pub written: [String; 2],
    /// Whether this version reads the sample back from the frozen JSON, and from the frozen packed bytes.
    pub reads: [bool; 2],
    /// A fact that holds the sample.
    pub fact: Fact,
}

impl Row {
    fn new<T>(sample: T, name: (&'static str, &'static str, Option<u32>), frozen: [&'static str; 2], fact: Fact) -> Self
    where
        T: Serialize + DeserializeOwned + Encode + PartialEq + Debug,
    {
        let [json, packed] = frozen;
        let written = [serde_json::to_string(&sample).unwrap_or_default(), hex(&to_bytes(&sample))];
        let from_json = serde_json::from_str::<T>(json).is_ok_and(|read| read == sample);
        let from_packed = unhex(packed).and_then(|bytes| from_bytes::<T>(&bytes)).is_some_and(|read| read == sample);
        let (type_name, variant, number) = name;
        Self { type_name, variant, number, json, packed, written, reads: [from_json, from_packed], fact }
    }
}

/// Bytes in hexadecimal.
pub fn hex(bytes: &[u8]) -> String {
    bytes.iter().fold(String::new(), |mut text, byte| {
        let _ = write!(text, "{byte:02x}");
        text
    })
}

fn unhex(text: &str) -> Option<Vec<u8>> {
    let digits: Vec<u32> = text.chars().map(|digit| digit.to_digit(16)).collect::<Option<_>>()?;
    let (pairs, []) = digits.as_chunks::<2>() else { return None };
    Some(pairs.iter().map(|[high, low]| (high << 4 | low) as u8).collect())
}

/// Declares the rows of stored types. `enum Type, fact => { number Variant… => json, packed; }` lists every variant
/// of an enum, one or more samples each; `struct Type, fact => { value => json, packed; }` lists samples of a
/// struct, which name each of its fields. `fact` makes a fact that holds the sample.
macro_rules! frozen {
    ($($kind:ident $type:ident, $fact:expr => { $($rows:tt)* })*) => {
        pub(super) fn rows() -> Vec<super::Row> {
            let mut rows = Vec::new();
            $(frozen!(@$kind rows, $type, $fact, $($rows)*);)*
            rows
        }
    };
    (@enum $out:ident, $type:ident, $fact:expr, $(
        $number:literal $variant:ident $(($($args:tt)*))? $({$($fields:tt)*})? => $json:literal, $packed:literal;
    )* $(skip $skipped:ident;)?) => {{
        // A variant without a row does not compile.
        #[allow(unreachable_patterns, reason = "a variant may have several samples")]
        fn number(value: &$type) -> Option<u32> {
            match value {
                $($type::$variant { .. } => Some($number),)*
                $($type::$skipped { .. } => None,)?
            }
        }
        $({
            let sample = $type::$variant $(($($args)*))? $({$($fields)*})?;
            let name = (stringify!($type), stringify!($variant), number(&sample));
            $out.push(super::Row::new(sample.clone(), name, [$json, $packed], ($fact)(sample)));
        })*
    }};
    (@struct $out:ident, $type:ident, $fact:expr, $($value:expr => $json:literal, $packed:literal;)*) => {
        $({
            let sample: $type = $value;
            $out.push(super::Row::new(sample.clone(), (stringify!($type), "", None), [$json, $packed], ($fact)(sample)));
        })*
    };
}
use frozen;

/// All rows, always in the same order.
pub fn rows() -> Vec<Row> {
    [
        fact::rows(),
        job::rows(),
        run::rows(),
        units::rows(),
        heat::rows(),
        screen::rows(),
        stencil::rows(),
        failure::rows(),
        ink::rows(),
    ]
    .concat()
}
