//! Keeps what is typed into a form or a dialog until it is saved: it is there again after a reload, an update, or a visit
//! to another page.

use super::draft::{DraftEnd, Drafts};
use super::submit::FormSubmit;
use crate::components::Icon;
use crate::i18n;
use crate::platform::{drafts as stored, history};
use crate::store::Store;
use leptos::prelude::*;
use serde::Serialize;
use serde::de::DeserializeOwned;

impl<T: 'static, P: Default + PartialEq + Send + Sync + 'static> FormSubmit<T, P> {
    /// Keeps what is typed into `form` until it is saved. A draft is restored at once: call it before anything is
    /// derived from the form. Drafts belong to a route; call it once more for a second struct of texts on the page.
    pub fn with_draft<F>(self, form: RwSignal<F>) -> Self
    where
        F: Clone + PartialEq + Serialize + DeserializeOwned + Send + Sync + 'static,
    {
        keep(self.drafts, self.restored, "", form);
        self
    }

    /// Says that a draft was restored, with a button to discard it.
    pub fn draft_line(self) -> AnyView {
        let discard = move || {
            self.failed.set(false);
            self.problems.set(P::default());
            end(self.drafts, self.restored, DraftEnd::Discarded);
        };
        line("draft", self.restored, Callback::new(move |()| discard()))
    }

    /// What is in the form now is no draft: it was emptied after saving.
    pub fn emptied(self) {
        end(self.drafts, self.restored, DraftEnd::Saved);
    }
}

/// The draft of a dialog, which is there when the dialog is opened again.
#[derive(Clone, Copy)]
pub struct DialogDraft {
    /// Whether the dialog shows what was typed when it was open before.
    pub restored: RwSignal<bool>,
    name: StoredValue<String>,
    drafts: StoredValue<Drafts>,
}

impl DialogDraft {
    /// The draft of a dialog, named by its kind and what it is about unless that is the page's subject.
    pub fn of(dialog: impl Into<String>) -> Self {
        Self {
            restored: RwSignal::new(false),
            name: StoredValue::new(format!("/{}", dialog.into())),
            drafts: StoredValue::new(Drafts::default()),
        }
    }

    /// Keeps what is typed into `form` until [`Self::saved`], as [`FormSubmit::with_draft`] does.
    pub fn keep<F>(self, form: RwSignal<F>) -> Self
    where
        F: Clone + PartialEq + Serialize + DeserializeOwned + Send + Sync + 'static,
    {
        self.name.with_value(|name| keep(self.drafts, self.restored, name, form));
        self
    }

    /// Says that a draft was restored, with a button to discard it.
    pub fn line(self) -> AnyView {
        let discard = move |()| end(self.drafts, self.restored, DraftEnd::Discarded);
        line("dialog-draft", self.restored, Callback::new(discard))
    }

    /// It was recorded. Call it before the dialog is closed.
    pub fn saved(self) {
        end(self.drafts, self.restored, DraftEnd::Saved);
    }
}

fn end(drafts: StoredValue<Drafts>, restored: RwSignal<bool>, how: DraftEnd) {
    drafts.with_value(|drafts| drafts.end(how));
    restored.set(false);
}

/// Restores the next draft of the page or of a dialog on it, and keeps it from now on.
fn keep<F>(drafts: StoredValue<Drafts>, restored: RwSignal<bool>, dialog: &str, form: RwSignal<F>)
where
    F: Clone + PartialEq + Serialize + DeserializeOwned + Send + Sync + 'static,
{
    let demo = Store::from_context().settings.with_untracked(|settings| settings.demo);
    let part = drafts.with_value(Drafts::count);
    let key = format!("{}{}{dialog}/{part}", stored::shop_key(demo), history::hash());
    let start = StoredValue::new(form.get_untracked());
    let found = stored::read(&key).and_then(|text| serde_json::from_str::<F>(&text).ok());
    if let Some(found) = found.filter(|found| start.with_value(|start| start != found)) {
        form.set(found);
        restored.set(true);
    }
    let of_typing = key.clone();
    Effect::new(move |_| {
        form.with(|form| {
            if start.with_value(|start| start == form) {
                stored::delete(&of_typing);
            } else if let Ok(text) = serde_json::to_string(form) {
                stored::write(&of_typing, &text);
            }
        });
    });
    let end = move |how| {
        match how {
            // Not if the page was left while it was saved.
            DraftEnd::Saved => {
                if let Some(form) = form.try_get_untracked() {
                    start.set_value(form);
                }
            }
            DraftEnd::Discarded => form.set(start.get_value()),
        }
        stored::delete(&key);
    };
    drafts.update_value(|drafts| drafts.add(end));
}

fn line(id: &'static str, restored: RwSignal<bool>, discard: Callback<()>) -> AnyView {
    (move || {
        restored.get().then(|| {
            view! {
                <p class="draft-line" id=format!("{id}-restored") role="status">
                    <Icon name="undo"/>
                    <span>{i18n::draft_restored()}</span>
                    <button type="button" class="button quiet" id=format!("{id}-discard") on:click=move |_| discard.run(())>{i18n::draft_discard()}</button>
                </p>
            }
        })
    })
    .into_any()
}
