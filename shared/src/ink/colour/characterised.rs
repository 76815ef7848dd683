//! Absorption and scattering of the shop's components, worked out from their drawdowns.

use super::provenance::ColourProvenance;
use crate::colour::{BANDS, Characterised, Constants, Drawdown, Layer, OpacityClass, Origin, Surface, characterise};
use crate::facts::{ComponentKind, DrawdownRecord, Hiding, InkFact, RecordedLayer, Share};
use crate::ids::Subject;
use crate::shop::Shop;

/// What is known of a component.
#[derive(Clone, Copy, PartialEq, Debug)]
pub(crate) struct Colourant {
    /// Its absorption and scattering.
    pub constants: Constants,
    /// How well its drawdowns fit; `None` for a clear base or additive that was never drawn down and is assumed clear.
    pub fit: Option<FitQuality>,
}

/// How well the drawdowns of a component fit.
#[derive(Clone, Copy, PartialEq, Debug)]
pub(crate) struct FitQuality {
    /// Number of bands, of 31, in which they determine both absorption and scattering.
    pub resolved_bands: usize,
    /// Largest CIEDE2000 between a drawdown and its prediction.
    pub worst: f64,
    /// Whether instruments or photos read them.
    pub provenance: ColourProvenance,
}

/// Scattering of one film of a clear base: next to nothing, our own.
const CLEAR_SCATTERING: f64 = 0.01;
/// Most drawdowns used, the latest of them.
const MAX_DRAWDOWNS: usize = 8;

/// Constants of the shop's components, each worked out once.
pub(crate) struct ColourantLibrary<'a> {
    pub(crate) shop: &'a Shop,
    characterised: Vec<(Subject, Option<Colourant>)>,
    pub(super) strengths: Vec<(Subject, LearnedStrength)>,
}

/// Tinting strength of a component relative to its drawdowns, learned from corrections.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct LearnedStrength {
    /// Factor on the strength that its drawdowns show.
    pub factor: f64,
    /// Number of corrections it was learned from.
    pub samples: u32,
}

impl<'a> ColourantLibrary<'a> {
    pub(crate) fn of(shop: &'a Shop) -> Self {
        Self { shop, characterised: Vec::new(), strengths: Vec::new() }
    }

    /// The component as its drawdowns show it. Drawdowns whose white depends, directly or indirectly, on the component
    /// itself are left out.
    pub(crate) fn characterised(&mut self, id: Subject) -> Option<Colourant> {
        if let Some((_, known)) = self.characterised.iter().find(|(other, _)| *other == id) {
            return *known;
        }
        let index = self.characterised.len();
        self.characterised.push((id, None));
        let known = self.characterise_uncached(id);
        if let Some(row) = self.characterised.get_mut(index) {
            row.1 = known;
        }
        known
    }

    fn characterise_uncached(&mut self, id: Subject) -> Option<Colourant> {
        let component = self.shop.ink.component(id)?;
        let body = opacity_class_of(component.hiding);
        let mut parts: Vec<OwnedDrawdown> = Vec::new();
        let mut provenance = ColourProvenance::default();
        for (_, made) in drawdowns_of(self.shop, id).into_iter().rev() {
            let usable = if parts.len() < MAX_DRAWDOWNS { self.owned_drawdown(made) } else { None };
            if let Some(usable) = usable {
                parts.push(usable);
                let rest = made.rest.filter(|_| made.share < Share::WHOLE);
                provenance.add(made, rest.is_some_and(|rest| self.provenance(rest).any_photo()));
            }
        }
        let drawdowns: Vec<Drawdown> = parts.iter().map(OwnedDrawdown::drawdown).collect();
        let clear = component.kind != ComponentKind::Pigment && component.hiding == Hiding::Transparent;
        match characterise(&drawdowns, body, Surface::NONE) {
            Some(Characterised { constants, resolved_bands, worst }) => {
                Some(Colourant { constants, fit: Some(FitQuality { resolved_bands, worst, provenance }) })
            }
            None => clear.then(Colourant::assumed_clear),
        }
    }

    /// A drawdown with everything it depends on; `None` if its white or base is unknown.
    pub(crate) fn owned_drawdown(&mut self, made: &DrawdownRecord) -> Option<OwnedDrawdown> {
        let rest = match made.rest.filter(|_| made.share < Share::WHOLE) {
            Some(rest) => Some(self.characterised(rest)?.constants),
            None if made.share < Share::WHOLE => return None,
            None => None,
        };
        let over = match &made.lay {
            RecordedLayer::Hiding => None,
            RecordedLayer::Over { film, backing } => Some((film.films(), backing.reflectance())),
        };
        Some(OwnedDrawdown { share: made.share.percent() / 100.0, rest, over, seen: made.seen.reflectance() })
    }

    /// What a component's colour is based on; nothing if it was never drawn down.
    pub(crate) fn provenance(&mut self, id: Subject) -> ColourProvenance {
        let drawn = self.characterised(id).and_then(|known| known.fit);
        drawn.map(|drawn| drawn.provenance).unwrap_or_default()
    }

    /// Whether any of these is based on a photo.
    pub(crate) fn any_photo(&mut self, ids: impl IntoIterator<Item = Subject>) -> bool {
        ids.into_iter().any(|id| self.provenance(id).any_photo())
    }

    /// Its absorption and scattering, scaled by the learned tinting strength.
    pub(crate) fn constants(&mut self, id: Subject) -> Option<Constants> {
        let characterised = self.characterised(id)?.constants;
        Some(characterised.times(self.strength(id).factor))
    }

    /// Constants of a mixture by weight.
    ///
    /// # Errors
    /// The components that are unknown.
    pub(crate) fn mix(&mut self, weights: &[(Subject, f64)]) -> Result<Constants, Vec<Subject>> {
        let mut unknown = Vec::new();
        let mut parts: Vec<(f64, Constants)> = Vec::new();
        for (id, weight) in weights.iter().filter(|(_, weight)| *weight > 0.0) {
            match self.constants(*id) {
                Some(constants) => parts.push((*weight, constants)),
                None => unknown.push(*id),
            }
        }
        let parts: Vec<(f64, &Constants)> = parts.iter().map(|(weight, constants)| (*weight, constants)).collect();
        if unknown.is_empty() { Constants::mix(&parts).ok_or(unknown) } else { Err(unknown) }
    }
}

impl Colourant {
    fn assumed_clear() -> Self {
        let s = [CLEAR_SCATTERING; BANDS];
        Self { constants: Constants { k: [0.0; BANDS], s, origin: Origin::Reconstructed }, fit: None }
    }
}

/// A drawdown with what is mixed into it and what lies under it.
pub(crate) struct OwnedDrawdown {
    share: f64,
    rest: Option<Constants>,
    over: Option<(f64, crate::colour::Reflectance)>,
    seen: crate::colour::Reflectance,
}

impl OwnedDrawdown {
    pub(crate) fn drawdown(&self) -> Drawdown<'_> {
        Drawdown {
            share: self.share,
            rest: self.rest.as_ref(),
            layer: match &self.over {
                None => Layer::Hiding,
                Some((films, backing)) => Layer::Over { films: *films, backing },
            },
            seen: &self.seen,
        }
    }
}

/// What a component is assumed to be like if its drawdowns do not determine its scattering.
fn opacity_class_of(hiding: Hiding) -> OpacityClass {
    match hiding {
        Hiding::Opaque => OpacityClass::Opaque,
        Hiding::Transparent => OpacityClass::Transparent,
    }
}

/// The drawdowns of a component that were not undone, oldest first.
pub(crate) fn drawdowns_of(shop: &Shop, id: Subject) -> Vec<(Subject, &DrawdownRecord)> {
    let events = shop.ink.events_of(id).into_iter().filter(|(_, event)| !event.deleted);
    let made = events.filter_map(|(event, row)| {
        let InkFact::DrawnDown(made) = &row.fact else { return None };
        (made.component == id).then_some((event, made))
    });
    made.collect()
}
