//! Verdict on the day, in one sentence.

use crate::components::Icon;
use crate::i18n;
use lastpull_core::plan::RailVerdict;
use leptos::prelude::*;

/// The verdict.
#[component]
pub fn Verdict(verdict: RailVerdict) -> impl IntoView {
    let (tone, icon, text) = match verdict {
        RailVerdict::Empty => ("good", "check", String::new()),
        RailVerdict::Fits { finish, spare } => {
            ("good", "check", i18n::verdict_fits(i18n::time(finish), i18n::duration(spare)))
        }
        RailVerdict::TodayFits { finish, spare } => {
            ("good", "check", i18n::verdict_today_fits(i18n::time(finish), i18n::duration(spare)))
        }
        RailVerdict::NoneDue { runs, finish: Some(finish) } => {
            ("quiet", "info", i18n::verdict_none_due(i18n::runs(runs), i18n::moment(finish)))
        }
        RailVerdict::NoneDue { runs, finish: None } => ("quiet", "info", i18n::verdict_none_due_open(i18n::runs(runs))),
        RailVerdict::Likely { finish } => ("likely", "check", i18n::verdict_likely(i18n::time(finish))),
        RailVerdict::Tight { finish } => ("tight", "clock", i18n::verdict_tight(i18n::time(finish))),
        RailVerdict::Misses { runs, over, late } => {
            let mut words = i18n::verdict_misses(i18n::runs(runs), i18n::duration(over));
            if late > 0 {
                words = format!("{words} {}", i18n::verdict_late(i18n::runs(late)));
            }
            ("bad", "alert", words)
        }
        RailVerdict::Late { runs } => ("bad", "alert", i18n::verdict_late(i18n::runs(runs))),
        RailVerdict::Unknown { runs } => ("tight", "info", i18n::verdict_unknown(i18n::runs(runs))),
        RailVerdict::Closed { runs } => ("tight", "clock", i18n::verdict_closed(i18n::runs(runs))),
    };
    view! {
        <p class=format!("verdict {tone}") id="verdict"><Icon name=icon/><span>{text}</span></p>
    }
}
