//! One run, from its checks to what came of it.

use super::{checks::Checks, count::Count, ended::Ended};
use crate::kept::Memo;
use crate::live::{Drawn, live};
use crate::parts::NotHere;
use crate::store::Store;
use lastpull_core::job::RunId;
use lastpull_core::run::{CountView, Pending, Standing, count_view};
use lastpull_view::view;
use leptos::prelude::*;

/// What the heading of a run says.
#[derive(Clone, Debug, PartialEq, Default)]
pub struct Heading {
    /// The job's id.
    pub job: lastpull_core::job::JobId,
    /// The job's title.
    pub title: String,
    /// Where it prints, and the ink.
    pub print: String,
    /// Garment colour.
    pub garment: Option<lastpull_core::ink::Colour>,
    /// Ink colour.
    pub ink: Option<lastpull_core::ink::Colour>,
}

/// One run: checks while it waits, the count while it is on the press, the summary after.
#[component(transparent)]
pub fn RunScreen(id: RunId) -> Drawn {
    let store = Store::from_context();
    let heading = Memo::new(move |_| {
        store.shop.with(|shop| {
            let (job, of) = shop.job_of(id)?;
            let run = shop.run(id)?;
            let lot = run.lot.and_then(|lot| shop.lot(lot));
            Some(Heading {
                job,
                title: of.title.clone(),
                print: format!("{} · {}", crate::words::location(run.location), run.ink),
                garment: lot.and_then(|lot| lot.colour),
                ink: run.ink_colour,
            })
        })
    });
    let count = Memo::new(move |_| {
        let pending: Vec<Pending> =
            store.waiting.with(|waiting| waiting.iter().filter_map(crate::store::Waiting::pending).collect());
        store.shop.with(|shop| count_view(shop, id, store.device.get(), store.clock.get(), &pending))
    });
    let standing = Memo::new(move |_| count.with(CountView::phase));
    live(move || match heading.get() {
        None => view! { <NotHere/> }.into_any(),
        Some(heading) => match standing.get() {
            Standing::Waiting => view! { <Checks id heading/> }.into_any(),
            Standing::Ended => view! { <Ended id heading/> }.into_any(),
            _ => view! { <Count id heading count/> }.into_any(),
        },
    })
}
