//! What of known colour can lie beside a drawdown while its photo is taken?

use super::characterised::drawdowns_of;
use crate::collections::sort_by;
use crate::colour::{Lab, ciede2000};
use crate::facts::{ColourReading, ReadBy, Share, SwatchSeen, lab_of, reading_of};
use crate::ids::Subject;
use crate::ink::recipe::rows::component_name;
use crate::ink::{LayKind, kind_of};
use crate::shop::Shop;

/// What a known patch is.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum PatchOf {
    /// A drawdown of a component.
    Drawdown {
        /// The component's share.
        share: Share,
        /// The name of its white or base; empty where there is none.
        rest: String,
        /// How it lies.
        lay: LayKind,
    },
    /// The target of a recipe.
    Target,
    /// The garment of a lot.
    Garment,
}

/// Something whose colour an instrument has read.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct KnownPatch {
    /// The drawdown's event, the recipe, or the lot.
    pub id: Subject,
    /// What it is.
    pub of: PatchOf,
    /// What it is called: the component, the ink, or the garment and its colour.
    pub name: String,
    /// Its colour, by an instrument.
    pub reading: ColourReading,
}

/// The most patches of the component itself, and of all: our own. More are not looked through with ink on the hands.
const MOST_OF_IT: usize = 5;
const MOST: usize = 12;

/// The patches that can lie beside a drawdown of a component, the likeliest first: its own drawdowns, the latest
/// first, then whatever is nearest to it in colour, since the less two patches differ the surer a photo tells
/// their difference ([`crate::colour::photo_reading::in_doubt`]).
///
/// None that itself came from a photo: its errors would add to those of the new one, and nobody could say how many
/// photos deep. None that is a screen's colour: that is a likeness, and no measurement of anything that can be laid
/// on a table. A control card with printed values is no thing of the shop's; its numbers are typed.
pub fn known_patches(shop: &Shop, component: Subject) -> Vec<KnownPatch> {
    let mut patches = drawn(shop, component);
    patches.reverse();
    let mut like: Vec<Lab> = patches.iter().map(|patch| lab_of(patch.reading)).collect();
    let on_screen = shop.ink.component(component).and_then(|component| component.colour);
    like.extend(on_screen.map(Lab::of).filter(|_| patches.is_empty()));
    patches.truncate(MOST_OF_IT);
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
            offer(KnownPatch { id, of: PatchOf::Target, name: recipe.name.clone(), reading });
        }
    }
    for (id, reading) in shop.ink.garments().filter(|(_, reading)| reading.by == ReadBy::Instrument) {
        let lot = shop.lot(id).filter(|lot| !lot.deleted);
        let job = lot.and_then(|lot| shop.job(lot.job?)).filter(|job| !job.deleted);
        if let Some((lot, _)) = lot.zip(job) {
            let words = [lot.garment.as_str(), lot.colour_name.as_str()];
            let name = words.into_iter().filter(|word| !word.is_empty()).collect::<Vec<_>>().join(", ");
            offer(KnownPatch { id, of: PatchOf::Garment, name, reading });
        }
    }
    sort_by(&mut others, |(one, _), (other, _)| one.total_cmp(other));
    patches.extend(others.into_iter().map(|(_, patch)| patch));
    patches.truncate(MOST);
    patches
}

/// The drawdowns of a component that an instrument read, oldest first.
fn drawn(shop: &Shop, id: Subject) -> Vec<KnownPatch> {
    let mut patches = Vec::new();
    for (event, made) in drawdowns_of(shop, id) {
        let reading = match &made.seen {
            SwatchSeen::Colour(reading) if reading.by == ReadBy::Instrument => *reading,
            SwatchSeen::Curve(_) => reading_of(made.seen.lab(), ReadBy::Instrument),
            SwatchSeen::Colour(_) | SwatchSeen::Flat(_) => continue,
        };
        let rest = made.rest.map(|rest| component_name(shop, rest)).unwrap_or_default();
        let of = PatchOf::Drawdown { share: made.share, rest, lay: kind_of(&made.lay) };
        patches.push(KnownPatch { id: event, of, name: component_name(shop, id), reading });
    }
    patches
}
