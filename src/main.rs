//! Entry point of the page. `src/start.js` calls [`lastpull::start`] once everything it needs is loaded.

// Linked for the functions that it exports to the page.
use lastpull as _;

fn main() {}
