//! The list of jobs, an order printed again, and where a new run starts.

use crate::shop::{HOUR, TestShop, clock, due, today, wall};
use lastpull_core::facts::{Fact, JobField};
use lastpull_core::job::{Fabric, JobRow, Size, job_card, job_row, job_texts};

/// The rows of the list.
struct Rows {
    open: Vec<JobRow>,
    finished: Vec<JobRow>,
}

fn list(press: &TestShop, seconds: u64, search: &str) -> Rows {
    let shop = press.shop();
    let list = job_texts(&shop).found(search);
    let rows = |ids: &[_]| ids.iter().map(|id| job_row(&shop, clock(seconds), *id).unwrap()).collect();
    Rows { open: rows(&list.open), finished: rows(&list.finished) }
}

fn titles(rows: &[JobRow]) -> Vec<&str> {
    rows.iter().map(|row| row.title.as_str()).collect()
}

#[test]
fn open_jobs_are_listed_by_due_time_and_finished_ones_latest_first() {
    let mut press = TestShop::new();
    press.job("undated", None);
    press.job("tomorrow", due(today().plus_days(1), 0));
    press.job("noon", due(today(), 720));
    press.job("ten", due(today(), 600));
    let [first, last] = ["done first", "done last"].map(|title| press.job(title, due(today(), 0)));
    press.record_at(10, first, Fact::JobFinished).record_at(20, last, Fact::JobFinished);
    let list = list(&press, 30, "");
    assert_eq!(titles(&list.open), ["ten", "noon", "tomorrow", "undated"]);
    assert_eq!(titles(&list.finished), ["done last", "done first"]);
    assert_eq!(list.finished[0].finished, Some(wall(20)));
}

#[test]
fn every_word_of_a_search_is_in_title_client_or_notes_in_any_case() {
    let mut press = TestShop::new();
    let choir = press.job("Tour tees", None);
    press.record(
        choir,
        Fact::JobSet(vec![JobField::Client("Harbour Night Choir".into()), JobField::Notes("Fold in TENS".into())]),
    );
    let ferry = press.job("Crew jerseys", None);
    press.record(ferry, Fact::JobSet(vec![JobField::Client("Güll & Lantern".into())])).record_at(
        10,
        ferry,
        Fact::JobFinished,
    );
    let found = |search| {
        let list = list(&press, 20, search);
        (list.open.len(), list.finished.len())
    };
    assert_eq!(found("  "), (1, 1));
    assert_eq!(found("CHOIR tees"), (1, 0));
    assert_eq!(found("tens harb"), (1, 0), "across fields, parts of words");
    assert_eq!(found("choir jerseys"), (0, 0));
    assert_eq!(found("güll"), (0, 1));
    assert_eq!(found("GÜLL"), (0, 1));
}

#[test]
fn an_open_job_is_overdue_once_its_time_has_passed() {
    let mut press = TestShop::new();
    let job = press.job("Tour tees", due(today(), 10 * 60));
    press.job("undated", None);
    let overdue =
        |press: &TestShop, seconds| list(press, seconds, "").open.iter().map(|row| row.overdue).collect::<Vec<_>>();
    assert_eq!(overdue(&press, 2 * HOUR), [false, false], "at ten");
    assert_eq!(overdue(&press, 2 * HOUR + 1), [true, false]);
    press.record_at(2 * HOUR + 2, job, Fact::JobFinished);
    assert!(!list(&press, 3 * HOUR, "").finished[0].overdue);
}

#[test]
fn a_job_with_every_piece_printed_is_not_overdue() {
    let mut press = TestShop::new();
    let run = press.order("Tour tees", due(today(), 10 * 60), Fabric::Cotton, &[(Size::M, 2)]);
    press.count_at(60, run, 1, Some(Size::M));
    let row = |press: &TestShop| list(press, 3 * HOUR, "").open[0].clone();
    assert_eq!((row(&press).overdue, row(&press).complete), (true, false));
    press.count_at(70, run, 1, Some(Size::M));
    assert_eq!((row(&press).overdue, row(&press).complete), (false, true));
}

#[test]
fn a_job_counts_the_pieces_of_every_run_up_to_the_order() {
    let mut press = TestShop::new();
    let job = press.job("Front and back", None);
    let lot = press.lot(job, Fabric::Cotton, &[(Size::M, 4), (Size::L, 2)]);
    let [front, back] = [(); 2].map(|()| press.run(lot));
    press.count_at(40, front, 5, Some(Size::M)).count_at(50, front, 2, Some(Size::L)).count_at(
        60,
        back,
        3,
        Some(Size::M),
    );
    let row = &list(&press, 70, "").open[0];
    assert_eq!((row.planned, row.good, row.swatches.len()), (12, 9, 2));
    assert!(!job_card(&press.shop(), job).unwrap().complete);
    press.count_at(80, back, 1, Some(Size::M)).count_at(90, back, 2, Some(Size::L));
    assert!(job_card(&press.shop(), job).unwrap().complete);
}

#[test]
fn a_deleted_job_is_not_found_and_its_runs_count_for_no_other() {
    let mut press = TestShop::new();
    let deleted = press.order("Tour tees", due(today(), 600), Fabric::Cotton, &[(Size::M, 2)]);
    let job = press.shop().job_of(deleted).unwrap().0;
    let kept = press.order("Tour hoodies", due(today(), 700), Fabric::Cotton, &[(Size::M, 3)]);
    press.record(job, Fact::Deleted);
    let shop = press.shop();
    for search in ["", "tour", "tees"] {
        let found = job_texts(&shop).found(search);
        assert!(!found.open.contains(&job), "{search}");
    }
    assert_eq!(job_row(&shop, clock(0), job), None);
    let row = job_row(&shop, clock(0), shop.job_of(kept).unwrap().0).unwrap();
    assert_eq!((row.planned, row.swatches.len()), (3, 1));
}
