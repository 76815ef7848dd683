//! How long must this screen be exposed?

use super::distance::time_at_distance;
use crate::collections::sort_by_key;
use crate::facts::{Coats, ExposureMethod, LampKind, MeshCloth};
use crate::ids::Subject;
use crate::screen::KnownExposure;
use crate::shop::Shop;
use crate::time::WallTime;
use crate::units::{Length, Seconds};
use std::cmp::Reverse;

/// A query for an exposure time.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ExposureQuery {
    /// The emulsion.
    pub emulsion: Subject,
    /// The mesh.
    pub cloth: MeshCloth,
    /// How the screen was coated, if that is known.
    pub coats: Option<Coats>,
    /// The lamp.
    pub lamp: Subject,
}

/// A known exposure, for display.
#[derive(Clone, Debug, PartialEq)]
pub struct ExposureRow {
    /// The exposure's id.
    pub id: Subject,
    /// Name of the emulsion; empty if the emulsion's facts have not arrived.
    pub emulsion: String,
    /// Name of the lamp; empty if its facts have not arrived.
    pub lamp: String,
    /// Distance from the lamp to the emulsion.
    pub distance: Option<Length>,
    /// The mesh.
    pub cloth: MeshCloth,
    /// How the screen was coated.
    pub coats: Option<Coats>,
    /// The exposure time.
    pub time: Seconds,
    /// How it was found.
    pub found: ExposureMethod,
    /// Whether it was confirmed on a stencil, not only computed.
    pub tested: bool,
    /// Who found it.
    pub by: Option<String>,
    /// When it was recorded, as wall time.
    pub at: WallTime,
    /// Free notes.
    pub note: String,
    /// Whether it is the latest for its emulsion, mesh, coats, lamp and distance.
    pub newest: bool,
}

/// How the nearest known exposure differs from the query.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ExposureDifference {
    /// Another lamp: its time says little.
    Lamp,
    /// The lamp hung at another distance.
    Distance,
    /// Dyed mesh instead of undyed, or the reverse.
    Dyed,
    /// Another mesh count.
    Count,
    /// Another thread diameter, or one that is not known.
    Thread,
    /// Other coats.
    Coats,
}

/// The answer to [`ExposureQuery`].
#[derive(Clone, Debug, PartialEq)]
pub enum ExposureAnswer {
    /// An exposure for exactly this combination.
    Known(ExposureRow),
    /// No exposure for this combination: the nearest known one, which must be tested.
    Nearest {
        /// The nearest.
        row: ExposureRow,
        /// How it differs.
        differs: Vec<ExposureDifference>,
        /// If only the distance of a point lamp differs: the time computed for the new distance.
        scaled: Option<Seconds>,
    },
    /// No exposure with this emulsion is known: a test is needed.
    Unknown,
}

/// The exposure for a query. Only exposures with the same emulsion are considered. The nearest is chosen
/// by: same lamp, same distance, same dye, nearest mesh count, same thread, same coats, tested before
/// computed, latest first. Our own order.
pub fn exposure_for(shop: &Shop, query: &ExposureQuery) -> ExposureAnswer {
    let log = &shop.exposure_log;
    let mut known: Vec<_> = log.exposures().filter(|(_, known)| known.fact.emulsion == query.emulsion).collect();
    let inch = |cloth: &MeshCloth| cloth.count.per_inch();
    sort_by_key(&mut known, |(id, known)| {
        let differs = differences(shop, query, known);
        let has = |difference| differs.contains(&difference);
        (
            (has(ExposureDifference::Lamp), has(ExposureDifference::Distance), has(ExposureDifference::Dyed)),
            (
                inch(&known.fact.cloth).abs_diff(inch(&query.cloth)),
                has(ExposureDifference::Count),
                has(ExposureDifference::Thread),
            ),
            (has(ExposureDifference::Coats), known.fact.coats != query.coats, !known.fact.found.is_tested()),
            (Reverse(known.at), *id),
        )
    });
    let Some((id, known)) = known.first() else { return ExposureAnswer::Unknown };
    let differs = differences(shop, query, known);
    let row = row_of(shop, *id, known);
    if differs.is_empty() {
        return ExposureAnswer::Known(row);
    }
    let scaled = match (differs.as_slice(), known.fact.distance, log.lamp(query.lamp)) {
        ([ExposureDifference::Distance], Some(from), Some(lamp)) => {
            lamp.distance.and_then(|to| time_at_distance(lamp.kind, known.fact.time, from, to).ok())
        }
        _ => None,
    };
    ExposureAnswer::Nearest { row, differs, scaled }
}

/// How a known exposure differs from the query. A distance or coats that only one of the two states are no
/// difference: a shop that always coats the same way need not enter it.
fn differences(shop: &Shop, query: &ExposureQuery, known: &KnownExposure) -> Vec<ExposureDifference> {
    let fact = &known.fact;
    let lamp = shop.exposure_log.lamp(query.lamp);
    let now = lamp.filter(|lamp| lamp.kind != LampKind::Contact).and_then(|lamp| lamp.distance);
    let same_lamp = fact.lamp == query.lamp;
    let unlike = |a: Option<Length>, b: Option<Length>| a.zip(b).is_some_and(|(a, b)| a != b);
    let mut differs = Vec::new();
    let mut note = |is: bool, difference| {
        if is {
            differs.push(difference);
        }
    };
    note(!same_lamp, ExposureDifference::Lamp);
    note(same_lamp && unlike(fact.distance, now), ExposureDifference::Distance);
    note(fact.cloth.dyed != query.cloth.dyed, ExposureDifference::Dyed);
    note(fact.cloth.count != query.cloth.count, ExposureDifference::Count);
    note(fact.cloth.thread_um != query.cloth.thread_um, ExposureDifference::Thread);
    note(fact.coats.zip(query.coats).is_some_and(|(a, b)| a != b), ExposureDifference::Coats);
    differs
}

fn row_of(shop: &Shop, id: Subject, known: &KnownExposure) -> ExposureRow {
    let (log, fact) = (&shop.exposure_log, &known.fact);
    let same = |other: &KnownExposure| {
        let other = &other.fact;
        (other.emulsion, other.lamp, other.distance, other.cloth, other.coats)
            == (fact.emulsion, fact.lamp, fact.distance, fact.cloth, fact.coats)
    };
    let newest = !log.exposures().any(|(other_id, other)| same(other) && (other.at, other_id) > (known.at, id));
    ExposureRow {
        id,
        emulsion: log.emulsion(fact.emulsion).map(|emulsion| emulsion.name.clone()).unwrap_or_default(),
        lamp: log.lamp(fact.lamp).map(|lamp| lamp.name.clone()).unwrap_or_default(),
        distance: fact.distance,
        cloth: fact.cloth,
        coats: fact.coats,
        time: fact.time,
        found: fact.found,
        tested: fact.found.is_tested(),
        by: fact.by.clone(),
        at: known.at,
        note: fact.note.clone(),
        newest,
    }
}

/// All known exposures, the latest first.
pub fn exposure_list(shop: &Shop) -> Vec<ExposureRow> {
    let mut rows: Vec<_> = shop.exposure_log.exposures().map(|(id, known)| row_of(shop, id, known)).collect();
    sort_by_key(&mut rows, |row| (Reverse(row.at), row.id));
    rows
}
