//! The figures on the start page of exposure and reclaiming.

use super::bath::bath_view;
use super::mesh::mesh_rows;
use crate::facts::ScreenState;
use crate::screen::{BathPace, BathTrend, emulsion_list, lamp_list};
use crate::shop::Shop;
use crate::time::WallTime;

/// The figures on the start page of exposure and reclaiming.
#[derive(Clone, Debug, PartialEq)]
pub struct ExposureHome {
    /// Number of known exposures.
    pub exposures: usize,
    /// Number of lamps.
    pub lamps: usize,
    /// Number of emulsions.
    pub emulsions: usize,
    /// The speed of the bath.
    pub pace: Option<BathPace>,
    /// The trend of the bath; `None` if no charge was recorded.
    pub trend: Option<BathTrend>,
    /// Number of screens in the bath.
    pub in_bath: u32,
    /// Number of screens that wait for it.
    pub waiting: u32,
    /// Number of meshes on the shop's screens.
    pub meshes: usize,
    /// Number of those whose data sheet has enough values for an ink volume.
    pub full_sheets: usize,
}

/// The figures at wall time `now`.
pub fn exposure_home(shop: &Shop, now: WallTime) -> ExposureHome {
    let waiting = waiting_screens(shop);
    let bath = bath_view(shop, waiting, now);
    let meshes = mesh_rows(shop);
    ExposureHome {
        exposures: shop.exposure_log.exposures().count(),
        lamps: lamp_list(shop).len(),
        emulsions: emulsion_list(shop).len(),
        pace: bath.pace,
        trend: bath.trend,
        in_bath: bath.in_bath.iter().map(|row| u32::from(row.count)).sum(),
        waiting,
        meshes: meshes.len(),
        full_sheets: meshes.iter().filter(|row| row.is_full()).count(),
    }
}

/// Number of screens that wait to be reclaimed.
pub fn waiting_screens(shop: &Shop) -> u32 {
    shop.screens.iter().filter(|(_, screen)| screen.state == ScreenState::ToReclaim).count() as u32
}
