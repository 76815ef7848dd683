//! A build of an older version beside a newer one, on one journal.

use lastpull_core::codec::{Encode, to_bytes};
use lastpull_core::facts::frozen::{history, rows};
use lastpull_core::facts::{Entry as ShopEntry, Fact};
use lastpull_core::ids::RunId;
use lastpull_core::journal::record::{self, BytesProblem};
use lastpull_core::journal::{Entry, JournalFact, Packed, Stamp, segment};
use lastpull_core::plan::order_fact;
use lastpull_core::time::WallTime;
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;
use uuid::Uuid;

/// The facts of version 1.0.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, Encode)]
#[serde(rename_all = "snake_case")]
enum Older {
    Pulled(u32),
    Stopped(OlderCause),
    #[serde(skip)]
    Unknown {
        kind: String,
        body: String,
    },
}

#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, Encode)]
#[serde(rename_all = "snake_case")]
enum OlderCause {
    Ink,
}

/// The facts of a later version: a fact more, and a cause more.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, Encode)]
#[serde(rename_all = "snake_case")]
enum Newer {
    Pulled(u32),
    Stopped(NewerCause),
    #[encode(new)]
    Engraved {
        depth: Option<u32>,
    },
    #[serde(skip)]
    Unknown {
        kind: String,
        body: String,
    },
}

#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, Encode)]
#[serde(rename_all = "snake_case")]
enum NewerCause {
    Ink,
    #[encode(new)]
    Laser,
}

macro_rules! journal_fact {
    ($of:ident) => {
        impl JournalFact for $of {
            fn unknown(kind: String, body: String) -> Self {
                Self::Unknown { kind, body }
            }

            fn as_unknown(&self) -> Option<(&String, &String)> {
                if let Self::Unknown { kind, body } = self { Some((kind, body)) } else { None }
            }

            fn in_bounds(&self) -> bool {
                true
            }
        }
    };
}
journal_fact!(Older);
journal_fact!(Newer);

fn entries<F>(facts: Vec<F>) -> Vec<Entry<F>> {
    let entry = |(at, fact): (usize, F)| {
        let wall = WallTime::from_unix_ms(at as u64 * 40_000);
        let stamp = Stamp { wall, counter: 0 };
        Entry { device: Uuid::from_u128(1), seq: at as u64 + 1, stamp, at: wall, subject: Uuid::from_u128(2), fact }
    };
    facts.into_iter().enumerate().map(entry).collect()
}

fn newer() -> Vec<Entry<Newer>> {
    entries(vec![
        Newer::Pulled(1),
        Newer::Engraved { depth: Some(7) },
        Newer::Stopped(NewerCause::Ink),
        Newer::Stopped(NewerCause::Laser),
    ])
}

fn unknown(kind: &str, body: &str) -> Older {
    Older::Unknown { kind: kind.into(), body: body.into() }
}

/// What the older version knows of the facts.
fn as_older() -> Vec<Entry<Older>> {
    entries(vec![
        Older::Pulled(1),
        unknown("engraved", r#"{"engraved":{"depth":7}}"#),
        Older::Stopped(OlderCause::Ink),
        unknown("stopped", r#"{"stopped":"laser"}"#),
    ])
}

#[test]
fn what_a_newer_version_stored_is_read_by_the_older_one_and_by_itself() {
    let stored: Vec<Entry<Newer>> = newer().into_iter().map(Entry::stored_form).collect();
    for (entry, older) in stored.iter().zip(as_older()) {
        assert_eq!(record::decode(&record::encode(entry)).as_ref(), Ok(&older));
        let again: Entry<Newer> = record::decode(&record::encode(&older)).unwrap();
        assert_eq!(again.recognized(), newer()[older.seq as usize - 1]);
    }
    assert_eq!(segment::unpack::<Older>(&Packed::sorted(&stored).segments()[0].bytes), Ok(as_older()));
}

/// How many variants each stored enum has in version 1.0. Before 1.0, a number is raised with each new variant; from then
/// on none is, and a new variant, like every one of a new enum, is marked `#[encode(new)]`.
const OF_VERSION_1_0: [(&str, u32); 55] = [
    ("BatchSize", 2),
    ("BatchTime", 3),
    ("BathField", 3),
    ("CheckItem", 15),
    ("CheckOutcome", 6),
    ("ComponentField", 11),
    ("ComponentKind", 3),
    ("EmulsionField", 3),
    ("Expected", 10),
    ("ExposureMethod", 4),
    ("Fabric", 7),
    ("Fact", 27),
    ("FailureFact", 2),
    ("FailureField", 10),
    ("FailureKind", 8),
    ("Family", 3),
    ("Film", 2),
    ("HeatFact", 12),
    ("HeaterField", 6),
    ("HeaterKind", 2),
    ("Hiding", 2),
    ("InkFact", 19),
    ("JobField", 6),
    ("LampField", 3),
    ("LampKind", 4),
    ("LimitKind", 2),
    ("Location", 11),
    ("LotField", 6),
    ("MeshCount", 2),
    ("MisprintCause", 9),
    ("PhotoFact", 2),
    ("PotField", 8),
    ("PourStep", 3),
    ("ReadBy", 3),
    ("ReadOn", 2),
    ("RecipeField", 5),
    ("RecordedLayer", 2),
    ("Remedy", 4),
    ("RunField", 17),
    ("ScreenFact", 6),
    ("ScreenField", 9),
    ("ScreenState", 8),
    ("SensorMethod", 3),
    ("SheetField", 7),
    ("Size", 15),
    ("StencilFact", 8),
    ("StopCause", 7),
    ("SwatchMeasurement", 3),
    ("TestField", 11),
    ("TestKind", 3),
    ("TestMethod", 5),
    ("TestResult", 3),
    ("TrialField", 13),
    ("TrialVerdict", 4),
    ("Verdict", 2),
];

#[test]
fn what_was_added_after_version_1_0_is_marked_as_new_and_nothing_else() {
    let of_version_1_0: BTreeMap<&str, u32> = OF_VERSION_1_0.into();
    if env!("CARGO_PKG_VERSION").starts_with("0.") {
        let marked: Vec<_> = rows().into_iter().filter(|row| row.fact.is_new()).map(|row| row.variant).collect();
        assert!(marked.is_empty(), "{marked:?}: there is no version 1.0 yet, so nothing is new since");
    }
    for row in rows() {
        let Some(number) = row.number else { continue };
        let is_later = of_version_1_0.get(row.type_name).is_none_or(|variants| number >= *variants);
        let is_marked = row.fact.is_new();
        let what_to_do = if env!("CARGO_PKG_VERSION").starts_with("0.") {
            "before version 1.0, raise the number of its enum in OF_VERSION_1_0 and mark nothing"
        } else {
            "mark it #[encode(new)]"
        };
        assert_eq!(is_marked, is_later, "{} {}: {what_to_do}", row.type_name, row.variant);
        assert_eq!(row.fact.clone().stored_form() == row.fact, !is_later);
    }
    assert_eq!(Newer::Pulled(1).stored_form(), Newer::Pulled(1));
}

#[test]
fn a_variant_of_a_newer_version_is_not_taken_for_damage() {
    for at in [1, 3] {
        let bytes = record::encode(&newer()[at]);
        assert_eq!(record::decode::<Older>(&bytes), Err(BytesProblem::Newer(record::VERSION)));
        let mut damaged = bytes;
        damaged.pop();
        assert!(record::decode::<Older>(&damaged).is_err());
    }
    assert_eq!(
        segment::unpack::<Older>(&Packed::sorted(&newer()).segments()[0].bytes),
        Err(BytesProblem::Newer(segment::VERSION))
    );
    let mut far = record::encode(&newer()[0]);
    let variant = far.len() - 2;
    far[variant] = 120;
    assert_eq!(record::decode::<Older>(&far), Err(BytesProblem::Damaged));
}

#[test]
fn a_fact_whose_line_no_file_could_hold_is_not_recorded() {
    let runs = |count: u128| (0..count).map(Uuid::from_u128).collect::<Vec<RunId>>();
    let fits = |fact: Fact| {
        let [entry] = [ShopEntry { fact: fact.clone(), ..history()[0].clone() }];
        let device = Uuid::from_u128(u128::MAX);
        let wall = WallTime::from_unix_ms(16_725_225_600_000);
        let stamp = Stamp { wall, counter: u32::MAX };
        let widest = ShopEntry { device, subject: device, seq: 1 << 42, stamp, at: WallTime::from_unix_ms(1), ..entry };
        assert_eq!(ShopEntry::from_line(&widest.to_line()).is_ok(), fact.can_be_recorded());
        fact.can_be_recorded()
    };
    assert!(!fits(Fact::RunsOrdered(runs(1_700))));
    assert!(fits(order_fact(&runs(1_700))));
    assert!(fits(Fact::RunEnded));
}

#[test]
fn facts_that_are_short_in_packed_form_are_short_in_a_file() {
    for row in rows() {
        let packed = to_bytes(&row.fact).len();
        assert!(row.fact.to_json().get().len() <= 80 * packed, "{} {}", row.type_name, row.variant);
        assert!(!row.fact.is_plain() || row.fact.can_be_recorded());
    }
}
