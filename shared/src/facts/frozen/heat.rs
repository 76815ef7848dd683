//! Dryers, flash units, ink sheets, fabric limits, cure tests, trials, and the room.

use super::frozen;
use super::prelude::*;

fn test(field: TestField) -> Fact {
    Fact::Heat(HeatFact::TestSet(vec![field]))
}

fn settings() -> HeatSettings {
    HeatSettings {
        dryer: Some(DRYER),
        temperature: Some(celsius(165)),
        offset: Some(TemperatureDelta::from_milli_celsius(-8_000)),
        dwell: Some(seconds(75)),
        passes: 2,
        flash: Some(Flash { seconds: seconds(7), distance: Some(millimetres(50)) }),
        sheet: Some(figures()),
    }
}

fn figures() -> SheetFigures {
    SheetFigures {
        cure: Some(celsius(160)),
        hold: Some(seconds(30)),
        flash: Some(celsius(110)),
        highest: Some(celsius(190)),
    }
}

frozen! {
    enum HeatFact, Fact::Heat => {
        0 RoomRead { temperature: celsius(31), humidity: 64, by: Some(person()) } =>
            r#"{"room_read":{"temperature":31000,"humidity":64,"by":"Inés"}}"#,
            "00b0e403400105496ec3a973";
        1 HeaterSet(vec![HeaterField::Kind(HeaterKind::Dryer), HeaterField::Name("Tunnel".into())]) =>
            r#"{"heater_set":[{"kind":"dryer"},{"name":"Tunnel"}]}"#,
            "01020000010654756e6e656c";
        2 SensorRead { setting: celsius(165), found: celsius(157), method: SensorMethod::Strip } =>
            r#"{"sensor_read":{"setting":165000,"found":157000,"method":"strip"}}"#,
            "0290921490951301";
        3 SensorUnread => r#""sensor_unread""#, "03";
        4 DryerChosen(Some(DRYER)) =>
            r#"{"dryer_chosen":"00000000-0000-0000-0000-00000000001a"}"#,
            "0401100000000000000000000000000000001a";
        4 DryerChosen(None) => r#"{"dryer_chosen":null}"#, "0400";
        5 SheetSet(vec![SheetField::Ink("Brick red".into()), SheetField::Cure(Some(celsius(160)))]) =>
            r#"{"sheet_set":[{"ink":"Brick red"},{"cure":160000}]}"#,
            "05020009427269636b20726564010180c413";
        6 FabricLimit {
            fabric: Fabric::Polyester,
            kind: LimitKind::DyeMigration,
            temperature: Some(celsius(132)),
            note: "Maker's sheet".into(),
        } =>
            r#"{"fabric_limit":{"fabric":"polyester","kind":"dye_migration","temperature":132000,"note":"Maker's sheet"}}"#,
            "06020001c08e100d4d616b65722773207368656574";
        6 FabricLimit { fabric: Fabric::Nylon, kind: LimitKind::Scorch, temperature: None, note: String::new() } =>
            r#"{"fabric_limit":{"fabric":"nylon","kind":"scorch","temperature":null,"note":""}}"#,
            "0604010000";
        7 SettlingStarted { dryer: DRYER, from: celsius(165), to: celsius(132) } =>
            r#"{"settling_started":{"dryer":"00000000-0000-0000-0000-00000000001a","from":165000,"to":132000}}"#,
            "07100000000000000000000000000000001a909214c08e10";
        8 SettlingFinished(seconds(400)) => r#"{"settling_finished":400000}"#, "0880b518";
        9 TestSet(vec![TestField::Ink("Brick red".into()), TestField::Result(TestResult::Pass)]) =>
            r#"{"test_set":[{"ink":"Brick red"},{"result":"pass"}]}"#,
            "09020009427269636b207265640601";
        10 TrialSet(vec![TrialField::Ink("Brick red".into()), TrialField::Verdict(TrialVerdict::Keep)]) =>
            r#"{"trial_set":[{"ink":"Brick red"},{"verdict":"keep"}]}"#,
            "0a020009427269636b207265640a01";
        11 SettlingLogged { dryer: DRYER, from: celsius(132), to: celsius(165), took: seconds(250) } =>
            r#"{"settling_logged":{"dryer":"00000000-0000-0000-0000-00000000001a","from":132000,"to":165000,"took":250000}}"#,
            "0b100000000000000000000000000000001ac08e1090921490a10f";
    }

    enum HeaterField, |field| Fact::Heat(HeatFact::HeaterSet(vec![field])) => {
        0 Kind(HeaterKind::Flash) => r#"{"kind":"flash"}"#, "0001";
        1 Name("Flash 1".into()) => r#"{"name":"Flash 1"}"#, "0107466c6173682031";
        2 HeatedLength(Some(millimetres(1_200))) => r#"{"heated_length":1200000}"#, "020180be9201";
        3 Slowest(Some(belt(4_000))) => r#"{"slowest":4000}"#, "0301a01f";
        4 Fastest(Some(belt(60_000))) => r#"{"fastest":60000}"#, "0401e0d403";
        5 Notes("Left lamp is weak".into()) =>
            r#"{"notes":"Left lamp is weak"}"#,
            "05114c656674206c616d70206973207765616b";
    }

    enum HeaterKind, |kind| Fact::Heat(HeatFact::HeaterSet(vec![HeaterField::Kind(kind)])) => {
        0 Dryer => r#""dryer""#, "00";
        1 Flash => r#""flash""#, "01";
    }

    enum SensorMethod, |method| Fact::Heat(HeatFact::SensorRead {
        setting: celsius(160),
        found: celsius(155),
        method,
    }) => {
        0 Probe => r#""probe""#, "00";
        1 Strip => r#""strip""#, "01";
        2 Infrared => r#""infrared""#, "02";
    }

    enum SheetField, |field| Fact::Heat(HeatFact::SheetSet(vec![field])) => {
        0 Ink("Brick red".into()) => r#"{"ink":"Brick red"}"#, "0009427269636b20726564";
        1 Cure(Some(celsius(160))) => r#"{"cure":160000}"#, "010180c413";
        2 Hold(Some(seconds(30))) => r#"{"hold":30000}"#, "0201b0ea01";
        3 Flash(Some(celsius(110))) => r#"{"flash":110000}"#, "0301e0b60d";
        4 Highest(Some(celsius(190))) => r#"{"highest":190000}"#, "0401e09817";
        5 Source("Technical data sheet".into()) =>
            r#"{"source":"Technical data sheet"}"#,
            "0514546563686e6963616c2064617461207368656574";
        6 SourceDay(Some(day())) => r#"{"source_day":"2026-11-25"}"#, "0601d2a95a";
    }

    enum LimitKind, |kind| Fact::Heat(HeatFact::FabricLimit {
        fabric: Fabric::Blend,
        kind,
        temperature: Some(celsius(140)),
        note: "Own".into(),
    }) => {
        0 DyeMigration => r#""dye_migration""#, "00";
        1 Scorch => r#""scorch""#, "01";
    }

    enum TestField, test => {
        0 Ink("Brick red".into()) => r#"{"ink":"Brick red"}"#, "0009427269636b20726564";
        1 Fabric(Fabric::Cotton) => r#"{"fabric":"cotton"}"#, "0100";
        2 Kind(TestKind::Wash) => r#"{"kind":"wash"}"#, "0200";
        3 Method(TestMethod::Iso6330) => r#"{"method":"iso6330"}"#, "0304";
        4 MethodNote("At 40".into()) => r#"{"method_note":"At 40"}"#, "04054174203430";
        5 Times(5) => r#"{"times":5}"#, "0505";
        6 Result(TestResult::Fail) => r#"{"result":"fail"}"#, "0602";
        7 Grade(Grade::from_halves(7)) => r#"{"grade":7}"#, "070107";
        8 Settings(settings()) =>
            r#"{"settings":{"dryer":"00000000-0000-0000-0000-00000000001a","temperature":165000,"offset":-8000,"dwell":75000,"passes":2,"flash":{"seconds":7000,"distance":50000},"sheet":{"cure":160000,"hold":30000,"flash":110000,"highest":190000}}}"#,
            "0801100000000000000000000000000000001a0190921401ff7c01f8c9040201d83601a08d06010180c41301b0ea0101e0b60d01e09817";
        9 By(Some(person())) => r#"{"by":"Inés"}"#, "090105496ec3a973";
        10 Notes("Cracked at the collar".into()) =>
            r#"{"notes":"Cracked at the collar"}"#,
            "0a15437261636b65642061742074686520636f6c6c6172";
    }

    enum TestKind, |kind| test(TestField::Kind(kind)) => {
        0 Wash => r#""wash""#, "00";
        1 Crock => r#""crock""#, "01";
        2 Stretch => r#""stretch""#, "02";
    }

    enum TestMethod, |method| test(TestField::Method(method)) => {
        0 Own => r#""own""#, "00";
        1 Aatcc61 => r#""aatcc61""#, "01";
        2 Aatcc8 => r#""aatcc8""#, "02";
        3 Iso105X12 => r#""iso105_x12""#, "03";
        4 Iso6330 => r#""iso6330""#, "04";
    }

    enum TestResult, |result| test(TestField::Result(result)) => {
        0 Waiting => r#""waiting""#, "00";
        1 Pass => r#""pass""#, "01";
        2 Fail => r#""fail""#, "02";
    }

    struct HeatSettings, |settings| test(TestField::Settings(settings)) => {
        settings() =>
            r#"{"dryer":"00000000-0000-0000-0000-00000000001a","temperature":165000,"offset":-8000,"dwell":75000,"passes":2,"flash":{"seconds":7000,"distance":50000},"sheet":{"cure":160000,"hold":30000,"flash":110000,"highest":190000}}"#,
            "01100000000000000000000000000000001a0190921401ff7c01f8c9040201d83601a08d06010180c41301b0ea0101e0b60d01e09817";
        HeatSettings::default() =>
            r#"{"dryer":null,"temperature":null,"offset":null,"dwell":null,"passes":0,"flash":null,"sheet":null}"#,
            "00000000000000";
    }

    struct SheetFigures, |sheet| test(TestField::Settings(HeatSettings { sheet: Some(sheet), ..settings() })) => {
        figures() =>
            r#"{"cure":160000,"hold":30000,"flash":110000,"highest":190000}"#,
            "0180c41301b0ea0101e0b60d01e09817";
    }

    enum TrialField, |field| Fact::Heat(HeatFact::TrialSet(vec![field])) => {
        0 Ink("Brick red".into()) => r#"{"ink":"Brick red"}"#, "0009427269636b20726564";
        1 Fabric(Fabric::Polyester) => r#"{"fabric":"polyester"}"#, "0102";
        2 Mesh(Some(156)) => r#"{"mesh":156}"#, "02019c01";
        3 Hits(2) => r#"{"hits":2}"#, "0302";
        4 Flash(Some(Flash { seconds: seconds(7), distance: None })) =>
            r#"{"flash":{"seconds":7000,"distance":null}}"#,
            "0401d83600";
        5 Dryer(Some(celsius(135))) => r#"{"dryer":135000}"#, "0501b0bd10";
        6 Belt(Some(belt(15_240))) => r#"{"belt":15240}"#, "06018877";
        7 Dwell(Some(seconds(90))) => r#"{"dwell":90000}"#, "070190bf05";
        8 Passes(1) => r#"{"passes":1}"#, "0801";
        9 Outcome("Slight bleed".into()) => r#"{"outcome":"Slight bleed"}"#, "090c536c6967687420626c656564";
        10 Verdict(TrialVerdict::Adjust) => r#"{"verdict":"adjust"}"#, "0a02";
        11 Notes("Try a blocker base".into()) =>
            r#"{"notes":"Try a blocker base"}"#,
            "0b12547279206120626c6f636b65722062617365";
        12 By(Some(person())) => r#"{"by":"Inés"}"#, "0c0105496ec3a973";
    }

    enum TrialVerdict, |verdict| Fact::Heat(HeatFact::TrialSet(vec![TrialField::Verdict(verdict)])) => {
        0 Open => r#""open""#, "00";
        1 Keep => r#""keep""#, "01";
        2 Adjust => r#""adjust""#, "02";
        3 Reject => r#""reject""#, "03";
    }
}

/// What a sample is about.
pub(super) fn subject_of(fact: &HeatFact) -> Subject {
    match fact {
        HeatFact::RoomRead { .. } => ROOM_READING,
        HeatFact::HeaterSet(_) | HeatFact::SensorRead { .. } | HeatFact::SensorUnread => DRYER,
        HeatFact::DryerChosen(_) => RUN,
        HeatFact::SheetSet(_) => SHEET,
        HeatFact::FabricLimit { .. } => SHOP,
        HeatFact::SettlingStarted { .. } | HeatFact::SettlingFinished(_) => SETTLING,
        HeatFact::SettlingLogged { .. } => LOGGED_SETTLING,
        HeatFact::TestSet(_) => TEST,
        HeatFact::TrialSet(_) => TRIAL,
    }
}
