//! What is in a pot.

use crate::collections::Table;
use crate::ids::Subject;
use crate::ink::recipe::apportion::apportion;
use crate::ink::recipe::percentages::percent_of;
use crate::units::Grams;

/// Grams of each component, stirred: whatever is taken out takes of each in proportion.
#[derive(Clone, Debug, PartialEq, Default)]
pub struct Contents {
    of: Table<Grams>,
}

impl Contents {
    /// All of it.
    pub fn total(&self) -> Grams {
        self.of.values().copied().sum()
    }

    /// Of one component.
    pub fn of(&self, component: Subject) -> Grams {
        self.of.get(&component).copied().unwrap_or_default()
    }

    /// Each component that is in it, in the order of their ids.
    pub fn rows(&self) -> Vec<(Subject, Grams)> {
        self.of.iter().filter(|(_, grams)| grams.is_positive()).map(|(id, grams)| (*id, *grams)).collect()
    }

    /// As weights.
    pub(crate) fn weights(&self) -> Vec<(Subject, i64)> {
        self.rows().into_iter().map(|(id, grams)| (id, grams.milligrams())).collect()
    }

    /// The recipe it holds, in percent; nothing of an empty pot.
    pub fn percentages(&self) -> Vec<(Subject, f64)> {
        percent_of(&self.weights())
    }

    /// Puts a component in.
    pub fn pour(&mut self, component: Subject, grams: Grams) {
        let here = self.of.or_default(component);
        *here = here.saturating_add(grams.max_zero());
    }

    /// Puts the contents of another in.
    pub fn pour_all(&mut self, other: &Self) {
        other.rows().into_iter().for_each(|(component, grams)| self.pour(component, grams));
    }

    /// Takes so much of it out, of each component in proportion, to the milligram; all of it where it holds less.
    pub fn take(&mut self, grams: Grams) -> Self {
        let rows = self.rows();
        let only: Vec<i64> = rows.iter().map(|(_, grams)| grams.milligrams()).collect();
        let parts = apportion(&only, grams.min(self.total()).milligrams());
        let mut taken = Self::default();
        for ((component, here), part) in rows.into_iter().zip(parts) {
            let part = Grams::from_milligrams(part);
            self.of.insert(component, here.saturating_sub(part));
            taken.of.insert(component, part);
        }
        taken
    }
}
