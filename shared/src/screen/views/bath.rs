//! The bath as a screen shows it: what is in it, how it does against itself when it was fresh, and
//! when the screens that wait will be done.

use crate::ids::Subject;
use crate::screen::bath::theil_sen::median;
use crate::screen::{Batch, BathPace, BathPoint, BathTrend, ScreensLeft, bath_pace, bath_trend};
use crate::shop::Shop;

/// The reclaim bath.
#[derive(Clone, Debug, PartialEq)]
pub struct BathView {
    /// The charge that is in it; none until one was recorded.
    pub charge: Option<ChargeRow>,
    /// How many screens fit in at once.
    pub capacity: Option<u16>,
    /// When to charge anew, in percent of the fresh bath's minutes a screen.
    pub recharge_at: u16,
    /// Whether the shop set that itself.
    pub recharge_is_own: bool,
    /// What the shop keeps beside it.
    pub note: String,
    /// What lies in it now, first in first.
    pub in_bath: Vec<InBath>,
    /// How fast it is; none while there are too few batches.
    pub pace: Option<BathPace>,
    /// Whether it slows down; none where no charge was recorded, since nothing shows it fresh.
    pub trend: Option<BathTrend>,
    /// What the screens left come to in batches of the usual size.
    pub batches_left: Option<u32>,
    /// Batches of this charge whose time is known, oldest first, as the trend reads them.
    pub points: Vec<BathPoint>,
    /// Batches of this charge that came out, oldest first.
    pub done: Vec<DoneBatch>,
    /// The screens that wait.
    pub queue: BathQueue,
    /// Charges before this one, latest first.
    pub before: Vec<ChargeRow>,
}

/// A charge.
#[derive(Clone, Debug, PartialEq)]
pub struct ChargeRow {
    /// Which.
    pub id: Subject,
    /// Wall time.
    pub at: u64,
    /// What it was charged with.
    pub chemistry: String,
    /// Who did it.
    pub by: Option<String>,
    /// Screens that came clean out of it.
    pub screens: u32,
}

/// A batch in the bath.
#[derive(Clone, Debug, PartialEq)]
pub struct InBath {
    /// Which.
    pub id: Subject,
    /// Its screens, where they are known.
    pub screens: Vec<Subject>,
    /// How many.
    pub count: u16,
    /// When it went in.
    pub since: u64,
    /// How long ago, in milliseconds.
    pub elapsed: u64,
    /// What is left of a batch's usual time, in milliseconds; nothing when it is over; none when no
    /// time is usual yet.
    pub left: Option<u64>,
}

/// A batch that came out.
#[derive(Clone, Debug, PartialEq)]
pub struct DoneBatch {
    /// Which.
    pub id: Subject,
    /// When.
    pub at: u64,
    /// How many screens.
    pub count: u16,
    /// Minutes a screen; none where its time is not known.
    pub minutes: Option<f64>,
}

/// The screens that wait for the bath.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct BathQueue {
    /// How many.
    pub waiting: u32,
    /// How many times the bath is filled for them; none when its capacity is not known.
    pub batches: Option<u32>,
    /// Until the last is out, in milliseconds; none as well while no batch's time is known. Without
    /// the time of the hands that load and rinse.
    pub time: Option<u64>,
    /// Whether the time of a batch is that of an earlier charge.
    pub from_earlier_charge: bool,
}

/// Most charges and batches shown.
const SHOWN: usize = 40;
/// Batches whose middle is the usual one.
const USUAL: usize = 3;

/// The bath at wall time `now`, with `waiting` screens before it.
///
/// A batch belongs to the charge in which it began. A batch's usual time is the middle of the last
/// three of this charge; before there is one, of the first three of the charge before.
pub fn bath_view(shop: &Shop, waiting: u32, now: u64) -> BathView {
    let bath = &shop.stencils.bath;
    let charges = bath.charges();
    let from = charges.last().map_or(0, |(_, charge)| charge.at);
    let finished = out_of(bath.batches(from, u64::MAX));
    let points = points(&finished);
    let mut rows: Vec<ChargeRow> = Vec::new();
    let mut until = u64::MAX;
    for (id, charge) in charges.iter().rev().take(SHOWN) {
        let screens =
            bath.batches(charge.at, until).iter().filter(|(_, batch)| batch.came_out.is_some()).map(count).sum();
        let (chemistry, by) = (charge.chemistry.clone(), charge.by.clone());
        rows.push(ChargeRow { id: *id, at: charge.at, chemistry, by, screens });
        until = charge.at;
    }
    let earlier = || {
        let before =
            charges.len().checked_sub(2).and_then(|place| charges.get(place)).map_or(0, |(_, charge)| charge.at);
        let batches = out_of(bath.batches(before, from));
        usual_time(batches.iter().filter(|(_, batch)| batch.took().is_some()).take(USUAL))
    };
    let here = usual_time(finished.iter().rev().filter(|(_, batch)| batch.took().is_some()).take(USUAL));
    let usual = here.or_else(earlier);
    let mut in_bath: Vec<InBath> = bath
        .batches(0, u64::MAX)
        .into_iter()
        .filter(|(_, batch)| batch.is_in())
        .map(|(id, batch)| {
            let elapsed = now.saturating_sub(batch.began());
            InBath {
                id,
                screens: batch.screens.clone(),
                count: batch.count(),
                since: batch.began(),
                elapsed,
                left: usual.map(|usual| usual.saturating_sub(elapsed)),
            }
        })
        .collect();
    crate::collections::sort_by_key(&mut in_bath, |row| (row.since, row.id));
    let trend = charges.last().map(|_| bath_trend(&points, bath.recharge_at()));
    let (batches, time) = queue(waiting, bath.capacity, &in_bath, usual);
    let mut rows = rows.into_iter();
    BathView {
        charge: rows.next(),
        capacity: bath.capacity,
        recharge_at: bath.recharge_at(),
        recharge_is_own: bath.recharge_is_own(),
        note: bath.note.clone(),
        pace: charges.last().and_then(|_| bath_pace(&points)),
        batches_left: batches_left(trend, &points),
        trend,
        points,
        done: finished
            .iter()
            .skip(finished.len().saturating_sub(SHOWN))
            .map(|(id, batch)| DoneBatch {
                id: *id,
                at: batch.came_out.unwrap_or_default(),
                count: batch.count(),
                minutes: batch.minutes_a_screen(),
            })
            .collect(),
        queue: BathQueue { waiting, batches, time, from_earlier_charge: time.is_some() && here.is_none() },
        in_bath,
        before: rows.collect(),
    }
}

fn count((_, batch): &(Subject, &Batch)) -> u32 {
    u32::from(batch.count())
}

fn out_of(batches: Vec<(Subject, &Batch)>) -> Vec<(Subject, &Batch)> {
    batches.into_iter().filter(|(_, batch)| batch.came_out.is_some()).collect()
}

/// The batches as the trend reads them. One whose time nobody knows still used the bath up.
fn points(finished: &[(Subject, &Batch)]) -> Vec<BathPoint> {
    let mut screens = 0u32;
    let mut points = Vec::new();
    for (_, batch) in finished {
        screens = screens.saturating_add(u32::from(batch.count()));
        if let Some(minutes) = batch.minutes_a_screen() {
            points.push(BathPoint { screens, count: batch.count(), minutes });
        }
    }
    points
}

fn usual_time<'a>(batches: impl Iterator<Item = &'a (Subject, &'a Batch)>) -> Option<u64> {
    let times: Vec<f64> = batches.filter_map(|(_, batch)| batch.took()).map(|took| took as f64).collect();
    median(&times).map(|time| time.round() as u64)
}

fn batches_left(trend: Option<BathTrend>, points: &[BathPoint]) -> Option<u32> {
    let Some(BathTrend::Slowing(ScreensLeft::About { likely, .. })) = trend else { return None };
    let sizes: Vec<f64> = points.iter().rev().take(USUAL).map(|point| f64::from(point.count)).collect();
    median(&sizes).map(|size| (f64::from(likely) / size).round() as u32)
}

/// How often the bath is filled for the screens that wait, and when the last is out. Screens that
/// lie in it leave the rest of it free; a full one is waited for.
fn queue(waiting: u32, capacity: Option<u16>, in_bath: &[InBath], usual: Option<u64>) -> (Option<u32>, Option<u64>) {
    if waiting == 0 {
        return (Some(0), Some(0));
    }
    let Some(capacity) = capacity.map(u32::from).filter(|capacity| *capacity > 0) else { return (None, None) };
    let inside: u32 = in_bath.iter().map(|row| u32::from(row.count)).sum();
    let free = capacity.saturating_sub(inside);
    let first = if free == 0 { capacity } else { free };
    let batches = 1 + waiting.saturating_sub(first).div_ceil(capacity);
    let wait = if free == 0 { in_bath.iter().filter_map(|row| row.left).max().unwrap_or(0) } else { 0 };
    (Some(batches), usual.map(|usual| wait.saturating_add(usual.saturating_mul(u64::from(batches)))))
}
