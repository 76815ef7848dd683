//! The form of how much of a recipe to make again.

use super::pot::PotForm;
use crate::facts::{BatchSize, PotField};
use crate::form::{FormProblem, Problems, collect, parse_required};
use crate::ids::{RunId, Subject};
use crate::ink::batch::new_pot::{last_vessel, unused_pot_name};
use crate::ink::{SuggestedBatch, ink_needed, recipe_named, suggested_batch};
use crate::plan::open_runs;
use crate::shop::Shop;
use crate::units::{Grams, NumberProblem, Units, WeightUnit, parse_whole};
use serde::{Deserialize, Serialize};

/// The size of a batch: a weight, or pieces of a run.
#[derive(Clone, Debug, PartialEq, Default, Serialize, Deserialize)]
#[serde(default)]
pub struct BatchSizeForm {
    /// Whether the size is given in pieces.
    pub by_pieces: bool,
    /// The weight, in the units of the device.
    pub grams: String,
    /// Whether that is the ink alone, with the on-top parts added to it.
    pub of_ink: bool,
    /// The run it is for.
    pub run: Option<RunId>,
    /// Number of pieces of that run.
    pub pieces: String,
    /// Capacity of the pot, or empty.
    pub capacity: String,
    /// Weight of the empty pot, or empty if the scale is zeroed with it on.
    pub tare: String,
}

/// The size of a batch to make.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RequestedBatch {
    /// The batch.
    pub size: BatchSize,
    /// How it was calculated from pieces; `None` if a weight was typed.
    pub batch: Option<SuggestedBatch>,
}

/// A run that a recipe can be made for.
#[derive(Clone, Debug, PartialEq)]
pub struct BatchTarget {
    /// The run.
    pub run: RunId,
    /// Its job's title.
    pub title: String,
    /// Pieces left.
    pub pieces: u32,
    /// Whether it is known how much ink a print takes.
    pub known: bool,
}

/// The open runs that name a recipe's ink, in the order of the day.
pub fn batch_targets(shop: &Shop, recipe: Subject) -> Vec<BatchTarget> {
    let mut rows = Vec::new();
    for id in open_runs(shop) {
        let named = shop.run(id).and_then(|run| recipe_named(shop, &run.ink));
        if let (Some((found, _)), Some((_, job))) = (named, shop.job_of(id)) {
            if found == recipe {
                let (pieces, known) = (shop.pieces_left(id), shop.ink.print(id).is_some());
                rows.push(BatchTarget { run: id, title: job.title.clone(), pieces, known });
            }
        }
    }
    rows
}

/// Rounded up as a person would type it: to whole grams, or tenths of an ounce.
fn as_typed(grams: Grams, units: Units) -> Grams {
    match units.weight {
        WeightUnit::Ounces => Grams::from_units((grams.in_units(units) * 10.0).ceil() / 10.0, units),
        WeightUnit::Grams => Grams::from_grams(grams.grams().ceil()),
    }
}

impl BatchSizeForm {
    /// The amount likely needed, in a pot like the last one: what the first run that needs this ink still lacks, else
    /// as much as in the last pot made of it.
    pub fn of(shop: &Shop, recipe: Subject, units: Units) -> Self {
        let runs = batch_targets(shop, recipe);
        let lacking = ink_needed(shop)
            .into_iter()
            .find(|need| need.recipe == Some(recipe) && need.to_mix.is_some_and(Grams::is_positive));
        let run = lacking.as_ref().map(|need| need.run).or_else(|| runs.first().map(|row| row.run));
        let last = shop.ink.last_sized_pot(recipe).and_then(|pot| pot.size);
        let (grams, of_ink) = match (lacking.and_then(|need| need.to_mix), last) {
            (Some(lacks), _) => (Some(as_typed(lacks, units)), false),
            (None, Some(BatchSize::Whole(size))) => (Some(size), false),
            (None, Some(BatchSize::Ink(size))) => (Some(size), true),
            (None, None) => (None, false),
        };
        let pieces = runs.iter().find(|row| Some(row.run) == run).map(|row| row.pieces.to_string());
        let vessel = last_vessel(shop);
        let text = |weight: Option<Grams>| weight.map(|weight| weight.text(units)).unwrap_or_default();
        Self {
            capacity: text(vessel.capacity),
            tare: text(vessel.tare),
            by_pieces: false,
            grams: grams.map(|grams| grams.text(units)).unwrap_or_default(),
            of_ink,
            run,
            pieces: pieces.unwrap_or_default(),
        }
    }

    /// The size to make, or what is wrong.
    ///
    /// # Errors
    /// [`Problems`] by field: `grams`, or `pieces`; `run` if it is unknown how much ink a print of it takes.
    pub fn size(&self, shop: &Shop, units: Units) -> Result<RequestedBatch, Problems> {
        let mut problems = Problems::new();
        let p = &mut problems;
        if self.by_pieces {
            let pieces = collect(p, "pieces", parse_required(&self.pieces, |text| parse_whole(text, 1, 100_000)));
            let print = self.run.and_then(|run| Some((run, shop.ink.print(run)?)));
            let batch = print.zip(pieces).map(|((run, print), pieces)| suggested_batch(shop, run, print, pieces));
            let Some(batch) = batch else {
                if print.is_none() {
                    problems.insert("run", FormProblem::Missing);
                }
                return Err(problems);
            };
            return Ok(RequestedBatch { size: BatchSize::Whole(batch.grams), batch: Some(batch) });
        }
        let least = shop.ink.scale.step;
        let read = parse_required(&self.grams, |text| Grams::parse(text, least, Grams::MOST, units));
        let Some(grams) = collect(p, "grams", read) else { return Err(problems) };
        let size = if self.of_ink { BatchSize::Ink(grams) } else { BatchSize::Whole(grams) };
        Ok(RequestedBatch { size, batch: None })
    }

    /// The fields of the pot to weigh this into, or what is wrong. It is named after the ink and the job it is for,
    /// with a number if an open pot has that name.
    ///
    /// # Errors
    /// [`Problems`] as of [`size`](Self::size), `capacity` if it is less than the batch, and `tare`.
    pub fn pot(&self, shop: &Shop, revision: Subject, units: Units) -> Result<Vec<PotField>, Problems> {
        let size = self.size(shop, units)?.size;
        let made = shop.ink.revision(revision);
        let recipe = made.and_then(|made| shop.ink.recipe(made.recipe));
        let ink = recipe.map(|recipe| recipe.name.clone()).unwrap_or_default();
        let title = self.run.and_then(|run| shop.job_of(run)).map(|(_, job)| job.title.clone()).unwrap_or_default();
        let name = if title.is_empty() { ink } else { format!("{ink}, {title}") };
        // Leaves room for the number.
        let name = unused_pot_name(shop, &name.chars().take(70).collect::<String>());
        let (capacity, tare) = (self.capacity.clone(), self.tare.clone());
        let fields = PotForm { name, capacity, tare, ..PotForm::default() };
        let mut fields = fields.check(shop, None, Some(revision), self.run, units)?;
        let whole = made.map(|made| size.whole(made.parts)).unwrap_or_default();
        for field in &mut fields {
            match field {
                // To the milligram, whatever unit it is shown in.
                PotField::Size(kept) => *kept = Some(size),
                PotField::Capacity(Some(capacity)) if whole > *capacity => {
                    let low = FormProblem::Number(NumberProblem::TooLow { least: whole.in_units(units) });
                    return Err(Problems::from([("capacity", low)]));
                }
                PotField::Name(_)
                | PotField::Revision(_)
                | PotField::Capacity(_)
                | PotField::Tare(_)
                | PotField::Run(_)
                | PotField::Note(_)
                | PotField::Closed(_) => {}
            }
        }
        Ok(fields)
    }
}
