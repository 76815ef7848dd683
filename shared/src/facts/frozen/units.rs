//! Quantities, days, colours and photo ids: what has a format of its own.

use super::frozen;
use super::prelude::*;

frozen! {
    struct Day, |day| Fact::DayClosing { day, time: TimeOfDay::MIDNIGHT } => {
        day() => r#""2026-11-25""#, "d2a95a";
    }

    struct Colour, |colour| Fact::LotSet(vec![LotField::Colour(colour)]) => {
        Colour { rgb: [0x00, 0x0a, 0xff] } => r##""#000aff""##, "000aff";
    }

    struct PhotoId, |photo| Fact::Photo(PhotoFact::Taken { photo, width: 40, height: 30, bytes: 900 }) => {
        PhotoId([0x0c; 32]) =>
            r#""0c0c0c0c0c0c0c0c0c0c0c0c0c0c0c0c0c0c0c0c0c0c0c0c0c0c0c0c0c0c0c0c""#,
            "0c0c0c0c0c0c0c0c0c0c0c0c0c0c0c0c0c0c0c0c0c0c0c0c0c0c0c0c0c0c0c0c";
    }

    struct Seconds, Fact::SetUpAllowance => {
        Seconds::from_milliseconds(0) => "0", "00";
        Seconds::from_milliseconds(14_400_000) => "14400000", "80f4ee06";
    }

    struct Temperature, |temperature| Fact::RunSet(vec![RunField::Dryer(Some(temperature))]) => {
        Temperature::from_milli_celsius(-40_000) => "-40000", "fff004";
        Temperature::from_milli_celsius(162_778) => "162778", "b4ef13";
    }

    struct TemperatureDelta, |offset| Fact::Heat(HeatFact::TestSet(vec![TestField::Settings(HeatSettings {
        offset: Some(offset),
        ..HeatSettings::default()
    })])) => {
        TemperatureDelta::from_milli_celsius(-8_000) => "-8000", "ff7c";
    }

    struct Length, |length| Fact::RunSet(vec![RunField::OffContact(Some(length))]) => {
        Length::from_micrometres(-1) => "-1", "01";
        Length::from_micrometres(3_175) => "3175", "ce31";
    }

    struct BeltSpeed, |speed| Fact::RunSet(vec![RunField::Belt(Some(speed))]) => {
        BeltSpeed::from_micrometres_per_second(15_240) => "15240", "8877";
    }

    struct Grams, |weight| Fact::Ink(InkFact::PotSet(vec![PotField::Tare(Some(weight))])) => {
        Grams::from_milligrams(1) => "1", "02";
        Grams::from_milligrams(1_000_000_000) => "1000000000", "80a8d6b907";
    }

    struct Share, |share| Fact::Ink(InkFact::ComponentSet(vec![ComponentField::Most(Some(share))])) => {
        Share::from_billionths(1) => "1", "01";
        Share::WHOLE => "1000000000", "8094ebdc03";
    }

    struct Grade, |grade| Fact::Heat(HeatFact::TestSet(vec![TestField::Grade(Some(grade))])) => {
        Grade::from_halves(9).expect("a grade of the grey scale") => "9", "09";
    }
}
