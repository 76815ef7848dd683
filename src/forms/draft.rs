//! Keeps what is typed into a form or a dialog until it is saved: it is there again after a reload, an update, or a visit
//! to another page.
//!
//! # Decisions
//!
//! - **Drafts** (2026-11-29). A form's texts are kept in local storage as JSON by field name, under its route, until
//!   it is saved: written at each change, since a phone short of memory gives no notice before it drops the page. The
//!   form is cheap to write (1 kB); at most 20 are kept. A draft that a later version cannot read is dropped. A
//!   dialog in which more than one thing is typed keeps one too, under its own name below the route
//!   (`Draft::of_dialog`), and shows it when it is opened again. Readings of a scale or thermometer have none: an old
//!   reading is worse than none.
//! - **Drafts by units** (2026-11-30). The units of the device are in a draft's name, since a number without its unit
//!   would be misread in others. Drafts of builds that did not name them are not read.

use crate::components::Icon;
use crate::i18n;
use crate::platform::{dom, drafts as stored, history};
use crate::store::Store;
use lastpull_core::units::Units;
use leptos::prelude::*;
use serde::Serialize;
use serde::de::DeserializeOwned;
use std::sync::Arc;

/// What is typed on a page, or in a dialog on it, and not saved yet: one struct of texts or several.
#[derive(Clone, Copy)]
pub struct Draft {
    /// Whether what was typed earlier is shown.
    pub restored: RwSignal<bool>,
    /// Name of the dialog with a slash before it, empty for the page.
    dialog: StoredValue<String>,
    endings: StoredValue<DraftEndings>,
}

/// How a draft ends.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum DraftEnd {
    /// It was saved.
    Saved,
    /// The user wants the form as it was.
    Discarded,
}

/// Ends a draft. A clone ends the same one, also when the page was left.
#[derive(Clone, Default)]
pub struct DraftEndings {
    all: Vec<Arc<dyn Fn(DraftEnd) + Send + Sync>>,
}

impl DraftEndings {
    /// It was saved.
    pub fn saved(&self) {
        self.end(DraftEnd::Saved);
    }

    fn end(&self, how: DraftEnd) {
        self.all.iter().for_each(|end| end(how));
    }
}

impl Draft {
    /// The draft of the page's form.
    pub fn of_page() -> Self {
        Self::named(String::new())
    }

    /// The draft of a dialog, named by its kind and what it is about unless that is the page's subject. It is there when
    /// the dialog is opened again.
    pub fn of_dialog(dialog: impl Into<String>) -> Self {
        Self::named(format!("/{}", dialog.into()))
    }

    fn named(dialog: String) -> Self {
        Self {
            restored: RwSignal::new(false),
            dialog: StoredValue::new(dialog),
            endings: StoredValue::new(DraftEndings::default()),
        }
    }

    /// Keeps what is typed into `form` until it is saved. A draft is restored at once: call it before anything is derived
    /// from the form. Call it once more for a second struct of texts.
    pub fn keep<F>(self, form: RwSignal<F>) -> Self
    where
        F: Clone + PartialEq + Serialize + DeserializeOwned + Send + Sync + 'static,
    {
        let demo = Store::from_context().settings.with_untracked(|settings| settings.demo);
        let part = self.endings.with_value(|endings| endings.all.len());
        let dialog = self.dialog.get_value();
        let Units { length, temperature, weight } = i18n::units();
        let units = 100 * length as usize + 10 * temperature as usize + weight as usize;
        let key = format!("{}{}{dialog}/{part}/u{units}", stored::shop_key(demo), history::hash());
        let start = StoredValue::new(form.get_untracked());
        let found = stored::read(&key).and_then(|text| serde_json::from_str::<F>(&text).ok());
        if let Some(found) = found.filter(|found| start.with_value(|start| start != found)) {
            form.set(found);
            self.restored.set(true);
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
        self.endings.update_value(|endings| endings.all.push(Arc::new(end)));
        self
    }

    /// It was saved: what is in the form now is no draft. Call it before a dialog is closed.
    pub fn saved(self) {
        self.end(DraftEnd::Saved);
    }

    /// What ends the draft, to be kept while the page may be left.
    pub fn endings(self) -> DraftEndings {
        self.endings.get_value()
    }

    /// Says that a draft was restored, with a button to discard it.
    pub fn line(self) -> AnyView {
        self.line_with(|| ())
    }

    /// As [`Self::line`]; `discarded` is called when the user discards the draft, before the form is as it was.
    pub fn line_with(self, discarded: impl Fn() + Copy + Send + Sync + 'static) -> AnyView {
        let id = if self.dialog.with_value(String::is_empty) { "draft" } else { "dialog-draft" };
        let discard = move |_| {
            discarded();
            self.end(DraftEnd::Discarded);
            dom::keep_focus();
        };
        (move || {
            self.restored.get().then(|| {
                view! {
                    <p class="draft-line" id=format!("{id}-restored") role="status">
                        <Icon name="undo"/>
                        <span>{i18n::draft_restored()}</span>
                        <button type="button" class="button quiet" id=format!("{id}-discard") on:click=discard>{i18n::draft_discard()}</button>
                    </p>
                }
            })
        })
        .into_any()
    }

    fn end(self, how: DraftEnd) {
        self.endings.with_value(|endings| endings.end(how));
        self.restored.set(false);
    }
}
