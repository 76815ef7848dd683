//! Why a photo was not added, in words.

use crate::i18n;
use crate::platform::pictures::PictureProblem;
use crate::store::PhotoError;

/// The text of an error.
pub fn photo_error_text(error: &PhotoError) -> String {
    match error {
        PhotoError::Picture(PictureProblem::TooLarge) => i18n::photo_too_large().into(),
        PhotoError::Picture(PictureProblem::NoPicture) => i18n::photo_no_picture().into(),
        PhotoError::Picture(PictureProblem::NotMade) => i18n::photo_not_made().into(),
        PhotoError::NoRoom => i18n::photo_no_room().into(),
        PhotoError::Storage(fault) => i18n::storage_fault(fault),
    }
}
