//! The text of a ledger line, and undoing it.

use crate::i18n;
use crate::store::Store;
use lastpull_core::facts::Fact;
use lastpull_core::ids::Subject;
use lastpull_core::ink::{LedgerKind, LedgerLine, PourStep};
use lastpull_core::units::Grams;
use leptos::prelude::*;

/// Readability of the shop's scale.
pub fn scale_step(store: Store) -> Grams {
    store.shop.with(|shop| shop.ink.scale.step)
}

/// Deletes an event, or restores it at its old place.
pub fn undo_event(store: Store, event: Subject, was_deleted: bool) {
    let (now, undo, said) = if was_deleted {
        (Fact::Restored, Fact::Deleted, i18n::pot_recorded_again())
    } else {
        (Fact::Deleted, Fact::Restored, i18n::pot_taken_back())
    };
    store.record_with_undo(vec![(event, now)], vec![(event, undo)], said);
}

/// The line's event, as text.
pub fn event_text(line: &LedgerLine, step: Grams) -> String {
    match &line.what {
        LedgerKind::Poured { name, step: PourStep::WeighIn, .. } => i18n::pot_did_weigh(name),
        LedgerKind::Poured { name, step: PourStep::Correction, .. } => i18n::pot_did_add(name),
        LedgerKind::Poured { name, step: PourStep::TopUp, .. } => i18n::pot_did_top_up(name),
        LedgerKind::Resized(whole) => i18n::pot_did_resize(i18n::pot_weight(*whole, step)),
        LedgerKind::Accepted { name, .. } => i18n::pot_did_accept(name),
        LedgerKind::MovedIn { name, .. } => i18n::pot_did_move_in(named(name)),
        LedgerKind::MovedOut { name, .. } => i18n::pot_did_move_out(named(name)),
        LedgerKind::Wasted => i18n::pot_did_waste().into(),
        LedgerKind::Used { pieces: 0, .. } => i18n::pot_did_use().into(),
        LedgerKind::Used { pieces, .. } => i18n::pot_did_print(i18n::pieces(*pieces)),
        LedgerKind::SwatchRead => i18n::pot_did_read().into(),
        LedgerKind::Matched => i18n::pot_matches().into(),
        LedgerKind::Approved { client, .. } if client.is_empty() => i18n::pot_did_approve_alone().into(),
        LedgerKind::Approved { client, .. } => i18n::pot_did_approve(client),
        LedgerKind::Saved(Some(revision)) => i18n::pot_did_save(i18n::pot_revision(revision)),
        LedgerKind::Saved(None) => i18n::pot_did_save_unknown().into(),
    }
}

fn named(name: &str) -> String {
    if name.is_empty() { i18n::pot_nameless().to_owned() } else { name.to_owned() }
}

/// The weight of a line with its sign; `None` if it has none.
pub fn signed_weight(line: &LedgerLine, step: Grams) -> Option<String> {
    let weight = |grams: Grams| i18n::pot_weight(grams, step);
    if line.grams.is_positive() {
        Some(format!("+{}", weight(line.grams)))
    } else {
        let out = Grams::ZERO.saturating_sub(line.grams);
        out.is_positive().then(|| format!("−{}", weight(out)))
    }
}
