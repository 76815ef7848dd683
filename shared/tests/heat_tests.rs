//! Wash, crock and stretch tests, when they are due again; trials; and the forms of heat.

use crate::shop::Press;
use lastpull_core::facts::{Fact, RunField};
use lastpull_core::form::FormProblem;
use lastpull_core::heat::{
    DueReason, FabricLimitForm, Grade, HeatFact, HeatSettings, HeaterField, HeaterForm, HeaterKind, LimitKind,
    SensorForm, SensorMethod, SettlingForm, SheetField, SheetForm, TestField, TestForm, TestKind, TestMethod,
    TestResult, TrialField, TrialFit, TrialForm, TrialVerdict, heat_settings, inks_without_sheet, sheet_list, test_log,
    test_status, tests_due, trials_for,
};
use lastpull_core::ids::PhotoId;
use lastpull_core::ids::RunId;
use lastpull_core::job::{Fabric, Size};
use lastpull_core::journal::JournalFact;
use lastpull_core::photo::PhotoFact;
use lastpull_core::run::Flash;
use lastpull_core::time::Day;
use lastpull_core::units::{BeltSpeed, Length, NumberProblem, Seconds, Temperature, Units};
use uuid::Uuid;

fn f(degrees: f64) -> Temperature {
    Temperature::from_fahrenheit(degrees)
}

/// A cotton run in "Brick" at 320 °F, 90 s, one pass.
fn set_up() -> (Press, RunId) {
    let (mut press, run) = Press::with_run(&[(Size::M, 3)]);
    press.set_up(run, vec![RunField::Dryer(Some(f(320.0))), RunField::Dwell(Some(Seconds::new(90.0)))]);
    (press, run)
}

/// A test of the run as it is set up now, so many seconds after opening.
fn test(press: &mut Press, at: u64, run: RunId, kind: TestKind, result: TestResult) -> Uuid {
    let id = press.id();
    let form = TestForm { ink: "brick".into(), kind, times: "1".into(), result, ..TestForm::default() };
    let fields = form.check(heat_settings(&press.shop(), run), None).unwrap();
    press.say_at(at, id, Fact::Heat(HeatFact::TestSet(fields)));
    id
}

fn why(press: &Press, run: RunId) -> Vec<DueReason> {
    test_status(&press.shop(), run).unwrap().kinds[0].why.clone()
}

#[test]
fn an_ink_that_was_never_washed_is_due_and_one_that_passed_is_not() {
    let (mut press, run) = set_up();
    assert_eq!(why(&press, run), [DueReason::NeverPassed]);
    let id = test(&mut press, 10, run, TestKind::Wash, TestResult::Pass);
    let standing = test_status(&press.shop(), run).unwrap();
    assert!(!standing.is_due());
    assert_eq!(standing.kinds[0].passed.unwrap().0, id);
}

#[test]
fn the_tests_due_are_those_of_runs_still_to_print_one_for_each_ink_on_each_fabric() {
    let (mut press, run) = set_up();
    let same = press.order("More tees", None, Fabric::Cotton, &[(Size::M, 3)]);
    press.set_up(same, vec![RunField::Dryer(Some(f(320.0))), RunField::Dwell(Some(Seconds::new(90.0)))]);
    let jersey = press.order("Jerseys", None, Fabric::Polyester, &[(Size::M, 3)]);
    let due = |press: &Press| tests_due(&press.shop()).iter().map(|(id, due)| (*id, due.fabric)).collect::<Vec<_>>();
    assert_eq!(due(&press), [(run, Fabric::Cotton), (jersey, Fabric::Polyester)]);
    test(&mut press, 10, run, TestKind::Wash, TestResult::Pass);
    assert_eq!(due(&press), [(jersey, Fabric::Polyester)]);
    press.finish_at(20, jersey);
    assert_eq!(due(&press), []);
}

#[test]
fn an_ink_still_to_print_without_a_sheet_is_asked_for_once() {
    let (mut press, run) = set_up();
    let same = press.order("More tees", None, Fabric::Cotton, &[(Size::M, 3)]);
    press.set_up(same, vec![RunField::Ink("BRICK".into())]);
    let other = press.order("Totes", None, Fabric::Canvas, &[(Size::M, 3)]);
    press.set_up(other, vec![RunField::Ink("Apricot".into())]);
    let wanted = |press: &Press| inks_without_sheet(&press.shop());
    assert_eq!(wanted(&press), [("Apricot".to_owned(), other), ("Brick".to_owned(), run)]);
    let id = press.id();
    press.say(id, Fact::Heat(HeatFact::SheetSet(vec![SheetField::Ink("brick".into())])));
    assert_eq!(wanted(&press), [("Apricot".to_owned(), other)]);
    let first = press.id();
    press.say(first, Fact::Heat(HeatFact::SheetSet(vec![SheetField::Ink("Apricot".into())])));
    let sheets: Vec<Uuid> = sheet_list(&press.shop()).iter().map(|(id, _)| *id).collect();
    assert_eq!((wanted(&press), sheets), (vec![], vec![first, id]));
}

#[test]
fn a_test_under_way_has_not_passed() {
    let (mut press, run) = set_up();
    let id = test(&mut press, 10, run, TestKind::Wash, TestResult::Waiting);
    let standing = test_status(&press.shop(), run).unwrap();
    assert_eq!((standing.kinds[0].waiting, standing.is_due()), (Some(id), true));
    press.say_at(20, id, Fact::Heat(HeatFact::TestSet(vec![TestField::Result(TestResult::Pass)])));
    assert!(!test_status(&press.shop(), run).unwrap().is_due());
}

#[test]
fn each_setting_that_changed_since_makes_it_due_again_and_changing_back_does_not() {
    let flash = |seconds| RunField::Flash(Some(Flash { seconds: Seconds::new(seconds), distance: None }));
    for (field, reason) in [
        (RunField::Dryer(Some(f(310.0))), DueReason::Temperature),
        (RunField::Dryer(None), DueReason::Temperature),
        (RunField::Dwell(Some(Seconds::new(80.0))), DueReason::Dwell),
        (RunField::Passes(2), DueReason::Passes),
        (flash(7.0), DueReason::Flash),
    ] {
        let (mut press, run) = set_up();
        test(&mut press, 10, run, TestKind::Wash, TestResult::Pass);
        press.set_up(run, vec![field]);
        assert_eq!(why(&press, run), [reason]);
        let back = vec![
            RunField::Dryer(Some(f(320.0))),
            RunField::Dwell(Some(Seconds::new(90.0))),
            RunField::Passes(1),
            RunField::Flash(None),
        ];
        press.set_up(run, back);
        assert_eq!(why(&press, run), []);
    }
}

#[test]
fn another_sheet_another_dryer_and_another_measurement_make_it_due_again() {
    let (mut press, run) = set_up();
    let (sheet, tunnel) = (press.id(), press.id());
    test(&mut press, 10, run, TestKind::Wash, TestResult::Pass);
    let fields = vec![SheetField::Ink("Brick".into()), SheetField::Cure(Some(f(320.0)))];
    press.say_at(20, sheet, Fact::Heat(HeatFact::SheetSet(fields)));
    assert_eq!(why(&press, run), [DueReason::Sheet]);
    press.say(tunnel, Fact::Heat(HeatFact::HeaterSet(vec![HeaterField::Name("Tunnel".into())])));
    assert_eq!(why(&press, run), [DueReason::Dryer, DueReason::Sheet]);
    test(&mut press, 30, run, TestKind::Wash, TestResult::Pass);
    let read = HeatFact::SensorRead { setting: f(320.0), found: f(300.0), method: SensorMethod::Strip };
    press.say_at(40, tunnel, Fact::Heat(read));
    assert_eq!(why(&press, run), [DueReason::Sensor]);
}

#[test]
fn a_degree_of_rounding_is_no_change() {
    let (mut press, run) = set_up();
    test(&mut press, 10, run, TestKind::Wash, TestResult::Pass);
    press.set_up(run, vec![RunField::Dryer(Some(Temperature::from_celsius(160.4)))]);
    assert_eq!(why(&press, run), []);
}

#[test]
fn a_failure_after_the_last_pass_is_due_and_a_pass_after_it_is_not() {
    let (mut press, run) = set_up();
    test(&mut press, 10, run, TestKind::Wash, TestResult::Pass);
    let failed = test(&mut press, 20, run, TestKind::Wash, TestResult::Fail);
    assert_eq!(why(&press, run), [DueReason::Failed]);
    press.say_at(25, failed, Fact::Deleted);
    assert_eq!(why(&press, run), []);
    press.say_at(26, failed, Fact::Restored);
    test(&mut press, 30, run, TestKind::Wash, TestResult::Pass);
    assert_eq!(why(&press, run), []);
}

#[test]
fn notes_added_later_do_not_make_an_old_result_the_latest() {
    let (mut press, run) = set_up();
    let passed = test(&mut press, 10, run, TestKind::Wash, TestResult::Pass);
    test(&mut press, 20, run, TestKind::Wash, TestResult::Fail);
    let stands = press.shop().heat.test(passed).unwrap().clone();
    let form = TestForm { notes: "soft hand".into(), ..TestForm::of(&stands) };
    let fields = form.check(None, Some(&stands)).unwrap();
    assert_eq!(fields, [TestField::Notes("soft hand".into())]);
    press.say_at(30, passed, Fact::Heat(HeatFact::TestSet(fields)));
    assert_eq!(why(&press, run), [DueReason::Failed]);
}

#[test]
fn the_same_ink_on_another_fabric_is_another_test() {
    let (mut press, run) = set_up();
    test(&mut press, 10, run, TestKind::Wash, TestResult::Pass);
    let other = press.order("Jerseys", None, Fabric::Polyester, &[(Size::M, 1)]);
    assert_eq!(why(&press, other), [DueReason::NeverPassed]);
}

#[test]
fn a_crock_test_never_stands_in_for_the_wash_but_is_followed_once_made() {
    let (mut press, run) = set_up();
    test(&mut press, 10, run, TestKind::Crock, TestResult::Pass);
    let standing = test_status(&press.shop(), run).unwrap();
    let kinds: Vec<_> = standing.kinds.iter().map(|due| (due.kind, due.why.len())).collect();
    assert_eq!(kinds, [(TestKind::Wash, 1), (TestKind::Crock, 0)]);
}

#[test]
fn photos_hang_on_a_test() {
    let (mut press, run) = set_up();
    let id = test(&mut press, 10, run, TestKind::Wash, TestResult::Pass);
    let photo = PhotoId([7; 32]);
    press.say(id, Fact::Photo(PhotoFact::Taken { photo, width: 8, height: 6, bytes: 400 }));
    assert_eq!(press.shop().photos.of(id)[0].id, photo);
}

/// Source: scope of AATCC TM61 (`cure_test_methods.csv`, opened): one 45-minute test approximates five
/// home launderings.
#[test]
fn one_accelerated_laundering_stands_for_five_washes() {
    let table = include_str!("data/cure_test_methods.csv");
    let row = table.lines().find(|row| row.starts_with("AATCC 61,one 45 min test approximates")).unwrap();
    assert!(row.contains("five typical hand or home launderings") && row.ends_with(",opened"));
    let (mut press, run) = set_up();
    let id = press.id();
    let form = TestForm {
        ink: "Brick".into(),
        method: TestMethod::Aatcc61,
        times: "2".into(),
        grade: "4,5".into(),
        ..TestForm::default()
    };
    let fields = form.check(heat_settings(&press.shop(), run), None).unwrap();
    press.say(id, Fact::Heat(HeatFact::TestSet(fields)));
    let shop = press.shop();
    let kept = shop.heat.test(id).unwrap();
    assert_eq!((kept.home_washes(), kept.grade), (10, Grade::from_halves(9)));
    assert_eq!(TestForm::of(kept).grade, "4.5");
    assert_eq!(test_log(&shop).len(), 1);
}

#[test]
fn every_method_named_is_one_of_the_published_list_or_the_shops_own() {
    let table = include_str!("data/cure_test_methods.csv");
    for kind in [TestKind::Wash, TestKind::Crock, TestKind::Stretch] {
        for method in TestMethod::of(kind) {
            let name = match method {
                TestMethod::Own => continue,
                TestMethod::Aatcc61 => "AATCC 61",
                TestMethod::Aatcc8 => "AATCC 8",
                TestMethod::Iso105X12 => "ISO 105-X12",
                TestMethod::Iso6330 => "ISO 6330",
            };
            assert!(table.contains(name), "{name}");
        }
    }
}

#[test]
fn a_grade_between_half_steps_is_none_and_a_wash_method_is_none_for_a_crock() {
    let form = |grade: &str| TestForm { ink: "Brick".into(), grade: grade.into(), ..TestForm::default() };
    for bad in ["0.5", "5.5", "4.2", "good"] {
        assert_eq!(form(bad).check(None, None).unwrap_err()["grade"], FormProblem::NotAGrade, "{bad}");
    }
    let crock = TestForm { kind: TestKind::Crock, method: TestMethod::Iso6330, ..form("1") };
    assert!(crock.check(None, None).unwrap().contains(&TestField::Method(TestMethod::Own)));
    let bad = TestForm { times: "1001".into(), ..TestForm::default() }.check(None, None).unwrap_err();
    assert_eq!(bad["ink"], FormProblem::Missing);
    assert_eq!(bad["times"], FormProblem::Number(NumberProblem::TooHigh { most: 1_000.0 }));
}

/// A trial of "Brick" on a fabric, told so many seconds after opening.
fn trial(press: &mut Press, at: u64, ink: &str, fabric: Fabric) -> Uuid {
    let id = press.id();
    let form = TrialForm { ink: ink.into(), fabric, hits: "2".into(), passes: "1".into(), ..TrialForm::default() };
    press.say_at(at, id, Fact::Heat(HeatFact::TrialSet(form.check(Units::UsCustomary, None).unwrap())));
    id
}

#[test]
fn trials_are_found_again_by_ink_and_fabric_first_then_by_ink_newest_first() {
    let (mut press, run) = set_up();
    let cotton = trial(&mut press, 10, "BRICK", Fabric::Cotton);
    let nylon = trial(&mut press, 20, "Brick", Fabric::Nylon);
    let later = trial(&mut press, 30, "brick ", Fabric::Cotton);
    trial(&mut press, 40, "White", Fabric::Cotton);
    let found = |press: &Press| -> Vec<_> {
        trials_for(&press.shop(), run).into_iter().map(|(id, _, fit)| (id, fit)).collect()
    };
    let (both, ink) = (TrialFit::InkAndFabric, TrialFit::Ink);
    assert_eq!(found(&press), [(later, both), (cotton, both), (nylon, ink)]);
    press.say_at(50, later, Fact::Deleted);
    assert_eq!(found(&press), [(cotton, both), (nylon, ink)]);
}

#[test]
fn a_trial_starts_from_the_run_and_only_what_was_changed_is_told() {
    let (mut press, run) = set_up();
    let distance = Some(Length::from_inches(2.5));
    let flash = RunField::Flash(Some(Flash { seconds: Seconds::new(7.0), distance }));
    press.set_up(
        run,
        vec![RunField::Mesh(Some(156)), flash, RunField::Belt(Some(BeltSpeed::from_units(24.0, Units::UsCustomary)))],
    );
    let shop = press.shop();
    let form = TrialForm::from_run(&shop, shop.run(run).unwrap(), Units::Metric);
    assert_eq!((form.mesh.as_str(), form.dryer.as_str(), form.flash.as_str()), ("61", "160", "7"));
    let id = press.id();
    press.say(id, Fact::Heat(HeatFact::TrialSet(form.check(Units::Metric, None).unwrap())));
    let kept = press.shop().heat.trial(id).unwrap().clone();
    let mut edited = TrialForm::of(&kept, Units::Metric);
    assert_eq!(edited.check(Units::Metric, Some(&kept)), Ok(vec![]));
    (edited.verdict, edited.outcome) = (TrialVerdict::Adjust, "cracked when stretched".into());
    let told = [TrialField::Outcome("cracked when stretched".into()), TrialField::Verdict(TrialVerdict::Adjust)];
    assert_eq!(edited.check(Units::Metric, Some(&kept)).unwrap(), told);
}

#[test]
fn a_dryer_whose_fastest_is_its_slowest_is_sent_back_with_every_problem_at_once() {
    let form =
        HeaterForm { heated_length: "0".into(), slowest: "40".into(), fastest: "20".into(), ..HeaterForm::default() };
    let problems = form.check(Units::UsCustomary, None).unwrap_err();
    assert_eq!(problems["name"], FormProblem::Missing);
    assert_eq!(problems["fastest"], FormProblem::OutOfOrder);
    assert!(problems.contains_key("heated_length"));
}

#[test]
fn a_dryer_seen_in_centimetres_and_saved_untouched_changes_nothing() {
    let (mut press, _) = set_up();
    let id = press.id();
    let form = HeaterForm {
        name: "Tunnel".into(),
        heated_length: "36".into(),
        slowest: "10".into(),
        fastest: "60.5".into(),
        ..HeaterForm::default()
    };
    press.say(id, Fact::Heat(HeatFact::HeaterSet(form.check(Units::UsCustomary, None).unwrap())));
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
fn a_sheet_whose_highest_is_below_its_cure_is_sent_back() {
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
    press.say(id, Fact::Heat(HeatFact::SheetSet(form.check(Units::UsCustomary, None).unwrap())));
    let shop = press.shop();
    let kept = shop.heat.sheet(id).unwrap();
    assert_eq!(kept.source_day, Day::from_iso("2026-03-01"));
    assert_eq!(kept.figures.hold, Some(Seconds::new(0.0)), "no hold is not an unknown hold");
    assert_eq!(SheetForm::of(kept, Units::UsCustomary), form);
    assert_eq!(form.check(Units::UsCustomary, Some(kept)), Ok(vec![]));
}

#[test]
fn a_limit_of_our_own_must_say_why() {
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

#[test]
fn what_no_device_records_is_out_of_bounds() {
    let hot = Temperature::from_celsius(2_000.0);
    let settings = HeatSettings { temperature: Some(hot), ..HeatSettings::default() };
    for fact in [
        HeatFact::RoomRead { temperature: f(80.0), humidity: 101, by: None },
        HeatFact::RoomRead { temperature: hot, humidity: 50, by: None },
        HeatFact::HeaterSet(vec![HeaterField::HeatedLength(Some(Length::from_micrometres(-1)))]),
        HeatFact::HeaterSet(vec![HeaterField::Slowest(Some(BeltSpeed::from_micrometres_a_second(0)))]),
        HeatFact::HeaterSet(vec![HeaterField::Name("x".repeat(161))]),
        HeatFact::SettlingFinished(Seconds::from_milliseconds(u32::MAX)),
        HeatFact::SheetSet(vec![SheetField::Cure(Some(hot))]),
        HeatFact::TestSet(vec![TestField::Settings(settings)]),
        HeatFact::TrialSet(vec![TrialField::Hits(1); 65]),
    ] {
        assert!(!Fact::Heat(fact.clone()).in_bounds(), "{fact:?}");
    }
}

/// The words are a file format: they must not change.
#[test]
fn the_facts_of_heat_are_frozen_as_they_are_written() {
    let dryer = Uuid::from_u128(7);
    for (fact, json) in [
        (
            HeatFact::RoomRead { temperature: Temperature::from_celsius(33.5), humidity: 60, by: None },
            r#"{"heat":{"room_read":{"temperature":33500,"humidity":60,"by":null}}}"#,
        ),
        (HeatFact::SensorUnread, r#"{"heat":"sensor_unread"}"#),
        (
            HeatFact::SettlingStarted {
                dryer,
                from: Temperature::from_celsius(170.0),
                to: Temperature::from_celsius(125.0),
            },
            r#"{"heat":{"settling_started":{"dryer":"00000000-0000-0000-0000-000000000007","from":170000,"to":125000}}}"#,
        ),
        (
            HeatFact::TestSet(vec![
                TestField::Method(TestMethod::Iso105X12),
                TestField::Grade(Grade::from_halves(9)),
                TestField::Fabric(Fabric::TriBlend),
            ]),
            r#"{"heat":{"test_set":[{"method":"iso105_x12"},{"grade":9},{"fabric":"tri_blend"}]}}"#,
        ),
    ] {
        let fact = Fact::Heat(fact);
        assert_eq!(fact.to_json().get(), json);
        assert_eq!(Fact::from_json(json), Some(fact));
    }
}
