//! The forms of dryers, sheets, limits and measurements.

use super::{f, set_up};
use lastpull_core::facts::Fact;
use lastpull_core::form::FormProblem;
use lastpull_core::heat::{
    FabricLimitForm, HeatFact, HeaterField, HeaterForm, HeaterKind, LimitKind, SensorForm, SettlingForm, SheetForm,
};
use lastpull_core::job::Fabric;
use lastpull_core::time::Day;
use lastpull_core::units::{Length, Seconds, Units};
use uuid::Uuid;

#[test]
fn a_dryer_form_reports_every_problem_at_once() {
    let form =
        HeaterForm { heated_length: "0".into(), slowest: "40".into(), fastest: "20".into(), ..HeaterForm::default() };
    let problems = form.check(Units::UsCustomary, None).unwrap_err();
    assert_eq!(problems["name"], FormProblem::Missing);
    assert_eq!(problems["fastest"], FormProblem::OutOfOrder);
    assert!(problems.contains_key("heated_length"));
}

#[test]
fn saving_an_unchanged_dryer_form_in_metric_units_records_nothing() {
    let (mut press, _) = set_up();
    let id = press.id();
    let form = HeaterForm {
        name: "Tunnel".into(),
        heated_length: "36".into(),
        slowest: "10".into(),
        fastest: "60.5".into(),
        ..HeaterForm::default()
    };
    press.record(id, Fact::Heat(HeatFact::HeaterSet(form.check(Units::UsCustomary, None).unwrap())));
    let shop = press.shop();
    let kept = shop.heat.heater(id).unwrap();
    assert_eq!(kept.heated_length, Some(Length::from_inches(36.0)));
    let metric = HeaterForm::of(kept, Units::Metric);
    assert_eq!((metric.heated_length.as_str(), metric.slowest.as_str()), ("91.44", "25.4"));
    assert_eq!(metric.check(Units::Metric, Some(kept)), Ok(vec![]));
    let flash = HeaterForm { kind: HeaterKind::Flash, ..metric };
    let fields = flash.check(Units::Metric, Some(kept)).unwrap();
    assert!(fields.contains(&HeaterField::HeatedLength(None)), "a flash unit has no belt: {fields:?}");
}

#[test]
fn a_sheet_whose_highest_temperature_is_below_its_cure_is_refused() {
    let form = SheetForm {
        ink: "Brick".into(),
        cure: "320".into(),
        highest: "300".into(),
        source_day: "soon".into(),
        ..SheetForm::default()
    };
    let problems = form.check(Units::UsCustomary, None).unwrap_err();
    assert_eq!(problems["highest"], FormProblem::OutOfOrder);
    assert_eq!(problems["source_day"], FormProblem::NotADay);
}

#[test]
fn a_sheet_is_kept_with_its_source_and_reads_back() {
    let (mut press, _) = set_up();
    let id = press.id();
    let form = SheetForm {
        ink: "Brick".into(),
        cure: "320".into(),
        hold: "0".into(),
        flash: "220".into(),
        highest: "350".into(),
        source: "data sheet, rev. 4".into(),
        source_day: "2026-03-01".into(),
    };
    press.record(id, Fact::Heat(HeatFact::SheetSet(form.check(Units::UsCustomary, None).unwrap())));
    let shop = press.shop();
    let kept = shop.heat.sheet(id).unwrap();
    assert_eq!(kept.source_day, Day::from_iso("2026-03-01"));
    assert_eq!(kept.figures.hold, Some(Seconds::new(0.0)), "no hold is not an unknown hold");
    assert_eq!(SheetForm::of(kept, Units::UsCustomary), form);
    assert_eq!(form.check(Units::UsCustomary, Some(kept)), Ok(vec![]));
}

#[test]
fn a_limit_of_the_shops_own_needs_a_reason() {
    let form = FabricLimitForm { temperature: "280".into(), note: " ".into() };
    let check = |form: &FabricLimitForm| form.check(Fabric::Polyester, LimitKind::DyeMigration, Units::UsCustomary);
    assert_eq!(check(&form).unwrap_err()["note"], FormProblem::Missing);
    let back = check(&FabricLimitForm::default()).unwrap();
    assert!(matches!(back, HeatFact::FabricLimit { temperature: None, .. }));
}

#[test]
fn a_measurement_and_a_settling_must_be_complete() {
    let form = SensorForm { setting: "340".into(), ..SensorForm::default() };
    assert!(form.check(Units::UsCustomary).unwrap_err().contains_key("found"));
    let settling = |from: &str, to: &str, minutes: &str| {
        SettlingForm { from: from.into(), to: to.into(), minutes: minutes.into() }
            .check(Uuid::nil(), Units::UsCustomary)
    };
    assert_eq!(settling("340", "", "").unwrap_err().len(), 2);
    assert!(settling("340", "340", "5").is_err(), "no way at all");
    let took = Seconds::new(750.0);
    let logged = HeatFact::SettlingLogged { dryer: Uuid::nil(), from: f(340.0), to: f(260.0), took };
    assert_eq!(settling("340", "260", "12.5"), Ok(logged));
}
