//! The list of the shop's jobs.

use crate::collections::sort_by_key;
use crate::colour::Colour;
use crate::ids::JobId;
use crate::job::Job;
use crate::shop::Shop;
use crate::text::lowercase_latin;
use crate::time::{Due, WallClock, WallTime};
use std::cmp::Reverse;

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

/// Most finished jobs listed: more than anybody scrolls through. Our own.
const MOST_FINISHED: usize = 100;

/// The shop's jobs, without deleted ones.
#[derive(Clone, Debug, PartialEq, Default)]
pub struct JobList {
    /// Open jobs, the most urgent first; those without a due date last.
    pub open: Vec<JobRow>,
    /// Finished jobs, the latest first: at most a hundred.
    pub finished: Vec<JobRow>,
    /// Whether there are more finished ones than are listed.
    pub has_older: bool,
}

/// The jobs whose title, client or notes contain every word of `search`.
pub fn job_list(shop: &Shop, clock: WallClock, search: &str) -> JobList {
    let words: Vec<String> = search.split_whitespace().map(lowercase_latin).collect();
    let is_meant = |job: &Job| {
        let text = lowercase_latin(&format!("{} {} {}", job.title, job.client, job.notes));
        words.iter().all(|word| text.contains(word.as_str()))
    };
    let row = |(id, job): (JobId, &Job)| job_row(shop, clock, id, job);
    let mut open: Vec<JobRow> = shop.open_jobs().filter(|(_, job)| is_meant(job)).map(row).collect();
    sort_by_key(&mut open, |row| (row.due.is_none(), row.due, row.id));
    let mut finished = latest_finished(shop, is_meant);
    let has_older = finished.len() > MOST_FINISHED;
    finished.truncate(MOST_FINISHED);
    JobList { open, finished: finished.into_iter().map(row).collect(), has_older }
}

/// The finished jobs that are meant, the latest first: all of them, or more than are listed.
fn latest_finished(shop: &Shop, is_meant: impl Fn(&Job) -> bool) -> Vec<(JobId, &Job)> {
    let is_listed = |(_, job): &(JobId, &Job)| !job.deleted && job.finished.is_some() && is_meant(job);
    let latest = &shop.links.finished_jobs;
    let mut jobs: Vec<(JobId, &Job)> = latest
        .iter()
        .filter_map(|(_, id)| Some((id, shop.job(id)?)))
        .filter(is_listed)
        .take(MOST_FINISHED + 1)
        .collect();
    if jobs.len() <= MOST_FINISHED && !latest.is_whole() {
        jobs = shop.jobs().filter(is_listed).collect();
        sort_by_key(&mut jobs, |(id, job)| Reverse((job.finished, *id)));
    }
    jobs
}

fn job_row(shop: &Shop, clock: WallClock, id: JobId, job: &Job) -> JobRow {
    let lots = shop.lots_of(id);
    let prints = || lots.iter().flat_map(|(lot_id, lot)| shop.runs_of(*lot_id).into_iter().map(move |run| (*lot, run)));
    let planned: u32 = prints().map(|(lot, _)| lot.total()).sum();
    let left: u32 = prints().map(|(_, (run, _))| shop.pieces_left(run)).sum();
    let complete = planned > 0 && left == 0;
    JobRow {
        id,
        title: job.title.clone(),
        client: job.client.clone(),
        due: job.due,
        overdue: job.is_open() && !complete && job.due.is_some_and(|due| clock.due_moment(due) < clock.now),
        finished: job.finished,
        planned,
        good: planned - left,
        over: prints().map(|(_, (run, _))| shop.pieces_over(run)).sum(),
        complete,
        swatches: prints().map(|(lot, (_, run))| (lot.colour, run.ink_colour)).collect(),
    }
}
