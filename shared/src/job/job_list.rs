//! All jobs of the shop.

use super::{Due, JobId, job_card};
use crate::ink::Colour;
use crate::plan::WallClock;
use crate::shop::Shop;
use crate::sorted::sort_by_key;

/// A job in the list.
#[derive(Clone, Debug, PartialEq)]
pub struct JobRow {
    /// Its id.
    pub id: JobId,
    /// What it is called.
    pub title: String,
    /// Whose it is.
    pub client: String,
    /// When it is due.
    pub due: Option<Due>,
    /// Whether that has passed while it is still open.
    pub overdue: bool,
    /// When it was finished.
    pub finished: Option<u64>,
    /// Pieces to pull, every run counted.
    pub planned: u32,
    /// Good pieces pulled.
    pub good: u32,
    /// Garment and ink colours, for the eye: one pair a run.
    pub swatches: Vec<(Option<Colour>, Option<Colour>)>,
}

/// All jobs that were not deleted.
#[derive(Clone, Debug, PartialEq, Default)]
pub struct JobList {
    /// Open, the most urgent first; those without a date last.
    pub open: Vec<JobRow>,
    /// Finished, the latest first.
    pub finished: Vec<JobRow>,
}

/// The list of jobs whose title, client or notes hold every word of `search`.
pub fn job_list(shop: &Shop, clock: WallClock, search: &str) -> JobList {
    let words: Vec<String> = search.split_whitespace().map(str::to_lowercase).collect();
    let mut list = JobList::default();
    for (id, job) in shop.jobs().filter(|(_, job)| !job.deleted) {
        let text = format!("{} {} {}", job.title, job.client, job.notes).to_lowercase();
        if !words.iter().all(|word| text.contains(word.as_str())) {
            continue;
        }
        let Some(card) = job_card(shop, id) else { continue };
        let overdue = job.is_open() && job.due.is_some_and(|due| clock.due_moment(due) < clock.now);
        let swatches = card
            .lots
            .iter()
            .flat_map(|lot| lot.runs.iter().map(|run| (lot.lot.colour, run.run.ink_colour)))
            .collect();
        let row = JobRow {
            id,
            title: job.title.clone(),
            client: job.client.clone(),
            due: job.due,
            overdue,
            finished: job.finished,
            planned: card.planned,
            good: card.good,
            swatches,
        };
        if job.is_open() { list.open.push(row) } else { list.finished.push(row) }
    }
    sort_by_key(&mut list.open, |row| (row.due.is_none(), row.due, row.id));
    sort_by_key(&mut list.finished, |row| std::cmp::Reverse((row.finished, row.id)));
    list
}
