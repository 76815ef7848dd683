//! The exposure times known for screens of the shop, as the pages name them beside the step.

use super::{ExposureAnswer, ExposureChoice, ExposureQuery, exposure_for};
use crate::ids::Subject;
use crate::screen::emulsion_list;
use crate::shop::Shop;
use crate::text::lowercase_latin;
use crate::units::Seconds;

/// Screens that are exposed for the same time.
#[derive(Clone, Debug, PartialEq)]
pub struct ScreensExposure {
    /// The first of them.
    pub screen: Subject,
    /// The labels of all.
    pub labels: Vec<String>,
    /// The tested time for their emulsion, mesh and coats, and the name of the lamp it is for, which is the one used
    /// last. `None` if there is none, or if the screens do not say what they are.
    pub tested: Option<(Seconds, String)>,
}

/// The tested exposure times of these screens, in their order; screens with the same time are one row.
pub fn exposures_of(shop: &Shop, screens: &[Subject]) -> Vec<ScreensExposure> {
    let mut rows: Vec<ScreensExposure> = Vec::new();
    for id in screens {
        let Some(screen) = shop.screens.live(*id) else { continue };
        let (label, tested) = (screen.label.clone(), tested_time(shop, *id));
        match rows.iter_mut().find(|row| row.tested == tested) {
            Some(row) => row.labels.push(label),
            None => rows.push(ScreensExposure { screen: *id, labels: vec![label], tested }),
        }
    }
    rows
}

/// Only for what the screen itself says: the exposure page fills in the rest, and shows what it filled in.
fn tested_time(shop: &Shop, id: Subject) -> Option<(Seconds, String)> {
    let screen = shop.screens.live(id)?;
    screen.mesh?;
    let named = lowercase_latin(screen.emulsion.trim());
    emulsion_list(shop).into_iter().find(|row| lowercase_latin(row.emulsion.name.trim()) == named)?;
    let query = ExposureChoice::for_screen(shop, id).query()?;
    if query.coats.is_none() && coats_differ(shop, &query) {
        return None;
    }
    match exposure_for(shop, &query) {
        ExposureAnswer::Known(row) if row.tested => Some((row.time, row.lamp)),
        ExposureAnswer::Known(_) | ExposureAnswer::Nearest { .. } | ExposureAnswer::Unknown => None,
    }
}

/// Whether times are known for different numbers of coats, so that a screen must say which it has.
fn coats_differ(shop: &Shop, query: &ExposureQuery) -> bool {
    let alike = shop
        .exposure_log
        .exposures()
        .map(|(_, known)| &known.fact)
        .filter(|fact| (fact.emulsion, fact.lamp, fact.cloth) == (query.emulsion, query.lamp, query.cloth));
    let mut coats = alike.filter_map(|fact| fact.coats);
    let first = coats.next();
    coats.any(|other| Some(other) != first)
}
