//! Patches of known colour that can lie beside a drawdown in its photo.

use super::characterised::drawdowns_of;
use crate::collections::sort_by;
use crate::colour::{Lab, ciede2000};
use crate::facts::{ColourReading, ReadBy, Share, SwatchMeasurement, lab_of, reading_of};
use crate::ids::Subject;
use crate::ink::recipe::rows::component_name;
use crate::ink::{LayerKind, layer_kind};
use crate::shop::Shop;

/// What a known patch is.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum PatchSource {
    /// A drawdown of a component.
    Drawdown {
        /// Share of the component.
        share: Share,
        /// Name of its white or base; empty if there is none.
        rest: String,
        /// How it was applied.
        lay: LayerKind,
    },
    /// The target of a recipe.
    Target,
    /// The garment of a lot.
    Garment,
}

/// Something whose colour an instrument has read.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct KnownPatch {
    /// Id of the drawdown's event, of the recipe, or of the lot.
    pub id: Subject,
    /// What it is.
    pub of: PatchSource,
    /// Its name: the component, the ink, or the garment and its colour.
    pub name: String,
    /// Its colour as an instrument read it.
    pub reading: ColourReading,
}

/// Most patches of the component itself, and in total: our own. Nobody looks through more with ink on the hands.
const MAX_OWN_PATCHES: usize = 5;
const MAX_PATCHES: usize = 12;

/// The patches that can lie beside a drawdown of a component, the most useful first: its own drawdowns, latest first,
/// then those nearest to it in colour, since a photo reads a small difference more reliably
/// ([`crate::colour::photo_reading::photo_uncertainty`]).
///
/// Patches read from a photo are left out: their errors would add to those of the new one, any number of photos deep.
/// So are colours of a screen: they are likenesses, not measurements of something that can be laid on a table. A
/// control card with printed values does not belong to the shop's data; its numbers are typed in.
pub fn known_patches(shop: &Shop, component: Subject) -> Vec<KnownPatch> {
    let mut patches = drawn(shop, component);
    patches.reverse();
    let mut like: Vec<Lab> = patches.iter().map(|patch| lab_of(patch.reading)).collect();
    let on_screen = shop.ink.component(component).and_then(|component| component.colour);
    like.extend(on_screen.map(Lab::of).filter(|_| patches.is_empty()));
    patches.truncate(MAX_OWN_PATCHES);
    let mut others: Vec<(f64, KnownPatch)> = Vec::new();
    let mut offer = |patch: KnownPatch| {
        let is_there = |(_, other): &(f64, KnownPatch)| other.name == patch.name && other.reading == patch.reading;
        if !others.iter().any(is_there) {
            let apart = like.iter().map(|lab| ciede2000(*lab, lab_of(patch.reading)));
            others.push((apart.fold(f64::INFINITY, f64::min), patch));
        }
    };
    for (id, _) in shop.ink.components().filter(|(id, _)| *id != component) {
        drawn(shop, id).into_iter().rev().for_each(&mut offer);
    }
    for (id, recipe) in shop.ink.recipes() {
        let target = recipe.target.filter(|reading| reading.by == ReadBy::Instrument);
        if let Some(reading) = target {
            offer(KnownPatch { id, of: PatchSource::Target, name: recipe.name.clone(), reading });
        }
    }
    for (id, reading) in shop.ink.garments().filter(|(_, reading)| reading.by == ReadBy::Instrument) {
        let lot = shop.lot(id).filter(|lot| !lot.deleted);
        let job = lot.and_then(|lot| shop.job(lot.job?)).filter(|job| !job.deleted);
        if let Some((lot, _)) = lot.zip(job) {
            let words = [lot.garment.as_str(), lot.colour_name.as_str()];
            let name = words.into_iter().filter(|word| !word.is_empty()).collect::<Vec<_>>().join(", ");
            offer(KnownPatch { id, of: PatchSource::Garment, name, reading });
        }
    }
    sort_by(&mut others, |(one, _), (other, _)| one.total_cmp(other));
    patches.extend(others.into_iter().map(|(_, patch)| patch));
    patches.truncate(MAX_PATCHES);
    patches
}

/// The drawdowns of a component that an instrument read, oldest first.
fn drawn(shop: &Shop, id: Subject) -> Vec<KnownPatch> {
    let mut patches = Vec::new();
    for (event, made) in drawdowns_of(shop, id) {
        let reading = match &made.seen {
            SwatchMeasurement::Colour(reading) if reading.by == ReadBy::Instrument => *reading,
            SwatchMeasurement::Curve(_) => reading_of(made.seen.lab(), ReadBy::Instrument),
            SwatchMeasurement::Colour(_) | SwatchMeasurement::Flat(_) => continue,
        };
        let rest = made.rest.map(|rest| component_name(shop, rest)).unwrap_or_default();
        let of = PatchSource::Drawdown { share: made.share, rest, lay: layer_kind(&made.lay) };
        patches.push(KnownPatch { id: event, of, name: component_name(shop, id), reading });
    }
    patches
}
