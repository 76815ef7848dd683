//! The history of a recipe: its revisions, latest first, each with its origin and its note.

use super::approval::approval_line;
use super::parts_table::parts_table;
use super::sum_check::limit_warnings;
use crate::components::Icon;
use crate::i18n::{self, Term};
use crate::pages::help::Help;
use crate::route::{InkRoute, PotRoute, Route};
use crate::store::Store;
use lastpull_core::ink::{RecipeCard, RevisionRow};
use leptos::prelude::*;

/// All revisions, folded.
#[component]
pub fn Revisions(card: Memo<Option<RecipeCard>>) -> impl IntoView {
    let store = Store::from_context();
    move || {
        let rows = card
            .with(|card| card.iter().flat_map(|card| &card.revisions).map(|row| revision(store, row)).collect_view());
        let number = rows.len() as u32;
        (number > 0).then(|| {
            view! {
                <details class="group screen-fold" id="revisions">
                    <summary>{i18n::ink_revisions_n(number)}</summary>
                    <div class="help-row"><span class="quiet-line">{Term::Version.name()}</span><Help term=Term::Version/></div>
                    <ul class="ink-revisions">{rows}</ul>
                </details>
            }
        })
    }
}

fn revision(store: Store, row: &RevisionRow) -> AnyView {
    let id = row.name.id;
    let name = i18n::ink_revision_name(&row.name);
    let deleted = name.clone();
    let take_back = move |_| {
        store.delete_with_undo(id, i18n::ink_revision_gone(&deleted));
    };
    let when = match &row.by {
        Some(by) => i18n::ink_saved_by(i18n::moment(row.at), by),
        None => i18n::moment(row.at),
    };
    let from = row.parent.as_ref().map(|parent| i18n::ink_from_revision(i18n::ink_this_revision(parent)));
    view! {
        <li class="ink-revision" data-number=row.name.number.to_string()>
            <h3>{name.clone()}</h3>
            <p class="muted">
                {when}
                {from.map(|from| format!(" · {from}"))}
                {row.pot.as_ref().map(|(pot, name)| view! { " · " <a href=Route::Pot(PotRoute::Pot(*pot)).hash()>{i18n::ink_from_pot(name)}</a> })}
            </p>
            {(!row.note.is_empty()).then(|| view! { <p class="job-notes">{row.note.clone()}</p> })}
            {approval_line(row.approval.as_ref())}
            {parts_table(&row.parts)}
            {limit_warnings(&row.limits)}
            <div class="button-row">
                <a class="button with-icon" href=Route::Ink(InkRoute::Revise(id)).hash() aria-label=format!("{}: {name}", i18n::ink_revise_from())><Icon name="edit"/>{i18n::ink_revise_from()}</a>
                <button type="button" class="button quiet danger" aria-label=format!("{}: {name}", i18n::ink_revision_take_back()) on:click=take_back>{i18n::ink_revision_take_back()}</button>
            </div>
        </li>
    }.into_any()
}
