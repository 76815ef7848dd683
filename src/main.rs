//! Trunk's entry: draws the app.

fn main() {
    lastpull::start();
}
