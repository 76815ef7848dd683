//! A screen room with one bulb and one emulsion.

use super::TestShop;
use lastpull_core::facts::Fact;
use lastpull_core::ids::Subject;
use lastpull_core::screen::{
    EmulsionForm, ExposureAnswer, ExposureForm, ExposureQuery, Family, LampForm, LampKind, MeshCloth, StencilFact,
    exposure_for,
};
use lastpull_core::units::Units;

/// A shop with one bulb and one emulsion.
pub struct ExposureRoom {
    pub press: TestShop,
    pub bulb: Subject,
    pub blue: Subject,
}

impl ExposureRoom {
    pub fn new() -> Self {
        let mut press = TestShop::new();
        let (bulb, blue) = (press.id(), press.id());
        let mut room = Self { press, bulb, blue };
        room.set_lamp("18.5", LampKind::Point);
        let form = EmulsionForm { name: "Blue".into(), family: Some(Family::DualCure), solids: "40".into() };
        room.tell(blue, StencilFact::Emulsion(form.check(None).unwrap()));
        room
    }

    pub fn tell(&mut self, subject: Subject, fact: StencilFact) {
        self.press.record(subject, Fact::Stencil(fact));
    }

    /// The bulb at so many inches.
    pub fn set_lamp(&mut self, distance: &str, kind: LampKind) {
        let form = LampForm { name: "Bulb".into(), kind, distance: distance.into() };
        let bulb = self.bulb;
        self.tell(bulb, StencilFact::Lamp(form.check(Units::US, None).unwrap()));
    }

    pub fn form(&self) -> ExposureForm {
        ExposureForm {
            emulsion: Some(self.blue),
            lamp: Some(self.bulb),
            mesh: "156".into(),
            thread: "64".into(),
            time: "120".into(),
            solid: "5".into(),
            ..ExposureForm::default()
        }
    }

    /// Records what a form says; gives the finding.
    pub fn find(&mut self, seconds: u64, form: &ExposureForm) -> Subject {
        let fact = form.check(&self.press.shop(), None, Units::US).unwrap();
        let id = self.press.id();
        self.press.record_at(seconds, id, Fact::Stencil(fact));
        id
    }

    pub fn asked(&self, cloth: MeshCloth) -> ExposureQuery {
        ExposureQuery { emulsion: self.blue, cloth, coats: None, lamp: self.bulb }
    }

    pub fn answer(&self, cloth: MeshCloth) -> ExposureAnswer {
        exposure_for(&self.press.shop(), &self.asked(cloth))
    }
}
