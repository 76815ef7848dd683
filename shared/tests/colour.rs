//! From a component's drawdowns to what is to be added to a pot, and whether it will cover.
//!
//! The shop's true inks are invented by the theory of the core itself, which other tests hold against published
//! values; here it is asked whether a shop that only sees drawdowns and swatches finds its way back to them.
//! Limits and thresholds are our own.

use crate::shop::Press;
use lastpull_core::colour::correction::Outcome;
use lastpull_core::colour::{BANDS, Constants, DifferenceDirection, Lab, LabourTimes, Origin, Surface, ciede2000};
use lastpull_core::facts::{Fact, LotField, RunField};
use lastpull_core::form::FormProblem;
use lastpull_core::ids::Subject;
use lastpull_core::ink::{
    ColourProvenance, ColourQuality, ColourReading, ComponentField, ComponentKind, CoverForm, CoverageQuery,
    DrawdownForm, DrawdownRecord, Film, Hiding, InkFact, KnownPatch, LayerKind, MatchView, NextDrawdown, NoAdvice,
    NoCover, Part, PatchSource, PhotoSample, PotField, PourStep, ReadBy, ReadOn, RecipeField, RecordedLayer, Share,
    SwatchMeasurement, approve_facts, component_colour, cover_runs, cover_view, known_patches, lab_of, match_view,
    reading_facts, reading_now, reading_of, revision_fact, with_reading,
};
use lastpull_core::job::{Fabric, Size};
use lastpull_core::journal::JournalFact;
use lastpull_core::units::Grams;
use std::collections::BTreeMap;
use uuid::Uuid;

const CHARTS: [(f64, SwatchMeasurement); 2] =
    [(0.8, SwatchMeasurement::CHART_WHITE), (0.01, SwatchMeasurement::CHART_BLACK)];

fn g(grams: f64) -> Grams {
    Grams::from_grams(grams)
}

/// What an invented pigment takes away: a hump over the bands.
fn hump(middle: f64, wide: f64, high: f64, floor: f64, s: f64) -> Constants {
    let k = std::array::from_fn(|band| floor + high * (-((band as f64 - middle) / wide).powi(2)).exp());
    Constants { k, s: [s; BANDS], origin: Origin::Measured }
}

/// A shop whose components' true colours are known to the test alone.
struct Bench {
    press: Press,
    truth: BTreeMap<Subject, Constants>,
    white: Subject,
    clear: Subject,
    blue: Subject,
    red: Subject,
    yellow: Subject,
}

fn said(press: &mut Press, subject: Subject, fact: InkFact) {
    let fact = Fact::Ink(fact);
    assert!(fact.in_bounds(), "{fact:?}");
    press.say(subject, fact);
}

impl Bench {
    fn new() -> Self {
        let mut press = Press::new();
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

    fn say(&mut self, fact: InkFact) -> Subject {
        let id = self.press.id();
        said(&mut self.press, id, fact);
        id
    }

    fn draw(
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
        self.say(InkFact::DrawnDown(DrawdownRecord {
            component,
            share,
            rest,
            lay,
            seen,
            note: String::new(),
            by: None,
        }))
    }

    fn over(&mut self, component: Subject) {
        for (_, backing) in CHARTS {
            self.draw(component, 100.0, None, RecordedLayer::Over { film: Film::Hits(1), backing }, false);
        }
    }

    /// Every component drawn down as the shop is asked to.
    fn characterised() -> Self {
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
    fn look(&self, weights: &[(Subject, f64)]) -> Lab {
        let parts: Vec<_> = weights.iter().map(|(id, weight)| (*weight, &self.truth[id])).collect();
        Constants::mix(&parts).unwrap().in_bulk(Surface::NONE).lab()
    }

    fn recipe(&mut self, name: &str, parts: &[(Subject, f64)], target: Option<Lab>) -> (Subject, Subject) {
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
        (recipe, self.say(fact))
    }

    fn pot(&mut self, revision: Subject, capacity: Option<f64>) -> Subject {
        let pot = self.press.id();
        let fields = vec![
            PotField::Name("Pot".into()),
            PotField::Revision(Some(revision)),
            PotField::Capacity(capacity.map(Grams::from_grams)),
        ];
        said(&mut self.press, pot, InkFact::PotSet(fields));
        pot
    }

    fn pour(&mut self, pot: Subject, component: Subject, grams: f64, step: PourStep) -> Subject {
        self.say(InkFact::Poured {
            pot,
            component,
            grams: g(grams),
            step,
            note: String::new(),
            reading: None,
            by: None,
        })
    }

    fn read(&mut self, pot: Subject, lab: Lab) -> Subject {
        let reading = reading_of(lab, ReadBy::Instrument);
        self.say(InkFact::SwatchRead { pot, reading, note: String::new(), by: None })
    }

    fn view(&self, pot: Subject) -> MatchView {
        match_view(&self.press.shop(), pot).unwrap()
    }

    fn good(&self, component: Subject) -> ColourQuality {
        component_colour(&self.press.shop(), component).unwrap().quality
    }

    fn next(&self, component: Subject) -> Option<NextDrawdown> {
        component_colour(&self.press.shop(), component).unwrap().next
    }

    /// A pot of white with blue that should have been a violet: it lacks red. As it was read.
    fn violet(capacity: Option<f64>) -> (Self, Subject, [(Subject, f64); 3]) {
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

#[test]
fn a_new_component_is_drawn_down_step_by_step_until_nothing_is_missing() {
    let mut bench = Bench::new();
    let (white, clear, blue) = (bench.white, bench.clear, bench.blue);
    assert_eq!((bench.good(white), bench.good(clear)), (ColourQuality::Unknown, ColourQuality::AssumedClear));
    // Without a white to let it down with, the pigment is asked for alone.
    assert_eq!(bench.next(blue), Some(NextDrawdown::Straight));
    assert_eq!(bench.next(white), Some(NextDrawdown::OverBlack));
    let film = |backing| RecordedLayer::Over { film: Film::Hits(1), backing };
    bench.draw(white, 100.0, None, film(SwatchMeasurement::CHART_BLACK), false);
    assert_eq!((bench.good(white), bench.next(white)), (ColourQuality::AbsorptionOnly, Some(NextDrawdown::OverWhite)));
    bench.draw(white, 100.0, None, film(SwatchMeasurement::CHART_WHITE), false);
    assert_eq!((bench.good(white), bench.next(white)), (ColourQuality::Good, None));
    let tint = NextDrawdown::Tint { rest: white, name: "White".into(), percent: 10.0 };
    assert_eq!(bench.next(blue), Some(tint));
    bench.draw(blue, 10.0, Some(white), RecordedLayer::Hiding, false);
    assert_eq!(bench.next(blue), Some(NextDrawdown::Straight));
    bench.draw(blue, 100.0, None, RecordedLayer::Hiding, false);
    let colour = component_colour(&bench.press.shop(), blue).unwrap();
    assert_eq!((colour.quality, colour.next, colour.origin), (ColourQuality::Good, None, Some(Origin::Measured)));
    assert!(colour.worst.unwrap() < 0.3 && colour.drawdowns.iter().all(|line| line.off.unwrap() < 0.3));
}

#[test]
fn drawdowns_that_were_only_seen_as_colours_say_so() {
    let mut bench = Bench::new();
    bench.over(bench.white);
    bench.draw(bench.blue, 10.0, Some(bench.white), RecordedLayer::Hiding, true);
    let colour = component_colour(&bench.press.shop(), bench.blue).unwrap();
    assert_eq!(colour.origin, Some(Origin::Reconstructed));
    assert!(colour.worst.unwrap() < 0.5);
}

#[test]
fn a_tint_whose_white_nobody_drew_down_waits_for_it() {
    let mut bench = Bench::new();
    let (blue, white) = (bench.blue, bench.white);
    bench.draw(blue, 10.0, Some(white), RecordedLayer::Hiding, false);
    let colour = component_colour(&bench.press.shop(), blue).unwrap();
    assert_eq!((colour.quality, colour.drawdowns[0].off), (ColourQuality::Unknown, None));
    bench.over(white);
    assert!(bench.good(blue) > ColourQuality::Unknown);
    // Two that are let down with each other know nothing of each other.
    let mut bench = Bench::new();
    bench.draw(blue, 50.0, Some(bench.red), RecordedLayer::Hiding, false);
    bench.draw(bench.red, 50.0, Some(blue), RecordedLayer::Hiding, false);
    assert_eq!((bench.good(blue), bench.good(bench.red)), (ColourQuality::Unknown, ColourQuality::Unknown));
}

#[test]
fn a_drawdown_with_the_wrong_share_is_asked_for_again() {
    let mut bench = Bench::characterised();
    let (blue, white) = (bench.blue, bench.white);
    let at = |percent: f64| Share::from_percent(percent);
    let ink = Constants::mix(&[(0.3, &bench.truth[&blue]), (0.7, &bench.truth[&white])]).unwrap();
    let seen = SwatchMeasurement::of_curve(&ink.in_bulk(Surface::NONE));
    let made = |share, seen: &SwatchMeasurement| DrawdownRecord {
        component: blue,
        share,
        rest: Some(white),
        lay: RecordedLayer::Hiding,
        seen: seen.clone(),
        note: String::new(),
        by: None,
    };
    let wrong = bench.say(InkFact::DrawnDown(made(at(3.0), &seen)));
    let colour = component_colour(&bench.press.shop(), blue).unwrap();
    assert_eq!(colour.quality, ColourQuality::Contradictory);
    assert!(matches!(colour.next, Some(NextDrawdown::Again(_))));
    let form = DrawdownForm::next(&bench.press.shop(), blue);
    assert_eq!(form.rest, Some(white));
    bench.press.say(wrong, Fact::Deleted);
    assert_eq!(bench.good(blue), ColourQuality::Good);
}

/// The same drawdown as if a photo had told it.
fn photographed(bench: &mut Bench, component: Subject, percent: f64, rest: Option<Subject>) -> Subject {
    let event = bench.draw(component, percent, rest, RecordedLayer::Hiding, true);
    let shop = bench.press.shop();
    let InkFact::DrawnDown(mut made) = shop.ink.event(event).unwrap().fact.clone() else { panic!() };
    let SwatchMeasurement::Colour(reading) = &mut made.seen else { panic!() };
    reading.by = ReadBy::Photo;
    said(&mut bench.press, event, InkFact::DrawnDown(made));
    event
}

fn names(patches: &[KnownPatch]) -> Vec<&str> {
    patches.iter().map(|patch| patch.name.as_str()).collect()
}

#[test]
fn beside_a_drawdown_lies_what_an_instrument_read_its_own_first_then_the_nearest() {
    let mut bench = Bench::new();
    assert!(known_patches(&bench.press.shop(), bench.blue).is_empty());
    let (blue, red, white) = (bench.blue, bench.red, bench.white);
    bench.over(white);
    let red_alone = bench.draw(red, 100.0, None, RecordedLayer::Hiding, true);
    let tint = bench.draw(blue, 10.0, Some(white), RecordedLayer::Hiding, true);
    let alone = bench.draw(blue, 100.0, None, RecordedLayer::Hiding, false);
    let near_blue = bench.look(&[(blue, 0.95), (red, 0.05)]);
    let (violet, _) = bench.recipe("Violet", &[(blue, 95.0), (red, 5.0)], Some(near_blue));
    let patches = known_patches(&bench.press.shop(), blue);
    let ids: Vec<Subject> = patches.iter().take(3).map(|patch| patch.id).collect();
    assert_eq!(ids, [alone, tint, violet], "its latest, the one before, then what looks most like it");
    assert_eq!(
        patches[1].of,
        PatchSource::Drawdown { share: Share::from_percent(10.0), rest: "White".into(), lay: LayerKind::Hiding }
    );
    assert_eq!(patches[2].of, PatchSource::Target);
    assert!(patches.iter().any(|patch| patch.id == red_alone));
    // A curve is as good as three numbers.
    let of_curve = bench.truth[&blue].in_bulk(Surface::NONE).lab();
    assert!(patches[0].reading.by == ReadBy::Instrument && ciede2000(lab_of(patches[0].reading), of_curve) < 0.2);
    // What was taken back, or belongs to what is gone, lies on no table.
    bench.press.say(alone, Fact::Deleted);
    bench.press.say(red, Fact::Deleted);
    bench.press.say(violet, Fact::Deleted);
    assert_eq!(names(&known_patches(&bench.press.shop(), blue)), ["Blue", "White", "White"]);
}

#[test]
fn a_garment_that_an_instrument_read_may_lie_there_and_is_offered_once_for_all_lots_of_its_colour() {
    let mut bench = Bench::new();
    let job = bench.press.job("Tea", None);
    let read = |bench: &mut Bench, lab, by| {
        let lot = bench.press.lot(job, Fabric::Cotton, &[(Size::M, 12)]);
        bench.press.say(lot, Fact::LotSet(vec![LotField::ColourName("sand".into())]));
        said(&mut bench.press, lot, InkFact::GarmentRead(Some(ColourReading::from_lab(lab, by))));
        lot
    };
    let sand = read(&mut bench, [80.0, 2.0, 12.0], ReadBy::Instrument);
    read(&mut bench, [80.0, 2.0, 12.0], ReadBy::Instrument);
    read(&mut bench, [81.0, 2.0, 12.0], ReadBy::Photo);
    read(&mut bench, [82.0, 2.0, 12.0], ReadBy::Screen);
    let patches = known_patches(&bench.press.shop(), bench.blue);
    assert_eq!(names(&patches), ["Tee, sand"]);
    assert_eq!((patches[0].id, &patches[0].of), (sand, &PatchSource::Garment));
    bench.press.say(job, Fact::Deleted);
    assert!(known_patches(&bench.press.shop(), bench.blue).is_empty());
}

#[test]
fn what_a_photo_or_a_screen_said_is_never_laid_beside_another_drawdown() {
    let mut bench = Bench::new();
    let (blue, red) = (bench.blue, bench.red);
    photographed(&mut bench, blue, 100.0, None);
    photographed(&mut bench, red, 100.0, None);
    for (name, by) in [("Seen", ReadBy::Photo), ("Shown", ReadBy::Screen)] {
        let (recipe, _) = bench.recipe(name, &[(blue, 100.0)], None);
        let target = RecipeField::Target(Some(ColourReading::from_lab([40.0, 5.0, -20.0], by)));
        said(&mut bench.press, recipe, InkFact::RecipeSet(vec![target]));
    }
    assert_eq!(known_patches(&bench.press.shop(), blue), []);
    assert_eq!(known_patches(&bench.press.shop(), red), []);
}

#[test]
fn no_more_patches_are_offered_than_are_looked_through_and_a_few_of_them_its_own() {
    let mut bench = Bench::new();
    let (blue, red) = (bench.blue, bench.red);
    for _ in 0..9 {
        bench.draw(blue, 100.0, None, RecordedLayer::Hiding, true);
    }
    for place in 0..20 {
        let level = 5.0 + 4.0 * f64::from(place);
        bench.recipe(&format!("Ink {place}"), &[(red, 100.0)], Some(Lab::new(level, 0.0, 0.0)));
    }
    let patches = known_patches(&bench.press.shop(), blue);
    assert_eq!(patches.len(), 12);
    assert_eq!(patches.iter().filter(|patch| patch.name == "Blue").count(), 5);
}

#[test]
fn a_colour_that_rests_on_photos_says_so_and_so_does_what_is_worked_out_with_it() {
    let mut bench = Bench::new();
    let (white, clear, blue, red) = (bench.white, bench.clear, bench.blue, bench.red);
    let on = |bench: &Bench, id| component_colour(&bench.press.shop(), id).unwrap().provenance;
    assert_eq!(on(&bench, blue), ColourProvenance::default());
    bench.over(white);
    bench.over(clear);
    bench.draw(blue, 10.0, Some(white), RecordedLayer::Hiding, true);
    bench.draw(red, 10.0, Some(white), RecordedLayer::Hiding, true);
    bench.draw(red, 100.0, None, RecordedLayer::Hiding, true);
    assert_eq!(on(&bench, blue), ColourProvenance { drawdowns: 1, photos: 0, through: false });
    let look = bench.look(&[(blue, 0.1), (white, 0.9)]);
    let (tinted, revision) = bench.recipe("Pale", &[(blue, 10.0), (white, 90.0)], Some(look));
    let (plain, _) = bench.recipe("Rose", &[(red, 10.0), (white, 90.0)], None);
    let pot = bench.pot(revision, Some(900.0));
    bench.pour(pot, blue, 20.0, PourStep::WeighIn);
    bench.pour(pot, white, 80.0, PourStep::WeighIn);
    let ask = ask(Lab::new(20.0, 0.0, 0.0), 40);
    let covers = |bench: &Bench, id| cover_view(&bench.press.shop(), id, &ask).unwrap().by_photo;
    assert!(!covers(&bench, tinted) && !bench.view(pot).advice.unwrap().by_photo);
    let photo = photographed(&mut bench, blue, 100.0, None);
    assert_eq!(on(&bench, blue), ColourProvenance { drawdowns: 2, photos: 1, through: false });
    assert!(covers(&bench, tinted) && bench.view(pot).advice.unwrap().by_photo);
    assert!(!covers(&bench, plain), "what holds no such component rests on no photo");
    bench.press.say(photo, Fact::Deleted);
    assert!(!on(&bench, blue).any_photo());
    // A white that a photo told is behind every tint made with it.
    photographed(&mut bench, white, 100.0, None);
    assert_eq!(on(&bench, red), ColourProvenance { drawdowns: 2, photos: 0, through: true });
    assert!(covers(&bench, plain));
}

#[test]
fn a_drawdown_is_typed_and_checked() {
    let bench = Bench::characterised();
    let shop = bench.press.shop();
    let mut form = DrawdownForm { seen: None, share: "5".into(), ..DrawdownForm::next(&shop, bench.blue) };
    let problems = form.check(bench.blue, None).unwrap_err();
    assert_eq!(problems.get("seen"), Some(&FormProblem::Missing));
    assert_eq!(problems.get("rest"), Some(&FormProblem::Missing));
    form.rest = Some(bench.blue);
    assert!(form.check(bench.blue, None).unwrap_err().contains_key("rest"));
    form.rest = Some(bench.clear);
    form.seen = Some(SwatchMeasurement::Colour(ColourReading::from_lab([40.0, 0.0, -30.0], ReadBy::Instrument)));
    (form.lay, form.bar, form.wet, form.a_hit) = (LayerKind::OverWhite, true, "100".into(), "40".into());
    let Ok(InkFact::DrawnDown(made)) = form.check(bench.blue, Some("Ines")) else { panic!() };
    let film = Film::Wet { um: 100, a_hit: 40 };
    assert_eq!(made.lay, RecordedLayer::Over { film, backing: SwatchMeasurement::CHART_WHITE });
    assert_eq!((made.share, made.rest), (Share::from_percent(5.0), Some(bench.clear)));
}

#[test]
fn a_pot_that_lacks_red_is_told_so_in_words_and_in_grams() {
    let (mut bench, pot, meant) = Bench::violet(Some(900.0));
    let view = bench.view(pot);
    let difference = view.difference.clone().unwrap();
    assert!(view.is_read && !difference.near && difference.de2000 > 3.0 && difference.cmc > 1.0);
    assert!(
        difference.words.iter().any(|word| word.direction == DifferenceDirection::Greener),
        "{:?}",
        difference.words
    );
    let advice = view.advice.unwrap();
    assert_eq!((advice.outcome, advice.from_reading, advice.headroom_known), (Outcome::GetsThere, true, true));
    assert!((advice.before - difference.de2000).abs() < 0.05, "{} {}", advice.before, difference.de2000);
    let way = &advice.ways[0];
    assert_eq!(way.rows.len(), 1);
    assert_eq!(way.rows[0].component, bench.red);
    // 8 g by construction; to the scale's tenth of a gram, and less where near enough does.
    assert!((6.0..=8.6).contains(&way.rows[0].grams.grams()), "{:?}", way.rows);
    assert_eq!(way.rows[0].grams.milligrams() % 100, 0);
    // Done as advised, the true pot is what was predicted.
    let grams = way.rows[0].grams.grams();
    let truly = bench.look(&[meant[0], meant[1], (bench.red, 4.0 + grams)]);
    assert!(ciede2000(truly, way.look) < 0.4, "{}", ciede2000(truly, way.look));
    bench.pour(pot, bench.red, grams, PourStep::Correction);
    let view = bench.view(pot);
    assert!(!view.is_read, "what was read was before the red went in");
    assert_eq!(view.reading.as_ref().unwrap().since, 1);
    assert!(view.difference.unwrap().near);
    bench.read(pot, truly);
    let view = bench.view(pot);
    assert!(view.is_read && view.difference.unwrap().near);
    assert_eq!(view.advice.unwrap().outcome, Outcome::AlreadyThere);
}

#[test]
fn advice_keeps_to_pot_stock_and_sheet() {
    let red_of = |view: &MatchView, red: Subject| {
        let advice = view.advice.clone().unwrap();
        let rows = advice.ways.last().map(|way| way.rows.clone()).unwrap_or_default();
        (rows.iter().find(|row| row.component == red).map_or(0.0, |row| row.grams.grams()), advice)
    };
    // Four grams fit, of the eight that would do.
    let (bench, pot, _) = Bench::violet(Some(518.0));
    let (red, advice) = red_of(&bench.view(pot), bench.red);
    assert!(red > 3.0 && red <= 4.0, "{red}");
    assert_eq!(advice.outcome, Outcome::OnlyCloser);
    assert!(advice.ways.last().unwrap().total <= g(518.0));
    // As many are left to what the scale bears, with the vessel on it.
    let (mut bench, pot, _) = Bench::violet(Some(900.0));
    let fact = InkFact::ScaleSet { step: Grams::from_milligrams(100), most: Some(g(568.0)) };
    bench.say(fact);
    said(&mut bench.press, pot, InkFact::PotSet(vec![PotField::Tare(Some(g(50.0)))]));
    let (red, advice) = red_of(&bench.view(pot), bench.red);
    assert!(red > 3.0 && red <= 4.0 && advice.headroom == g(4.0), "{red}");
    // Two and a half are on the shelf: weighed after the four had gone in.
    let (mut bench, pot, _) = Bench::violet(None);
    let counted = InkFact::Counted { component: bench.red, grams: g(2.5), by: None };
    bench.say(counted);
    let (red, advice) = red_of(&bench.view(pot), bench.red);
    assert!(red > 2.0 && red <= 2.5, "{red}");
    assert!(!advice.headroom_known);
    // The sheet allows one percent of it.
    let (mut bench, pot, _) = Bench::violet(None);
    let most = InkFact::ComponentSet(vec![ComponentField::Most(Some(Share::from_percent(1.0)))]);
    said(&mut bench.press, bench.red, most);
    let (red, advice) = red_of(&bench.view(pot), bench.red);
    let total = advice.ways.last().unwrap().total.grams();
    assert!(red > 0.5 && (4.0 + red) / total <= 0.010_001, "{red} of {total}");
    // The base's sheet bears less pigment than is in: no more of it goes in than white with it.
    let (mut bench, pot, _) = Bench::violet(None);
    let most = InkFact::ComponentSet(vec![ComponentField::MostPigment(Some(Share::from_percent(2.0)))]);
    said(&mut bench.press, bench.white, most);
    let way = bench.view(pot).advice.unwrap().ways.last().cloned().unwrap();
    let pigment = |id: Subject| [bench.blue, bench.red, bench.yellow].contains(&id);
    let added: f64 = way.rows.iter().filter(|row| pigment(row.component)).map(|row| row.grams.grams()).sum();
    assert!((14.0 + added) / way.total.grams() <= 14.0 / 514.0 + 1e-6, "{way:?}");
}

#[test]
fn a_pot_that_is_too_dark_for_its_room_is_said_not_to_get_there() {
    let mut bench = Bench::characterised();
    let target = bench.look(&[(bench.white, 1_000.0), (bench.blue, 1.0)]);
    let (_, revision) = bench.recipe("Sky", &[(bench.white, 90.0), (bench.blue, 10.0)], Some(target));
    let pot = bench.pot(revision, Some(110.0));
    bench.pour(pot, bench.white, 90.0, PourStep::WeighIn);
    bench.pour(pot, bench.blue, 10.0, PourStep::WeighIn);
    let view = bench.view(pot);
    assert!(!view.is_read && view.reading.is_none() && view.look.is_some());
    let advice = view.advice.unwrap();
    assert_eq!((advice.outcome, advice.from_reading), (Outcome::OnlyCloser, false));
    let way = advice.ways.last().unwrap();
    assert!(way.after.de2000 < advice.before && !way.after.near && way.total <= g(110.0));
}

#[test]
fn what_was_never_drawn_down_is_named_and_words_go_on() {
    let mut bench = Bench::new();
    let (_, revision) = bench.recipe("Rose", &[(bench.white, 99.0), (bench.red, 1.0)], Some(Lab::new(70.0, 30.0, 5.0)));
    let pot = bench.pot(revision, None);
    assert_eq!(bench.view(pot).advice, Err(NoAdvice::Empty));
    bench.pour(pot, bench.white, 99.0, PourStep::WeighIn);
    bench.pour(pot, bench.red, 1.0, PourStep::WeighIn);
    bench.read(pot, Lab::new(62.0, 30.0, 5.0));
    let view = bench.view(pot);
    let Err(NoAdvice::Uncharacterised(rows)) = view.advice else { panic!("{:?}", view.advice) };
    let names: Vec<_> = rows.iter().map(|row| (row.name.as_str(), row.next.clone())).collect();
    assert_eq!(names, [("White", Some(NextDrawdown::OverBlack)), ("Red", Some(NextDrawdown::Straight))]);
    assert_eq!(view.difference.unwrap().words[0].direction, DifferenceDirection::Darker);
    // No target: nothing to say but that.
    let fact = InkFact::RecipeSet(vec![RecipeField::Target(None)]);
    let recipe = view.recipe.unwrap();
    said(&mut bench.press, recipe, fact);
    assert_eq!(bench.view(pot).advice, Err(NoAdvice::NoTarget));
}

#[test]
fn corrections_read_before_and_after_teach_how_strong_a_pigment_is() {
    let mut bench = Bench::characterised();
    let strong = bench.truth[&bench.red].times(1.4);
    // The tub that came since is stronger than the one that was drawn down.
    bench.truth.insert(bench.red, strong);
    let (_, revision) = bench.recipe("Rose", &[(bench.white, 99.0), (bench.blue, 1.0)], None);
    for (round, red) in [6.0, 9.0, 7.0].into_iter().enumerate() {
        let pot = bench.pot(revision, None);
        bench.pour(pot, bench.white, 500.0, PourStep::WeighIn);
        bench.pour(pot, bench.blue, 4.0, PourStep::WeighIn);
        let before = bench.look(&[(bench.white, 500.0), (bench.blue, 4.0)]);
        bench.read(pot, before);
        bench.pour(pot, bench.red, red, PourStep::Correction);
        let after = bench.look(&[(bench.white, 500.0), (bench.blue, 4.0), (bench.red, red)]);
        bench.read(pot, after);
        let learned = component_colour(&bench.press.shop(), bench.red).unwrap().strength;
        assert_eq!(learned.samples as usize, round + 1);
    }
    let learned = component_colour(&bench.press.shop(), bench.red).unwrap().strength;
    assert!((1.15..1.4).contains(&learned.factor), "{learned:?}");
    let blue = component_colour(&bench.press.shop(), bench.blue).unwrap().strength;
    assert_eq!((blue.factor, blue.samples), (1.0, 0));
}

#[test]
fn a_correction_found_to_match_by_eye_teaches_as_if_the_target_had_been_read_when_it_moved_far_enough() {
    let mut bench = Bench::characterised();
    bench.truth.insert(bench.red, bench.truth[&bench.red].times(1.4));
    let (white, red) = (bench.white, bench.red);
    let mut corrected = |grams: f64, matches: bool| {
        let target = bench.look(&[(white, 500.0), (red, grams)]);
        let (_, revision) = bench.recipe("Rose", &[(white, 100.0)], Some(target));
        let pot = bench.pot(revision, None);
        bench.pour(pot, white, 500.0, PourStep::WeighIn);
        bench.read(pot, bench.look(&[(white, 500.0)]));
        bench.pour(pot, red, grams, PourStep::Correction);
        if matches {
            said(
                &mut bench.press,
                Uuid::from_u128(0xE1E0 + grams as u128),
                InkFact::Matched { pot, reading: None, by: None },
            );
        }
        component_colour(&bench.press.shop(), red).unwrap().strength
    };
    assert_eq!(corrected(6.0, false).samples, 0, "nobody said how it came out");
    assert_eq!(corrected(0.05, true).samples, 0, "so small a move the eye does not judge");
    let learned = corrected(8.0, true);
    assert_eq!(learned.samples, 1);
    assert!((1.08..1.4).contains(&learned.factor), "{learned:?}");
}

#[test]
fn two_additions_at_once_teach_nothing() {
    let mut bench = Bench::characterised();
    let (_, revision) = bench.recipe("Rose", &[(bench.white, 99.0), (bench.blue, 1.0)], None);
    let pot = bench.pot(revision, None);
    bench.pour(pot, bench.white, 500.0, PourStep::WeighIn);
    bench.read(pot, bench.look(&[(bench.white, 500.0)]));
    bench.pour(pot, bench.red, 5.0, PourStep::Correction);
    bench.pour(pot, bench.blue, 5.0, PourStep::Correction);
    bench.read(pot, Lab::new(50.0, 10.0, -10.0));
    for pigment in [bench.red, bench.blue] {
        assert_eq!(component_colour(&bench.press.shop(), pigment).unwrap().strength.samples, 0);
    }
}

#[test]
fn a_recipe_read_on_the_garment_is_worked_out_on_the_garment() {
    let mut bench = Bench::characterised();
    let run = bench.press.order("Tees", None, Fabric::Cotton, &[(Size::L, 40)]);
    let lot = bench.press.shop().run(run).unwrap().lot.unwrap();
    let black = lastpull_core::colour::Colour { rgb: [30, 30, 34] };
    bench.press.say(lot, Fact::LotSet(vec![LotField::Colour(black), LotField::ColourName("Black".into())]));
    bench.press.say(run, Fact::RunSet(vec![RunField::Ink("violet ".into()), RunField::Hits(2)]));
    let (recipe, revision) =
        bench.recipe("Violet", &[(bench.clear, 95.0), (bench.blue, 5.0)], Some(Lab::new(30.0, 5.0, -20.0)));
    let pot = bench.pot(revision, None);
    bench.pour(pot, bench.clear, 95.0, PourStep::WeighIn);
    bench.pour(pot, bench.blue, 5.0, PourStep::WeighIn);
    let thick = bench.view(pot);
    assert_eq!((thick.on, thick.garment.as_ref().map(|garment| garment.read)), (ReadOn::Thick, Some(false)));
    said(&mut bench.press, recipe, InkFact::RecipeSet(vec![RecipeField::ReadOn(ReadOn::Garment)]));
    let printed = bench.view(pot);
    assert_eq!((printed.on, printed.hits), (ReadOn::Garment, 2));
    assert!(printed.look.unwrap().l < 18.0, "clear ink on black stays black: {:?}", printed.look);
    // The garment turns out to be lighter than its picture.
    let read = reading_of(Lab::new(60.0, 0.0, 0.0), ReadBy::Instrument);
    said(&mut bench.press, lot, InkFact::GarmentRead(Some(read)));
    let lighter = bench.view(pot);
    assert!(lighter.garment.as_ref().unwrap().read && lighter.look.unwrap().l > printed.look.unwrap().l + 5.0);
    let runs = cover_runs(&bench.press.shop(), recipe);
    assert_eq!((runs.len(), runs[0].pieces, runs[0].title.as_str()), (1, 40, "Tees"));
}

fn ask(garment: Lab, pieces: u32) -> CoverageQuery {
    CoverageQuery { garment, underbase: None, pieces, work: LabourTimes { hit: 6.0, flash: 12.0, screen: 30.0 } }
}

#[test]
fn a_transparent_ink_vanishes_on_violet_and_an_underbase_saves_it() {
    let mut bench = Bench::characterised();
    let shirt = Lab::new(32.0, 30.0, -40.0);
    let target = bench.look(&[(bench.white, 60.0), (bench.yellow, 4.0)]);
    let (recipe, _) = bench.recipe("Lemon", &[(bench.clear, 94.0), (bench.yellow, 6.0)], Some(target));
    let view = cover_view(&bench.press.shop(), recipe, &ask(shirt, 60)).unwrap();
    assert_eq!(view.rows.len(), 5);
    assert_eq!((view.underbase.as_ref().unwrap().1.as_str(), view.whites.len()), ("White", 1));
    let off = |hits, underbase| {
        view.rows.iter().find(|row| (row.look.way.hits, row.look.way.underbase) == (hits, underbase)).unwrap().look.off
    };
    assert!(off(3, 0) > 20.0 && off(1, 1) < off(3, 0) / 2.0, "{:?}", view.rows);
    assert!(view.cheapest.is_none_or(|place| view.rows[place].look.way.underbase == 1));
    // 60 pieces of 6 s; and a hit and a flash of 12 s more each with another screen of 30 min.
    assert!((view.rows[0].minutes - 6.0).abs() < 1e-9 && (view.rows[3].minutes - 54.0).abs() < 1e-9);
    assert!((view.rows[1].minutes - 24.0).abs() < 1e-9);
}

#[test]
fn an_opaque_ink_needs_fewer_hits_on_a_light_shirt() {
    let mut bench = Bench::characterised();
    let parts = [(bench.white, 97.0), (bench.blue, 3.0)];
    let (recipe, _) = bench.recipe("Sky", &parts, None);
    let cover = |garment| cover_view(&bench.press.shop(), recipe, &ask(garment, 30)).unwrap();
    let (light, dark) = (cover(Lab::new(90.0, 0.0, 2.0)), cover(Lab::new(12.0, 0.0, 0.0)));
    assert!(light.rows[0].look.off < dark.rows[0].look.off - 2.0, "{:?} {:?}", light.rows, dark.rows);
    assert!(light.cheapest.is_some() && light.cheapest <= dark.cheapest && !light.is_target);
    for view in [&light, &dark] {
        assert!(view.rows.windows(2).take(2).all(|two| two[0].look.contrast_ratio < two[1].look.contrast_ratio));
    }
}

#[test]
fn cover_says_what_is_missing() {
    let mut bench = Bench::new();
    let (recipe, _) = bench.recipe("Lemon", &[(bench.clear, 94.0), (bench.yellow, 6.0)], None);
    let Err(NoCover::Uncharacterised(rows)) = cover_view(&bench.press.shop(), recipe, &ask(Lab::default(), 1)) else {
        panic!()
    };
    assert_eq!(rows.iter().map(|row| row.name.as_str()).collect::<Vec<_>>(), ["Yellow"]);
    let nowhere = bench.press.id();
    assert_eq!(cover_view(&bench.press.shop(), nowhere, &ask(Lab::default(), 1)), Err(NoCover::NoParts));
}

#[test]
fn what_ways_take_is_typed_and_checked() {
    let bench = Bench::new();
    let form = CoverForm::of(&bench.press.shop(), None);
    let (pieces, work) = form.check().unwrap();
    assert_eq!((pieces, work.hit, work.screen), (48, 6.0, 30.0));
    let problems = CoverForm { pieces: String::new(), flash: "-1".into(), ..form }.check().unwrap_err();
    assert!(problems.contains_key("pieces") && problems.contains_key("flash"));
}

#[test]
fn a_shelf_of_twelve_pigments_is_worked_out_in_a_moment() {
    // Not a bound on time: that is measured in the browser. Only that a full shelf gives an answer.
    let (mut bench, pot, _) = Bench::violet(None);
    for place in 0..9 {
        let id = bench.press.id();
        let fields = vec![ComponentField::Name(format!("P{place}")), ComponentField::Kind(ComponentKind::Pigment)];
        said(&mut bench.press, id, InkFact::ComponentSet(fields));
        bench.truth.insert(id, hump(f64::from(place) * 3.0, 4.0, 9.0, 0.1, 0.2));
        bench.draw(id, 10.0, Some(bench.white), RecordedLayer::Hiding, true);
        bench.draw(id, 100.0, None, RecordedLayer::Hiding, true);
    }
    let advice = bench.view(pot).advice.unwrap();
    assert_eq!(advice.candidates, 14);
    assert!(advice.ways.last().unwrap().after.de2000 <= advice.before);
}

#[test]
fn a_photo_that_brought_the_target_takes_it_along_when_it_is_taken_back() {
    let (mut bench, pot, _) = Bench::violet(None);
    let recipe = bench.view(pot).recipe.unwrap();
    let target = |bench: &Bench| bench.press.shop().ink.recipe(recipe).unwrap().target;
    for before in [None, target(&bench)] {
        said(&mut bench.press, recipe, InkFact::RecipeSet(vec![RecipeField::Target(before)]));
        let seen = |l| reading_of(Lab::new(l, 3.0, 4.0), ReadBy::Photo);
        let read = PhotoSample { sample: seen(40.0), target: Some(seen(42.0)) };
        let event = bench.press.id();
        let [facts, undo] = reading_facts(&bench.press.shop(), pot, event, read, Some("Ines"));
        for (subject, fact) in facts {
            bench.press.say(subject, fact);
        }
        assert_eq!(target(&bench), Some(seen(42.0)));
        assert_eq!(bench.view(pot).reading.unwrap().reading, seen(40.0));
        for (subject, fact) in undo {
            bench.press.say(subject, fact);
        }
        assert_eq!(target(&bench), before);
        assert_ne!(bench.view(pot).reading.map(|read| read.event), Some(event));
    }
}

#[test]
fn a_match_and_a_yes_name_the_reading_they_rest_on_and_none_once_something_went_in() {
    let (mut bench, pot, _) = Bench::violet(None);
    let read = bench.view(pot).reading.unwrap();
    assert_eq!(reading_now(&bench.press.shop(), pot), Some(read.reading));
    let said_yes = |bench: &Bench| {
        let mut ids = 900_u128..;
        let facts =
            approve_facts(&bench.press.shop(), pot, "Violet", "Moss", None, || Uuid::from_u128(ids.next().unwrap()));
        let facts = with_reading(&bench.press.shop(), facts);
        let Some((_, Fact::Ink(InkFact::Approved { reading, .. }))) = facts.last() else { panic!("{facts:?}") };
        *reading
    };
    assert_eq!(said_yes(&bench), Some(read.reading));
    bench.say(InkFact::Matched { pot, reading: Some(read.reading), by: None });
    // The reading taken back is gone, though the match named it.
    bench.press.say(read.event, Fact::Deleted);
    assert_eq!((reading_now(&bench.press.shop(), pot), bench.view(pot).reading), (None, None));
    bench.press.say(read.event, Fact::Restored);
    bench.pour(pot, bench.red, 1.0, PourStep::Correction);
    assert_eq!((reading_now(&bench.press.shop(), pot), said_yes(&bench)), (None, None));
}
