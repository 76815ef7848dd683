//! Colours of the invented shop: drawdowns of its components, a target, and swatches of a pot being
//! corrected.
//!
//! The true inks are invented: absorption curves made of humps, put through the core's own model of films
//! and mixtures, so that all observed colours are consistent. Blue is slightly stronger in the pot than in
//! its drawdowns, which the shop can discover.

use super::ink::shelf::DemoInks;
use super::language::{INES, MOSS};
use super::maker::Maker;
use crate::colour::{BANDS, Colour, Constants, Lab, Origin, Print, Reflectance, Surface, Viewing, smoothest};
use crate::facts::{
    DrawdownRecord, Fact, Film, InkFact, ReadBy, ReadOn, RecipeField, RecordedLayer, Share, SwatchMeasurement,
    reading_of,
};
use crate::ids::Subject;
use crate::time::{Millis, WallTime};
use uuid::Uuid;

const MINUTE: Millis = Millis::from_minutes(1);
const DAY: Millis = Millis::from_days(1);

/// The true optics of an invented component: absorption as humps over the bands (middle, width and height
/// of each) above a floor, and scattering.
struct TrueOptics {
    humps: &'static [(f64, f64, f64)],
    floor: f64,
    scatter: f64,
}

const FILLED: TrueOptics = TrueOptics { humps: &[(0.0, 3.0, 0.06)], floor: 0.008, scatter: 1.5 };
const WHITE: TrueOptics = TrueOptics { humps: &[(0.0, 2.5, 0.05)], floor: 0.006, scatter: 3.2 };
const CLEAR: TrueOptics = TrueOptics { humps: &[], floor: 0.0, scatter: 0.01 };
const YELLOW: TrueOptics = TrueOptics { humps: &[(3.0, 6.0, 16.0)], floor: 0.25, scatter: 0.5 };
const RED: TrueOptics = TrueOptics { humps: &[(10.0, 6.0, 13.0), (2.0, 6.0, 9.0)], floor: 0.3, scatter: 0.4 };
const BLUE: TrueOptics =
    TrueOptics { humps: &[(22.0, 7.5, 15.0), (30.0, 6.0, 9.0), (0.0, 5.0, 2.0)], floor: 1.1, scatter: 0.35 };
const BLACK: TrueOptics = TrueOptics { humps: &[], floor: 50.0, scatter: 0.3 };

impl TrueOptics {
    fn constants(&self) -> Constants {
        let k = std::array::from_fn(|band| {
            let hump = |(middle, wide, high): &(f64, f64, f64)| high * (-((band as f64 - middle) / wide).powi(2)).exp();
            self.floor + self.humps.iter().map(hump).sum::<f64>()
        });
        Constants { k, s: [self.scatter; BANDS], origin: Origin::Measured }
    }
}

/// Strength of blue in the pot, relative to its drawdowns.
const TRUE_BLUE_STRENGTH: f64 = 1.15;

/// Records everything about colour.
pub(super) fn colours<N: FnMut() -> Uuid>(maker: &mut Maker<N>, inks: &DemoInks, tote: Option<Colour>) {
    drawdowns(maker, inks);
    let apricot = [(inks.filled, 91.95), (inks.yellow, 4.97), (inks.red, 2.98), (inks.black, 0.1)];
    let apricot = appearance(inks, &apricot, Viewing::InBulk(Surface::NONE));
    let at = maker.clock.now - 14 * DAY;
    target(maker, at, inks.apricot, apricot, ReadOn::Thick);
    if let Some(tote) = tote {
        fern(maker, inks, tote);
    }
}

fn record_event<N: FnMut() -> Uuid>(maker: &mut Maker<N>, at: WallTime, fact: InkFact) {
    let id = maker.id();
    maker.record(at, id, Fact::Ink(fact));
}

/// A drawdown of a component: its share, what it is diluted with, and what it is printed on.
struct DrawdownPlan {
    of: (Subject, &'static TrueOptics),
    percent: f64,
    rest: Option<(Subject, &'static TrueOptics)>,
    over: Option<SwatchMeasurement>,
    /// Whether the instrument gave the curve; otherwise only the colour was recorded.
    curve: bool,
}

fn drawdowns<N: FnMut() -> Uuid>(maker: &mut Maker<N>, inks: &DemoInks) {
    let filled = Some((inks.filled, &FILLED));
    let over = |of, chart| DrawdownPlan { of, percent: 100.0, rest: None, over: Some(chart), curve: true };
    let tint = |of, percent, curve| DrawdownPlan { of, percent, rest: filled, over: None, curve };
    let straight = |of, curve| DrawdownPlan { of, percent: 100.0, rest: None, over: None, curve };
    let (yellow, red) = ((inks.yellow, &YELLOW), (inks.red, &RED));
    let (blue, black) = ((inks.blue, &BLUE), (inks.black, &BLACK));
    let rows = [
        over((inks.filled, &FILLED), SwatchMeasurement::CHART_BLACK),
        over((inks.filled, &FILLED), SwatchMeasurement::CHART_WHITE),
        over((inks.white, &WHITE), SwatchMeasurement::CHART_BLACK),
        over((inks.white, &WHITE), SwatchMeasurement::CHART_WHITE),
        tint(yellow, 10.0, true),
        straight(yellow, true),
        tint(red, 10.0, false),
        straight(red, false),
        tint(blue, 10.0, true),
        straight(blue, true),
        tint(black, 5.0, true),
    ];
    let at = maker.clock.now - 15 * DAY + 30 * MINUTE;
    for (place, drawn) in rows.into_iter().enumerate() {
        let (component, truth) = drawn.of;
        let share = drawn.percent / 100.0;
        let rest = drawn.rest.map_or(Constants::CLEAR, |(_, truth)| truth.constants());
        let Some(ink) = Constants::mix(&[(share, &truth.constants()), (1.0 - share, &rest)]) else { continue };
        let look = match &drawn.over {
            None => ink.in_bulk(Surface::NONE),
            Some(chart) => ink.over(1.0, &chart.reflectance(), Surface::NONE),
        };
        let seen = if drawn.curve {
            SwatchMeasurement::of_curve(&look)
        } else {
            SwatchMeasurement::Colour(reading_of(look.lab(), ReadBy::Instrument))
        };
        let made = DrawdownRecord {
            component,
            share: Share::from_percent(drawn.percent),
            rest: drawn.rest.map(|(rest, _)| rest),
            lay: drawn
                .over
                .map_or(RecordedLayer::Hiding, |backing| RecordedLayer::Over { film: Film::Hits(1), backing }),
            seen,
            note: String::new(),
            by: Some(maker.language.say(MOSS)),
        };
        record_event(maker, at + place as u64 * MINUTE, InkFact::DrawnDown(made));
    }
}

/// The appearance of a mixture of the true inks.
fn appearance(inks: &DemoInks, weights: &[(Subject, f64)], seen: Viewing) -> Lab {
    let truth = |id: Subject| {
        let blue = id == inks.blue;
        let of = [
            (inks.filled, &FILLED),
            (inks.white, &WHITE),
            (inks.yellow, &YELLOW),
            (inks.red, &RED),
            (inks.blue, &BLUE),
            (inks.black, &BLACK),
        ];
        let found = of.into_iter().find(|(other, _)| *other == id).map_or(&CLEAR, |(_, truth)| truth);
        found.constants().times(if blue { TRUE_BLUE_STRENGTH } else { 1.0 })
    };
    let parts: Vec<(f64, Constants)> = weights.iter().map(|(id, weight)| (*weight, truth(*id))).collect();
    let parts: Vec<(f64, &Constants)> = parts.iter().map(|(weight, constants)| (*weight, constants)).collect();
    Constants::mix(&parts).map(|ink| seen.look(&ink).lab()).unwrap_or_default()
}

fn target<N: FnMut() -> Uuid>(maker: &mut Maker<N>, at: WallTime, recipe: Subject, lab: Lab, on: ReadOn) {
    let fields = vec![RecipeField::Target(Some(reading_of(lab, ReadBy::Instrument))), RecipeField::ReadOn(on)];
    maker.record(at, recipe, Fact::Ink(InkFact::RecipeSet(fields)));
}

/// Fern was too yellow compared with the leaf, and still is after two additions of blue. Its swatches are
/// printed on the tote.
fn fern<N: FnMut() -> Uuid>(maker: &mut Maker<N>, inks: &DemoInks, tote: Colour) {
    let cloth: Reflectance = smoothest(Lab::of(tote)).reflectance;
    let print = Print { garment: &cloth, underbase: None, hits: 1, films_per_hit: 1.0, surface: Surface::NONE };
    let seen = Viewing::Printed(print);
    let with = |blue: f64, yellow: f64| {
        let weights =
            [(inks.clear, 90.0), (inks.yellow, yellow), (inks.blue, blue), (inks.black, 1.0), (inks.retarder, 2.0)];
        appearance(inks, &weights, seen)
    };
    let begun = maker.clock.now - 100 * MINUTE;
    target(maker, begun - MINUTE, inks.fern, with(4.9, 5.6), ReadOn::Garment);
    // After the weigh-in, after the first addition, after the second.
    for (seconds, blue) in [(12 * 60, 3.4), (17 * 60 + 45, 3.8), (24 * 60, 4.0)] {
        let reading = reading_of(with(blue, 5.6), ReadBy::Instrument);
        let by = Some(maker.language.say(INES));
        record_event(
            maker,
            begun + seconds * Millis::from_ms(1_000),
            InkFact::SwatchRead { pot: inks.fern_pot, reading, note: String::new(), by },
        );
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::colour::correction::Outcome;
    use crate::demo::day::tests::{NOW, shop};
    use crate::ink::{
        ColourQuality, CoverageQuery, NextDrawdown, component_colour, cover_runs, cover_view, match_view, recipe_named,
    };
    use crate::shop::Shop;

    fn component(shop: &Shop, name: &str) -> Subject {
        shop.ink.components().find(|(_, component)| component.name == name).unwrap().0
    }

    #[test]
    fn demo_components_are_characterised_but_one_lacks_a_drawdown() {
        let (shop, _) = shop(NOW);
        let colour = |name| component_colour(&shop, component(&shop, name)).unwrap();
        for name in ["Base, white-filled", "Base, dense white", "Yellow", "Brick red", "Blue"] {
            let colour = colour(name);
            assert_eq!(colour.quality, ColourQuality::Good, "{name}");
            assert!(colour.worst.unwrap() < 1.0, "{name} {:?}", colour.worst);
        }
        assert_eq!(colour("Blue").origin, Some(Origin::Measured));
        assert_eq!(colour("Brick red").origin, Some(Origin::Reconstructed));
        assert_eq!(colour("Base, clear").quality, ColourQuality::AssumedClear);
        assert_eq!(colour("Black").next, Some(NextDrawdown::Straight));
        let learned = colour("Blue").strength;
        assert!(learned.samples >= 1 && learned.factor > 1.02, "{learned:?}");
    }

    #[test]
    fn the_demo_pot_of_fern_lacks_blue() {
        let (shop, _) = shop(NOW);
        let pot = shop.ink.pots().find(|(_, pot)| pot.name == "Fern, totes").unwrap().0;
        let view = match_view(&shop, pot).unwrap();
        assert_eq!((view.on, view.hits, view.is_read), (ReadOn::Garment, 1, true));
        let difference = view.difference.unwrap();
        assert!(difference.de2000 > 2.0 && !difference.words.is_empty(), "{difference:?}");
        let advice = view.advice.unwrap();
        assert!(advice.from_reading && advice.outcome != Outcome::NothingHelps, "{advice:?}");
        assert!(advice.ways.iter().any(|way| way.rows.iter().any(|row| row.name == "Blue")), "{advice:?}");
        assert!(advice.ways.last().unwrap().after.de2000 < 1.0, "{advice:?}");
    }

    #[test]
    fn the_coverage_of_the_demo_apricot_can_be_computed() {
        let (shop, _) = shop(NOW);
        let recipe = recipe_named(&shop, "Apricot").unwrap().0;
        let runs = cover_runs(&shop, recipe);
        let garment = runs[0].garment.clone().unwrap();
        let work = crate::colour::LabourTimes { hit_seconds: 6.0, flash_seconds: 12.0, screen_minutes: 30.0 };
        let ask = CoverageQuery { garment: garment.colour, underbase: None, pieces: runs[0].pieces, work };
        let view = cover_view(&shop, recipe, &ask).unwrap();
        assert_eq!((view.rows.len(), view.whites.len()), (5, 2));
        assert!(view.cheapest.is_some() && !view.rows[0].covers, "{:?}", view.rows);
    }
}
