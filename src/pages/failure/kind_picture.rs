//! Pictures of the kinds of failure, drawn on a grid of 24 by 24 like the icons: a frame with its defect.

use lastpull_core::failure::FailureKind;
use leptos::prelude::*;

/// A picture of a kind of failure. Decoration only: its name is below.
#[component]
pub fn KindPicture(kind: FailureKind) -> impl IntoView {
    let path = match kind {
        // A hole, with ink falling through.
        FailureKind::Pinhole => "M4 4h16v16H4zM12 9.500a1 1 0 1 0 0 2 1 1 0 0 0 0-2M12 14v2M12 18v.500",
        // Mesh with clogged threads.
        FailureKind::Clog => "M4 4h16v16H4zM9 4v16M15 4v16M4 9h16M4 15h16M10.500 10.500l3 3M13.500 10.500l-3 3",
        // A blot.
        FailureKind::Spot => "M4 4h16v16H4zM10 10.500c1-2 4-1.500 4.500.500s-.500 4-2.500 3.500-3-2-2-4",
        // A corner that peels off.
        FailureKind::Breakdown => "M20 11v9H4V4h9M13 4l7 7M13 4c0 3-.500 5-1.500 8.500 3.500-1 5.500-1.500 8.500-1.500",
        // A tear from the edge.
        FailureKind::Tear => "M11 4H4v16h16V4h-4M11 4l2 4-3 3 3 3-2 3M16 4l-1 4 1 3",
        // An image behind the image.
        FailureKind::Ghost => "M9 9h11v11H9zM4 15V4h11M4 8v.010M8 4v.010",
        // Two crosses that do not align.
        FailureKind::RegistrationDrift => "M9 3v12M3 9h12M15 9v12M9 15h12",
        FailureKind::Other => {
            "M4 4h16v16H4zM9.500 10a2.500 2.500 0 1 1 3.500 2.300c-.700.300-1 .800-1 1.700M12 16.500v.300"
        }
    };
    view! {
        <svg class="icon" viewBox="0 0 24 24" aria-hidden="true" focusable="false">
            <path d=path></path>
        </svg>
    }
}
