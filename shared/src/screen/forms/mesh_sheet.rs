//! The form of a mesh's data sheet.

use crate::facts::{MeshCount, MeshSheet};
use crate::form::{FormProblem, Problems, collect_number, collect_optional, trim_number};
use crate::units::{LengthUnit, NumberProblem, parse_number, parse_whole};
use serde::{Deserialize, Serialize};

/// The form of a mesh's data sheet. Micrometres and percent are the same everywhere; the mesh count has a
/// unit of its own, because data sheets use either.
#[derive(Clone, Debug, PartialEq, Default, Serialize, Deserialize)]
#[serde(default)]
pub struct MeshSheetForm {
    /// Number of threads.
    pub count: String,
    /// Whether `count` is per inch or per centimetre.
    pub per: LengthUnit,
    /// Thread diameter in micrometres, or empty.
    pub thread: String,
    /// Opening in micrometres, or empty.
    pub opening: String,
    /// Open area in percent, or empty.
    pub open_area: String,
    /// Thickness in micrometres, or empty.
    pub thickness: String,
    /// Whether the mesh is dyed.
    pub dyed: bool,
}

impl MeshSheetForm {
    /// The form filled in from a data sheet.
    pub fn of(sheet: &MeshSheet) -> Self {
        let um = |value: Option<u16>| value.map(|um| um.to_string()).unwrap_or_default();
        let (count, per) = match sheet.count {
            MeshCount::PerInch(threads) => (threads, LengthUnit::Inches),
            MeshCount::PerCentimetre(threads) => (threads, LengthUnit::Centimetres),
        };
        Self {
            count: count.to_string(),
            per,
            thread: um(sheet.thread_um),
            opening: um(sheet.opening_um),
            open_area: sheet.open_area_permille.map(|share| trim_number(f64::from(share) / 10.0)).unwrap_or_default(),
            thickness: um(sheet.thickness_um),
            dyed: sheet.dyed,
        }
    }

    /// The data sheet, or `None` if nothing was typed. The thread and the opening must each be smaller than
    /// the distance from thread to thread.
    ///
    /// # Errors
    /// [`Problems`] by field: `count`, `thread`, `opening`, `open_area`, `thickness`.
    pub fn check(&self) -> Result<Option<MeshSheet>, Problems> {
        let texts = [&self.count, &self.thread, &self.opening, &self.open_area, &self.thickness];
        if texts.iter().all(|text| text.trim().is_empty()) && !self.dyed {
            return Ok(None);
        }
        let mut problems = Problems::new();
        let p = &mut problems;
        if self.count.trim().is_empty() {
            p.insert("count", FormProblem::Missing);
            return Err(problems);
        }
        let count = collect_number(p, "count", parse_count(&self.count, self.per));
        let pitch = count.and_then(MeshCount::pitch_um).map_or(f64::from(MeshSheet::MAX_UM), f64::floor);
        let um = |text: &str, most: f64| parse_whole(text, 1, most as u32).map(|um| um as u16);
        let thread_um = collect_optional(p, "thread", &self.thread, |text| um(text, pitch));
        let opening_um = collect_optional(p, "opening", &self.opening, |text| um(text, pitch));
        let thickness_um =
            collect_optional(p, "thickness", &self.thickness, |text| um(text, f64::from(MeshSheet::MAX_UM)));
        let open_area_permille = collect_optional(p, "open_area", &self.open_area, |text| {
            parse_number(text, 1.0, 90.0).map(|percent| (percent * 10.0).round() as u16)
        });
        match (count, problems.is_empty()) {
            (Some(count), true) => {
                Ok(Some(MeshSheet { count, thread_um, opening_um, open_area_permille, thickness_um, dyed: self.dyed }))
            }
            _ => Err(problems),
        }
    }
}

/// Parses a mesh count: a whole number of threads per inch or per centimetre.
pub(crate) fn parse_count(text: &str, per: LengthUnit) -> Result<MeshCount, NumberProblem> {
    let (least, most) = match per {
        LengthUnit::Inches => (MeshCount::MIN_PER_INCH, MeshCount::MAX_PER_INCH),
        LengthUnit::Centimetres => (MeshCount::MIN_PER_CENTIMETRE, MeshCount::MAX_PER_CENTIMETRE),
    };
    let threads = parse_whole(text, u32::from(least), u32::from(most))? as u16;
    Ok(match per {
        LengthUnit::Inches => MeshCount::PerInch(threads),
        LengthUnit::Centimetres => MeshCount::PerCentimetre(threads),
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_sheet_reads_back_as_it_was_typed() {
        let form = MeshSheetForm {
            count: "90".into(),
            per: LengthUnit::Centimetres,
            thread: "40".into(),
            opening: "73".into(),
            open_area: "42.5".into(),
            thickness: "59".into(),
            dyed: true,
        };
        let sheet = form.check().unwrap().unwrap();
        assert_eq!(sheet.open_area_permille, Some(425));
        assert!(sheet.in_bounds());
        assert_eq!(MeshSheetForm::of(&sheet), form);
    }

    #[test]
    fn an_opening_wider_than_the_pitch_is_refused() {
        let form = MeshSheetForm { count: "225".into(), opening: "173".into(), ..MeshSheetForm::default() };
        assert_eq!(form.check().unwrap_err()["opening"], FormProblem::Number(NumberProblem::TooHigh { most: 112.0 }));
    }

    #[test]
    fn an_empty_form_is_no_sheet_and_a_sheet_needs_its_count() {
        assert_eq!(MeshSheetForm::default().check(), Ok(None));
        let form = MeshSheetForm { thread: "48".into(), ..MeshSheetForm::default() };
        assert_eq!(form.check().unwrap_err()["count"], FormProblem::Missing);
    }
}
