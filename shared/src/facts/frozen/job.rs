//! Jobs and garment lots.

use super::frozen;
use super::prelude::*;

frozen! {
    enum JobField, |field| Fact::JobSet(vec![field]) => {
        0 Client("Peña Running Club".into()) =>
            r#"{"client":"Peña Running Club"}"#,
            "00125065c3b1612052756e6e696e6720436c7562";
        1 Title("Reunion tees".into()) => r#"{"title":"Reunion tees"}"#, "010c5265756e696f6e2074656573";
        2 Due(Some(Due { day: day(), time: TimeOfDay::at(17, 0) })) =>
            r#"{"due":{"day":"2026-11-25","minutes":1020}}"#,
            "0201d2a95afc07";
        2 Due(None) => r#"{"due":null}"#, "0200";
        3 Notes("Fold and bag".into()) => r#"{"notes":"Fold and bag"}"#, "030c466f6c6420616e6420626167";
        4 Exempt(true) => r#"{"exempt":true}"#, "0401";
        5 RepeatOf(JOB) =>
            r#"{"repeat_of":"00000000-0000-0000-0000-000000000010"}"#,
            "051000000000000000000000000000000010";
    }

    enum LotField, |field| Fact::LotSet(vec![field]) => {
        0 Job(JOB) => r#"{"job":"00000000-0000-0000-0000-000000000010"}"#, "001000000000000000000000000000000010";
        1 Garment("Heavy tee".into()) => r#"{"garment":"Heavy tee"}"#, "0109486561767920746565";
        2 Fabric(Fabric::TriBlend) => r#"{"fabric":"tri_blend"}"#, "0203";
        3 Colour(Colour { rgb: [0x1a, 0x2b, 0x3c] }) => r##"{"colour":"#1a2b3c"}"##, "031a2b3c";
        4 ColourName("Navy".into()) => r#"{"colour_name":"Navy"}"#, "04044e617679";
        5 Pieces(vec![SizePieces { size: Size::M, pieces: 300 }, SizePieces { size: Size::Xl, pieces: 12 }]) =>
            r#"{"pieces":[{"size":"m","pieces":300},{"size":"xl","pieces":12}]}"#,
            "050208ac020a0c";
    }

    struct Due, |due| Fact::JobSet(vec![JobField::Due(Some(due))]) => {
        Due { day: day(), time: TimeOfDay::MIDNIGHT } => r#"{"day":"2026-11-25","minutes":0}"#, "d2a95a00";
    }

    struct SizePieces, |row| Fact::LotSet(vec![LotField::Pieces(vec![row])]) => {
        SizePieces { size: Size::L, pieces: 24 } => r#"{"size":"l","pieces":24}"#, "0918";
    }

    enum Fabric, |fabric| Fact::LotSet(vec![LotField::Fabric(fabric)]) => {
        0 Cotton => r#""cotton""#, "00";
        1 Blend => r#""blend""#, "01";
        2 Polyester => r#""polyester""#, "02";
        3 TriBlend => r#""tri_blend""#, "03";
        4 Nylon => r#""nylon""#, "04";
        5 Canvas => r#""canvas""#, "05";
        6 Other => r#""other""#, "06";
    }

    enum Size, |size| Fact::Pulled { pieces: 2, size: Some(size) } => {
        0 One => r#""one""#, "00";
        1 YouthXs => r#""youth_xs""#, "01";
        2 YouthS => r#""youth_s""#, "02";
        3 YouthM => r#""youth_m""#, "03";
        4 YouthL => r#""youth_l""#, "04";
        5 YouthXl => r#""youth_xl""#, "05";
        6 Xs => r#""xs""#, "06";
        7 S => r#""s""#, "07";
        8 M => r#""m""#, "08";
        9 L => r#""l""#, "09";
        10 Xl => r#""xl""#, "0a";
        11 Xxl => r#""xxl""#, "0b";
        12 Xxxl => r#""xxxl""#, "0c";
        13 Xxxxl => r#""xxxxl""#, "0d";
        14 Xxxxxl => r#""xxxxxl""#, "0e";
    }
}
