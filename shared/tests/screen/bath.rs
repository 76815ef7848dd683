//! The reclaim bath: batches, charges, and when it is used up.

use crate::shop::{DAY, ExposureRoom, HOUR, PHONE, TABLET, Tank, TestShop, minutes, near, wall};
use lastpull_core::facts::Fact;
use lastpull_core::ids::SHOP;
use lastpull_core::screen::{BatchTime, BathField, BathTrend, ExposureForm, ScreensLeft, StencilFact, bath_view};
use lastpull_core::time::{Millis, WallTime};
use lastpull_core::units::{Seconds, Units};
use proptest::prelude::*;
use uuid::Uuid;

fn any_bath_fact() -> impl Strategy<Value = (u128, Fact)> {
    let time = prop_oneof![
        Just(BatchTime::Elapsed),
        (1..10_000u32).prop_map(|ms| BatchTime::Whole(Seconds::from_milliseconds(ms * 1_000))),
        (1..10_000u32).prop_map(|ms| BatchTime::EachScreen(Seconds::from_milliseconds(ms * 1_000))),
    ];
    let fact = prop_oneof![
        1 => Just(Fact::Stencil(StencilFact::BathCharged { chemistry: String::new(), by: None })),
        4 => (1..9u16).prop_map(|count| Fact::Stencil(StencilFact::BatchIn { screens: Vec::new(), count })),
        4 => (time, prop::option::of(1..9u16)).prop_map(|(time, count)| Fact::Stencil(StencilFact::BatchOut { time, count })),
        1 => Just(Fact::Deleted),
        1 => Just(Fact::Restored),
    ];
    (1..30u128, fact)
}

#[test]
fn a_batch_is_in_the_bath_until_it_comes_out() {
    let mut tank = Tank::new();
    tank.batches(60, &[3]);
    let id = tank.put_in(2 * HOUR, 3);
    let view = bath_view(&tank.shop(), 0, wall(2 * HOUR + 300));
    assert_eq!(view.in_bath.len(), 1);
    assert_eq!((view.in_bath[0].id, view.in_bath[0].count, view.in_bath[0].elapsed), (id, 3, minutes(5)));
    assert_eq!(view.in_bath[0].left, Some(minutes(12 - 5)));
    tank.tell(2 * HOUR + 600, id, StencilFact::BatchOut { time: BatchTime::Elapsed, count: None });
    let view = bath_view(&tank.shop(), 0, wall(2 * HOUR + 700));
    assert!(view.in_bath.is_empty());
    assert_eq!(view.done.last().unwrap().minutes, Some(10.0 / 3.0));
    assert_eq!(view.charge.unwrap().screens, 7);
}

#[test]
fn charging_starts_a_new_baseline() {
    let mut tank = Tank::new();
    tank.batches(60, &[3, 3, 3, 6, 6, 6]);
    let view = bath_view(&tank.shop(), 0, wall(DAY));
    assert_eq!(view.trend, Some(BathTrend::Recharge));
    assert!(near(view.pace.unwrap().ratio(), 2.0));
    let charge = tank.charge(DAY);
    let view = bath_view(&tank.shop(), 0, wall(DAY));
    assert_eq!((view.trend, view.pace), (Some(BathTrend::TooFew { more: 6 }), None));
    assert_eq!((view.charge.unwrap().id, view.before.len(), view.before[0].screens), (charge, 1, 24));
    tank.batches(DAY + 60, &[6, 6, 6, 6, 6, 6]);
    assert_eq!(bath_view(&tank.shop(), 0, wall(2 * DAY)).trend, Some(BathTrend::Steady));
}

#[test]
fn deleting_a_charge_restores_the_old_baseline() {
    let mut tank = Tank::new();
    tank.batches(60, &[3, 3, 3]);
    let mistake = tank.charge(4 * HOUR);
    tank.batches(5 * HOUR, &[6, 6, 6]);
    assert_eq!(bath_view(&tank.shop(), 0, wall(DAY)).trend, Some(BathTrend::TooFew { more: 3 }));
    tank.press.record(mistake, Fact::Deleted);
    assert_eq!(bath_view(&tank.shop(), 0, wall(DAY)).trend, Some(BathTrend::Recharge));
}

#[test]
fn a_bath_that_slows_evenly_predicts_after_how_many_screens_it_is_spent() {
    let mut tank = Tank::new();
    tank.batches(60, &[10, 10, 11, 11, 12, 12, 13]);
    let view = bath_view(&tank.shop(), 0, wall(DAY));
    // By hand: half a minute a batch of four is 1/8 min a screen; from 13 to 15 minutes, 16 screens.
    let Some(BathTrend::Slowing(ScreensLeft::About { least, likely, most })) = view.trend else {
        panic!("{:?}", view.trend)
    };
    assert!(likely.abs_diff(16) <= 2, "{likely}");
    assert!(least <= likely && most.is_none_or(|most| most >= likely));
    assert_eq!(view.batches_left, Some((f64::from(likely) / 4.0).round() as u32));
}

#[test]
fn the_shops_own_threshold_decides_when_to_charge() {
    let mut tank = Tank::new();
    tank.batches(60, &[10, 10, 10, 14, 14, 14]);
    assert_ne!(bath_view(&tank.shop(), 0, wall(DAY)).trend, Some(BathTrend::Recharge));
    tank.tell(DAY, SHOP, StencilFact::Bath(vec![BathField::RechargeAt(Some(130))]));
    let view = bath_view(&tank.shop(), 0, wall(DAY));
    assert_eq!((view.trend, view.is_custom_recharge), (Some(BathTrend::Recharge), true));
}

#[test]
fn without_a_recorded_charge_there_is_no_baseline() {
    let mut tank = Tank { press: TestShop::new() };
    tank.batches(60, &[3, 3, 3, 6, 6, 6]);
    let view = bath_view(&tank.shop(), 0, wall(DAY));
    assert_eq!((view.trend, view.pace, view.charge), (None, None, None));
    assert_eq!(view.done.len(), 6);
}

#[test]
fn the_wait_for_the_bath_is_the_number_of_batches_times_the_usual_time() {
    let mut tank = Tank::new();
    let none_known = bath_view(&tank.shop(), 9, wall(60)).queue;
    assert_eq!((none_known.batches, none_known.time), (Some(3), None));
    tank.batches(60, &[3]);
    let queue = |tank: &Tank, waiting, at| bath_view(&tank.shop(), waiting, wall(at)).queue;
    assert_eq!(queue(&tank, 9, HOUR).time, Some(minutes(3 * 12)));
    assert_eq!(queue(&tank, 0, HOUR).time, Some(Millis::ZERO));
    // Full for another ten minutes.
    tank.put_in(2 * HOUR, 4);
    assert_eq!(queue(&tank, 5, 2 * HOUR + 120).time, Some(minutes(10 + 2 * 12)));
}

#[test]
fn screens_beside_others_in_the_bath_go_in_at_once() {
    let mut tank = Tank::new();
    tank.batches(60, &[3]);
    tank.put_in(2 * HOUR, 1);
    let queue = bath_view(&tank.shop(), 3, wall(2 * HOUR + 60)).queue;
    assert_eq!((queue.batches, queue.time), (Some(1), Some(minutes(12))));
}

#[test]
fn a_new_charge_uses_the_first_batch_times_of_the_previous_one() {
    let mut tank = Tank::new();
    tank.batches(60, &[3, 3, 3, 6, 6, 6]);
    tank.charge(DAY);
    let queue = bath_view(&tank.shop(), 4, wall(DAY)).queue;
    assert_eq!((queue.time, queue.from_earlier_charge), (Some(minutes(12)), true));
}

#[test]
fn facts_of_two_devices_about_the_bath_fold_alike_in_any_order() {
    let mut tank = Tank::new();
    tank.press.on(TABLET);
    tank.batches(60, &[3, 4]);
    tank.press.on(PHONE);
    tank.batches(5 * HOUR, &[5]);
    let view = bath_view(&tank.shop(), 0, wall(DAY));
    let minutes: Vec<_> = view.done.iter().filter_map(|batch| batch.minutes).collect();
    assert_eq!(minutes, [3.0, 4.0, 5.0]);
}

proptest! {
    #[test]
    fn no_facts_about_the_bath_lose_a_batch_or_make_its_view_panic(
        facts in prop::collection::vec(any_bath_fact(), 0..120), waiting in 0..500u32, capacity in prop::option::of(1..9u16),
    ) {
        let mut press = TestShop::new();
        press.record(SHOP, Fact::Stencil(StencilFact::Bath(vec![BathField::Capacity(capacity)])));
        for (n, (id, fact)) in facts.iter().enumerate() {
            press.record_at(n as u64 * 60, Uuid::from_u128(*id), fact.clone());
        }
        let shop = press.shop();
        let view = bath_view(&shop, waiting, wall(DAY));
        let kept = shop.exposure_log.bath.batches(WallTime::EPOCH, WallTime::MAX);
        let from = view.charge.as_ref().map_or(WallTime::EPOCH, |charge| charge.at);
        let out = kept.iter().filter(|(_, batch)| batch.came_out.is_some() && batch.started_at() >= from).count();
        prop_assert_eq!(view.done.len(), out.min(40));
        prop_assert_eq!(view.in_bath.len(), kept.iter().filter(|(_, batch)| batch.came_out.is_none()).count());
        if let (Some(capacity), Some(batches)) = (capacity, view.queue.batches) {
            let room = batches * u32::from(capacity);
            prop_assert!(room >= waiting && (waiting == 0 || batches <= 1 + waiting.div_ceil(u32::from(capacity))));
        }
    }

    #[test]
    fn a_step_up_and_a_step_down_come_back_to_the_same_time(solid in 1..=20u8, test in 5.0..600.0f64) {
        let room = ExposureRoom::new();
        let form = ExposureForm { time: format!("{test:.1}"), solid: solid.to_string(), ..room.form() };
        let Ok(Some(found)) = form.preview(&room.press.shop(), None, Units::US) else { return Ok(()) };
        let steps = i32::from(solid) - 7;
        let back = found.time.seconds() * 10f64.powf(0.15 * f64::from(steps));
        let typed: f64 = form.time.parse().unwrap();
        prop_assert!((back - typed).abs() < 0.001 * 10f64.powf(0.15 * f64::from(steps.max(0))) + 1e-6, "{} {}", back, typed);
    }
}
