//! The stored facts about heat: bounds and frozen names.

use super::f;
use lastpull_core::facts::Fact;
use lastpull_core::heat::{Grade, HeatFact, HeatSettings, HeaterField, SheetField, TestField, TestMethod, TrialField};
use lastpull_core::job::Fabric;
use lastpull_core::journal::JournalFact;
use lastpull_core::units::{BeltSpeed, Length, Seconds, Temperature};
use uuid::Uuid;

#[test]
fn values_that_no_device_records_are_out_of_bounds() {
    let hot = Temperature::from_celsius(2_000.0);
    let settings = HeatSettings { temperature: Some(hot), ..HeatSettings::default() };
    for fact in [
        HeatFact::RoomRead { temperature: f(80.0), humidity: 101, by: None },
        HeatFact::RoomRead { temperature: hot, humidity: 50, by: None },
        HeatFact::HeaterSet(vec![HeaterField::HeatedLength(Some(Length::from_micrometres(-1)))]),
        HeatFact::HeaterSet(vec![HeaterField::Slowest(Some(BeltSpeed::from_micrometres_per_second(0)))]),
        HeatFact::HeaterSet(vec![HeaterField::Name("x".repeat(161))]),
        HeatFact::SettlingFinished(Seconds::from_milliseconds(u32::MAX)),
        HeatFact::SheetSet(vec![SheetField::Cure(Some(hot))]),
        HeatFact::TestSet(vec![TestField::Settings(settings)]),
        HeatFact::TrialSet(vec![TrialField::Hits(1); 65]),
    ] {
        assert!(!Fact::Heat(fact.clone()).in_bounds(), "{fact:?}");
    }
}

/// The words are a file format: they must not change.
#[test]
fn the_json_of_heat_facts_is_frozen() {
    let dryer = Uuid::from_u128(7);
    for (fact, json) in [
        (
            HeatFact::RoomRead { temperature: Temperature::from_celsius(33.5), humidity: 60, by: None },
            r#"{"heat":{"room_read":{"temperature":33500,"humidity":60,"by":null}}}"#,
        ),
        (HeatFact::SensorUnread, r#"{"heat":"sensor_unread"}"#),
        (
            HeatFact::SettlingStarted {
                dryer,
                from: Temperature::from_celsius(170.0),
                to: Temperature::from_celsius(125.0),
            },
            r#"{"heat":{"settling_started":{"dryer":"00000000-0000-0000-0000-000000000007","from":170000,"to":125000}}}"#,
        ),
        (
            HeatFact::TestSet(vec![
                TestField::Method(TestMethod::Iso105X12),
                TestField::Grade(Grade::from_halves(9)),
                TestField::Fabric(Fabric::TriBlend),
            ]),
            r#"{"heat":{"test_set":[{"method":"iso105_x12"},{"grade":9},{"fabric":"tri_blend"}]}}"#,
        ),
    ] {
        let fact = Fact::Heat(fact);
        assert_eq!(fact.to_json().get(), json);
        assert_eq!(Fact::from_json(json), Some(fact));
    }
}
