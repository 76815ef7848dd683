//! The screen inventory: where screens stand, how long they have lain, what they carry, and what the
//! day's runs still need burned. Step times and limits are our own or common practice; the tests set theirs.

use super::labels;
use crate::shop::TestShop;
use lastpull_core::run::RunForm;
use lastpull_core::screen::{MeshCount, MeshSheet, OtherMesh, ScreenField, other_mesh};
use lastpull_core::units::Units;

#[test]
fn the_labels_of_a_run_may_be_separated_in_any_way() {
    let mut press = TestShop::new();
    for label in ["A3", "A4", "Frame 3", "Frame 3 wide"] {
        press.screen(label);
    }
    let shop = press.shop();
    let found = |label: &str| (label.to_owned(), true);
    for line in ["A3, A4", "a3+a4", " A3  a4 ", "A3/A4;a3"] {
        assert_eq!(labels(&shop, line), [found("A3"), found("A4")], "{line}");
    }
    assert_eq!(labels(&shop, "frame 3 WIDE, frame 3"), [found("Frame 3 wide"), found("Frame 3")]);
    assert_eq!(labels(&shop, "A3, B9"), [found("A3"), ("B9".into(), false)]);
    assert_eq!(labels(&shop, " , "), []);
}

#[test]
fn a_screen_with_another_mesh_than_the_run_asks_for_is_named() {
    let mut press = TestShop::new();
    let sheet = |count| ScreenField::Mesh(Some(MeshSheet::of_count(count)));
    press.screen_with("2", vec![sheet(MeshCount::PerInch(156))]);
    press.screen_with("3", vec![sheet(MeshCount::PerCentimetre(43))]);
    press.screen("4");
    let shop = press.shop();
    let wrong = |label: &str, count| OtherMesh { label: label.into(), count };
    assert_eq!(other_mesh(&shop, "2, 3, 4, 9", Some(110)), [wrong("2", MeshCount::PerInch(156))], "43 per cm are 109");
    assert_eq!(other_mesh(&shop, "3", Some(156)), [wrong("3", MeshCount::PerCentimetre(43))]);
    assert_eq!(other_mesh(&shop, "2, 3", None), []);
    let form = RunForm { screens: "2".into(), mesh: "110".into(), ..RunForm::default() };
    assert_eq!(form.other_mesh(&shop, Units::US).len(), 1);
    assert_eq!(RunForm { mesh: "156".into(), ..form.clone() }.other_mesh(&shop, Units::US), []);
    assert_eq!(RunForm { mesh: "1".into(), ..form }.other_mesh(&shop, Units::US), []);
}
