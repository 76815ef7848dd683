//! What the journal asks of the facts in it.

use crate::bounds::LONGEST_LINE;
use crate::codec::Encode;
use serde::Serialize;
use serde::de::DeserializeOwned;
use serde_json::Value;
use serde_json::value::RawValue;
use std::fmt::Debug;

/// Most bytes of a line that are not the fact: two ids, numbers, and the names of the fields.
const WRAPPER: usize = 320;

/// Length of packed facts that surely fit into a line, in bytes: a byte is at most a name of a variant and one of a
/// field, which are shorter than forty letters each.
const SURELY_FITS: usize = LONGEST_LINE / 80 - 16;

/// The name of a fact in JSON: `"name"` or `{"name": …}`.
fn kind_of(json: &str) -> Option<String> {
    match serde_json::from_str(json).ok()? {
        Value::String(kind) => Some(kind),
        Value::Object(map) if map.len() == 1 => Some(map.into_iter().next()?.0),
        Value::Null | Value::Bool(_) | Value::Number(_) | Value::Array(_) | Value::Object(_) => None,
    }
}

/// A kind of fact that a journal can hold: an enum with one variant for each thing that can happen, and
/// one that keeps what only a newer version knows.
///
/// In JSON a known fact is what serde makes of the enum: `"name"` or `{"name": …}`.
pub trait JournalFact: Encode + Serialize + DeserializeOwned + Clone + Debug + PartialEq {
    /// A fact of a newer version: its name and its JSON, kept byte for byte.
    fn unknown(kind: String, body: String) -> Self;

    /// Name and JSON of a fact of a newer version; `None` for one that this version knows.
    fn as_unknown(&self) -> Option<(&String, &String)>;

    /// Whether every name, list and number is of a size that a device records. Files from
    /// elsewhere are checked with it before anything is stored.
    fn in_bounds(&self) -> bool;

    /// The fact as JSON. An unknown fact is returned as it was received.
    fn to_json(&self) -> Box<RawValue> {
        let text = match self.as_unknown() {
            Some((_, body)) => body.clone(),
            None => serde_json::to_string(self).unwrap_or_else(|_| "null".into()),
        };
        RawValue::from_string(text).unwrap_or_default()
    }

    /// Reads a fact. A kind this version does not know, or knows with fewer fields, is kept as
    /// [unknown](Self::unknown). `None` if the JSON does not have the shape of a fact at all.
    fn from_json(json: &str) -> Option<Self> {
        if let Ok(known) = serde_json::from_str(json) {
            return Some(known);
        }
        Some(Self::unknown(kind_of(json)?, json.to_owned()))
    }

    /// The fact as it is stored: one that holds anything added after version 1.0 as [unknown](Self::unknown), with its
    /// JSON, so that an older version keeps it instead of finding damage; others as they are.
    #[must_use]
    fn stored_form(self) -> Self {
        if !self.is_new() {
            return self;
        }
        let json = self.to_json();
        kind_of(json.get()).map_or(self, |kind| Self::unknown(kind, json.get().to_owned()))
    }

    /// Whether a device may record it: it is in bounds, and its line is not longer than a file may hold.
    fn can_be_recorded(&self) -> bool {
        self.in_bounds() && self.to_json().get().len() <= LONGEST_LINE - WRAPPER
    }

    /// Whether [`can_be_recorded`](Self::can_be_recorded) and [`stored_form`](Self::stored_form) say that it is recorded
    /// as it is, without writing its JSON.
    fn is_plain(&self) -> bool {
        !self.is_new() && crate::codec::to_bytes(self).len() <= SURELY_FITS
    }

    /// The fact as this version knows it: one that was stored as [unknown](Self::unknown) by an older version is
    /// read again. Anything else, and what is still unknown or out of bounds, is returned as it is.
    #[must_use]
    fn recognized(self) -> Self {
        let read = self.as_unknown().and_then(|(_, body)| Self::from_json(body));
        read.filter(|fact| fact.as_unknown().is_none() && fact.in_bounds()).unwrap_or(self)
    }
}
