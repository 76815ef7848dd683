//! The recipe form.

use super::reading::ReadingForm;
use crate::bounds::LIST;
use crate::colour::Colour;
use crate::facts::{ColourReading, Part, RecipeField, Share};
use crate::form::{FormProblem, Problems, TYPED_NOTE, collect, parse_required, parse_required_name, parse_text};
use crate::heat::ink_key;
use crate::ids::Subject;
use crate::ink::recipe::sum_check::sum_error;
use crate::ink::{LimitBroken, Recipe, SumError, limits_broken, percentages};
use crate::shop::Shop;
use serde::{Deserialize, Serialize};

/// A row of the recipe form.
#[derive(Clone, Debug, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(default)]
pub struct PartForm {
    /// The component; `None` until it is chosen.
    pub component: Option<Subject>,
    /// Percent, as typed.
    pub percent: String,
    /// Whether it is added on top of the ink's weight.
    pub on_top: bool,
}

/// The recipe form. Rows without a component and a percentage are ignored.
#[derive(Clone, Debug, PartialEq, Default, Serialize, Deserialize)]
#[serde(default)]
pub struct RecipeForm {
    /// Name of the ink.
    pub name: String,
    /// Colour shown on screen, `#rrggbb`, or empty.
    pub colour: String,
    /// Target colour.
    pub target: ReadingForm,
    /// Free note.
    pub note: String,
    /// Its parts.
    pub parts: Vec<PartForm>,
    /// Why it differs from the revision before.
    pub why: String,
}

/// What is wrong with a recipe.
#[derive(Clone, Debug, PartialEq, Default)]
pub struct RecipeProblems {
    /// Problems by field: `name`, `note`, `why`, `l`, `a`, `b`, and `parts` if there are none or too many.
    pub fields: Problems,
    /// Problems by row: `Missing` if the component or the percentage is missing, `Taken` if the component is listed
    /// twice.
    pub rows: Vec<(usize, FormProblem)>,
    /// Set if the parts of the ink do not add up to 100.
    pub sum: Option<SumError>,
}

/// A recipe without problems.
#[derive(Clone, Debug, PartialEq)]
pub struct ValidRecipe {
    /// The recipe's fields that changed.
    pub fields: Vec<RecipeField>,
    /// Its parts; `None` if they are those of the revision edited.
    pub parts: Option<Vec<Part>>,
    /// Why it differs.
    pub why: String,
}

impl RecipeForm {
    /// The form filled from a recipe and the parts of one of its revisions.
    pub fn of(recipe: &Recipe, parts: &[Part]) -> Self {
        let row =
            |part: &Part| PartForm { component: Some(part.component), percent: part.share.text(), on_top: part.on_top };
        Self {
            name: recipe.name.clone(),
            colour: recipe.colour.map(|colour| colour.to_string()).unwrap_or_default(),
            target: ReadingForm::of(recipe.target),
            note: recipe.note.clone(),
            parts: parts.iter().map(row).collect(),
            why: String::new(),
        }
    }

    /// What the parts of the ink add up to so far and why it is not 100; `None` if it is 100.
    pub fn sum(&self, shop: &Shop) -> Option<SumError> {
        let shares: Vec<Option<Share>> =
            self.parts.iter().map(|row| Share::parse(&row.percent, 0.0, 400.0).ok()).collect();
        sum_error(shop, &self.parts, &shares)
    }

    /// Weight of 100 g of the ink with everything on top of it, in grams; `None` if nothing is on top.
    pub fn grams_with_on_top(&self) -> Option<f64> {
        let top = self.parts.iter().filter(|row| row.on_top);
        let more: f64 = top.filter_map(|row| Share::parse(&row.percent, 0.0, 400.0).ok()).map(Share::percent).sum();
        (more > 0.0).then_some(100.0 + more)
    }

    /// Changes the convention: additions on top of one ink, or all parts of the whole. No row is lost;
    /// [`sum`](Self::sum) explains the sum that results.
    pub fn set_convention(&mut self, on_top: bool) {
        if !on_top {
            self.parts.iter_mut().for_each(|row| row.on_top = false);
        } else if let [only] = &mut self.parts[..] {
            if only.percent.trim().is_empty() {
                only.percent = Share::WHOLE.text();
            }
        }
    }

    /// The data sheet limits that the recipe as typed exceeds; empty until its parts add up to 100.
    pub fn limits(&self, shop: &Shop) -> Vec<LimitBroken> {
        if self.sum(shop).is_some() {
            return Vec::new();
        }
        let parts: Vec<Part> = self
            .parts
            .iter()
            .filter_map(|row| {
                let share = Share::parse(&row.percent, 0.0, Share::MOST.percent()).ok()?;
                Some(Part { component: row.component?, share, on_top: row.on_top })
            })
            .collect();
        limits_broken(shop, &percentages(&parts))
    }

    /// What changes a recipe, or what is wrong. `id` is the recipe edited, if any, and `before` the parts the form
    /// started with.
    ///
    /// # Errors
    /// [`RecipeProblems`].
    pub fn check(&self, shop: &Shop, id: Option<Subject>, before: &[Part]) -> Result<ValidRecipe, RecipeProblems> {
        let mut problems = RecipeProblems::default();
        let p = &mut problems.fields;
        let typed = collect(p, "name", parse_required_name(&self.name));
        let note = collect(p, "note", parse_text(&self.note, TYPED_NOTE));
        let why = collect(p, "why", parse_text(&self.why, TYPED_NOTE));
        let target = self.target.check(p);
        let is_taken = |typed: &String| {
            shop.ink.recipes().any(|(other, recipe)| Some(other) != id && ink_key(&recipe.name) == ink_key(typed))
        };
        if typed.as_ref().is_some_and(is_taken) {
            problems.fields.insert("name", FormProblem::Taken);
        }
        let mut parts: Vec<Part> = Vec::new();
        for (at, row) in self.parts.iter().enumerate() {
            if row.component.is_none() && row.percent.trim().is_empty() {
                continue;
            }
            let most = if row.on_top { Share::MOST.percent() } else { 100.0 };
            match (row.component, parse_required(&row.percent, |text| Share::parse(text, 0.000_000_1, most))) {
                (Some(component), Ok(_)) if parts.iter().any(|part| part.component == component) => {
                    problems.rows.push((at, FormProblem::Taken));
                }
                (Some(component), Ok(share)) => parts.push(Part { component, share, on_top: row.on_top }),
                (None, Ok(_)) => problems.rows.push((at, FormProblem::Missing)),
                (_, Err(problem)) => problems.rows.push((at, problem)),
            }
        }
        if self.parts.iter().all(|row| row.on_top || row.percent.trim().is_empty()) {
            problems.fields.insert("parts", FormProblem::Missing);
        } else if parts.len() > LIST {
            problems.fields.insert("parts", FormProblem::TooMany { most: LIST });
        }
        problems.sum = self.sum(shop);
        let (Some(name), Some(note), Some(why)) = (typed, note, why) else { return Err(problems) };
        if !problems.fields.is_empty() || !problems.rows.is_empty() || problems.sum.is_some() {
            return Err(problems);
        }
        let was = id.and_then(|id| shop.ink.recipe(id));
        Ok(ValidRecipe {
            fields: self.changes(was, name, target, note),
            parts: (parts != before).then_some(parts),
            why,
        })
    }

    fn changes(
        &self,
        was: Option<&Recipe>,
        name: String,
        target: Option<ColourReading>,
        note: String,
    ) -> Vec<RecipeField> {
        let colour = Colour::from_hex(self.colour.trim());
        let all = [
            (was.is_none_or(|was| was.name != name), RecipeField::Name(name)),
            (was.is_none_or(|was| was.colour != colour), RecipeField::Colour(colour)),
            (was.is_none_or(|was| was.target != target), RecipeField::Target(target)),
            (was.is_none_or(|was| was.note != note), RecipeField::Note(note)),
        ];
        all.into_iter().filter(|(differs, _)| *differs).map(|(_, field)| field).collect()
    }
}
