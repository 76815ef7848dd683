//! Which touches count? A fingertip does; a palm, a second finger beside it, a brush of the screen's
//! edge and a bounce do not.

/// A touch on the count zone as the screen reports it. Lengths in CSS pixels (1/96 inch at arm's
/// length); position from the top left of the window.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Touch {
    /// Tells contacts apart while they last.
    pub id: i32,
    /// From the left.
    pub x: f64,
    /// From the top.
    pub y: f64,
    /// Width of the contact; 0 or 1 where the screen does not measure it.
    pub width: f64,
    /// Height of the contact.
    pub height: f64,
    /// Milliseconds, on any clock that only goes forward.
    pub at: f64,
}

/// The window's size.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Window {
    /// Width.
    pub width: f64,
    /// Height.
    pub height: f64,
}

/// Contacts closer to an edge of the window come from a hand that holds the device. Our own figure.
const EDGE: f64 = 10.0;
/// A contact this large is a palm or a sleeve: fingertips measure 16 to 20 mm at most (about 75 px).
/// Our own figure.
const PALM: f64 = 90.0;
/// A contact that comes back sooner is a bounce: nobody pulls a squeegee twice in it. Our own figure.
const BOUNCE: f64 = 120.0;

/// The contacts on the zone now.
#[derive(Clone, Debug, PartialEq, Default)]
pub struct Contacts {
    down: Vec<i32>,
    last_lifted: Option<f64>,
    last_counted: Option<f64>,
}

impl Contacts {
    /// A contact begins. Whether it counts.
    pub fn touch(&mut self, touch: Touch, window: Window) -> bool {
        let alone = self.down.is_empty();
        if !self.down.contains(&touch.id) {
            self.down.push(touch.id);
        }
        let on_edge =
            touch.x < EDGE || touch.y < EDGE || touch.x > window.width - EDGE || touch.y > window.height - EDGE;
        let palm = touch.width > PALM || touch.height > PALM;
        let soon = |since: Option<f64>| since.is_some_and(|at| touch.at - at < BOUNCE);
        let counts = alone && !on_edge && !palm && !soon(self.last_lifted) && !soon(self.last_counted);
        if counts {
            self.last_counted = Some(touch.at);
        }
        counts
    }

    /// A contact ends, by lifting or because the system took it.
    pub fn lift(&mut self, id: i32, at: f64) {
        if self.down.contains(&id) {
            self.down.retain(|other| *other != id);
            self.last_lifted = Some(at);
        }
    }

    /// Every contact is gone: the page was hidden, or a sheet came up.
    pub fn clear(&mut self) {
        self.down.clear();
    }
}

/// Keys held down on anything keyboard-like: a clicker, a pedal, a keyboard. A key counts when it
/// goes down and once only, however long it is held and however often it repeats.
#[derive(Clone, Debug, PartialEq, Default)]
pub struct Keys {
    down: Vec<String>,
}

/// What a key means on the counting screen.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum KeyMeaning {
    /// One more.
    Count,
    /// Take the last back.
    Undo,
}

impl Keys {
    /// A key goes down. `key` is its name by the UI Events KeyboardEvent key Values standard (W3C).
    /// None when it means nothing here, or is held.
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

    /// A key comes up.
    pub fn release(&mut self, key: &str) {
        self.down.retain(|other| other != key);
    }

    /// The window lost its keys: none is known to be down.
    pub fn clear(&mut self) {
        self.down.clear();
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const PHONE: Window = Window { width: 390.0, height: 844.0 };

    fn tip(id: i32, at: f64) -> Touch {
        Touch { id, x: 200.0, y: 400.0, width: 30.0, height: 30.0, at }
    }

    #[test]
    fn a_fingertip_counts_once_for_as_long_as_it_lies() {
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
    fn a_bounce_does_not_count_and_a_quick_hand_does() {
        let mut contacts = Contacts::default();
        assert!(contacts.touch(tip(1, 0.0), PHONE));
        contacts.lift(1, 30.0);
        assert!(!contacts.touch(tip(2, 60.0), PHONE));
        contacts.lift(2, 70.0);
        assert!(contacts.touch(tip(3, 260.0), PHONE));
    }

    #[test]
    fn a_palm_and_the_screens_edge_do_not_count() {
        let palm = Touch { width: 120.0, ..tip(1, 0.0) };
        assert!(!Contacts::default().touch(palm, PHONE));
        for (x, y) in [(3.0, 400.0), (387.0, 400.0), (200.0, 2.0), (200.0, 840.0)] {
            assert!(!Contacts::default().touch(Touch { x, y, ..tip(1, 0.0) }, PHONE), "{x} {y}");
        }
    }

    #[test]
    fn a_lost_contact_does_not_block_the_count_for_ever() {
        let mut contacts = Contacts::default();
        assert!(contacts.touch(tip(1, 0.0), PHONE));
        contacts.clear();
        assert!(contacts.touch(tip(2, 1_000.0), PHONE));
    }

    #[test]
    fn a_held_key_counts_once() {
        let mut keys = Keys::default();
        assert_eq!(keys.press("PageDown", false), Some(KeyMeaning::Count));
        for _ in 0..20 {
            assert_eq!(keys.press("PageDown", true), None);
        }
        // Some clickers repeat without saying so.
        assert_eq!(keys.press("PageDown", false), None);
        keys.release("PageDown");
        assert_eq!(keys.press("PageDown", false), Some(KeyMeaning::Count));
        assert_eq!(keys.press("Backspace", false), Some(KeyMeaning::Undo));
        assert_eq!(keys.press("q", false), None);
    }
}
