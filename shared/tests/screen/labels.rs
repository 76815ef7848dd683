//! The screen inventory: where screens stand, how long they have lain, what they carry, and what the
//! day's runs still need burned. Step times and limits are our own or common practice; the tests set theirs.

use super::labels;
use crate::shop::TestShop;

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
