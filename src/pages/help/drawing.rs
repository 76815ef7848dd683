//! The drawings beside terms: shapes in the colours of the theme, and labels in the language. Our own.

use crate::i18n::{self, Term};
use leptos::prelude::*;

/// How a shape is drawn.
#[derive(Clone, Copy)]
enum Tone {
    /// Its outline.
    Line,
    /// Filled with the colour of the text.
    Solid,
    /// White in every theme.
    White,
    /// Black in every theme, to so many percent.
    Black(u8),
    /// Filled as ink.
    Ink,
}

/// Where a label is: at the start, the middle or the end of its text.
#[derive(Clone, Copy)]
enum Anchor {
    Start,
    Middle,
    End,
}

/// A label: where it is on a drawing of 240 by 120, and its text.
struct Label(u8, u8, Anchor, fn() -> &'static str);

/// A drawing of 240 by 120.
struct Drawing {
    terms: &'static [Term],
    shapes: &'static [(Tone, &'static str)],
    labels: &'static [Label],
}

use Anchor::{End, Middle, Start};
use Tone::{Black, Ink, Line, Solid, White};

const DRAWINGS: &[Drawing] = &[
    // A bar spreads ink over a card.
    Drawing {
        terms: &[Term::Drawdown],
        shapes: &[
            (Line, "M20 28h200v66h-200z"),
            (Ink, "M34 44h112v34h-112z"),
            (Solid, "M146 38h10v46h-10z"),
            (Line, "M166 61h30m-7-5 7 5-7 5M90 78v20M151 26v12"),
        ],
        labels: &[
            Label(90, 112, Middle, i18n::drawing_ink),
            Label(151, 22, Middle, i18n::drawing_bar),
            Label(220, 112, End, i18n::drawing_card),
        ],
    },
    // The same film over white and over black.
    Drawing {
        terms: &[Term::ContrastRatio],
        shapes: &[
            (White, "M20 28h100v64h-100z"),
            (Black(100), "M120 28h100v64h-100z"),
            (Line, "M20 28h200v64h-200z"),
            (Ink, "M34 46h172v28h-172z"),
            (Line, "M70 22v24"),
        ],
        labels: &[
            Label(70, 18, Middle, i18n::drawing_ink),
            Label(70, 110, Middle, i18n::drawing_over_white),
            Label(170, 110, Middle, i18n::drawing_over_black),
        ],
    },
    // From the side: the mesh touches the garment below the squeegee only.
    Drawing {
        terms: &[Term::OffContact],
        shapes: &[
            (Solid, "M14 30h10v14h-10zM216 30h10v14h-10zM52 24h18l-6 56h-8zM14 92h212v5h-212z"),
            (Line, "M24 40 60 82 216 40M14 86h212M190 50v33M186 78l4 5 4-5M186 55l4-5 4 5"),
        ],
        labels: &[
            Label(78, 26, Start, i18n::drawing_squeegee),
            Label(142, 48, Middle, i18n::drawing_screen),
            Label(182, 78, End, i18n::drawing_gap),
            Label(120, 112, Middle, i18n::drawing_garment),
        ],
    },
    // The film above, what it leaves on the screen below.
    Drawing {
        terms: &[Term::StepScale],
        shapes: &[
            (White, "M22 24h196v20h-196z"),
            (Black(10), "M22 24h28v20h-28z"),
            (Black(24), "M50 24h28v20h-28z"),
            (Black(38), "M78 24h28v20h-28z"),
            (Black(52), "M106 24h28v20h-28z"),
            (Black(66), "M134 24h28v20h-28z"),
            (Black(80), "M162 24h28v20h-28z"),
            (Black(94), "M190 24h28v20h-28z"),
            (Ink, "M22 64h112v20h-112z"),
            (Line, "M22 24h196v20h-196zM22 64h196v20h-196zM50 64v20M78 64v20M106 64v20M134 64v20M162 64v20M190 64v20"),
            (Line, "M120 100v-12m-4 5 4-5 4 5"),
        ],
        labels: &[
            Label(22, 18, Start, i18n::drawing_film),
            Label(22, 58, Start, i18n::drawing_washed_out),
            Label(120, 113, Middle, i18n::drawing_last_solid),
        ],
    },
    // A garment on the belt, below the heat.
    Drawing {
        terms: &[Term::DwellTime],
        shapes: &[
            (Line, "M60 22h120v40h-120zM80 32v12M100 32v12M120 32v12M140 32v12M160 32v12"),
            (Ink, "M98 64h44v8h-44z"),
            (Solid, "M14 72h212v4h-212z"),
            (Line, "M190 86h30m-6-4 6 4-6 4M60 86v10M180 86v10M60 91h120"),
        ],
        labels: &[
            Label(120, 16, Middle, i18n::drawing_dryer),
            Label(120, 110, Middle, i18n::drawing_heated_length),
            Label(220, 106, End, i18n::drawing_belt),
        ],
    },
    // Dye rises from the garment into the ink.
    Drawing {
        terms: &[Term::DyeMigration],
        shapes: &[
            (Ink, "M60 48h120v22h-120z"),
            (Line, "M60 48h120v22h-120zM30 70h180v26h-180z"),
            (
                Solid,
                "M82 84a4 4 0 1 0 8 0a4 4 0 1 0-8 0M116 84a4 4 0 1 0 8 0a4 4 0 1 0-8 0M150 84a4 4 0 1 0 8 0a4 4 0 1 0-8 0",
            ),
            (Line, "M86 80v-24m-4 5 4-5 4 5M120 80v-24m-4 5 4-5 4 5M154 80v-24m-4 5 4-5 4 5"),
            (Line, "M100 24v18m-4-5 4 5 4-5M140 24v18m-4-5 4 5 4-5"),
        ],
        labels: &[
            Label(120, 18, Middle, i18n::drawing_heat),
            Label(186, 62, Start, i18n::drawing_ink),
            Label(120, 112, Middle, i18n::drawing_polyester),
        ],
    },
    // Threads, and one hole between them.
    Drawing {
        terms: &[Term::MeshCount, Term::MeshOpening, Term::OpenArea],
        shapes: &[
            (
                Solid,
                "M40 8h14v80h-14zM90 8h14v80h-14zM140 8h14v80h-14zM190 8h14v80h-14zM26 14h192v14h-192zM26 64h192v14h-192z",
            ),
            (Ink, "M104 28h36v36h-36z"),
            (Line, "M104 91v8M140 91v8M104 95h36M47 91v8"),
        ],
        labels: &[Label(47, 112, Middle, i18n::drawing_thread), Label(122, 112, Middle, i18n::drawing_opening)],
    },
    // Layers, from the garment up.
    Drawing {
        terms: &[Term::Underbase],
        shapes: &[
            (Black(100), "M20 78h140v20h-140z"),
            (White, "M36 56h108v22h-108z"),
            (Ink, "M36 34h108v22h-108z"),
            (Line, "M36 56h108v22h-108zM36 34h108v22h-108zM20 78h140v20h-140z"),
        ],
        labels: &[
            Label(152, 49, Start, i18n::drawing_color),
            Label(152, 71, Start, i18n::drawing_underbase),
            Label(168, 93, Start, i18n::drawing_garment),
        ],
    },
    // The two axes of hue, seen from the light end.
    Drawing {
        terms: &[Term::Lab],
        shapes: &[(Line, "M122 22v76M74 60h96M166 56l4 4-4 4M118 26l4-4 4 4")],
        labels: &[
            Label(122, 16, Middle, i18n::drawing_yellow),
            Label(122, 112, Middle, i18n::drawing_blue),
            Label(70, 64, End, i18n::drawing_green),
            Label(175, 64, Start, i18n::drawing_red_axis),
        ],
    },
    // Light sent back, over the wavelength.
    Drawing {
        terms: &[Term::ReflectanceCurve],
        shapes: &[(Line, "M30 14v80h190M34 84c30-4 50-10 76-14s40-46 106-50")],
        labels: &[
            Label(38, 22, Start, i18n::drawing_light),
            Label(34, 110, Start, i18n::drawing_violet),
            Label(218, 110, End, i18n::drawing_red),
        ],
    },
];

/// The drawing of a term; nothing if it has none.
pub fn of(term: Term) -> AnyView {
    let Some(found) = DRAWINGS.iter().find(|drawing| drawing.terms.contains(&term)) else { return ().into_any() };
    let shapes = found.shapes.iter().map(|(tone, path)| {
        let (class, opacity) = match tone {
            Line => ("line", None),
            Solid => ("solid", None),
            White => ("white", None),
            Black(percent) => ("black", Some(format!("{percent}%"))),
            Ink => ("ink", None),
        };
        view! { <path class=class fill-opacity=opacity d=*path></path> }
    });
    let labels = found.labels.iter().map(|Label(x, y, anchor, text)| {
        let anchor = match anchor {
            Start => "start",
            Middle => "middle",
            End => "end",
        };
        view! { <text x=*x y=*y text-anchor=anchor>{text()}</text> }
    });
    view! {
        <svg class="help-drawing" viewBox="0 0 240 120" role="img" aria-label=i18n::help_drawing(term.name())>
            {shapes.collect_view()}
            {labels.collect_view()}
        </svg>
    }
    .into_any()
}
