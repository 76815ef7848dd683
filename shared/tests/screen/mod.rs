//! Screens: inventory, exposure and the reclaim bath.

use crate::shop::TestShop;
use lastpull_core::facts::FactsWithUndo;
use lastpull_core::ids::{RunId, Subject};
use lastpull_core::screen::{BatchInForm, MeshCloth, MeshCount, match_labels, put_in};
use lastpull_core::shop::Shop;
use uuid::Uuid;

mod bath;
mod bath_steps;
mod board;
mod exposure;
mod exposure_desk;
mod exposure_facts;
mod inventory;
mod labels;
mod moves;
mod needs;
mod on_press;

const MINUTE: u64 = 60;

fn labels(shop: &Shop, line: &str) -> Vec<(String, bool)> {
    match_labels(shop, line).into_iter().map(|found| (found.label, found.screen.is_some())).collect()
}

fn mesh(threads: u16, thread_um: u16) -> MeshCloth {
    MeshCloth { count: MeshCount::PerInch(threads), thread_um: Some(thread_um), dyed: false }
}

const RUN: RunId = Uuid::from_u128(0xa1);

/// Two screens that wait, put in together a minute after opening.
fn two_in() -> (TestShop, [Subject; 2], Subject, FactsWithUndo) {
    let mut press = TestShop::new();
    let screens = [press.waiting_screen(RUN, "7"), press.waiting_screen(RUN, "8")];
    let batch = press.id();
    let form = BatchInForm { screens: screens.to_vec(), count: String::new() };
    let step = put_in(&press.shop(), batch, &form, Some("Ines")).unwrap();
    press.record_all_at(MINUTE, &step.facts);
    (press, screens, batch, step)
}
