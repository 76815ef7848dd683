//! Checks that a photo's bytes are JPEG without metadata, and removes metadata.
//!
//! Cameras add the place and the device, some encoders add data of their own, and any bytes may follow the
//! end of the image. The parser follows ITU-T T.81 Annex B (markers B.1.1, segments B.1.1.4, entropy-coded
//! data B.1.1.5, high-level syntax B.2) and JFIF 1.02 (ITU-T T.871, section 10). It keeps tables, frame,
//! scans and the plain JFIF header, and nothing else.

use crate::facts::{MAX_ACCEPTED_BYTES, MAX_ACCEPTED_SIDE, PhotoFact};
use crate::ids::PhotoId;
use std::ops::Range;

impl PhotoFact {
    /// The fact that records this photo as taken.
    pub fn taken(photo: &JpegPhoto) -> Self {
        let bytes = photo.bytes().len() as u32;
        Self::Taken { photo: photo.id(), width: photo.width(), height: photo.height(), bytes }
    }
}

/// Longest side of a photo made by this app, in pixels.
pub const MAX_MADE_SIDE: u16 = 1600;
/// Largest file of a photo made by this app, in bytes.
pub const MAX_MADE_BYTES: usize = 300_000;

/// A photo as it is stored: valid JPEG of limited size without metadata, identified by its hash.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct JpegPhoto {
    id: PhotoId,
    width: u16,
    height: u16,
    bytes: Vec<u8>,
}

impl JpegPhoto {
    /// A photo from bytes that are already clean; `None` if they are not JPEG, contain anything else, or
    /// exceed the limits.
    pub fn of(bytes: Vec<u8>) -> Option<Self> {
        let walk = walk(&bytes)?;
        (walk.is_clean(bytes.len()) && bytes.len() <= MAX_ACCEPTED_BYTES).then(|| Self {
            id: PhotoId::of(&bytes),
            width: walk.width,
            height: walk.height,
            bytes,
        })
    }

    /// A photo from the output of an encoder: anything but the image is removed first. `None` as for
    /// [`of`](Self::of).
    pub fn cleaned(bytes: Vec<u8>) -> Option<Self> {
        if jpeg_has_no_metadata(&bytes) { Self::of(bytes) } else { Self::of(strip_metadata(&bytes)?) }
    }

    /// Its id.
    pub fn id(&self) -> PhotoId {
        self.id
    }

    /// Width in pixels.
    pub fn width(&self) -> u16 {
        self.width
    }

    /// Height in pixels.
    pub fn height(&self) -> u16 {
        self.height
    }

    /// The bytes of the file.
    pub fn bytes(&self) -> &[u8] {
        &self.bytes
    }

    /// The bytes of the file, without copying.
    pub fn into_bytes(self) -> Vec<u8> {
        self.bytes
    }
}

/// Whether these bytes are one complete JPEG image and nothing else.
pub fn jpeg_has_no_metadata(bytes: &[u8]) -> bool {
    walk(bytes).is_some_and(|walk| walk.is_clean(bytes.len()))
}

/// The image without metadata; `None` if the bytes are not a JPEG that can be parsed to its end.
pub fn strip_metadata(bytes: &[u8]) -> Option<Vec<u8>> {
    let walk = walk(bytes)?;
    Some(walk.kept.iter().filter_map(|range| bytes.get(range.clone())).flatten().copied().collect())
}

/// The result of parsing the segments.
struct Walk {
    /// The byte ranges of the image, in order; adjacent ranges are merged.
    kept: Vec<Range<usize>>,
    width: u16,
    height: u16,
}

impl Walk {
    fn keep(&mut self, range: Range<usize>) {
        match self.kept.last_mut() {
            Some(last) if last.end == range.start => last.end = range.end,
            _ => self.kept.push(range),
        }
    }

    fn is_clean(&self, length: usize) -> bool {
        self.kept.len() == 1 && self.kept.first() == Some(&(0..length))
    }
}

// Markers of T.81 table B.1.
const SOI: u8 = 0xD8;
const EOI: u8 = 0xD9;
const SOS: u8 = 0xDA;
const APP0: u8 = 0xE0;
/// Baseline, extended and progressive Huffman frames: the ones that browsers display.
const FRAMES: Range<u8> = 0xC0..0xC3;

/// Parses from the start to the end of the image. Linear in the number of bytes.
fn walk(bytes: &[u8]) -> Option<Walk> {
    if !bytes.starts_with(&[0xFF, SOI]) {
        return None;
    }
    let mut walk = Walk { kept: Vec::new(), width: 0, height: 0 };
    walk.keep(0..2);
    let (mut at, mut scanned) = (2, false);
    loop {
        let (start, marker) = marker_at(bytes, at)?;
        at = start + 2;
        if marker == EOI {
            walk.keep(start..at);
            return (scanned && walk.width > 0).then_some(walk);
        }
        let length = usize::from(u16::from_be_bytes([*bytes.get(at)?, *bytes.get(at + 1)?]));
        let inside = bytes.get(at + 2..at.checked_add(length)?)?;
        at += length;
        match marker {
            // Tables: quantization, Huffman, restart interval.
            0xDB | 0xC4 | 0xDD => walk.keep(start..at),
            // A plain header. A longer one contains a thumbnail, which may show more than the image.
            APP0 if inside.len() == 14 && inside.starts_with(b"JFIF\0") && inside.ends_with(&[0, 0]) => {
                walk.keep(start..at);
            }
            frame if FRAMES.contains(&frame) => {
                let side = |at| Some(u16::from_be_bytes([*inside.get(at)?, *inside.get(at + 1)?]));
                (walk.height, walk.width) = (side(1)?, side(3)?);
                if walk.width == 0 || walk.height == 0 || walk.width.max(walk.height) > MAX_ACCEPTED_SIDE {
                    return None;
                }
                walk.keep(start..at);
            }
            SOS if walk.width > 0 => {
                scanned = true;
                at = end_of_scan(bytes, at)?;
                walk.keep(start..at);
            }
            // Application data and comments are dropped.
            0xE0..=0xEF | 0xFE => {}
            // Anything that browsers neither write nor display.
            _ => return None,
        }
    }
}

/// The next marker, after any fill bytes (B.1.1.2).
fn marker_at(bytes: &[u8], mut at: usize) -> Option<(usize, u8)> {
    loop {
        match bytes.get(at..at + 2)? {
            [0xFF, 0xFF] => at += 1,
            [0xFF, 0] => return None,
            [0xFF, marker] => return Some((at, *marker)),
            _ => return None,
        }
    }
}

/// End of the entropy-coded data: the position of the next marker that is not a restart marker. Within the
/// data, 0xFF is followed by zero (B.1.1.5).
fn end_of_scan(bytes: &[u8], mut at: usize) -> Option<usize> {
    loop {
        at += bytes.get(at..)?.iter().position(|byte| *byte == 0xFF)?;
        match bytes.get(at + 1)? {
            0 | 0xD0..=0xD7 => at += 2,
            _ => return Some(at),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::photo::contract::picture;
    use proptest::prelude::*;

    fn segment(marker: u8, inside: &[u8]) -> Vec<u8> {
        let length = (inside.len() as u16 + 2).to_be_bytes();
        [&[0xFF, marker], &length[..], inside].concat()
    }

    /// A picture with extra bytes after its header.
    fn with(extra: &[u8]) -> Vec<u8> {
        let clean = picture(1);
        [&clean[..20], extra, &clean[20..]].concat()
    }

    #[test]
    fn a_plain_picture_is_kept_byte_for_byte() {
        let clean = picture(1);
        assert!(jpeg_has_no_metadata(&clean));
        assert_eq!(strip_metadata(&clean).unwrap(), clean);
        let photo = JpegPhoto::of(clean.clone()).unwrap();
        assert_eq!((photo.width(), photo.height(), photo.id()), (16, 8, PhotoId::of(&clean)));
    }

    #[test]
    fn every_application_segment_and_comment_is_refused_and_stripped() {
        for marker in (0xE0..=0xEF).chain([0xFE]) {
            let marked = with(&segment(marker, b"Exif\0\0 35.15 N 90.05 W"));
            assert!(!jpeg_has_no_metadata(&marked), "{marker:x}");
            assert_eq!(JpegPhoto::of(marked.clone()), None);
            assert_eq!(strip_metadata(&marked).unwrap(), picture(1), "{marker:x}");
            assert_eq!(JpegPhoto::cleaned(marked).unwrap().bytes(), picture(1));
        }
    }

    #[test]
    fn a_header_with_a_thumbnail_is_metadata() {
        let heading = segment(0xE0, b"JFIF\0\x01\x02\0\0\x01\0\x01\x01\x01rgb");
        let marked = with(&heading);
        assert!(!jpeg_has_no_metadata(&marked));
        assert_eq!(strip_metadata(&marked).unwrap(), picture(1));
    }

    #[test]
    fn bytes_after_the_end_are_refused_and_stripped() {
        let trailing = [picture(1), b"a moving picture".to_vec()].concat();
        assert!(!jpeg_has_no_metadata(&trailing));
        assert_eq!(strip_metadata(&trailing).unwrap(), picture(1));
    }

    #[test]
    fn metadata_between_scans_and_fill_bytes_are_removed() {
        let clean = picture(1);
        let end = clean.len() - 2;
        let hidden = [&clean[..end], &segment(0xE1, b"Exif"), &[0xFF, 0xFF], &clean[end..]].concat();
        assert!(!jpeg_has_no_metadata(&hidden));
        assert_eq!(strip_metadata(&hidden).unwrap(), clean);
    }

    #[test]
    fn progressive_pictures_and_restarts_are_parsed_to_the_end() {
        let mut clean = picture(1);
        let frame = clean.windows(2).position(|two| two == [0xFF, 0xC0]).unwrap();
        clean[frame + 1] = 0xC2;
        let end = clean.len() - 2;
        let scan = segment(SOS, &[1, 1, 0, 0, 63, 0]);
        let two_scans = [&clean[..end], &scan, &[1, 0xFF, 0, 2, 0xFF, 0xD0, 3], &clean[end..]].concat();
        assert!(jpeg_has_no_metadata(&two_scans));
    }

    #[test]
    fn truncated_files_and_other_files_are_refused() {
        let clean = picture(1);
        for cut in 0..clean.len() {
            assert_eq!(strip_metadata(&clean[..cut]), None, "{cut}");
        }
        let start = [0xFF, SOI];
        for bytes in [&b"\x89PNG\r\n"[..], b"GIF89a", &[0xFF, SOI, 0xFF, EOI], &[start, start].concat()] {
            assert_eq!(strip_metadata(bytes), None);
        }
        // Arithmetic coding, a hierarchical frame, and a line count after the scan: no browser displays
        // these.
        for marker in [0xC9, 0xC5, 0xCC, 0xDC, 0xDE, 0x01] {
            assert_eq!(strip_metadata(&with(&segment(marker, &[8, 0, 8, 0, 8, 1]))), None, "{marker:x}");
        }
    }

    #[test]
    fn pictures_too_large_to_display_are_refused() {
        let clean = picture(1);
        let frame = clean.windows(2).position(|two| two == [0xFF, 0xC0]).unwrap();
        for side in [frame + 5, frame + 7] {
            for (high, low) in [(0x10, 0x01), (0xFF, 0xFF), (0, 0)] {
                let mut large = clean.clone();
                (large[side], large[side + 1]) = (high, low);
                assert_eq!(JpegPhoto::cleaned(large), None);
            }
        }
        let mut heavy = clean[..clean.len() - 2].to_vec();
        heavy.resize(MAX_ACCEPTED_BYTES, 7);
        heavy.extend([0xFF, EOI]);
        assert!(jpeg_has_no_metadata(&heavy));
        assert_eq!(JpegPhoto::of(heavy), None);
    }

    proptest! {
        #[test]
        fn a_stripped_picture_needs_no_stripping(
            at in any::<prop::sample::Index>(), with in prop::collection::vec(any::<u8>(), 0..40),
        ) {
            let clean = picture(1);
            let (front, back) = clean.split_at(at.index(clean.len() + 1));
            if let Some(stripped) = strip_metadata(&[front, &with, back].concat()) {
                prop_assert!(jpeg_has_no_metadata(&stripped));
            }
        }

        #[test]
        fn no_bytes_make_the_parser_panic(bytes in prop::collection::vec(any::<u8>(), 0..200)) {
            let mut ours = vec![0xFF, SOI];
            ours.extend(&bytes);
            let _ = JpegPhoto::cleaned(ours);
        }
    }
}
