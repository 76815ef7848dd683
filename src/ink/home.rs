//! The place of ink.

use crate::kept::Signal;
use crate::live::Drawn;
use crate::parts::{Empty, Page};
use crate::place::{InkPlace, Place};
use crate::words;
use lastpull_view::view;
use leptos::prelude::*;

/// The first of these screens.
#[component(transparent)]
pub fn InkHome() -> Drawn {
    view! {
        <Page title=Signal::derive(|| words::ink_title().to_owned()) class="ink">
            <Empty icon="ink" title=words::ink_empty_title() text=words::ink_empty_text()>
                <a class="button primary" href=Place::Ink(InkPlace::NewRecipe).hash()>{words::ink_new_recipe()}</a>
            </Empty>
        </Page>
    }
}
