//! Heat data of the invented shop: its dryer and flash unit, its ink data sheets, timings, tests and
//! climate readings.

use super::language::{APRICOT, BONE, INES, JERSEY_WHITE, MOSS, Text, text};
use super::maker::Maker;
use crate::facts::{
    Fabric, Fact, Flash, HeatFact, HeaterField, HeaterKind, SensorMethod, SheetField, TestField, TestResult,
    TrialField, TrialVerdict,
};
use crate::heat::{TestForm, heat_settings};
use crate::shop::Shop;
use crate::time::{Millis, WallTime};
use crate::units::{BeltSpeed, Length, Seconds, Temperature};
use uuid::Uuid;

const MINUTE: Millis = Millis::from_minutes(1);
const HOUR: Millis = Millis::from_hours(1);
const DAY: Millis = Millis::from_days(1);

fn f(degrees: f64) -> Temperature {
    Temperature::from_fahrenheit(degrees)
}

/// Records the shop's equipment: units, data sheets, timings, a trial, and this morning's climate reading.
pub(super) fn equip<N: FnMut() -> Uuid>(maker: &mut Maker<N>, start: WallTime) {
    let now = maker.clock.now;
    let dryer = units(maker, start);
    let measured = HeatFact::SensorRead { setting: f(300.0), found: f(294.0), method: SensorMethod::Probe };
    maker.record(now - 9 * DAY, dryer, Fact::Heat(measured));
    sheets(maker, start);
    // Six timed changes of the dryer setting: down for polyester and up again.
    for (days_ago, down, up) in [(12, 9, 4), (7, 11, 5), (5, 10, 4)] {
        let at = now - days_ago * DAY - 5 * HOUR;
        settle(maker, at, dryer, (320.0, 260.0), down);
        settle(maker, at + 2 * HOUR, dryer, (260.0, 320.0), up);
    }
    trial(maker, now - 10 * DAY);
    let reading = HeatFact::RoomRead { temperature: f(91.0), humidity: 48, by: Some(maker.language.say(MOSS)) };
    let id = maker.id();
    maker.record(now - 75 * MINUTE, id, Fact::Heat(reading));
}

fn units<N: FnMut() -> Uuid>(maker: &mut Maker<N>, at: WallTime) -> Uuid {
    let (dryer, flash) = (maker.id(), maker.id());
    let language = maker.language;
    let belt = |speed| Some(BeltSpeed::from_inches_per_minute(speed));
    let tunnel = vec![
        HeaterField::Kind(HeaterKind::Dryer),
        HeaterField::Name(language.say(text("Tunnel", "Horno de banda"))),
        HeaterField::HeatedLength(Some(Length::from_inches(48.0))),
        HeaterField::Slowest(belt(8.0)),
        HeaterField::Fastest(belt(90.0)),
    ];
    maker.record(at, dryer, Fact::Heat(HeatFact::HeaterSet(tunnel)));
    let name = language.say(text("Swing-out flash", "Flash giratorio"));
    let fields = vec![HeaterField::Kind(HeaterKind::Flash), HeaterField::Name(name)];
    maker.record(at, flash, Fact::Heat(HeatFact::HeaterSet(fields)));
    dryer
}

fn sheets<N: FnMut() -> Uuid>(maker: &mut Maker<N>, at: WallTime) {
    let (language, day) = (maker.language, maker.clock.day_of(at - 40 * DAY));
    let source = text(
        "Manufacturer's data sheet, in the binder by the dryer",
        "Ficha técnica del fabricante, en la carpeta junto al horno",
    );
    for (ink, cure, hold, highest) in
        [(APRICOT, 300.0, 120.0, 340.0), (BONE, 300.0, 120.0, 340.0), (JERSEY_WHITE, 250.0, 150.0, 290.0)]
    {
        let fields = vec![
            SheetField::Ink(language.say(ink)),
            SheetField::Cure(Some(f(cure))),
            SheetField::Hold(Some(Seconds::new(hold))),
            SheetField::Highest(Some(f(highest))),
            SheetField::Source(language.say(source)),
            SheetField::SourceDay(Some(day)),
        ];
        let id = maker.id();
        maker.record(at, id, Fact::Heat(HeatFact::SheetSet(fields)));
    }
}

fn settle<N: FnMut() -> Uuid>(maker: &mut Maker<N>, at: WallTime, dryer: Uuid, (from, to): (f64, f64), minutes: u64) {
    let id = maker.id();
    maker.record(at, id, Fact::Heat(HeatFact::SettlingStarted { dryer, from: f(from), to: f(to) }));
    let took = Seconds::new(minutes as f64 * 60.0);
    maker.record(at + minutes * MINUTE, id, Fact::Heat(HeatFact::SettlingFinished(took)));
}

fn trial<N: FnMut() -> Uuid>(maker: &mut Maker<N>, at: WallTime) {
    let language = maker.language;
    let outcome = text(
        "Still white after four days folded in a bag; no shine from the platen.",
        "Sigue blanco tras cuatro días doblado en una bolsa; la paleta no dejó brillo.",
    );
    let fields = vec![
        TrialField::Ink(language.say(JERSEY_WHITE)),
        TrialField::Fabric(Fabric::Polyester),
        TrialField::Mesh(Some(156)),
        TrialField::Hits(2),
        TrialField::Flash(Some(Flash { seconds: Seconds::new(7.0), distance: None })),
        TrialField::Dryer(Some(f(260.0))),
        TrialField::Dwell(Some(Seconds::new(180.0))),
        TrialField::Passes(1),
        TrialField::Outcome(language.say(outcome)),
        TrialField::Verdict(TrialVerdict::Keep),
        TrialField::By(Some(language.say(INES))),
    ];
    let id = maker.id();
    maker.record(at, id, Fact::Heat(HeatFact::TrialSet(fields)));
}

/// Records a wash test of a run's ink that passed six days ago, at the run's settings.
pub(super) fn wash_test<N: FnMut() -> Uuid>(maker: &mut Maker<N>, run: Uuid, ink: Text) {
    let mut shop = Shop::default();
    shop.apply_all(&maker.entries());
    let language = maker.language;
    let method =
        text("Warm wash, tumble dry, next to an unwashed one", "Agua tibia y secadora, al lado de una sin lavar");
    let form = TestForm {
        ink: language.say(ink),
        times: "5".into(),
        result: TestResult::Pass,
        method_note: language.say(method),
        by: language.say(MOSS),
        ..TestForm::default()
    };
    let fields: Vec<TestField> = form.check(heat_settings(&shop, run), None).unwrap_or_default();
    let (id, at) = (maker.id(), maker.clock.now - 6 * DAY);
    maker.record(at, id, Fact::Heat(HeatFact::TestSet(fields)));
}
