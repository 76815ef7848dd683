//! Wash, crock and stretch tests, when they are due again; trials; and the forms of heat.

use super::{f, set_up, test};
use crate::shop::TestShop;
use lastpull_core::facts::{Fact, RunField};
use lastpull_core::form::FormProblem;
use lastpull_core::heat::{
    DueReason, Grade, HeatFact, HeaterField, SensorMethod, SheetField, TestField, TestForm, TestKind, TestMethod,
    TestResult, heat_settings, inks_without_sheet, sheet_list, test_log, test_status, tests_due,
};
use lastpull_core::ids::{PhotoId, RunId};
use lastpull_core::job::{Fabric, Size};
use lastpull_core::photo::PhotoFact;
use lastpull_core::run::Flash;
use lastpull_core::units::{NumberProblem, Seconds, Temperature};
use uuid::Uuid;

fn why(press: &TestShop, run: RunId) -> Vec<DueReason> {
    test_status(&press.shop(), run).unwrap().kinds[0].why.clone()
}

#[test]
fn an_ink_never_wash_tested_is_due_and_one_that_passed_is_not() {
    let (mut press, run) = set_up();
    assert_eq!(why(&press, run), [DueReason::NeverPassed]);
    let id = test(&mut press, 10, run, TestKind::Wash, TestResult::Pass);
    let standing = test_status(&press.shop(), run).unwrap();
    assert!(!standing.is_due());
    assert_eq!(standing.kinds[0].passed.unwrap().id, id);
}

#[test]
fn tests_are_due_for_open_runs_once_for_each_ink_and_fabric() {
    let (mut press, run) = set_up();
    let same = press.order("More tees", None, Fabric::Cotton, &[(Size::M, 3)]);
    press.set_up(same, vec![RunField::Dryer(Some(f(320.0))), RunField::Dwell(Some(Seconds::new(90.0)))]);
    let jersey = press.order("Jerseys", None, Fabric::Polyester, &[(Size::M, 3)]);
    let due = |press: &TestShop| tests_due(&press.shop()).iter().map(|(id, due)| (*id, due.fabric)).collect::<Vec<_>>();
    assert_eq!(due(&press), [(run, Fabric::Cotton), (jersey, Fabric::Polyester)]);
    test(&mut press, 10, run, TestKind::Wash, TestResult::Pass);
    assert_eq!(due(&press), [(jersey, Fabric::Polyester)]);
    press.finish_at(20, jersey);
    assert_eq!(due(&press), []);
}

#[test]
fn an_ink_without_a_sheet_is_listed_once_while_it_is_to_be_printed() {
    let (mut press, run) = set_up();
    let same = press.order("More tees", None, Fabric::Cotton, &[(Size::M, 3)]);
    press.set_up(same, vec![RunField::Ink("BRICK".into())]);
    let other = press.order("Totes", None, Fabric::Canvas, &[(Size::M, 3)]);
    press.set_up(other, vec![RunField::Ink("Apricot".into())]);
    let wanted = |press: &TestShop| inks_without_sheet(&press.shop());
    assert_eq!(wanted(&press), [("Apricot".to_owned(), other), ("Brick".to_owned(), run)]);
    let id = press.id();
    press.record(id, Fact::Heat(HeatFact::SheetSet(vec![SheetField::Ink("brick".into())])));
    assert_eq!(wanted(&press), [("Apricot".to_owned(), other)]);
    let first = press.id();
    press.record(first, Fact::Heat(HeatFact::SheetSet(vec![SheetField::Ink("Apricot".into())])));
    let sheets: Vec<Uuid> = sheet_list(&press.shop()).iter().map(|(id, _)| *id).collect();
    assert_eq!((wanted(&press), sheets), (vec![], vec![first, id]));
}

#[test]
fn a_test_under_way_has_not_passed() {
    let (mut press, run) = set_up();
    let id = test(&mut press, 10, run, TestKind::Wash, TestResult::Waiting);
    let standing = test_status(&press.shop(), run).unwrap();
    assert_eq!((standing.kinds[0].waiting, standing.is_due()), (Some(id), true));
    press.record_at(20, id, Fact::Heat(HeatFact::TestSet(vec![TestField::Result(TestResult::Pass)])));
    assert!(!test_status(&press.shop(), run).unwrap().is_due());
}

#[test]
fn each_changed_setting_makes_a_test_due_and_changing_back_does_not() {
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
    press.record_at(20, sheet, Fact::Heat(HeatFact::SheetSet(fields)));
    assert_eq!(why(&press, run), [DueReason::Sheet]);
    press.record(tunnel, Fact::Heat(HeatFact::HeaterSet(vec![HeaterField::Name("Tunnel".into())])));
    assert_eq!(why(&press, run), [DueReason::Dryer, DueReason::Sheet]);
    test(&mut press, 30, run, TestKind::Wash, TestResult::Pass);
    let read = HeatFact::SensorRead { setting: f(320.0), found: f(300.0), method: SensorMethod::Strip };
    press.record_at(40, tunnel, Fact::Heat(read));
    assert_eq!(why(&press, run), [DueReason::Sensor]);
}

#[test]
fn a_difference_from_rounding_does_not_make_a_test_due() {
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
    press.record_at(25, failed, Fact::Deleted);
    assert_eq!(why(&press, run), []);
    press.record_at(26, failed, Fact::Restored);
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
    press.record_at(30, passed, Fact::Heat(HeatFact::TestSet(fields)));
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
fn a_crock_test_never_replaces_the_wash_test_but_is_tracked_once_made() {
    let (mut press, run) = set_up();
    test(&mut press, 10, run, TestKind::Crock, TestResult::Pass);
    let standing = test_status(&press.shop(), run).unwrap();
    let kinds: Vec<_> = standing.kinds.iter().map(|due| (due.kind, due.why.len())).collect();
    assert_eq!(kinds, [(TestKind::Wash, 1), (TestKind::Crock, 0)]);
}

#[test]
fn a_test_can_have_photos() {
    let (mut press, run) = set_up();
    let id = test(&mut press, 10, run, TestKind::Wash, TestResult::Pass);
    let photo = PhotoId([7; 32]);
    press.record(id, Fact::Photo(PhotoFact::Taken { photo, width: 8, height: 6, bytes: 400 }));
    assert_eq!(press.shop().photos.of(id)[0].id, photo);
}

/// Source: scope of AATCC TM61 (`cure_test_methods.csv`, opened): one 45-minute test approximates five
/// home launderings.
#[test]
fn one_accelerated_laundering_stands_for_five_washes() {
    let table = include_str!("../data/cure_test_methods.csv");
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
    press.record(id, Fact::Heat(HeatFact::TestSet(fields)));
    let shop = press.shop();
    let kept = shop.heat.test(id).unwrap();
    assert_eq!((kept.home_washes(), kept.grade), (10, Grade::from_halves(9)));
    assert_eq!(TestForm::of(kept).grade, "4.5");
    assert_eq!(test_log(&shop).len(), 1);
}

#[test]
fn every_method_named_is_one_of_the_published_list_or_the_shops_own() {
    let table = include_str!("../data/cure_test_methods.csv");
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
fn a_grade_off_the_half_steps_and_a_method_of_another_test_are_refused() {
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
