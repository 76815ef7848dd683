//! Failures on the press: what they stop, what they make suspect, and what a burned screen costs.

use crate::shop::TestShop;
use lastpull_core::facts::{Fact, RunField};
use lastpull_core::failure::{Replacement, burn_again_facts};
use lastpull_core::ids::{RunId, SHOP, Subject};
use lastpull_core::job::Size;
use lastpull_core::screen::{ScreenFact, ScreenState, StepTimes};
use lastpull_core::units::Seconds;

mod burning;
mod press;
mod record;

/// Twenty mediums and ten larges ordered, on screen A3; ten mediums pulled forty seconds apart, the last
/// at 360 s; set-up between runs is ten minutes; no dryer time.
fn running() -> (TestShop, RunId, Subject) {
    let (mut press, run) = TestShop::with_run(&[(Size::M, 20), (Size::L, 10)]);
    let minutes = |n: f64| Seconds::new(n * 60.0);
    let times = StepTimes {
        reclaim: minutes(20.0),
        coat: minutes(10.0),
        dry: minutes(60.0),
        expose: minutes(5.0),
        wash_dry: minutes(30.0),
        tape: minutes(5.0),
    };
    press.record(SHOP, Fact::Screen(ScreenFact::StepTimes(times)));
    let screen = press.screen_in("A3", ScreenState::OnPress);
    press.set_up(run, vec![RunField::Screens("A3".into())]);
    press.start_at(0, run).pulls(run, 0, 40, 10);
    (press, run, screen)
}

/// As [`running`], failed at 380 s and burned again on a new frame at 400 s.
fn burning() -> (TestShop, RunId, Subject, Subject, Subject) {
    let (mut press, run, old) = running();
    let id = press.fails_at(380, run);
    let new = press.id();
    let facts =
        burn_again_facts(&press.shop(), id, &Replacement::New { id: new, label: "A9".into() }, Some("Moss")).unwrap();
    press.record_all_at(400, facts);
    (press, run, id, old, new)
}
