//! Whether an ink covers a garment, after how many hits, and how long that takes.

use super::characterised::ColourantLibrary;
use super::component_colour::{Uncharacterised, uncharacterised, white_of};
use crate::colour::{Appearance, FULL_HIDING, Lab, LabourTimes, Origin, Surface, smoothest, will_it_cover};
use crate::facts::lab_of;
use crate::heat::ink_key;
use crate::ids::{RunId, Subject};
use crate::ink::{Garment, best_revision, garment_of, percentages};
use crate::plan::open_runs;
use crate::shop::Shop;
use uuid::Uuid;

/// A run that uses an ink.
#[derive(Clone, Debug, PartialEq)]
pub struct CoverRun {
    /// Id of the run.
    pub run: RunId,
    /// Its job's title.
    pub title: String,
    /// Its garments; `None` if their colour is unknown.
    pub garment: Option<Garment>,
    /// Pieces left to print.
    pub pieces: u32,
}

/// The open runs that use a recipe's ink, in the order of the day.
pub fn cover_runs(shop: &Shop, recipe: Subject) -> Vec<CoverRun> {
    let Some(name) = shop.ink.recipe(recipe).map(|recipe| ink_key(&recipe.name)) else { return Vec::new() };
    let open = open_runs(shop).into_iter().filter_map(|id| {
        let run = shop.run(id).filter(|run| ink_key(&run.ink) == name)?;
        Some(CoverRun {
            run: id,
            title: shop.job_of(id).map(|(_, job)| job.title.clone()).unwrap_or_default(),
            garment: run.lot.and_then(|lot| garment_of(shop, lot)),
            pieces: shop.pieces_left(id),
        })
    });
    open.collect()
}

/// CIEDE2000 below which an ink counts as covering: about what a client does not find alone (our own).
pub const MAX_VISIBLE_DELTA_E: f64 = 2.5;

/// What an ink is to be printed on, and how long each step takes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CoverageQuery {
    /// Colour of the garment.
    pub garment: Lab,
    /// The white for the underbase; `None` picks the shop's lightest opaque one.
    pub underbase: Option<Subject>,
    /// Number of pieces.
    pub pieces: u32,
    /// Times of hits, flashes and one more screen.
    pub work: LabourTimes,
}

/// One sequence of hits.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CoverRow {
    /// The sequence and its predicted appearance.
    pub look: Appearance,
    /// Minutes for all pieces.
    pub minutes: f64,
    /// Whether its colour is near enough to the target.
    pub covers: bool,
    /// Whether the films reach full hiding by the standards of paint.
    pub hides: bool,
}

/// Result of [`cover_view`].
#[derive(Clone, Debug, PartialEq)]
pub struct CoverView {
    /// The recipe.
    pub recipe: Subject,
    /// Name of the ink.
    pub name: String,
    /// The target colour.
    pub target: Lab,
    /// Whether that is the recipe's target; otherwise it is the ink in the pot.
    pub is_target: bool,
    /// The sequences: one, two and three hits; then with an underbase.
    pub rows: Vec<CoverRow>,
    /// Index of the row that covers in the least time; `None` if none covers.
    pub cheapest: Option<usize>,
    /// If none covers, index of the row that comes nearest.
    pub nearest: Option<usize>,
    /// The white used as underbase and its name; `None` if no white was drawn down.
    pub underbase: Option<(Subject, String)>,
    /// Whites that can be used as underbase.
    pub whites: Vec<(Subject, String)>,
    /// Whether every curve behind the prediction was measured.
    pub origin: Origin,
    /// Whether a drawdown behind the prediction was read from a photo.
    pub by_photo: bool,
}

/// Why coverage cannot be predicted.
#[derive(Clone, Debug, PartialEq)]
pub enum NoCover {
    /// The recipe has no parts yet.
    NoParts,
    /// These of its components were never drawn down.
    Uncharacterised(Vec<Uncharacterised>),
}

/// Predicts whether the ink of a recipe covers a garment.
///
/// # Errors
/// [`NoCover`] says what is missing.
pub fn cover_view(shop: &Shop, id: Subject, ask: &CoverageQuery) -> Result<CoverView, NoCover> {
    let recipe = shop.ink.recipe(id).ok_or(NoCover::NoParts)?;
    let revision = best_revision(shop, id).and_then(|revision| shop.ink.revision(revision)).ok_or(NoCover::NoParts)?;
    let mut library = ColourantLibrary::of(shop);
    let ink = match library.mix(&percentages(revision.parts)) {
        Ok(ink) => ink,
        Err(unknown) => return Err(NoCover::Uncharacterised(uncharacterised(&mut library, &unknown))),
    };
    let name = |id: Subject| (id, crate::ink::recipe::rows::component_name(shop, id));
    let whites = whites(&mut library);
    let white = ask.underbase.filter(|id| whites.contains(id)).or_else(|| white_of(&mut library, Uuid::nil()));
    let base = white.and_then(|id| library.constants(id));
    let garment = smoothest(ask.garment).reflectance;
    let target = recipe.target.map_or_else(|| ink.in_bulk(Surface::NONE).lab(), lab_of);
    let cover = will_it_cover(&ink, &garment, base.as_ref(), 1.0, target, MAX_VISIBLE_DELTA_E);
    let row = |look: &Appearance| CoverRow {
        look: *look,
        minutes: ask.work.minutes(look.way, ask.pieces),
        covers: look.off <= MAX_VISIBLE_DELTA_E,
        hides: look.contrast_ratio >= FULL_HIDING,
    };
    let rows: Vec<CoverRow> = cover.looks.iter().map(row).collect();
    let least = |of: &dyn Fn(&CoverRow) -> Option<f64>| {
        let scored = rows.iter().enumerate().filter_map(|(index, row)| Some((index, of(row)?)));
        scored.min_by(|(_, one), (_, other)| one.total_cmp(other)).map(|(index, _)| index)
    };
    let cheapest = least(&|row| row.covers.then_some(row.minutes));
    let nearest = if cheapest.is_none() { least(&|row| Some(row.look.off)) } else { None };
    let origin = base.as_ref().map_or(ink.origin, |base| ink.origin.and(base.origin));
    let inks = percentages(revision.parts).into_iter().map(|(id, _)| id).chain(white);
    let by_photo = library.any_photo(inks);
    Ok(CoverView {
        recipe: id,
        name: recipe.name.clone(),
        target,
        is_target: recipe.target.is_some(),
        cheapest,
        nearest,
        rows,
        underbase: white.map(name),
        whites: whites.into_iter().map(name).collect(),
        origin,
        by_photo,
    })
}

/// Opaque components that were drawn down and are light enough for an underbase.
fn whites(library: &mut ColourantLibrary) -> Vec<Subject> {
    let shop = library.shop;
    let opaque = shop.ink.components().filter(|(_, component)| component.hiding == crate::facts::Hiding::Opaque);
    let ids: Vec<Subject> = opaque.map(|(id, _)| id).collect();
    let mut whites = Vec::new();
    for id in ids {
        if let Some(found) = library.characterised(id).filter(|known| known.fit.is_some()) {
            if found.constants.in_bulk(Surface::NONE).lab().l > 80.0 {
                whites.push(id);
            }
        }
    }
    whites
}
