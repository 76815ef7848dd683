//! What a run has for itself, and what it has in common with all others.

/// A variance, or a squared doubt, in two parts. When runs are taken together, the own parts add; of the shared parts,
/// the square roots add.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct OwnAndShared {
    /// That of the run alone.
    pub own: f64,
    /// That of what it shares with all other runs.
    pub shared: f64,
}
