//! Form of the shop's settings.

use super::Shop;
use crate::facts::Fact;
use crate::form::{FormProblem, Problems, TYPED_NAME, collect, collect_optional, parse_text};
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
        let name = collect(&mut problems, "shop_name", parse_text(&self.name, TYPED_NAME));
        facts.extend(name.filter(|name| *name != before.name).map(|name| (SHOP, Fact::ShopNamed(name))));
        let device_name = collect(&mut problems, "device_name", parse_text(&self.device_name, TYPED_NAME));
        let device_name = device_name.filter(|name| *name != before.device_name);
        facts.extend(device_name.map(|name| (device, Fact::DeviceNamed(name))));
        let crew = collect(&mut problems, "crew", parse_crew(&self.crew));
        facts.extend(crew.filter(|crew| *crew != shop.crew).map(|crew| (SHOP, Fact::CrewNamed(crew))));
        let mut week = [None; 7];
        for ((field, text), closing) in WEEK_FIELDS.into_iter().zip(&self.week).zip(&mut week) {
            if !text.trim().is_empty() {
                *closing = collect(&mut problems, field, TimeOfDay::parse(text).ok_or(FormProblem::NotATime));
            }
        }
        if week != shop.closings.week {
            facts.push((SHOP, Fact::WeekClosing(week)));
        }
        if self.set_up != before.set_up {
            let minutes = |text: &str| parse_number(text, 0.0, 240.0);
            let minutes = collect_optional(&mut problems, "set_up", &self.set_up, minutes);
            facts.extend(minutes.map(|minutes| (SHOP, Fact::SetUpAllowance(Seconds::new(minutes * 60.0)))));
        }
        if problems.is_empty() { Ok(facts) } else { Err(problems) }
    }
}

/// Parses the names of a crew, separated by commas.
fn parse_crew(text: &str) -> Result<Vec<String>, FormProblem> {
    let names = text.split(',').map(|name| parse_text(name, TYPED_NAME)).collect::<Result<Vec<_>, _>>()?;
    let crew: Vec<String> = names.into_iter().filter(|name| !name.is_empty()).collect();
    if crew.len() > MAX_CREW { Err(FormProblem::TooMany { most: MAX_CREW }) } else { Ok(crew) }
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
    fn a_crew_of_too_many_is_told_how_many_it_may_have() {
        let crew = |people: usize| parse_crew(&vec!["Ines"; people].join(", "));
        assert_eq!(crew(MAX_CREW).map(|crew| crew.len()), Ok(MAX_CREW));
        assert_eq!(crew(MAX_CREW + 1), Err(FormProblem::TooMany { most: MAX_CREW }));
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
