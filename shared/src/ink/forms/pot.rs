//! The pot form, and the form of the shop's scale.

use crate::facts::{BatchSize, Fact, InkFact, PotField};
use crate::form::{
    FormProblem, Problems, TYPED_NOTE, changed_fields, collect, collect_optional, parse_required, parse_required_name,
    parse_text,
};
use crate::ids::{RunId, Subject};
use crate::ink::pot::weigh_in::{as_resized, is_weigh_in_started};
use crate::ink::{Pot, Scale};
use crate::shop::Shop;
use crate::units::{Grams, NumberProblem, Units};
use serde::{Deserialize, Serialize};
use uuid::Uuid;

/// The pot form. Weights are in the units of the device.
#[derive(Clone, Debug, PartialEq, Default, Serialize, Deserialize)]
#[serde(default)]
pub struct PotForm {
    /// The name written on it.
    pub name: String,
    /// Size of the batch, or empty.
    pub size: String,
    /// Whether that is the ink alone, with the on-top parts added to it.
    pub of_ink: bool,
    /// Capacity, or empty.
    pub capacity: String,
    /// Weight of the empty pot, or empty if the scale is zeroed with it on.
    pub tare: String,
    /// Free note.
    pub note: String,
}

impl PotForm {
    /// The form filled from a pot.
    pub fn of(pot: &Pot, units: Units) -> Self {
        let weight = |weight: Option<Grams>| weight.map(|weight| weight.text(units)).unwrap_or_default();
        let (size, of_ink) = match pot.size {
            Some(BatchSize::Whole(size)) => (Some(size), false),
            Some(BatchSize::Ink(size)) => (Some(size), true),
            None => (None, false),
        };
        Self {
            name: pot.name.clone(),
            size: weight(size),
            of_ink,
            capacity: weight(pot.capacity),
            tare: weight(pot.tare),
            note: pot.note.clone(),
        }
    }

    /// The form to edit a pot, with the size it is weighed to now.
    pub fn to_edit(shop: &Shop, id: Subject, units: Units) -> Option<Self> {
        as_resized(shop, id).map(|pot| Self::of(&pot, units))
    }

    /// The facts that edit a pot, or what is wrong. Once its weigh-in has started, a new size is recorded as a resize
    /// of the weigh-in, which undo at the scale reverses like any other.
    ///
    /// # Errors
    /// [`Problems`] as of [`check`](Self::check).
    pub fn edit(
        &self,
        shop: &Shop,
        id: Subject,
        by: Option<&str>,
        units: Units,
        new_id: impl FnOnce() -> Uuid,
    ) -> Result<Vec<(Subject, Fact)>, Problems> {
        let Some(pot) = shop.ink.pot(id) else { return Ok(Vec::new()) };
        let mut fields = self.check(shop, Some(id), pot.revision, pot.run, units)?;
        let mut facts = Vec::new();
        let sized = fields.iter().find_map(|field| if let PotField::Size(size) = field { *size } else { None });
        let revision = pot.revision.and_then(|id| shop.ink.revision(id));
        if let Some((size, revision)) = sized.zip(revision).filter(|_| is_weigh_in_started(shop, id)) {
            // A pot without any size needs one for a weigh-in.
            fields.retain(|field| pot.size.is_none() || !matches!(field, PotField::Size(_)));
            let whole = size.whole(revision.parts);
            facts.push((new_id(), Fact::Ink(InkFact::Resized { pot: id, whole, by: by.map(str::to_owned) })));
        }
        if !fields.is_empty() {
            facts.insert(0, (id, Fact::Ink(InkFact::PotSet(fields))));
        }
        Ok(facts)
    }

    /// The fields that change a pot to this revision and run, or what is wrong. `id` is the pot edited, if any. A batch
    /// larger than its pot is refused.
    ///
    /// # Errors
    /// [`Problems`] by field: `name`, `size`, `capacity`, `tare`, `note`.
    pub fn check(
        &self,
        shop: &Shop,
        id: Option<Subject>,
        revision: Option<Subject>,
        run: Option<RunId>,
        units: Units,
    ) -> Result<Vec<PotField>, Problems> {
        let before = id.and_then(|id| as_resized(shop, id));
        let before = before.as_ref();
        let was = before.map(|pot| Self::of(pot, units));
        let mut problems = Problems::new();
        let p = &mut problems;
        let typed = collect(p, "name", parse_required_name(&self.name));
        let note = collect(p, "note", parse_text(&self.note, TYPED_NOTE));
        let least = shop.ink.scale.step;
        // A weight whose text was not edited keeps its milligrams, whatever unit it is shown in.
        let mut weight = |field, least: Grams, here: &dyn Fn(&Self) -> &String, kept: Option<Grams>| {
            if was.as_ref().is_some_and(|was| here(was) == here(self)) {
                kept
            } else {
                collect_optional(&mut *p, field, here(self), |text| Grams::parse(text, least, Grams::MOST, units))
            }
        };
        let kept_size = before.and_then(|pot| pot.size).map(|size| match size {
            BatchSize::Whole(size) | BatchSize::Ink(size) => size,
        });
        let size = weight("size", least, &|form| &form.size, kept_size);
        let capacity = weight("capacity", least, &|form| &form.capacity, before.and_then(|pot| pot.capacity));
        let tare = weight("tare", Grams::ZERO, &|form| &form.tare, before.and_then(|pot| pot.tare));
        let size = size.map(|size| if self.of_ink { BatchSize::Ink(size) } else { BatchSize::Whole(size) });
        let parts = revision.and_then(|id| shop.ink.revision(id)).map_or(&[][..], |revision| revision.parts);
        if let Some((whole, capacity)) = size.map(|size| size.whole(parts)).zip(capacity) {
            if whole > capacity {
                let most = capacity.in_units(units);
                p.insert("size", FormProblem::Number(NumberProblem::TooHigh { most }));
            }
        }
        let (Some(name), Some(note), true) = (typed, note, problems.is_empty()) else { return Err(problems) };
        let fields = vec![
            PotField::Name(name),
            PotField::Revision(revision),
            PotField::Size(size),
            PotField::Capacity(capacity),
            PotField::Tare(tare),
            PotField::Run(run),
            PotField::Note(note),
        ];
        Ok(before.map_or(fields.clone(), |pot| changed_fields(fields, &pot.fields())))
    }
}

/// The form of the shop's scale. Weights are in grams in every country, as scales are.
#[derive(Clone, Debug, PartialEq, Default, Serialize, Deserialize)]
#[serde(default)]
pub struct ScaleForm {
    /// Its smallest step, in grams.
    pub step: String,
    /// Its capacity, in grams, or empty.
    pub most: String,
}

impl ScaleForm {
    /// The form filled from the scale.
    pub fn of(scale: &Scale) -> Self {
        let most = scale.most.map(|most| most.text(Units::METRIC)).unwrap_or_default();
        Self { step: scale.step.text(Units::METRIC), most }
    }

    /// The fact of the scale, or what is wrong.
    ///
    /// # Errors
    /// [`Problems`] by field: `step`, `most`.
    pub fn check(&self) -> Result<InkFact, Problems> {
        let mut problems = Problems::new();
        let p = &mut problems;
        let read = |text: &str, least: f64, most: f64| {
            let [least, most] = [least, most].map(Grams::from_grams);
            Grams::parse(text, least, most, Units::METRIC)
        };
        let step = collect(p, "step", parse_required(&self.step, |text| read(text, 0.001, 100.0)));
        let most = collect_optional(p, "most", &self.most, |text| read(text, 1.0, 1_000_000.0));
        match (step, problems.is_empty()) {
            (Some(step), true) => Ok(InkFact::ScaleSet { step, most }),
            _ => Err(problems),
        }
    }
}
