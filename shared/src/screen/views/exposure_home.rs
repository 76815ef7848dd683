//! The way in to exposing and reclaiming: one figure each.

use super::bath::bath_view;
use super::mesh::mesh_rows;
use crate::facts::ScreenState;
use crate::screen::{BathPace, BathTrend, emulsion_list, lamp_list};
use crate::shop::Shop;

/// One figure of each.
#[derive(Clone, Debug, PartialEq)]
pub struct StencilHome {
    /// Exposures known.
    pub exposures: usize,
    /// Lamps.
    pub lamps: usize,
    /// Emulsions.
    pub emulsions: usize,
    /// How fast the bath is.
    pub pace: Option<BathPace>,
    /// Whether it slows down; none where no charge was recorded.
    pub trend: Option<BathTrend>,
    /// Screens in the bath.
    pub in_bath: u32,
    /// Screens that wait for it.
    pub waiting: u32,
    /// Meshes on the shop's screens.
    pub meshes: usize,
    /// Those whose data sheet says enough for an ink volume.
    pub full_sheets: usize,
}

/// The figures at wall time `now`.
pub fn stencil_home(shop: &Shop, now: u64) -> StencilHome {
    let waiting = waiting_screens(shop);
    let bath = bath_view(shop, waiting, now);
    let meshes = mesh_rows(shop);
    StencilHome {
        exposures: shop.stencils.exposures().count(),
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

/// How many screens wait to be reclaimed.
pub fn waiting_screens(shop: &Shop) -> u32 {
    shop.screens.iter().filter(|(_, screen)| screen.state == ScreenState::ToReclaim).count() as u32
}
