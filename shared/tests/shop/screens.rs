//! The screens of the test shop, and what fails on them.

use super::TestShop;
use lastpull_core::facts::{Fact, RunField};
use lastpull_core::failure::{FailureForm, FailureKind, open_facts};
use lastpull_core::ids::{RunId, SHOP, Subject};
use lastpull_core::screen::{ScreenFact, ScreenField, ScreenState, StepTimes};
use lastpull_core::units::Seconds;

impl TestShop {
    pub fn screen(&mut self, label: &str) -> Subject {
        self.screen_with(label, Vec::new())
    }

    /// A screen with these fields beside its label.
    pub fn screen_with(&mut self, label: &str, mut fields: Vec<ScreenField>) -> Subject {
        let id = self.id();
        fields.push(ScreenField::Label(label.into()));
        self.record(id, Fact::Screen(ScreenFact::Set(fields)));
        id
    }

    /// A screen in this state.
    pub fn screen_in(&mut self, label: &str, state: ScreenState) -> Subject {
        let id = self.screen(label);
        self.record(id, Fact::Screen(ScreenFact::Moved { to: state, by: None }));
        id
    }

    /// A screen that waits to be reclaimed, with the art of a run in bone.
    pub fn waiting_screen(&mut self, run: RunId, label: &str) -> Subject {
        let id = self.screen_with(label, vec![ScreenField::Run(Some(run)), ScreenField::Colour("Bone".into())]);
        self.record(id, Fact::Screen(ScreenFact::Moved { to: ScreenState::ToReclaim, by: None }));
        id
    }

    pub fn move_screen(&mut self, seconds: u64, screen: Subject, state: ScreenState) -> &mut Self {
        self.record_at(seconds, screen, Fact::Screen(ScreenFact::Moved { to: state, by: Some("Ines".into()) }))
    }

    /// Reclaim 20, coat 10, dry 60, expose 5, wash and dry 30, tape 5 minutes.
    pub fn set_step_times(&mut self) -> &mut Self {
        let minutes = |n: f64| Seconds::new(n * 60.0);
        let times = StepTimes {
            reclaim: minutes(20.0),
            coat: minutes(10.0),
            dry: minutes(60.0),
            expose: minutes(5.0),
            wash_dry: minutes(30.0),
            tape: minutes(5.0),
        };
        self.record(SHOP, Fact::Screen(ScreenFact::StepTimes(times)))
    }

    /// The screens a run is printed with, as its set-up names them.
    pub fn name_screens(&mut self, run: RunId, labels: &str) -> &mut Self {
        self.set_up(run, vec![RunField::Screens(labels.into())])
    }

    /// A failure on a run, opened by one tap.
    pub fn fails_at(&mut self, seconds: u64, run: RunId) -> Subject {
        let id = self.id();
        let facts = open_facts(&self.shop(), run, id, Some("Ines"));
        self.record_all_at(seconds, facts);
        id
    }

    /// A failure turns out to be a pinhole, there for so many pieces.
    pub fn describe_failure(&mut self, seconds: u64, id: Subject, since: &str) -> &mut Self {
        let form = FailureForm { kind: Some(FailureKind::Pinhole), since: since.into(), ..FailureForm::default() };
        let facts = form.check(&self.shop(), id).unwrap();
        self.record_all_at(seconds, facts)
    }
}
