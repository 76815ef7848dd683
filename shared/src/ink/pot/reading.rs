//! The latest reading of a pot, how it was viewed, and what was added since.

use super::contents::Contents;
use super::replay::{PotState, replay};
use crate::colour::{Constants, Lab, Origin, Print, Reflectance, Surface, Viewing, anchored_to_colour, smoothest};
use crate::facts::{ColourReading, Fact, InkFact, ReadOn, lab_of};
use crate::heat::ink_key;
use crate::ids::{LotId, RunId, Subject};
use crate::plan::open_runs;
use crate::shop::Shop;
use crate::time::WallTime;

/// What an event added to a pot.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) enum Added {
    Nothing,
    Component {
        component: Subject,
        grams: f64,
    },
    /// Ink of another pot.
    Ink,
}

/// A pot just after an event.
#[derive(Clone, Debug)]
pub(crate) struct PotSnapshot {
    pub(crate) event: Subject,
    pub(crate) at: WallTime,
    pub(crate) contents: Contents,
    pub(crate) reading: Option<ColourReading>,
    pub(crate) added: Added,
    /// Whether this event found the pot to match, with the contents as they are recorded now.
    pub(crate) matched: bool,
}

/// A pot's current state, and its state after each of its events.
pub(crate) fn snapshots(shop: &Shop, pot: Subject) -> (PotState, Vec<PotSnapshot>) {
    let mut snapshots: Vec<PotSnapshot> = Vec::new();
    let mut watch = |of: Subject, event: Subject, state: &PotState| {
        let Some(row) = shop.ink.event(event).filter(|_| of == pot) else { return };
        let (reading, added) = match &row.fact {
            InkFact::Poured { component, grams, reading, .. } => {
                (*reading, Added::Component { component: *component, grams: grams.grams() })
            }
            InkFact::Moved { to, .. } if *to == pot => (None, Added::Ink),
            InkFact::SwatchRead { reading, .. } => (Some(*reading), Added::Nothing),
            // A match or approval repeats the reading before it, which is recorded already: undoing that must be
            // enough.
            InkFact::ComponentSet(_)
            | InkFact::RecipeSet(_)
            | InkFact::PotSet(_)
            | InkFact::ScaleSet { .. }
            | InkFact::PrintSet(_)
            | InkFact::GarmentRead(_)
            | InkFact::RevisionSaved { .. }
            | InkFact::Resized { .. }
            | InkFact::Accepted { .. }
            | InkFact::Moved { .. }
            | InkFact::Wasted { .. }
            | InkFact::Used { .. }
            | InkFact::Matched { .. }
            | InkFact::Approved { .. }
            | InkFact::Delivered { .. }
            | InkFact::Counted { .. }
            | InkFact::DrawnDown(_) => (None, Added::Nothing),
        };
        let matched = state.matched == Some(event);
        snapshots.push(PotSnapshot { event, at: row.at, contents: state.contents.clone(), reading, added, matched });
    };
    let state = replay(shop, &[pot], &mut watch).remove(&pot).unwrap_or_default();
    (state, snapshots)
}

/// The latest reading of a pot.
#[derive(Clone, Debug, PartialEq)]
pub struct PotReading {
    /// Its event.
    pub event: Subject,
    /// Wall time.
    pub at: WallTime,
    /// The reading.
    pub reading: ColourReading,
    /// Number of additions to the pot since.
    pub since: u32,
}

/// The last reading among `snapshots`, and what the pot held then.
pub(crate) fn last_reading(snapshots: &[PotSnapshot]) -> Option<(PotReading, &Contents)> {
    let index = snapshots.iter().rposition(|snapshot| snapshot.reading.is_some())?;
    let snapshot = snapshots.get(index)?;
    let since = snapshots.iter().skip(index + 1).filter(|snapshot| snapshot.added != Added::Nothing).count() as u32;
    let reading = PotReading { event: snapshot.event, at: snapshot.at, reading: snapshot.reading?, since };
    Some((reading, &snapshot.contents))
}

/// The latest reading of a pot, if nothing was added since: what a match or an approval is based on.
pub fn reading_now(shop: &Shop, pot: Subject) -> Option<ColourReading> {
    let (_, snapshots) = snapshots(shop, pot);
    last_reading(&snapshots).filter(|(last, _)| last.since == 0).map(|(last, _)| last.reading)
}

/// Adds to each approval of a pot among `facts` that pot's current reading.
pub fn with_reading(shop: &Shop, mut facts: Vec<(Subject, Fact)>) -> Vec<(Subject, Fact)> {
    for (_, fact) in &mut facts {
        if let Fact::Ink(InkFact::Approved { pot: Some(pot), reading, .. }) = fact {
            *reading = reading.or_else(|| reading_now(shop, *pot));
        }
    }
    facts
}

/// A garment as the surface that an ink is printed on.
#[derive(Clone, Debug, PartialEq)]
pub struct Garment {
    /// Its lot, if it belongs to one.
    pub lot: Option<LotId>,
    /// Name of its colour; empty if unknown.
    pub name: String,
    /// Its colour.
    pub colour: Lab,
    /// Whether the colour was read; otherwise it is the one shown on screen.
    pub read: bool,
}

/// The garment of a lot; `None` if its colour is unknown.
pub fn garment_of(shop: &Shop, id: LotId) -> Option<Garment> {
    let lot = shop.lot(id)?;
    let read = shop.ink.garment(id);
    let colour = read.map(lab_of).or_else(|| lot.colour.map(Lab::of))?;
    Some(Garment { lot: Some(id), name: lot.colour_name.clone(), colour, read: read.is_some() })
}

/// How a pot's swatches are viewed.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct ViewingConditions {
    pub(crate) on: ReadOn,
    pub(crate) garment: Option<Garment>,
    hits: u8,
    cloth: Reflectance,
}

/// The run that a pot is for, else the first open run with its ink.
fn run_of(shop: &Shop, pot: Subject, recipe: Option<Subject>) -> Option<RunId> {
    let of_pot = shop.ink.pot(pot).and_then(|pot| pot.run);
    of_pot.or_else(|| {
        let name = ink_key(&shop.ink.recipe(recipe?)?.name);
        open_runs(shop).into_iter().find(|run| shop.run(*run).is_some_and(|run| ink_key(&run.ink) == name))
    })
}

impl ViewingConditions {
    /// As the pot's recipe specifies; thick if no garment is known.
    pub(crate) fn of(shop: &Shop, pot: Subject, recipe: Option<Subject>) -> Self {
        let run = run_of(shop, pot, recipe).and_then(|id| shop.run(id));
        let garment = run.and_then(|run| run.lot).and_then(|lot| garment_of(shop, lot));
        let wished = recipe.and_then(|id| shop.ink.recipe(id)).map(|recipe| recipe.read_on).unwrap_or_default();
        let on = if garment.is_some() { wished } else { ReadOn::Thick };
        let seen_through = match on {
            ReadOn::Garment => garment.as_ref(),
            ReadOn::Thick => None,
        };
        let cloth = seen_through.map_or(Reflectance::flat(0.0), |garment| smoothest(garment.colour).reflectance);
        Self { on, garment, hits: run.map_or(1, |run| run.set_up.hits.clamp(1, 6)), cloth }
    }

    pub(crate) fn hits(&self) -> u8 {
        self.hits
    }

    pub(crate) fn seen(&self) -> Viewing<'_> {
        match self.on {
            ReadOn::Thick => Viewing::InBulk(Surface::NONE),
            ReadOn::Garment => Viewing::Printed(Print {
                garment: &self.cloth,
                underbase: None,
                hits: self.hits,
                films_per_hit: 1.0,
                surface: Surface::NONE,
            }),
        }
    }
}

/// Constants of a pot now, corrected by an earlier reading: absorption K(λ) is scaled by the factor that anchors the
/// mixture of that time (`then`) to its reading. Also returns the difference that remains unexplained, CIEDE2000.
pub(crate) fn anchor_to_reading(
    now: &Constants,
    then: &Constants,
    seen: Viewing,
    reading: ColourReading,
) -> (Constants, f64) {
    let anchored = anchored_to_colour(then, seen, lab_of(reading));
    let mut held = *now;
    for (band, k) in held.k.iter_mut().enumerate() {
        let factor = anchored.constants.k.get(band).zip(then.k.get(band)).map_or(1.0, |(to, from)| to / (from + 1e-6));
        *k = (*k + 1e-6) * factor;
    }
    // If nothing was added since, the pot is what was read.
    if now == then {
        held = anchored.constants;
    }
    held.origin = held.origin.and(Origin::Reconstructed);
    (held, anchored.residual)
}

/// The grams of each component of a pot.
pub(crate) fn weights_of(contents: &Contents) -> Vec<(Subject, f64)> {
    contents.rows().into_iter().map(|(id, grams)| (id, grams.grams())).collect()
}
