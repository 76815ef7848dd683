//! The drawdown form.

use crate::facts::{DrawdownMade, Film, InkFact, Lay, Share, SwatchSeen};
use crate::form::{FormProblem, Problems, keep, keep_number, name, required};
use crate::ids::Subject;
use crate::ink::{NextDrawdown, component_colour};
use crate::shop::Shop;
use crate::units::{parse_number, parse_whole};

/// How the ink is applied, as offered in a form.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Default)]
pub enum LayKind {
    /// So thick that nothing shows through.
    #[default]
    Hiding,
    /// A film over white.
    OverWhite,
    /// A film over black.
    OverBlack,
}

impl LayKind {
    /// All, in the order they are offered.
    pub const ALL: [Self; 3] = [Self::Hiding, Self::OverWhite, Self::OverBlack];
}

/// The form of a drawdown.
#[derive(Clone, Debug, PartialEq)]
pub struct DrawdownForm {
    /// Share of the component, in percent.
    pub share: String,
    /// The white or base that makes up the rest.
    pub rest: Option<Subject>,
    /// How the ink is applied.
    pub lay: LayKind,
    /// Whether it was drawn with a bar; otherwise it was printed.
    pub bar: bool,
    /// Number of hits.
    pub hits: String,
    /// Wet thickness of the bar's film, in micrometres.
    pub wet: String,
    /// Wet thickness of one of the shop's hits, in micrometres.
    pub a_hit: String,
    /// What was read of the backing; an opacity chart is assumed if nothing was.
    pub backing: Option<SwatchSeen>,
    /// What was read of the drawdown.
    pub seen: Option<SwatchSeen>,
    /// Free note.
    pub note: String,
}

impl Default for DrawdownForm {
    fn default() -> Self {
        Self {
            share: "100".into(),
            rest: None,
            lay: LayKind::Hiding,
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
            Some(NextDrawdown::OverBlack) => form.lay = LayKind::OverBlack,
            Some(NextDrawdown::OverWhite) => form.lay = LayKind::OverWhite,
            Some(NextDrawdown::Again(event)) => {
                if let Some(line) = again(event) {
                    form.share = line.made.share.text();
                    form.rest = line.made.rest;
                    form.lay = kind_of(&line.made.lay);
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
        let share = keep(p, "share", required(&self.share, |text| Share::parse(text, 0.1, 100.0)));
        let rest = self.rest.filter(|_| share.is_none_or(|share| share < Share::WHOLE));
        if rest.is_none() && share.is_some_and(|share| share < Share::WHOLE) || rest == Some(component) {
            p.insert("rest", FormProblem::Missing);
        }
        let film = match (self.lay, self.bar) {
            (LayKind::Hiding, _) => None,
            (_, false) => keep_number(p, "hits", parse_whole(&self.hits, 1, 20)).map(|hits| Film::Hits(hits as u8)),
            (_, true) => {
                let wet = keep(p, "wet", required(&self.wet, |text| parse_number(text, 1.0, 2_000.0)));
                let a_hit = keep(p, "a_hit", required(&self.a_hit, |text| parse_number(text, 1.0, 2_000.0)));
                wet.zip(a_hit).map(|(um, a_hit)| Film::Wet { um: um.round() as u16, a_hit: a_hit.round() as u16 })
            }
        };
        let backing = |chart: SwatchSeen| self.backing.clone().unwrap_or(chart);
        let lay = match (self.lay, film) {
            (LayKind::Hiding, _) => Some(Lay::Hiding),
            (LayKind::OverWhite, Some(film)) => Some(Lay::Over { film, backing: backing(SwatchSeen::CHART_WHITE) }),
            (LayKind::OverBlack, Some(film)) => Some(Lay::Over { film, backing: backing(SwatchSeen::CHART_BLACK) }),
            _ => None,
        };
        if self.seen.is_none() {
            p.insert("seen", FormProblem::Missing);
        }
        let note = keep(p, "note", name(&self.note, 2_000));
        match (share, lay, self.seen.clone(), note) {
            (Some(share), Some(lay), Some(seen), Some(note)) if problems.is_empty() => {
                let by = by.map(str::to_owned);
                Ok(InkFact::DrawnDown(DrawdownMade { component, share, rest, lay, seen, note, by }))
            }
            _ => Err(problems),
        }
    }
}

/// A recorded layer as offered in a form.
pub fn kind_of(lay: &Lay) -> LayKind {
    match lay {
        Lay::Hiding => LayKind::Hiding,
        Lay::Over { backing, .. } if backing.lab().l > 50.0 => LayKind::OverWhite,
        Lay::Over { .. } => LayKind::OverBlack,
    }
}
