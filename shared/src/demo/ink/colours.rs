//! The inks of the demo: how each was mixed, corrected, approved and used.

use super::pots::{
    DAY, HOUR, MINUTE, Mix, Typed, approve, art, match_pot, of_ink, part, pot, pour, record, record_event, save,
    save_from, used,
};
use super::shelf::DemoInks;
use crate::demo::ink::Printed;
use crate::demo::language::{BONE, CHOIR, EMPTY, FERRY, MOSS, SEEDS, text};
use crate::demo::maker::Maker;
use crate::demo::screens::DayRuns;
use crate::facts::{InkFact, PotField, PourStep};
use crate::units::Grams;
use uuid::Uuid;

/// Entered, corrected in the pot, saved, approved; mixed again this morning.
pub(crate) fn apricot<N: FnMut() -> Uuid>(maker: &mut Maker<N>, inks: &DemoInks, day: &DayRuns, earlier: &[Printed]) {
    let now = maker.clock.now;
    let begun = now - 14 * DAY - 5 * HOUR;
    let written = of_ink(&[(inks.filled, 92.5), (inks.yellow, 5.0), (inks.red, 2.5)]);
    let by_eye = text("From the sample card, by eye", "De la tarjeta de muestra, a ojo");
    let first = save(maker, begun, Typed { recipe: inks.apricot, number: 1, parts: written, parent: None }, by_eye);
    let id = maker.id();
    let name = text("Apricot, large batch", "Durazno, mezcla grande");
    pot(maker, begun, &Mix { id, name, revision: first, grams: 400.0, run: None });
    let weighed = [(inks.filled, 370.0, EMPTY), (inks.yellow, 20.0, EMPTY), (inks.red, 10.0, EMPTY)];
    let at = pour(maker, begun, id, PourStep::WeighIn, &weighed);
    let too_yellow =
        text("A touch of red: too yellow next to the sample", "Un toque de rojo: muy amarillo junto a la muestra");
    let too_clean = text("Cleaner than the sample", "Más limpio que la muestra");
    let corrections = [(inks.red, 2.0, too_yellow), (inks.black, 0.4, too_clean)];
    let at = pour(maker, at + 12 * MINUTE, id, PourStep::Correction, &corrections);
    let as_matched = text("As it matched", "Como quedó igual a la muestra");
    let second = save_from(maker, at + 6 * MINUTE, id, inks.apricot, as_matched).unwrap_or(first);
    match_pot(maker, at + 7 * MINUTE, id);
    approve(maker, at + 40 * MINUTE, (second, id), FERRY);
    let print = art([280.0, 320.0], 350, 3_641, 2);
    for (printed, grams) in earlier.iter().step_by(2).zip([158.0, 131.0]) {
        used(maker, printed.ended + 5 * MINUTE, id, (printed.run, printed.pieces), (&print, grams));
    }
    let emptied = InkFact::Wasted {
        pot: id,
        grams: Grams::from_grams(113.4),
        note: maker.language.say(text("Skinned over", "Hizo nata")),
        by: Some(maker.language.say(MOSS)),
    };
    record_event(maker, now - 6 * DAY, emptied);
    record(maker, now - 6 * DAY + MINUTE, id, InkFact::PotSet(vec![PotField::Closed(true)]));
    // This morning, for the choir.
    let morning = now - 70 * MINUTE;
    let id = inks.apricot_pot;
    let name = text("Apricot, choir", "Durazno, coro");
    pot(maker, morning, &Mix { id, name, revision: second, grams: 200.0, run: Some(day.front) });
    let weighed =
        [(inks.filled, 183.9, EMPTY), (inks.yellow, 9.9, EMPTY), (inks.red, 6.0, EMPTY), (inks.black, 0.2, EMPTY)];
    let at = pour(maker, morning, id, PourStep::WeighIn, &weighed);
    match_pot(maker, at + 5 * MINUTE, id);
    approve(maker, at + 12 * MINUTE, (second, id), CHOIR);
    record(maker, morning - MINUTE, day.front, InkFact::PrintSet(Some(print)));
}

/// Approved, mixed, and then changed to a revision that nobody has approved.
pub(crate) fn bone<N: FnMut() -> Uuid>(maker: &mut Maker<N>, inks: &DemoInks, day: &DayRuns, earlier: &[Printed]) {
    let now = maker.clock.now;
    let begun = now - 13 * DAY - 5 * HOUR;
    let written = of_ink(&[(inks.filled, 97.2), (inks.yellow, 1.8), (inks.red, 0.6), (inks.black, 0.4)]);
    let first = save(maker, begun, Typed { recipe: inks.bone, number: 1, parts: written, parent: None }, EMPTY);
    let id = maker.id();
    pot(maker, begun, &Mix { id, name: BONE, revision: first, grams: 300.0, run: None });
    let weighed =
        [(inks.filled, 291.6, EMPTY), (inks.yellow, 5.4, EMPTY), (inks.red, 1.8, EMPTY), (inks.black, 1.2, EMPTY)];
    let at = pour(maker, begun, id, PourStep::WeighIn, &weighed);
    approve(maker, at + 10 * MINUTE, (first, id), SEEDS);
    let print = art([90.0, 90.0], 500, 2_817, 1);
    for (printed, grams) in earlier.iter().skip(1).step_by(2).zip([14.5, 12.0]) {
        used(maker, printed.ended + 5 * MINUTE, id, (printed.run, printed.pieces), (&print, grams));
    }
    let bib = art([200.0, 160.0], 400, 2_817, 1);
    used(maker, day.bib_ended + 5 * MINUTE, id, (day.bib, 18), (&bib, 15.6));
    let warmer = of_ink(&[(inks.filled, 96.9), (inks.yellow, 2.0), (inks.red, 0.8), (inks.black, 0.3)]);
    let note = text("A little warmer, for the natural canvas", "Un poco más cálido, para la loneta cruda");
    let revision = Typed { recipe: inks.bone, number: 2, parts: warmer, parent: Some(first) };
    save(maker, now - 3 * DAY, revision, note);
}

/// For tomorrow's totes: weighed in, and corrected twice so far.
pub(crate) fn fern<N: FnMut() -> Uuid>(maker: &mut Maker<N>, inks: &DemoInks, day: &DayRuns) {
    let begun = maker.clock.now - 100 * MINUTE;
    let mut written = of_ink(&[(inks.clear, 90.0), (inks.yellow, 5.6), (inks.blue, 3.4), (inks.black, 1.0)]);
    written.push(part(&(inks.retarder, 2.0), true));
    let first = save(maker, begun, Typed { recipe: inks.fern, number: 1, parts: written, parent: None }, EMPTY);
    let id = inks.fern_pot;
    let name = text("Fern, totes", "Helecho, bolsas");
    pot(maker, begun, &Mix { id, name, revision: first, grams: 102.0, run: Some(day.totes) });
    let weighed = [
        (inks.clear, 90.0, EMPTY),
        (inks.yellow, 5.6, EMPTY),
        (inks.blue, 3.4, EMPTY),
        (inks.black, 1.0, EMPTY),
        (inks.retarder, 2.0, EMPTY),
    ];
    let at = pour(maker, begun, id, PourStep::WeighIn, &weighed);
    let too_yellow = text("Yellower than the leaf: a touch of blue", "Más amarillo que la hoja: un toque de azul");
    let bluer = text("A little more blue", "Un poco más de azul");
    let nudges = [(inks.blue, 0.4, too_yellow), (inks.blue, 0.2, bluer)];
    pour(maker, at + 8 * MINUTE, id, PourStep::Correction, &nudges);
    let print = art([320.0, 320.0], 600, 3_641, 1);
    record(maker, begun, day.totes, InkFact::PrintSet(Some(print)));
}

/// For the jerseys, next on the press: the base is in, the rest must still be weighed.
pub(crate) fn jersey_white<N: FnMut() -> Uuid>(maker: &mut Maker<N>, inks: &DemoInks, day: &DayRuns) {
    let now = maker.clock.now;
    let mut written = of_ink(&[(inks.filled, 70.0), (inks.white, 30.0)]);
    written.push(part(&(inks.bonder, 3.0), true));
    let revision = Typed { recipe: inks.jersey_white, number: 1, parts: written, parent: None };
    let first = save(maker, now - 8 * DAY, revision, text("For polyester only", "Solo para poliéster"));
    let (id, begun) = (maker.id(), now - 9 * MINUTE);
    let name = text("White, jerseys", "Blanco, uniformes");
    pot(maker, begun, &Mix { id, name, revision: first, grams: 206.0, run: Some(day.back) });
    pour(maker, begun, id, PourStep::WeighIn, &[(inks.filled, 140.0, EMPTY)]);
    let print = art([320.0, 380.0], 450, 3_641, 2);
    record(maker, begun, day.back, InkFact::PrintSet(Some(print)));
}
