//! An order printed again.

use super::dryer;
use crate::shop::{TestShop, due, today};
use lastpull_core::colour::Colour;
use lastpull_core::facts::{Fact, InkFact, JobField, LotField, PrintUse, RunField};
use lastpull_core::ids::{LotId, RunId};
use lastpull_core::job::{Fabric, JobForm, Size, job_card, repeat_order};
use lastpull_core::run::{Flash, Location, Progress};
use lastpull_core::shop::Shop;
use lastpull_core::units::{BeltSpeed, Length, Seconds};
use uuid::Uuid;

/// What a print of it takes.
fn print_use() -> PrintUse {
    PrintUse {
        width: Length::from_inches(10.0),
        height: Length::from_inches(8.0),
        coverage: 350,
        volume: 2_700,
        hits: 2,
        transfer: 850,
        density: 1_200,
        loss: 100,
    }
}

/// A job with everything filled in, one of its lots deleted, and its run printed.
fn full_job(press: &mut TestShop) -> (Uuid, LotId, RunId) {
    let job = press.job("Tour tees", due(today(), 600));
    press.record(
        job,
        Fact::JobSet(vec![JobField::Client("Choir".into()), JobField::Notes("fold".into()), JobField::Exempt(true)]),
    );
    let lot = press.lot(job, Fabric::Polyester, &[(Size::M, 4), (Size::YouthS, 2)]);
    press.record(lot, Fact::LotSet(vec![LotField::Colour(Colour::BLACK), LotField::ColourName("Coal".into())]));
    let run = press.run(lot);
    press.guess(run, 45.0).set_up(
        run,
        vec![
            RunField::Location(Location::UpperBack),
            RunField::InkColour(Colour::WHITE),
            RunField::Screens("12, 13".into()),
            RunField::Mesh(Some(156)),
            RunField::Flash(Some(Flash { seconds: Seconds::new(7.0), distance: Some(Length::from_inches(2.5)) })),
            RunField::Hits(2),
            dryer(260.0),
            RunField::Belt(Some(BeltSpeed::from_inches_per_minute(30.0))),
            RunField::Dwell(Some(Seconds::new(150.0))),
            RunField::Passes(2),
            RunField::Squeegee("70, sharp".into()),
            RunField::OffContact(Some(Length::from_millimetres(3.0))),
            RunField::BelowCollar(Some(Length::from_inches(3.0))),
            RunField::Placement("centred".into()),
        ],
    );
    press.record(run, Fact::Ink(InkFact::PrintSet(Some(print_use()))));
    let gone = press.lot(job, Fabric::Cotton, &[(Size::L, 9)]);
    press.run(gone);
    press.record(gone, Fact::Deleted).pulls(run, 0, 40, 6).finish_at(300, run);
    (job, lot, run)
}

/// The fields of the form of a repeat, as it opens.
fn fields_again(shop: &Shop, job: Uuid) -> Vec<JobField> {
    JobForm::again(shop.job(job).unwrap()).check(today(), None, |_| None).unwrap()
}

#[test]
fn an_order_printed_again_has_its_set_up_new_ids_and_no_due_time() {
    let mut press = TestShop::new();
    let (job, lot, run) = full_job(&mut press);
    let mut ids = 0x9000;
    let (again, facts) = repeat_order(&press.shop(), job, fields_again(&press.shop(), job), || {
        ids += 1;
        Uuid::from_u128(ids)
    });
    let subjects: Vec<Uuid> = facts.iter().map(|(subject, _)| *subject).collect();
    assert_eq!(subjects, [0x9001, 0x9002, 0x9003, 0x9003].map(Uuid::from_u128), "the deleted lot is not ordered again");
    for (subject, fact) in facts {
        press.record_at(1000, subject, fact);
    }
    let shop = press.shop();
    let (old, new) = (shop.job(job).unwrap(), shop.job(again).unwrap());
    assert_eq!((&new.title, &new.client, &new.notes, new.exempt), (&old.title, &old.client, &old.notes, true));
    assert_eq!((new.due, new.finished, new.repeat_of), (None, None, Some(job)));
    let (new_lot, old_lot) = (shop.lots_of(again)[0], shop.lot(lot).unwrap());
    assert_eq!((new_lot.1.total(), &new_lot.1.pieces, new_lot.1.fabric), (6, &old_lot.pieces, Fabric::Polyester));
    assert_eq!(
        (&new_lot.1.garment, new_lot.1.colour, &new_lot.1.colour_name),
        (&old_lot.garment, Some(Colour::BLACK), &old_lot.colour_name)
    );
    let (new_run, old_run) = (shop.runs_of(new_lot.0)[0].1, shop.run(run).unwrap());
    assert_eq!((&new_run.set_up, new_run.location), (&old_run.set_up, Location::UpperBack));
    assert_eq!(
        (&new_run.ink, new_run.ink_colour, new_run.guess),
        (&old_run.ink, Some(Colour::WHITE), Some(Seconds::new(45.0)))
    );
    assert_eq!(shop.ink.print(shop.runs_of(new_lot.0)[0].0), Some(&print_use()), "what a print takes");
    assert_eq!(
        (new_run.checks.len(), &new_run.progress),
        (0, &Progress::default()),
        "nothing checked, nothing printed"
    );
}

#[test]
fn the_runs_of_an_order_printed_again_keep_their_order() {
    let mut press = TestShop::new();
    let job = press.job("Front, then back", None);
    press.record(job, Fact::JobSet(vec![JobField::Client("Choir".into())]));
    let lot = press.lot(job, Fabric::Cotton, &[(Size::M, 4)]);
    for location in [Location::FullFront, Location::FullBack] {
        let run = press.run(lot);
        press.set_up(run, vec![RunField::Location(location)]);
    }
    let mut ids = 0x9000;
    let (again, facts) = repeat_order(&press.shop(), job, fields_again(&press.shop(), job), || {
        ids -= 1;
        Uuid::from_u128(ids)
    });
    for (subject, fact) in facts {
        press.record_at(1000, subject, fact);
    }
    let card = job_card(&press.shop(), again).unwrap();
    let places: Vec<_> = card.lots[0].runs.iter().map(|run| run.run.location).collect();
    assert_eq!(places, [Location::FullFront, Location::FullBack]);
}

#[test]
fn an_unknown_job_cannot_be_repeated() {
    let (_, facts) = repeat_order(&TestShop::new().shop(), Uuid::from_u128(7), Vec::new(), || Uuid::from_u128(8));
    assert_eq!(facts, []);
}
