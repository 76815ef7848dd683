//! The inks of the demo: how each was mixed, corrected, approved and used.

use super::pots::{
    DAY, HOUR, MINUTE, Mix, approved, art, of_ink, part, pot, pour, record, record_event, saved, saved_from, used,
};
use super::shelf::DemoInks;
use crate::demo::ink::Printed;
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
    let first = record_event(maker, begun, saved(inks.apricot, 1, written, [None; 2], "From the sample card, by eye"));
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
    record_event(maker, at + 7 * MINUTE, InkFact::Matched { pot: id, reading: None, by: Some("Ines".into()) });
    record_event(maker, at + 40 * MINUTE, approved(second, Some(id), "Gull & Lantern Ferry"));
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
    record_event(maker, now - 6 * DAY, emptied);
    record(maker, now - 6 * DAY + MINUTE, id, InkFact::PotSet(vec![PotField::Closed(true)]));
    // This morning, for the choir.
    let morning = now - 70 * MINUTE;
    let id = inks.apricot_pot;
    pot(maker, morning, &Mix { id, name: "Apricot, choir", revision: second, grams: 200.0, run: Some(day.front) });
    let weighed = [(inks.filled, 183.9, ""), (inks.yellow, 9.9, ""), (inks.red, 6.0, ""), (inks.black, 0.2, "")];
    let at = pour(maker, morning, id, PourStep::WeighIn, &weighed);
    record_event(maker, at + 5 * MINUTE, InkFact::Matched { pot: id, reading: None, by: Some("Ines".into()) });
    record_event(maker, at + 12 * MINUTE, approved(second, Some(id), "Harbour Night Choir"));
    record(maker, morning - MINUTE, day.front, InkFact::PrintSet(Some(print)));
}

/// Approved, mixed, and then changed to a revision that nobody has approved.
pub(crate) fn bone<N: FnMut() -> Uuid>(maker: &mut Maker<N>, inks: &DemoInks, day: &DayRuns, earlier: &[Printed]) {
    let now = maker.clock.now;
    let begun = now - 13 * DAY - 5 * HOUR;
    let written = of_ink(&[(inks.filled, 97.2), (inks.yellow, 1.8), (inks.red, 0.6), (inks.black, 0.4)]);
    let first = record_event(maker, begun, saved(inks.bone, 1, written, [None; 2], ""));
    let id = maker.id();
    pot(maker, begun, &Mix { id, name: "Bone", revision: first, grams: 300.0, run: None });
    let weighed = [(inks.filled, 291.6, ""), (inks.yellow, 5.4, ""), (inks.red, 1.8, ""), (inks.black, 1.2, "")];
    let at = pour(maker, begun, id, PourStep::WeighIn, &weighed);
    record_event(maker, at + 10 * MINUTE, approved(first, Some(id), "Marsh Lane Seed Library"));
    let print = art([90.0, 90.0], 500, 2_817, 1);
    for (printed, grams) in earlier.iter().skip(1).step_by(2).zip([14.5, 12.0]) {
        used(maker, printed.ended + 5 * MINUTE, id, (printed.run, printed.pieces), (&print, grams));
    }
    let bib = art([200.0, 160.0], 400, 2_817, 1);
    used(maker, day.bib_ended + 5 * MINUTE, id, (day.bib, 18), (&bib, 15.6));
    let warmer = of_ink(&[(inks.filled, 96.9), (inks.yellow, 2.0), (inks.red, 0.8), (inks.black, 0.3)]);
    let note = "A little warmer, for the natural canvas";
    record_event(maker, now - 3 * DAY, saved(inks.bone, 2, warmer, [Some(first), None], note));
}

/// For tomorrow's totes: weighed in, and corrected twice so far.
pub(crate) fn fern<N: FnMut() -> Uuid>(maker: &mut Maker<N>, inks: &DemoInks, day: &DayRuns) {
    let begun = maker.clock.now - 100 * MINUTE;
    let mut written = of_ink(&[(inks.clear, 90.0), (inks.yellow, 5.6), (inks.blue, 3.4), (inks.black, 1.0)]);
    written.push(part(&(inks.retarder, 2.0), true));
    let first = record_event(maker, begun, saved(inks.fern, 1, written, [None; 2], ""));
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
    record(maker, begun, day.totes, InkFact::PrintSet(Some(print)));
}

/// For the jerseys, next on the press: the base is in, the rest must still be weighed.
pub(crate) fn signal<N: FnMut() -> Uuid>(maker: &mut Maker<N>, inks: &DemoInks, day: &DayRuns) {
    let now = maker.clock.now;
    let mut written = of_ink(&[(inks.filled, 70.0), (inks.white, 30.0)]);
    written.push(part(&(inks.bonder, 3.0), true));
    let first = record_event(maker, now - 8 * DAY, saved(inks.signal, 1, written, [None; 2], "For polyester only"));
    let (id, begun) = (maker.id(), now - 9 * MINUTE);
    pot(maker, begun, &Mix { id, name: "White, jerseys", revision: first, grams: 206.0, run: Some(day.back) });
    pour(maker, begun, id, PourStep::WeighIn, &[(inks.filled, 140.0, "")]);
    let print = art([320.0, 380.0], 450, 3_641, 2);
    record(maker, begun, day.back, InkFact::PrintSet(Some(print)));
}
