//! What does a component do to light, as far as the shop's drawdowns tell?

use super::provenance::RestsOn;
use super::strength_learning::lessons_of;
use crate::colour::{BANDS, Body, Characterised, Constants, Drawdown, Laid, Origin, Surface, characterise, strength};
use crate::facts::{ComponentKind, DrawdownMade, Hiding, InkFact, Lay};
use crate::ids::Subject;
use crate::shop::Shop;

/// What is known of a component.
#[derive(Clone, Copy, PartialEq, Debug)]
pub(crate) struct Known {
    /// What it does to light.
    pub constants: Constants,
    /// How well its drawdowns tell; none of a clear base or additive that nobody has drawn down and that is
    /// taken as clear.
    pub drawn: Option<Drawn>,
}

/// How well drawdowns tell.
#[derive(Clone, Copy, PartialEq, Debug)]
pub(crate) struct Drawn {
    /// Bands, of 31, in which they told taking away and throwing back apart.
    pub told_apart: usize,
    /// The worst difference between a drawdown and what is worked out, CIEDE2000.
    pub worst: f64,
    /// What read them.
    pub rests_on: RestsOn,
}

/// What one film of a clear base throws back: next to nothing, our own.
const CLEAR: f64 = 0.01;
/// The most drawdowns that are worked with, the latest of them.
const MOST: usize = 8;

/// What components do to light, each worked out once.
pub(crate) struct Knowledge<'a> {
    pub(crate) shop: &'a Shop,
    plain: Vec<(Subject, Option<Known>)>,
    strengths: Vec<(Subject, Strengths)>,
}

/// How strong a component is against its drawdowns, and how many corrections say so.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Strengths {
    /// How many times as strong as its drawdowns say.
    pub times: f64,
    /// Corrections that it was learned from.
    pub lessons: u32,
}

impl<'a> Knowledge<'a> {
    pub(crate) fn of(shop: &'a Shop) -> Self {
        Self { shop, plain: Vec::new(), strengths: Vec::new() }
    }

    /// What the drawdowns say. A component whose white is let down with itself, round about, is worked out
    /// without those.
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

    /// A drawdown with all that it rests on; none where its white or base is not known.
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

    /// How strong it is, learned from corrections. Of pigments only: what else goes in moves a colour too little.
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

    /// What it does to light, as strong as corrections have shown it to be.
    pub(crate) fn constants(&mut self, id: Subject) -> Option<Constants> {
        let plain = self.plain(id)?.constants;
        Some(plain.times(self.strength(id).times))
    }

    /// Of a mixture of weights; those that are not known.
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

/// A drawdown with what lies in it and under it.
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

/// How a component is taken where its drawdowns do not say.
fn body_of(hiding: Hiding) -> Body {
    match hiding {
        Hiding::Opaque => Body::Opaque,
        Hiding::Transparent => Body::Transparent,
    }
}

/// The drawdowns of a component that were not taken back, oldest first.
pub(crate) fn drawdowns_of(shop: &Shop, id: Subject) -> Vec<(Subject, &DrawdownMade)> {
    let events = shop.ink.events_of(id).into_iter().filter(|(_, event)| !event.deleted);
    let made = events.filter_map(|(event, row)| {
        let InkFact::DrawnDown(made) = &row.fact else { return None };
        (made.component == id).then_some((event, made))
    });
    made.collect()
}
