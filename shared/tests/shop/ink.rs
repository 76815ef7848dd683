//! The ink bench of the test shop.

use super::TestShop;
use lastpull_core::facts::Fact;
use lastpull_core::ids::Subject;
use lastpull_core::ink::{
    BatchSize, ComponentField, ComponentKind, InkFact, Part, PotField, PourStep, RecipeField, Share, revision_fact,
};
use lastpull_core::units::Grams;

/// A weight in grams.
pub fn g(grams: f64) -> Grams {
    Grams::from_grams(grams)
}

impl TestShop {
    pub fn record_ink(&mut self, subject: Subject, fact: InkFact) -> &mut Self {
        self.record_all([(subject, Fact::Ink(fact))])
    }

    /// Records an event of its own at the ink bench.
    pub fn ink_event(&mut self, fact: InkFact) -> Subject {
        let id = self.id();
        self.record_ink(id, fact);
        id
    }

    pub fn component(&mut self, name: &str, kind: ComponentKind) -> Subject {
        let id = self.id();
        let fields = vec![ComponentField::Name(name.into()), ComponentField::Kind(kind)];
        self.record_ink(id, InkFact::ComponentSet(fields));
        id
    }

    /// A recipe of parts of the whole, and its first revision.
    pub fn recipe(&mut self, name: &str, parts: &[(Subject, f64)]) -> (Subject, Subject) {
        let recipe = self.id();
        self.record_ink(recipe, InkFact::RecipeSet(vec![RecipeField::Name(name.into())]));
        let part = |(component, percent): &(Subject, f64)| Part {
            component: *component,
            share: Share::from_percent(*percent),
            on_top: false,
        };
        let fact = revision_fact(&self.shop(), recipe, parts.iter().map(part).collect(), None, None, "", Some("Ines"));
        (recipe, self.ink_event(fact))
    }

    pub fn pot(&mut self, revision: Option<Subject>, size: f64) -> Subject {
        let pot = self.id();
        let size = (size > 0.0).then(|| BatchSize::Whole(g(size)));
        let fields = vec![PotField::Name("Pot".into()), PotField::Revision(revision), PotField::Size(size)];
        self.record_ink(pot, InkFact::PotSet(fields));
        pot
    }

    pub fn pour(&mut self, pot: Subject, component: Subject, grams: f64, step: PourStep) -> Subject {
        let (note, grams) = (String::new(), g(grams));
        self.ink_event(InkFact::Poured { pot, component, grams, step, note, reading: None, by: None })
    }
}
