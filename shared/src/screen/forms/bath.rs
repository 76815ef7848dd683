//! The forms of the reclaim bath: its settings, a new charge, and batches going in and coming out.

use crate::facts::{BatchTime, BathField, MAX_BATCH_SECONDS, MAX_SCREENS, StencilFact};
use crate::form::{
    FormProblem, Problems, TYPED_NOTE, changed_fields, collect, collect_number, collect_optional, parse_required,
    parse_text, trim_number,
};
use crate::ids::Subject;
use crate::screen::Bath;
use crate::units::{NumberProblem, Seconds, parse_number, parse_whole};
use serde::{Deserialize, Serialize};

fn parse_screens(text: &str) -> Result<u16, NumberProblem> {
    parse_whole(text, 1, u32::from(MAX_SCREENS)).map(|count| count as u16)
}

/// The form of the bath's settings.
#[derive(Clone, Debug, PartialEq, Default, Serialize, Deserialize)]
#[serde(default)]
pub struct BathForm {
    /// Screens that fit in at once, or empty.
    pub capacity: String,
    /// Recharge at this multiple of the fresh bath's minutes per screen, such as `1.5`; empty for the
    /// default.
    pub recharge_at: String,
    /// Free notes.
    pub note: String,
}

impl BathForm {
    /// The form filled in from the bath's current settings.
    pub fn of(bath: &Bath) -> Self {
        let own = bath.is_custom_recharge().then(|| trim_number(f64::from(bath.recharge_at()) / 100.0));
        Self {
            capacity: bath.capacity.map(|count| count.to_string()).unwrap_or_default(),
            recharge_at: own.unwrap_or_default(),
            note: bath.note.clone(),
        }
    }

    /// The settings that changed.
    ///
    /// # Errors
    /// [`Problems`] by field: `capacity`, `recharge_at`, `note`.
    pub fn check(&self, before: &Bath) -> Result<Vec<BathField>, Problems> {
        let mut problems = Problems::new();
        let p = &mut problems;
        let capacity = collect_optional(p, "capacity", &self.capacity, parse_screens);
        let recharge_at = collect_optional(p, "recharge_at", &self.recharge_at, |text| {
            parse_number(text, 1.05, 10.0).map(|times| (times * 100.0).round() as u16)
        });
        match (collect(p, "note", parse_text(&self.note, TYPED_NOTE)), problems.is_empty()) {
            (Some(note), true) => {
                let fields =
                    vec![BathField::Capacity(capacity), BathField::RechargeAt(recharge_at), BathField::Note(note)];
                Ok(changed_fields(fields, &before.fields()))
            }
            _ => Err(problems),
        }
    }
}

/// The form of a new charge.
#[derive(Clone, Debug, PartialEq, Default, Serialize, Deserialize)]
#[serde(default)]
pub struct ChargeForm {
    /// The chemistry used.
    pub chemistry: String,
    /// Who charged it, or empty.
    pub by: String,
}

impl ChargeForm {
    /// The fact that records the charge.
    ///
    /// # Errors
    /// [`Problems`] by field: `chemistry`.
    pub fn check(&self) -> Result<StencilFact, Problems> {
        let mut problems = Problems::new();
        match collect(&mut problems, "chemistry", parse_text(&self.chemistry, TYPED_NOTE)) {
            Some(chemistry) => Ok(StencilFact::BathCharged { chemistry, by: parse_person(&self.by) }),
            None => Err(problems),
        }
    }
}

/// The name of a person, trimmed and cut to 80 characters; `None` if the text is blank.
pub(crate) fn parse_person(text: &str) -> Option<String> {
    let tidy: String = text.trim().chars().take(80).collect();
    (!tidy.is_empty()).then_some(tidy)
}

/// The form of a batch that goes in.
#[derive(Clone, Debug, PartialEq, Default)]
pub struct BatchInForm {
    /// The screens, as far as they are in the shop's list.
    pub screens: Vec<Subject>,
    /// Number of screens in all; empty for as many as `screens` holds.
    pub count: String,
}

impl BatchInForm {
    /// The fact that records the batch. The number cannot be lower than that of the screens selected.
    ///
    /// # Errors
    /// [`Problems`] by field: `count`.
    pub fn check(&self) -> Result<StencilFact, Problems> {
        let mut problems = Problems::new();
        let picked = self.screens.len() as u32;
        let count = if self.count.trim().is_empty() && picked > 0 {
            Ok(picked.min(u32::from(MAX_SCREENS)))
        } else {
            parse_whole(&self.count, picked.max(1), u32::from(MAX_SCREENS))
        };
        match collect_number(&mut problems, "count", count) {
            Some(count) if picked <= u32::from(MAX_SCREENS) => {
                Ok(StencilFact::BatchIn { screens: self.screens.clone(), count: count as u16 })
            }
            Some(_) => {
                let most = f64::from(MAX_SCREENS);
                problems.insert("count", FormProblem::Number(NumberProblem::TooHigh { most }));
                Err(problems)
            }
            None => Err(problems),
        }
    }
}

/// How the time of a batch is entered.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default, Serialize, Deserialize)]
pub enum BatchTimeKind {
    /// From the recorded times of going in and coming out.
    #[default]
    Elapsed,
    /// Minutes for the whole batch.
    Whole,
    /// Minutes per screen.
    EachScreen,
}

/// The form of a batch that comes out.
#[derive(Clone, Debug, PartialEq, Default, Serialize, Deserialize)]
pub struct BatchOutForm {
    /// How the time is entered.
    pub kind: BatchTimeKind,
    /// Minutes; ignored if the recorded times are used.
    pub minutes: String,
    /// Number of screens that came out; empty for as many as went in.
    pub count: String,
    /// Screens of the batch that did not come out clean.
    pub not_clean: Vec<Subject>,
}

impl BatchOutForm {
    /// The fact that records the batch as finished. If the batch was not recorded when it went in
    /// (`went_in` is false), both the minutes and the number of screens must be typed.
    ///
    /// # Errors
    /// [`Problems`] by field: `minutes`, `count`.
    pub fn check(&self, went_in: bool) -> Result<StencilFact, Problems> {
        let mut problems = Problems::new();
        let p = &mut problems;
        let longest = f64::from(MAX_BATCH_SECONDS) / 60.0;
        let mut minutes = || {
            let read = |text: &str| parse_number(text, 0.1, longest).map(|minutes| Seconds::new(minutes * 60.0));
            collect(p, "minutes", parse_required(&self.minutes, read))
        };
        let time = match self.kind {
            BatchTimeKind::Elapsed if went_in => Some(BatchTime::Elapsed),
            BatchTimeKind::Elapsed | BatchTimeKind::Whole => minutes().map(BatchTime::Whole),
            BatchTimeKind::EachScreen => minutes().map(BatchTime::EachScreen),
        };
        let count = collect_optional(p, "count", &self.count, parse_screens);
        if !went_in && self.count.trim().is_empty() {
            p.insert("count", FormProblem::Missing);
        }
        match (time, problems.is_empty()) {
            (Some(time), true) => Ok(StencilFact::BatchOut { time, count }),
            _ => Err(problems),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use uuid::Uuid;

    #[test]
    fn a_batch_counts_the_selected_screens_unless_more_are_typed() {
        let screens = vec![Uuid::from_u128(1), Uuid::from_u128(2)];
        let form = |count: &str| BatchInForm { screens: screens.clone(), count: count.into() };
        assert_eq!(form("").check().unwrap(), StencilFact::BatchIn { screens: screens.clone(), count: 2 });
        assert_eq!(form("3").check().unwrap(), StencilFact::BatchIn { screens: screens.clone(), count: 3 });
        let too_few = form("1").check().unwrap_err();
        assert_eq!(too_few["count"], FormProblem::Number(NumberProblem::TooLow { least: 2.0 }));
        assert!(BatchInForm::default().check().is_err());
    }

    #[test]
    fn without_a_start_time_minutes_and_count_must_be_typed() {
        let form = BatchOutForm::default();
        assert_eq!(form.check(true).unwrap(), StencilFact::BatchOut { time: BatchTime::Elapsed, count: None });
        let problems = form.check(false).unwrap_err();
        assert_eq!(problems["minutes"], FormProblem::Missing);
        assert_eq!(problems["count"], FormProblem::Missing);
        let typed = BatchOutForm { kind: BatchTimeKind::EachScreen, minutes: "2,5".into(), count: "4".into(), ..form };
        let time = BatchTime::EachScreen(Seconds::new(150.0));
        assert_eq!(typed.check(false).unwrap(), StencilFact::BatchOut { time, count: Some(4) });
    }

    #[test]
    fn the_bath_changes_where_it_differs_and_an_empty_threshold_is_ours() {
        let mut bath = Bath::default();
        let form = BathForm { capacity: "4".into(), recharge_at: "1,75".into(), note: String::new() };
        let fields = form.check(&bath).unwrap();
        assert_eq!(fields, [BathField::Capacity(Some(4)), BathField::RechargeAt(Some(175))]);
        fields.iter().for_each(|field| bath.set(field));
        assert_eq!(BathForm::of(&bath).recharge_at, "1.75");
        let form = BathForm { recharge_at: String::new(), ..BathForm::of(&bath) };
        assert_eq!(form.check(&bath).unwrap(), [BathField::RechargeAt(None)]);
        let form = BathForm { recharge_at: "0.9".into(), ..form };
        assert!(form.check(&bath).unwrap_err().contains_key("recharge_at"));
    }
}
