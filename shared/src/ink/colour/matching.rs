//! Whether a pot matches its target, and what to add to it.

use super::characterised::ColourantLibrary;
use super::component_colour::{Uncharacterised, uncharacterised};
use crate::colour::correction::{Advice, Candidate, Correction, CorrectionProblem, Outcome, PigmentLimit, what_to_add};
use crate::colour::{Constants, DifferenceWord, Lab, Origin, ciede2000, cmc_2_1, describe_difference};
use crate::facts::{ColourReading, ComponentKind, ReadOn, Share, lab_of};
use crate::ids::Subject;
use crate::ink::pot::reading::{ViewingConditions, anchor_to_reading, last_reading, snapshots, weights_of};
use crate::ink::{Garment, Pot, PotReading, PotState, stock_left};
use crate::shop::Shop;
use crate::units::Grams;

/// CIEDE2000 up to which a pot matches: what an eye finds side by side (our own).
pub const NEAR_ENOUGH: f64 = 1.0;

/// Difference of a pot from its target.
#[derive(Clone, Debug, PartialEq)]
pub struct ColourDifference {
    /// CIEDE2000.
    pub de2000: f64,
    /// CMC(2:1).
    pub cmc: f64,
    /// How the pot differs, largest difference first.
    pub words: Vec<DifferenceWord>,
    /// Whether it is at most [`NEAR_ENOUGH`].
    pub near: bool,
}

impl ColourDifference {
    /// The difference of a sample from a target.
    pub fn of(target: Lab, sample: Lab) -> Self {
        let de2000 = ciede2000(target, sample);
        let words = describe_difference(target, sample);
        Self { de2000, cmc: cmc_2_1(target, sample), words, near: de2000 <= NEAR_ENOUGH }
    }
}

/// A component to add.
#[derive(Clone, Debug, PartialEq)]
pub struct AddRow {
    /// Id of the component.
    pub component: Subject,
    /// Its name.
    pub name: String,
    /// Its colour.
    pub colour: Option<crate::colour::Colour>,
    /// Its weight.
    pub grams: Grams,
}

/// A way to correct the pot.
#[derive(Clone, Debug, PartialEq)]
pub struct AddWay {
    /// What to add.
    pub rows: Vec<AddRow>,
    /// Predicted colour after the addition.
    pub look: Lab,
    /// Predicted difference from the target after the addition.
    pub after: ColourDifference,
    /// Weight in the pot after the addition.
    pub total: Grams,
}

/// What to add to a pot.
#[derive(Clone, Debug, PartialEq)]
pub struct AddAdvice {
    /// CIEDE2000 from the target before any addition.
    pub before: f64,
    /// Ways, each closer than the one before; the last is the one advised.
    pub ways: Vec<AddWay>,
    /// How close the last way brings it.
    pub outcome: Outcome,
    /// Whether every curve behind it was measured.
    pub origin: Origin,
    /// Whether a drawdown behind it was read from a photo.
    pub by_photo: bool,
    /// Whether it starts from a reading of the pot; otherwise from the prediction for its recipe.
    pub from_reading: bool,
    /// CIEDE2000 between the reading and the nearest colour that this recipe can have; above 1 the swatch does not
    /// belong to this pot.
    pub residual: f64,
    /// Number of components considered.
    pub candidates: u32,
    /// The most that can still be added, by the pot and the scale's capacity; a guess (as much again) if the pot's size
    /// is unknown.
    pub headroom: Grams,
    /// Whether the pot's size is known.
    pub headroom_known: bool,
}

/// Why no advice is possible.
#[derive(Clone, Debug, PartialEq)]
pub enum NoAdvice {
    /// The recipe has no target, or the pot has no recipe.
    NoTarget,
    /// The pot is empty.
    Empty,
    /// These of its components were never drawn down.
    Uncharacterised(Vec<Uncharacterised>),
}

/// A pot compared with its target.
#[derive(Clone, Debug, PartialEq)]
pub struct MatchView {
    /// The other pot.
    pub pot: Subject,
    /// The name written on it.
    pub name: String,
    /// Its recipe.
    pub recipe: Option<Subject>,
    /// Name of the ink.
    pub ink: String,
    /// Weight of its contents.
    pub total: Grams,
    /// The garment it is for.
    pub garment: Option<Garment>,
    /// What its swatches are read on.
    pub on: ReadOn,
    /// Number of hits, if swatches are printed.
    pub hits: u8,
    /// The target colour.
    pub target: Option<ColourReading>,
    /// Its latest reading.
    pub reading: Option<PotReading>,
    /// Predicted colour now; `None` if one of its components was never drawn down.
    pub look: Option<Lab>,
    /// Difference between the colour shown and the target: of the reading if nothing was added since, otherwise of the
    /// prediction.
    pub difference: Option<ColourDifference>,
    /// Whether that difference was read rather than predicted.
    pub is_read: bool,
    /// What to add, or why that is unknown.
    pub advice: Result<AddAdvice, NoAdvice>,
}

impl MatchView {
    /// The colour to show for the pot.
    pub fn displayed(&self) -> Option<Lab> {
        let read = self.reading.as_ref().filter(|_| self.is_read);
        read.map(|reading| lab_of(reading.reading)).or(self.look)
    }
}

/// A pot compared with its target; `None` if there is no such pot.
pub fn match_view(shop: &Shop, id: Subject) -> Option<MatchView> {
    let pot = shop.ink.pot(id)?;
    let (state, snapshots) = snapshots(shop, id);
    let recipe_id = crate::ink::batch::needs::recipe_of(shop, &state);
    let recipe = recipe_id.and_then(|id| shop.ink.recipe(id));
    let target = recipe.and_then(|recipe| recipe.target);
    let viewing = ViewingConditions::of(shop, id, recipe_id);
    let reading = last_reading(&snapshots);

    let mut library = ColourantLibrary::of(shop);
    let now = library.mix(&weights_of(&state.contents));
    let mixture = now.and_then(|now| match &reading {
        None => Ok((now, 0.0)),
        Some((reading, contents)) => {
            let then = library.mix(&weights_of(contents))?;
            Ok(anchor_to_reading(&now, &then, viewing.seen(), reading.reading))
        }
    });
    let reading = reading.map(|(reading, _)| reading);
    let look = mixture.as_ref().ok().map(|(mixture, _)| viewing.seen().look(mixture).lab());
    let is_read = reading.as_ref().is_some_and(|reading| reading.since == 0);
    let shown = reading.as_ref().filter(|_| is_read).map(|reading| lab_of(reading.reading)).or(look);
    let difference = target.zip(shown).map(|(target, shown)| ColourDifference::of(lab_of(target), shown));
    let advice = match (target, mixture) {
        _ if !state.contents.total().is_positive() => Err(NoAdvice::Empty),
        (None, _) => Err(NoAdvice::NoTarget),
        (_, Err(unknown)) => Err(NoAdvice::Uncharacterised(uncharacterised(&mut library, &unknown))),
        (Some(target), Ok((mixture, residual))) => {
            let from_reading = reading.is_some();
            advice(&mut library, &state, pot, lab_of(target), &viewing, &mixture)
                .map(|advice| AddAdvice { from_reading, residual, ..advice })
                .ok_or(NoAdvice::Empty)
        }
    };
    Some(MatchView {
        pot: id,
        name: pot.name.clone(),
        recipe: recipe_id,
        ink: recipe.map_or_else(|| pot.name.clone(), |recipe| recipe.name.clone()),
        total: state.contents.total(),
        on: viewing.on,
        hits: viewing.hits(),
        garment: viewing.garment,
        target,
        reading,
        look,
        difference,
        is_read,
        advice,
    })
}

/// A component that may be added.
struct StockedCandidate {
    id: Subject,
    constants: Constants,
    in_pot: Grams,
    stock: Grams,
    most: Option<Share>,
    pigment: bool,
    most_pigment: Option<Share>,
}

fn advice(
    library: &mut ColourantLibrary,
    state: &PotState,
    pot: &Pot,
    target: Lab,
    viewing: &ViewingConditions,
    mixture: &Constants,
) -> Option<AddAdvice> {
    let shop = library.shop;
    let total = state.contents.total();
    let part = |share: Share| (share.percent() / 100.0).min(1.0);
    let mut stocked: Vec<StockedCandidate> = Vec::new();
    let mut most_pigment = 1.0_f64;
    let mut pigment = Grams::ZERO;
    for (id, component) in shop.ink.components() {
        let in_pot = state.contents.of(id);
        if component.kind == ComponentKind::Pigment {
            pigment = pigment.saturating_add(in_pot);
        }
        // The strictest limit of the bases in the pot; an added base brings its own.
        if let Some(most) = component.most_pigment.filter(|_| in_pot.is_positive()) {
            most_pigment = most_pigment.min(part(most));
        }
        // Additives change drying or feel, and are not used for colour.
        if component.kind != ComponentKind::Additive {
            stocked.extend(library.constants(id).map(|constants| StockedCandidate {
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
    let candidates: Vec<Candidate> = stocked
        .iter()
        .map(|candidate| Candidate {
            constants: &candidate.constants,
            in_pot: candidate.in_pot.grams(),
            stock: candidate.stock.grams(),
            most: candidate.most.map(part),
            pigment: candidate.pigment,
            all_pigment: candidate.most_pigment.map(part),
        })
        .collect();
    // Assume that as much again fits if the pot's size is unknown: our own.
    let headroom = pot.capacity.map_or(total, |capacity| capacity.saturating_sub(total).max_zero());
    // Nor more than the scale's capacity, vessel included.
    let bears = shop
        .ink
        .scale
        .most
        .map(|most| most.saturating_sub(total).saturating_sub(pot.tare.unwrap_or_default()).max_zero());
    let headroom = bears.map_or(headroom, |bears| bears.min(headroom));
    let advice = what_to_add(&CorrectionProblem {
        pot: mixture,
        grams: total.grams(),
        headroom: headroom.grams(),
        target,
        seen: viewing.seen(),
        candidates: &candidates,
        all_pigment: Some(PigmentLimit { most: most_pigment, now: pigment.grams() }),
        max_components: 3,
        resolution: shop.ink.scale.step.grams(),
        near_enough: NEAR_ENOUGH,
    })?;
    let mut origin = mixture.origin;
    let mut row = |candidate: &StockedCandidate, grams: f64| {
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
            additions.filter_map(|addition| Some(row(stocked.get(addition.candidate)?, addition.grams))).collect();
        let total = rows.iter().fold(total, |total, row| total.saturating_add(row.grams));
        AddWay { rows, look: correction.look, after: ColourDifference::of(target, correction.look), total }
    };
    let Advice { before, ways, outcome } = &advice;
    let ways: Vec<AddWay> = ways.iter().map(&mut way).collect();
    let added = ways.iter().flat_map(|way| way.rows.iter().map(|row| row.component));
    let by_photo = library.any_photo(state.contents.rows().into_iter().map(|(id, _)| id).chain(added));
    Some(AddAdvice {
        before: *before,
        ways,
        outcome: *outcome,
        origin,
        by_photo,
        from_reading: false,
        residual: 0.0,
        candidates: candidates.len() as u32,
        headroom,
        headroom_known: pot.capacity.is_some(),
    })
}
