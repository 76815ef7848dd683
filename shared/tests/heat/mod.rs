//! Heat: dwell, cure, limits, changeover, cure tests, and the climate of the room.

use crate::shop::{TestShop, wall};
use lastpull_core::facts::{Fact, RunField};
use lastpull_core::heat::{
    Changeover, HeatFact, HeaterField, HeaterKind, RunHeat, SensorMethod, SheetField, TestForm, TestKind, TestResult,
    changeover, heat_index, heat_settings, run_heat,
};
use lastpull_core::ids::RunId;
use lastpull_core::job::{Fabric, Size};
use lastpull_core::run::{CheckItem, CheckOutcome, check_list};
use lastpull_core::units::{BeltSpeed, Length, Seconds, Temperature};
use uuid::Uuid;

mod changeover;
mod climate;
mod climate_tables;
mod cure;
mod cure_tests;
mod dryers;
mod dwell;
mod facts;
mod forms;
mod infrared;
mod limits;
mod measured;
mod settling;
mod trials;

fn f(degrees: f64) -> Temperature {
    Temperature::from_fahrenheit(degrees)
}

fn seconds(seconds: f64) -> Seconds {
    Seconds::new(seconds)
}

fn belt(inches_a_minute: f64) -> BeltSpeed {
    BeltSpeed::from_inches_per_minute(inches_a_minute)
}

fn heat(press: &mut TestShop, subject: Uuid, fact: HeatFact) {
    press.record(subject, Fact::Heat(fact));
}

/// A dryer with 36 inches under heat, its belt from 10 to 60 inches a minute.
fn dryer(press: &mut TestShop, name: &str) -> Uuid {
    let id = press.id();
    let fields = vec![
        HeaterField::Kind(HeaterKind::Dryer),
        HeaterField::Name(name.into()),
        HeaterField::HeatedLength(Some(Length::from_inches(36.0))),
        HeaterField::Slowest(Some(belt(10.0))),
        HeaterField::Fastest(Some(belt(60.0))),
    ];
    heat(press, id, HeatFact::HeaterSet(fields));
    id
}

fn measured(press: &mut TestShop, dryer: Uuid, setting: f64, found: f64) {
    measured_with(press, dryer, setting, found, SensorMethod::Probe);
}

fn measured_with(press: &mut TestShop, dryer: Uuid, setting: f64, found: f64, method: SensorMethod) {
    heat(press, dryer, HeatFact::SensorRead { setting: f(setting), found: f(found), method });
}

/// A sheet for "Brick", the ink of every run here: 320 °F held for so many seconds.
fn sheet(press: &mut TestShop, cure: f64, hold: f64) -> Uuid {
    let id = press.id();
    let fields = vec![
        SheetField::Ink("BRICK".into()),
        SheetField::Cure(Some(f(cure))),
        SheetField::Hold(Some(seconds(hold))),
        SheetField::Highest(Some(f(350.0))),
    ];
    heat(press, id, HeatFact::SheetSet(fields));
    id
}

fn of_run(press: &TestShop, run: RunId) -> RunHeat {
    run_heat(&press.shop(), run, wall(0)).unwrap()
}

/// A cotton run at 340 °F and 24 inches a minute through a dryer that brings 330 °F to the print.
fn cotton_at_340() -> (TestShop, RunId, Uuid) {
    let (mut press, run) = TestShop::with_run(&[(Size::M, 3)]);
    let tunnel = dryer(&mut press, "Tunnel");
    measured(&mut press, tunnel, 340.0, 330.0);
    press.set_up(run, vec![RunField::Dryer(Some(f(340.0))), RunField::Belt(Some(belt(24.0)))]);
    (press, run, tunnel)
}

/// Cotton at 340 °F was printed until 8:02; polyester at 260 °F comes next.
fn cotton_then_polyester() -> (TestShop, RunId, RunId, Uuid) {
    let (mut press, cotton, tunnel) = cotton_at_340();
    let jerseys = press.order("Jerseys", None, Fabric::Polyester, &[(Size::M, 3)]);
    press.set_up(jerseys, vec![RunField::Belt(Some(belt(20.0))), RunField::Dryer(Some(f(260.0)))]);
    press.pulls(cotton, 0, 40, 3).end_at(120, cotton);
    (press, cotton, jerseys, tunnel)
}

fn over(press: &TestShop, run: RunId, seconds: u64) -> Changeover {
    changeover(&press.shop(), run, wall(seconds)).unwrap()
}

/// A settling in the log of a dryer: from, to, minutes. Told afterwards.
fn settled(press: &mut TestShop, dryer: Uuid, from: f64, to: f64, minutes: f64) -> Uuid {
    let id = press.id();
    let took = seconds(minutes * 60.0);
    heat(press, id, HeatFact::SettlingLogged { dryer, from: f(from), to: f(to), took });
    id
}

fn check(press: &mut TestShop, at: u64, run: RunId, item: CheckItem, outcome: CheckOutcome) {
    let expected = check_list(&press.shop(), run).rows().find(|row| row.item == item).unwrap().expected.clone();
    press.record_at(at, run, Fact::CheckMade { item, expected, outcome, by: None });
}

fn index(fahrenheit: f64, humidity: f64) -> f64 {
    heat_index(fahrenheit, humidity).unwrap().fahrenheit
}

fn read(press: &mut TestShop, seconds: u64, fahrenheit: f64, humidity: u8) -> Uuid {
    let reading = press.id();
    let temperature = Temperature::from_fahrenheit(fahrenheit);
    let fact = HeatFact::RoomRead { temperature, humidity, by: Some("Ines".into()) };
    press.record_at(seconds, reading, Fact::Heat(fact));
    reading
}

/// A cotton run in "Brick" at 320 °F, 90 s, one pass.
fn set_up() -> (TestShop, RunId) {
    let (mut press, run) = TestShop::with_run(&[(Size::M, 3)]);
    press.set_up(run, vec![RunField::Dryer(Some(f(320.0))), RunField::Dwell(Some(Seconds::new(90.0)))]);
    (press, run)
}

/// A test of the run as it is set up now, so many seconds after opening.
fn test(press: &mut TestShop, at: u64, run: RunId, kind: TestKind, result: TestResult) -> Uuid {
    let id = press.id();
    let form = TestForm { ink: "brick".into(), kind, times: "1".into(), result, ..TestForm::default() };
    let fields = form.check(heat_settings(&press.shop(), run), None).unwrap();
    press.record_at(at, id, Fact::Heat(HeatFact::TestSet(fields)));
    id
}
