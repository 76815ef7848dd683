//! What is typed beside the bath.

use crate::facts::{BatchTime, BathField, LONGEST_BATCH, MOST_SCREENS, StencilFact};
use crate::form::{FormProblem, Problems, changed, keep, keep_number, keep_optional, name, required, shown};
use crate::ids::Subject;
use crate::screen::Bath;
use crate::units::{NumberProblem, Seconds, parse_number, parse_whole};

/// Longest note.
const NOTE: usize = 2_000;

fn parse_screens(text: &str) -> Result<u16, NumberProblem> {
    parse_whole(text, 1, u32::from(MOST_SCREENS)).map(|count| count as u16)
}

/// How the shop uses its bath.
#[derive(Clone, Debug, PartialEq, Default)]
pub struct BathForm {
    /// How many screens fit in at once, or empty.
    pub capacity: String,
    /// Charge anew at so many times the fresh minutes, `1.5`; empty for our own.
    pub recharge_at: String,
    /// Anything to know beside it.
    pub note: String,
}

impl BathForm {
    /// The form of the bath as it stands.
    pub fn of(bath: &Bath) -> Self {
        let own = bath.recharge_is_own().then(|| shown(f64::from(bath.recharge_at()) / 100.0));
        Self {
            capacity: bath.capacity.map(|count| count.to_string()).unwrap_or_default(),
            recharge_at: own.unwrap_or_default(),
            note: bath.note.clone(),
        }
    }

    /// The fields that change the bath, or what is wrong.
    ///
    /// # Errors
    /// [`Problems`] by field: `capacity`, `recharge_at`, `note`.
    pub fn check(&self, before: &Bath) -> Result<Vec<BathField>, Problems> {
        let mut problems = Problems::new();
        let p = &mut problems;
        let capacity = keep_optional(p, "capacity", &self.capacity, parse_screens);
        let recharge_at = keep_optional(p, "recharge_at", &self.recharge_at, |text| {
            parse_number(text, 1.05, 10.0).map(|times| (times * 100.0).round() as u16)
        });
        match (keep(p, "note", name(&self.note, NOTE)), problems.is_empty()) {
            (Some(note), true) => {
                let fields =
                    vec![BathField::Capacity(capacity), BathField::RechargeAt(recharge_at), BathField::Note(note)];
                Ok(changed(fields, &before.fields()))
            }
            _ => Err(problems),
        }
    }
}

/// A new charge.
#[derive(Clone, Debug, PartialEq, Default)]
pub struct ChargeForm {
    /// What it was charged with.
    pub chemistry: String,
    /// Who did it, or empty.
    pub by: String,
}

impl ChargeForm {
    /// The fact of the charge, or what is wrong.
    ///
    /// # Errors
    /// [`Problems`] by field: `chemistry`.
    pub fn check(&self) -> Result<StencilFact, Problems> {
        let mut problems = Problems::new();
        match keep(&mut problems, "chemistry", name(&self.chemistry, NOTE)) {
            Some(chemistry) => Ok(StencilFact::BathCharged { chemistry, by: somebody(&self.by) }),
            None => Err(problems),
        }
    }
}

/// The person named, cut to a name's length; none of nobody.
pub(crate) fn somebody(text: &str) -> Option<String> {
    let tidy: String = text.trim().chars().take(80).collect();
    (!tidy.is_empty()).then_some(tidy)
}

/// Screens that go in.
#[derive(Clone, Debug, PartialEq, Default)]
pub struct BatchInForm {
    /// Which, where they are in the shop's list.
    pub screens: Vec<Subject>,
    /// How many in all; empty for those of the list.
    pub count: String,
}

impl BatchInForm {
    /// The fact of the batch, or what is wrong: there are no fewer screens than were picked.
    ///
    /// # Errors
    /// [`Problems`] by field: `count`.
    pub fn check(&self) -> Result<StencilFact, Problems> {
        let mut problems = Problems::new();
        let picked = self.screens.len() as u32;
        let count = if self.count.trim().is_empty() && picked > 0 {
            Ok(picked.min(u32::from(MOST_SCREENS)))
        } else {
            parse_whole(&self.count, picked.max(1), u32::from(MOST_SCREENS))
        };
        match keep_number(&mut problems, "count", count) {
            Some(count) if picked <= u32::from(MOST_SCREENS) => {
                Ok(StencilFact::BatchIn { screens: self.screens.clone(), count: count as u16 })
            }
            Some(_) => {
                let most = f64::from(MOST_SCREENS);
                problems.insert("count", FormProblem::Number(NumberProblem::TooHigh { most }));
                Err(problems)
            }
            None => Err(problems),
        }
    }
}

/// In which way a batch's time is told.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default)]
pub enum BatchTimeKind {
    /// As the clock ran since it went in.
    #[default]
    Elapsed,
    /// Minutes of the whole batch.
    Whole,
    /// Minutes a screen.
    EachScreen,
}

/// Screens that come out.
#[derive(Clone, Debug, PartialEq, Default)]
pub struct BatchOutForm {
    /// In which way the time is told.
    pub kind: BatchTimeKind,
    /// Minutes; not read when the clock tells.
    pub minutes: String,
    /// How many came out, or empty for as many as went in.
    pub count: String,
    /// Which of the batch's screens did not come clean.
    pub not_clean: Vec<Subject>,
}

impl BatchOutForm {
    /// The fact of the batch, or what is wrong. `went_in` says whether the batch's going in was
    /// recorded: else the clock tells nothing, and how many there were must be typed.
    ///
    /// # Errors
    /// [`Problems`] by field: `minutes`, `count`.
    pub fn check(&self, went_in: bool) -> Result<StencilFact, Problems> {
        let mut problems = Problems::new();
        let p = &mut problems;
        let longest = f64::from(LONGEST_BATCH) / 60.0;
        let mut minutes = || {
            let read = |text: &str| parse_number(text, 0.1, longest).map(|minutes| Seconds::new(minutes * 60.0));
            keep(p, "minutes", required(&self.minutes, read))
        };
        let time = match self.kind {
            BatchTimeKind::Elapsed if went_in => Some(BatchTime::Elapsed),
            BatchTimeKind::Elapsed | BatchTimeKind::Whole => minutes().map(BatchTime::Whole),
            BatchTimeKind::EachScreen => minutes().map(BatchTime::EachScreen),
        };
        let count = keep_optional(p, "count", &self.count, parse_screens);
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
    fn a_batch_is_as_many_screens_as_were_picked_unless_more_are_typed() {
        let screens = vec![Uuid::from_u128(1), Uuid::from_u128(2)];
        let form = |count: &str| BatchInForm { screens: screens.clone(), count: count.into() };
        assert_eq!(form("").check().unwrap(), StencilFact::BatchIn { screens: screens.clone(), count: 2 });
        assert_eq!(form("3").check().unwrap(), StencilFact::BatchIn { screens: screens.clone(), count: 3 });
        let too_few = form("1").check().unwrap_err();
        assert_eq!(too_few["count"], FormProblem::Number(NumberProblem::TooLow { least: 2.0 }));
        assert!(BatchInForm::default().check().is_err());
    }

    #[test]
    fn without_a_time_of_going_in_minutes_and_count_must_be_typed() {
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
    fn the_bath_is_changed_only_where_it_differs_and_an_empty_threshold_is_ours() {
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
