//! Wall time of repeated work.

use std::hint::black_box;
use std::time::{Duration, Instant};

/// The median time of `work` over an odd number of repeats, and the last result. Preparing its
/// input and dropping its results are not timed.
pub fn median<I, O>(repeats: usize, mut prepare: impl FnMut() -> I, mut work: impl FnMut(I) -> O) -> (Duration, O) {
    let mut once = || {
        let input = black_box(prepare());
        let start = Instant::now();
        let output = black_box(work(input));
        (start.elapsed(), output)
    };
    let mut times: Vec<Duration> = (1..repeats).map(|_| once().0).collect();
    let (last, output) = once();
    times.push(last);
    times.sort();
    (times[times.len() / 2], output)
}
