//! What fails on the press.

use crate::kept::Signal;
use crate::live::Drawn;
use crate::parts::Page;
use crate::words;
use lastpull_view::view;
use leptos::prelude::*;
use uuid::Uuid;

/// One failure.
#[component(transparent)]
pub fn FailureScreen(id: Uuid) -> Drawn {
    let _ = id;
    view! { <Page title=Signal::derive(|| words::failure_title().to_owned()) class="failure"><p>{words::opening()}</p></Page> }
}
