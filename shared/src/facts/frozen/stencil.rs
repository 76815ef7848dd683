//! Lamps, emulsions, exposures, and the reclaim bath.

use super::frozen;
use super::prelude::*;

fn exposure() -> Exposure {
    Exposure {
        emulsion: EMULSION,
        lamp: LAMP,
        distance: Some(millimetres(610)),
        cloth: MeshCloth { count: MeshCount::PerInch(156), thread_um: Some(64), dyed: true },
        coats: Some(Coats { print: 1, squeegee: 2 }),
        time: seconds(240),
        found: ExposureMethod::Practice,
        by: Some(person()),
        note: "New lamp".into(),
    }
}

frozen! {
    enum StencilFact, Fact::Stencil => {
        0 Lamp(vec![LampField::Name("Halide".into()), LampField::Distance(None)]) =>
            r#"{"lamp":[{"name":"Halide"},{"distance":null}]}"#,
            "0002000648616c6964650200";
        1 Emulsion(vec![EmulsionField::Name("Dual cure".into()), EmulsionField::Solids(None)]) =>
            r#"{"emulsion":[{"name":"Dual cure"},{"solids":null}]}"#,
            "010200094475616c20637572650200";
        2 Goal(7) => r#"{"goal":7}"#, "0207";
        3 Exposure(exposure()) =>
            r#"{"exposure":{"emulsion":"00000000-0000-0000-0000-000000000015","lamp":"00000000-0000-0000-0000-000000000014","distance":610000,"cloth":{"count":{"per_inch":156},"thread_um":64,"dyed":true},"coats":{"print":1,"squeegee":2},"time":240000,"found":"practice","by":"Inés","note":"New lamp"}}"#,
            "031000000000000000000000000000000015100000000000000000000000000000001401a0bb4a009c0101400101010280d30e030105496ec3a973084e6577206c616d70";
        4 BathCharged { chemistry: "Stripper 1:20".into(), by: Some(person()) } =>
            r#"{"bath_charged":{"chemistry":"Stripper 1:20","by":"Inés"}}"#,
            "040d537472697070657220313a32300105496ec3a973";
        5 Bath(vec![BathField::Capacity(Some(6)), BathField::RechargeAt(None)]) =>
            r#"{"bath":[{"capacity":6},{"recharge_at":null}]}"#,
            "05020001060100";
        6 BatchIn { screens: vec![SCREEN], count: 2 } =>
            r#"{"batch_in":{"screens":["00000000-0000-0000-0000-000000000013"],"count":2}}"#,
            "0601100000000000000000000000000000001302";
        7 BatchOut { time: BatchTime::Elapsed, count: Some(1) } =>
            r#"{"batch_out":{"time":"elapsed","count":1}}"#,
            "07000101";
    }

    enum LampField, |field| Fact::Stencil(StencilFact::Lamp(vec![field])) => {
        0 Name("Halide".into()) => r#"{"name":"Halide"}"#, "000648616c696465";
        1 Kind(LampKind::Tubes) => r#"{"kind":"tubes"}"#, "0101";
        2 Distance(Some(millimetres(610))) => r#"{"distance":610000}"#, "0201a0bb4a";
    }

    enum LampKind, |kind| Fact::Stencil(StencilFact::Lamp(vec![LampField::Kind(kind)])) => {
        0 Point => r#""point""#, "00";
        1 Tubes => r#""tubes""#, "01";
        2 Panel => r#""panel""#, "02";
        3 Contact => r#""contact""#, "03";
    }

    enum EmulsionField, |field| Fact::Stencil(StencilFact::Emulsion(vec![field])) => {
        0 Name("Dual cure".into()) => r#"{"name":"Dual cure"}"#, "00094475616c2063757265";
        1 Family(Family::DualCure) => r#"{"family":"dual_cure"}"#, "0101";
        2 Solids(Some(38)) => r#"{"solids":38}"#, "020126";
    }

    enum Family, |family| Fact::Stencil(StencilFact::Emulsion(vec![EmulsionField::Family(family)])) => {
        0 Diazo => r#""diazo""#, "00";
        1 DualCure => r#""dual_cure""#, "01";
        2 Photopolymer => r#""photopolymer""#, "02";
    }

    struct Exposure, |exposure| Fact::Stencil(StencilFact::Exposure(exposure)) => {
        Exposure { distance: None, coats: None, by: None, note: String::new(), ..exposure() } =>
            r#"{"emulsion":"00000000-0000-0000-0000-000000000015","lamp":"00000000-0000-0000-0000-000000000014","distance":null,"cloth":{"count":{"per_inch":156},"thread_um":64,"dyed":true},"coats":null,"time":240000,"found":"practice","by":null,"note":""}"#,
            "1000000000000000000000000000000015100000000000000000000000000000001400009c010140010080d30e030000";
    }

    struct MeshCloth, |cloth| Fact::Stencil(StencilFact::Exposure(Exposure { cloth, ..exposure() })) => {
        MeshCloth { count: MeshCount::PerCentimetre(61), thread_um: None, dyed: false } =>
            r#"{"count":{"per_centimetre":61},"thread_um":null,"dyed":false}"#,
            "013d0000";
    }

    enum ExposureMethod, |found| Fact::Stencil(StencilFact::Exposure(Exposure { found, ..exposure() })) => {
        0 StepGuide { test: seconds(200), solid: 6, goal: 7 } =>
            r#"{"step_guide":{"test":200000,"solid":6,"goal":7}}"#,
            "00c09a0c0607";
        1 Columns { test: seconds(400), percent: 60 } => r#"{"columns":{"test":400000,"percent":60}}"#, "0180b5183c";
        2 Distance { before: seconds(180), from: millimetres(500) } =>
            r#"{"distance":{"before":180000,"from":500000}}"#,
            "02a0fe0ac0843d";
        3 Practice => r#""practice""#, "03";
    }

    enum BathField, |field| Fact::Stencil(StencilFact::Bath(vec![field])) => {
        0 Capacity(Some(8)) => r#"{"capacity":8}"#, "000108";
        1 RechargeAt(Some(200)) => r#"{"recharge_at":200}"#, "0101c801";
        2 Note("Gloves on the hook".into()) =>
            r#"{"note":"Gloves on the hook"}"#,
            "0212476c6f766573206f6e2074686520686f6f6b";
    }

    enum BatchTime, |time| Fact::Stencil(StencilFact::BatchOut { time, count: None }) => {
        0 Elapsed => r#""elapsed""#, "00";
        1 Whole(seconds(720)) => r#"{"whole":720000}"#, "0180f92b";
        2 EachScreen(seconds(180)) => r#"{"each_screen":180000}"#, "02a0fe0a";
    }
}

/// What a sample is about.
pub(super) fn subject_of(fact: &StencilFact) -> Subject {
    match fact {
        StencilFact::Lamp(_) => LAMP,
        StencilFact::Emulsion(_) => EMULSION,
        StencilFact::Goal(_) | StencilFact::Bath(_) => SHOP,
        StencilFact::Exposure(_) => EXPOSURE,
        StencilFact::BathCharged { .. } => CHARGE,
        StencilFact::BatchIn { .. } | StencilFact::BatchOut { .. } => BATCH,
    }
}
