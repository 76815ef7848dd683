//! Verdict on the day, in a sentence or two.

use crate::components::Icon;
use crate::i18n;
use lastpull_core::plan::{LastFinish, RailVerdict};
use lastpull_core::time::Millis;
use leptos::prelude::*;

/// The verdict.
#[component]
pub fn Verdict(verdict: RailVerdict) -> impl IntoView {
    let (tone, icon, text) = match verdict {
        RailVerdict::Empty => ("good", "check", String::new()),
        RailVerdict::Fits { finish, spare } => {
            ("good", "check", fits(finish, spare, i18n::verdict_fits, i18n::verdict_fits_printed))
        }
        RailVerdict::TodayFits { finish, spare } => {
            ("good", "check", fits(finish, spare, i18n::verdict_today_fits, i18n::verdict_today_fits_printed))
        }
        RailVerdict::NoneDue { runs, finish } => ("quiet", "info", none_due(i18n::runs(runs), finish)),
        RailVerdict::Likely { finish } => ("likely", "check", with_dryer(finish, i18n::verdict_likely(at(finish)))),
        RailVerdict::Tight { finish } => ("tight", "clock", with_dryer(finish, i18n::verdict_tight(at(finish)))),
        RailVerdict::Hardly { closing, due } => {
            let closing = (closing > 0).then(|| i18n::verdict_hardly_closing(closing));
            let due = (due > 0).then(|| i18n::verdict_hardly_due(due));
            ("tight", "alert", sentences([Some(i18n::verdict_hardly().into()), closing, due]))
        }
        RailVerdict::Misses { runs, over, late, hardly } => {
            let words = i18n::verdict_misses(i18n::runs(runs), i18n::duration(over));
            let late = (late > 0).then(|| i18n::verdict_late(i18n::runs(late)));
            ("bad", "alert", sentences([Some(words), late, hardly_too(hardly)]))
        }
        RailVerdict::Late { runs, hardly } => {
            ("bad", "alert", sentences([Some(i18n::verdict_late(i18n::runs(runs))), hardly_too(hardly)]))
        }
        RailVerdict::Unknown { runs } => ("tight", "info", i18n::verdict_unknown(i18n::runs(runs))),
        RailVerdict::Closed { runs, past_due: 0 } => ("tight", "clock", i18n::verdict_closed(i18n::runs(runs))),
        RailVerdict::Closed { runs, past_due } => {
            let words = [Some(i18n::verdict_closed(i18n::runs(runs))), Some(i18n::verdict_past_due(past_due))];
            ("bad", "alert", sentences(words))
        }
    };
    view! {
        <p class=format!("verdict {tone}") id="verdict"><Icon name=icon/><span>{text}</span></p>
    }
}

fn at(finish: LastFinish) -> String {
    i18n::moment(finish.at)
}

/// That all of it is out of the dryer in time, or printed if the time in the dryer is not known.
fn fits(
    finish: LastFinish,
    spare: Millis,
    out: fn(String, String) -> String,
    printed: fn(String, String) -> String,
) -> String {
    let say = if finish.ends_at_press { printed } else { out };
    with_dryer(finish, say(at(finish), i18n::duration(spare)))
}

fn none_due(runs: String, finish: Option<LastFinish>) -> String {
    match finish {
        Some(finish) if finish.ends_at_press => i18n::verdict_none_due_printed(runs, at(finish)),
        Some(finish) => i18n::verdict_none_due(runs, at(finish)),
        None => i18n::verdict_none_due_open(runs),
    }
}

fn with_dryer(finish: LastFinish, words: String) -> String {
    sentences([Some(words), finish.ends_at_press.then(|| i18n::verdict_no_dryer().into())])
}

fn hardly_too(runs: u32) -> Option<String> {
    (runs > 0).then(|| i18n::verdict_hardly_too(runs))
}

fn sentences<const N: usize>(sentences: [Option<String>; N]) -> String {
    sentences.into_iter().flatten().collect::<Vec<_>>().join(" ")
}
