//! The invented day fills every page.

use super::*;
use crate::facts::{BurnStep, Journal, ScreenState};
use crate::failure::failure_card;
use crate::heat::{
    CureEstimate, HeatLevel, LimitName, SettlingBasis, changeover, climate_summary, inks_without_sheet, run_heat,
    test_status, tests_due, trials_for,
};
use crate::journal::{Head, assign_sequence};
use crate::plan::{RailVerdict, RunFit, done_today, rail};
use crate::run::{PaceSource, check_list, count_view, run_pace};
use crate::screen::{
    BathTrend, ExposureAnswer, ExposureChoice, ScreenFilter, ScreensLeft, bath_chart, bath_view, exposure_for,
    exposure_home, screen_board, screen_needs,
};
use crate::shop::Shop;
use crate::time::WallTime;

pub(in crate::demo) const NOW: WallTime = WallTime::from_unix_ms(1_795_638_600_000);

/// The facts in the order in which they happened.
pub(in crate::demo) fn facts(now: WallTime, language: Language) -> Vec<Draft> {
    let device_name = match language {
        Language::English => "Press phone",
        Language::Spanish => "Teléfono de la prensa",
    };
    let mut next = 1_000;
    let mut drafts = demo_facts(WallClock::fixed(now, -300), Uuid::from_u128(1), device_name, language, || {
        next += 1;
        Uuid::from_u128(next)
    });
    assert!(drafts.iter().all(|draft| draft.at <= now));
    drafts.sort_by_key(|draft| draft.at);
    drafts
}

pub(in crate::demo) fn shop_in(now: WallTime, language: Language) -> (Shop, WallClock) {
    let entries = assign_sequence(&mut Head::default(), Uuid::from_u128(1), &facts(now, language));
    (Shop::fold(&Journal::of(entries).unwrap()), WallClock::fixed(now, -300))
}

/// The shop in English.
pub(in crate::demo) fn shop(now: WallTime) -> (Shop, WallClock) {
    shop_in(now, Language::English)
}

#[test]
fn the_demo_screen_room_has_exposures_and_a_slowing_bath() {
    let (shop, clock) = shop(NOW);
    let home = exposure_home(&shop, clock.now);
    assert_eq!((home.exposures, home.lamps, home.emulsions), (3, 1, 2));
    assert_eq!((home.in_bath, home.waiting >= 3), (2, true));
    let bath = bath_view(&shop, home.waiting, clock.now);
    assert!(matches!(bath.trend, Some(BathTrend::Slowing(ScreensLeft::About { .. }))), "{:?}", bath.trend);
    assert_eq!((bath.before.len(), bath.in_bath.len()), (1, 1));
    assert!(bath.in_bath[0].left.is_some_and(|left| left > Millis::ZERO), "{:?}", bath.in_bath);
    assert!(bath_chart(&bath.points, bath.recharge_at).is_some_and(|chart| chart.line.is_some()));
    let asked = ExposureChoice::from_latest(&shop).query().unwrap();
    assert!(matches!(exposure_for(&shop, &asked), ExposureAnswer::Known(_)));
    assert!(home.full_sheets > 0 && home.full_sheets < home.meshes);
}

#[test]
fn the_demo_day_fills_every_page() {
    for language in [Language::English, Language::Spanish] {
        let (shop, clock) = shop_in(NOW, language);
        assert_day_fills_every_page(&shop, clock);
    }
}

fn assert_day_fills_every_page(shop: &Shop, clock: WallClock) {
    let rail = rail(shop, clock);
    assert_eq!(rail.runs.len(), 4);
    assert!(rail.runs[0].on_press);
    let basis = rail.runs[0].basis.unwrap();
    assert!(basis.gaps > 10 && basis.source != PaceSource::Unknown, "{basis:?}");
    assert!(rail.runs.iter().all(|run| run.fit != RunFit::Unknown), "{:#?}", rail.runs);
    assert!(!matches!(rail.verdict, RailVerdict::Empty | RailVerdict::Closed { .. }), "{:?}", rail.verdict);
    let done = done_today(shop, clock);
    assert_eq!(done.jobs, 1);
    assert_eq!(done.row.pieces, 35);
    assert_eq!(done.row.misprints, 1);
    assert!(done.usual.unwrap().pieces > 20.0);
    let count = count_view(shop, rail.runs[0].id, Uuid::from_u128(1), clock, &[]);
    assert_eq!((count.good, count.planned, count.misprints), (17, 36, 1));
    assert!(run_pace(shop, rail.runs[0].id, clock).pace.unwrap().per_hour > 40.0);
    let failed: Vec<_> = shop.failures.iter().map(|(id, _)| failure_card(shop, id, clock).unwrap()).collect();
    assert_eq!(failed.len(), 4);
    for card in failed {
        // Four minutes less the five seconds before it was found.
        assert_eq!((card.row.downtime, card.row.open, card.row.suspect), (Millis::from_ms(235_000), false, 0));
        assert!(card.row.good > 0 && card.failure.mark.is_some(), "{card:?}");
    }
    let polyester = check_list(shop, rail.runs[1].id);
    assert!(polyester.needs_heat_change());
    assert_eq!(polyester.changes[0].item, crate::facts::CheckItem::Dryer);
}

#[test]
fn only_tomorrows_run_of_the_demo_waits_for_screens() {
    let (shop, clock) = shop(NOW);
    let rail = rail(&shop, clock);
    assert!(rail.runs.iter().all(|run| run.waits_until.is_none()), "{:#?}", rail.runs);
    let needs = screen_needs(&shop, clock);
    assert_eq!(needs.len(), 1);
    assert_eq!((needs[0].title.as_str(), needs[0].late_by), ("Swap day totes", Millis::ZERO));
    assert_eq!(needs[0].steps[0].step, BurnStep::Expose);
    assert!(!needs[0].steps[0].late && !needs[0].steps[0].now.is_empty());
    let board = screen_board(&shop, &ScreenFilter::default(), clock.now);
    assert_eq!((board.groups.len(), board.warned), (ScreenState::ALL.len(), 1), "every state, one coat too old");
}

#[test]
fn the_demo_dryer_is_too_hot_for_the_jerseys_and_has_all_heat_data() {
    let (shop, clock) = shop(NOW);
    let rail = rail(&shop, clock);
    let [choir, jerseys] = [rail.runs[0].id, rail.runs[1].id];
    let change = changeover(&shop, jerseys, clock.now).unwrap();
    let passed: Vec<_> = change.danger.iter().map(|finding| finding.name).collect();
    assert_eq!(passed, [LimitName::DyeMigration, LimitName::InkHighest, LimitName::Scorch]);
    assert!(change.exceeded_by_set_up.is_empty() && change.hold_ink() && change.settling.is_none());
    let wait = change.wait.unwrap();
    assert_eq!((wait.minutes, wait.basis, wait.cold), (10, SettlingBasis::Logged(3), false));
    for run in [choir, jerseys] {
        let heat = run_heat(&shop, run, clock.now).unwrap();
        assert!(matches!(heat.cure, CureEstimate::Reached { .. }), "{heat:?}");
        assert!(heat.exceeded_limits().next().is_none() && heat.conflict.is_none());
    }
    assert!(!test_status(&shop, choir).unwrap().is_due());
    assert_eq!(tests_due(&shop)[0].0, jerseys);
    assert_eq!(trials_for(&shop, jerseys).len(), 1);
    assert_eq!(inks_without_sheet(&shop).len(), 2);
    assert_eq!(climate_summary(&shop, clock.now).unwrap().level, HeatLevel::Moderate);
}
