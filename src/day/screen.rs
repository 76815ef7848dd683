//! The day's screen.

use super::done::DoneToday;
use super::keep::KeepHint;
use super::rail::Rail;
use crate::heat::RoomStrip;
use crate::kept::{Memo, Signal};
use crate::live::Drawn;
use crate::parts::{Empty, Icon, Page};
use crate::place::Place;
use crate::store::Store;
use crate::words;
use lastpull_core::plan::{RailVerdict, rail};
use lastpull_view::view;
use leptos::prelude::*;

/// The day: verdict first, then the rail, then what was done.
#[component(transparent)]
pub fn DayScreen() -> Drawn {
    let store = Store::from_context();
    let state = Memo::new(move |_| store.shop.with(|shop| rail(shop, store.clock.get())));
    let verdict = Memo::new(move |_| state.with(|rail| rail.verdict));
    let aside = move || {
        view! {
            <a class="button primary with-icon" href=Place::NewJob.hash()><Icon name="plus"/>{words::new_job()}</a>
        }
    };
    view! {
        <Page title=Signal::derive(|| words::day_title().to_owned()) aside class="day">
            {move || match verdict.get() {
                RailVerdict::Empty => view! {
                    <Empty icon="day" title=words::day_empty_title() text=words::day_empty_text()>
                        <a class="button primary" href=Place::NewJob.hash()>{words::new_job()}</a>
                    </Empty>
                }.into_any(),
                verdict => view! { <Verdict verdict/> }.into_any(),
            }}
            <RoomStrip/>
            <Rail state/>
            <DoneToday/>
            <KeepHint/>
        </Page>
    }
}

#[component(transparent)]
fn Verdict(verdict: RailVerdict) -> Drawn {
    let (tone, icon, text) = match verdict {
        RailVerdict::Empty => ("good", "check", String::new()),
        RailVerdict::Fits { finish, spare } => {
            ("good", "check", words::verdict_fits(words::time(finish), words::duration(spare)))
        }
        RailVerdict::Tight { finish } => ("tight", "clock", words::verdict_tight(words::time(finish))),
        RailVerdict::Misses { runs, over } => {
            ("bad", "alert", words::verdict_misses(words::runs(runs), words::duration(over)))
        }
        RailVerdict::Late { runs } => ("bad", "alert", words::verdict_late(words::runs(runs))),
        RailVerdict::Unknown { runs } => ("tight", "info", words::verdict_unknown(words::runs(runs))),
        RailVerdict::Closed { runs } => ("tight", "clock", words::verdict_closed(words::runs(runs))),
    };
    view! {
        <p class=format!("verdict {tone}") id="verdict"><Icon name=icon/><span>{text}</span></p>
    }
}
