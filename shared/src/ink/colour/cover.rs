//! Will an ink cover a garment, after how many hits, and what do they take?

use super::characterised::Knowledge;
use super::component_colour::{NotDrawn, not_drawn, white_of};
use crate::colour::{FULL_HIDING, Lab, Look, Origin, Surface, Work, smoothest, will_it_cover};
use crate::facts::lab_of;
use crate::heat::ink_key;
use crate::ids::{RunId, Subject};
use crate::ink::{Garment, best_revision, garment_of, percentages};
use crate::plan::open_runs;
use crate::shop::Shop;
use uuid::Uuid;

/// A run that an ink is for.
#[derive(Clone, Debug, PartialEq)]
pub struct CoverRun {
    /// Which.
    pub run: RunId,
    /// Its job's title.
    pub title: String,
    /// Its garments; none where their colour is not known.
    pub garment: Option<Garment>,
    /// Pieces left.
    pub pieces: u32,
}

/// The open runs that a recipe's ink is for, in the order of the day.
pub fn cover_runs(shop: &Shop, recipe: Subject) -> Vec<CoverRun> {
    let Some(name) = shop.ink.recipe(recipe).map(|recipe| ink_key(&recipe.name)) else { return Vec::new() };
    let open = open_runs(shop).into_iter().filter_map(|id| {
        let run = shop.run(id).filter(|run| ink_key(&run.ink) == name)?;
        Some(CoverRun {
            run: id,
            title: shop.job_of(id).map(|(_, job)| job.title.clone()).unwrap_or_default(),
            garment: run.lot.and_then(|lot| garment_of(shop, lot)),
            pieces: shop.left_of(id),
        })
    });
    open.collect()
}

/// Off by less than this it covers, CIEDE2000: about what a client does not find alone (our own).
pub const COVERS: f64 = 2.5;

/// What an ink is to be printed on, and what work costs.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CoverAsk {
    /// The garment's colour.
    pub garment: Lab,
    /// The white to print under it; the shop's lightest opaque one where none is named.
    pub underbase: Option<Subject>,
    /// How many pieces.
    pub pieces: u32,
    /// What hits, flashes and one more screen take.
    pub work: Work,
}

/// One way to print it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CoverRow {
    /// Hits, and how far that comes.
    pub look: Look,
    /// Minutes for all pieces.
    pub minutes: f64,
    /// Whether it comes near enough to what is wanted.
    pub covers: bool,
    /// Whether the films hide by the standards of paint.
    pub hides: bool,
}

/// Whether an ink covers.
#[derive(Clone, Debug, PartialEq)]
pub struct CoverView {
    /// The recipe.
    pub recipe: Subject,
    /// What the ink is called.
    pub name: String,
    /// What is wanted.
    pub wanted: Lab,
    /// Whether that is the recipe's target; else it is the ink in the pot.
    pub is_target: bool,
    /// The ways: one, two and three hits; then with an underbase.
    pub rows: Vec<CoverRow>,
    /// Of those that cover the one that takes least time; none when none does.
    pub enough: Option<usize>,
    /// Where none does, the one that comes nearest.
    pub nearest: Option<usize>,
    /// The white that is printed under it; none where none was drawn down.
    pub underbase: Option<(Subject, String)>,
    /// Whites that could be.
    pub whites: Vec<(Subject, String)>,
    /// Whether every curve behind it was measured.
    pub origin: Origin,
    /// Whether a drawdown behind it was read from a photo.
    pub by_photo: bool,
}

/// Why cover cannot be worked out.
#[derive(Clone, Debug, PartialEq)]
pub enum NoCover {
    /// The recipe has no parts yet.
    NoParts,
    /// These of its components were never drawn down.
    NotDrawn(Vec<NotDrawn>),
}

/// Whether the ink of a recipe covers a garment.
///
/// # Errors
/// [`NoCover`] says what is missing.
pub fn cover_view(shop: &Shop, id: Subject, ask: &CoverAsk) -> Result<CoverView, NoCover> {
    let recipe = shop.ink.recipe(id).ok_or(NoCover::NoParts)?;
    let revision = best_revision(shop, id).and_then(|revision| shop.ink.revision(revision)).ok_or(NoCover::NoParts)?;
    let mut knowledge = Knowledge::of(shop);
    let ink = match knowledge.mix(&percentages(revision.parts)) {
        Ok(ink) => ink,
        Err(unknown) => return Err(NoCover::NotDrawn(not_drawn(&mut knowledge, &unknown))),
    };
    let name = |id: Subject| (id, crate::ink::recipe::rows::component_name(shop, id));
    let whites = whites(&mut knowledge);
    let white = ask.underbase.filter(|id| whites.contains(id)).or_else(|| white_of(&mut knowledge, Uuid::nil()));
    let base = white.and_then(|id| knowledge.constants(id));
    let garment = smoothest(ask.garment).reflectance;
    let wanted = recipe.target.map_or_else(|| ink.in_bulk(Surface::NONE).lab(), lab_of);
    let cover = will_it_cover(&ink, &garment, base.as_ref(), 1.0, wanted, COVERS);
    let row = |look: &Look| CoverRow {
        look: *look,
        minutes: ask.work.minutes(look.way, ask.pieces),
        covers: look.off <= COVERS,
        hides: look.contrast_ratio >= FULL_HIDING,
    };
    let rows: Vec<CoverRow> = cover.looks.iter().map(row).collect();
    let least = |of: &dyn Fn(&CoverRow) -> Option<f64>| {
        let scored = rows.iter().enumerate().filter_map(|(place, row)| Some((place, of(row)?)));
        scored.min_by(|(_, one), (_, other)| one.total_cmp(other)).map(|(place, _)| place)
    };
    let enough = least(&|row| row.covers.then_some(row.minutes));
    let nearest = if enough.is_none() { least(&|row| Some(row.look.off)) } else { None };
    let origin = base.as_ref().map_or(ink.origin, |base| ink.origin.and(base.origin));
    let inks = percentages(revision.parts).into_iter().map(|(id, _)| id).chain(white);
    let by_photo = knowledge.any_photo(inks);
    Ok(CoverView {
        recipe: id,
        name: recipe.name.clone(),
        wanted,
        is_target: recipe.target.is_some(),
        enough,
        nearest,
        rows,
        underbase: white.map(name),
        whites: whites.into_iter().map(name).collect(),
        origin,
        by_photo,
    })
}

/// Opaque components that were drawn down and are light enough to print under another.
fn whites(knowledge: &mut Knowledge) -> Vec<Subject> {
    let shop = knowledge.shop;
    let opaque = shop.ink.components().filter(|(_, component)| component.hiding == crate::facts::Hiding::Opaque);
    let ids: Vec<Subject> = opaque.map(|(id, _)| id).collect();
    let mut whites = Vec::new();
    for id in ids {
        if let Some(found) = knowledge.plain(id).filter(|known| known.drawn.is_some()) {
            if found.constants.in_bulk(Surface::NONE).lab().l > 80.0 {
                whites.push(id);
            }
        }
    }
    whites
}
