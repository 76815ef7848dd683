//! Runs: set-up, checks, and what happens on the press.

use super::frozen;
use super::prelude::*;

fn check(item: CheckItem, expected: Expected, outcome: CheckOutcome) -> Fact {
    Fact::CheckMade { item, expected, outcome, by: None }
}

frozen! {
    enum RunField, |field| Fact::RunSet(vec![field]) => {
        0 Lot(LOT) => r#"{"lot":"00000000-0000-0000-0000-000000000011"}"#, "001000000000000000000000000000000011";
        1 Location(Location::LeftChest) => r#"{"location":"left_chest"}"#, "0101";
        2 Ink("Brick red".into()) => r#"{"ink":"Brick red"}"#, "0209427269636b20726564";
        3 InkColour(Colour { rgb: [0xb2, 0x22, 0x22] }) => r##"{"ink_colour":"#b22222"}"##, "03b22222";
        4 Screens("A3, A4".into()) => r#"{"screens":"A3, A4"}"#, "040641332c204134";
        5 Mesh(Some(156)) => r#"{"mesh":156}"#, "05019c01";
        6 Flash(Some(Flash { seconds: seconds(7), distance: Some(millimetres(50)) })) =>
            r#"{"flash":{"seconds":7000,"distance":50000}}"#,
            "0601d83601a08d06";
        6 Flash(None) => r#"{"flash":null}"#, "0600";
        7 Hits(2) => r#"{"hits":2}"#, "0702";
        8 Dryer(Some(celsius(165))) => r#"{"dryer":165000}"#, "0801909214";
        9 Belt(Some(belt(20_320))) => r#"{"belt":20320}"#, "0901e09e01";
        10 Dwell(Some(seconds(75))) => r#"{"dwell":75000}"#, "0a01f8c904";
        11 Passes(2) => r#"{"passes":2}"#, "0b02";
        12 Squeegee("70 durometer".into()) => r#"{"squeegee":"70 durometer"}"#, "0c0c3730206475726f6d65746572";
        13 OffContact(Some(millimetres(3))) => r#"{"off_contact":3000}"#, "0d01f02e";
        14 BelowCollar(Some(millimetres(76))) => r#"{"below_collar":76000}"#, "0e01c0a309";
        15 Placement("Centred between the seams".into()) =>
            r#"{"placement":"Centred between the seams"}"#,
            "0f1943656e74726564206265747765656e20746865207365616d73";
        16 Guess(Some(seconds(40))) => r#"{"guess":40000}"#, "1001c0b802";
    }

    enum Location, |location| Fact::RunSet(vec![RunField::Location(location)]) => {
        0 FullFront => r#""full_front""#, "00";
        1 LeftChest => r#""left_chest""#, "01";
        2 RightChest => r#""right_chest""#, "02";
        3 CentreChest => r#""centre_chest""#, "03";
        4 FullBack => r#""full_back""#, "04";
        5 UpperBack => r#""upper_back""#, "05";
        6 LeftSleeve => r#""left_sleeve""#, "06";
        7 RightSleeve => r#""right_sleeve""#, "07";
        8 InsideNeck => r#""inside_neck""#, "08";
        9 Pocket => r#""pocket""#, "09";
        10 Other => r#""other""#, "0a";
    }

    struct Flash, |flash| Fact::RunSet(vec![RunField::Flash(Some(flash))]) => {
        Flash { seconds: seconds(5), distance: None } => r#"{"seconds":5000,"distance":null}"#, "882700";
    }

    enum CheckItem, |item| check(item, Expected::Count(2), CheckOutcome::Ticked) => {
        0 Dryer => r#""dryer""#, "00";
        1 Belt => r#""belt""#, "01";
        2 Dwell => r#""dwell""#, "02";
        3 Passes => r#""passes""#, "03";
        4 Flash => r#""flash""#, "04";
        5 FlashDistance => r#""flash_distance""#, "05";
        6 Garment => r#""garment""#, "06";
        7 Screens => r#""screens""#, "07";
        8 Mesh => r#""mesh""#, "08";
        9 OffContact => r#""off_contact""#, "09";
        10 Squeegee => r#""squeegee""#, "0a";
        11 BelowCollar => r#""below_collar""#, "0b";
        12 Placement => r#""placement""#, "0c";
        13 Ink => r#""ink""#, "0d";
        14 Hits => r#""hits""#, "0e";
    }

    enum Expected, |expected| check(CheckItem::Placement, expected, CheckOutcome::Skipped) => {
        0 Temperature(celsius(160)) => r#"{"temperature":160000}"#, "0080c413";
        1 Time(seconds(75)) => r#"{"time":75000}"#, "01f8c904";
        2 Length(millimetres(3)) => r#"{"length":3000}"#, "02f02e";
        3 Belt(belt(20_320)) => r#"{"belt":20320}"#, "03e09e01";
        4 Count(2) => r#"{"count":2}"#, "0402";
        5 Mesh(156) => r#"{"mesh":156}"#, "059c01";
        6 NoFlash => r#""no_flash""#, "06";
        7 Words("70 durometer".into()) => r#"{"words":"70 durometer"}"#, "070c3730206475726f6d65746572";
        8 Garment { name: "Heavy tee".into(), fabric: Fabric::Blend, colour: Some(Colour { rgb: [1, 2, 3] }) } =>
            r##"{"garment":{"name":"Heavy tee","fabric":"blend","colour":"#010203"}}"##,
            "08094865617679207465650101010203";
        9 Ink { name: "Brick red".into(), colour: None } =>
            r#"{"ink":{"name":"Brick red","colour":null}}"#,
            "0909427269636b2072656400";
    }

    enum CheckOutcome, |outcome| check(CheckItem::Dryer, Expected::Temperature(celsius(165)), outcome) => {
        0 Ticked => r#""ticked""#, "00";
        1 Measured(-163_500) => r#"{"measured":-163500}"#, "01d7fa13";
        2 Skipped => r#""skipped""#, "02";
        3 Cleared => r#""cleared""#, "03";
        4 ReadByInfrared(129_500) => r#"{"read_by_infrared":129500}"#, "04b8e70f";
        5 Settled => r#""settled""#, "05";
    }

    enum MisprintCause, |cause| Fact::Misprinted { pieces: 1, size: None, cause, was_counted: true } => {
        0 Placement => r#""placement""#, "00";
        1 Registration => r#""registration""#, "01";
        2 Pinhole => r#""pinhole""#, "02";
        3 Smudge => r#""smudge""#, "03";
        4 InkLay => r#""ink_lay""#, "04";
        5 Garment => r#""garment""#, "05";
        6 Heat => r#""heat""#, "06";
        7 Other => r#""other""#, "07";
        8 Screen => r#""screen""#, "08";
    }

    enum StopCause, Fact::Stopped => {
        0 Screen => r#""screen""#, "00";
        1 Ink => r#""ink""#, "01";
        2 Heat => r#""heat""#, "02";
        3 Garments => r#""garments""#, "03";
        4 Client => r#""client""#, "04";
        5 Break => r#""break""#, "05";
        6 Other => r#""other""#, "06";
    }
}
