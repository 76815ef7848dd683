//! Percentages that do not add up to 100: why, and what would mend it?

use super::apportion::apportion;
use crate::facts::{ComponentKind, Share};
use crate::ink::PartForm;
use crate::shop::Shop;

/// What is wrong with a sum, as far as the numbers tell.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum WhyOff {
    /// As far off as rounding the numbers to so many decimals makes it.
    Rounded,
    /// One part is 100 already and the others come to it: written as percent on top.
    OnTop,
    /// Something is missing.
    TooLittle,
    /// Something is too much.
    TooMuch,
}

/// A way to mend it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SumFix {
    /// All parts keep their proportions.
    Scale,
    /// The base takes what is missing, or gives what is too much: this row.
    Fill(usize),
    /// The part of 100 is the ink, the others come on top.
    OnTop,
}

/// A mend, and the form after it.
#[derive(Clone, Debug, PartialEq)]
pub struct SumOffer {
    /// What it does.
    pub fix: SumFix,
    /// The rows after it.
    pub parts: Vec<PartForm>,
}

/// A sum of parts that is not 100.
#[derive(Clone, Debug, PartialEq)]
pub struct OffSum {
    /// What the parts of the ink add up to, in percent.
    pub percent: f64,
    /// Why, as far as the numbers tell.
    pub why: WhyOff,
    /// What would mend it, the likeliest first.
    pub offers: Vec<SumOffer>,
}

/// Explains a sum of parts of the ink that is not 100, and offers to mend it. `shares` are those of the rows,
/// none where a row has no number yet. None when the sum is 100, or nothing was typed.
///
/// Rounded: off by no more than half of the last decimal typed for each row. Our own.
pub(crate) fn off_sum(shop: &Shop, rows: &[PartForm], shares: &[Option<Share>]) -> Option<OffSum> {
    let of_ink: Vec<(usize, Share)> = rows
        .iter()
        .zip(shares)
        .enumerate()
        .filter(|(_, (row, share))| !row.on_top && share.is_some_and(|share| share > Share::default()))
        .filter_map(|(at, (_, share))| Some((at, (*share)?)))
        .collect();
    let whole = i64::from(Share::WHOLE.billionths());
    let sum: i64 = of_ink.iter().map(|(_, share)| i64::from(share.billionths())).sum();
    if sum == whole || of_ink.is_empty() {
        return None;
    }
    let off = sum - whole;
    let decimals = of_ink.iter().map(|(at, _)| decimals(&rows[*at].percent)).max().unwrap_or(0);
    let last = 10_i64.pow(7_u32.saturating_sub(decimals.min(7)));
    let hundreds = of_ink.iter().filter(|(_, share)| *share == Share::WHOLE).count();
    let why = if off.abs() <= last * of_ink.len() as i64 / 2 {
        WhyOff::Rounded
    } else if hundreds == 1 && of_ink.len() > 1 && off > 0 {
        WhyOff::OnTop
    } else if off < 0 {
        WhyOff::TooLittle
    } else {
        WhyOff::TooMuch
    };
    let mut offers = Vec::new();
    if why == WhyOff::OnTop {
        let mut parts = rows.to_vec();
        for (at, share) in &of_ink {
            parts[*at].on_top = *share != Share::WHOLE;
        }
        offers.push(SumOffer { fix: SumFix::OnTop, parts });
    }
    let is_base = |at: usize| {
        let component = rows[at].component.and_then(|id| shop.ink.component(id));
        component.is_some_and(|component| component.kind == ComponentKind::Base)
    };
    if let Some((at, share)) = of_ink.iter().filter(|(at, _)| is_base(*at)).max_by_key(|(_, share)| *share) {
        let left = i64::from(share.billionths()) - off;
        if left > 0 {
            let mut parts = rows.to_vec();
            parts[*at].percent = Share::from_billionths(left as u32).text();
            offers.push(SumOffer { fix: SumFix::Fill(*at), parts });
        }
    }
    let only: Vec<i64> = of_ink.iter().map(|(_, share)| i64::from(share.billionths())).collect();
    // Ten-thousandths of a percent are as fine as anybody types them.
    let scaled = apportion(&only, 1_000_000);
    if scaled.iter().all(|share| *share > 0) {
        let mut parts = rows.to_vec();
        for ((at, _), share) in of_ink.iter().zip(scaled) {
            parts[*at].percent = Share::from_billionths(share as u32 * 1_000).text();
        }
        offers.push(SumOffer { fix: SumFix::Scale, parts });
    }
    if why == WhyOff::Rounded {
        // The proportions are right as they are; no one part is to blame.
        offers.reverse();
    }
    Some(OffSum { percent: sum as f64 / 1e7, why, offers })
}

/// Decimals of a number as typed.
fn decimals(text: &str) -> u32 {
    text.trim().split_once(['.', ',']).map_or(0, |(_, part)| part.len() as u32)
}
