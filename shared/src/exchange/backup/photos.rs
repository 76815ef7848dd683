//! Which photos a backup file lacks, and why.

use crate::ids::PhotoId;
use std::collections::BTreeSet;

/// Number of photos that are not in a file.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct PhotosLeftOut {
    /// The shop shows them, and this device does not have them, or not whole.
    pub absent: u32,
    /// This device has them, and the file was full.
    pub too_many: u32,
}

impl PhotosLeftOut {
    /// Of a shop that shows the photos `shown`: those that are neither `written` into the file nor `refused` by it, and
    /// those that are `refused`, shown or not.
    pub fn of(shown: &BTreeSet<PhotoId>, written: &BTreeSet<PhotoId>, refused: &BTreeSet<PhotoId>) -> Self {
        let absent = shown.iter().filter(|id| !written.contains(id) && !refused.contains(id)).count();
        Self { absent: absent as u32, too_many: refused.len() as u32 }
    }
}

#[cfg(test)]
mod tests {
    use super::super::{BackupWriter, MAX_PHOTOS, read_backup};
    use super::*;
    use crate::photo::JpegPhoto;
    use crate::photo::contract::picture;
    use crate::time::wall;

    fn ids(of: impl IntoIterator<Item = u8>) -> BTreeSet<PhotoId> {
        of.into_iter().map(|seed| PhotoId::of(&[seed])).collect()
    }

    #[test]
    fn each_photo_that_is_left_out_is_told_for_its_own_reason() {
        let left_out = |shown, written, refused| PhotosLeftOut::of(&shown, &written, &refused);
        assert_eq!(left_out(ids(1..=5), ids(1..=5), ids([])), PhotosLeftOut { absent: 0, too_many: 0 });
        assert_eq!(left_out(ids(1..=5), ids(1..=3), ids([])), PhotosLeftOut { absent: 2, too_many: 0 });
        assert_eq!(left_out(ids(1..=5), ids(1..=2), ids(3..=4)), PhotosLeftOut { absent: 1, too_many: 2 });
        // Beside facts that do not read, every photo of the device goes into the file, shown or not.
        assert_eq!(left_out(ids(1..=5), ids([1, 6]), ids([2, 7, 8, 9])), PhotosLeftOut { absent: 3, too_many: 4 });
    }

    /// A photo whose bytes no other number has.
    fn numbered(number: u32) -> JpegPhoto {
        let mut bytes = picture(0);
        bytes[30..34].copy_from_slice(&number.to_be_bytes());
        JpegPhoto::of(bytes).unwrap()
    }

    #[test]
    fn a_full_file_refuses_further_photos_and_is_read() {
        let (mut out, mut file) = BackupWriter::new(&[], wall(9)).unwrap();
        let most = MAX_PHOTOS as u32;
        for photo in (0..most).map(numbered) {
            file.extend(out.photo(&photo).unwrap());
            file.extend(photo.bytes());
        }
        assert_eq!(out.photo(&numbered(most)), None);
        file.extend(out.finish());
        let backup = pollster::block_on(read_backup(&file[..])).unwrap();
        assert_eq!(backup.photos().count(), MAX_PHOTOS);
        let last = pollster::block_on(backup.photo(numbered(most - 1).id())).unwrap();
        assert_eq!(last, Some(numbered(most - 1)));
    }
}
