//! What was a pot read as, on what, and what went in since?

use super::contents::Contents;
use super::replay::{PotState, replay};
use crate::colour::{Constants, Lab, Origin, Print, Reflectance, Seen, Surface, anchored_to_colour, smoothest};
use crate::facts::{ColourReading, Fact, InkFact, ReadOn, lab_of};
use crate::heat::ink_key;
use crate::ids::{LotId, RunId, Subject};
use crate::plan::open_runs;
use crate::shop::Shop;

/// A pot just after something happened to it.
#[derive(Clone, Debug)]
pub(crate) struct Moment {
    pub(crate) event: Subject,
    pub(crate) at: u64,
    pub(crate) contents: Contents,
    pub(crate) reading: Option<ColourReading>,
    /// What went in, where anything did: which component, how many grams. None of it for ink of another pot.
    pub(crate) poured: Option<Option<(Subject, f64)>>,
    /// Whether it was found to match just then, with what is in it as it is told now.
    pub(crate) matched: bool,
}

/// A pot as it stands, and all that happened to it.
pub(crate) fn moments(shop: &Shop, pot: Subject) -> (PotState, Vec<Moment>) {
    let mut moments: Vec<Moment> = Vec::new();
    let mut watch = |of: Subject, event: Subject, state: &PotState| {
        let Some(row) = shop.ink.event(event).filter(|_| of == pot) else { return };
        let (reading, poured) = match &row.fact {
            InkFact::Poured { component, grams, reading, .. } => (*reading, Some(Some((*component, grams.grams())))),
            InkFact::Moved { to, .. } => (None, (*to == pot).then_some(None)),
            InkFact::SwatchRead { reading, .. } => (Some(*reading), None),
            // What a match or a yes names is the reading before it, told once already: taking that back is enough.
            InkFact::ComponentSet(_)
            | InkFact::RecipeSet(_)
            | InkFact::PotSet(_)
            | InkFact::ScaleSet { .. }
            | InkFact::PrintSet(_)
            | InkFact::GarmentRead(_)
            | InkFact::RevisionSaved { .. }
            | InkFact::Resized { .. }
            | InkFact::Accepted { .. }
            | InkFact::Wasted { .. }
            | InkFact::Used { .. }
            | InkFact::Matched { .. }
            | InkFact::Approved { .. }
            | InkFact::Delivered { .. }
            | InkFact::Counted { .. }
            | InkFact::DrawnDown(_) => (None, None),
        };
        let matched = state.matched == Some(event);
        moments.push(Moment { event, at: row.at, contents: state.contents.clone(), reading, poured, matched });
    };
    let state = replay(shop, &[pot], &mut watch).remove(&pot).unwrap_or_default();
    (state, moments)
}

/// The reading of a pot that tells most about it.
#[derive(Clone, Debug, PartialEq)]
pub struct PotReading {
    /// Its event.
    pub event: Subject,
    /// Wall time.
    pub at: u64,
    /// What was read.
    pub reading: ColourReading,
    /// How many times something went into the pot since.
    pub since: u32,
}

/// The last reading among moments, and what the pot held then.
pub(crate) fn last_reading(moments: &[Moment]) -> Option<(PotReading, &Contents)> {
    let place = moments.iter().rposition(|moment| moment.reading.is_some())?;
    let moment = moments.get(place)?;
    let since = moments.iter().skip(place + 1).filter(|moment| moment.poured.is_some()).count() as u32;
    let reading = PotReading { event: moment.event, at: moment.at, reading: moment.reading?, since };
    Some((reading, &moment.contents))
}

/// What a pot was read as, while nothing went in since: what a match or a yes rests on.
pub fn reading_now(shop: &Shop, pot: Subject) -> Option<ColourReading> {
    let (_, moments) = moments(shop, pot);
    last_reading(&moments).filter(|(last, _)| last.since == 0).map(|(last, _)| last.reading)
}

/// The same facts, where one is a yes from a pot, with what that pot was read as.
pub fn with_reading(shop: &Shop, mut facts: Vec<(Subject, Fact)>) -> Vec<(Subject, Fact)> {
    for (_, fact) in &mut facts {
        if let Fact::Ink(InkFact::Approved { pot: Some(pot), reading, .. }) = fact {
            *reading = reading.or_else(|| reading_now(shop, *pot));
        }
    }
    facts
}

/// A garment as an ink lies on it.
#[derive(Clone, Debug, PartialEq)]
pub struct Garment {
    /// The lot it is of, where it is of one.
    pub lot: Option<LotId>,
    /// What its colour is called; empty where nobody said.
    pub name: String,
    /// Its colour.
    pub colour: Lab,
    /// Whether that was read; else it is the colour a screen shows for it.
    pub read: bool,
}

/// The garments of a lot; none where their colour is not known.
pub fn garment_of(shop: &Shop, id: LotId) -> Option<Garment> {
    let lot = shop.lot(id)?;
    let read = shop.ink.garment(id);
    let colour = read.map(lab_of).or_else(|| lot.colour.map(Lab::of))?;
    Some(Garment { lot: Some(id), name: lot.colour_name.clone(), colour, read: read.is_some() })
}

/// Where a pot's swatches are looked at.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Ground {
    pub(crate) on: ReadOn,
    pub(crate) garment: Option<Garment>,
    hits: u8,
    cloth: Reflectance,
}

/// The run a pot is for, else the first open run with its ink.
fn run_of(shop: &Shop, pot: Subject, recipe: Option<Subject>) -> Option<RunId> {
    let of_pot = shop.ink.pot(pot).and_then(|pot| pot.run);
    of_pot.or_else(|| {
        let name = ink_key(&shop.ink.recipe(recipe?)?.name);
        open_runs(shop).into_iter().find(|run| shop.run(*run).is_some_and(|run| ink_key(&run.ink) == name))
    })
}

impl Ground {
    /// As a pot's recipe says; thick where no garment is known.
    pub(crate) fn of(shop: &Shop, pot: Subject, recipe: Option<Subject>) -> Self {
        let run = run_of(shop, pot, recipe).and_then(|id| shop.run(id));
        let garment = run.and_then(|run| run.lot).and_then(|lot| garment_of(shop, lot));
        let wished = recipe.and_then(|id| shop.ink.recipe(id)).map(|recipe| recipe.read_on).unwrap_or_default();
        let on = if garment.is_some() { wished } else { ReadOn::Thick };
        let cloth = match (&garment, on) {
            (Some(garment), ReadOn::Garment) => smoothest(garment.colour).reflectance,
            _ => Reflectance::flat(0.0),
        };
        Self { on, garment, hits: run.map_or(1, |run| run.set_up.hits.clamp(1, 6)), cloth }
    }

    pub(crate) fn hits(&self) -> u8 {
        self.hits
    }

    pub(crate) fn seen(&self) -> Seen<'_> {
        match self.on {
            ReadOn::Thick => Seen::InThePot(Surface::NONE),
            ReadOn::Garment => Seen::Printed(Print {
                garment: &self.cloth,
                underbase: None,
                hits: self.hits,
                films_a_hit: 1.0,
                surface: Surface::NONE,
            }),
        }
    }
}

/// What a pot does to light now, held to a reading of it: what the mixture took away then is bent until it looks
/// as it was read, and what it takes away now is bent alike. With what the reading left unexplained, CIEDE2000.
pub(crate) fn held(now: &Constants, then: &Constants, seen: Seen, reading: ColourReading) -> (Constants, f64) {
    let anchored = anchored_to_colour(then, seen, lab_of(reading));
    let mut held = *now;
    for (band, k) in held.k.iter_mut().enumerate() {
        let factor = anchored.constants.k.get(band).zip(then.k.get(band)).map_or(1.0, |(to, from)| to / (from + 1e-6));
        *k = (*k + 1e-6) * factor;
    }
    // Where nothing went in since, it is what was read.
    if now == then {
        held = anchored.constants;
    }
    held.origin = held.origin.and(Origin::Reconstructed);
    (held, anchored.left)
}

/// A pot's contents as weights.
pub(crate) fn weights_of(contents: &Contents) -> Vec<(Subject, f64)> {
    contents.rows().into_iter().map(|(id, grams)| (id, grams.grams())).collect()
}
