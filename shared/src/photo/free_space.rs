//! How many more photos fit on the device?

use super::MAX_MADE_BYTES;

/// Storage that photos leave free for the journal, in bytes: enough for years of counting. Our own.
const JOURNAL_RESERVE: f64 = 20.0 * 1024.0 * 1024.0;

/// If fewer photos than this fit, the user is warned: a few days' worth. Our own.
pub const LOW_PHOTO_COUNT: u32 = 100;

/// Number of photos of the largest size that still fit. `used` and `quota` are the browser's storage
/// estimate in bytes. Estimates are rough and may be nonsense; the result is then 0 or very large.
///
/// ```
/// use lastpull_core::photo::photos_that_fit;
///
/// let megabyte = 1024.0 * 1024.0;
/// assert_eq!(photos_that_fit(79.0 * megabyte, 100.0 * megabyte), 3);
/// assert_eq!(photos_that_fit(80.0 * megabyte, 100.0 * megabyte), 0);
/// assert_eq!(photos_that_fit(f64::NAN, 1e9), 0);
/// ```
pub fn photos_that_fit(used: f64, quota: f64) -> u32 {
    // The conversion turns NaN into 0 and saturates at the largest `u32`.
    (bytes_left_for_photos(used, quota) / MAX_MADE_BYTES as f64) as u32
}

/// Whether photos of `bytes` bytes in total still fit.
pub fn photos_fit(bytes: f64, used: f64, quota: f64) -> bool {
    bytes_left_for_photos(used, quota) >= bytes
}

fn bytes_left_for_photos(used: f64, quota: f64) -> f64 {
    quota - used - JOURNAL_RESERVE
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn storage_for_the_journal_is_kept_free() {
        let mega = 1024.0 * 1024.0;
        assert_eq!(photos_that_fit(80.0 * mega, 100.0 * mega), 0);
        assert_eq!(photos_that_fit(79.0 * mega, 100.0 * mega), 3);
        assert!(photos_fit(1.0 * mega, 79.0 * mega, 100.0 * mega));
        assert!(!photos_fit(1.01 * mega, 79.0 * mega, 100.0 * mega));
    }

    #[test]
    fn nonsense_estimates_do_not_panic() {
        assert_eq!(photos_that_fit(9.0, 0.0), 0);
        assert_eq!(photos_that_fit(f64::NAN, 1e9), 0);
        assert_eq!(photos_that_fit(0.0, f64::INFINITY), u32::MAX);
    }
}
