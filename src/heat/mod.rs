//! Among dryers, cure and the room.

mod place;

pub use place::HeatPlace;

use crate::kept::Signal;
use crate::live::Drawn;
use crate::parts::Page;
use crate::words;
use lastpull_view::view;

/// Draws one of these screens.
pub fn screen(place: HeatPlace) -> Drawn {
    match place {
        HeatPlace::Home => {
            view! { <Page title=Signal::derive(|| words::heat_title().to_owned()) class="heat"><p>{words::opening()}</p></Page> }
        }
    }
}
