//! Which touches count? A fingertip does; a palm, a second finger, a brush of the screen's edge and a bounce
//! do not.

/// A touch on the count zone as the browser reports it. Lengths are in CSS pixels, positions from the top
/// left of the window.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Touch {
    /// Identifies the contact while it lasts.
    pub id: i32,
    /// Distance from the left edge.
    pub x: f64,
    /// Distance from the top edge.
    pub y: f64,
    /// Width of the contact; 0 or 1 if the screen does not measure it.
    pub width: f64,
    /// Height of the contact.
    pub height: f64,
    /// Time in milliseconds on any monotonic clock.
    pub at: f64,
}

/// Size of the window in CSS pixels.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Viewport {
    /// Width.
    pub width: f64,
    /// Height.
    pub height: f64,
}

/// Contacts closer than this to an edge of the window, in CSS pixels, come from a hand that holds the device.
/// Our own figure.
const EDGE_PX: f64 = 10.0;
/// Contacts this wide or high, in CSS pixels, are a palm or a sleeve: fingertips measure 16 to 20 mm at most
/// (about 75 px). Our own figure.
const PALM_PX: f64 = 90.0;
/// A contact sooner than this after the last one, in milliseconds, is a bounce: nobody pulls a squeegee twice
/// in that time. Our own figure.
const BOUNCE_MS: f64 = 120.0;

/// The contacts currently on the count zone.
#[derive(Clone, Debug, PartialEq, Default)]
pub struct Contacts {
    down: Vec<i32>,
    last_lifted: Option<f64>,
    last_counted: Option<f64>,
}

impl Contacts {
    /// Starts a contact. Returns whether it counts as a pull.
    pub fn touch(&mut self, touch: Touch, window: Viewport) -> bool {
        let alone = self.down.is_empty();
        if !self.down.contains(&touch.id) {
            self.down.push(touch.id);
        }
        let on_edge = touch.x < EDGE_PX
            || touch.y < EDGE_PX
            || touch.x > window.width - EDGE_PX
            || touch.y > window.height - EDGE_PX;
        let palm = touch.width > PALM_PX || touch.height > PALM_PX;
        let soon = |since: Option<f64>| since.is_some_and(|at| touch.at - at < BOUNCE_MS);
        let counts = alone && !on_edge && !palm && !soon(self.last_lifted) && !soon(self.last_counted);
        if counts {
            self.last_counted = Some(touch.at);
        }
        counts
    }

    /// Ends a contact because it was lifted or cancelled, at the time `at` in milliseconds on the clock of
    /// [`Touch::at`].
    pub fn lift(&mut self, id: i32, at: f64) {
        if self.down.contains(&id) {
            self.down.retain(|other| *other != id);
            self.last_lifted = Some(at);
        }
    }

    /// Forgets every contact, because the page was hidden or a dialog opened.
    pub fn clear(&mut self) {
        self.down.clear();
    }
}

/// Keys held down on a clicker, a pedal or a keyboard. A key counts once when it goes down, however long it
/// is held or repeats.
#[derive(Clone, Debug, PartialEq, Default)]
pub struct HeldKeys {
    down: Vec<String>,
}

/// What a key means on the counting page.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum KeyMeaning {
    /// Count one piece.
    Count,
    /// Take the last one back.
    Undo,
}

impl HeldKeys {
    /// Handles a key press. `key` is its value by the W3C standard "UI Events KeyboardEvent key Values".
    /// `None` if the key has no meaning here or is already held.
    pub fn press(&mut self, key: &str, repeats: bool) -> Option<KeyMeaning> {
        let meaning = match key {
            " " | "Enter" | "ArrowRight" | "ArrowLeft" | "ArrowUp" | "ArrowDown" | "PageDown" | "PageUp"
            | "AudioVolumeUp" | "AudioVolumeDown" | "VolumeUp" | "VolumeDown" | "MediaTrackNext" | "MediaPlayPause" => {
                KeyMeaning::Count
            }
            "Backspace" | "Delete" | "z" | "Z" => KeyMeaning::Undo,
            _ => return None,
        };
        let fresh = !self.down.iter().any(|other| other == key);
        if fresh {
            self.down.push(key.to_owned());
        }
        (fresh && !repeats).then_some(meaning)
    }

    /// Handles a key release.
    pub fn release(&mut self, key: &str) {
        self.down.retain(|other| other != key);
    }

    /// Forgets every held key, because the window lost focus.
    pub fn clear(&mut self) {
        self.down.clear();
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const PHONE: Viewport = Viewport { width: 390.0, height: 844.0 };

    fn tip(id: i32, at: f64) -> Touch {
        Touch { id, x: 200.0, y: 400.0, width: 30.0, height: 30.0, at }
    }

    #[test]
    fn a_fingertip_counts_once_while_it_is_down() {
        let mut contacts = Contacts::default();
        assert!(contacts.touch(tip(1, 0.0), PHONE));
        assert!(!contacts.touch(tip(2, 400.0), PHONE), "a second finger while the first lies");
        contacts.lift(2, 450.0);
        assert!(!contacts.touch(tip(3, 5_000.0), PHONE), "the first still lies");
        contacts.lift(1, 6_000.0);
        contacts.lift(3, 6_000.0);
        assert!(contacts.touch(tip(4, 6_500.0), PHONE));
    }

    #[test]
    fn a_bounce_does_not_count_but_a_quick_hand_does() {
        let mut contacts = Contacts::default();
        assert!(contacts.touch(tip(1, 0.0), PHONE));
        contacts.lift(1, 30.0);
        assert!(!contacts.touch(tip(2, 60.0), PHONE));
        contacts.lift(2, 70.0);
        assert!(contacts.touch(tip(3, 260.0), PHONE));
    }

    #[test]
    fn a_palm_and_the_edge_of_the_screen_do_not_count() {
        let palm = Touch { width: 120.0, ..tip(1, 0.0) };
        assert!(!Contacts::default().touch(palm, PHONE));
        for (x, y) in [(3.0, 400.0), (387.0, 400.0), (200.0, 2.0), (200.0, 840.0)] {
            assert!(!Contacts::default().touch(Touch { x, y, ..tip(1, 0.0) }, PHONE), "{x} {y}");
        }
    }

    #[test]
    fn a_lost_contact_does_not_block_the_count() {
        let mut contacts = Contacts::default();
        assert!(contacts.touch(tip(1, 0.0), PHONE));
        contacts.clear();
        assert!(contacts.touch(tip(2, 1_000.0), PHONE));
    }

    #[test]
    fn a_held_key_counts_once() {
        let mut keys = HeldKeys::default();
        assert_eq!(keys.press("PageDown", false), Some(KeyMeaning::Count));
        for _ in 0..20 {
            assert_eq!(keys.press("PageDown", true), None);
        }
        // Some clickers repeat without setting the flag.
        assert_eq!(keys.press("PageDown", false), None);
        keys.release("PageDown");
        assert_eq!(keys.press("PageDown", false), Some(KeyMeaning::Count));
        assert_eq!(keys.press("Backspace", false), Some(KeyMeaning::Undo));
        assert_eq!(keys.press("q", false), None);
    }
}
