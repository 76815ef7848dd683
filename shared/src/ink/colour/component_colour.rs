//! How well a component's colour is known, and which drawdown to make next.

use super::characterised::{ColourantLibrary, LearnedStrength, drawdowns_of};
use super::provenance::ColourProvenance;
use crate::colour::{Lab, Origin, ciede2000};
use crate::facts::{ComponentKind, DrawdownRecord, Hiding, RecordedLayer, Share};
use crate::ids::Subject;
use crate::ink::recipe::rows::component_name;
use crate::shop::Shop;
use crate::time::WallTime;

/// A drawdown in the list.
#[derive(Clone, Debug, PartialEq)]
pub struct DrawdownLine {
    /// Its event: photos refer to it, deleting it undoes the drawdown.
    pub event: Subject,
    /// Wall time.
    pub at: WallTime,
    /// The drawdown as recorded.
    pub made: DrawdownRecord,
    /// Name of its white or base.
    pub rest: String,
    /// Its colour as read.
    pub seen: Lab,
    /// Its colour as predicted from the constants; `None` if the drawdown could not be used.
    pub said: Option<Lab>,
    /// CIEDE2000 between the two.
    pub off: Option<f64>,
}

/// How well a component's colour is known.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum ColourQuality {
    /// Not at all.
    Unknown,
    /// It was never drawn down; it is clear, and assumed clear.
    AssumedClear,
    /// One of its drawdowns contradicts the others.
    Contradictory,
    /// Its absorption is known; its scattering is assumed.
    AbsorptionOnly,
    /// Its absorption and its scattering are both known.
    Good,
}

/// The drawdown to make next.
#[derive(Clone, Debug, PartialEq)]
pub enum NextDrawdown {
    /// The component alone, so thick that nothing shows through.
    Straight,
    /// Let down with this white or base, so thick that nothing shows through.
    Tint {
        /// The white or base.
        rest: Subject,
        /// Its name.
        name: String,
        /// Share of the component, in percent.
        percent: f64,
    },
    /// One film over black.
    OverBlack,
    /// One film over white.
    OverWhite,
    /// One of the existing drawdowns again.
    Again(Subject),
}

/// What the drawdowns of a component show.
#[derive(Clone, Debug, PartialEq)]
pub struct ComponentColour {
    /// Id of the component.
    pub id: Subject,
    /// Its name.
    pub name: String,
    /// Role of the component in an ink.
    pub kind: ComponentKind,
    /// The drawdowns, latest first.
    pub drawdowns: Vec<DrawdownLine>,
    /// How well its colour is known.
    pub quality: ColourQuality,
    /// Largest CIEDE2000 between a drawdown and its prediction.
    pub worst: Option<f64>,
    /// Whether every reading behind the constants was a measured curve.
    pub origin: Option<Origin>,
    /// Whether instruments or photos read the drawdowns that were used.
    pub provenance: ColourProvenance,
    /// Predicted colour of one film of it alone, over white and over black.
    pub one_film_looks: Option<[Lab; 2]>,
    /// Tinting strength learned from corrections.
    pub strength: LearnedStrength,
    /// The drawdown to make next; `None` if no more is needed.
    pub next: Option<NextDrawdown>,
}

/// Bands, of 31, in which K and S must both be determined to be well known: our own.
const ENOUGH_BANDS: usize = 24;
/// CIEDE2000 beyond which a drawdown contradicts the others: our own.
const MAX_FIT_ERROR: f64 = 3.0;
/// Share of the component in the first tint, in percent: common practice, no source.
const TINT: f64 = 10.0;

/// What the drawdowns of a component show; `None` if there is no such component.
pub fn component_colour(shop: &Shop, id: Subject) -> Option<ComponentColour> {
    colour_of(&mut ColourantLibrary::of(shop), id)
}

pub(crate) fn colour_of(library: &mut ColourantLibrary, id: Subject) -> Option<ComponentColour> {
    let shop = library.shop;
    let component = shop.ink.component(id)?;
    let known = library.characterised(id);
    let mut lines = Vec::new();
    for (event, made) in drawdowns_of(shop, id).into_iter().rev() {
        let seen = made.seen.lab();
        let said = known.and_then(|known| {
            let parts = library.owned_drawdown(made)?;
            let drawdown = parts.drawdown();
            Some(drawdown.predict(&known.constants, crate::colour::Surface::NONE)?.lab())
        });
        lines.push(DrawdownLine {
            event,
            at: shop.ink.event(event).map(|row| row.at).unwrap_or_default(),
            made: made.clone(),
            rest: made.rest.map(|rest| component_name(shop, rest)).unwrap_or_default(),
            seen,
            said,
            off: said.map(|said| ciede2000(said, seen)),
        });
    }
    let drawn = known.and_then(|known| known.fit);
    let missing = missing_of(library, id, component.kind, &lines);
    let (quality, next) = match (known, drawn) {
        (None, _) => (ColourQuality::Unknown, missing),
        (Some(_), None) => (ColourQuality::AssumedClear, missing),
        (_, Some(drawn)) if drawn.worst > MAX_FIT_ERROR => (ColourQuality::Contradictory, again(&lines)),
        // Also if every drawdown exists: what they do not determine is then too small to be seen.
        (_, Some(drawn)) if drawn.resolved_bands >= ENOUGH_BANDS || missing.is_none() => (ColourQuality::Good, None),
        (_, Some(_)) => (ColourQuality::AbsorptionOnly, missing),
    };
    let known = known.filter(|known| known.fit.is_some());
    let one_film_looks = known.map(|found| {
        let over =
            |level| found.constants.over(1.0, &crate::colour::Reflectance::flat(level), crate::colour::Surface::NONE);
        [over(0.8).lab(), over(0.01).lab()]
    });
    Some(ComponentColour {
        id,
        name: component.name.clone(),
        kind: component.kind,
        quality,
        worst: drawn.map(|found| found.worst),
        origin: known.map(|known| known.constants.origin),
        provenance: drawn.map(|drawn| drawn.provenance).unwrap_or_default(),
        one_film_looks,
        strength: library.strength(id),
        next,
        drawdowns: lines,
    })
}

/// The drawdown furthest from its prediction.
fn again(lines: &[DrawdownLine]) -> Option<NextDrawdown> {
    let worst = lines.iter().max_by(|one, other| one.off.unwrap_or(0.0).total_cmp(&other.off.unwrap_or(0.0)));
    worst.map(|line| NextDrawdown::Again(line.event))
}

/// The next of the two drawdowns that determine both constants of every band: of a base over black and over white; of a
/// pigment straight and let down with something opaque, or over black and over white if the shop has no opaque white.
fn missing_of(
    library: &mut ColourantLibrary,
    id: Subject,
    kind: ComponentKind,
    lines: &[DrawdownLine],
) -> Option<NextDrawdown> {
    let over = |light: bool| {
        lines.iter().any(|line| match &line.made.lay {
            RecordedLayer::Over { backing, .. } => (backing.lab().l > 50.0) == light,
            RecordedLayer::Hiding => false,
        })
    };
    let over_both = || match (over(false), over(true)) {
        (false, _) => Some(NextDrawdown::OverBlack),
        (true, false) => Some(NextDrawdown::OverWhite),
        (true, true) => None,
    };
    if kind != ComponentKind::Pigment {
        return over_both();
    }
    let hiding = |least: Share| {
        move |line: &DrawdownLine| {
            line.made.lay == RecordedLayer::Hiding && (line.made.share > least) && line.off.is_some()
        }
    };
    let half = Share::from_percent(50.0);
    let tinted = lines.iter().any(|line| hiding(Share::default())(line) && line.made.share <= half);
    let straight = lines.iter().any(hiding(half));
    match (straight, tinted, white_of(library, id)) {
        (_, false, Some(rest)) => {
            Some(NextDrawdown::Tint { rest, name: component_name(library.shop, rest), percent: TINT })
        }
        (false, _, _) => Some(NextDrawdown::Straight),
        (true, true, _) => None,
        (true, false, None) => over_both(),
    }
}

/// A white to let a pigment down with: opaque, drawn down itself, and the lightest of those.
pub(crate) fn white_of(library: &mut ColourantLibrary, other: Subject) -> Option<Subject> {
    let shop = library.shop;
    let mut best: Option<(f64, Subject)> = None;
    for (id, component) in shop.ink.components() {
        let is_opaque = id != other && component.hiding == Hiding::Opaque;
        let known = is_opaque.then(|| library.characterised(id)).flatten();
        let Some(found) = known.filter(|known| known.fit.is_some()) else { continue };
        let look = found.constants.in_bulk(crate::colour::Surface::NONE).lab();
        if look.l > 80.0 && best.is_none_or(|(least, _)| look.l > least) {
            best = Some((look.l, id));
        }
    }
    best.map(|(_, id)| id)
}

impl ComponentColour {
    /// Whether a mixture with it can be predicted.
    pub fn is_known(&self) -> bool {
        self.quality > ColourQuality::Unknown
    }
}

/// A component without drawdowns, so that the colour of a mixture cannot be predicted.
#[derive(Clone, Debug, PartialEq)]
pub struct Uncharacterised {
    /// Id of the component.
    pub component: Subject,
    /// Its name.
    pub name: String,
    /// The drawdown to make next.
    pub next: Option<NextDrawdown>,
}

pub(crate) fn uncharacterised(library: &mut ColourantLibrary, unknown: &[Subject]) -> Vec<Uncharacterised> {
    let row = |id: &Subject| {
        let colour = colour_of(library, *id);
        let name = component_name(library.shop, *id);
        Uncharacterised { component: *id, name, next: colour.and_then(|colour| colour.next) }
    };
    unknown.iter().map(row).collect()
}
