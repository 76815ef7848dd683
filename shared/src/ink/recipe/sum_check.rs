//! Explains percentages that do not add up to 100, and offers repairs.

use super::apportion::apportion;
use crate::facts::{ComponentKind, Share};
use crate::ink::PartForm;
use crate::shop::Shop;

/// The likely cause of a wrong sum.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SumErrorCause {
    /// The numbers were rounded to their decimals.
    Rounded,
    /// One part is 100 and the others add to it: written as percent on top.
    OnTop,
    /// Something is missing.
    TooLittle,
    /// Something is too much.
    TooMuch,
}

/// A way to repair a sum.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SumRepair {
    /// Scale all parts, keeping their proportions.
    Scale,
    /// Add the difference to the base in this row, or take it from there.
    Fill(usize),
    /// Take the part of 100 as the ink, and the others as parts on top.
    OnTop,
}

/// A repair, and the form after it.
#[derive(Clone, Debug, PartialEq)]
pub struct SumRepairOption {
    /// The repair.
    pub repair: SumRepair,
    /// The rows after it.
    pub parts: Vec<PartForm>,
}

/// A sum of parts that is not 100.
#[derive(Clone, Debug, PartialEq)]
pub struct SumError {
    /// What the parts of the ink add up to, in percent.
    pub percent: f64,
    /// The likely cause.
    pub cause: SumErrorCause,
    /// Repairs, the most likely first.
    pub repairs: Vec<SumRepairOption>,
}

/// Explains a sum of the ink's parts that is not 100, and offers repairs. `shares` belong to the rows, `None` for a row
/// without a number. Returns `None` if the sum is 100, or nothing was typed.
///
/// A sum counts as rounded if it is off by no more than half of the last decimal typed, for each row. Our own.
pub(crate) fn sum_error(shop: &Shop, rows: &[PartForm], shares: &[Option<Share>]) -> Option<SumError> {
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
    let cause = if off.abs() <= last * of_ink.len() as i64 / 2 {
        SumErrorCause::Rounded
    } else if hundreds == 1 && of_ink.len() > 1 && off > 0 {
        SumErrorCause::OnTop
    } else if off < 0 {
        SumErrorCause::TooLittle
    } else {
        SumErrorCause::TooMuch
    };
    let mut repairs = Vec::new();
    if cause == SumErrorCause::OnTop {
        let mut parts = rows.to_vec();
        for (at, share) in &of_ink {
            parts[*at].on_top = *share != Share::WHOLE;
        }
        repairs.push(SumRepairOption { repair: SumRepair::OnTop, parts });
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
            repairs.push(SumRepairOption { repair: SumRepair::Fill(*at), parts });
        }
    }
    let only: Vec<i64> = of_ink.iter().map(|(_, share)| i64::from(share.billionths())).collect();
    // Nobody types more than four decimals of a percent.
    let scaled = apportion(&only, 1_000_000);
    if scaled.iter().all(|share| *share > 0) {
        let mut parts = rows.to_vec();
        for ((at, _), share) in of_ink.iter().zip(scaled) {
            parts[*at].percent = Share::from_billionths(share as u32 * 1_000).text();
        }
        repairs.push(SumRepairOption { repair: SumRepair::Scale, parts });
    }
    if cause == SumErrorCause::Rounded {
        // The proportions are right as they are; no single part is wrong.
        repairs.reverse();
    }
    Some(SumError { percent: sum as f64 / 1e7, cause, repairs })
}

/// Number of decimals of a number as typed.
fn decimals(text: &str) -> u32 {
    text.trim().split_once(['.', ',']).map_or(0, |(_, part)| part.len() as u32)
}
