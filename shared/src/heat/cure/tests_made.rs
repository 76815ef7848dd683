//! Cure tests: wash, crock and stretch. The test decides, never the computed figures.

use crate::collections::sort_by;
use crate::facts::Fabric;
use crate::heat::{CureTest, ink_key};
use crate::ids::Subject;
use crate::shop::Shop;

/// The latest tests of an ink on a fabric, the latest result first: of each kind and result the last, and what was
/// recorded in the same moment. The ink's name matches by [`ink_key`].
pub(super) fn latest_tests<'a>(shop: &'a Shop, ink: &str, fabric: Fabric) -> Vec<(Subject, &'a CureTest)> {
    let key = ink_key(ink);
    let latest = shop.heat.latest_tests(&key, fabric);
    let is_meant = |test: &CureTest| test.fabric == fabric && ink_key(&test.ink) == key;
    latest_first(latest.unwrap_or_else(|| live(shop).filter(|(_, test)| is_meant(test)).collect()))
}

/// All tests that are not deleted, the latest result first.
pub fn test_log(shop: &Shop) -> Vec<(Subject, &CureTest)> {
    latest_first(live(shop).collect())
}

fn live(shop: &Shop) -> impl Iterator<Item = (Subject, &CureTest)> {
    shop.heat.tests().filter(|(_, test)| !test.deleted)
}

fn latest_first(mut tests: Vec<(Subject, &CureTest)>) -> Vec<(Subject, &CureTest)> {
    sort_by(&mut tests, |(a, one), (b, other)| {
        (other.result_at, other.created, b).cmp(&(one.result_at, one.created, a))
    });
    tests
}
