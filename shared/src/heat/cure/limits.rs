//! How much heat a fabric withstands before its dye migrates into the print, and before it scorches.
//!
//! Published figures differ. If they do, the lower is the default, the other is shown with it, and the shop
//! may set its own.

use crate::facts::{Fabric, LimitKind};
use crate::shop::Shop;
use crate::units::Temperature;

/// Source of a limit.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LimitOrigin {
    /// An ink maker's bulletin "Dye Migration": disperse dye starts to move at 265 °F.
    MakersBulletin,
    /// A trade magazine's glossary and a print shop's page: dye migration at 280 °F.
    TradeGlossary,
    /// A garment distributor's page on curing: on synthetics choose an ink that cures at or below 300 °F.
    DistributorsPage,
    /// Common practice, no source.
    CommonPractice,
    /// The figure of polyester, which counts only if the canvas is polyester; most is cotton.
    IfPolyester,
    /// Our own: no figure was found for this fabric, so the most cautious one of the others is used.
    OurOwn,
    /// Set by the shop.
    Shop,
    /// The ink maker's sheet, as the shop entered it.
    InkSheet,
}

/// A heat limit of a fabric.
#[derive(Clone, Debug, PartialEq)]
pub struct FabricLimit {
    /// The fabric.
    pub fabric: Fabric,
    /// Kind of limit.
    pub kind: LimitKind,
    /// Temperature of the print at which the limit counts as exceeded.
    pub temperature: Temperature,
    /// Source of the temperature.
    pub origin: LimitOrigin,
    /// The default that the shop's own limit replaces, if any.
    pub instead_of: Option<(Temperature, LimitOrigin)>,
    /// Another published figure that is less cautious.
    pub also_published: Option<(Temperature, LimitOrigin)>,
    /// The shop's note on its own limit.
    pub note: String,
}

impl FabricLimit {
    /// Whether the shop's own limit allows more heat than the default.
    pub fn is_raised(&self) -> bool {
        self.instead_of.is_some_and(|(default, _)| self.temperature > default)
    }
}

/// The cautious default. `None` if heat of a dryer is no known danger to the fabric.
fn default_of(fabric: Fabric, kind: LimitKind) -> Option<(Temperature, LimitOrigin)> {
    use LimitOrigin::{CommonPractice, DistributorsPage, IfPolyester, MakersBulletin, OurOwn};
    let (degrees, origin) = match (fabric, kind) {
        (Fabric::Cotton, LimitKind::DyeMigration) => return None,
        (Fabric::Canvas, LimitKind::DyeMigration) => (265.0, IfPolyester),
        (Fabric::Cotton | Fabric::Canvas, LimitKind::Scorch) => (375.0, CommonPractice),
        (Fabric::Polyester | Fabric::Blend | Fabric::TriBlend, LimitKind::DyeMigration) => (265.0, MakersBulletin),
        (Fabric::Nylon | Fabric::Other, LimitKind::DyeMigration) => (265.0, OurOwn),
        (Fabric::Other, LimitKind::Scorch) => (300.0, OurOwn),
        (Fabric::Polyester | Fabric::Blend | Fabric::TriBlend | Fabric::Nylon, LimitKind::Scorch) => {
            (300.0, DistributorsPage)
        }
    };
    Some((Temperature::from_fahrenheit(degrees), origin))
}

/// A fabric's limit in this shop: its own, or else the cautious default. `None` if there is neither.
pub fn fabric_limit(shop: &Shop, fabric: Fabric, kind: LimitKind) -> Option<FabricLimit> {
    let default = default_of(fabric, kind);
    let own = shop.heat.own_limit(fabric, kind);
    let (temperature, origin) = own.map(|own| (own.temperature, LimitOrigin::Shop)).or(default)?;
    let published = default.is_some_and(|(_, origin)| origin == LimitOrigin::MakersBulletin);
    Some(FabricLimit {
        fabric,
        kind,
        temperature,
        origin,
        instead_of: default.filter(|_| own.is_some()),
        also_published: published.then(|| (Temperature::from_fahrenheit(280.0), LimitOrigin::TradeGlossary)),
        note: own.map(|own| own.note.clone()).unwrap_or_default(),
    })
}

/// All limits of all fabrics, for the page where the shop sets its own.
pub fn fabric_limits(shop: &Shop) -> Vec<FabricLimit> {
    let both = [LimitKind::DyeMigration, LimitKind::Scorch];
    Fabric::ALL.into_iter().flat_map(|fabric| both.map(|kind| fabric_limit(shop, fabric, kind))).flatten().collect()
}
