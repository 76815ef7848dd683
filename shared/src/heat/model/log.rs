//! State folded from the facts about heat.

use super::tests_by_ink::{ListedTest, TestsByInk};
use super::{
    ClimateReading, CureTest, Heater, InkSheet, OwnLimit, SensorReading, Settling, Transition, Trial, ink_key,
};
use crate::codec::Encode;
use crate::collections::Table;
use crate::deletion::{Deletable, DeleteById, Deletion, deletable};
use crate::facts::{Fabric, HeatFact, LimitKind};
use crate::ids::{RunId, Subject};
use crate::time::{NewestOfKinds, WallTime};
use std::collections::BTreeMap;

/// Number of climate readings kept: hourly ones for a day.
const MAX_READINGS: usize = 24;
/// Number of settlings kept: far more than any estimate uses.
const MAX_SETTLINGS: usize = 200;

/// Dryers, flash units, sheets, limits, tests, trials and climate readings of the shop.
#[derive(Clone, Debug, PartialEq, Default, Encode)]
pub struct HeatLog {
    heaters: Table<Heater>,
    chosen: Table<Subject>,
    sheets: Table<InkSheet>,
    limits: BTreeMap<(Fabric, LimitKind), OwnLimit>,
    settlings: BTreeMap<Subject, Settling>,
    tests: Table<CureTest>,
    tests_by_ink: TestsByInk,
    trials: Table<Trial>,
    climate: Vec<ClimateReading>,
}

impl HeatLog {
    /// The dryer or flash unit with this id, deleted or not.
    pub fn heater(&self, id: Subject) -> Option<&Heater> {
        self.heaters.get(&id)
    }

    /// All dryers and flash units, including deleted ones.
    pub fn heaters(&self) -> impl Iterator<Item = (Subject, &Heater)> {
        self.heaters.iter().map(|(id, heater)| (*id, heater))
    }

    /// The dryer chosen for a run, whether or not it still exists.
    pub fn chosen_dryer(&self, run: RunId) -> Option<Subject> {
        self.chosen.get(&run).copied()
    }

    /// The ink sheet with this id, deleted or not.
    pub fn sheet(&self, id: Subject) -> Option<&InkSheet> {
        self.sheets.get(&id)
    }

    /// All sheets, including deleted ones.
    pub fn sheets(&self) -> impl Iterator<Item = (Subject, &InkSheet)> {
        self.sheets.iter().map(|(id, sheet)| (*id, sheet))
    }

    /// The shop's own limit of a fabric.
    pub fn own_limit(&self, fabric: Fabric, kind: LimitKind) -> Option<&OwnLimit> {
        self.limits.get(&(fabric, kind))
    }

    /// The latest settlings of all dryers, including deleted ones.
    pub fn settlings(&self) -> impl Iterator<Item = (Subject, &Settling)> {
        self.settlings.iter().map(|(id, settling)| (*id, settling))
    }

    /// The test with this id, deleted or not.
    pub fn test(&self, id: Subject) -> Option<&CureTest> {
        self.tests.get(&id)
    }

    /// All tests, including deleted ones.
    pub fn tests(&self) -> impl Iterator<Item = (Subject, &CureTest)> {
        self.tests.iter().map(|(id, test)| (*id, test))
    }

    /// The latest tests of an ink on a fabric, by the ink's [key](ink_key): of each kind and result those that were recorded
    /// at the last moment, in no particular order, without deleted ones. `None` if only going through all tests tells.
    pub(crate) fn latest_tests(&self, key: &str, fabric: Fabric) -> Option<Vec<(Subject, &CureTest)>> {
        let of_ink = |id: Subject| self.tests.get(&id).filter(|test| ink_key(&test.ink) == key);
        let kinds = self.tests_by_ink.of(key).into_iter().flat_map(NewestOfKinds::iter);
        let mut found = Vec::new();
        for (_, tests) in kinds.filter(|(of, _)| of.fabric == fabric) {
            let newest = tests.newest(|id| of_ink(id).is_some()).ok()?;
            let Some(last) = newest.and_then(of_ink).map(|test| test.result_at) else { continue };
            found.extend(tests.since(|at| at < last)?.filter_map(|id| Some((id, of_ink(id)?))));
        }
        Some(found)
    }

    /// Number of cure tests and what finds them that were decoded or changed. Tests count them.
    pub(crate) fn rows_in_memory(&self) -> usize {
        self.tests.rows_in_memory() + self.tests_by_ink.rows_in_memory()
    }

    /// The trial with this id, deleted or not.
    pub fn trial(&self, id: Subject) -> Option<&Trial> {
        self.trials.get(&id)
    }

    /// All trials, including deleted ones.
    pub fn trials(&self) -> impl Iterator<Item = (Subject, &Trial)> {
        self.trials.iter().map(|(id, trial)| (*id, trial))
    }

    /// The latest climate readings, the newest last, including deleted ones.
    pub fn climate(&self) -> &[ClimateReading] {
        &self.climate
    }

    pub(crate) fn apply(&mut self, subject: Subject, at: WallTime, fact: &HeatFact) {
        match fact {
            HeatFact::RoomRead { temperature, humidity, by } => {
                let was = self.climate.iter().position(|reading| reading.id == subject);
                let deleted = was.is_some_and(|place| self.climate.remove(place).deleted);
                if self.climate.len() == MAX_READINGS {
                    self.climate.remove(0);
                }
                let (temperature, humidity, by) = (*temperature, *humidity, by.clone());
                self.climate.push(ClimateReading { id: subject, at, temperature, humidity, by, deleted });
            }
            HeatFact::HeaterSet(fields) => {
                let heater = self.heater_mut(subject, at);
                fields.iter().for_each(|field| heater.set(field));
            }
            HeatFact::SensorRead { setting, found, method } => {
                let reading = SensorReading { setting: *setting, found: *found, method: *method, at };
                self.heater_mut(subject, at).add_reading(reading);
            }
            HeatFact::SensorUnread => drop(self.heater_mut(subject, at).readings.pop()),
            HeatFact::DryerChosen(Some(dryer)) => self.chosen.insert(subject, *dryer),
            HeatFact::DryerChosen(None) => drop(self.chosen.remove(&subject)),
            HeatFact::SheetSet(fields) => {
                let sheet = self.sheets.get_or_insert_default(subject);
                sheet.touched = at;
                fields.iter().for_each(|field| sheet.set(field));
            }
            HeatFact::FabricLimit { fabric, kind, temperature: Some(temperature), note } => {
                let own = OwnLimit { temperature: *temperature, note: note.clone() };
                self.limits.insert((*fabric, *kind), own);
            }
            HeatFact::FabricLimit { fabric, kind, temperature: None, .. } => {
                self.limits.remove(&(*fabric, *kind));
            }
            HeatFact::SettlingStarted { dryer, from, to } => {
                let settling = self.settling_mut(subject);
                (settling.transition, settling.at) = (Some(Transition { dryer: *dryer, from: *from, to: *to }), at);
            }
            HeatFact::SettlingLogged { dryer, from, to, took } => {
                let settling = self.settling_mut(subject);
                (settling.transition, settling.at) = (Some(Transition { dryer: *dryer, from: *from, to: *to }), at);
                (settling.took, settling.entered_afterwards) = (Some(*took), true);
            }
            HeatFact::SettlingFinished(took) => {
                let settling = self.settling_mut(subject);
                settling.took = Some(*took);
                settling.at.set_once(at);
            }
            HeatFact::TestSet(fields) => {
                let mut before = None;
                let test = self.tests.get_or_insert_with(subject, || {
                    before = Some(None);
                    CureTest::default()
                });
                let before = before.unwrap_or_else(|| ListedTest::of(test));
                test.created.set_once(at);
                fields.iter().for_each(|field| test.set(at, field));
                self.tests_by_ink.test_changed(subject, before, ListedTest::of(test));
            }
            HeatFact::TrialSet(fields) => {
                let trial = self.trials.get_or_insert_default(subject);
                trial.created.set_once(at);
                fields.iter().for_each(|field| trial.set(field));
            }
        }
    }

    fn delete_test(&mut self, id: Subject, deletion: Deletion) -> bool {
        let Some(test) = self.tests.get_mut(&id) else { return false };
        let before = ListedTest::of(test);
        test.mark(deletion);
        self.tests_by_ink.test_changed(id, before, ListedTest::of(test));
        true
    }

    fn heater_mut(&mut self, id: Subject, at: WallTime) -> &mut Heater {
        let heater = self.heaters.get_or_insert_default(id);
        heater.created.set_once(at);
        heater
    }

    /// The settling with this id; a new one replaces the oldest if there are too many.
    fn settling_mut(&mut self, id: Subject) -> &mut Settling {
        if self.settlings.len() >= MAX_SETTLINGS && !self.settlings.contains_key(&id) {
            let oldest = self.settlings.iter().map(|(id, settling)| (settling.at, *id)).min();
            oldest.and_then(|(_, oldest)| self.settlings.remove(&oldest));
        }
        self.settlings.entry(id).or_default()
    }
}

deletable!(Heater, InkSheet, CureTest, Trial, Settling, ClimateReading);

impl DeleteById for HeatLog {
    fn delete(&mut self, id: Subject, deletion: Deletion) -> bool {
        self.heaters.delete(id, deletion)
            || self.sheets.delete(id, deletion)
            || self.delete_test(id, deletion)
            || self.trials.delete(id, deletion)
            || self.settlings.delete(id, deletion)
            || self.climate.iter_mut().find(|reading| reading.id == id).map(|reading| reading.mark(deletion)).is_some()
    }
}
