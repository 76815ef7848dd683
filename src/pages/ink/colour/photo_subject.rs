//! What a photo is taken of, and storing it.

use crate::i18n;
use crate::pages::photos::photo_error_text;
use crate::platform::spawn_local;
use crate::store::Store;
use lastpull_core::colour::photo_reading::PatchRole;
use lastpull_core::ids::Subject;
use send_wrapper::SendWrapper;
use web_sys::File;

/// What a photo reads, relative to a known colour. Only the difference of the two is trusted.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default)]
pub enum PhotoOf {
    /// A pot's swatch, beside its target.
    #[default]
    Swatch,
    /// A garment, beside a target.
    Garment,
    /// A target, beside a garment.
    Target,
    /// A drawdown of this component, beside a chosen patch of known colour.
    Drawdown(Subject),
}

impl PhotoOf {
    /// What must be known before a photo can be taken.
    pub fn lacks(self) -> &'static str {
        match self {
            Self::Swatch | Self::Garment => i18n::colour_garment_no_photo(),
            Self::Drawdown(_) => i18n::colour_photo_no_patch(),
            Self::Target => i18n::colour_target_no_photo(),
        }
    }

    /// The name of a mark, its name within a sentence, and its letter.
    pub fn mark(self, which: PatchRole) -> (&'static str, &'static str, &'static str) {
        let target = || (i18n::colour_target(), i18n::colour_in_target(), "T");
        let garment = || (i18n::colour_mark_garment(), i18n::colour_in_garment(), "G");
        let known = || (i18n::colour_mark_known(), i18n::colour_in_known(), i18n::colour_letter_known());
        match (self, which) {
            (Self::Drawdown(_), PatchRole::Target) => known(),
            (Self::Drawdown(_), PatchRole::Sample) => {
                (i18n::colour_mark_drawdown(), i18n::colour_in_drawdown(), i18n::colour_letter_drawdown())
            }
            (_, PatchRole::Neutral) => (i18n::colour_mark_neutral(), "", "N"),
            (Self::Swatch, PatchRole::Sample) => (i18n::colour_mark_sample(), i18n::colour_in_sample(), "S"),
            (Self::Target, PatchRole::Target) | (Self::Garment, PatchRole::Sample) => garment(),
            (Self::Swatch | Self::Garment, PatchRole::Target) | (Self::Target, PatchRole::Sample) => target(),
        }
    }
}

/// The picture of a reading.
#[derive(Clone, Debug)]
pub struct Taken(SendWrapper<File>);

impl Taken {
    /// From a picked file.
    pub fn of(file: SendWrapper<File>) -> Self {
        Self(file)
    }
}

impl PartialEq for Taken {
    fn eq(&self, other: &Self) -> bool {
        *self.0 == *other.0
    }
}

/// Stores the picture of a reading, to be looked at later. The reading is valid without it.
pub fn keep_picture(store: Store, subject: Subject, taken: Option<Taken>) {
    let Some(Taken(file)) = taken else { return };
    spawn_local(async move {
        if let Err(why) = store.add_photo(subject, &file).await {
            store.notify(i18n::photo_refused(file.name(), photo_error_text(&why)));
        }
    });
}
