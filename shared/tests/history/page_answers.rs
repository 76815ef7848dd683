//! Everything that the pages ask of a shop, as text to compare.

use crate::shop::PHONE;
use lastpull_core::facts::Location;
use lastpull_core::failure::{
    failures_of, failures_of_screen, failures_stopping_press, failures_today, notice_at_press, notices_today,
    run_pieces,
};
use lastpull_core::heat::{inks_without_sheet, test_status, tests_due};
use lastpull_core::ids::Subject;
use lastpull_core::ink::{
    BatchSizeForm, NewPot, ink_names, ink_needed, new_pot_for_revision, new_pot_for_run, run_ink, runs_for_pot,
};
use lastpull_core::job::{
    client_names, fabric_of_garment, garment_names, job_card, job_list, job_row, job_texts, new_run, repeat_order,
    suggested_lot, suggested_run,
};
use lastpull_core::plan::{done_today, only_on_press, rail};
use lastpull_core::run::{check_list, count_view, forecast, run_pace};
use lastpull_core::screen::{screen_card, screen_needs};
use lastpull_core::shop::Shop;
use lastpull_core::time::WallClock;
use lastpull_core::units::Units;
use std::fmt::Debug;

fn say(answer: impl Debug) -> String {
    format!("{answer:?}")
}

/// What the day shows: drawn each second, or each minute.
pub fn of_the_day(shop: &Shop, clock: WallClock) -> Vec<String> {
    vec![
        say(rail(shop, clock)),
        say(done_today(shop, clock)),
        say(failures_today(shop, clock)),
        say(notices_today(shop, clock)),
        say(failures_stopping_press(shop)),
        say(only_on_press(shop)),
        say(shop.is_printing()),
    ]
}

/// What the press shows of a run: drawn at each count and each second.
pub fn of_the_press(shop: &Shop, run: Subject, clock: WallClock) -> Vec<String> {
    vec![
        say(count_view(shop, run, PHONE, clock, &[])),
        say(run_pace(shop, run, clock)),
        say(check_list(shop, run)),
        say(notice_at_press(shop, run)),
    ]
}

/// What the other pages show of the shop.
pub fn of_the_shop(shop: &Shop, clock: WallClock) -> Vec<String> {
    vec![
        say(job_list(shop)),
        say(["order 1", "a"].map(|search| job_texts(shop).found(search))),
        say(job_list(shop).finished.iter().map(|id| job_row(shop, clock, *id)).collect::<Vec<_>>()),
        say(client_names(shop)),
        say(garment_names(shop)),
        say(ink_names(shop)),
        say(ink_needed(shop)),
        say(screen_needs(shop, clock)),
        say(tests_due(shop)),
        say(inks_without_sheet(shop)),
        say(NewPot::by_eye(shop)),
        say(["Tee 1", "tee 11 ", "x", "a"].map(|name| fabric_of_garment(shop, name))),
    ]
}

/// What the pages of a thing show.
pub fn of_a_thing(shop: &Shop, id: Subject, clock: WallClock) -> Vec<String> {
    vec![
        say(job_card(shop, id)),
        say(repeat_order(shop, id, Vec::new(), || id)),
        say(suggested_lot(shop, id)),
        say([Location::FullFront, Location::Pocket].map(|location| suggested_run(shop, id, location))),
        say(new_run(shop, id, Location::FullFront)),
        say(failures_of(shop, id, clock.now)),
        say(run_pieces(shop, id)),
        say(run_ink(shop, id)),
        say(runs_for_pot(shop, id)),
        of_a_pot_form(shop, id),
        say((new_pot_for_run(shop, id), test_status(shop, id))),
        say((screen_card(shop, id, clock.now), failures_of_screen(shop, id, clock.now))),
        say(forecast(shop, id, clock.now)),
    ]
}

/// What the form of a pot of a recipe or a revision starts from.
pub fn of_a_pot_form(shop: &Shop, id: Subject) -> String {
    say((BatchSizeForm::of(shop, id, Units::METRIC), new_pot_for_revision(shop, id)))
}
