//! The temperature measured at the dryer for a run, compared with limits and cure before any tolerance.

use super::on_paper::{LimitCheck, LimitState, check_limits};
use super::sheets::sheet_for;
use crate::facts::{CheckItem, CheckOutcome, Expected};
use crate::run::Run;
use crate::shop::Shop;
use crate::units::{Temperature, TemperatureDelta};

/// What a measured temperature breaches, however close it is to the setting.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum MeasuredBreach {
    /// It is at a limit of the fabric or the ink, or above it.
    Limit(LimitCheck),
    /// It is below the ink's cure temperature.
    BelowCure {
        /// Cure temperature on the ink's sheet.
        cure: Temperature,
        /// How far below it.
        short: TemperatureDelta,
    },
}

/// The temperature measured for a run's dryer check; `None` if it was not measured, or was measured for another
/// setting.
pub(crate) fn measured_at_dryer(run: &Run) -> Option<Temperature> {
    let record = run.checks.get(&CheckItem::Dryer)?;
    let same_setting = run.set_up.dryer.is_some_and(|setting| record.expected == Expected::Temperature(setting));
    match record.outcome {
        CheckOutcome::Measured(value) if same_setting => i32::try_from(value).ok().map(Temperature::from_milli_celsius),
        CheckOutcome::Measured(_) | CheckOutcome::Ticked | CheckOutcome::Skipped | CheckOutcome::Cleared => None,
    }
}

/// What a temperature measured at the print breaches: the lowest limit of fabric and ink that it reaches, else the
/// ink's cure temperature if it stays below. `None` if it breaches nothing that is known.
pub(crate) fn measured_breach(shop: &Shop, run: &Run, measured: Temperature) -> Option<MeasuredBreach> {
    let fabric = run.lot.and_then(|lot| shop.lot(lot)).map(|lot| lot.fabric);
    let figures = sheet_for(shop, &run.ink).map(|(_, sheet)| sheet.figures);
    let limits = check_limits(shop, fabric, figures.as_ref(), Some(measured));
    let exceeded = limits.into_iter().filter(|limit| limit.state == LimitState::Exceeded);
    if let Some(lowest) = exceeded.min_by_key(|limit| limit.limit) {
        return Some(MeasuredBreach::Limit(lowest));
    }
    let cure = figures?.cure.filter(|cure| measured < *cure)?;
    Some(MeasuredBreach::BelowCure { cure, short: TemperatureDelta::between(measured, cure) })
}
