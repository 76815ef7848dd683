//! The bench at which components are drawn down and pots are matched.

use super::{TestShop, g};
use lastpull_core::colour::{BANDS, Constants, Lab, Origin, Surface};
use lastpull_core::facts::Fact;
use lastpull_core::ids::Subject;
use lastpull_core::ink::{
    ColourQuality, ComponentField, ComponentKind, DrawdownRecord, Film, Hiding, InkFact, MatchView, NextDrawdown, Part,
    PotField, PourStep, ReadBy, RecipeField, RecordedLayer, Share, SwatchMeasurement, component_colour, match_view,
    reading_of, revision_fact,
};
use lastpull_core::journal::JournalFact;
use lastpull_core::units::Grams;
use std::collections::BTreeMap;

pub const CHARTS: [(f64, SwatchMeasurement); 2] =
    [(0.8, SwatchMeasurement::CHART_WHITE), (0.01, SwatchMeasurement::CHART_BLACK)];

/// What an invented pigment takes away: a hump over the bands.
pub fn hump(middle: f64, wide: f64, high: f64, floor: f64, s: f64) -> Constants {
    let k = std::array::from_fn(|band| floor + high * (-((band as f64 - middle) / wide).powi(2)).exp());
    Constants { k, s: [s; BANDS], origin: Origin::Measured }
}

/// A shop whose components' true colours are known to the test alone.
pub struct DrawdownBench {
    pub press: TestShop,
    pub truth: BTreeMap<Subject, Constants>,
    pub white: Subject,
    pub clear: Subject,
    pub blue: Subject,
    pub red: Subject,
    pub yellow: Subject,
}

pub fn said(press: &mut TestShop, subject: Subject, fact: InkFact) {
    let fact = Fact::Ink(fact);
    assert!(fact.in_bounds(), "{fact:?}");
    press.record(subject, fact);
}

impl DrawdownBench {
    pub fn new() -> Self {
        let mut press = TestShop::new();
        let mut truth = BTreeMap::new();
        let mut component = |name: &str, kind, hiding, constants: Constants| {
            let id = press.id();
            let fields =
                vec![ComponentField::Name(name.into()), ComponentField::Kind(kind), ComponentField::Hiding(hiding)];
            said(&mut press, id, InkFact::ComponentSet(fields));
            truth.insert(id, constants);
            id
        };
        let white = component("White", ComponentKind::Base, Hiding::Opaque, hump(0.0, 3.0, 0.05, 0.01, 2.4));
        let clear = component("Clear", ComponentKind::Base, Hiding::Transparent, hump(0.0, 3.0, 0.0, 0.0, 0.01));
        let blue = component("Blue", ComponentKind::Pigment, Hiding::Transparent, hump(21.0, 7.0, 14.0, 0.3, 0.1));
        let red = component("Red", ComponentKind::Pigment, Hiding::Transparent, hump(12.0, 6.0, 12.0, 0.2, 0.1));
        let yellow = component("Yellow", ComponentKind::Pigment, Hiding::Transparent, hump(3.0, 5.0, 11.0, 0.1, 0.2));
        Self { press, truth, white, clear, blue, red, yellow }
    }

    pub fn event(&mut self, fact: InkFact) -> Subject {
        let id = self.press.id();
        said(&mut self.press, id, fact);
        id
    }

    pub fn draw(
        &mut self,
        component: Subject,
        percent: f64,
        rest: Option<Subject>,
        lay: RecordedLayer,
        by_colour: bool,
    ) -> Subject {
        let share = percent / 100.0;
        let base = rest.map_or(Constants::CLEAR, |rest| self.truth[&rest]);
        let ink = Constants::mix(&[(share, &self.truth[&component]), (1.0 - share, &base)]).unwrap();
        let look = match &lay {
            RecordedLayer::Hiding => ink.in_bulk(Surface::NONE),
            RecordedLayer::Over { film, backing } => ink.over(film.films(), &backing.reflectance(), Surface::NONE),
        };
        let seen = if by_colour {
            SwatchMeasurement::Colour(reading_of(look.lab(), ReadBy::Instrument))
        } else {
            SwatchMeasurement::of_curve(&look)
        };
        let share = Share::from_percent(percent);
        self.event(InkFact::DrawnDown(DrawdownRecord {
            component,
            share,
            rest,
            lay,
            seen,
            note: String::new(),
            by: None,
        }))
    }

    pub fn over(&mut self, component: Subject) {
        for (_, backing) in CHARTS {
            self.draw(component, 100.0, None, RecordedLayer::Over { film: Film::Hits(1), backing }, false);
        }
    }

    /// Every component drawn down as the shop is asked to.
    pub fn characterised() -> Self {
        let mut bench = Self::new();
        let (white, clear) = (bench.white, bench.clear);
        bench.over(white);
        bench.over(clear);
        for pigment in [bench.blue, bench.red, bench.yellow] {
            bench.draw(pigment, 10.0, Some(white), RecordedLayer::Hiding, false);
            bench.draw(pigment, 100.0, None, RecordedLayer::Hiding, false);
        }
        bench
    }

    /// What a mixture really looks like, thick.
    pub fn look(&self, weights: &[(Subject, f64)]) -> Lab {
        let parts: Vec<_> = weights.iter().map(|(id, weight)| (*weight, &self.truth[id])).collect();
        Constants::mix(&parts).unwrap().in_bulk(Surface::NONE).lab()
    }

    pub fn recipe(&mut self, name: &str, parts: &[(Subject, f64)], target: Option<Lab>) -> (Subject, Subject) {
        let recipe = self.press.id();
        let target = target.map(|lab| reading_of(lab, ReadBy::Instrument));
        let fields = vec![RecipeField::Name(name.into()), RecipeField::Target(target)];
        said(&mut self.press, recipe, InkFact::RecipeSet(fields));
        let part = |(component, percent): &(Subject, f64)| Part {
            component: *component,
            share: Share::from_percent(*percent),
            on_top: false,
        };
        let shop = self.press.shop();
        let fact = revision_fact(&shop, recipe, parts.iter().map(part).collect(), None, None, "", None);
        (recipe, self.event(fact))
    }

    pub fn pot(&mut self, revision: Subject, capacity: Option<f64>) -> Subject {
        let pot = self.press.id();
        let fields = vec![
            PotField::Name("Pot".into()),
            PotField::Revision(Some(revision)),
            PotField::Capacity(capacity.map(Grams::from_grams)),
        ];
        said(&mut self.press, pot, InkFact::PotSet(fields));
        pot
    }

    pub fn pour(&mut self, pot: Subject, component: Subject, grams: f64, step: PourStep) -> Subject {
        self.event(InkFact::Poured {
            pot,
            component,
            grams: g(grams),
            step,
            note: String::new(),
            reading: None,
            by: None,
        })
    }

    pub fn read(&mut self, pot: Subject, lab: Lab) -> Subject {
        let reading = reading_of(lab, ReadBy::Instrument);
        self.event(InkFact::SwatchRead { pot, reading, note: String::new(), by: None })
    }

    pub fn view(&self, pot: Subject) -> MatchView {
        match_view(&self.press.shop(), pot).unwrap()
    }

    pub fn good(&self, component: Subject) -> ColourQuality {
        component_colour(&self.press.shop(), component).unwrap().quality
    }

    pub fn next(&self, component: Subject) -> Option<NextDrawdown> {
        component_colour(&self.press.shop(), component).unwrap().next
    }

    /// A pot of white with blue that should have been a violet: it lacks red. As it was read.
    pub fn violet(capacity: Option<f64>) -> (Self, Subject, [(Subject, f64); 3]) {
        let mut bench = Self::characterised();
        let meant = [(bench.white, 500.0), (bench.blue, 10.0), (bench.red, 12.0)];
        let target = bench.look(&meant);
        let (_, revision) =
            bench.recipe("Violet", &[(bench.white, 96.0), (bench.blue, 2.0), (bench.red, 2.0)], Some(target));
        let pot = bench.pot(revision, capacity);
        for (component, grams) in [(bench.white, 500.0), (bench.blue, 10.0), (bench.red, 4.0)] {
            bench.pour(pot, component, grams, PourStep::WeighIn);
        }
        let look = bench.look(&[(bench.white, 500.0), (bench.blue, 10.0), (bench.red, 4.0)]);
        bench.read(pot, look);
        (bench, pot, meant)
    }
}
