//! What was measured for a run's checks, compared with limits and cure before any tolerance.

use super::dryer_choice::dryer_of;
use super::dwell::dwell;
use super::on_paper::{LimitCheck, LimitState, check_limits};
use super::sheets::sheet_for;
use crate::facts::{CheckItem, CheckOutcome, Expected};
use crate::ids::RunId;
use crate::run::{CheckRecord, Run};
use crate::shop::Shop;
use crate::units::{BeltSpeed, Seconds, Temperature, TemperatureDelta};

/// What a measured value breaches, however close it is to what is set.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum MeasuredBreach {
    /// The temperature is at a limit of the fabric or the ink, or above it.
    Limit(LimitCheck),
    /// The temperature is below the ink's cure temperature.
    BelowCure {
        /// Cure temperature on the ink's sheet.
        cure: Temperature,
        /// How far below it.
        short: TemperatureDelta,
    },
    /// The time in the heat is shorter than the ink's cure takes.
    ShortOfHold {
        /// Hold time on the ink's sheet.
        hold: Seconds,
        /// Time in all passes, by what was measured.
        has: Seconds,
    },
}

/// A measurement that still holds the ink although its check was taken back, skipped or ticked since.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct HeldBreach {
    /// The measured value in the unit of [`Expected::value`].
    pub value: i64,
    /// Whether it was read by infrared.
    pub infrared: bool,
    /// What it breaches.
    pub breach: MeasuredBreach,
}

/// What was measured at the dryer for a run.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default)]
pub(crate) struct AtDryer {
    /// By probe or strip.
    pub measured: Option<Temperature>,
    /// By infrared at the exit, which misses the hottest moment.
    pub infrared: Option<Temperature>,
}

/// The measurement that holds the ink whatever was said since: by probe or strip, else by infrared.
pub(crate) fn held_breach(
    shop: &Shop,
    id: RunId,
    run: &Run,
    item: CheckItem,
    record: &CheckRecord,
) -> Option<HeldBreach> {
    let measured = record.measured.and_then(|value| {
        let breach = measured_breach(shop, id, run, item, value)?;
        Some(HeldBreach { value, infrared: false, breach })
    });
    measured.or_else(|| {
        let value = record.infrared?;
        let breach = infrared_breach(shop, run, value)?;
        Some(HeldBreach { value, infrared: true, breach })
    })
}

/// What was measured for a run's dryer check; nothing if it was measured for another setting, or was taken back and
/// breaches nothing.
pub(crate) fn measured_at_dryer(shop: &Shop, id: RunId, run: &Run) -> AtDryer {
    let expected = run.set_up.dryer.map(Expected::Temperature);
    let Some(record) = record_of(run, CheckItem::Dryer, expected) else { return AtDryer::default() };
    let is_measured = matches!(record.outcome, CheckOutcome::Measured(_));
    let is_read = matches!(record.outcome, CheckOutcome::ReadByInfrared(_));
    let breaches = |value: i64| measured_breach(shop, id, run, CheckItem::Dryer, value).is_some();
    AtDryer {
        measured: record.measured.filter(|value| is_measured || breaches(*value)).map(temperature),
        infrared: record
            .infrared
            .filter(|value| is_read || infrared_breach(shop, run, *value).is_some())
            .map(temperature),
    }
}

/// The shortest dwell of one pass by what was measured for a run's checks of dwell and belt speed.
pub(crate) fn measured_dwell(shop: &Shop, id: RunId, run: &Run) -> Option<Seconds> {
    let of = |item: CheckItem, expected: Option<Expected>| {
        let record = record_of(run, item, expected)?;
        let is_measured = matches!(record.outcome, CheckOutcome::Measured(_));
        let value =
            record.measured.filter(|value| is_measured || time_breach(shop, id, run, item, *value).is_some())?;
        dwell_by(shop, id, item, value)
    };
    let by_dwell = of(CheckItem::Dwell, run.set_up.dwell.map(Expected::Time));
    let by_belt = of(CheckItem::Belt, run.set_up.belt.map(Expected::Belt));
    by_dwell.into_iter().chain(by_belt).min()
}

/// What a measured value breaches, before any tolerance. `None` if it breaches nothing that is known.
pub(crate) fn measured_breach(
    shop: &Shop,
    id: RunId,
    run: &Run,
    item: CheckItem,
    value: i64,
) -> Option<MeasuredBreach> {
    if item != CheckItem::Dryer {
        return time_breach(shop, id, run, item, value);
    }
    let measured = temperature(value);
    let below_cure = || {
        let cure = sheet_for(shop, &run.ink)?.1.figures.cure.filter(|cure| measured < *cure)?;
        Some(MeasuredBreach::BelowCure { cure, short: TemperatureDelta::between(measured, cure) })
    };
    limit_breach(shop, run, measured).or_else(below_cure)
}

/// What a reading by infrared breaches: a limit. That it is below the cure says nothing, since the print was hotter.
pub(crate) fn infrared_breach(shop: &Shop, run: &Run, value: i64) -> Option<MeasuredBreach> {
    limit_breach(shop, run, temperature(value))
}

/// The lowest limit of fabric and ink that a temperature reaches.
fn limit_breach(shop: &Shop, run: &Run, measured: Temperature) -> Option<MeasuredBreach> {
    let fabric = run.lot.and_then(|lot| shop.lot(lot)).map(|lot| lot.fabric);
    let figures = sheet_for(shop, &run.ink).map(|(_, sheet)| sheet.figures);
    let limits = check_limits(shop, fabric, figures.as_ref(), Some(measured));
    let exceeded = limits.into_iter().filter(|limit| limit.state == LimitState::Exceeded);
    exceeded.min_by_key(|limit| limit.limit).map(MeasuredBreach::Limit)
}

/// Whether the time in all passes is shorter than the hold time of the ink's sheet.
fn time_breach(shop: &Shop, id: RunId, run: &Run, item: CheckItem, value: i64) -> Option<MeasuredBreach> {
    let one_pass = dwell_by(shop, id, item, value)?;
    let hold = sheet_for(shop, &run.ink)?.1.figures.hold?;
    let passes = u32::from(run.set_up.passes.max(1));
    let has = Seconds::from_milliseconds(one_pass.milliseconds().saturating_mul(passes));
    // A belt speed is stored rounded: a shortfall of 1 in 1,000 is that rounding.
    let rounding = if item == CheckItem::Belt { hold.milliseconds() / 1000 } else { 0 };
    let is_short = has.milliseconds() < hold.milliseconds() - rounding;
    is_short.then_some(MeasuredBreach::ShortOfHold { hold, has })
}

/// The dwell of one pass by a measured dwell or belt speed; `None` for other items.
fn dwell_by(shop: &Shop, id: RunId, item: CheckItem, value: i64) -> Option<Seconds> {
    let value = u32::try_from(value).ok()?;
    if item == CheckItem::Dwell {
        return Some(Seconds::from_milliseconds(value));
    }
    let (_, heater, _) = dryer_of(shop, id).filter(|_| item == CheckItem::Belt)?;
    dwell(heater.heated_length?, BeltSpeed::from_micrometres_per_second(value))
}

/// The record of a check that was made for the value that is set now.
fn record_of(run: &Run, item: CheckItem, expected: Option<Expected>) -> Option<&CheckRecord> {
    run.checks.get(&item).filter(|record| Some(&record.expected) == expected.as_ref())
}

fn temperature(value: i64) -> Temperature {
    Temperature::from_milli_celsius(i32::try_from(value).unwrap_or(i32::MAX))
}
