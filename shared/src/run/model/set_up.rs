//! How press, flash and dryer are set up for a run.

use crate::codec::Encode;
use crate::facts::{Flash, RunField};
use crate::units::{BeltSpeed, Length, Seconds, Temperature};

/// The set-up of a run. Unknown fields are empty.
#[derive(Clone, Debug, PartialEq, Encode)]
pub struct SetUp {
    /// Labels of the screens.
    pub screens: String,
    /// Mesh count in threads per inch.
    pub mesh: Option<u16>,
    /// Flash settings; `None` for no flash.
    pub flash: Option<Flash>,
    /// Number of strokes that print ink.
    pub hits: u8,
    /// Dryer setting.
    pub dryer: Option<Temperature>,
    /// Belt speed of the dryer.
    pub belt: Option<BeltSpeed>,
    /// Dwell: time in the heat for one pass.
    pub dwell: Option<Seconds>,
    /// Passes through the dryer.
    pub passes: u8,
    /// The squeegee.
    pub squeegee: String,
    /// Off-contact: gap between screen and garment.
    pub off_contact: Option<Length>,
    /// Distance from the bottom of the collar seam to the top of the print.
    pub below_collar: Option<Length>,
    /// Other notes on placement.
    pub placement: String,
}

impl Default for SetUp {
    fn default() -> Self {
        Self {
            screens: String::new(),
            mesh: None,
            flash: None,
            hits: 1,
            dryer: None,
            belt: None,
            dwell: None,
            passes: 1,
            squeegee: String::new(),
            off_contact: None,
            below_collar: None,
            placement: String::new(),
        }
    }
}

impl SetUp {
    /// Sets a field of the set-up. Fields of the run itself change nothing here.
    pub(crate) fn set(&mut self, field: &RunField) {
        match field {
            RunField::Screens(screens) => self.screens.clone_from(screens),
            RunField::Mesh(mesh) => self.mesh = *mesh,
            RunField::Flash(flash) => self.flash = *flash,
            RunField::Hits(hits) => self.hits = *hits,
            RunField::Dryer(dryer) => self.dryer = *dryer,
            RunField::Belt(belt) => self.belt = *belt,
            RunField::Dwell(dwell) => self.dwell = *dwell,
            RunField::Passes(passes) => self.passes = *passes,
            RunField::Squeegee(squeegee) => self.squeegee.clone_from(squeegee),
            RunField::OffContact(gap) => self.off_contact = *gap,
            RunField::BelowCollar(length) => self.below_collar = *length,
            RunField::Placement(text) => self.placement.clone_from(text),
            RunField::Lot(_)
            | RunField::Location(_)
            | RunField::Ink(_)
            | RunField::InkColour(_)
            | RunField::Guess(_) => {}
        }
    }

    /// The set-up as fields, for a new run that copies it.
    pub fn fields(&self) -> Vec<RunField> {
        vec![
            RunField::Screens(self.screens.clone()),
            RunField::Mesh(self.mesh),
            RunField::Flash(self.flash),
            RunField::Hits(self.hits),
            RunField::Dryer(self.dryer),
            RunField::Belt(self.belt),
            RunField::Dwell(self.dwell),
            RunField::Passes(self.passes),
            RunField::Squeegee(self.squeegee.clone()),
            RunField::OffContact(self.off_contact),
            RunField::BelowCollar(self.below_collar),
            RunField::Placement(self.placement.clone()),
        ]
    }
}
