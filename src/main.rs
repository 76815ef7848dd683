//! The page's entry. `src/start.js` calls [`lastpull::start`] once everything it needs is there.

// Linked for what it exports to the page.
use lastpull as _;

fn main() {}
