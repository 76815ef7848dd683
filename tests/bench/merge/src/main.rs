//! Merges what five devices recorded, 10,000 facts each, with our journal, with yrs and with
//! automerge, and prints how long each takes and how many bytes an entry has.
//!
//! The three start from the same events and must end with the same totals of every run. In yrs and
//! automerge the events are laid out in two ways ([`shape`] says why), and each is measured. Ours
//! does more than is asked of the others: its fold also computes paces, stops and the day's tallies.
//!
//! The budget is held against the merge from packed bytes, since bytes are what arrives from a
//! device. The merge of what is already decoded shows where the time goes; what decoding leaves to
//! do differs among the three.
//!
//! Times on a shared machine vary, so a missed budget is said and does not fail the program.

mod events;
mod ours;
mod shape;
mod table;
mod timing;
mod with_automerge;
mod with_yrs;

use lastpull_core::journal::Entry;
use std::time::Duration;
use timing::median;

/// Repeats, fewer for what takes longer.
const OFTEN: usize = 31;
const SOME: usize = 15;
const FEW: usize = 5;

fn main() {
    let devices: Vec<_> = (0..events::DEVICES).map(events::of_device).collect();
    let ours = Ours::measure(&devices);
    ours.beside("lists", &devices, &with_yrs::lists::LAYOUT, &with_automerge::lists::LAYOUT);
    ours.beside("records", &devices, &with_yrs::records::LAYOUT, &with_automerge::records::LAYOUT);
}

/// Our side of the comparison.
struct Ours {
    packed: Vec<Vec<u8>>,
    from_packed: Duration,
    from_decoded: Duration,
    totals: shape::Totals,
}

impl Ours {
    fn measure(devices: &[Vec<Entry>]) -> Self {
        let packed: Vec<_> = devices.iter().map(|entries| ours::pack(entries)).collect();
        let (from_packed, merged) = median(OFTEN, || (), |()| ours::merge_packed(&packed));
        let (from_decoded, again) = median(OFTEN, || ours::decode(&packed), ours::merge_decoded);
        assert!(merged == again, "the shop is the same either way");
        assert_eq!(merged.1.facts(), u64::from(events::ALL));
        Self { packed, from_packed, from_decoded, totals: ours::totals(&merged.1) }
    }

    fn beside(
        &self,
        layout: &str,
        devices: &[Vec<Entry>],
        yrs: &with_yrs::Layout,
        automerge: &with_automerge::Layout,
    ) {
        let in_yrs: Vec<_> = (1..).zip(devices).map(|(client, entries)| yrs.pack(client, entries)).collect();
        let in_automerge: Vec<_> = devices.iter().map(|entries| automerge.pack(entries)).collect();

        let (by_yrs, merged) = median(SOME, || (), |()| yrs.merge_packed(&in_yrs));
        assert_eq!(merged.1, self.totals);
        let (by_automerge, merged) = median(FEW, || (), |()| automerge.merge_packed(&in_automerge));
        assert_eq!(merged.1, self.totals);
        table::budgeted(&format!("merge, from packed bytes, {layout}"), [self.from_packed, by_yrs, by_automerge]);

        let (by_yrs, merged) = median(SOME, || with_yrs::decode(&in_yrs), |decoded| yrs.merge_decoded(decoded));
        assert_eq!(merged.1, self.totals);
        let decode = || with_automerge::decode(&in_automerge);
        let (by_automerge, merged) = median(FEW, decode, |decoded| automerge.merge_decoded(decoded));
        assert_eq!(merged.1, self.totals);
        table::plain(&format!("merge, already decoded, {layout}"), [self.from_decoded, by_yrs, by_automerge]);

        table::bytes(&format!("bytes an entry, {layout}"), [&self.packed, &in_yrs, &in_automerge], events::ALL);
    }
}
