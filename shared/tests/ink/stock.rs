//! Stock on the shelf, and what to buy.

use super::{ordered, plain_print};
use crate::shop::{Published, TestShop, g, published};
use lastpull_core::facts::Fact;
use lastpull_core::form::FormProblem;
use lastpull_core::ids::{SHOP, Subject};
use lastpull_core::ink::{
    ComponentField, InkFact, LowReason, PotField, PourStep, StockForm, ink_needed, ink_shelf, pot_label, stock_left,
    stock_view,
};
use lastpull_core::job::Fabric;
use lastpull_core::units::{Grams, Units};

#[test]
fn stock_follows_from_weighings_deliveries_and_pours() {
    let Published { mut press, yellow, white, .. } = published();
    let pot = press.pot(None, 0.0);
    press.pour(pot, yellow, 10.0, PourStep::Correction);
    assert_eq!(stock_left(&press.shop(), yellow), None);
    let form = StockForm { grams: "2".into(), note: "lot 7".into() };
    // Two ounces, by the definition of the ounce.
    press.ink_event(form.delivered(yellow, None, Units::US.with_ounces()).unwrap());
    assert_eq!(stock_left(&press.shop(), yellow), Some(Grams::from_milligrams(56_699)));
    press.ink_event(StockForm { grams: "500".into(), ..form.clone() }.counted(yellow, None, Units::METRIC).unwrap());
    let pour = press.pour(pot, yellow, 120.0, PourStep::Correction);
    press.ink_event(StockForm { grams: "1000".into(), ..form }.delivered(yellow, None, Units::METRIC).unwrap());
    assert_eq!(stock_left(&press.shop(), yellow), Some(g(1_380.0)));
    press.record(pour, Fact::Deleted);
    assert_eq!(stock_left(&press.shop(), yellow), Some(g(1_500.0)));
    assert_eq!(StockForm::default().counted(white, None, Units::METRIC).unwrap_err()["grams"], FormProblem::Missing);
    assert!(StockForm::default().delivered(white, None, Units::METRIC).is_err());
}

#[test]
fn coming_runs_share_the_pots_and_show_what_is_low_and_what_to_buy() {
    let Published { mut press, yellow, white, clear, first, .. } = published();
    let (print, _) = plain_print().check(Units::METRIC).unwrap();
    let runs = [("First", 100), ("Second", 200)].map(|(title, pieces)| {
        let run = ordered(&mut press, title, "Brick", Fabric::Cotton, pieces);
        press.record_ink(run, InkFact::PrintSet(Some(print)));
        run
    });
    let unknown = ordered(&mut press, "Third", "Teal", Fabric::Cotton, 10);
    press.record(SHOP, Fact::RunsOrdered(vec![runs[0], runs[1], unknown]));
    let pot = press.pot(Some(first), 300.0);
    for (component, grams) in [(yellow, 60.0), (white, 90.0), (clear, 150.0)] {
        press.pour(pot, component, grams, PourStep::WeighIn);
    }
    // By hand: 220 g and 440 g are needed, a pot holds 300 g, so the second run lacks 360 g: 72, 108, 180.
    let needed = ink_needed(&press.shop());
    let row = |at: usize| (needed[at].run, needed[at].grams, needed[at].in_pots, needed[at].to_mix);
    assert_eq!(row(0), (runs[0], Some(g(220.0)), g(220.0), Some(Grams::ZERO)));
    assert_eq!(row(1), (runs[1], Some(g(440.0)), g(80.0), Some(g(360.0))));
    assert_eq!(row(2), (unknown, None, Grams::ZERO, None));

    press.ink_event(InkFact::Counted { component: yellow, grams: g(50.0), by: None });
    press.ink_event(InkFact::Counted { component: white, grams: g(150.0), by: None });
    press.ink_event(InkFact::Counted { component: clear, grams: g(190.0), by: None });
    press.record_ink(
        yellow,
        InkFact::ComponentSet(vec![ComponentField::Tub(Some(g(20.0))), ComponentField::Cost(Some(5_000))]),
    );
    press.record_ink(white, InkFact::ComponentSet(vec![ComponentField::LowAt(Some(g(200.0)))]));
    let view = stock_view(&press.shop());
    let of = |id: Subject| view.rows.iter().find(|row| row.component == id).unwrap();
    assert_eq!(of(yellow).low, Some(LowReason::ForRun { run: runs[1], title: "Second".into(), short: g(22.0) }));
    // Two tubs of 20 g for 22 g, at 50.00 a kilogram.
    let buy = of(yellow).buy.unwrap();
    assert_eq!((buy.grams, buy.tubs, buy.cost), (g(40.0), Some(2), Some(200)));
    assert_eq!((of(white).required, of(white).low.clone()), (g(108.0), Some(LowReason::BelowLimit)));
    let buy = of(white).buy.unwrap();
    assert_eq!((buy.grams, buy.tubs, buy.cost), (g(158.0), None, None));
    assert_eq!((of(clear).low.clone(), of(clear).buy), (None, None));
    assert_eq!((view.low, view.cost, view.unpriced), (2, 200, 1));
    assert!(view.rows[0].low.is_some() && view.rows[1].low.is_some());
    assert_eq!(view.unknown.iter().map(|need| need.run).collect::<Vec<_>>(), [unknown]);
    let shelf = ink_shelf(&press.shop());
    assert_eq!((shelf.low, shelf.components, shelf.pots.len(), shelf.needed.len()), (2, 4, 1, 3));
    assert_eq!(shelf.recipes[0].in_pots, g(300.0));

    // A pot meant for the second run is not given to the first.
    press.record_ink(pot, InkFact::PotSet(vec![PotField::Run(Some(runs[1]))]));
    let needed = ink_needed(&press.shop());
    assert_eq!((needed[0].in_pots, needed[1].in_pots), (Grams::ZERO, g(300.0)));
    let label = pot_label(&press.shop(), pot).unwrap();
    assert_eq!((label.job.as_str(), label.ink.as_str(), label.name.as_str()), ("Second", "Brick", "Brick"));
}

#[test]
fn small_runs_of_an_ink_share_the_charge_of_a_screen() {
    let Published { mut press, clear, first, .. } = published();
    let (print, _) = plain_print().check(Units::METRIC).unwrap();
    let runs = ["First", "Second"].map(|title| {
        let run = ordered(&mut press, title, "Brick", Fabric::Cotton, 10);
        press.record_ink(run, InkFact::PrintSet(Some(print)));
        run
    });
    press.record(SHOP, Fact::RunsOrdered(runs.to_vec()));
    let rows = |press: &TestShop| {
        let needed = ink_needed(&press.shop());
        let row = |at: usize| (needed[at].grams, needed[at].in_pots, needed[at].left_over, needed[at].to_mix);
        (row(0), row(1))
    };
    // By hand: each uses 22 g and needs 150 g. The first leaves 128 g, so that the second lacks 22 g.
    let (one, two) = rows(&press);
    assert_eq!(one, (Some(g(150.0)), Grams::ZERO, Grams::ZERO, Some(g(150.0))));
    assert_eq!(two, (Some(g(150.0)), Grams::ZERO, g(128.0), Some(g(22.0))));
    assert!(ink_needed(&press.shop()).iter().all(|need| need.is_charge() && need.used == Some(g(22.0))));

    let pot = press.pot(None, 0.0);
    press.record_ink(pot, InkFact::PotSet(vec![PotField::Revision(Some(first)), PotField::Run(Some(runs[0]))]));
    press.pour(pot, clear, 100.0, PourStep::Correction);
    let (one, two) = rows(&press);
    assert_eq!((one.1, one.3), (g(100.0), Some(g(50.0))));
    assert_eq!((two.1, two.2, two.3), (Grams::ZERO, g(128.0), Some(g(22.0))));

    // The screen of a run that has begun is charged: what is in the pot is enough for the rest of it.
    press.start_at(10, runs[0]);
    let (one, two) = rows(&press);
    assert_eq!(one, (Some(g(22.0)), g(22.0), Grams::ZERO, Some(Grams::ZERO)));
    assert_eq!((two.1, two.2, two.3), (g(78.0), Grams::ZERO, Some(g(72.0))));
}
