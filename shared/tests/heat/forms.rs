//! The forms of dryers, sheets, limits and measurements.

use super::{f, set_up};
use lastpull_core::facts::Fact;
use lastpull_core::form::FormProblem;
use lastpull_core::heat::{
    FabricLimitForm, HeatFact, Heater, HeaterField, HeaterForm, HeaterKind, LimitKind, SensorForm, SettlingForm,
    SheetForm,
};
use lastpull_core::job::Fabric;
use lastpull_core::time::Day;
use lastpull_core::units::{BeltSpeed, Length, Seconds, Units};
use uuid::Uuid;

#[test]
fn a_dryer_form_reports_every_problem_at_once() {
    let form =
        HeaterForm { heated_length: "0".into(), slowest: "4".into(), fastest: "2".into(), ..HeaterForm::default() };
    let problems = form.check(Units::US, None).unwrap_err();
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
        slowest: "1".into(),
        fastest: "5.25".into(),
        ..HeaterForm::default()
    };
    press.record(id, Fact::Heat(HeatFact::HeaterSet(form.check(Units::US, None).unwrap())));
    let shop = press.shop();
    let kept = shop.heat.heater(id).unwrap();
    assert_eq!(kept.heated_length, Some(Length::from_inches(36.0)));
    let metric = HeaterForm::of(kept, Units::METRIC);
    assert_eq!((metric.heated_length.as_str(), metric.slowest.as_str()), ("91.44", "30.48"));
    assert_eq!(metric.check(Units::METRIC, Some(kept)), Ok(vec![]));
    let flash = HeaterForm { kind: HeaterKind::Flash, ..metric };
    let fields = flash.check(Units::METRIC, Some(kept)).unwrap();
    assert!(fields.contains(&HeaterField::HeatedLength(None)), "a flash unit has no belt: {fields:?}");
}

#[test]
fn the_speeds_that_earlier_versions_accepted_block_no_form() {
    let inches = [1.0, 400.0].map(BeltSpeed::from_inches_per_minute);
    let centimetres = [2.0, 1_000.0].map(|speed| BeltSpeed::from_units(speed, Units::METRIC));
    for [slowest, fastest] in [inches.map(Some), centimetres.map(Some)] {
        let kept = Heater { name: "Tunnel".into(), slowest, fastest, ..Heater::default() };
        for units in [Units::US, Units::METRIC] {
            assert_eq!(HeaterForm::of(&kept, units).check(units, Some(&kept)), Ok(vec![]));
        }
    }
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
    let problems = form.check(Units::US, None).unwrap_err();
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
    press.record(id, Fact::Heat(HeatFact::SheetSet(form.check(Units::US, None).unwrap())));
    let shop = press.shop();
    let kept = shop.heat.sheet(id).unwrap();
    assert_eq!(kept.source_day, Day::from_iso("2026-03-01"));
    assert_eq!(kept.figures.hold, Some(Seconds::new(0.0)), "no hold is not an unknown hold");
    assert_eq!(SheetForm::of(kept, Units::US), form);
    assert_eq!(form.check(Units::US, Some(kept)), Ok(vec![]));
}

#[test]
fn a_limit_of_the_shops_own_needs_a_reason() {
    let form = FabricLimitForm { temperature: "280".into(), note: " ".into() };
    let check = |form: &FabricLimitForm| form.check(Fabric::Polyester, LimitKind::DyeMigration, Units::US);
    assert_eq!(check(&form).unwrap_err()["note"], FormProblem::Missing);
    let back = check(&FabricLimitForm::default()).unwrap();
    assert!(matches!(back, HeatFact::FabricLimit { temperature: None, .. }));
}

#[test]
fn a_measurement_and_a_settling_must_be_complete() {
    let form = SensorForm { setting: "340".into(), ..SensorForm::default() };
    assert!(form.check(Units::US).unwrap_err().contains_key("found"));
    let settling = |from: &str, to: &str, minutes: &str| {
        SettlingForm { from: from.into(), to: to.into(), minutes: minutes.into() }.check(Uuid::nil(), Units::US)
    };
    assert_eq!(settling("340", "", "").unwrap_err().len(), 2);
    assert!(settling("340", "340", "5").is_err(), "no way at all");
    let took = Seconds::new(750.0);
    let logged = HeatFact::SettlingLogged { dryer: Uuid::nil(), from: f(340.0), to: f(260.0), took };
    assert_eq!(settling("340", "260", "12.5"), Ok(logged));
}
