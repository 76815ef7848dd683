//! The list of the shop's jobs. Of a shop of many years only the rows on the screen are worked out: the list itself
//! is ids in order, and the search one text.

use crate::bounds::total;
use crate::collections::sort_by_key;
use crate::colour::Colour;
use crate::ids::JobId;
use crate::job::Job;
use crate::shop::Shop;
use crate::text::{lowercase_latin, push_lowercase_latin};
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
    /// The colours of each run.
    pub swatches: Vec<PrintSwatch>,
}

/// The colours of a run, where they are known.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default)]
pub struct PrintSwatch {
    /// Of the garment.
    pub garment: Option<Colour>,
    /// Of the ink.
    pub ink: Option<Colour>,
}

/// The shop's jobs, without deleted ones.
#[derive(Clone, Debug, PartialEq, Eq, Default)]
pub struct JobList {
    /// Open jobs, the most urgent first; those without a due date last.
    pub open: Vec<JobId>,
    /// Finished jobs, the latest first.
    pub finished: Vec<JobId>,
}

/// The list of all jobs.
pub fn job_list(shop: &Shop) -> JobList {
    let mut open: Vec<(JobId, &Job)> = shop.open_jobs().collect();
    let mut finished: Vec<(JobId, &Job)> = shop.jobs().filter(|(_, job)| !job.deleted && !job.is_open()).collect();
    sort_by_key(&mut open, |(id, job)| (job.due.is_none(), job.due, *id));
    sort_by_key(&mut finished, |(id, job)| Reverse((job.finished, *id)));
    let ids = |jobs: Vec<(JobId, &Job)>| jobs.into_iter().map(|(id, _)| id).collect();
    JobList { open: ids(open), finished: ids(finished) }
}

/// The row of a job; `None` if there is no such job or it was deleted.
pub fn job_row(shop: &Shop, clock: WallClock, id: JobId) -> Option<JobRow> {
    let job = shop.job(id).filter(|job| !job.deleted)?;
    let lots = shop.lots_of(id);
    let prints = || lots.iter().flat_map(|(lot_id, lot)| shop.runs_of(*lot_id).into_iter().map(move |run| (*lot, run)));
    let planned = total(prints().map(|(lot, _)| lot.total()));
    let left = total(prints().map(|(_, (run, _))| shop.pieces_left(run)));
    let complete = planned > 0 && left == 0;
    Some(JobRow {
        id,
        title: job.title.clone(),
        client: job.client.clone(),
        due: job.due,
        overdue: job.is_open() && !complete && job.due.is_some_and(|due| clock.due_moment(due) < clock.now),
        finished: job.finished,
        planned,
        good: planned.saturating_sub(left),
        over: total(prints().map(|(_, (run, _))| shop.pieces_over(run))),
        complete,
        swatches: prints().map(|(lot, (_, run))| PrintSwatch { garment: lot.colour, ink: run.ink_colour }).collect(),
    })
}

/// What a search of the jobs looks through: title, client and notes of each, in lower case. Made once, since it costs
/// far more than a search. All in one text, since ten thousand texts cost more to look through than one.
#[derive(Clone, Debug, PartialEq, Eq, Default)]
pub struct JobTexts {
    list: JobList,
    /// The texts of the open jobs and the finished ones, one after the other in the order of the list.
    text: String,
    /// Where the text of each ends.
    ends: Vec<usize>,
}

/// The texts of all jobs.
pub fn job_texts(shop: &Shop) -> JobTexts {
    let list = job_list(shop);
    let (mut text, mut ends) = (String::new(), Vec::new());
    for job in list.open.iter().chain(&list.finished).filter_map(|id| shop.job(*id)) {
        for part in [&job.title, &job.client, &job.notes] {
            push_lowercase_latin(&mut text, part);
            // No word has it: none is found across two parts or jobs.
            text.push(' ');
        }
        ends.push(text.len());
    }
    JobTexts { list, text, ends }
}

impl JobTexts {
    /// The jobs whose texts contain every word of `search`, in the order of the list.
    pub fn found(&self, search: &str) -> JobList {
        let words: Vec<String> = search.split_whitespace().map(lowercase_latin).collect();
        // The longest word is in the fewest texts.
        let Some(longest) = words.iter().max_by_key(|word| word.len()) else { return self.list.clone() };
        let mut found = JobList::default();
        let (mut start, mut job) = (0, 0);
        while let Some(place) = self.text[start..].find(longest.as_str()) {
            job += self.ends[job..].partition_point(|end| *end <= start + place);
            let begin = job.checked_sub(1).map_or(0, |before| self.ends[before]);
            let end = self.ends[job];
            if words.iter().all(|word| self.text[begin..end].contains(word.as_str())) {
                match job.checked_sub(self.list.open.len()) {
                    None => found.open.push(self.list.open[job]),
                    Some(job) => found.finished.push(self.list.finished[job]),
                }
            }
            (start, job) = (end, job + 1);
        }
        found
    }
}
