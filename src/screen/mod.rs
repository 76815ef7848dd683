//! Among the shop's screens.

mod place;

pub use place::ScreensPlace;

use crate::kept::Signal;
use crate::live::Drawn;
use crate::parts::Page;
use crate::words;
use lastpull_view::view;

/// Draws one of these screens.
pub fn screen(place: ScreensPlace) -> Drawn {
    match place {
        ScreensPlace::Home => {
            view! { <Page title=Signal::derive(|| words::screens_title().to_owned()) class="screen"><p>{words::opening()}</p></Page> }
        }
    }
}
