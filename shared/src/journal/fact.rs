//! What the journal asks of the facts in it.

use crate::codec::Encode;
use serde::Serialize;
use serde::de::DeserializeOwned;
use serde_json::Value;
use serde_json::value::RawValue;
use std::fmt::Debug;

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
        let kind = match serde_json::from_str(json).ok()? {
            Value::String(kind) => kind,
            Value::Object(map) if map.len() == 1 => map.into_iter().next()?.0,
            Value::Null | Value::Bool(_) | Value::Number(_) | Value::Array(_) | Value::Object(_) => return None,
        };
        Some(Self::unknown(kind, json.to_owned()))
    }

    /// The fact as this version knows it: one that was stored as [unknown](Self::unknown) by an older version is
    /// read again. Anything else, and what is still unknown or out of bounds, is returned as it is.
    #[must_use]
    fn recognized(self) -> Self {
        let read = self.as_unknown().and_then(|(_, body)| Self::from_json(body));
        read.filter(|fact| fact.as_unknown().is_none() && fact.in_bounds()).unwrap_or(self)
    }
}
