//! The contents of a pot, by component.

use crate::collections::Table;
use crate::ids::Subject;
use crate::ink::recipe::apportion::apportion;
use crate::ink::recipe::percentages::percent_of;
use crate::units::Grams;

/// Grams of each component, stirred: whatever is taken out takes each in proportion.
#[derive(Clone, Debug, PartialEq, Default)]
pub struct Contents {
    of: Table<Grams>,
}

impl Contents {
    /// Total weight.
    pub fn total(&self) -> Grams {
        self.of.values().copied().sum()
    }

    /// Weight of one component.
    pub fn of(&self, component: Subject) -> Grams {
        self.of.get(&component).copied().unwrap_or_default()
    }

    /// Each component in it with its weight, in the order of their ids.
    pub fn rows(&self) -> Vec<(Subject, Grams)> {
        self.of.iter().filter(|(_, grams)| grams.is_positive()).map(|(id, grams)| (*id, *grams)).collect()
    }

    /// Each component in it with its weight in milligrams.
    pub(crate) fn weights(&self) -> Vec<(Subject, i64)> {
        self.rows().into_iter().map(|(id, grams)| (id, grams.milligrams())).collect()
    }

    /// The share of each component in percent; empty for an empty pot.
    pub fn percentages(&self) -> Vec<(Subject, f64)> {
        percent_of(&self.weights())
    }

    /// Adds a component.
    pub fn pour(&mut self, component: Subject, grams: Grams) {
        let here = self.of.get_or_insert_default(component);
        *here = here.saturating_add(grams.max_zero());
    }

    /// Adds the contents of another pot.
    pub fn pour_all(&mut self, other: &Self) {
        other.rows().into_iter().for_each(|(component, grams)| self.pour(component, grams));
    }

    /// Takes out this weight, each component in proportion, to the milligram; everything if less is in it. Returns what
    /// was taken.
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
