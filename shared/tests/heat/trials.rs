//! Trials of a cure.

use super::set_up;
use crate::shop::TestShop;
use lastpull_core::facts::{Fact, RunField};
use lastpull_core::heat::{HeatFact, TrialField, TrialFit, TrialForm, TrialVerdict, trials_for};
use lastpull_core::job::Fabric;
use lastpull_core::run::Flash;
use lastpull_core::units::{BeltSpeed, Length, Seconds, Units};
use uuid::Uuid;

/// A trial of "Brick" on a fabric, recorded so many seconds after opening.
fn trial(press: &mut TestShop, at: u64, ink: &str, fabric: Fabric) -> Uuid {
    let id = press.id();
    let form = TrialForm { ink: ink.into(), fabric, hits: "2".into(), passes: "1".into(), ..TrialForm::default() };
    press.record_at(at, id, Fact::Heat(HeatFact::TrialSet(form.check(Units::US, None).unwrap())));
    id
}

#[test]
fn trials_of_the_same_ink_and_fabric_come_before_those_of_the_same_ink() {
    let (mut press, run) = set_up();
    let cotton = trial(&mut press, 10, "BRICK", Fabric::Cotton);
    let nylon = trial(&mut press, 20, "Brick", Fabric::Nylon);
    let later = trial(&mut press, 30, "brick ", Fabric::Cotton);
    trial(&mut press, 40, "White", Fabric::Cotton);
    let found = |press: &TestShop| -> Vec<_> {
        trials_for(&press.shop(), run).into_iter().map(|(id, _, fit)| (id, fit)).collect()
    };
    let (both, ink) = (TrialFit::InkAndFabric, TrialFit::Ink);
    assert_eq!(found(&press), [(later, both), (cotton, both), (nylon, ink)]);
    press.record_at(50, later, Fact::Deleted);
    assert_eq!(found(&press), [(cotton, both), (nylon, ink)]);
}

#[test]
fn a_trial_form_starts_from_the_run_and_records_only_changes() {
    let (mut press, run) = set_up();
    let distance = Some(Length::from_inches(2.5));
    let flash = RunField::Flash(Some(Flash { seconds: Seconds::new(7.0), distance }));
    press.set_up(
        run,
        vec![RunField::Mesh(Some(156)), flash, RunField::Belt(Some(BeltSpeed::from_inches_per_minute(24.0)))],
    );
    let shop = press.shop();
    let form = TrialForm::from_run(&shop, shop.run(run).unwrap(), Units::METRIC);
    assert_eq!((form.mesh.as_str(), form.dryer.as_str(), form.flash.as_str()), ("61", "160", "7"));
    let id = press.id();
    press.record(id, Fact::Heat(HeatFact::TrialSet(form.check(Units::METRIC, None).unwrap())));
    let kept = press.shop().heat.trial(id).unwrap().clone();
    let mut edited = TrialForm::of(&kept, Units::METRIC);
    assert_eq!(edited.check(Units::METRIC, Some(&kept)), Ok(vec![]));
    (edited.verdict, edited.outcome) = (TrialVerdict::Adjust, "cracked when stretched".into());
    let changed = [TrialField::Outcome("cracked when stretched".into()), TrialField::Verdict(TrialVerdict::Adjust)];
    assert_eq!(edited.check(Units::METRIC, Some(&kept)).unwrap(), changed);
}
