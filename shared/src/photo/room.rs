//! How many more photos the device has room for.

use super::LARGEST_MADE;

/// Room in bytes that photos leave to the journal: years of counting. Our own.
const LEFT_TO_JOURNAL: f64 = 20.0 * 1024.0 * 1024.0;

/// Photos fewer than which are told before there is no room at all: a few days' worth. Our own.
pub const FEW_MORE: u32 = 100;

/// How many photos of the largest size still fit, from what the browser estimates of room taken and of
/// room in all, in bytes. Estimates are rough and may be nonsense; then it is 0 or very many.
pub fn photos_that_fit(used: f64, quota: f64) -> u32 {
    // Not a number comes out as 0, too much as the most there is.
    (bytes_for_photos(used, quota) / LARGEST_MADE as f64) as u32
}

/// Whether photos of so many bytes fit.
pub fn photos_fit(bytes: f64, used: f64, quota: f64) -> bool {
    bytes_for_photos(used, quota) >= bytes
}

fn bytes_for_photos(used: f64, quota: f64) -> f64 {
    quota - used - LEFT_TO_JOURNAL
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_journal_keeps_room_of_its_own() {
        let mega = 1024.0 * 1024.0;
        assert_eq!(photos_that_fit(80.0 * mega, 100.0 * mega), 0);
        assert_eq!(photos_that_fit(79.0 * mega, 100.0 * mega), 3);
        assert!(photos_fit(1.0 * mega, 79.0 * mega, 100.0 * mega));
        assert!(!photos_fit(1.01 * mega, 79.0 * mega, 100.0 * mega));
    }

    #[test]
    fn nonsense_from_the_browser_is_no_panic() {
        assert_eq!(photos_that_fit(9.0, 0.0), 0);
        assert_eq!(photos_that_fit(f64::NAN, 1e9), 0);
        assert_eq!(photos_that_fit(0.0, f64::INFINITY), u32::MAX);
    }
}
