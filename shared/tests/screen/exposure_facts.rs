//! The stored facts about exposure: frozen names and bounds.

use super::mesh;
use crate::shop::ExposureRoom;
use lastpull_core::facts::Fact;
use lastpull_core::journal::JournalFact;
use lastpull_core::screen::{BatchTime, BathField, Coats, Exposure, ExposureMethod, StencilFact};
use lastpull_core::units::{Length, Seconds, Units};
use uuid::Uuid;

/// A fact as it lies in a file. The bytes are frozen: they are read for ever.
#[test]
fn stencil_facts_read_and_write_their_frozen_names() {
    let exposure = Exposure {
        emulsion: Uuid::from_u128(1),
        lamp: Uuid::from_u128(2),
        distance: Some(Length::from_inches(1.0)),
        cloth: mesh(156, 64),
        coats: Some(Coats { print: 2, squeegee: 1 }),
        time: Seconds::new(84.0),
        found: ExposureMethod::Columns { test: Seconds::new(120.0), percent: 70 },
        by: None,
        note: String::new(),
    };
    let step = ExposureMethod::StepGuide { test: Seconds::new(1.0), solid: 5, goal: 7 };
    let known = Exposure { found: step, coats: None, distance: None, ..exposure.clone() };
    for (fact, json) in [
        (
            StencilFact::Exposure(exposure),
            r#"{"stencil":{"exposure":{"emulsion":"00000000-0000-0000-0000-000000000001","lamp":"00000000-0000-0000-0000-000000000002","distance":25400,"cloth":{"count":{"per_inch":156},"thread_um":64,"dyed":false},"coats":{"print":2,"squeegee":1},"time":84000,"found":{"columns":{"test":120000,"percent":70}},"by":null,"note":""}}}"#,
        ),
        (
            StencilFact::Exposure(known),
            r#"{"stencil":{"exposure":{"emulsion":"00000000-0000-0000-0000-000000000001","lamp":"00000000-0000-0000-0000-000000000002","distance":null,"cloth":{"count":{"per_inch":156},"thread_um":64,"dyed":false},"coats":null,"time":84000,"found":{"step_guide":{"test":1000,"solid":5,"goal":7}},"by":null,"note":""}}}"#,
        ),
        (StencilFact::Goal(8), r#"{"stencil":{"goal":8}}"#),
        (
            StencilFact::BathCharged { chemistry: "Dip".into(), by: None },
            r#"{"stencil":{"bath_charged":{"chemistry":"Dip","by":null}}}"#,
        ),
        (
            StencilFact::Bath(vec![
                BathField::Capacity(Some(4)),
                BathField::RechargeAt(None),
                BathField::Note("x".into()),
            ]),
            r#"{"stencil":{"bath":[{"capacity":4},{"recharge_at":null},{"note":"x"}]}}"#,
        ),
        (
            StencilFact::BatchIn { screens: Vec::new(), count: 4 },
            r#"{"stencil":{"batch_in":{"screens":[],"count":4}}}"#,
        ),
        (
            StencilFact::BatchOut { time: BatchTime::Elapsed, count: None },
            r#"{"stencil":{"batch_out":{"time":"elapsed","count":null}}}"#,
        ),
        (
            StencilFact::BatchOut { time: BatchTime::EachScreen(Seconds::new(90.0)), count: Some(3) },
            r#"{"stencil":{"batch_out":{"time":{"each_screen":90000},"count":3}}}"#,
        ),
    ] {
        let fact = Fact::Stencil(fact);
        assert_eq!(fact.to_json().get(), json);
        assert_eq!(Fact::from_json(json).as_ref(), Some(&fact));
        assert!(fact.in_bounds(), "{json}");
    }
}

#[test]
fn a_fact_past_its_bounds_is_refused() {
    let short = Seconds::new(0.1);
    let room = ExposureRoom::new();
    let StencilFact::Exposure(good) = room.form().check(&room.press.shop(), None, Units::US).unwrap() else { panic!() };
    for fact in [
        StencilFact::Goal(0),
        StencilFact::Goal(22),
        StencilFact::BatchIn { screens: Vec::new(), count: 0 },
        StencilFact::BatchIn { screens: vec![Uuid::nil(); 201], count: 4 },
        StencilFact::BatchOut { time: BatchTime::Whole(Seconds::new(0.0)), count: None },
        StencilFact::Bath(vec![BathField::RechargeAt(Some(100))]),
        StencilFact::Bath(vec![BathField::Capacity(Some(0))]),
        StencilFact::BathCharged { chemistry: "x".repeat(4_001), by: None },
        StencilFact::Exposure(Exposure { time: short, ..good.clone() }),
        StencilFact::Exposure(Exposure { distance: Some(Length::from_inches(-1.0)), ..good.clone() }),
        StencilFact::Exposure(Exposure { cloth: mesh(0, 64), ..good.clone() }),
        StencilFact::Exposure(Exposure { coats: Some(Coats { print: 10, squeegee: 0 }), ..good }),
    ] {
        assert!(!Fact::Stencil(fact.clone()).in_bounds(), "{fact:?}");
    }
}
