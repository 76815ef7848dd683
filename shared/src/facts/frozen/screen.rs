//! Screens.

use super::frozen;
use super::prelude::*;

fn sheet() -> MeshSheet {
    MeshSheet {
        count: MeshCount::PerInch(156),
        thread_um: Some(64),
        opening_um: Some(98),
        open_area_permille: Some(366),
        thickness_um: Some(102),
        dyed: true,
    }
}

fn set(field: ScreenField) -> Fact {
    Fact::Screen(ScreenFact::Set(vec![field]))
}

frozen! {
    enum ScreenFact, Fact::Screen => {
        0 Set(vec![ScreenField::Label("A3".into()), ScreenField::Tension(Some(245))]) =>
            r#"{"set":[{"label":"A3"},{"tension":245}]}"#,
            "0002000241330201f501";
        1 Moved { to: ScreenState::OnPress, by: Some(person()) } =>
            r#"{"moved":{"to":"on_press","by":"Inés"}}"#,
            "01040105496ec3a973";
        2 Dried { dry: true, by: Some(person()) } => r#"{"dried":{"dry":true,"by":"Inés"}}"#, "02010105496ec3a973";
        3 AgeLimits(AgeLimits { coated: 14, exposed: 30 }) => r#"{"age_limits":{"coated":14,"exposed":30}}"#, "030e1e";
        4 StepTimes(StepTimes {
            reclaim: seconds(1_200),
            coat: seconds(600),
            dry: seconds(3_600),
            expose: seconds(300),
            wash_dry: seconds(2_400),
            tape: seconds(301),
        }) =>
            r#"{"step_times":{"reclaim":1200000,"coat":600000,"dry":3600000,"expose":300000,"wash_dry":2400000,"tape":301000}}"#,
            "04809f49c0cf2480dddb01e0a71280be9201c8af12";
        5 Undone { to: ScreenState::Coated, since: WallTime::from_unix_ms(5_000), dry: Some(WallTime::from_unix_ms(7_000)), exposed: None } =>
            r#"{"undone":{"to":"coated","since":5000,"dry":7000,"exposed":null}}"#,
            "0501882701d83600";
    }

    enum ScreenField, set => {
        0 Label("A4".into()) => r#"{"label":"A4"}"#, "00024134";
        1 Mesh(Some(sheet())) =>
            r#"{"mesh":{"count":{"per_inch":156},"thread_um":64,"opening_um":98,"open_area_permille":366,"thickness_um":102,"dyed":true}}"#,
            "0101009c010140016201ee02016601";
        2 Tension(Some(245)) => r#"{"tension":245}"#, "0201f501";
        3 Emulsion("Dual cure".into()) => r#"{"emulsion":"Dual cure"}"#, "03094475616c2063757265";
        4 Coats(Some(Coats { print: 1, squeegee: 2 })) => r#"{"coats":{"print":1,"squeegee":2}}"#, "04010102";
        5 Notes("Bent frame".into()) => r#"{"notes":"Bent frame"}"#, "050a42656e74206672616d65";
        6 Run(Some(RUN)) =>
            r#"{"run":"00000000-0000-0000-0000-000000000012"}"#,
            "06011000000000000000000000000000000012";
        7 Colour("Red".into()) => r#"{"colour":"Red"}"#, "0703526564";
        8 Replaces(Some(SCREEN)) =>
            r#"{"replaces":"00000000-0000-0000-0000-000000000013"}"#,
            "08011000000000000000000000000000000013";
    }

    enum ScreenState, |to| Fact::Screen(ScreenFact::Moved { to, by: None }) => {
        0 Clean => r#""clean""#, "00";
        1 Coated => r#""coated""#, "01";
        2 Exposed => r#""exposed""#, "02";
        3 Ready => r#""ready""#, "03";
        4 OnPress => r#""on_press""#, "04";
        5 ToReclaim => r#""to_reclaim""#, "05";
        6 InBath => r#""in_bath""#, "06";
        7 Failed => r#""failed""#, "07";
    }

    struct MeshSheet, |mesh| set(ScreenField::Mesh(Some(mesh))) => {
        sheet() =>
            r#"{"count":{"per_inch":156},"thread_um":64,"opening_um":98,"open_area_permille":366,"thickness_um":102,"dyed":true}"#,
            "009c010140016201ee02016601";
    }

    enum MeshCount, |count| set(ScreenField::Mesh(Some(MeshSheet { count, ..sheet() }))) => {
        0 PerInch(230) => r#"{"per_inch":230}"#, "00e601";
        1 PerCentimetre(90) => r#"{"per_centimetre":90}"#, "015a";
    }

    struct Coats, |coats| set(ScreenField::Coats(Some(coats))) => {
        Coats { print: 1, squeegee: 2 } => r#"{"print":1,"squeegee":2}"#, "0102";
    }

    struct AgeLimits, |limits| Fact::Screen(ScreenFact::AgeLimits(limits)) => {
        AgeLimits { coated: 21, exposed: 300 } => r#"{"coated":21,"exposed":300}"#, "15ac02";
    }

    struct StepTimes, |times| Fact::Screen(ScreenFact::StepTimes(times)) => {
        StepTimes {
            reclaim: seconds(1),
            coat: seconds(2),
            dry: seconds(3),
            expose: seconds(4),
            wash_dry: seconds(5),
            tape: seconds(6),
        } =>
            r#"{"reclaim":1000,"coat":2000,"dry":3000,"expose":4000,"wash_dry":5000,"tape":6000}"#,
            "e807d00fb817a01f8827f02e";
    }
}

/// What a sample is about.
pub(super) fn subject_of(fact: &ScreenFact) -> Subject {
    match fact {
        ScreenFact::AgeLimits(_) | ScreenFact::StepTimes(_) => SHOP,
        ScreenFact::Set(_) | ScreenFact::Moved { .. } | ScreenFact::Dried { .. } | ScreenFact::Undone { .. } => SCREEN,
    }
}
