//! Keeps what is typed into a form until it is saved: it is there again after a reload, an update, or a visit to another
//! page.

use super::draft::{DraftEnd, Drafts};
use super::submit::FormSubmit;
use crate::components::Icon;
use crate::i18n;
use crate::platform::{drafts, history};
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
        let demo = Store::from_context().settings.with_untracked(|settings| settings.demo);
        let part = self.drafts.with_value(Drafts::count);
        let key = format!("{}{}/{part}", drafts::shop_key(demo), history::hash());
        let start = StoredValue::new(form.get_untracked());
        let found = drafts::read(&key).and_then(|text| serde_json::from_str::<F>(&text).ok());
        if let Some(found) = found.filter(|found| start.with_value(|start| start != found)) {
            form.set(found);
            self.restored.set(true);
        }
        let of_typing = key.clone();
        Effect::new(move |_| {
            form.with(|form| {
                if start.with_value(|start| start == form) {
                    drafts::delete(&of_typing);
                } else if let Ok(text) = serde_json::to_string(form) {
                    drafts::write(&of_typing, &text);
                }
            });
        });
        let end = move |how| {
            match how {
                DraftEnd::Saved => start.set_value(form.get_untracked()),
                DraftEnd::Discarded => form.set(start.get_value()),
            }
            drafts::delete(&key);
        };
        self.drafts.update_value(|drafts| drafts.add(end));
        self
    }

    /// Says that a draft was restored, with a button to discard it.
    pub fn draft_line(self) -> AnyView {
        (move || {
            self.restored.get().then(|| {
                view! {
                    <p class="draft-line" id="draft-restored" role="status">
                        <Icon name="undo"/>
                        <span>{i18n::draft_restored()}</span>
                        <button type="button" class="button quiet" id="draft-discard" on:click=move |_| self.discard_drafts()>{i18n::draft_discard()}</button>
                    </p>
                }
            })
        })
        .into_any()
    }

    fn discard_drafts(self) {
        self.failed.set(false);
        self.problems.set(P::default());
        self.restored.set(false);
        self.drafts.with_value(|drafts| drafts.end(DraftEnd::Discarded));
    }
}
