use super::*;
use crate::exchange::Source;
use crate::facts::{Entry, Fact, MAX_ACCEPTED_BYTES};
use crate::ids::PhotoId;
use crate::journal::Stamp;
use crate::photo::JpegPhoto;
use crate::photo::contract::photo;
use crate::time::{WallTime, wall};
use std::io::{Cursor, Write};
use uuid::Uuid;
use zip::write::SimpleFileOptions;
use zip::{CompressionMethod, ZipArchive, ZipWriter};

fn entries() -> Vec<Entry> {
    (1..=40)
        .map(|seq| Entry {
            device: Uuid::from_u128(u128::from(seq % 3) + 1),
            seq: (seq - 1) / 3 + 1,
            stamp: Stamp { wall: wall(seq * 1_000), counter: 0 },
            at: wall(seq * 1_000),
            subject: Uuid::from_u128(5),
            fact: Fact::Pulled { pieces: 1, size: None },
        })
        .collect()
}

/// A file with these entries and photos, in memory.
fn write(entries: &[Entry], photos: &[JpegPhoto]) -> Vec<u8> {
    let (mut out, mut file) = BackupWriter::new(entries, wall(9)).unwrap();
    for photo in photos {
        file.extend(out.photo(photo).unwrap());
        file.extend(photo.bytes());
    }
    file.extend(out.finish());
    file
}

fn write_backup(entries: &[Entry], made: WallTime) -> Option<Vec<u8>> {
    let (out, first) = BackupWriter::new(entries, made).ok()?;
    Some([first, out.finish()].concat())
}

/// The entries of a file.
fn read_backup(bytes: &[u8]) -> Result<Vec<Entry>, BackupProblem> {
    pollster::block_on(reader::read_backup(bytes)).map(|backup| backup.facts.entries().collect())
}

/// All photos of a file, as an import reads them.
fn read_photos(bytes: &[u8]) -> Result<Vec<JpegPhoto>, BackupProblem> {
    pollster::block_on(async {
        let backup = reader::read_backup(bytes).await?;
        let mut photos = Vec::new();
        for (id, _) in backup.photos() {
            photos.extend(backup.photo(id).await?);
        }
        Ok(photos)
    })
}

/// An archive with an empty journal and other files, written by the `zip` crate.
fn archive_with(method: CompressionMethod, files: &[(&str, &[u8])]) -> Vec<u8> {
    let mut archive = ZipWriter::new(Cursor::new(Vec::new()));
    let options = SimpleFileOptions::default().compression_method(method);
    archive.start_file(JOURNAL, options).unwrap();
    archive.write_all(b"{\"journal\":\"lastpull\",\"version\":1,\"entries\":0,\"made\":1}\n").unwrap();
    for (name, bytes) in files {
        archive.start_file(*name, options).unwrap();
        archive.write_all(bytes).unwrap();
    }
    archive.finish().unwrap().into_inner()
}

fn name_of(photo: &JpegPhoto) -> String {
    format!("photos/{}.jpg", photo.id())
}

#[test]
fn photos_are_written_unchanged_and_read_back() {
    let photos: Vec<JpegPhoto> = (1..=5).map(photo).collect();
    let bytes = write(&entries(), &photos);
    let mut back = read_photos(&bytes).unwrap();
    back.sort_by_key(|photo| photo.bytes()[30]);
    assert_eq!(back, photos);
    assert_eq!(read_backup(&bytes).unwrap().len(), 40);
    // The `zip` crate finds them too, uncompressed.
    let mut archive = ZipArchive::new(Cursor::new(&bytes)).unwrap();
    assert_eq!(archive.len(), 6);
    for photo in photos {
        let mut file = archive.by_name(&name_of(&photo)).unwrap();
        assert_eq!(file.compression(), CompressionMethod::Stored);
        let mut found = Vec::new();
        std::io::copy(&mut file, &mut found).unwrap();
        assert_eq!(found, photo.bytes());
    }
}

#[test]
fn photos_recompressed_by_another_tool_are_read() {
    for method in [CompressionMethod::Stored, CompressionMethod::Deflated] {
        let name = name_of(&photo(3));
        let bytes = archive_with(method, &[("photos/", b""), ("notes.txt", b"hello"), (&name, photo(3).bytes())]);
        assert_eq!(read_photos(&bytes), Ok(vec![photo(3)]), "{method}");
    }
}

#[test]
fn photos_that_no_device_made_are_refused() {
    let name = name_of(&photo(1));
    let clean = photo(1).into_bytes();
    let exif = [&clean[..2], &[0xFF, 0xE1, 0, 8], b"Exif\0\0", &clean[2..]].concat();
    let own = format!("photos/{}.jpg", PhotoId::of(&exif));
    let other = photo(2).into_bytes();
    let large = vec![0; MAX_ACCEPTED_BYTES + 1];
    let upper = name.to_uppercase().replace("PHOTOS", "photos").replace("JPG", "jpg");
    for (name, bytes, problem) in [
        // Another photo's bytes under its name; metadata under the right name; not an image.
        (name.as_str(), &other, BackupProblem::BadPhoto),
        (&own, &exif, BackupProblem::BadPhoto),
        (&name, &b"hello".to_vec(), BackupProblem::BadPhoto),
        ("photos/me.jpg", &clean, BackupProblem::BadPhoto),
        ("photos/../x.jpg", &clean, BackupProblem::BadPhoto),
        (&upper, &clean, BackupProblem::BadPhoto),
        (&name.replace(".jpg", ".png"), &clean, BackupProblem::BadPhoto),
        (&name, &large, BackupProblem::TooLarge),
    ] {
        for method in [CompressionMethod::Stored, CompressionMethod::Deflated] {
            assert_eq!(read_photos(&archive_with(method, &[(name, bytes)])), Err(problem), "{name}");
        }
    }
}

#[test]
fn a_photo_larger_than_its_stated_size_is_stopped() {
    let name = name_of(&photo(1));
    let mut bytes = archive_with(CompressionMethod::Deflated, &[(&name, &vec![0; 64 << 20])]);
    let central = bytes.windows(4).rposition(|four| four == b"PK\x01\x02").unwrap();
    bytes[central + 24..central + 28].copy_from_slice(&9u32.to_le_bytes());
    assert_eq!(read_photos(&bytes), Err(BackupProblem::Damaged));
}

#[test]
fn the_same_photo_twice_is_refused() {
    let name = name_of(&photo(1));
    let other = name_of(&photo(2));
    let bytes = archive_with(CompressionMethod::Stored, &[(&name, photo(1).bytes()), (&other, photo(1).bytes())]);
    // No tool writes a name twice.
    let twice: Vec<u8> = {
        let mut bytes = bytes;
        while let Some(at) = bytes.windows(other.len()).position(|part| part == other.as_bytes()) {
            bytes[at..at + name.len()].copy_from_slice(name.as_bytes());
        }
        bytes
    };
    assert_eq!(read_photos(&twice), Err(BackupProblem::BadPhoto));
}

#[test]
fn a_flipped_byte_of_a_photo_is_refused() {
    let bytes = write(&[], &[photo(1)]);
    let start = bytes.windows(3).position(|three| three == [0xFF, 0xD8, 0xFF]).unwrap();
    for at in start..start + photo(1).bytes().len() {
        let mut bad = bytes.clone();
        bad[at] ^= 0x10;
        assert_eq!(read_photos(&bad), Err(BackupProblem::Damaged), "byte {at}");
    }
}

#[test]
fn every_truncation_of_a_file_with_photos_is_refused() {
    let bytes = write(&entries()[..3], &[photo(1), photo(2)]);
    for cut in 0..bytes.len() {
        assert!(read_photos(&bytes[..cut]).is_err(), "cut at {cut}");
    }
}

#[test]
fn an_unreadable_source_is_distinguished_from_a_bad_file() {
    /// Can be read a number of times, then fails.
    struct Failing<'a>(&'a [u8], std::cell::Cell<u32>);
    impl Source for Failing<'_> {
        fn size(&self) -> u64 {
            self.0.len() as u64
        }
        async fn read(&self, from: u64, length: usize) -> Option<Vec<u8>> {
            self.1.set(self.1.get().checked_sub(1)?);
            self.0.read(from, length).await
        }
    }
    let bytes = write(&entries(), &[]);
    for reads in 0..4 {
        let source = Failing(&bytes, std::cell::Cell::new(reads));
        let read = pollster::block_on(reader::read_backup(source)).map(|backup| backup.facts.len());
        assert_eq!(read, Err(BackupProblem::NotRead), "after {reads}");
    }
}

fn archive_of(name: &str, text: &str) -> Vec<u8> {
    let mut archive = ZipWriter::new(Cursor::new(Vec::new()));
    archive.start_file(name, SimpleFileOptions::default()).unwrap();
    archive.write_all(text.as_bytes()).unwrap();
    archive.finish().unwrap().into_inner()
}

#[test]
fn written_entries_are_read_back() {
    let bytes = write_backup(&entries(), wall(9)).unwrap();
    let mut back = read_backup(&bytes).unwrap();
    back.sort_by_key(|entry| entry.stamp);
    assert_eq!(back, entries());
}

/// The `zip` crate finds the same journal with a valid checksum.
#[test]
fn any_archive_tool_reads_the_file() {
    let bytes = write_backup(&entries(), wall(9)).unwrap();
    let mut archive = ZipArchive::new(Cursor::new(&bytes)).unwrap();
    assert_eq!(archive.len(), 1);
    let text = std::io::read_to_string(archive.by_name(JOURNAL).unwrap()).unwrap();
    let lines: Vec<&str> = text.lines().collect();
    assert_eq!(lines.len(), 41);
    assert_eq!(Entry::from_line(lines[1]).unwrap(), Entry { device: Uuid::from_u128(1), ..entries()[2].clone() });
}

#[test]
fn a_journal_that_does_not_match_its_checksum_is_damaged() {
    let mut bytes = write_backup(&entries(), wall(9)).unwrap();
    let central = bytes.windows(4).rposition(|four| four == b"PK\x01\x02").unwrap();
    bytes[central + 16] ^= 1;
    assert_eq!(read_backup(&bytes), Err(BackupProblem::Damaged));
}

#[test]
fn a_journal_recompressed_by_another_tool_is_read() {
    let mut archive = ZipArchive::new(Cursor::new(write_backup(&entries(), wall(9)).unwrap())).unwrap();
    let text = std::io::read_to_string(archive.by_name(JOURNAL).unwrap()).unwrap();
    for method in [CompressionMethod::Stored, CompressionMethod::Deflated] {
        let mut archive = ZipWriter::new(Cursor::new(Vec::new()));
        archive.set_comment("from the desk");
        let options = SimpleFileOptions::default().compression_method(method);
        archive.start_file("notes.txt", options).unwrap();
        archive.write_all(b"hello").unwrap();
        archive.start_file(JOURNAL, options).unwrap();
        archive.write_all(text.as_bytes()).unwrap();
        assert_eq!(
            read_backup(&archive.finish().unwrap().into_inner()).map(|entries| entries.len()),
            Ok(40),
            "{method}"
        );
    }
}

/// A file written by version 1 of this app: `shared/tests/data/backup_v1.zip`.
#[test]
fn a_file_of_version_1_is_still_read() {
    let bytes = include_bytes!("../../../tests/data/backup_v1.zip");
    let mut back = read_backup(bytes).unwrap();
    back.sort_by_key(|entry| entry.stamp);
    assert_eq!(back, entries());
}

#[test]
fn every_truncation_is_refused() {
    let bytes = write_backup(&entries(), wall(9)).unwrap();
    for cut in 0..bytes.len() {
        assert!(read_backup(&bytes[..cut]).is_err(), "cut at {cut}");
    }
}

/// In the packed facts, and in the names, sizes and dates around them.
#[test]
fn a_flipped_bit_is_refused_or_changes_no_fact() {
    let bytes = write_backup(&entries(), wall(9)).unwrap();
    let mut refused = 0;
    for at in 0..bytes.len() {
        let mut bad = bytes.clone();
        bad[at] ^= 1 << (at % 8);
        match read_backup(&bad) {
            Ok(read) => assert_eq!(read, read_backup(&bytes).unwrap(), "byte {at}"),
            Err(_) => refused += 1,
        }
    }
    assert!(refused > bytes.len() * 3 / 4, "{refused} of {} refused", bytes.len());
}

#[test]
fn foreign_and_hostile_files_are_refused_with_a_reason() {
    let heading = r#"{"journal":"lastpull","version":1,"entries":1,"made":1}"#;
    let cases: [(&[u8], BackupProblem); 3] = [
        (b"hello", BackupProblem::NotAnArchive),
        (b"", BackupProblem::NotAnArchive),
        (b"PK\x05\x06\0\0\0\0\0\0\0\0\0\0\0\0\0\0\0\0\0\0", BackupProblem::NotABackup),
    ];
    for (bytes, problem) in cases {
        assert_eq!(read_backup(bytes), Err(problem));
    }
    for (name, text, problem) in [
        ("photos.txt", "hello".to_owned(), BackupProblem::NotABackup),
        ("../journal.ndjson", heading.to_owned(), BackupProblem::NotABackup),
        (JOURNAL, "hello\n".to_owned(), BackupProblem::NotABackup),
        (JOURNAL, String::new(), BackupProblem::NotABackup),
        (JOURNAL, format!("{heading}\n"), BackupProblem::CutShort),
        (JOURNAL, format!("{heading}\nnonsense\n"), BackupProblem::BadLine { line: 2 }),
        (JOURNAL, format!("{heading}\n{}", "[".repeat(5_000_000)), BackupProblem::BadLine { line: 2 }),
        (JOURNAL, heading.replace("\"version\":1", "\"version\":2") + "\n", BackupProblem::Newer),
        (JOURNAL, heading.replace("\"entries\":1", "\"entries\":99999999999") + "\n", BackupProblem::TooLarge),
    ] {
        assert_eq!(read_backup(&archive_of(name, &text)), Err(problem), "{name} {}", text.len());
    }
}

#[test]
fn more_lines_than_the_header_says_are_refused() {
    let line = entries()[0].to_line();
    let text = format!("{{\"journal\":\"lastpull\",\"version\":1,\"entries\":1,\"made\":1}}\n{line}\n{line}\n");
    assert_eq!(read_backup(&archive_of(JOURNAL, &text)), Err(BackupProblem::BadLine { line: 3 }));
}

#[test]
fn a_decompression_bomb_is_stopped_at_its_first_line() {
    let mut archive = ZipWriter::new(Cursor::new(Vec::new()));
    let options = SimpleFileOptions::default().compression_method(CompressionMethod::Deflated);
    archive.start_file(JOURNAL, options).unwrap();
    let nothing = vec![b' '; 1 << 20];
    for _ in 0..64 {
        archive.write_all(&nothing).unwrap();
    }
    let bytes = archive.finish().unwrap().into_inner();
    assert!(bytes.len() < 100_000);
    assert_eq!(read_backup(&bytes), Err(BackupProblem::BadLine { line: 1 }));
}

#[test]
fn a_file_of_the_demo_says_so_and_any_other_does_not() {
    let (out, first) = BackupWriter::of_demo(&entries(), wall(9)).unwrap();
    let demo = [first, out.finish()].concat();
    let shop = write_backup(&entries(), wall(9)).unwrap();
    let read = |bytes: &[u8]| pollster::block_on(reader::read_backup(bytes)).map(|backup| backup.demo);
    assert_eq!((read(&demo), read(&shop)), (Ok(true), Ok(false)));
    assert_eq!(read_backup(&demo).unwrap().len(), 40);
}

#[test]
fn values_that_do_not_decode_are_carried_along_unread() {
    let (mut out, mut file) = BackupWriter::new(&entries(), wall(9)).unwrap();
    let damaged = b"\x01 no record";
    file.extend(out.unreadable("tail-7", damaged).unwrap());
    file.extend(damaged);
    file.extend(out.finish());
    assert_eq!(read_backup(&file).unwrap().len(), 40);
    let mut archive = ZipArchive::new(Cursor::new(&file)).unwrap();
    let mut found = Vec::new();
    std::io::copy(&mut archive.by_name("unreadable/tail-7.bin").unwrap(), &mut found).unwrap();
    assert_eq!(found, damaged);
}

#[test]
fn an_archive_unpacked_and_packed_again_with_its_folder_is_read() {
    let heading: &[u8] = b"{\"journal\":\"lastpull\",\"version\":1,\"entries\":0,\"made\":1}\n";
    let packed = |names: &[&str]| {
        let mut archive = ZipWriter::new(Cursor::new(Vec::new()));
        let options = SimpleFileOptions::default();
        for name in names {
            archive.start_file(*name, options).unwrap();
            archive.write_all(heading).unwrap();
        }
        let photo = photo(3);
        archive.start_file(format!("lastpull-2026-11-28/photos/{}.jpg", photo.id()), options).unwrap();
        archive.write_all(photo.bytes()).unwrap();
        archive.finish().unwrap().into_inner()
    };
    let beside = ["lastpull-2026-11-28/journal.ndjson", "__MACOSX/lastpull-2026-11-28/._journal.ndjson"];
    assert_eq!(read_photos(&packed(&beside)), Ok(vec![photo(3)]));
    for refused in [&["../journal.ndjson"][..], &["a/b/journal.ndjson"], &["a/journal.ndjson", "b/journal.ndjson"]] {
        assert_eq!(read_backup(&packed(refused)), Err(BackupProblem::NotABackup), "{refused:?}");
    }
}

#[test]
fn a_file_with_more_gaps_or_devices_than_a_shop_leaves_is_refused() {
    let scattered = |count: u64, device: fn(u64) -> u64, seq: fn(u64) -> u64| {
        let all: Vec<Entry> = (1..=count)
            .map(|n| Entry { device: Uuid::from_u128(u128::from(device(n))), seq: seq(n), ..entries()[0].clone() })
            .collect();
        read_backup(&write_backup(&all, wall(9)).unwrap()).map(|entries| entries.len() as u64)
    };
    assert_eq!(scattered(10_000, |_| 1, |n| 2 * n), Ok(10_000));
    assert_eq!(scattered(10_001, |_| 1, |n| 2 * n), Err(BackupProblem::Scattered));
    assert_eq!(scattered(2_000, |n| n, |_| 1), Ok(2_000));
    assert_eq!(scattered(2_001, |n| n, |_| 1), Err(BackupProblem::Scattered));
}
