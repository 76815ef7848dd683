//! Cure tests: wash, crock and stretch. The test decides, never the computed figures.

use crate::collections::sort_by;
use crate::facts::Fabric;
use crate::heat::{CureTest, ink_key};
use crate::ids::Subject;
use crate::shop::Shop;

/// The tests of an ink on a fabric, the latest result first. The ink's name matches by [`ink_key`].
pub fn tests_of<'a>(shop: &'a Shop, ink: &str, fabric: Fabric) -> Vec<(Subject, &'a CureTest)> {
    let key = ink_key(ink);
    let mut tests = test_log(shop);
    tests.retain(|(_, test)| test.fabric == fabric && ink_key(&test.ink) == key);
    tests
}

/// All tests that are not deleted, the latest result first.
pub fn test_log(shop: &Shop) -> Vec<(Subject, &CureTest)> {
    let mut tests: Vec<_> = shop.heat.tests().filter(|(_, test)| !test.deleted).collect();
    sort_by(&mut tests, |(a, one), (b, other)| {
        (other.result_at, other.created, b).cmp(&(one.result_at, one.created, a))
    });
    tests
}
