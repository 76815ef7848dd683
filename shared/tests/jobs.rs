//! The list of jobs, an order printed again, and where a new run starts.

use crate::shop::{HOUR, Press, clock, due, today, wall};
use lastpull_core::colour::Colour;
use lastpull_core::facts::{Fact, JobField, LotField, RunField};
use lastpull_core::ids::{LotId, RunId};
use lastpull_core::job::{
    Fabric, JobList, JobRow, Size, SizePieces, job_card, job_list, repeat_order, suggested_lot, suggested_run,
};
use lastpull_core::run::{Flash, Location, Progress};
use lastpull_core::units::{BeltSpeed, Length, Seconds, Temperature, Units};
use uuid::Uuid;

fn list(press: &Press, seconds: u64, search: &str) -> JobList {
    job_list(&press.shop(), clock(seconds), search)
}

fn titles(rows: &[JobRow]) -> Vec<&str> {
    rows.iter().map(|row| row.title.as_str()).collect()
}

fn dryer(fahrenheit: f64) -> RunField {
    RunField::Dryer(Some(Temperature::from_fahrenheit(fahrenheit)))
}

#[test]
fn open_jobs_are_listed_by_due_time_the_undated_last_and_finished_ones_latest_first() {
    let mut press = Press::new();
    press.job("undated", None);
    press.job("tomorrow", due(today().plus_days(1), 0));
    press.job("noon", due(today(), 720));
    press.job("ten", due(today(), 600));
    let [first, last] = ["done first", "done last"].map(|title| press.job(title, due(today(), 0)));
    press.say_at(10, first, Fact::JobFinished).say_at(20, last, Fact::JobFinished);
    let list = list(&press, 30, "");
    assert_eq!(titles(&list.open), ["ten", "noon", "tomorrow", "undated"]);
    assert_eq!(titles(&list.finished), ["done last", "done first"]);
    assert_eq!(list.finished[0].finished, Some(wall(20)));
}

#[test]
fn every_word_of_a_search_is_in_the_title_client_or_notes_whatever_its_case() {
    let mut press = Press::new();
    let choir = press.job("Tour tees", None);
    press.say(
        choir,
        Fact::JobSet(vec![JobField::Client("Harbour Night Choir".into()), JobField::Notes("Fold in TENS".into())]),
    );
    let ferry = press.job("Crew jerseys", None);
    press.say(ferry, Fact::JobSet(vec![JobField::Client("Güll & Lantern".into())])).say_at(
        10,
        ferry,
        Fact::JobFinished,
    );
    let found = |search| {
        let list = list(&press, 20, search);
        (list.open.len(), list.finished.len())
    };
    assert_eq!(found("  "), (1, 1));
    assert_eq!(found("CHOIR tees"), (1, 0));
    assert_eq!(found("tens harb"), (1, 0), "across fields, parts of words");
    assert_eq!(found("choir jerseys"), (0, 0));
    assert_eq!(found("güll"), (0, 1));
    assert_eq!(found("GÜLL"), (0, 1));
}

#[test]
fn an_open_job_is_overdue_once_its_time_has_passed() {
    let mut press = Press::new();
    let job = press.job("Tour tees", due(today(), 10 * 60));
    press.job("undated", None);
    let overdue =
        |press: &Press, seconds| list(press, seconds, "").open.iter().map(|row| row.overdue).collect::<Vec<_>>();
    assert_eq!(overdue(&press, 2 * HOUR), [false, false], "at ten");
    assert_eq!(overdue(&press, 2 * HOUR + 1), [true, false]);
    press.say_at(2 * HOUR + 2, job, Fact::JobFinished);
    assert!(!list(&press, 3 * HOUR, "").finished[0].overdue);
}

#[test]
fn a_job_counts_the_pieces_of_every_run_but_none_past_the_order() {
    let mut press = Press::new();
    let job = press.job("Front and back", None);
    let lot = press.lot(job, Fabric::Cotton, &[(Size::M, 4), (Size::L, 2)]);
    let [front, back] = [(); 2].map(|()| press.run(lot));
    press.count_at(40, front, 5, Some(Size::M)).count_at(50, front, 2, Some(Size::L)).count_at(
        60,
        back,
        3,
        Some(Size::M),
    );
    let row = &list(&press, 70, "").open[0];
    assert_eq!((row.planned, row.good, row.swatches.len()), (12, 9, 2));
    assert!(!job_card(&press.shop(), job).unwrap().complete);
    press.count_at(80, back, 1, Some(Size::M)).count_at(90, back, 2, Some(Size::L));
    assert!(job_card(&press.shop(), job).unwrap().complete);
}

/// A job with everything filled in, one of its lots deleted, and its run printed.
fn full_job(press: &mut Press) -> (Uuid, LotId, RunId) {
    let job = press.job("Tour tees", due(today(), 600));
    press.say(
        job,
        Fact::JobSet(vec![JobField::Client("Choir".into()), JobField::Notes("fold".into()), JobField::Exempt(true)]),
    );
    let lot = press.lot(job, Fabric::Polyester, &[(Size::M, 4), (Size::YouthS, 2)]);
    press.say(lot, Fact::LotSet(vec![LotField::Colour(Colour::BLACK), LotField::ColourName("Coal".into())]));
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
            RunField::Belt(Some(BeltSpeed::from_units(30.0, Units::UsCustomary))),
            RunField::Dwell(Some(Seconds::new(150.0))),
            RunField::Passes(2),
            RunField::Squeegee("70, sharp".into()),
            RunField::OffContact(Some(Length::from_millimetres(3.0))),
            RunField::BelowCollar(Some(Length::from_inches(3.0))),
            RunField::Placement("centred".into()),
        ],
    );
    let gone = press.lot(job, Fabric::Cotton, &[(Size::L, 9)]);
    press.run(gone);
    press.say(gone, Fact::Deleted).pulls(run, 0, 40, 6).finish_at(300, run);
    (job, lot, run)
}

#[test]
fn an_order_printed_again_has_the_set_up_of_the_first_new_ids_and_no_due_time() {
    let mut press = Press::new();
    let (job, lot, run) = full_job(&mut press);
    let mut ids = 0x9000;
    let (again, facts) = repeat_order(&press.shop(), job, || {
        ids += 1;
        Uuid::from_u128(ids)
    });
    let subjects: Vec<Uuid> = facts.iter().map(|(subject, _)| *subject).collect();
    assert_eq!(subjects, [0x9001, 0x9002, 0x9003].map(Uuid::from_u128), "the deleted lot is not ordered again");
    for (subject, fact) in facts {
        press.say_at(1000, subject, fact);
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
    assert_eq!(
        (new_run.checks.len(), &new_run.progress),
        (0, &Progress::default()),
        "nothing checked, nothing printed"
    );
}

#[test]
fn the_runs_of_an_order_printed_again_keep_their_order() {
    let mut press = Press::new();
    let job = press.job("Front, then back", None);
    let lot = press.lot(job, Fabric::Cotton, &[(Size::M, 4)]);
    for location in [Location::FullFront, Location::FullBack] {
        let run = press.run(lot);
        press.set_up(run, vec![RunField::Location(location)]);
    }
    let mut ids = 0x9000;
    let (again, facts) = repeat_order(&press.shop(), job, || {
        ids -= 1;
        Uuid::from_u128(ids)
    });
    for (subject, fact) in facts {
        press.say_at(1000, subject, fact);
    }
    let card = job_card(&press.shop(), again).unwrap();
    let places: Vec<_> = card.lots[0].runs.iter().map(|run| run.run.location).collect();
    assert_eq!(places, [Location::FullFront, Location::FullBack]);
}

#[test]
fn there_is_nothing_to_repeat_of_a_job_that_is_not_here() {
    let (_, facts) = repeat_order(&Press::new().shop(), Uuid::from_u128(7), || Uuid::from_u128(8));
    assert_eq!(facts, []);
}

/// A run on a new lot of this fabric, with its dryer setting, and the lot.
fn printed(press: &mut Press, fabric: Fabric, location: Location, fahrenheit: f64) -> LotId {
    let job = press.job("Tour tees", None);
    let lot = press.lot(job, fabric, &[(Size::M, 3)]);
    let run = press.run(lot);
    press.set_up(run, vec![RunField::Location(location), dryer(fahrenheit)]);
    lot
}

/// The dryer, in °F, that a new full front on a new lot of this fabric starts from.
fn suggested(press: &mut Press, fabric: Fabric) -> Option<f64> {
    let job = press.job("New", None);
    let lot = press.lot(job, fabric, &[(Size::M, 3)]);
    let run = suggested_run(&press.shop(), lot, Location::FullFront)?.clone();
    run.set_up.dryer.map(|dryer| dryer.fahrenheit().round())
}

#[test]
fn a_new_run_starts_from_the_latest_at_its_place_on_its_fabric() {
    let mut press = Press::new();
    printed(&mut press, Fabric::Polyester, Location::FullFront, 255.0);
    printed(&mut press, Fabric::Polyester, Location::FullFront, 260.0);
    let last = printed(&mut press, Fabric::Polyester, Location::FullBack, 270.0);
    printed(&mut press, Fabric::Cotton, Location::FullFront, 320.0);
    assert_eq!(suggested(&mut press, Fabric::Polyester), Some(260.0));
    let gone = press.shop().runs_of(last)[0].0;
    press.say(gone, Fact::Deleted);
    assert_eq!(suggested_run(&press.shop(), last, Location::FullBack).unwrap().location, Location::FullFront);
}

#[test]
fn polyester_starts_from_polyester_elsewhere_and_never_from_a_cotton_dryer() {
    let mut press = Press::new();
    printed(&mut press, Fabric::Cotton, Location::FullFront, 320.0);
    for fabric in [Fabric::Polyester, Fabric::Blend, Fabric::TriBlend, Fabric::Nylon] {
        assert_eq!(suggested(&mut press, fabric), None, "{fabric:?}");
    }
    printed(&mut press, Fabric::Polyester, Location::LeftChest, 265.0);
    printed(&mut press, Fabric::Cotton, Location::FullFront, 325.0);
    assert_eq!(suggested(&mut press, Fabric::Polyester), Some(265.0));
    assert_eq!(suggested(&mut press, Fabric::Blend), None, "nor from another fabric's");
}

#[test]
fn a_start_at_the_same_place_is_from_a_fabric_that_bears_the_same_heat() {
    let mut press = Press::new();
    printed(&mut press, Fabric::Polyester, Location::FullFront, 260.0);
    assert_eq!(suggested(&mut press, Fabric::Cotton), None);
    printed(&mut press, Fabric::Cotton, Location::FullFront, 320.0);
    assert_eq!(suggested(&mut press, Fabric::Canvas), Some(320.0));
}

#[test]
fn a_new_lot_starts_from_the_jobs_last_or_else_the_shops_last() {
    let mut press = Press::new();
    let [mine, other] = ["Mine", "Other"].map(|title| press.job(title, None));
    let named = |press: &mut Press, job, garment: &str| {
        let lot = press.lot(job, Fabric::Cotton, &[]);
        let pieces = LotField::Pieces(vec![SizePieces { size: Size::M, pieces: 1 }]);
        press.say(lot, Fact::LotSet(vec![LotField::Garment(garment.into()), pieces]));
        lot
    };
    let tee = named(&mut press, mine, "tee");
    named(&mut press, other, "tote");
    assert_eq!(suggested_lot(&press.shop(), mine).unwrap().garment, "tee");
    press.say(tee, Fact::Deleted);
    assert_eq!(suggested_lot(&press.shop(), mine).unwrap().garment, "tote");
}
