//! Form of the shop's settings.

use super::Shop;
use crate::facts::Fact;
use crate::form::{FormProblem, Problems, TYPED_NAME};
use crate::ids::{DeviceId, SHOP, Subject};
use crate::time::TimeOfDay;
use crate::units::{Seconds, parse_number};
use serde::{Deserialize, Serialize};

/// The form of the shop's settings.
#[derive(Clone, Debug, PartialEq, Default, Serialize, Deserialize)]
#[serde(default)]
pub struct ShopForm {
    /// The shop's name.
    pub name: String,
    /// Name of this device.
    pub device_name: String,
    /// Names of the crew, separated by commas.
    pub crew: String,
    /// Closing times by weekday, Monday first, as `17:00`; empty on a day off.
    pub week: [String; 7],
    /// Minutes between runs, or empty.
    pub set_up: String,
}

/// Names of the closing times' fields, from Monday.
pub const WEEK_FIELDS: [&str; 7] =
    ["closing_0", "closing_1", "closing_2", "closing_3", "closing_4", "closing_5", "closing_6"];
/// Largest crew.
const MAX_CREW: usize = 20;

impl ShopForm {
    /// The form filled with the current settings, on this device.
    pub fn of(shop: &Shop, device: DeviceId) -> Self {
        Self {
            name: shop.name.clone(),
            device_name: shop.devices.get(&device).cloned().unwrap_or_default(),
            crew: shop.crew.join(", "),
            week: shop.closings.week.map(|closing| closing.map(|time| time.to_string()).unwrap_or_default()),
            set_up: shop.set_up_allowance.map(|s| (s.seconds() / 60.0).to_string()).unwrap_or_default(),
        }
    }

    /// The facts for the settings that differ from the shop's.
    ///
    /// # Errors
    /// [`Problems`] by field: `shop_name`, `device_name`, `crew`, `closing_0` to `closing_6`, `set_up`.
    pub fn check(&self, shop: &Shop, device: DeviceId) -> Result<Vec<(Subject, Fact)>, Problems> {
        let mut problems = Problems::new();
        let mut facts = Vec::new();
        let before = Self::of(shop, device);
        let (name, device_name) = (self.name.trim(), self.device_name.trim());
        for (field, text) in [("shop_name", name), ("device_name", device_name)] {
            if text.chars().count() > TYPED_NAME {
                problems.insert(field, FormProblem::TooLong { most: TYPED_NAME });
            }
        }
        if name != before.name {
            facts.push((SHOP, Fact::ShopNamed(name.to_owned())));
        }
        if device_name != before.device_name {
            facts.push((device, Fact::DeviceNamed(device_name.to_owned())));
        }
        let crew: Vec<String> =
            self.crew.split(',').map(|name| name.trim().to_owned()).filter(|name| !name.is_empty()).collect();
        if crew.len() > MAX_CREW || crew.iter().any(|name| name.chars().count() > TYPED_NAME) {
            problems.insert("crew", FormProblem::TooLong { most: TYPED_NAME });
        }
        if crew != shop.crew {
            facts.push((SHOP, Fact::CrewNamed(crew)));
        }
        let mut week = [None; 7];
        for (day, text) in self.week.iter().enumerate() {
            week[day] = TimeOfDay::parse(text);
            if week[day].is_none() && !text.trim().is_empty() {
                problems.insert(WEEK_FIELDS[day], FormProblem::NotATime);
            }
        }
        if week != shop.closings.week {
            facts.push((SHOP, Fact::WeekClosing(week)));
        }
        if !self.set_up.trim().is_empty() && self.set_up != before.set_up {
            match parse_number(&self.set_up, 0.0, 240.0) {
                Ok(minutes) => facts.push((SHOP, Fact::SetUpAllowance(Seconds::new(minutes * 60.0)))),
                Err(problem) => drop(problems.insert("set_up", FormProblem::Number(problem))),
            }
        }
        if problems.is_empty() { Ok(facts) } else { Err(problems) }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use uuid::Uuid;

    #[test]
    fn only_what_changed_becomes_a_fact() {
        let shop = Shop::default();
        let device = Uuid::from_u128(4);
        let mut form = ShopForm::of(&shop, device);
        assert_eq!(form.check(&shop, device), Ok(vec![]));
        form.week[5] = "13:30".into();
        form.crew = " Ines,Moss ,".into();
        let mut week = shop.closings.week;
        week[5] = Some(TimeOfDay::at(13, 30));
        let facts = form.check(&shop, device).unwrap();
        assert_eq!(facts[0].1, Fact::CrewNamed(vec!["Ines".into(), "Moss".into()]));
        assert_eq!(facts[1].1, Fact::WeekClosing(week));
    }

    #[test]
    fn an_invalid_closing_time_is_reported_on_its_day() {
        let mut form = ShopForm::of(&Shop::default(), Uuid::nil());
        form.week[0] = "25:00".into();
        form.set_up = "-5".into();
        let problems = form.check(&Shop::default(), Uuid::nil()).unwrap_err();
        assert_eq!(problems["closing_0"], FormProblem::NotATime);
        assert!(problems.contains_key("set_up"));
    }
}
