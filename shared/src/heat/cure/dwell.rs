//! How long a garment is in the heat.

use crate::units::{BeltSpeed, Length, Seconds};

/// The longest dwell that is believed: a day. Past it the belt as good as stands.
const DAY: f64 = 86_400.0;

/// How long one pass is in the heat: 60 × heated length ÷ belt speed a minute, in seconds.
///
/// None where the length is not above nothing, the belt stands, or a pass would take longer than a
/// day. Source: the definition of speed.
pub fn dwell(heated: Length, belt: BeltSpeed) -> Option<Seconds> {
    if heated.micrometres() <= 0 || belt.micrometres_a_second() == 0 {
        return None;
    }
    let seconds = f64::from(heated.micrometres()) / f64::from(belt.micrometres_a_second());
    (seconds <= DAY).then(|| Seconds::new(seconds))
}

/// The fastest belt at which one pass is in the heat for as long as `hold`: rounded down, to the slow
/// side. None where nothing needs to be held, or no belt is that slow.
pub fn fastest_belt(heated: Length, hold: Seconds) -> Option<BeltSpeed> {
    if heated.micrometres() <= 0 || hold.milliseconds() == 0 {
        return None;
    }
    let speed = f64::from(heated.micrometres()) * 1000.0 / f64::from(hold.milliseconds());
    (speed >= 1.0).then(|| BeltSpeed::from_micrometres_a_second(speed as u32))
}

/// How many passes of this dwell add up to `hold`; one where nothing needs to be held. None where a
/// pass takes no time.
pub fn passes_for(hold: Seconds, dwell: Seconds) -> Option<u32> {
    // A belt speed is stored rounded: 1 in 1,000 short of a pass is that rounding, not a missing pass.
    let slack = hold.milliseconds() - hold.milliseconds() / 1000;
    (dwell.milliseconds() > 0).then(|| slack.div_ceil(dwell.milliseconds()).max(1))
}
