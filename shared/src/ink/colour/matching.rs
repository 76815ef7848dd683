//! Does the pot match its target, and what is to be added?

use super::characterised::Knowledge;
use super::component_colour::{NotDrawn, not_drawn};
use crate::colour::correction::{Advice, Correction, Offer, Verdict, Wish, what_to_add};
use crate::colour::{Constants, Lab, Origin, Word, ciede2000, cmc_2_1, in_words};
use crate::facts::{ColourReading, ComponentKind, ReadOn, Share, lab_of};
use crate::ids::Subject;
use crate::ink::pot::reading::{Ground, held, last_reading, moments, weights_of};
use crate::ink::{Garment, Pot, PotReading, PotState, stock_left};
use crate::shop::Shop;
use crate::units::Grams;

/// CIEDE2000 that is near enough: what an eye finds side by side (our own).
pub const NEAR_ENOUGH: f64 = 1.0;

/// How far a pot is from its target.
#[derive(Clone, Debug, PartialEq)]
pub struct Difference {
    /// CIEDE2000.
    pub de2000: f64,
    /// CMC(2:1).
    pub cmc: f64,
    /// How the pot differs, most striking first.
    pub words: Vec<Word>,
    /// Whether it is near enough.
    pub near: bool,
}

impl Difference {
    /// Of a sample from a target.
    pub fn of(target: Lab, sample: Lab) -> Self {
        let de2000 = ciede2000(target, sample);
        let words = in_words(target, sample);
        Self { de2000, cmc: cmc_2_1(target, sample), words, near: de2000 <= NEAR_ENOUGH }
    }
}

/// So much of a component.
#[derive(Clone, Debug, PartialEq)]
pub struct AddRow {
    /// Which.
    pub component: Subject,
    /// Its name.
    pub name: String,
    /// Its colour.
    pub colour: Option<crate::colour::Colour>,
    /// How much.
    pub grams: Grams,
}

/// A way to correct the pot.
#[derive(Clone, Debug, PartialEq)]
pub struct AddWay {
    /// What to add.
    pub rows: Vec<AddRow>,
    /// The colour predicted.
    pub look: Lab,
    /// How far it will then be from the target, as predicted.
    pub after: Difference,
    /// What will then be in the pot.
    pub total: Grams,
}

/// What to add.
#[derive(Clone, Debug, PartialEq)]
pub struct AddAdvice {
    /// CIEDE2000 from the target as it is.
    pub before: f64,
    /// Ways, each closer than the one before; the last is the one advised.
    pub ways: Vec<AddWay>,
    /// How far that brings it.
    pub verdict: Verdict,
    /// Whether every curve behind it was measured.
    pub origin: Origin,
    /// Whether a drawdown behind it was read from a photo.
    pub by_photo: bool,
    /// Whether it starts from a reading of the pot; else from what its recipe is worked out to look like.
    pub from_reading: bool,
    /// What is left between the reading and any ink of that recipe, CIEDE2000; more than a unit is a swatch that
    /// does not belong to this pot.
    pub left: f64,
    /// How many components could go in.
    pub offers: u32,
    /// The most that could still go in, by the pot and what the scale bears; half of it is a guess where the pot's size is not known.
    pub room: Grams,
    /// Whether the pot's size is known.
    pub room_known: bool,
}

/// Why nothing can be advised.
#[derive(Clone, Debug, PartialEq)]
pub enum NoAdvice {
    /// The recipe has no target, or the pot is of no recipe.
    NoTarget,
    /// The pot is empty.
    Empty,
    /// These of its components were never drawn down.
    NotDrawn(Vec<NotDrawn>),
}

/// A pot beside its target.
#[derive(Clone, Debug, PartialEq)]
pub struct MatchView {
    /// Which pot.
    pub pot: Subject,
    /// What is written on it.
    pub name: String,
    /// Its recipe.
    pub recipe: Option<Subject>,
    /// What the ink is called.
    pub ink: String,
    /// What is in it.
    pub total: Grams,
    /// The garment it is for.
    pub garment: Option<Garment>,
    /// On what its swatches are read.
    pub on: ReadOn,
    /// With how many hits, where they are printed.
    pub hits: u8,
    /// The colour it is to have.
    pub target: Option<ColourReading>,
    /// The reading that tells most about it.
    pub reading: Option<PotReading>,
    /// What it is worked out to look like now; none where not all in it was drawn down.
    pub look: Option<Lab>,
    /// What stands between what is shown of it and the target: its reading while nothing went in since, else what is
    /// worked out.
    pub difference: Option<Difference>,
    /// Whether that difference was read, not worked out.
    pub is_read: bool,
    /// What to add.
    pub advice: Result<AddAdvice, NoAdvice>,
}

impl MatchView {
    /// The colour to show for the pot.
    pub fn shown(&self) -> Option<Lab> {
        let read = self.reading.as_ref().filter(|_| self.is_read);
        read.map(|reading| lab_of(reading.reading)).or(self.look)
    }
}

/// A pot beside its target; none where there is no such pot.
pub fn match_view(shop: &Shop, id: Subject) -> Option<MatchView> {
    let pot = shop.ink.pot(id)?;
    let (state, moments) = moments(shop, id);
    let recipe_id = crate::ink::batch::needs::recipe_of(shop, &state);
    let recipe = recipe_id.and_then(|id| shop.ink.recipe(id));
    let target = recipe.and_then(|recipe| recipe.target);
    let ground = Ground::of(shop, id, recipe_id);
    let reading = last_reading(&moments);

    let mut knowledge = Knowledge::of(shop);
    let now = knowledge.mix(&weights_of(&state.contents));
    let mixture = now.and_then(|now| match &reading {
        None => Ok((now, 0.0)),
        Some((reading, contents)) => {
            let then = knowledge.mix(&weights_of(contents))?;
            Ok(held(&now, &then, ground.seen(), reading.reading))
        }
    });
    let reading = reading.map(|(reading, _)| reading);
    let look = mixture.as_ref().ok().map(|(mixture, _)| ground.seen().look(mixture).lab());
    let is_read = reading.as_ref().is_some_and(|reading| reading.since == 0);
    let shown = reading.as_ref().filter(|_| is_read).map(|reading| lab_of(reading.reading)).or(look);
    let difference = target.zip(shown).map(|(target, shown)| Difference::of(lab_of(target), shown));
    let advice = match (target, mixture) {
        _ if !state.contents.total().is_positive() => Err(NoAdvice::Empty),
        (None, _) => Err(NoAdvice::NoTarget),
        (_, Err(unknown)) => Err(NoAdvice::NotDrawn(not_drawn(&mut knowledge, &unknown))),
        (Some(target), Ok((mixture, left))) => {
            let from_reading = reading.is_some();
            advice(&mut knowledge, &state, pot, lab_of(target), &ground, &mixture)
                .map(|advice| AddAdvice { from_reading, left, ..advice })
                .ok_or(NoAdvice::Empty)
        }
    };
    Some(MatchView {
        pot: id,
        name: pot.name.clone(),
        recipe: recipe_id,
        ink: recipe.map_or_else(|| pot.name.clone(), |recipe| recipe.name.clone()),
        total: state.contents.total(),
        on: ground.on,
        hits: ground.hits(),
        garment: ground.garment,
        target,
        reading,
        look,
        difference,
        is_read,
        advice,
    })
}

/// A component that may go in.
struct Candidate {
    id: Subject,
    constants: Constants,
    in_pot: Grams,
    stock: Grams,
    most: Option<Share>,
    pigment: bool,
    most_pigment: Option<Share>,
}

fn advice(
    knowledge: &mut Knowledge,
    state: &PotState,
    pot: &Pot,
    target: Lab,
    ground: &Ground,
    mixture: &Constants,
) -> Option<AddAdvice> {
    let shop = knowledge.shop;
    let total = state.contents.total();
    let part = |share: Share| (share.percent() / 100.0).min(1.0);
    let mut candidates: Vec<Candidate> = Vec::new();
    let mut most_pigment = 1.0_f64;
    let mut pigment = Grams::ZERO;
    for (id, component) in shop.ink.components() {
        let in_pot = state.contents.of(id);
        if component.kind == ComponentKind::Pigment {
            pigment = pigment.saturating_add(in_pot);
        }
        // The tightest of the sheets of the bases in it; one that goes in brings its own.
        if let Some(most) = component.most_pigment.filter(|_| in_pot.is_positive()) {
            most_pigment = most_pigment.min(part(most));
        }
        // What changes drying or hand is not for colour.
        if component.kind != ComponentKind::Additive {
            candidates.extend(knowledge.constants(id).map(|constants| Candidate {
                id,
                constants,
                in_pot,
                stock: stock_left(shop, id).map_or(Grams::MOST, Grams::max_zero),
                most: component.most,
                pigment: component.kind == ComponentKind::Pigment,
                most_pigment: component.most_pigment,
            }));
        }
    }
    let offers: Vec<Offer> = candidates
        .iter()
        .map(|candidate| Offer {
            constants: &candidate.constants,
            in_pot: candidate.in_pot.grams(),
            stock: candidate.stock.grams(),
            most: candidate.most.map(part),
            pigment: candidate.pigment,
            all_pigment: candidate.most_pigment.map(part),
        })
        .collect();
    // As much again, where nobody said how much the pot holds: our own.
    let room = pot.capacity.map_or(total, |capacity| capacity.saturating_sub(total).max_zero());
    // Nor more than the scale bears, vessel and all.
    let bears = shop
        .ink
        .scale
        .most
        .map(|most| most.saturating_sub(total).saturating_sub(pot.tare.unwrap_or_default()).max_zero());
    let room = bears.map_or(room, |bears| bears.min(room));
    let advice = what_to_add(&Wish {
        pot: mixture,
        grams: total.grams(),
        room: room.grams(),
        target,
        seen: ground.seen(),
        offers: &offers,
        all_pigment: Some((most_pigment, pigment.grams())),
        at_most: 3,
        resolution: shop.ink.scale.step.grams(),
        near_enough: NEAR_ENOUGH,
    })?;
    let mut origin = mixture.origin;
    let mut row = |candidate: &Candidate, grams: f64| {
        origin = origin.and(candidate.constants.origin);
        let component = shop.ink.component(candidate.id);
        AddRow {
            component: candidate.id,
            name: component.map(|component| component.name.clone()).unwrap_or_default(),
            colour: component.and_then(|component| component.colour),
            grams: Grams::from_grams(grams),
        }
    };
    let mut way = |correction: &Correction| {
        let additions = correction.additions.iter();
        let rows: Vec<AddRow> =
            additions.filter_map(|addition| Some(row(candidates.get(addition.offer)?, addition.grams))).collect();
        let total = rows.iter().fold(total, |total, row| total.saturating_add(row.grams));
        AddWay { rows, look: correction.look, after: Difference::of(target, correction.look), total }
    };
    let Advice { before, ways, verdict } = &advice;
    let ways: Vec<AddWay> = ways.iter().map(&mut way).collect();
    let added = ways.iter().flat_map(|way| way.rows.iter().map(|row| row.component));
    let by_photo = knowledge.any_photo(state.contents.rows().into_iter().map(|(id, _)| id).chain(added));
    Some(AddAdvice {
        before: *before,
        ways,
        verdict: *verdict,
        origin,
        by_photo,
        from_reading: false,
        left: 0.0,
        offers: offers.len() as u32,
        room,
        room_known: pot.capacity.is_some(),
    })
}
