//! What the data sheet of a mesh says. **Frozen** as [`crate::facts::Fact`] is: a screen's facts hold it.
//!
//! Kept as printed, in the sheet's own count: 225 an inch and 90 a centimetre are sold as the same
//! mesh and are 1.6 % apart. Opening and open area are never derived from the nominal thread: woven
//! threads flatten, and fine meshes then come out up to twice as open as they are.

use crate::codec::Encode;
use serde::{Deserialize, Serialize};

/// Number of threads per unit of length, in the unit of the sheet.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, Encode)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum MeshCount {
    /// Threads per inch.
    PerInch(u16),
    /// Threads per centimetre.
    PerCentimetre(u16),
}

impl MeshCount {
    /// Distance from the middle of one thread to the middle of the next, in micrometres; `None` for zero
    /// threads.
    pub fn pitch_um(self) -> Option<f64> {
        match self {
            Self::PerInch(0) | Self::PerCentimetre(0) => None,
            Self::PerInch(threads) => Some(25_400.0 / f64::from(threads)),
            Self::PerCentimetre(threads) => Some(10_000.0 / f64::from(threads)),
        }
    }

    /// Threads per inch, rounded, as a run's set-up counts them.
    ///
    /// ```
    /// use lastpull_core::screen::MeshCount;
    ///
    /// assert_eq!(MeshCount::PerInch(225).per_inch(), 225);
    /// assert_eq!(MeshCount::PerCentimetre(90).per_inch(), 229);
    /// ```
    pub fn per_inch(self) -> u16 {
        match self {
            Self::PerInch(threads) => threads,
            Self::PerCentimetre(threads) => (f64::from(threads) * 2.54).round() as u16,
        }
    }

    /// Whether the count is plausible: meshes are woven from about 10 to 500 threads per inch, and a little
    /// more is accepted.
    pub(crate) fn in_bounds(self) -> bool {
        match self {
            Self::PerInch(threads) => (Self::MIN_PER_INCH..=Self::MAX_PER_INCH).contains(&threads),
            Self::PerCentimetre(threads) => (Self::MIN_PER_CENTIMETRE..=Self::MAX_PER_CENTIMETRE).contains(&threads),
        }
    }

    pub(crate) const MIN_PER_INCH: u16 = 10;
    pub(crate) const MAX_PER_INCH: u16 = 600;
    pub(crate) const MIN_PER_CENTIMETRE: u16 = 4;
    pub(crate) const MAX_PER_CENTIMETRE: u16 = 240;
}

/// The properties of a mesh that affect its exposure.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, Encode)]
#[serde(deny_unknown_fields)]
pub struct MeshCloth {
    /// Its count.
    pub count: MeshCount,
    /// Diameter of the thread before weaving, in micrometres.
    pub thread_um: Option<u16>,
    /// Whether it is dyed yellow or amber, which reduces light scatter in the threads: dyed mesh needs
    /// longer exposures (common practice, no source).
    pub dyed: bool,
}

impl MeshCloth {
    /// Whether every value is within its limits; see [`crate::journal::JournalFact::in_bounds`].
    pub(crate) fn in_bounds(&self) -> bool {
        self.count.in_bounds() && self.thread_um.is_none_or(|um| um <= MeshSheet::MAX_UM)
    }
}

/// The data sheet of a mesh.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, Encode)]
#[serde(deny_unknown_fields)]
pub struct MeshSheet {
    /// Its count.
    pub count: MeshCount,
    /// Diameter of the thread before weaving, in micrometres.
    pub thread_um: Option<u16>,
    /// Width of the opening between two threads, in micrometres.
    pub opening_um: Option<u16>,
    /// Open share of the mesh, in thousandths.
    pub open_area_permille: Option<u16>,
    /// Thickness of the woven mesh, in micrometres.
    pub thickness_um: Option<u16>,
    /// Whether it is dyed, yellow or amber.
    pub dyed: bool,
}

impl MeshSheet {
    /// Upper limit of all lengths, in micrometres: more than any thread, opening or mesh for garment
    /// printing.
    pub(crate) const MAX_UM: u16 = 2_000;

    /// The sheet of a mesh of which only the count is known.
    pub fn of_count(count: MeshCount) -> Self {
        Self { count, thread_um: None, opening_um: None, open_area_permille: None, thickness_um: None, dyed: false }
    }

    /// The sheet of a mesh of which only the exposure properties are known.
    pub fn of_cloth(cloth: &MeshCloth) -> Self {
        Self { thread_um: cloth.thread_um, dyed: cloth.dyed, ..Self::of_count(cloth.count) }
    }

    /// The properties that affect its exposure.
    pub fn cloth(&self) -> MeshCloth {
        MeshCloth { count: self.count, thread_um: self.thread_um, dyed: self.dyed }
    }

    /// Whether every value is within its limits; see [`crate::journal::JournalFact::in_bounds`].
    pub fn in_bounds(&self) -> bool {
        let um = |value: Option<u16>| value.is_none_or(|um| (1..=Self::MAX_UM).contains(&um));
        self.count.in_bounds()
            && um(self.thread_um)
            && um(self.opening_um)
            && um(self.thickness_um)
            && self.open_area_permille.is_none_or(|share| (1..1_000).contains(&share))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_sheet_keeps_the_count_it_was_printed_with() {
        let sheet = MeshSheet { thread_um: Some(40), ..MeshSheet::of_count(MeshCount::PerCentimetre(90)) };
        let json = serde_json::to_string(&sheet).unwrap();
        assert_eq!(
            json,
            r#"{"count":{"per_centimetre":90},"thread_um":40,"opening_um":null,"open_area_permille":null,"thickness_um":null,"dyed":false}"#
        );
        assert_eq!(serde_json::from_str::<MeshSheet>(&json).unwrap(), sheet);
        assert_eq!(sheet.count.per_inch(), 229);
    }

    #[test]
    fn a_sheet_with_an_unknown_field_is_refused() {
        let json = r#"{"count":{"per_inch":90},"thread_um":null,"opening_um":null,"open_area_permille":null,"thickness_um":null,"dyed":false,"weave":1}"#;
        assert!(serde_json::from_str::<MeshSheet>(json).is_err());
    }

    #[test]
    fn zero_threads_have_no_pitch_and_are_out_of_bounds() {
        for count in [MeshCount::PerInch(0), MeshCount::PerCentimetre(0)] {
            assert_eq!(count.pitch_um(), None);
            assert!(!MeshSheet::of_count(count).in_bounds());
        }
        assert!(MeshSheet::of_count(MeshCount::PerInch(156)).in_bounds());
    }
}
