//! How well is a component's colour known, and what is to be drawn down next?

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
    /// Its event: photos are of it, deleting it takes it back.
    pub event: Subject,
    /// Wall time.
    pub at: u64,
    /// As it was made.
    pub made: DrawdownMade,
    /// The name of its white or base.
    pub rest: String,
    /// What was seen of it.
    pub seen: Lab,
    /// What the constants say that it looks like; none where it could not be used.
    pub said: Option<Lab>,
    /// How far those are apart, CIEDE2000.
    pub off: Option<f64>,
}

/// How good it is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum HowGood {
    /// Nothing is known.
    Unknown,
    /// Nobody drew it down; it is clear, and taken as clear.
    TakenAsClear,
    /// One that disagrees with the others.
    Disagrees,
    /// What it takes away is known for what such a component throws back.
    Half,
    /// What it takes away and what it throws back are both known.
    Good,
}

/// What is to be drawn down next.
#[derive(Clone, Debug, PartialEq)]
pub enum NextDrawdown {
    /// The component alone, so thick that nothing shines through.
    Straight,
    /// Let down with this white or base, so thick that nothing shines through.
    Tint {
        /// With what.
        rest: Subject,
        /// Its name.
        name: String,
        /// How much of the component, in percent.
        percent: f64,
    },
    /// One film over black.
    OverBlack,
    /// One film over white.
    OverWhite,
    /// One of those that are there, again.
    Again(Subject),
}

/// What drawdowns of a component showed.
#[derive(Clone, Debug, PartialEq)]
pub struct ComponentColour {
    /// Which.
    pub id: Subject,
    /// Its name.
    pub name: String,
    /// What it is for.
    pub kind: ComponentKind,
    /// The drawdowns, latest first.
    pub drawdowns: Vec<DrawdownLine>,
    /// How good it is.
    pub good: HowGood,
    /// The worst difference between a drawdown and what is worked out, CIEDE2000.
    pub worst: Option<f64>,
    /// Whether every reading behind it was a measured curve.
    pub origin: Option<Origin>,
    /// Whether instruments or photos read the drawdowns it is worked out from.
    pub rests_on: RestsOn,
    /// What one film of it alone looks like over white and over black, as worked out.
    pub looks: Option<[Lab; 2]>,
    /// What corrections have taught.
    pub strength: Strengths,
    /// What is to be drawn down next; none when nothing more is needed.
    pub next: Option<NextDrawdown>,
}

/// Bands of 31 that must tell K and S apart for a good one: our own.
const ENOUGH_BANDS: usize = 24;
/// A drawdown off by more than this disagrees, CIEDE2000: our own.
const DISAGREES: f64 = 3.0;
/// The first tint, in percent: common practice, no source.
const TINT: f64 = 10.0;

/// What drawdowns of a component showed; none where there is no such component.
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
        // Also where every drawdown is there: what they do not tell apart then is too little to be seen.
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

/// The one that is furthest from the others.
fn again(lines: &[DrawdownLine]) -> Option<NextDrawdown> {
    let worst = lines.iter().max_by(|one, other| one.off.unwrap_or(0.0).total_cmp(&other.off.unwrap_or(0.0)));
    worst.map(|line| NextDrawdown::Again(line.event))
}

/// Of two drawdowns both numbers of every band come: a base over black and over white; a pigment straight and
/// let down with something that throws light back, or over black and over white where the shop has no such.
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

/// A white to let a pigment down with: opaque, drawn down itself, the lightest of them.
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
    /// Whether a mixture with it can be worked out.
    pub fn is_known(&self) -> bool {
        self.good > HowGood::Unknown
    }
}

/// What stands between a mixture and its colour: a component that nobody drew down.
#[derive(Clone, Debug, PartialEq)]
pub struct NotDrawn {
    /// Which.
    pub component: Subject,
    /// Its name.
    pub name: String,
    /// What is to be drawn down next.
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
