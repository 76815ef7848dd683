//! The reclaim bath for display: its contents, its speed compared with the fresh bath, and when the waiting
//! screens will be done.

use crate::ids::Subject;
use crate::screen::bath::theil_sen::median;
use crate::screen::{Batch, BathPace, BathPoint, BathTrend, ScreensLeft, bath_pace, bath_trend};
use crate::shop::Shop;
use crate::time::{Millis, WallTime};

/// The reclaim bath for display.
#[derive(Clone, Debug, PartialEq)]
pub struct BathView {
    /// The current charge; `None` if none was recorded.
    pub charge: Option<ChargeRow>,
    /// How many screens fit in at once.
    pub capacity: Option<u16>,
    /// The limit at which the bath is recharged, in percent of the fresh bath's minutes per screen.
    pub recharge_at: u16,
    /// Whether the shop entered that limit itself.
    pub is_custom_recharge: bool,
    /// The shop's notes about it.
    pub note: String,
    /// The batches in the bath now, in the order in which they went in.
    pub in_bath: Vec<InBath>,
    /// Its speed; `None` while there are too few batches.
    pub pace: Option<BathPace>,
    /// Its trend; `None` if no charge was recorded, because then no batch shows the fresh bath.
    pub trend: Option<BathTrend>,
    /// The number of batches of the usual size until the limit; `None` if no number of screens is
    /// predicted.
    pub batches_left: Option<u32>,
    /// Batches of this charge whose time is known, oldest first: the input of the trend.
    pub points: Vec<BathPoint>,
    /// Finished batches of this charge, oldest first.
    pub done: Vec<FinishedBatch>,
    /// The screens that wait to be reclaimed.
    pub queue: BathQueue,
    /// Earlier charges, the latest first.
    pub before: Vec<ChargeRow>,
}

/// A charge of the bath.
#[derive(Clone, Debug, PartialEq)]
pub struct ChargeRow {
    /// The charge's id.
    pub id: Subject,
    /// When it was charged, as wall time.
    pub at: WallTime,
    /// The chemistry used.
    pub chemistry: String,
    /// Who did it.
    pub by: Option<String>,
    /// Screens that came out during this charge.
    pub screens: u32,
}

/// A batch in the bath.
#[derive(Clone, Debug, PartialEq)]
pub struct InBath {
    /// The batch's id.
    pub id: Subject,
    /// Its screens, as far as they are in the shop's list.
    pub screens: Vec<Subject>,
    /// Number of screens.
    pub count: u16,
    /// Wall time at which it went in.
    pub since: WallTime,
    /// Time since then.
    pub elapsed: Millis,
    /// What is left of a batch's usual time; zero if it is over; `None` if there is no usual time yet.
    pub left: Option<Millis>,
}

/// A batch that came out.
#[derive(Clone, Debug, PartialEq)]
pub struct FinishedBatch {
    /// The batch's id.
    pub id: Subject,
    /// Wall time at which it came out.
    pub at: WallTime,
    /// Number of screens.
    pub count: u16,
    /// Minutes per screen; `None` if its time is not known.
    pub minutes: Option<f64>,
}

/// The screens that wait for the bath.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct BathQueue {
    /// Number of screens.
    pub waiting: u32,
    /// Number of batches they need; `None` if the capacity is not known.
    pub batches: Option<u32>,
    /// Time until the last batch is out, without the time for loading and rinsing; `None` if the capacity or
    /// the usual time of a batch is not known.
    pub time: Option<Millis>,
    /// Whether the usual time of a batch is taken from an earlier charge.
    pub from_earlier_charge: bool,
}

/// Most charges and batches shown.
const MAX_ROWS: usize = 40;
/// Number of batches whose median is the usual time or size.
const TYPICAL_BATCHES: usize = 3;

/// The bath at wall time `now`; `waiting` is the number of screens that wait to be reclaimed.
///
/// A batch belongs to the charge during which it began. The usual time of a batch is the median of the last
/// three of this charge; while there are none, of the first three of the charge before.
pub fn bath_view(shop: &Shop, waiting: u32, now: WallTime) -> BathView {
    let bath = &shop.exposure_log.bath;
    let charges = bath.charges();
    let from = charges.last().map_or(WallTime::EPOCH, |(_, charge)| charge.at);
    let finished = finished_batches(bath.batches(from, WallTime::MAX));
    let points = points(&finished);
    let mut rows: Vec<ChargeRow> = Vec::new();
    let mut until = WallTime::MAX;
    for (id, charge) in charges.iter().rev().take(MAX_ROWS) {
        let screens =
            bath.batches(charge.at, until).iter().filter(|(_, batch)| batch.came_out.is_some()).map(count).sum();
        let (chemistry, by) = (charge.chemistry.clone(), charge.by.clone());
        rows.push(ChargeRow { id: *id, at: charge.at, chemistry, by, screens });
        until = charge.at;
    }
    let earlier = || {
        let before = charges
            .len()
            .checked_sub(2)
            .and_then(|place| charges.get(place))
            .map_or(WallTime::EPOCH, |(_, charge)| charge.at);
        let batches = finished_batches(bath.batches(before, from));
        usual_time(batches.iter().filter(|(_, batch)| batch.duration().is_some()).take(TYPICAL_BATCHES))
    };
    let here = usual_time(finished.iter().rev().filter(|(_, batch)| batch.duration().is_some()).take(TYPICAL_BATCHES));
    let usual = here.or_else(earlier);
    let mut in_bath: Vec<InBath> = bath
        .batches(WallTime::EPOCH, WallTime::MAX)
        .into_iter()
        .filter(|(_, batch)| batch.is_in())
        .map(|(id, batch)| {
            let elapsed = now.since(batch.started_at());
            InBath {
                id,
                screens: batch.screens.clone(),
                count: batch.count(),
                since: batch.started_at(),
                elapsed,
                left: usual.map(|usual| usual - elapsed),
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
        is_custom_recharge: bath.is_custom_recharge(),
        note: bath.note.clone(),
        pace: charges.last().and_then(|_| bath_pace(&points)),
        batches_left: batches_left(trend, &points),
        trend,
        points,
        done: finished
            .iter()
            .skip(finished.len().saturating_sub(MAX_ROWS))
            .map(|(id, batch)| FinishedBatch {
                id: *id,
                at: batch.came_out.unwrap_or_default(),
                count: batch.count(),
                minutes: batch.minutes_per_screen(),
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

fn finished_batches(batches: Vec<(Subject, &Batch)>) -> Vec<(Subject, &Batch)> {
    batches.into_iter().filter(|(_, batch)| batch.came_out.is_some()).collect()
}

/// The batches as input of the trend. A batch whose time is not known still counts as use of the bath.
fn points(finished: &[(Subject, &Batch)]) -> Vec<BathPoint> {
    let mut screens = 0u32;
    let mut points = Vec::new();
    for (_, batch) in finished {
        screens = screens.saturating_add(u32::from(batch.count()));
        if let Some(minutes) = batch.minutes_per_screen() {
            points.push(BathPoint { screens, count: batch.count(), minutes });
        }
    }
    points
}

fn usual_time<'a>(batches: impl Iterator<Item = &'a (Subject, &'a Batch)>) -> Option<Millis> {
    let times: Vec<f64> = batches.filter_map(|(_, batch)| batch.duration()).map(|took| took.ms() as f64).collect();
    median(&times).map(|time| Millis::from_ms(time.round() as u64))
}

fn batches_left(trend: Option<BathTrend>, points: &[BathPoint]) -> Option<u32> {
    let Some(BathTrend::Slowing(ScreensLeft::About { likely, .. })) = trend else { return None };
    let sizes: Vec<f64> = points.iter().rev().take(TYPICAL_BATCHES).map(|point| f64::from(point.count)).collect();
    median(&sizes).map(|size| (f64::from(likely) / size).round() as u32)
}

/// The number of batches for the waiting screens, and the time until the last is out. Screens already in the
/// bath leave the rest of its capacity free; if it is full, the queue waits for it.
fn queue(
    waiting: u32,
    capacity: Option<u16>,
    in_bath: &[InBath],
    usual: Option<Millis>,
) -> (Option<u32>, Option<Millis>) {
    if waiting == 0 {
        return (Some(0), Some(Millis::ZERO));
    }
    let Some(capacity) = capacity.map(u32::from).filter(|capacity| *capacity > 0) else { return (None, None) };
    let inside: u32 = in_bath.iter().map(|row| u32::from(row.count)).sum();
    let free = capacity.saturating_sub(inside);
    let first = if free == 0 { capacity } else { free };
    let batches = 1 + waiting.saturating_sub(first).div_ceil(capacity);
    let wait =
        if free == 0 { in_bath.iter().filter_map(|row| row.left).max().unwrap_or_default() } else { Millis::ZERO };
    (Some(batches), usual.map(|usual| wait + usual * u64::from(batches)))
}
