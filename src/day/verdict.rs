//! What the day comes to, in a sentence.

use crate::parts::Icon;
use crate::words;
use lastpull_core::plan::RailVerdict;
use leptos::prelude::*;

/// The verdict on the day.
#[component]
pub fn Verdict(verdict: RailVerdict) -> impl IntoView {
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
