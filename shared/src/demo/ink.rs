//! The ink bench of the invented shop: what it mixes of, its recipes and how they came to be, pots of the
//! earlier weeks and of today, and what was printed from them.

use super::maker::Maker;
use super::screens::DayRuns;
use crate::colour::Colour;
use crate::facts::ink::{InkFact, PourStep};
use crate::facts::{
    BatchSize, ComponentField, ComponentKind, Fact, Hiding, Part, PotField, PrintUse, RecipeField, Share,
};
use crate::ids::{RunId, Subject};
use crate::ink::save_pot;
use crate::shop::Shop;
use crate::units::{Grams, Length};
use uuid::Uuid;

const MINUTE: u64 = 60_000;
const HOUR: u64 = 60 * MINUTE;
const DAY: u64 = 24 * HOUR;

/// A run of the earlier weeks that left the press.
pub(super) struct Printed {
    /// The run.
    pub(super) run: RunId,
    /// Pieces it planned.
    pub(super) pieces: u32,
    /// When it ended.
    pub(super) ended: u64,
}

/// What the bench is made of, for whoever invents more about it.
pub(super) struct DemoInks {
    pub(super) clear: Subject,
    pub(super) filled: Subject,
    pub(super) yellow: Subject,
    pub(super) red: Subject,
    pub(super) blue: Subject,
    pub(super) black: Subject,
    pub(super) white: Subject,
    pub(super) retarder: Subject,
    pub(super) bonder: Subject,
    /// Mixed, printed and approved.
    pub(super) apricot: Subject,
    /// Approved, with a newer revision nobody said yes to.
    pub(super) bone: Subject,
    /// On the scale now; nobody said yes to it yet.
    pub(super) signal: Subject,
    /// Being corrected.
    pub(super) fern: Subject,
    /// The pot of it.
    pub(super) fern_pot: Subject,
    /// Today's pot of apricot.
    pub(super) apricot_pot: Subject,
}

/// Everything at the ink bench. `earlier` are the runs of the weeks before, oldest first: by turns apricot and bone.
pub(super) fn bench<N: FnMut() -> Uuid>(maker: &mut Maker<N>, day: &DayRuns, earlier: &[Printed]) -> DemoInks {
    let inks = shelf(maker);
    apricot(maker, &inks, day, earlier);
    bone(maker, &inks, day, earlier);
    fern(maker, &inks, day);
    signal(maker, &inks, day);
    inks
}

/// What a component is, as its row of the table says.
struct Invented {
    name: &'static str,
    kind: ComponentKind,
    colour: Option<&'static str>,
    hiding: Hiding,
    density: u16,
    cost: u32,
    /// Percent: of itself, or of pigment in a base.
    most: Option<f64>,
    /// Grams: told below, bought in, weighed two days ago.
    weights: [f64; 3],
}

const fn pigment(name: &'static str, colour: &'static str, cost: u32, weights: [f64; 3]) -> Invented {
    Invented {
        name,
        kind: ComponentKind::Pigment,
        colour: Some(colour),
        hiding: Hiding::Transparent,
        density: 1_120,
        cost,
        most: Some(8.0),
        weights,
    }
}

/// The shelf. Names, prices and data sheets are invented, as everything here.
const SHELF: [Invented; 9] = [
    Invented {
        name: "Base, clear",
        kind: ComponentKind::Base,
        colour: None,
        hiding: Hiding::Transparent,
        density: 1_030,
        cost: 1_450,
        most: Some(15.0),
        weights: [500.0, 5_000.0, 132.0],
    },
    Invented {
        name: "Base, white-filled",
        kind: ComponentKind::Base,
        colour: Some("#f4f1e8"),
        hiding: Hiding::Opaque,
        density: 1_290,
        cost: 1_980,
        most: Some(10.0),
        weights: [800.0, 5_000.0, 3_120.0],
    },
    pigment("Yellow", "#f0b400", 6_200, [100.0, 500.0, 61.0]),
    pigment("Warm red", "#cf3a28", 7_100, [80.0, 500.0, 214.0]),
    pigment("Blue", "#1d4d9e", 6_800, [80.0, 500.0, 342.0]),
    pigment("Black", "#1b1b1d", 5_400, [60.0, 500.0, 287.0]),
    Invented {
        name: "Base, dense white",
        kind: ComponentKind::Base,
        colour: Some("#faf9f5"),
        hiding: Hiding::Opaque,
        density: 1_620,
        cost: 3_300,
        most: Some(5.0),
        weights: [300.0, 1_000.0, 780.0],
    },
    Invented {
        name: "Retarder",
        kind: ComponentKind::Additive,
        colour: None,
        hiding: Hiding::Transparent,
        density: 1_060,
        cost: 2_200,
        most: Some(5.0),
        weights: [50.0, 500.0, 410.0],
    },
    Invented {
        name: "Bonding additive",
        kind: ComponentKind::Additive,
        colour: None,
        hiding: Hiding::Transparent,
        density: 1_080,
        cost: 8_900,
        most: Some(4.0),
        weights: [20.0, 100.0, 64.0],
    },
];

fn shelf<N: FnMut() -> Uuid>(maker: &mut Maker<N>) -> DemoInks {
    let (start, weighed) = (maker.clock.now - 15 * DAY, maker.clock.now - 2 * DAY);
    let [clear, filled, yellow, red, blue, black, white, retarder, bonder] = SHELF.map(|row| {
        let id = maker.id();
        let [low, tub, left] = row.weights.map(Grams::from_grams);
        let share = row.most.map(Share::from_percent);
        let is_base = row.kind == ComponentKind::Base;
        let fields = vec![
            ComponentField::Name(row.name.into()),
            ComponentField::Kind(row.kind),
            ComponentField::Colour(row.colour.and_then(Colour::from_hex)),
            ComponentField::Hiding(row.hiding),
            ComponentField::Density(Some(row.density)),
            ComponentField::Cost(Some(row.cost)),
            if is_base { ComponentField::MostPigment(share) } else { ComponentField::Most(share) },
            ComponentField::LowAt(Some(low)),
            ComponentField::Tub(Some(tub)),
        ];
        tell(maker, start, id, InkFact::ComponentSet(fields));
        let counted = InkFact::Counted { component: id, grams: left, by: Some("Moss".into()) };
        happened(maker, weighed, counted);
        id
    });
    let delivered = |component, grams| InkFact::Delivered {
        component,
        grams: Grams::from_grams(grams),
        note: "With the tees, on the pallet".into(),
        by: Some("Ines".into()),
    };
    happened(maker, start + HOUR, delivered(filled, 5_000.0));
    happened(maker, start + HOUR, delivered(white, 1_000.0));
    let mut recipe = |name: &str, colour: &str, note: &str| {
        let id = maker.id();
        let fields = vec![
            RecipeField::Name(name.into()),
            RecipeField::Colour(Colour::from_hex(colour)),
            RecipeField::Note(note.into()),
        ];
        tell(maker, start, id, InkFact::RecipeSet(fields));
        id
    };
    let apricot = recipe("Apricot", "#f2a65a", "Flash between hits, or it drags.");
    let bone = recipe("Bone", "#ece4d2", "");
    let signal = recipe("Signal white", "#f7f5ef", "Bonding additive on the day: it works for eight hours.");
    let fern = recipe("Fern", "#3f6b3a", "");
    let [fern_pot, apricot_pot] = [maker.id(), maker.id()];
    DemoInks {
        clear,
        filled,
        yellow,
        red,
        blue,
        black,
        white,
        retarder,
        bonder,
        apricot,
        bone,
        signal,
        fern,
        fern_pot,
        apricot_pot,
    }
}

fn tell<N: FnMut() -> Uuid>(maker: &mut Maker<N>, at: u64, subject: Subject, fact: InkFact) {
    maker.say(at, subject, Fact::Ink(fact));
}

/// An event with an id of its own.
fn happened<N: FnMut() -> Uuid>(maker: &mut Maker<N>, at: u64, fact: InkFact) -> Subject {
    let id = maker.id();
    tell(maker, at, id, fact);
    id
}

/// Percent of each component.
type Percents = [(Subject, f64)];

fn part(&(component, percent): &(Subject, f64), on_top: bool) -> Part {
    Part { component, share: Share::from_percent(percent), on_top }
}

/// A pot that is mixed for something.
struct Mix<'a> {
    id: Subject,
    name: &'a str,
    revision: Subject,
    grams: f64,
    run: Option<RunId>,
}

fn pot<N: FnMut() -> Uuid>(maker: &mut Maker<N>, at: u64, mix: &Mix) {
    let fields = vec![
        PotField::Name(mix.name.into()),
        PotField::Revision(Some(mix.revision)),
        PotField::Size(Some(BatchSize::Whole(Grams::from_grams(mix.grams)))),
        PotField::Capacity(Some(Grams::from_grams(if mix.grams > 250.0 { 900.0 } else { 400.0 }))),
        PotField::Run(mix.run),
    ];
    tell(maker, at, mix.id, InkFact::PotSet(fields));
}

/// Pours at the scale, one every minute and a half. Returns when the last was in.
fn pour<N: FnMut() -> Uuid>(
    maker: &mut Maker<N>,
    at: u64,
    pot: Subject,
    step: PourStep,
    pours: &[(Subject, f64, &str)],
) -> u64 {
    let mut at = at;
    for (component, grams, note) in pours {
        at += 90_000;
        let poured = InkFact::Poured {
            pot,
            component: *component,
            grams: Grams::from_grams(*grams),
            step,
            note: (*note).into(),
            reading: None,
            by: Some("Ines".into()),
        };
        happened(maker, at, poured);
    }
    at
}

fn saved(recipe: Subject, number: u16, parts: Vec<Part>, from: [Option<Subject>; 2], note: &str) -> InkFact {
    let [parent, pot] = from;
    InkFact::RevisionSaved { recipe, number, parts, parent, pot, note: note.into(), by: Some("Ines".into()) }
}

/// What a pot holds, saved as a revision.
fn saved_from<N: FnMut() -> Uuid>(
    maker: &mut Maker<N>,
    at: u64,
    pot: Subject,
    recipe: Subject,
    note: &str,
) -> Option<Subject> {
    let mut shop = Shop::default();
    shop.apply_all(&maker.entries());
    save_pot(&shop, pot, recipe, note, Some("Ines")).map(|fact| happened(maker, at, fact))
}

fn approved(revision: Subject, pot: Option<Subject>, client: &str) -> InkFact {
    InkFact::Approved { revision, pot, client: client.into(), reading: None, by: Some("Ines".into()) }
}

fn of_ink(percents: &Percents) -> Vec<Part> {
    percents.iter().map(|row| part(row, false)).collect()
}

/// Art of so many millimetres, a share of it printed, through a mesh of so many hundredths of a cm³/m².
fn art(sides: [f64; 2], coverage: u16, volume: u16, hits: u8) -> PrintUse {
    let [width, height] = sides.map(Length::from_millimetres);
    PrintUse { width, height, coverage, volume, hits, transfer: 800, density: 1_200, loss: 100 }
}

/// A weighing after a run.
fn used<N: FnMut() -> Uuid>(
    maker: &mut Maker<N>,
    at: u64,
    pot: Subject,
    (run, pieces): (RunId, u32),
    (print, grams): (&PrintUse, f64),
) {
    tell(maker, at, run, InkFact::PrintSet(Some(*print)));
    let (grams, paper) = (Grams::from_grams(grams), Some(print.on_paper(pieces)));
    let used = InkFact::Used { pot, run: Some(run), grams, pieces, paper, by: Some("Moss".into()) };
    happened(maker, at, used);
}

/// Written down, corrected in the pot, saved, approved; mixed again this morning.
fn apricot<N: FnMut() -> Uuid>(maker: &mut Maker<N>, inks: &DemoInks, day: &DayRuns, earlier: &[Printed]) {
    let now = maker.clock.now;
    let begun = now - 14 * DAY - 5 * HOUR;
    let written = of_ink(&[(inks.filled, 92.5), (inks.yellow, 5.0), (inks.red, 2.5)]);
    let first = happened(maker, begun, saved(inks.apricot, 1, written, [None; 2], "From the sample card, by eye"));
    let id = maker.id();
    pot(maker, begun, &Mix { id, name: "Apricot, big", revision: first, grams: 400.0, run: None });
    let weighed = [(inks.filled, 370.0, ""), (inks.yellow, 20.0, ""), (inks.red, 10.0, "")];
    let at = pour(maker, begun, id, PourStep::WeighIn, &weighed);
    let at = pour(
        maker,
        at + 12 * MINUTE,
        id,
        PourStep::Correction,
        &[(inks.red, 2.0, "A touch of red: too yellow beside the sample"), (inks.black, 0.4, "Cleaner than theirs")],
    );
    let second = saved_from(maker, at + 6 * MINUTE, id, inks.apricot, "As it matched in the pot").unwrap_or(first);
    happened(maker, at + 7 * MINUTE, InkFact::Matched { pot: id, reading: None, by: Some("Ines".into()) });
    happened(maker, at + 40 * MINUTE, approved(second, Some(id), "Gull & Lantern Ferry"));
    let print = art([280.0, 320.0], 350, 3_641, 2);
    for (printed, grams) in earlier.iter().step_by(2).zip([158.0, 131.0]) {
        used(maker, printed.ended + 5 * MINUTE, id, (printed.run, printed.pieces), (&print, grams));
    }
    let emptied = InkFact::Wasted {
        pot: id,
        grams: Grams::from_grams(113.4),
        note: "Skinned over".into(),
        by: Some("Moss".into()),
    };
    happened(maker, now - 6 * DAY, emptied);
    tell(maker, now - 6 * DAY + MINUTE, id, InkFact::PotSet(vec![PotField::Closed(true)]));
    // This morning, for the choir.
    let morning = now - 70 * MINUTE;
    let id = inks.apricot_pot;
    pot(maker, morning, &Mix { id, name: "Apricot, choir", revision: second, grams: 200.0, run: Some(day.front) });
    let weighed = [(inks.filled, 183.9, ""), (inks.yellow, 9.9, ""), (inks.red, 6.0, ""), (inks.black, 0.2, "")];
    let at = pour(maker, morning, id, PourStep::WeighIn, &weighed);
    happened(maker, at + 5 * MINUTE, InkFact::Matched { pot: id, reading: None, by: Some("Ines".into()) });
    happened(maker, at + 12 * MINUTE, approved(second, Some(id), "Harbour Night Choir"));
    tell(maker, morning - MINUTE, day.front, InkFact::PrintSet(Some(print)));
}

/// Approved, mixed, and changed since by somebody nobody said yes to.
fn bone<N: FnMut() -> Uuid>(maker: &mut Maker<N>, inks: &DemoInks, day: &DayRuns, earlier: &[Printed]) {
    let now = maker.clock.now;
    let begun = now - 13 * DAY - 5 * HOUR;
    let written = of_ink(&[(inks.filled, 97.2), (inks.yellow, 1.8), (inks.red, 0.6), (inks.black, 0.4)]);
    let first = happened(maker, begun, saved(inks.bone, 1, written, [None; 2], ""));
    let id = maker.id();
    pot(maker, begun, &Mix { id, name: "Bone", revision: first, grams: 300.0, run: None });
    let weighed = [(inks.filled, 291.6, ""), (inks.yellow, 5.4, ""), (inks.red, 1.8, ""), (inks.black, 1.2, "")];
    let at = pour(maker, begun, id, PourStep::WeighIn, &weighed);
    happened(maker, at + 10 * MINUTE, approved(first, Some(id), "Marsh Lane Seed Library"));
    let print = art([90.0, 90.0], 500, 2_817, 1);
    for (printed, grams) in earlier.iter().skip(1).step_by(2).zip([14.5, 12.0]) {
        used(maker, printed.ended + 5 * MINUTE, id, (printed.run, printed.pieces), (&print, grams));
    }
    let bib = art([200.0, 160.0], 400, 2_817, 1);
    used(maker, day.bib_ended + 5 * MINUTE, id, (day.bib, 18), (&bib, 15.6));
    let warmer = of_ink(&[(inks.filled, 96.9), (inks.yellow, 2.0), (inks.red, 0.8), (inks.black, 0.3)]);
    let note = "A little warmer, for the natural canvas";
    happened(maker, now - 3 * DAY, saved(inks.bone, 2, warmer, [Some(first), None], note));
}

/// For tomorrow's totes: weighed in, and nudged twice so far.
fn fern<N: FnMut() -> Uuid>(maker: &mut Maker<N>, inks: &DemoInks, day: &DayRuns) {
    let begun = maker.clock.now - 100 * MINUTE;
    let mut written = of_ink(&[(inks.clear, 90.0), (inks.yellow, 5.6), (inks.blue, 3.4), (inks.black, 1.0)]);
    written.push(part(&(inks.retarder, 2.0), true));
    let first = happened(maker, begun, saved(inks.fern, 1, written, [None; 2], ""));
    let id = inks.fern_pot;
    pot(maker, begun, &Mix { id, name: "Fern, totes", revision: first, grams: 102.0, run: Some(day.totes) });
    let weighed = [
        (inks.clear, 90.0, ""),
        (inks.yellow, 5.6, ""),
        (inks.blue, 3.4, ""),
        (inks.black, 1.0, ""),
        (inks.retarder, 2.0, ""),
    ];
    let at = pour(maker, begun, id, PourStep::WeighIn, &weighed);
    let nudges = [(inks.blue, 0.4, "Yellower than the leaf: a touch of blue"), (inks.blue, 0.2, "A little more blue")];
    pour(maker, at + 8 * MINUTE, id, PourStep::Correction, &nudges);
    let print = art([320.0, 320.0], 600, 3_641, 1);
    tell(maker, begun, day.totes, InkFact::PrintSet(Some(print)));
}

/// For the jerseys, next on the press: the base is in, the rest is to be weighed.
fn signal<N: FnMut() -> Uuid>(maker: &mut Maker<N>, inks: &DemoInks, day: &DayRuns) {
    let now = maker.clock.now;
    let mut written = of_ink(&[(inks.filled, 70.0), (inks.white, 30.0)]);
    written.push(part(&(inks.bonder, 3.0), true));
    let first = happened(maker, now - 8 * DAY, saved(inks.signal, 1, written, [None; 2], "For polyester only"));
    let (id, begun) = (maker.id(), now - 9 * MINUTE);
    pot(maker, begun, &Mix { id, name: "White, jerseys", revision: first, grams: 206.0, run: Some(day.back) });
    pour(maker, begun, id, PourStep::WeighIn, &[(inks.filled, 140.0, "")]);
    let print = art([320.0, 380.0], 450, 3_641, 2);
    tell(maker, begun, day.back, InkFact::PrintSet(Some(print)));
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::demo::day::tests::shop;
    use crate::ink::{
        Alike, Low, PotStage, ink_names, ink_shelf, limits_broken, make_again, pot_card, pot_label, pot_state,
        recipe_card, recipe_for, run_ink, stock_view, suggested_batch, weigh_in_view,
    };
    use crate::plan::rail;

    const NOW: u64 = 1_795_638_600_000;

    #[test]
    fn the_demo_bench_fills_every_ink_screen() {
        let (shop, _) = shop(NOW);
        let shelf = ink_shelf(&shop);
        let needed: Vec<_> = shelf.needed.iter().map(|row| (row.ink.as_str(), row.recipe.is_some())).collect();
        assert_eq!(needed, [("Apricot", true), ("Signal white", true), ("Fern", true), ("Night", false)]);
        let [choir, jerseys, totes, ladder] = &shelf.needed[..] else { panic!("{:?}", shelf.needed) };
        assert_eq!(choir.to_mix, Some(Grams::ZERO), "the choir's is mixed: {choir:?}");
        assert!(jerseys.to_mix.is_some_and(Grams::is_positive) && totes.to_mix.is_some_and(Grams::is_positive));
        assert!(ladder.grams.is_none());
        let pots: Vec<_> = shelf.pots.iter().map(|pot| (pot.name.as_str(), pot.stage)).collect();
        assert_eq!(
            pots,
            [
                ("White, jerseys", PotStage::Weighing),
                ("Apricot, choir", PotStage::Approved),
                ("Fern, totes", PotStage::Mixed),
                ("Bone", PotStage::Approved),
            ]
        );
        assert_eq!((shelf.recipes.len(), shelf.components, shelf.low), (4, 9, 2));
        for pot in &shelf.pots {
            let card = pot_card(&shop, pot.id).unwrap();
            assert!(!card.ledger.is_empty() && pot_label(&shop, pot.id).is_some());
            assert!(!pot_state(&shop, pot.id).short.is_positive(), "{card:?}");
        }
        let half = weigh_in_view(&shop, shelf.pots[0].id, None).unwrap();
        assert_eq!((half.now, half.done), (Some(1), false));
        assert_eq!(pot_state(&shop, shelf.pots[2].id).changes, 2);
    }

    #[test]
    fn the_demo_runs_find_their_ink() {
        let (shop, clock) = shop(NOW);
        let pots = |run: usize| {
            let found = run_ink(&shop, rail(&shop, clock).runs[run].id);
            found.map(|ink| ink.pots.into_iter().map(|pot| pot.name).collect::<Vec<_>>())
        };
        assert_eq!(pots(0).unwrap(), ["Apricot, choir"]);
        assert_eq!(pots(1).unwrap(), ["White, jerseys"]);
        assert_eq!(pots(3), None, "nobody wrote down what night is mixed of");
        assert_eq!(ink_names(&shop), ["Apricot", "Bone", "Fern", "Night", "Signal white"]);
    }

    #[test]
    fn the_demo_recipes_keep_their_limits_and_one_has_a_newer_revision_nobody_approved() {
        let (shop, _) = shop(NOW);
        let card = |ink| recipe_card(&shop, recipe_for(&shop, ink).unwrap().0).unwrap();
        let apricot = card("Apricot");
        assert_eq!(apricot.revisions.len(), 2);
        assert_eq!(apricot.best, Some(apricot.revisions[0].name.id));
        assert!(apricot.revisions[0].pot.is_some() && apricot.revisions[0].parent.is_some());
        assert_eq!(apricot.revisions[0].approval.as_ref().unwrap().client, "Harbour Night Choir");
        let bone = card("Bone");
        assert!(bone.newer_unapproved && bone.best == Some(bone.revisions[1].name.id));
        let again = make_again(&shop, bone.id, None, BatchSize::Whole(Grams::from_grams(500.0))).unwrap();
        assert_eq!((again.revision.number, again.newer.len()), (1, 1));
        assert!(card("Fern").revisions[0].on_top && card("Signal white").revisions[0].approval.is_none());
        for recipe in ["Apricot", "Bone", "Fern", "Signal white"].map(card) {
            for revision in recipe.revisions {
                let percent: Vec<_> = revision.parts.iter().map(|part| (part.component, part.percent)).collect();
                assert_eq!(limits_broken(&shop, &percent), []);
                assert!(revision.density.is_some() && revision.cost.unpriced == 0.0);
            }
        }
    }

    #[test]
    fn the_demo_shelf_runs_out_of_clear_before_the_totes_and_learned_what_runs_use() {
        let (shop, clock) = shop(NOW);
        let stock = stock_view(&shop);
        let low: Vec<_> = stock.rows.iter().filter_map(|row| Some((row.name.as_str(), row.low.clone()?))).collect();
        assert_eq!(low.len(), 2, "{low:?}");
        assert!(matches!(&low[0], ("Base, clear", Low::ForRun { title, .. }) if title == "Swap day totes"), "{low:?}");
        assert_eq!(low[1], ("Yellow", Low::BelowLimit));
        assert!(stock.cost > 0 && stock.unpriced == 0);
        assert_eq!(stock.unknown.len(), 1);
        let choir = rail(&shop, clock).runs[0].id;
        let batch = suggested_batch(&shop, choir, shop.ink.print(choir).unwrap(), 19);
        let learned = batch.experience.unwrap();
        assert_eq!((learned.alike, learned.weighings), (Alike::Ink, 2));
        assert!((1.1..2.5).contains(&learned.ratio), "{learned:?}");
    }
}
