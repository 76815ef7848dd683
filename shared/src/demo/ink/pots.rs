//! Facts about pots, for short.

use crate::demo::language::{INES, MOSS, Text};
use crate::demo::maker::Maker;
use crate::facts::{BatchSize, Fact, InkFact, Part, PotField, PourStep, PrintUse, Share};
use crate::ids::{RunId, Subject};
use crate::ink::save_pot;
use crate::shop::Shop;
use crate::time::{Millis, WallTime};
use crate::units::{Grams, Length};
use uuid::Uuid;

pub(crate) const MINUTE: Millis = Millis::from_minutes(1);
pub(crate) const HOUR: Millis = Millis::from_hours(1);
pub(crate) const DAY: Millis = Millis::from_days(1);

pub(crate) fn record<N: FnMut() -> Uuid>(maker: &mut Maker<N>, at: WallTime, subject: Subject, fact: InkFact) {
    maker.record(at, subject, Fact::Ink(fact));
}

/// Records an event with an id of its own.
pub(crate) fn record_event<N: FnMut() -> Uuid>(maker: &mut Maker<N>, at: WallTime, fact: InkFact) -> Subject {
    let id = maker.id();
    record(maker, at, id, fact);
    id
}

/// The percentage of each component.
pub(crate) type Percents = [(Subject, f64)];

pub(crate) fn part(&(component, percent): &(Subject, f64), on_top: bool) -> Part {
    Part { component, share: Share::from_percent(percent), on_top }
}

/// A pot to be mixed.
pub(crate) struct Mix {
    pub(crate) id: Subject,
    pub(crate) name: Text,
    pub(crate) revision: Subject,
    pub(crate) grams: f64,
    pub(crate) run: Option<RunId>,
}

pub(crate) fn pot<N: FnMut() -> Uuid>(maker: &mut Maker<N>, at: WallTime, mix: &Mix) {
    let fields = vec![
        PotField::Name(maker.language.say(mix.name)),
        PotField::Revision(Some(mix.revision)),
        PotField::Size(Some(BatchSize::Whole(Grams::from_grams(mix.grams)))),
        PotField::Capacity(Some(Grams::from_grams(if mix.grams > 250.0 { 900.0 } else { 400.0 }))),
        PotField::Run(mix.run),
    ];
    record(maker, at, mix.id, InkFact::PotSet(fields));
}

/// Pours the components at the scale, one every minute and a half. Returns the time of the last.
pub(crate) fn pour<N: FnMut() -> Uuid>(
    maker: &mut Maker<N>,
    at: WallTime,
    pot: Subject,
    step: PourStep,
    pours: &[(Subject, f64, Text)],
) -> WallTime {
    let mut at = at;
    for (component, grams, note) in pours {
        at += Millis::from_ms(90_000);
        let poured = InkFact::Poured {
            pot,
            component: *component,
            grams: Grams::from_grams(*grams),
            step,
            note: maker.language.say(*note),
            reading: None,
            by: Some(maker.language.say(INES)),
        };
        record_event(maker, at, poured);
    }
    at
}

/// A revision that is typed, and its parent.
pub(crate) struct Typed {
    pub(crate) recipe: Subject,
    pub(crate) number: u16,
    pub(crate) parts: Vec<Part>,
    pub(crate) parent: Option<Subject>,
}

/// Saves a typed revision. Returns its id.
pub(crate) fn save<N: FnMut() -> Uuid>(maker: &mut Maker<N>, at: WallTime, typed: Typed, note: Text) -> Subject {
    let Typed { recipe, number, parts, parent } = typed;
    let (note, by) = (maker.language.say(note), Some(maker.language.say(INES)));
    let saved = InkFact::RevisionSaved { recipe, number, parts, parent, pot: None, note, by };
    record_event(maker, at, saved)
}

/// Saves the contents of a pot as a revision.
pub(crate) fn save_from<N: FnMut() -> Uuid>(
    maker: &mut Maker<N>,
    at: WallTime,
    pot: Subject,
    recipe: Subject,
    note: Text,
) -> Option<Subject> {
    let mut shop = Shop::default();
    shop.apply_all(&maker.entries());
    let (note, by) = (maker.language.say(note), maker.language.say(INES));
    save_pot(&shop, pot, recipe, &note, Some(&by)).map(|fact| record_event(maker, at, fact))
}

/// Records that a pot matches its target, by eye.
pub(crate) fn match_pot<N: FnMut() -> Uuid>(maker: &mut Maker<N>, at: WallTime, pot: Subject) {
    let by = Some(maker.language.say(INES));
    record_event(maker, at, InkFact::Matched { pot, reading: None, by });
}

/// Records that a client approved a revision, as mixed in a pot.
pub(crate) fn approve<N: FnMut() -> Uuid>(
    maker: &mut Maker<N>,
    at: WallTime,
    (revision, pot): (Subject, Subject),
    client: Text,
) {
    let (client, by) = (maker.language.say(client), Some(maker.language.say(INES)));
    record_event(maker, at, InkFact::Approved { revision, pot: Some(pot), client, reading: None, by });
}

pub(crate) fn of_ink(percents: &Percents) -> Vec<Part> {
    percents.iter().map(|row| part(row, false)).collect()
}

/// A print of art with sides in millimetres and a printed share, through a mesh with its ink volume in
/// hundredths of a cm³/m².
pub(crate) fn art(sides: [f64; 2], coverage: u16, volume: u16, hits: u8) -> PrintUse {
    let [width, height] = sides.map(Length::from_millimetres);
    PrintUse { width, height, coverage, volume, hits, transfer: 800, density: 1_200, loss: 100 }
}

/// Records a weighing after a run.
pub(crate) fn used<N: FnMut() -> Uuid>(
    maker: &mut Maker<N>,
    at: WallTime,
    pot: Subject,
    (run, pieces): (RunId, u32),
    (print, grams): (&PrintUse, f64),
) {
    record(maker, at, run, InkFact::PrintSet(Some(*print)));
    let (grams, paper) = (Grams::from_grams(grams), Some(print.nominal_use(pieces)));
    let used = InkFact::Used { pot, run: Some(run), grams, pieces, paper, by: Some(maker.language.say(MOSS)) };
    record_event(maker, at, used);
}
