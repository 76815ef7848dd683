//! The variants of `Fact` itself.

use super::prelude::*;
use super::{frozen, heat, ink, screen, stencil};

frozen! {
    enum Fact, |fact| fact => {
        0 ShopNamed("Nudo Press".into()) => r#"{"shop_named":"Nudo Press"}"#, "000a4e75646f205072657373";
        1 CrewNamed(vec!["Inés".into(), "Moss".into()]) =>
            r#"{"crew_named":["Inés","Moss"]}"#,
            "010205496ec3a973044d6f7373";
        2 WeekClosing([Some(at(18)), Some(at(18)), Some(at(18)), Some(at(18)), Some(at(16)), None, None]) =>
            r#"{"week_closing":[1080,1080,1080,1080,960,null,null]}"#,
            "0201b80801b80801b80801b80801c0070000";
        3 DayClosing { day: day(), time: TimeOfDay::at(16, 30) } =>
            r#"{"day_closing":{"day":"2026-11-25","minutes":990}}"#,
            "03d2a95ade07";
        4 SetUpAllowance(seconds(900)) => r#"{"set_up_allowance":900000}"#, "04a0f736";
        5 DeviceNamed("Press tablet".into()) => r#"{"device_named":"Press tablet"}"#, "050c5072657373207461626c6574";
        6 RunsOrdered(vec![RUN]) =>
            r#"{"runs_ordered":["00000000-0000-0000-0000-000000000012"]}"#,
            "06011000000000000000000000000000000012";
        7 JobSet(vec![JobField::Title("Reunion tees".into()), JobField::Exempt(true)]) =>
            r#"{"job_set":[{"title":"Reunion tees"},{"exempt":true}]}"#,
            "0702010c5265756e696f6e20746565730401";
        8 LotSet(vec![LotField::Job(JOB), LotField::Fabric(Fabric::Blend)]) =>
            r#"{"lot_set":[{"job":"00000000-0000-0000-0000-000000000010"},{"fabric":"blend"}]}"#,
            "08020010000000000000000000000000000000100201";
        9 RunSet(vec![RunField::Lot(LOT), RunField::Hits(2)]) =>
            r#"{"run_set":[{"lot":"00000000-0000-0000-0000-000000000011"},{"hits":2}]}"#,
            "09020010000000000000000000000000000000110702";
        10 Deleted => r#""deleted""#, "0a";
        11 Restored => r#""restored""#, "0b";
        12 JobFinished => r#""job_finished""#, "0c";
        13 JobReopened => r#""job_reopened""#, "0d";
        14 CheckMade {
            item: CheckItem::Dryer,
            expected: Expected::Temperature(celsius(160)),
            outcome: CheckOutcome::Measured(158_000),
            by: Some(person()),
        } =>
            r#"{"check_made":{"item":"dryer","expected":{"temperature":160000},"outcome":{"measured":158000},"by":"Inés"}}"#,
            "0e000080c41301e0a4130105496ec3a973";
        15 RunStarted => r#""run_started""#, "0f";
        16 Pulled { pieces: 1, size: None } => r#"{"pulled":{"pieces":1,"size":null}}"#, "100200";
        16 Pulled { pieces: -3, size: Some(Size::Xxl) } => r#"{"pulled":{"pieces":-3,"size":"xxl"}}"#, "1005010b";
        17 Misprinted { pieces: 1, size: Some(Size::M), cause: MisprintCause::Smudge, was_counted: true } =>
            r#"{"misprinted":{"pieces":1,"size":"m","cause":"smudge","was_counted":true}}"#,
            "110201080301";
        17 Misprinted { pieces: -1, size: None, cause: MisprintCause::Screen, was_counted: false } =>
            r#"{"misprinted":{"pieces":-1,"size":null,"cause":"screen","was_counted":false}}"#,
            "1101000800";
        18 Stopped(StopCause::Ink) => r#"{"stopped":"ink"}"#, "1201";
        19 Resumed => r#""resumed""#, "13";
        20 RunEnded => r#""run_ended""#, "14";
        21 Heat(HeatFact::SensorUnread) => r#"{"heat":"sensor_unread"}"#, "1503";
        22 Screen(ScreenFact::Moved { to: ScreenState::Ready, by: None }) =>
            r#"{"screen":{"moved":{"to":"ready","by":null}}}"#,
            "16010300";
        23 Stencil(StencilFact::Goal(7)) => r#"{"stencil":{"goal":7}}"#, "170207";
        24 Failure(FailureFact::Set(vec![FailureField::Run(RUN)])) =>
            r#"{"failure":{"set":[{"run":"00000000-0000-0000-0000-000000000012"}]}}"#,
            "180001001000000000000000000000000000000012";
        25 Photo(PhotoFact::Dropped(PhotoId([0xab; 32]))) =>
            r#"{"photo":{"dropped":"abababababababababababababababababababababababababababababababab"}}"#,
            "1901abababababababababababababababababababababababababababababababab";
        26 Ink(InkFact::GarmentRead(None)) => r#"{"ink":{"garment_read":null}}"#, "1a1200";
        skip Unknown;
    }

    enum PhotoFact, Fact::Photo => {
        0 Taken { photo: PhotoId([0xab; 32]), width: 1600, height: 1200, bytes: 280_000 } =>
            r#"{"taken":{"photo":"abababababababababababababababababababababababababababababababab","width":1600,"height":1200,"bytes":280000}}"#,
            "00ababababababababababababababababababababababababababababababababc00cb009c08b11";
        1 Dropped(PhotoId([0x0c; 32])) =>
            r#"{"dropped":"0c0c0c0c0c0c0c0c0c0c0c0c0c0c0c0c0c0c0c0c0c0c0c0c0c0c0c0c0c0c0c0c"}"#,
            "010c0c0c0c0c0c0c0c0c0c0c0c0c0c0c0c0c0c0c0c0c0c0c0c0c0c0c0c0c0c0c0c";
    }
}

/// What a sample is about, where samples form one journal.
pub fn subject_of(fact: &Fact) -> Subject {
    match fact {
        Fact::ShopNamed(_)
        | Fact::CrewNamed(_)
        | Fact::WeekClosing(_)
        | Fact::DayClosing { .. }
        | Fact::SetUpAllowance(_)
        | Fact::RunsOrdered(_)
        | Fact::Unknown { .. } => SHOP,
        Fact::DeviceNamed(_) => DEVICE,
        Fact::JobSet(_) | Fact::JobFinished | Fact::JobReopened => JOB,
        Fact::LotSet(_) => LOT,
        Fact::RunSet(_)
        | Fact::Deleted
        | Fact::Restored
        | Fact::CheckMade { .. }
        | Fact::RunStarted
        | Fact::Pulled { .. }
        | Fact::Misprinted { .. }
        | Fact::Stopped(_)
        | Fact::Resumed
        | Fact::RunEnded => RUN,
        Fact::Heat(fact) => heat::subject_of(fact),
        Fact::Screen(fact) => screen::subject_of(fact),
        Fact::Stencil(fact) => stencil::subject_of(fact),
        Fact::Failure(FailureFact::Set(_) | FailureFact::Judged { .. }) => FAILURE,
        Fact::Photo(PhotoFact::Taken { .. } | PhotoFact::Dropped(_)) => SCREEN,
        Fact::Ink(fact) => ink::subject_of(fact),
    }
}
