//! How well a component's colour is known, and which drawdown to make next.

use super::characterised::{Knowledge, Strengths, drawdowns_of};
use super::provenance::RestsOn;
use crate::colour::{Lab, Origin, ciede2000};
use crate::facts::{ComponentKind, DrawdownMade, Hiding, Lay, Share};
use crate::ids::Subject;
use crate::ink::recipe::rows::component_name;
use crate::shop::Shop;

/// A drawdown in the list.
#[derive(Clone, Debug, PartialEq)]
pub struct DrawdownLine {
    /// Its event: photos refer to it, deleting it undoes the drawdown.
    pub event: Subject,
    /// Wall time, in milliseconds since 1970-01-01 UTC.
    pub at: u64,
    /// The drawdown as recorded.
    pub made: DrawdownMade,
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
pub enum HowGood {
    /// Not at all.
    Unknown,
    /// It was never drawn down; it is clear, and assumed clear.
    TakenAsClear,
    /// One of its drawdowns contradicts the others.
    Disagrees,
    /// Its absorption is known; its scattering is assumed.
    Half,
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
    pub good: HowGood,
    /// Largest CIEDE2000 between a drawdown and its prediction.
    pub worst: Option<f64>,
    /// Whether every reading behind the constants was a measured curve.
    pub origin: Option<Origin>,
    /// Whether instruments or photos read the drawdowns that were used.
    pub rests_on: RestsOn,
    /// Predicted colour of one film of it alone, over white and over black.
    pub looks: Option<[Lab; 2]>,
    /// Tinting strength learned from corrections.
    pub strength: Strengths,
    /// The drawdown to make next; `None` if no more is needed.
    pub next: Option<NextDrawdown>,
}

/// Bands, of 31, in which K and S must both be determined to be well known: our own.
const ENOUGH_BANDS: usize = 24;
/// CIEDE2000 beyond which a drawdown contradicts the others: our own.
const DISAGREES: f64 = 3.0;
/// Share of the component in the first tint, in percent: common practice, no source.
const TINT: f64 = 10.0;

/// What the drawdowns of a component show; `None` if there is no such component.
pub fn component_colour(shop: &Shop, id: Subject) -> Option<ComponentColour> {
    colour_of(&mut Knowledge::of(shop), id)
}

pub(crate) fn colour_of(knowledge: &mut Knowledge, id: Subject) -> Option<ComponentColour> {
    let shop = knowledge.shop;
    let component = shop.ink.component(id)?;
    let known = knowledge.plain(id);
    let mut lines = Vec::new();
    for (event, made) in drawdowns_of(shop, id).into_iter().rev() {
        let seen = made.seen.lab();
        let said = known.and_then(|known| {
            let parts = knowledge.parts(made)?;
            let drawdown = parts.drawdown();
            Some(drawdown.looks(&known.constants, crate::colour::Surface::NONE)?.lab())
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
    let drawn = known.and_then(|known| known.drawn);
    let missing = missing_of(knowledge, id, component.kind, &lines);
    let (good, next) = match (known, drawn) {
        (None, _) => (HowGood::Unknown, missing),
        (Some(_), None) => (HowGood::TakenAsClear, missing),
        (_, Some(drawn)) if drawn.worst > DISAGREES => (HowGood::Disagrees, again(&lines)),
        // Also if every drawdown exists: what they do not determine is then too small to be seen.
        (_, Some(drawn)) if drawn.told_apart >= ENOUGH_BANDS || missing.is_none() => (HowGood::Good, None),
        (_, Some(_)) => (HowGood::Half, missing),
    };
    let known = known.filter(|known| known.drawn.is_some());
    let looks = known.map(|found| {
        let over =
            |level| found.constants.over(1.0, &crate::colour::Reflectance::flat(level), crate::colour::Surface::NONE);
        [over(0.8).lab(), over(0.01).lab()]
    });
    Some(ComponentColour {
        id,
        name: component.name.clone(),
        kind: component.kind,
        good,
        worst: drawn.map(|found| found.worst),
        origin: known.map(|known| known.constants.origin),
        rests_on: drawn.map(|drawn| drawn.rests_on).unwrap_or_default(),
        looks,
        strength: knowledge.strength(id),
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
    knowledge: &mut Knowledge,
    id: Subject,
    kind: ComponentKind,
    lines: &[DrawdownLine],
) -> Option<NextDrawdown> {
    let over = |light: bool| {
        lines.iter().any(|line| match &line.made.lay {
            Lay::Over { backing, .. } => (backing.lab().l > 50.0) == light,
            Lay::Hiding => false,
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
        move |line: &DrawdownLine| line.made.lay == Lay::Hiding && (line.made.share > least) && line.off.is_some()
    };
    let half = Share::from_percent(50.0);
    let tinted = lines.iter().any(|line| hiding(Share::default())(line) && line.made.share <= half);
    let straight = lines.iter().any(hiding(half));
    match (straight, tinted, white_of(knowledge, id)) {
        (_, false, Some(rest)) => {
            Some(NextDrawdown::Tint { rest, name: component_name(knowledge.shop, rest), percent: TINT })
        }
        (false, _, _) => Some(NextDrawdown::Straight),
        (true, true, _) => None,
        (true, false, None) => over_both(),
    }
}

/// A white to let a pigment down with: opaque, drawn down itself, and the lightest of those.
pub(crate) fn white_of(knowledge: &mut Knowledge, other: Subject) -> Option<Subject> {
    let shop = knowledge.shop;
    let mut best: Option<(f64, Subject)> = None;
    for (id, component) in shop.ink.components() {
        let is_opaque = id != other && component.hiding == Hiding::Opaque;
        let known = is_opaque.then(|| knowledge.plain(id)).flatten();
        let Some(found) = known.filter(|known| known.drawn.is_some()) else { continue };
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
        self.good > HowGood::Unknown
    }
}

/// A component without drawdowns, so that the colour of a mixture cannot be predicted.
#[derive(Clone, Debug, PartialEq)]
pub struct NotDrawn {
    /// Id of the component.
    pub component: Subject,
    /// Its name.
    pub name: String,
    /// The drawdown to make next.
    pub next: Option<NextDrawdown>,
}

pub(crate) fn not_drawn(knowledge: &mut Knowledge, unknown: &[Subject]) -> Vec<NotDrawn> {
    let row = |id: &Subject| {
        let colour = colour_of(knowledge, *id);
        let name = component_name(knowledge.shop, *id);
        NotDrawn { component: *id, name, next: colour.and_then(|colour| colour.next) }
    };
    unknown.iter().map(row).collect()
}
