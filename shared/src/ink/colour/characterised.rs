//! Absorption and scattering of the shop's components, worked out from their drawdowns.

use super::provenance::RestsOn;
use super::strength_learning::lessons_of;
use crate::colour::{BANDS, Body, Characterised, Constants, Drawdown, Laid, Origin, Surface, characterise, strength};
use crate::facts::{ComponentKind, DrawdownMade, Hiding, InkFact, Lay};
use crate::ids::Subject;
use crate::shop::Shop;

/// What is known of a component.
#[derive(Clone, Copy, PartialEq, Debug)]
pub(crate) struct Known {
    /// Its absorption and scattering.
    pub constants: Constants,
    /// How well its drawdowns fit; `None` for a clear base or additive that was never drawn down and is assumed clear.
    pub drawn: Option<Drawn>,
}

/// How well the drawdowns of a component fit.
#[derive(Clone, Copy, PartialEq, Debug)]
pub(crate) struct Drawn {
    /// Number of bands, of 31, in which they determine both absorption and scattering.
    pub told_apart: usize,
    /// Largest CIEDE2000 between a drawdown and its prediction.
    pub worst: f64,
    /// Whether instruments or photos read them.
    pub rests_on: RestsOn,
}

/// Scattering of one film of a clear base: next to nothing, our own.
const CLEAR: f64 = 0.01;
/// Most drawdowns used, the latest of them.
const MOST: usize = 8;

/// Constants of the shop's components, each worked out once.
pub(crate) struct Knowledge<'a> {
    pub(crate) shop: &'a Shop,
    plain: Vec<(Subject, Option<Known>)>,
    strengths: Vec<(Subject, Strengths)>,
}

/// Tinting strength of a component relative to its drawdowns, learned from corrections.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Strengths {
    /// Factor on the strength that its drawdowns show.
    pub times: f64,
    /// Number of corrections it was learned from.
    pub lessons: u32,
}

impl<'a> Knowledge<'a> {
    pub(crate) fn of(shop: &'a Shop) -> Self {
        Self { shop, plain: Vec::new(), strengths: Vec::new() }
    }

    /// The component as its drawdowns show it. Drawdowns whose white depends, directly or indirectly, on the component
    /// itself are left out.
    pub(crate) fn plain(&mut self, id: Subject) -> Option<Known> {
        if let Some((_, known)) = self.plain.iter().find(|(other, _)| *other == id) {
            return *known;
        }
        let place = self.plain.len();
        self.plain.push((id, None));
        let known = self.worked_out(id);
        if let Some(row) = self.plain.get_mut(place) {
            row.1 = known;
        }
        known
    }

    fn worked_out(&mut self, id: Subject) -> Option<Known> {
        let component = self.shop.ink.component(id)?;
        let body = body_of(component.hiding);
        let mut parts: Vec<Parts> = Vec::new();
        let mut rests_on = RestsOn::default();
        for (_, made) in drawdowns_of(self.shop, id).into_iter().rev() {
            let usable = if parts.len() < MOST { self.parts(made) } else { None };
            if let Some(usable) = usable {
                parts.push(usable);
                rests_on.and(self, made);
            }
        }
        let drawdowns: Vec<Drawdown> = parts.iter().map(Parts::drawdown).collect();
        let clear = component.kind != ComponentKind::Pigment && component.hiding == Hiding::Transparent;
        match characterise(&drawdowns, body, Surface::NONE) {
            Some(Characterised { constants, told_apart, worst }) => {
                Some(Known { constants, drawn: Some(Drawn { told_apart, worst, rests_on }) })
            }
            None => clear.then(Known::taken_as_clear),
        }
    }

    /// A drawdown with everything it depends on; `None` if its white or base is unknown.
    pub(crate) fn parts(&mut self, made: &DrawdownMade) -> Option<Parts> {
        let rest = match made.rest.filter(|_| made.share < crate::facts::Share::WHOLE) {
            Some(rest) => Some(self.plain(rest)?.constants),
            None if made.share < crate::facts::Share::WHOLE => return None,
            None => None,
        };
        let over = match &made.lay {
            Lay::Hiding => None,
            Lay::Over { film, backing } => Some((film.films(), backing.reflectance())),
        };
        Some(Parts { share: made.share.percent() / 100.0, rest, over, seen: made.seen.reflectance() })
    }

    /// Tinting strength learned from corrections. Only of pigments: other components move a colour too little.
    pub(crate) fn strength(&mut self, id: Subject) -> Strengths {
        if let Some((_, found)) = self.strengths.iter().find(|(other, _)| *other == id) {
            return *found;
        }
        let pigment = self.shop.ink.component(id).is_some_and(|component| component.kind == ComponentKind::Pigment);
        let lessons = if pigment { lessons_of(self, id) } else { Vec::new() };
        let found = Strengths { times: strength(&lessons), lessons: lessons.len() as u32 };
        self.strengths.push((id, found));
        found
    }

    /// Its absorption and scattering, scaled by the learned tinting strength.
    pub(crate) fn constants(&mut self, id: Subject) -> Option<Constants> {
        let plain = self.plain(id)?.constants;
        Some(plain.times(self.strength(id).times))
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

impl Known {
    fn taken_as_clear() -> Self {
        let s = [CLEAR; BANDS];
        Self { constants: Constants { k: [0.0; BANDS], s, origin: Origin::Reconstructed }, drawn: None }
    }
}

/// A drawdown with what is mixed into it and what lies under it.
pub(crate) struct Parts {
    share: f64,
    rest: Option<Constants>,
    over: Option<(f64, crate::colour::Reflectance)>,
    seen: crate::colour::Reflectance,
}

impl Parts {
    pub(crate) fn drawdown(&self) -> Drawdown<'_> {
        Drawdown {
            share: self.share,
            rest: self.rest.as_ref(),
            laid: match &self.over {
                None => Laid::Hiding,
                Some((films, backing)) => Laid::Over { films: *films, backing },
            },
            seen: &self.seen,
        }
    }
}

/// What a component is assumed to be like if its drawdowns do not determine its scattering.
fn body_of(hiding: Hiding) -> Body {
    match hiding {
        Hiding::Opaque => Body::Opaque,
        Hiding::Transparent => Body::Transparent,
    }
}

/// The drawdowns of a component that were not undone, oldest first.
pub(crate) fn drawdowns_of(shop: &Shop, id: Subject) -> Vec<(Subject, &DrawdownMade)> {
    let events = shop.ink.events_of(id).into_iter().filter(|(_, event)| !event.deleted);
    let made = events.filter_map(|(event, row)| {
        let InkFact::DrawnDown(made) = &row.fact else { return None };
        (made.component == id).then_some((event, made))
    });
    made.collect()
}
