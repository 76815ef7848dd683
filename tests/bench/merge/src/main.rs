//! Merges what five devices recorded, 10,000 facts each, with our journal, with yrs and with
//! automerge, and prints how long each takes and how many bytes an entry has.
//!
//! The three start from the same events and must end with the same totals of every run. In yrs and
//! automerge the events are laid out in two ways ([`shape`] says why), and each is measured. Ours
//! does more than is asked of the others: its fold also computes paces, stops and the day's tallies.
//!
//! The budget applies to the merge from packed bytes, because bytes are what arrives from a device.
//! The merge of decoded entries shows where the time goes; how much work is left after decoding
//! differs among the three.
//!
//! Times on a shared machine vary, so a missed budget is printed and does not fail the program.

mod events;
mod ours;
mod shape;
mod table;
mod timing;
mod with_automerge;
mod with_yrs;

use lastpull_core::facts::Entry;
use std::time::Duration;
use timing::median;

/// Number of repeats; fewer for slower work.
const REPEATS_OURS: usize = 31;
const REPEATS_YRS: usize = 15;
const REPEATS_AUTOMERGE: usize = 5;

fn main() {
    let devices: Vec<_> = (0..events::DEVICES).map(events::of_device).collect();
    let ours = Ours::measure(&devices);
    ours.compare("lists", &devices, &with_yrs::lists::LAYOUT, &with_automerge::lists::LAYOUT);
    ours.compare("records", &devices, &with_yrs::records::LAYOUT, &with_automerge::records::LAYOUT);
}

/// Results of our own merge.
struct Ours {
    packed: Vec<Vec<u8>>,
    from_packed: Duration,
    from_decoded: Duration,
    totals: shape::Totals,
}

impl Ours {
    fn measure(devices: &[Vec<Entry>]) -> Self {
        let packed: Vec<_> = devices.iter().map(|entries| ours::pack(entries)).collect();
        let (from_packed, merged) = median(REPEATS_OURS, || (), |()| ours::merge_packed(&packed));
        let (from_decoded, again) = median(REPEATS_OURS, || ours::decode(&packed), ours::merge_decoded);
        assert!(merged == again, "both give the same shop");
        assert_eq!(merged.1.fact_count(), u64::from(events::ALL));
        Self { packed, from_packed, from_decoded, totals: ours::totals(&merged.1) }
    }

    fn compare(
        &self,
        layout: &str,
        devices: &[Vec<Entry>],
        yrs: &with_yrs::Layout,
        automerge: &with_automerge::Layout,
    ) {
        let in_yrs: Vec<_> = (1..).zip(devices).map(|(client, entries)| yrs.pack(client, entries)).collect();
        let in_automerge: Vec<_> = devices.iter().map(|entries| automerge.pack(entries)).collect();

        let (by_yrs, merged) = median(REPEATS_YRS, || (), |()| yrs.merge_packed(&in_yrs));
        assert_eq!(merged.1, self.totals);
        let (by_automerge, merged) = median(REPEATS_AUTOMERGE, || (), |()| automerge.merge_packed(&in_automerge));
        assert_eq!(merged.1, self.totals);
        table::budgeted(&format!("merge, from packed bytes, {layout}"), [self.from_packed, by_yrs, by_automerge]);

        let (by_yrs, merged) = median(REPEATS_YRS, || with_yrs::decode(&in_yrs), |decoded| yrs.merge_decoded(decoded));
        assert_eq!(merged.1, self.totals);
        let decode = || with_automerge::decode(&in_automerge);
        let (by_automerge, merged) = median(REPEATS_AUTOMERGE, decode, |decoded| automerge.merge_decoded(decoded));
        assert_eq!(merged.1, self.totals);
        table::plain(&format!("merge, already decoded, {layout}"), [self.from_decoded, by_yrs, by_automerge]);

        table::bytes(&format!("bytes an entry, {layout}"), [&self.packed, &in_yrs, &in_automerge], events::ALL);
    }
}
