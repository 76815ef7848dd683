//! The page's entry: draws the app.

fn main() {
    lastpull::start();
}
