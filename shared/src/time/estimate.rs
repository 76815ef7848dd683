//! An estimate with its interval.

/// An estimate with its prediction interval. Computed for views, never stored.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default)]
pub struct Estimate<T> {
    /// The expected value.
    pub expected: T,
    /// Lower end of the interval.
    pub low: T,
    /// Upper end of the interval.
    pub high: T,
}

impl<T> Estimate<T> {
    /// The estimate with each of its three values converted.
    pub fn map<U>(self, convert: impl Fn(T) -> U) -> Estimate<U> {
        Estimate { expected: convert(self.expected), low: convert(self.low), high: convert(self.high) }
    }
}
