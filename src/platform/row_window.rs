//! Which rows of a long list are near the viewport. Rows are drawn or left out in blocks, and what is left out takes the
//! height that it had when it was drawn last, or that of as many rows as were measured first. Heights are measured and
//! never assumed to be alike: they differ with the language, the size of the text and what a row says.

use leptos::prelude::window;
use std::ops::Range;
use web_sys::HtmlElement;

/// Number of rows in a block. Even, so that a list of two columns is cut between its lines.
pub const BLOCK: usize = 20;
/// Height of a row in CSS pixels before one was measured.
const FIRST_GUESS: f64 = 92.0;

/// Heights of a list's blocks in CSS pixels, as far as they are known.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct BlockHeights {
    /// Width of the list that they were measured at; with another one they are void.
    width: f64,
    /// Height of a row, from the first block that was measured. It stays: with a better one, all that is left out above
    /// the viewport would move what is in it.
    row: Option<f64>,
    /// By block.
    blocks: Vec<Option<f64>>,
}

/// The blocks that are drawn, and the room that the others take.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct RowWindow {
    /// The first block.
    pub first: usize,
    /// The block after the last.
    pub end: usize,
    /// Height of the blocks before, in CSS pixels.
    pub above: f64,
    /// Height of the blocks after, in CSS pixels.
    pub below: f64,
}

impl BlockHeights {
    /// The first blocks of a list of so many rows.
    pub fn start(&self, rows: usize) -> RowWindow {
        self.cut(rows, 0, 2)
    }

    /// The blocks of a list of so many rows that are at least partly between two places, in CSS pixels from its top.
    pub fn between(&self, rows: usize, from: f64, to: f64) -> RowWindow {
        let blocks = rows.div_ceil(BLOCK);
        let (mut first, mut end, mut bottom) = (0, 0, 0.0);
        for block in 0..blocks {
            if bottom < to {
                end = block + 1;
            }
            bottom += self.height(rows, block);
            if bottom <= from && block + 1 < blocks {
                first = block + 1;
            }
        }
        self.cut(rows, first, end.max(first + 1))
    }

    /// Takes the heights of blocks that are drawn one after another from `first` on, in a list of this width. Returns by
    /// how much a block further down, the `seen` one, is now lower than had been thought.
    pub fn measured(&mut self, rows: usize, width: f64, first: usize, heights: &[f64], seen: usize) -> f64 {
        let before = self.sum(rows, 0..seen);
        if (self.width - width).abs() > 0.5 {
            *self = Self { width, ..Self::default() };
        }
        for (at, height) in heights.iter().enumerate() {
            let block = first + at;
            self.row.get_or_insert(height / BLOCK as f64);
            if self.blocks.len() <= block {
                self.blocks.resize(block + 1, None);
            }
            self.blocks[block] = Some(*height);
        }
        self.sum(rows, 0..seen) - before
    }

    fn cut(&self, rows: usize, first: usize, end: usize) -> RowWindow {
        let blocks = rows.div_ceil(BLOCK);
        let end = end.min(blocks);
        RowWindow { first, end, above: self.sum(rows, 0..first), below: self.sum(rows, end..blocks) }
    }

    fn sum(&self, rows: usize, blocks: Range<usize>) -> f64 {
        blocks.map(|block| self.height(rows, block)).sum()
    }

    fn height(&self, rows: usize, block: usize) -> f64 {
        let full = (block + 1) * BLOCK <= rows;
        let known = self.blocks.get(block).copied().flatten().filter(|_| full);
        let in_it = BLOCK.min(rows.saturating_sub(block * BLOCK));
        known.unwrap_or_else(|| in_it as f64 * self.row.unwrap_or(FIRST_GUESS))
    }
}

/// Whether the browser keeps what is in the viewport where it is (CSS scroll anchoring). Scrolling by script would end a
/// scrolling that the user began, such as that of the key Home.
fn keeps_place(list: &HtmlElement) -> bool {
    js_sys::Reflect::has(&list.style(), &"overflowAnchor".into()).unwrap_or(false)
}

/// Measures the rows of a list that are drawn, and finds which are to be drawn: those in the viewport and for one
/// viewport before and after it. What is in the viewport stays where it is if what is above turns out higher, or the list
/// gets another width. `None` while the list is not shown.
pub fn follow(list: &HtmlElement, rows: usize, drawn: RowWindow, heights: &mut BlockHeights) -> Option<RowWindow> {
    let place = list.get_bounding_client_rect();
    let viewport = window().inner_height().ok()?.as_f64()?;
    if place.width() <= 0.0 {
        return None;
    }
    let children = list.children();
    let top = |row: usize| children.item(row as u32).map(|row| row.get_bounding_client_rect().top());
    let tops: Vec<f64> = (0..).step_by(BLOCK).map_while(top).collect();
    let measured: Vec<f64> = tops.windows(2).map(|pair| pair[1] - pair[0]).collect();
    let passed = tops.iter().skip(1).take_while(|top| **top <= 0.0).count();
    let moved = heights.measured(rows, place.width(), drawn.first, &measured, drawn.first + passed);
    if moved.abs() >= 1.0 && !keeps_place(list) {
        window().scroll_by_with_x_and_y(0.0, moved);
    }
    let from = -list.get_bounding_client_rect().top();
    Some(heights.between(rows, from - viewport, from + 2.0 * viewport))
}
