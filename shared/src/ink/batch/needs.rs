//! Which ink the coming runs need, and how much of it must still be mixed.

use super::suggested::suggested_batch;
use crate::collections::Table;
use crate::colour::Colour;
use crate::heat::ink_key;
use crate::ids::{JobId, RunId, Subject};
use crate::ink::pot::replay::replay;
use crate::ink::{PotState, approvals_of, revisions_of};
use crate::plan::open_runs;
use crate::shop::Shop;
use crate::time::Due;
use crate::units::Grams;

/// Ink that a coming run needs.
#[derive(Clone, Debug, PartialEq)]
pub struct InkNeeded {
    /// The run.
    pub run: RunId,
    /// Its job.
    pub job: JobId,
    /// The job's title.
    pub title: String,
    /// The client.
    pub client: String,
    /// When the job is due.
    pub due: Option<Due>,
    /// The ink, by the run's name for it.
    pub ink: String,
    /// Its colour.
    pub ink_colour: Option<Colour>,
    /// The garment's colour.
    pub garment_colour: Option<Colour>,
    /// Pieces left to print.
    pub pieces: u32,
    /// The recipe with that name.
    pub recipe: Option<Subject>,
    /// The revision to mix it by: the one approved last, else the latest.
    pub revision: Option<Subject>,
    /// Weight it needs: what it uses, or the charge of its screen if that is more and it has not begun. `None` if it was
    /// not calculated how much ink a print takes.
    pub grams: Option<Grams>,
    /// Weight that it uses of that. The rest goes back into the pot.
    pub used: Option<Grams>,
    /// Weight of it in pots, without what earlier runs need.
    pub in_pots: Grams,
    /// Weight left of the charges of earlier runs, once they are mixed.
    pub left_over: Grams,
    /// Weight still to be mixed; `None` if the need is unknown.
    pub to_mix: Option<Grams>,
}

/// The recipe of an ink by its name, ignoring case and spaces. If several have that name, which two phones can cause,
/// the one changed last.
pub fn recipe_named<'a>(shop: &'a Shop, ink: &str) -> Option<(Subject, &'a crate::ink::Recipe)> {
    let key = ink_key(ink);
    let named = shop.ink.recipes().filter(|(_, recipe)| !key.is_empty() && ink_key(&recipe.name) == key);
    named.max_by_key(|(id, recipe)| (recipe.modified, *id))
}

/// The revision to mix a recipe by: the one approved last, else the latest.
pub fn best_revision(shop: &Shop, recipe: Subject) -> Option<Subject> {
    let approved = approvals_of(shop, recipe).first().map(|approval| approval.revision.id);
    approved.or_else(|| revisions_of(shop, recipe).last().map(|revision| revision.id))
}

/// The current state of each open pot.
pub(crate) fn open_pots(shop: &Shop) -> Table<PotState> {
    let open: Vec<Subject> = shop.ink.open_pots().collect();
    let mut states = replay(shop, &open, &mut |_, _, _| {});
    let mut only = Table::default();
    for id in open {
        only.insert(id, states.remove(&id).unwrap_or_default());
    }
    only
}

/// The recipe of a pot: that of the revision it started as or was saved as.
pub(crate) fn recipe_of(shop: &Shop, state: &PotState) -> Option<Subject> {
    Some(shop.ink.revision(state.base?)?.recipe)
}

impl InkNeeded {
    /// Whether the charge of its screen decides how much it needs, since it uses less.
    pub fn is_charge(&self) -> bool {
        self.grams > self.used
    }

    /// Weight that it lacks; zero if its need is unknown.
    fn lacks(&self) -> Grams {
        let here = self.in_pots.saturating_add(self.left_over);
        self.grams.map_or(Grams::ZERO, |need| need.saturating_sub(here).max_zero())
    }
}

/// The ink of the open runs, in the order of the day. The contents of pots are assigned to the first run that needs
/// them, then to the next; a pot meant for a run is assigned to that run first. What a run leaves of the charge of its
/// screen is there for the next runs of that recipe.
pub fn ink_needed(shop: &Shop) -> Vec<InkNeeded> {
    needed_of(shop, &open_pots(shop))
}

pub(crate) fn needed_of(shop: &Shop, pots: &Table<PotState>) -> Vec<InkNeeded> {
    let mut left: Vec<(Option<Subject>, Option<RunId>, Grams)> = Vec::new();
    let open = open_runs(shop);
    for (id, state) in pots.iter() {
        let run = shop.ink.pot(*id).and_then(|pot| pot.run).filter(|run| open.contains(run));
        left.push((recipe_of(shop, state), run, state.contents.total()));
    }
    let mut rows: Vec<InkNeeded> = open.iter().filter_map(|run| row(shop, *run)).collect();
    // First pots meant for a run.
    for row in &mut rows {
        let id = row.run;
        for (_, _, grams) in left.iter_mut().filter(|(_, run, _)| *run == Some(id)) {
            give(row, grams);
        }
    }
    // Then those for any run, and what earlier runs leave.
    let mut left_over: Table<Grams> = Table::default();
    for row in &mut rows {
        let Some(recipe) = row.recipe else { continue };
        for (_, _, grams) in left.iter_mut().filter(|(of, ..)| *of == Some(recipe)) {
            give(row, grams);
        }
        let rest = left_over.get_or_insert_default(recipe);
        row.left_over = row.lacks().min(*rest);
        let leaves = row.grams.unwrap_or_default().saturating_sub(row.used.unwrap_or_default());
        *rest = rest.saturating_sub(row.left_over).saturating_add(leaves);
    }
    for row in &mut rows {
        if row.grams.is_none() {
            let of = left.iter().filter(|(recipe, ..)| recipe.is_some() && *recipe == row.recipe);
            row.in_pots = of.map(|(.., grams)| *grams).sum();
        }
        row.to_mix = row.grams.map(|_| row.lacks());
    }
    rows
}

/// Assigns to a run what it lacks of the rest in a pot.
fn give(row: &mut InkNeeded, rest: &mut Grams) {
    let given = row.lacks().min(*rest);
    row.in_pots = row.in_pots.saturating_add(given);
    *rest = rest.saturating_sub(given);
}

fn row(shop: &Shop, id: RunId) -> Option<InkNeeded> {
    let (job_id, job) = shop.job_of(id)?;
    let run = shop.run(id)?;
    let recipe = recipe_named(shop, &run.ink).map(|(id, _)| id);
    let pieces = shop.pieces_left(id);
    let batch = shop.ink.print(id).map(|print| suggested_batch(shop, id, print, pieces));
    // A run that has begun has its charge in the screen.
    let has_begun = run.progress.started.is_some();
    Some(InkNeeded {
        run: id,
        job: job_id,
        title: job.title.clone(),
        client: job.client.clone(),
        due: job.due,
        ink: run.ink.clone(),
        ink_colour: run.ink_colour,
        garment_colour: run.lot.and_then(|lot| shop.lot(lot)).and_then(|lot| lot.colour),
        pieces,
        recipe,
        revision: recipe.and_then(|recipe| best_revision(shop, recipe)),
        grams: batch.map(|batch| if has_begun { batch.used } else { batch.grams }),
        used: batch.map(|batch| batch.used),
        in_pots: Grams::ZERO,
        left_over: Grams::ZERO,
        to_mix: None,
    })
}
