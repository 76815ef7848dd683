//! Scale and position of a photo in its window while it is zoomed and dragged.

/// Scale of a photo relative to fitting its window, and offset of its middle from the window's.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Zoom {
    /// 1 if the whole photo fits.
    pub scale: f64,
    /// Offset to the right, in pixels.
    pub x: f64,
    /// Offset down, in pixels.
    pub y: f64,
}

/// Width and height of the window, in pixels.
pub type Window = (f64, f64);

impl Default for Zoom {
    fn default() -> Self {
        Self { scale: 1.0, x: 0.0, y: 0.0 }
    }
}

impl Zoom {
    /// Largest scale: beyond it, a photo of 1600 pixels shows no more detail on a phone.
    pub const MAX_SCALE: f64 = 6.0;
    /// Factor of one press of a button or key.
    pub const STEP: f64 = 1.5;
    /// Scale after a double tap on a photo that fits.
    pub const DOUBLE_TAP_SCALE: f64 = 2.5;

    /// Whether it is larger than the window.
    pub fn is_zoomed_in(self) -> bool {
        self.scale > 1.01
    }

    /// Scaled by `factor` around a point, relative to the middle of the window; that point stays where it
    /// is.
    pub fn scaled(self, factor: f64, (x, y): (f64, f64), window: Window) -> Self {
        let scale = (self.scale * factor).clamp(1.0, Self::MAX_SCALE);
        let grown = scale / self.scale;
        Self { scale, x: x - (x - self.x) * grown, y: y - (y - self.y) * grown }.within(window)
    }

    /// Zooms in on the point if the photo fits the window, otherwise back to fitting.
    pub fn toggle(self, point: (f64, f64), window: Window) -> Self {
        if self.is_zoomed_in() { Self::default() } else { self.scaled(Self::DOUBLE_TAP_SCALE, point, window) }
    }

    /// Moved by pixels, but not beyond the photo's own edge.
    pub fn moved(self, (x, y): (f64, f64), window: Window) -> Self {
        Self { x: self.x + x, y: self.y + y, ..self }.within(window)
    }

    /// Follows a pinch; each finger is given as its start and end. The middle between the fingers moves the
    /// photo, their distance scales it.
    pub fn pinched(self, one: [(f64, f64); 2], two: [(f64, f64); 2], window: Window) -> Self {
        let middle = |a: (f64, f64), b: (f64, f64)| (f64::midpoint(a.0, b.0), f64::midpoint(a.1, b.1));
        let apart = |a: (f64, f64), b: (f64, f64)| (a.0 - b.0).hypot(a.1 - b.1);
        let (before, after) = (middle(one[0], two[0]), middle(one[1], two[1]));
        let from = apart(one[0], two[0]);
        let factor = if from > 1.0 { apart(one[1], two[1]) / from } else { 1.0 };
        self.scaled(factor, before, window).moved((after.0 - before.0, after.1 - before.1), window)
    }

    fn within(self, (width, height): Window) -> Self {
        let over = (self.scale - 1.0) / 2.0;
        let (x, y) = ((width * over).max(0.0), (height * over).max(0.0));
        Self { x: self.x.clamp(-x, x), y: self.y.clamp(-y, y), ..self }
    }
}

/// Detects double taps. Browsers do so themselves, but not all of them do on a page that moves the photo
/// itself.
#[derive(Clone, Copy, Debug, PartialEq, Default)]
pub struct DoubleTap {
    last: Option<(f64, (f64, f64))>,
}

impl DoubleTap {
    /// Longest time between the two taps, in milliseconds: common practice, no source.
    const WITHIN: f64 = 350.0;
    /// Longest distance between the two taps, in pixels: the width of a thumb.
    const APART: f64 = 40.0;

    /// Records a tap at a time in milliseconds. Returns whether it is the second of two.
    pub fn is_second_tap(&mut self, at: f64, point: (f64, f64)) -> bool {
        let second = self.last.is_some_and(|(before, other)| {
            at - before <= Self::WITHIN && (point.0 - other.0).hypot(point.1 - other.1) <= Self::APART
        });
        // A third tap starts over.
        self.last = (!second).then_some((at, point));
        second
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const WINDOW: Window = (400.0, 800.0);

    /// Where a point of the photo is drawn; the point is relative to its middle when it fits.
    fn drawn(zoom: Zoom, (x, y): (f64, f64)) -> (f64, f64) {
        (x * zoom.scale + zoom.x, y * zoom.scale + zoom.y)
    }

    #[test]
    fn the_point_under_the_finger_stays_under_it() {
        let zoom = Zoom::default().scaled(2.0, (50.0, -100.0), WINDOW);
        assert_eq!(drawn(zoom, (50.0, -100.0)), (50.0, -100.0));
        assert_eq!(zoom, Zoom { scale: 2.0, x: -50.0, y: 100.0 });
    }

    #[test]
    fn the_photo_never_leaves_its_window_or_gets_smaller() {
        let far = Zoom::default().scaled(2.0, (0.0, 0.0), WINDOW).moved((9_999.0, -9_999.0), WINDOW);
        assert_eq!((far.x, far.y), (200.0, -400.0));
        let fits = far.scaled(0.01, (0.0, 0.0), WINDOW);
        assert_eq!(fits, Zoom::default());
        let largest = Zoom { scale: Zoom::MAX_SCALE, ..Zoom::default() };
        assert_eq!(Zoom::default().scaled(1e9, (0.0, 0.0), WINDOW), largest);
    }

    #[test]
    fn two_fingers_zoom_and_drag_at_once() {
        let zoom = Zoom::default().pinched([(-10.0, 0.0), (-20.0, 30.0)], [(10.0, 0.0), (20.0, 30.0)], WINDOW);
        assert_eq!((zoom.scale, zoom.x, zoom.y), (2.0, 0.0, 30.0));
        // Two fingers on one spot define no scale.
        assert_eq!(zoom.pinched([(5.0, 5.0); 2], [(5.0, 5.0); 2], WINDOW), zoom);
    }

    #[test]
    fn a_double_tap_zooms_in_and_back() {
        let close = Zoom::default().toggle((30.0, 40.0), WINDOW);
        assert!(close.is_zoomed_in());
        assert_eq!(drawn(close, (30.0, 40.0)), (30.0, 40.0));
        assert_eq!(close.toggle((0.0, 0.0), WINDOW), Zoom::default());
    }

    #[test]
    fn two_taps_near_in_time_and_place_are_a_double_tap() {
        let mut touch = DoubleTap::default();
        let touches = [(0.0, 0.0), (200.0, 10.0), (300.0, 10.0), (900.0, 10.0), (1_000.0, 90.0), (1_100.0, 95.0)];
        let second = touches.map(|(at, x)| touch.is_second_tap(at, (x, 0.0)));
        assert_eq!(second, [false, true, false, false, false, true]);
    }
}
