//! The list of the shop's jobs.

use crate::collections::sort_by_key;
use crate::colour::Colour;
use crate::ids::JobId;
use crate::job::Lot;
use crate::run::Run;
use crate::shop::Shop;
use crate::text::lowercase_latin;
use crate::time::{Due, WallClock, WallTime};

/// A row of the list of jobs.
#[derive(Clone, Debug, PartialEq)]
pub struct JobRow {
    /// Its id.
    pub id: JobId,
    /// The job's title.
    pub title: String,
    /// The client.
    pub client: String,
    /// When it is due.
    pub due: Option<Due>,
    /// Whether the due time has passed while the job is open and has pieces to print.
    pub overdue: bool,
    /// Wall time at which it was finished.
    pub finished: Option<WallTime>,
    /// Pieces to pull, added up over all runs.
    pub planned: u32,
    /// Good pieces pulled, at most `planned`.
    pub good: u32,
    /// Good pieces beyond the order, in sizes that have too many.
    pub over: u32,
    /// Whether every run has all its pieces.
    pub complete: bool,
    /// Garment colour and ink colour of each run.
    pub swatches: Vec<(Option<Colour>, Option<Colour>)>,
}

/// The shop's jobs, without deleted ones.
#[derive(Clone, Debug, PartialEq, Default)]
pub struct JobList {
    /// Open jobs, the most urgent first; those without a due date last.
    pub open: Vec<JobRow>,
    /// Finished jobs, the latest first.
    pub finished: Vec<JobRow>,
}

/// The jobs whose title, client or notes contain every word of `search`.
pub fn job_list(shop: &Shop, clock: WallClock, search: &str) -> JobList {
    let words: Vec<String> = search.split_whitespace().map(lowercase_latin).collect();
    let prints = runs_by_job(shop);
    let mut list = JobList::default();
    for (id, job) in shop.jobs().filter(|(_, job)| !job.deleted) {
        let text = lowercase_latin(&format!("{} {} {}", job.title, job.client, job.notes));
        if !words.iter().all(|word| text.contains(word.as_str())) {
            continue;
        }
        let from = prints.partition_point(|(job, _)| *job < id);
        let prints = || prints[from..].iter().take_while(|(job, _)| *job == id).map(|(_, print)| print);
        let planned: u32 = prints().map(|print| print.lot.total()).sum();
        let left: u32 = prints().map(|print| print.left).sum();
        let row = JobRow {
            id,
            title: job.title.clone(),
            client: job.client.clone(),
            due: job.due,
            overdue: job.is_open()
                && !(planned > 0 && left == 0)
                && job.due.is_some_and(|due| clock.due_moment(due) < clock.now),
            finished: job.finished,
            planned,
            good: planned - left,
            over: prints().map(|print| print.over).sum(),
            complete: planned > 0 && left == 0,
            swatches: prints().map(|print| (print.lot.colour, print.run.ink_colour)).collect(),
        };
        if job.is_open() { list.open.push(row) } else { list.finished.push(row) }
    }
    sort_by_key(&mut list.open, |row| (row.due.is_none(), row.due, row.id));
    sort_by_key(&mut list.finished, |row| std::cmp::Reverse((row.finished, row.id)));
    list
}

/// A run with its lot.
struct RunInJob<'a> {
    lot: &'a Lot,
    run: &'a Run,
    left: u32,
    over: u32,
}

/// Every run with its job, sorted by job and then oldest first, in one pass: a list of a thousand jobs
/// visits each run once.
fn runs_by_job(shop: &Shop) -> Vec<(JobId, RunInJob<'_>)> {
    let mut prints = Vec::new();
    for (id, run) in shop.runs().filter(|(_, run)| !run.deleted) {
        let lot = run.lot.and_then(|lot| shop.lot(lot)).filter(|lot| !lot.deleted);
        if let Some((lot, job)) = lot.and_then(|lot| lot.job.map(|job| (lot, job))) {
            prints.push((job, RunInJob { lot, run, left: shop.pieces_left(id), over: shop.pieces_over(id) }));
        }
    }
    sort_by_key(&mut prints, |(job, print)| (*job, print.lot.rank, print.run.rank));
    prints
}
