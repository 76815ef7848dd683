//! Dwell: how long a garment is in the heat, from belt speed and heated length.

use crate::units::{BeltSpeed, Length, Seconds};

/// The longest dwell accepted, in seconds: a day. Beyond it the belt practically stands still.
const DAY: f64 = 86_400.0;

/// Dwell of one pass: heated length ÷ belt speed.
///
/// `None` if the length is not positive, the belt stands still, or a pass would take longer than a day.
/// Source: the definition of speed.
///
/// ```
/// use lastpull_core::heat::dwell;
/// use lastpull_core::units::{BeltSpeed, Length, Seconds};
///
/// // 36 inches under heat at 24 inches per minute.
/// let belt = BeltSpeed::from_inches_per_minute(24.0);
/// let time = dwell(Length::from_inches(36.0), belt).unwrap();
/// assert!((time.seconds() - 90.0).abs() < 0.01);
/// assert_eq!(dwell(Length::from_inches(0.0), belt), None);
/// ```
pub fn dwell(heated: Length, belt: BeltSpeed) -> Option<Seconds> {
    if heated.micrometres() <= 0 || belt.micrometres_per_second() == 0 {
        return None;
    }
    let seconds = f64::from(heated.micrometres()) / f64::from(belt.micrometres_per_second());
    (seconds <= DAY).then(|| Seconds::new(seconds))
}

/// The fastest belt speed at which one pass lasts at least `hold`, rounded down (to the slow side). `None` if
/// the length or `hold` is not positive, or no belt is that slow.
pub fn fastest_belt(heated: Length, hold: Seconds) -> Option<BeltSpeed> {
    if heated.micrometres() <= 0 || hold.milliseconds() == 0 {
        return None;
    }
    let speed = f64::from(heated.micrometres()) * 1000.0 / f64::from(hold.milliseconds());
    (speed >= 1.0).then(|| BeltSpeed::from_micrometres_per_second(speed as u32))
}

/// The number of passes with this dwell that add up to `hold`; 1 if `hold` is zero. `None` if the dwell is
/// zero.
pub fn passes_for(hold: Seconds, dwell: Seconds) -> Option<u32> {
    // A belt speed is stored rounded: a shortfall of 1 in 1,000 is that rounding, not a missing pass.
    let slack = hold.milliseconds() - hold.milliseconds() / 1000;
    (dwell.milliseconds() > 0).then(|| slack.div_ceil(dwell.milliseconds()).max(1))
}
