//! Line icons, drawn on a grid of 24 by 24.

use leptos::prelude::*;

/// An icon by name. Decoration only: the text beside it or the label of its button carries the meaning.
#[component]
pub fn Icon(name: &'static str) -> impl IntoView {
    let path = match name {
        // A rail with runs hanging on it.
        "day" => "M5 3v18M5 7h11v4H5M5 14h14v4H5",
        // A card with lines.
        "jobs" => "M5 4h14v16H5zM9 9h6M9 13h6M9 17h3",
        // A frame with its mesh.
        "screens" => "M4 3h16v18H4zM8 7h8v10H8zM8 10.500h8M8 13.500h8M10.700 7v10M13.300 7v10",
        // A squeegee pulled over a screen.
        "press" => "M3 20h18M6 16h12M8 12h8l1 4H7zM12 12V4M9.5 4h5",
        "more" => "M5 7h14M5 12h14M5 17h9",
        "plus" => "M12 5v14M5 12h14",
        "minus" => "M5 12h14",
        "undo" => "M9 6 4.5 10.5 9 15M5 10.500h9a5 5 0 0 1 0 10h-3",
        "stop" => "M8 5v14M16 5v14",
        "go" => "M8 5l11 7-11 7z",
        "check" => "M5 12.500l4.500 4.500L19 7.500",
        "skip" => "M5 6l7 6-7 6zM18 6v12",
        "alert" => "M12 4 2.500 20h19zM12 10v5M12 17.500v.5",
        "clock" => "M12 3a9 9 0 1 0 0 18 9 9 0 0 0 0-18M12 7.500V12l3 2",
        "up" => "M12 19V6M6 11.500 12 5.500l6 6",
        "down" => "M12 5v13M6 12.500l6 6 6-6",
        "grip" => "M9 6v.010M15 6v.010M9 12v.010M15 12v.010M9 18v.010M15 18v.010",
        "back" => "M14.500 5 7.500 12l7 7",
        "next" => "M9.500 5l7 7-7 7",
        "edit" => "M4 20l1-4L16 5l3 3L8 19zM14 7l3 3",
        "bin" => "M5 7h14M9 7V4h6v3M7 7l1 13h8l1-13",
        "repeat" => "M5 11a7 7 0 0 1 12-4.500L19 8M19 4v4h-4M19 13a7 7 0 0 1-12 4.500L5 16M5 20v-4h4",
        "box" => "M4 8l8-4 8 4v9l-8 4-8-4zM4 8l8 4 8-4M12 12v9",
        "out" => "M12 15V4M7.500 8.500 12 4l4.500 4.500M5 14v6h14v-6",
        "in" => "M12 4v11M7.500 10.500 12 15l4.500-4.500M5 14v6h14v-6",
        "gear" => "M4 7h9M17 7h3M4 17h3M11 17h9M15 4.500v5M9 14.500v5",
        "heat" => "M12 3c1 4 5 5.500 5 10.500a5 5 0 0 1-10 0c0-2.500 1.500-3.500 2-5.500 2 1 3 2.500 3 4.500",
        "sun" => {
            "M12 8a4 4 0 1 0 0 8 4 4 0 0 0 0-8M12 2.500v2M12 19.500v2M2.500 12h2M19.500 12h2M5.300 5.300l1.400 1.400M17.300 17.300l1.400 1.400M18.700 5.300l-1.400 1.400M6.700 17.300l-1.400 1.400"
        }
        "drop" => "M12 3.500c3.500 4.500 6 7.500 6 11a6 6 0 0 1-12 0c0-3.500 2.500-6.500 6-11",
        "cross" => "M6 6l12 12M18 6 6 18",
        "shirt" => "M8 4 3 7l2 5 2-1v9h10v-9l2 1 2-5-5-3c-1 2-7 2-8 0z",
        "info" => "M12 3a9 9 0 1 0 0 18 9 9 0 0 0 0-18M12 11v5.500M12 7.500V8",
        "camera" => "M3.500 7.500h4l1.500-2.500h6l1.500 2.500h4v12h-17zM12 9.500a4 4 0 1 0 0 8 4 4 0 0 0 0-8",
        "picture" => "M4 5h16v14H4zM4 16l5-5 4 4 2.500-2.500L20 17M15.500 9v.010",
        // A lamp that shines to all sides.
        "lamp" => {
            "M12 8a4 4 0 1 0 0 8 4 4 0 0 0 0-8M12 2v2.500M12 19.500V22M2 12h2.500M19.500 12H22M5 5l1.700 1.700M17.300 17.300 19 19M5 19l1.700-1.700M17.300 6.700 19 5"
        }
        // A pot with a spatula in it.
        "ink" => "M5 10h14l-1.500 10h-11zM8 10c0-2 1-3 2.500-3M14 10l3.500-7 2 1-3 6M7 15h10",
        // A key that takes off what was typed last.
        "erase" => "M9 5h11v14H9l-6-7zM12 9.500l5 5M17 9.500l-5 5",
        // A tag with its hole.
        "label" => "M3.500 11V4h7l10 10-7 7zM7.500 8v.010",
        // A printer.
        "print" => "M7 9V3.500h10V9M4 9h16v8h-3M7 17H4M7 14h10v6.500H7z",
        // A tank with a screen dipped in.
        "bath" => "M3 8v12h18V8M3 13h4M17 13h4M7 3h10v13H7z",
        _ => "",
    };
    view! {
        <svg class="icon" viewBox="0 0 24 24" aria-hidden="true" focusable="false">
            <path d=path></path>
        </svg>
    }
}
