//! The merge of our journal.

use crate::shape::{RunTotal, Totals};
use lastpull_core::facts::{Entry, Journal};
use lastpull_core::journal::segment;
use lastpull_core::run::Progress;
use lastpull_core::shop::Shop;

/// Packs entries into the bytes that a device stores and sends.
pub fn pack(entries: &[Entry]) -> Vec<u8> {
    let mut segments = segment::pack(entries);
    assert_eq!(segments.len(), 1, "sequence numbers without a gap make one segment");
    segments.swap_remove(0).bytes
}

/// Input of [`merge_decoded`]: the first device's journal, and the others' entries.
pub type Decoded = (Journal, Vec<Vec<Entry>>);

/// Decodes the bytes of every device.
pub fn decode(packed: &[Vec<u8>]) -> Decoded {
    let mut lists = packed.iter().map(|bytes| segment::unpack(bytes).expect("own bytes read"));
    let first = lists.next().expect("there is a device");
    (Journal::of(first).expect("own numbers are unique"), lists.collect())
}

/// Merges the others' entries into the first device's journal and folds the shop.
pub fn merge_decoded((mut journal, others): Decoded) -> (Journal, Shop) {
    for entries in others {
        journal.absorb(entries).expect("devices differ");
    }
    let shop = Shop::fold(&journal);
    (journal, shop)
}

/// The same from packed bytes.
pub fn merge_packed(packed: &[Vec<u8>]) -> (Journal, Shop) {
    merge_decoded(decode(packed))
}

/// The totals of the folded shop.
pub fn totals(shop: &Shop) -> Totals {
    let total =
        |progress: &Progress| RunTotal { good: progress.good().into(), misprinted: progress.misprints().into() };
    shop.runs().map(|(id, run)| (id, total(&run.progress))).collect()
}
