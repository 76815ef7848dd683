//! The reclaim bath.

use super::{HOUR, TestShop};
use lastpull_core::facts::Fact;
use lastpull_core::ids::{SHOP, Subject};
use lastpull_core::screen::{BatchTime, BathField, StencilFact};
use lastpull_core::shop::Shop;

/// A bath with its charge, four screens at once.
pub struct Tank {
    pub press: TestShop,
}

impl Tank {
    pub fn new() -> Self {
        let mut tank = Self { press: TestShop::new() };
        tank.tell(0, SHOP, StencilFact::Bath(vec![BathField::Capacity(Some(4))]));
        tank.charge(0);
        tank
    }

    pub fn tell(&mut self, seconds: u64, subject: Subject, fact: StencilFact) {
        self.press.record_at(seconds, subject, Fact::Stencil(fact));
    }

    pub fn charge(&mut self, seconds: u64) -> Subject {
        let id = self.press.id();
        self.tell(seconds, id, StencilFact::BathCharged { chemistry: "Dip, 1 to 4".into(), by: None });
        id
    }

    pub fn put_in(&mut self, seconds: u64, count: u16) -> Subject {
        let id = self.press.id();
        self.tell(seconds, id, StencilFact::BatchIn { screens: Vec::new(), count });
        id
    }

    /// Batches of four, an hour apart, each of so many minutes a screen.
    pub fn batches(&mut self, from: u64, minutes_per_screen: &[u64]) -> &mut Self {
        for (n, minutes) in minutes_per_screen.iter().enumerate() {
            let start = from + n as u64 * HOUR;
            let id = self.put_in(start, 4);
            self.tell(start + minutes * 4 * 60, id, StencilFact::BatchOut { time: BatchTime::Elapsed, count: None });
        }
        self
    }

    pub fn shop(&self) -> Shop {
        self.press.shop()
    }
}
