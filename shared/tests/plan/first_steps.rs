//! The first steps of a new shop: a job, its garments and run, the first piece counted.

use crate::shop::TestShop;
use lastpull_core::facts::Fact;
use lastpull_core::job::{Fabric, Size};
use lastpull_core::plan::{FirstStep, first_step};

#[test]
fn a_new_shop_enters_a_job_then_a_run_then_counts() {
    let mut press = TestShop::new();
    assert_eq!(first_step(&press.shop()), Some(FirstStep::Job));
    let job = press.job("Tour tees", None);
    assert_eq!(first_step(&press.shop()), Some(FirstStep::Run(job)));
    let lot = press.lot(job, Fabric::Cotton, &[(Size::M, 9)]);
    assert_eq!(first_step(&press.shop()), Some(FirstStep::Run(job)), "garments alone cannot be counted");
    let run = press.run(lot);
    assert_eq!(first_step(&press.shop()), Some(FirstStep::Count(run)));
    press.start_at(10, run);
    assert_eq!(first_step(&press.shop()), Some(FirstStep::Count(run)), "nothing is counted yet");
    press.pull_at(20, run);
    assert_eq!(first_step(&press.shop()), None);
}

#[test]
fn a_piece_taken_off_the_count_was_not_counted() {
    let (mut press, run) = TestShop::with_run(&[(Size::M, 9)]);
    press.pull_at(10, run).count_at(15, run, -1, Some(Size::M));
    assert_eq!(first_step(&press.shop()), Some(FirstStep::Count(run)));
}

#[test]
fn the_steps_start_again_once_their_job_is_deleted() {
    let mut press = TestShop::new();
    let job = press.job("Tour tees", None);
    press.record(job, Fact::Deleted);
    assert_eq!(first_step(&press.shop()), Some(FirstStep::Job));
    press.record(job, Fact::Restored);
    assert_eq!(first_step(&press.shop()), Some(FirstStep::Run(job)));
}

#[test]
fn a_shop_that_has_counted_has_no_first_steps_whatever_it_enters_next() {
    let (mut press, first) = TestShop::with_run(&[(Size::M, 9)]);
    press.pulls(first, 0, 40, 3).end_at(200, first).finish_at(210, first);
    assert_eq!(first_step(&press.shop()), None, "after its only job is finished");
    press.order("Next", None, Fabric::Canvas, &[(Size::One, 4)]);
    assert_eq!(first_step(&press.shop()), None, "with a job that is not counted yet");
}
