//! The choices of the exposure page: emulsion, mesh, coats and lamp, and which of them the shop knows.

use crate::collections::sort_by_key;
use crate::facts::{Coats, MeshCloth};
use crate::ids::Subject;
use crate::screen::{ExposureQuery, emulsion_list, lamp_list};
use crate::shop::Shop;
use crate::text::lowercase_latin;
use std::cmp::Reverse;

/// The choices made so far on the exposure page.
#[derive(Clone, Copy, Debug, PartialEq, Default)]
pub struct ExposureChoice {
    /// The emulsion.
    pub emulsion: Option<Subject>,
    /// The mesh.
    pub cloth: Option<MeshCloth>,
    /// How the screen was coated, if that was chosen.
    pub coats: Option<Coats>,
    /// The lamp.
    pub lamp: Option<Subject>,
}

impl ExposureChoice {
    /// The query; `None` until emulsion, mesh and lamp are chosen.
    pub fn query(&self) -> Option<ExposureQuery> {
        Some(ExposureQuery { emulsion: self.emulsion?, cloth: self.cloth?, coats: self.coats, lamp: self.lamp? })
    }

    /// The choices of the shop's latest exposure. If there is none, the first emulsion, the coarsest mesh
    /// and the first lamp.
    pub fn from_latest(shop: &Shop) -> Self {
        let (lamps, emulsions) = (lamp_list(shop), emulsion_list(shop));
        let has =
            |emulsion, lamp| emulsions.iter().any(|row| row.id == emulsion) && lamps.iter().any(|row| row.id == lamp);
        let last = shop
            .exposure_log
            .exposures()
            .filter(|(_, known)| has(known.fact.emulsion, known.fact.lamp))
            .max_by_key(|(id, known)| (known.at, *id));
        if let Some((_, known)) = last {
            let fact = &known.fact;
            return Self {
                emulsion: Some(fact.emulsion),
                cloth: Some(fact.cloth),
                coats: fact.coats,
                lamp: Some(fact.lamp),
            };
        }
        Self {
            emulsion: emulsions.first().map(|row| row.id),
            cloth: known_cloths(shop).first().copied(),
            coats: None,
            lamp: lamps.first().map(|row| row.id),
        }
    }

    /// The choices for a screen of the shop: its mesh and coats, its emulsion if that is in the list, and
    /// the lamp used last.
    pub fn for_screen(shop: &Shop, screen: Subject) -> Self {
        let usual = Self::from_latest(shop);
        let Some(screen) = shop.screens.live(screen) else { return usual };
        let named = lowercase_latin(screen.emulsion.trim());
        let emulsion = emulsion_list(shop).into_iter().find(|row| lowercase_latin(row.emulsion.name.trim()) == named);
        Self {
            emulsion: emulsion.map(|row| row.id).or(usual.emulsion),
            cloth: screen.mesh.map(|sheet| sheet.cloth()).or(usual.cloth),
            coats: screen.coats,
            ..usual
        }
    }

    /// The same choices without an emulsion or lamp that has been deleted.
    #[must_use]
    pub fn without_deleted(self, shop: &Shop) -> Self {
        let emulsion = self.emulsion.filter(|id| emulsion_list(shop).iter().any(|row| row.id == *id));
        let lamp = self.lamp.filter(|id| lamp_list(shop).iter().any(|row| row.id == *id));
        Self { emulsion, lamp, ..self }
    }
}

/// The meshes of the shop's screens and of its known exposures, the coarsest first.
pub fn known_cloths(shop: &Shop) -> Vec<MeshCloth> {
    let on_screens = shop.screens.iter().filter_map(|(_, screen)| screen.mesh).map(|sheet| sheet.cloth());
    let mut cloths: Vec<MeshCloth> =
        on_screens.chain(shop.exposure_log.exposures().map(|(_, known)| known.fact.cloth)).collect();
    sort_by_key(&mut cloths, |cloth| (cloth.count.per_inch(), *cloth));
    cloths.dedup();
    cloths
}

/// The combinations of coats that the shop uses, the most frequent first.
pub fn known_coats(shop: &Shop) -> Vec<Coats> {
    let on_screens = shop.screens.iter().filter_map(|(_, screen)| screen.coats);
    let mut counted: Vec<(Coats, usize)> = Vec::new();
    for coats in on_screens.chain(shop.exposure_log.exposures().filter_map(|(_, known)| known.fact.coats)) {
        match counted.iter_mut().find(|(other, _)| *other == coats) {
            Some((_, count)) => *count += 1,
            None => counted.push((coats, 1)),
        }
    }
    sort_by_key(&mut counted, |(coats, count)| (Reverse(*count), *coats));
    counted.into_iter().map(|(coats, _)| coats).collect()
}
