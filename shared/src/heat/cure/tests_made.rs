//! Cure tests: wash, crock and stretch. The test decides, never the computed figures.

use crate::collections::sort_by;
use crate::facts::Fabric;
use crate::heat::{CureTest, ink_key};
use crate::ids::Subject;
use crate::shop::Shop;

/// The tests of an ink on a fabric, the latest result first. The ink's name matches by [`ink_key`].
pub fn tests_of<'a>(shop: &'a Shop, ink: &str, fabric: Fabric) -> Vec<(Subject, &'a CureTest)> {
    let key = ink_key(ink);
    latest_first(shop, |test| test.fabric == fabric && ink_key(&test.ink) == key)
}

/// All tests that are not deleted, the latest result first.
pub fn test_log(shop: &Shop) -> Vec<(Subject, &CureTest)> {
    latest_first(shop, |_| true)
}

fn latest_first(shop: &Shop, is_meant: impl Fn(&CureTest) -> bool) -> Vec<(Subject, &CureTest)> {
    let mut tests: Vec<_> = shop.heat.tests().filter(|(_, test)| !test.deleted && is_meant(test)).collect();
    sort_by(&mut tests, |(a, one), (b, other)| {
        (other.result_at, other.created, b).cmp(&(one.result_at, one.created, a))
    });
    tests
}
