//! Failures on the press.

use super::frozen;
use super::prelude::*;

fn set(field: FailureField) -> Fact {
    Fact::Failure(FailureFact::Set(vec![field]))
}

frozen! {
    enum FailureFact, Fact::Failure => {
        0 Set(vec![FailureField::Run(RUN), FailureField::Since(Some(12))]) =>
            r#"{"set":[{"run":"00000000-0000-0000-0000-000000000012"},{"since":12}]}"#,
            "000200100000000000000000000000000000001205010c";
        1 Judged { pieces: -1, size: Some(Size::M), verdict: Verdict::Spoiled, by: Some(person()) } =>
            r#"{"judged":{"pieces":-1,"size":"m","verdict":"spoiled","by":"Inés"}}"#,
            "01010108010105496ec3a973";
    }

    enum FailureField, set => {
        0 Run(RUN) => r#"{"run":"00000000-0000-0000-0000-000000000012"}"#, "001000000000000000000000000000000012";
        1 Notes("Lower left corner".into()) =>
            r#"{"notes":"Lower left corner"}"#,
            "01114c6f776572206c65667420636f726e6572";
        2 Screen(Some(SCREEN)) =>
            r#"{"screen":"00000000-0000-0000-0000-000000000013"}"#,
            "02011000000000000000000000000000000013";
        3 Kind(FailureKind::Ghost) => r#"{"kind":"ghost"}"#, "0305";
        4 Mark(Some(Mark { x: 120, y: 990 })) => r#"{"mark":{"x":120,"y":990}}"#, "040178de07";
        5 Since(Some(12)) => r#"{"since":12}"#, "05010c";
        6 Suspects(vec![Suspects { size: Some(Size::M), pieces: 9 }, Suspects { size: None, pieces: 3 }]) =>
            r#"{"suspects":[{"size":"m","pieces":9},{"size":null,"pieces":3}]}"#,
            "06020108090003";
        7 Remedy(Some(Remedy::BlockOut)) => r#"{"remedy":"block_out"}"#, "070101";
        8 Replacement(Some(SCREEN)) =>
            r#"{"replacement":"00000000-0000-0000-0000-000000000013"}"#,
            "08011000000000000000000000000000000013";
        9 By(Some(person())) => r#"{"by":"Inés"}"#, "090105496ec3a973";
    }

    enum FailureKind, |kind| set(FailureField::Kind(kind)) => {
        0 Pinhole => r#""pinhole""#, "00";
        1 Clog => r#""clog""#, "01";
        2 Spot => r#""spot""#, "02";
        3 Breakdown => r#""breakdown""#, "03";
        4 Tear => r#""tear""#, "04";
        5 Ghost => r#""ghost""#, "05";
        6 RegistrationDrift => r#""registration_drift""#, "06";
        7 Other => r#""other""#, "07";
    }

    enum Remedy, |remedy| set(FailureField::Remedy(Some(remedy))) => {
        0 Tape => r#""tape""#, "00";
        1 BlockOut => r#""block_out""#, "01";
        2 Clean => r#""clean""#, "02";
        3 BurnAgain => r#""burn_again""#, "03";
    }

    enum Verdict, |verdict| Fact::Failure(FailureFact::Judged { pieces: 1, size: None, verdict, by: None }) => {
        0 Good => r#""good""#, "00";
        1 Spoiled => r#""spoiled""#, "01";
    }

    struct Mark, |mark| set(FailureField::Mark(Some(mark))) => {
        Mark { x: 0, y: 1_000 } => r#"{"x":0,"y":1000}"#, "00e807";
    }

    struct Suspects, |row| set(FailureField::Suspects(vec![row])) => {
        Suspects { size: Some(Size::Xxl), pieces: 300 } => r#"{"size":"xxl","pieces":300}"#, "010bac02";
    }
}
