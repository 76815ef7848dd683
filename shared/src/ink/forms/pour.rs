//! The forms at the scale: pours, corrections, and ink taken out of a pot.

use super::reading::ReadingForm;
use crate::facts::{InkFact, PourStep};
use crate::form::{FormProblem, Problems, TYPED_NOTE, collect, collect_optional, parse_required, parse_text};
use crate::ids::{RunId, Subject};
use crate::ink::pot_state;
use crate::shop::Shop;
use crate::units::{Grams, NumberProblem, Units, parse_whole};
use serde::{Deserialize, Serialize};

/// What the scale shows with a pot on it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct ScaleReadings {
    /// Now: the vessel and its contents.
    pub now: Grams,
    /// With the pot empty: the vessel alone.
    pub empty: Grams,
}

impl ScaleReadings {
    /// Weight of the contents.
    pub fn contents(self) -> Grams {
        self.now.saturating_sub(self.empty)
    }
}

/// What the scale shows with a pot on it.
pub fn scale_readings(shop: &Shop, pot: Subject) -> ScaleReadings {
    let empty = shop.ink.pot(pot).and_then(|pot| pot.tare).unwrap_or_default();
    ScaleReadings { now: pot_state(shop, pot).contents.total().saturating_add(empty), empty }
}

/// A pour: its own weight, or the total that the scale shows with the pot on it.
#[derive(Clone, Debug, PartialEq, Default)]
pub struct PourForm {
    /// The component; `None` until it is chosen.
    pub component: Option<Subject>,
    /// The weight.
    pub grams: String,
    /// Whether that is the total on the scale.
    pub total: bool,
    /// Why, as a note.
    pub note: String,
    /// Reading of a swatch made after the pour.
    pub reading: ReadingForm,
}

impl PourForm {
    /// The fact of a pour into a pot, or what is wrong. A total no larger than what the scale showed before is a
    /// problem of `grams`.
    ///
    /// # Errors
    /// [`Problems`] by field: `component`, `grams`, `note`, `l`, `a`, `b`.
    pub fn check(
        &self,
        shop: &Shop,
        pot: Subject,
        step: PourStep,
        by: Option<&str>,
        units: Units,
    ) -> Result<InkFact, Problems> {
        let mut problems = Problems::new();
        let p = &mut problems;
        let component = collect(p, "component", self.component.ok_or(FormProblem::Missing));
        let note = collect(p, "note", parse_text(&self.note, TYPED_NOTE));
        let reading = self.reading.check(p);
        let before = if self.total { scale_readings(shop, pot).now } else { Grams::ZERO };
        let least = Grams::from_milligrams(1);
        let typed = parse_required(&self.grams, |text| {
            let weight = Grams::parse(text, Grams::ZERO, before.saturating_add(Grams::MOST), units)?;
            let poured = weight.saturating_sub(before);
            let low = NumberProblem::TooLow { least: before.saturating_add(least).in_units(units) };
            if poured < least { Err(low) } else { Ok(poured.min(Grams::MOST)) }
        });
        let grams = collect(p, "grams", typed);
        match (component, grams, note, problems.is_empty()) {
            (Some(component), Some(grams), Some(note), true) => {
                Ok(InkFact::Poured { pot, component, grams, step, note, reading, by: by.map(str::to_owned) })
            }
            _ => Err(problems),
        }
    }
}

/// More than a weight grows by being displayed: half of a thousandth of an ounce.
const DISPLAY_STEP: Grams = Grams::from_milligrams(15);

/// Ink taken out of a pot: its own weight, or what the scale shows afterwards with the pot on it.
#[derive(Clone, Debug, PartialEq, Default, Serialize, Deserialize)]
#[serde(default)]
pub struct RemovalForm {
    /// The weight.
    pub grams: String,
    /// Whether that is what the scale shows afterwards.
    pub total: bool,
    /// Why, as a note.
    pub note: String,
    /// Number of pieces printed, or empty.
    pub pieces: String,
}

impl RemovalForm {
    /// Weight taken out; more than is in the pot is refused.
    fn taken(&self, shop: &Shop, pot: Subject, units: Units, p: &mut Problems) -> Option<Grams> {
        let scale = scale_readings(shop, pot);
        let least = Grams::from_milligrams(1);
        let read = |text: &str| -> Result<Grams, NumberProblem> {
            if self.total {
                let left = Grams::parse(text, scale.empty, scale.now.saturating_sub(least), units)?;
                Ok(scale.now.saturating_sub(left).min(scale.contents()).max(least))
            } else {
                // The whole contents may be typed as displayed or as a scale shows them, which is rounded.
                let all = scale.contents();
                let shown = all.saturating_add(shop.ink.scale.step.max(DISPLAY_STEP));
                let parse = |most| Grams::parse(text, Grams::ZERO, most, units);
                parse(shown).or_else(|_| parse(all)).map(|grams| grams.min(all).max(least))
            }
        };
        if scale.contents().is_positive() {
            collect(p, "grams", parse_required(&self.grams, read))
        } else {
            p.insert("grams", FormProblem::Number(NumberProblem::TooHigh { most: 0.0 }));
            None
        }
    }

    /// The fact of ink wasted, or what is wrong.
    ///
    /// # Errors
    /// [`Problems`] by field: `grams`, `note`.
    pub fn wasted(&self, shop: &Shop, pot: Subject, by: Option<&str>, units: Units) -> Result<InkFact, Problems> {
        let mut problems = Problems::new();
        let grams = self.taken(shop, pot, units, &mut problems);
        let note = collect(&mut problems, "note", parse_text(&self.note, TYPED_NOTE));
        match (grams, note) {
            (Some(grams), Some(note)) => Ok(InkFact::Wasted { pot, grams, note, by: by.map(str::to_owned) }),
            _ => Err(problems),
        }
    }

    /// The fact of ink moved to another pot, or what is wrong. More than still fits into that pot is refused.
    ///
    /// # Errors
    /// [`Problems`] by field: `grams`.
    pub fn moved(
        &self,
        shop: &Shop,
        [from, to]: [Subject; 2],
        by: Option<&str>,
        units: Units,
    ) -> Result<InkFact, Problems> {
        let mut problems = Problems::new();
        let grams = self.taken(shop, from, units, &mut problems);
        if let Some((grams, headroom)) = grams.zip(headroom_of(shop, to)) {
            if grams > headroom.max_zero() {
                let most = headroom.max_zero().in_units(units);
                problems.insert("grams", FormProblem::Number(NumberProblem::TooHigh { most }));
            }
        }
        match (grams, problems.is_empty()) {
            (Some(grams), true) => Ok(InkFact::Moved { from, to, grams, by: by.map(str::to_owned) }),
            _ => Err(problems),
        }
    }

    /// The fact of ink used for printing, or what is wrong. The calculated weight for the pieces is recorded with it,
    /// if it is known how much ink a print of the run takes.
    ///
    /// # Errors
    /// [`Problems`] by field: `grams`, `pieces`.
    pub fn used(
        &self,
        shop: &Shop,
        pot: Subject,
        run: Option<RunId>,
        by: Option<&str>,
        units: Units,
    ) -> Result<InkFact, Problems> {
        let mut problems = Problems::new();
        let grams = self.taken(shop, pot, units, &mut problems);
        let pieces = collect_optional(&mut problems, "pieces", &self.pieces, |text| parse_whole(text, 1, 1_000_000));
        let (Some(grams), true) = (grams, problems.is_empty()) else { return Err(problems) };
        let pieces = pieces.unwrap_or(0);
        let print = run.and_then(|run| shop.ink.print(run)).filter(|_| pieces > 0);
        let paper =
            print.map(|print| print.nominal_use(pieces)).filter(|paper| (Grams::ZERO..=Grams::MOST).contains(paper));
        Ok(InkFact::Used { pot, run, grams, pieces, paper, by: by.map(str::to_owned) })
    }
}

/// Weight that still fits into a pot, below zero if it is overfull; `None` if its capacity is unknown.
pub fn headroom_of(shop: &Shop, pot: Subject) -> Option<Grams> {
    let capacity = shop.ink.pot(pot)?.capacity?;
    Some(capacity.saturating_sub(pot_state(shop, pot).contents.total()))
}
