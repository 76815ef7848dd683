//! The drawdown form.

use crate::facts::{DrawdownRecord, Film, InkFact, RecordedLayer, Share, SwatchMeasurement};
use crate::form::{FormProblem, Problems, TYPED_NOTE, collect, collect_number, parse_required, parse_text};
use crate::ids::Subject;
use crate::ink::{NextDrawdown, component_colour};
use crate::shop::Shop;
use crate::units::{parse_number, parse_whole};
use serde::{Deserialize, Serialize};

/// How the ink is applied, as offered in a form.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Default, Serialize, Deserialize)]
pub enum LayerKind {
    /// So thick that nothing shows through.
    #[default]
    Hiding,
    /// A film over white.
    OverWhite,
    /// A film over black.
    OverBlack,
}

impl LayerKind {
    /// All, in the order they are offered.
    pub const ALL: [Self; 3] = [Self::Hiding, Self::OverWhite, Self::OverBlack];
}

/// The form of a drawdown.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct DrawdownForm {
    /// Share of the component, in percent.
    pub share: String,
    /// The white or base that makes up the rest.
    pub rest: Option<Subject>,
    /// How the ink is applied.
    pub lay: LayerKind,
    /// Whether it was drawn with a bar; otherwise it was printed.
    pub bar: bool,
    /// Number of hits.
    pub hits: String,
    /// Wet thickness of the bar's film, in micrometres.
    pub wet: String,
    /// Wet thickness of one of the shop's hits, in micrometres.
    pub a_hit: String,
    /// What was read of the backing; an opacity chart is assumed if nothing was.
    pub backing: Option<SwatchMeasurement>,
    /// What was read of the drawdown.
    pub seen: Option<SwatchMeasurement>,
    /// Free note.
    pub note: String,
}

impl Default for DrawdownForm {
    fn default() -> Self {
        Self {
            share: "100".into(),
            rest: None,
            lay: LayerKind::Hiding,
            bar: false,
            hits: "1".into(),
            wet: String::new(),
            a_hit: String::new(),
            backing: None,
            seen: None,
            note: String::new(),
        }
    }
}

impl DrawdownForm {
    /// The form for the drawdown to make next; one to repeat fills in its share, its white or base, and how it was
    /// applied.
    pub fn next(shop: &Shop, component: Subject) -> Self {
        let mut form = Self::default();
        let Some(colour) = component_colour(shop, component) else { return form };
        let again = |event: &Subject| colour.drawdowns.iter().find(|line| line.event == *event);
        match &colour.next {
            Some(NextDrawdown::Tint { rest, percent, .. }) => {
                (form.rest, form.share) = (Some(*rest), percent.to_string());
            }
            Some(NextDrawdown::OverBlack) => form.lay = LayerKind::OverBlack,
            Some(NextDrawdown::OverWhite) => form.lay = LayerKind::OverWhite,
            Some(NextDrawdown::Again(event)) => {
                if let Some(line) = again(event) {
                    form.share = line.made.share.text();
                    form.rest = line.made.rest;
                    form.lay = layer_kind(&line.made.lay);
                }
            }
            Some(NextDrawdown::Straight) | None => {}
        }
        form
    }

    /// The drawdown, or what is wrong.
    ///
    /// # Errors
    /// [`Problems`] by field: `share`, `rest`, `hits`, `wet`, `a_hit`, `seen`, `note`.
    pub fn check(&self, component: Subject, by: Option<&str>) -> Result<InkFact, Problems> {
        let mut problems = Problems::new();
        let p = &mut problems;
        let share = collect(p, "share", parse_required(&self.share, |text| Share::parse(text, 0.1, 100.0)));
        let rest = self.rest.filter(|_| share.is_none_or(|share| share < Share::WHOLE));
        if rest.is_none() && share.is_some_and(|share| share < Share::WHOLE) || rest == Some(component) {
            p.insert("rest", FormProblem::Missing);
        }
        let film = match (self.lay, self.bar) {
            (LayerKind::Hiding, _) => None,
            (LayerKind::OverWhite | LayerKind::OverBlack, false) => {
                collect_number(p, "hits", parse_whole(&self.hits, 1, 20)).map(|hits| Film::Hits(hits as u8))
            }
            (LayerKind::OverWhite | LayerKind::OverBlack, true) => {
                let wet = collect(p, "wet", parse_required(&self.wet, |text| parse_number(text, 1.0, 2_000.0)));
                let a_hit = collect(p, "a_hit", parse_required(&self.a_hit, |text| parse_number(text, 1.0, 2_000.0)));
                wet.zip(a_hit).map(|(um, a_hit)| Film::Wet { um: um.round() as u16, a_hit: a_hit.round() as u16 })
            }
        };
        let backing = |chart: SwatchMeasurement| self.backing.clone().unwrap_or(chart);
        let lay = match (self.lay, film) {
            (LayerKind::Hiding, _) => Some(RecordedLayer::Hiding),
            (LayerKind::OverWhite, Some(film)) => {
                Some(RecordedLayer::Over { film, backing: backing(SwatchMeasurement::CHART_WHITE) })
            }
            (LayerKind::OverBlack, Some(film)) => {
                Some(RecordedLayer::Over { film, backing: backing(SwatchMeasurement::CHART_BLACK) })
            }
            (LayerKind::OverWhite | LayerKind::OverBlack, None) => None,
        };
        if self.seen.is_none() {
            p.insert("seen", FormProblem::Missing);
        }
        let note = collect(p, "note", parse_text(&self.note, TYPED_NOTE));
        match (share, lay, self.seen.clone(), note) {
            (Some(share), Some(lay), Some(seen), Some(note)) if problems.is_empty() => {
                let by = by.map(str::to_owned);
                Ok(InkFact::DrawnDown(DrawdownRecord { component, share, rest, lay, seen, note, by }))
            }
            _ => Err(problems),
        }
    }
}

/// A recorded layer as offered in a form.
pub fn layer_kind(lay: &RecordedLayer) -> LayerKind {
    match lay {
        RecordedLayer::Hiding => LayerKind::Hiding,
        RecordedLayer::Over { backing, .. } if backing.lab().l > 50.0 => LayerKind::OverWhite,
        RecordedLayer::Over { .. } => LayerKind::OverBlack,
    }
}
