//! How much ink similar earlier runs really used.

use crate::collections::sort_by_key;
use crate::facts::{Fabric, InkFact};
use crate::heat::ink_key;
use crate::ids::RunId;
use crate::screen::screens_of;
use crate::shop::Shop;
use crate::units::Grams;

/// How similar the runs are that were compared.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Similarity {
    /// The same ink on the same fabric through the same mesh.
    Ink,
    /// The same fabric through the same mesh.
    Mesh,
    /// The same fabric.
    Fabric,
    /// Any run of the shop.
    Any,
}

/// Ink that earlier runs used, relative to the calculated amount.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Experience {
    /// Grams used per calculated gram, including what stayed in pot, screen and flood.
    pub ratio: f64,
    /// The ratio of the run that used least.
    pub least: f64,
    /// The ratio of the run that used most.
    pub most: f64,
    /// Number of weighings compared.
    pub weighings: u32,
    /// How similar the runs are.
    pub similarity: Similarity,
}

/// Most weighings compared, latest first. Our own.
const MAX_WEIGHINGS: usize = 12;

/// Most weighings looked through. Our own.
const MAX_EXAMINED: usize = 200;

/// Plausible grams used per calculated gram: outside this range something was mistyped, or calculated for another
/// print. Our own.
const PLAUSIBLE_RATIOS: std::ops::RangeInclusive<f64> = 0.1..=20.0;

/// The traits by which runs are compared.
#[derive(PartialEq)]
struct Traits {
    ink: String,
    fabric: Option<Fabric>,
    mesh: Option<u16>,
}

fn traits(shop: &Shop, run: RunId) -> Option<Traits> {
    let this = shop.run(run)?;
    let sheet = screens_of(shop, run).iter().find_map(|found| shop.screens.live(found.screen?)?.mesh);
    Some(Traits {
        ink: ink_key(&this.ink),
        fabric: this.lot.and_then(|lot| shop.lot(lot)).map(|lot| lot.fabric),
        mesh: sheet.map(|sheet| sheet.count.per_inch()).or(this.set_up.mesh),
    })
}

/// Ink used per calculated gram, learned from the runs most similar to this one: all grams used over all grams
/// calculated, of the latest 12 weighings among the latest 200. Weighings with a ratio outside 0.1 to 20 are left out.
/// `None` while nothing was weighed.
///
/// Our own, in the manner of the pace of earlier runs.
pub fn experience(shop: &Shop, run: RunId) -> Option<Experience> {
    let this = traits(shop, run)?;
    let mut weighings: Vec<(u64, Similarity, Grams, Grams)> = Vec::new();
    for event in shop.ink.last_used(MAX_EXAMINED) {
        let InkFact::Used { run: Some(other), grams, paper: Some(paper), .. } = &event.fact else { continue };
        let likely = paper.is_positive() && PLAUSIBLE_RATIOS.contains(&(grams.grams() / paper.grams()));
        let Some(that) = traits(shop, *other).filter(|_| likely) else { continue };
        let similarity = if that.fabric != this.fabric {
            Similarity::Any
        } else if that.mesh != this.mesh || this.mesh.is_none() {
            Similarity::Fabric
        } else if that.ink != this.ink {
            Similarity::Mesh
        } else {
            Similarity::Ink
        };
        weighings.push((event.rank, similarity, *grams, *paper));
    }
    let similarity = weighings.iter().map(|(_, similarity, ..)| *similarity).min()?;
    weighings.retain(|(_, other, ..)| *other == similarity);
    sort_by_key(&mut weighings, |(rank, ..)| std::cmp::Reverse(*rank));
    weighings.truncate(MAX_WEIGHINGS);
    let sum = |pick: fn(&(u64, Similarity, Grams, Grams)) -> Grams| weighings.iter().map(pick).sum::<Grams>().grams();
    let ratios = weighings.iter().map(|(_, _, used, paper)| used.grams() / paper.grams());
    let (used, paper) = (sum(|row| row.2), sum(|row| row.3));
    Some(Experience {
        ratio: used / paper,
        least: ratios.clone().fold(f64::INFINITY, f64::min),
        most: ratios.fold(0.0, f64::max),
        weighings: weighings.len() as u32,
        similarity,
    })
}
