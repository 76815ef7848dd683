//! Among exposures and the bath.

mod place;

pub use place::StencilPlace;

use crate::kept::Signal;
use crate::live::Drawn;
use crate::parts::Page;
use crate::words;
use lastpull_view::view;

/// Draws one of these screens.
pub fn screen(place: StencilPlace) -> Drawn {
    match place {
        StencilPlace::Home => {
            view! { <Page title=Signal::derive(|| words::stencil_title().to_owned()) class="stencil"><p>{words::opening()}</p></Page> }
        }
    }
}
