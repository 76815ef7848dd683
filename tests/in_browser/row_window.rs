//! Which rows of a long list are drawn, and the room of the others.

// Heights here are whole numbers: they add up exactly.
#![allow(clippy::float_cmp)]

use lastpull::platform::row_window::{BLOCK, BlockHeights, RowWindow};
use wasm_bindgen_test::wasm_bindgen_test;

/// A list whose rows were measured to be 100 pixels high in the first block.
fn measured() -> BlockHeights {
    let mut heights = BlockHeights::default();
    assert_eq!(heights.measured(10_000, 390.0, 0, &[100.0 * BLOCK as f64], 0), 0.0);
    heights
}

#[wasm_bindgen_test]
fn the_rows_near_the_viewport_are_drawn_and_the_others_keep_their_room() {
    let block = 100.0 * BLOCK as f64;
    let all = block * 500.0;
    let at = |from: f64, to: f64| measured().between(10_000, from, to);
    assert_eq!(at(-800.0, 1_600.0), RowWindow { first: 0, end: 1, above: 0.0, below: all - block });
    assert_eq!(
        at(block * 7.5, block * 8.5),
        RowWindow { first: 7, end: 9, above: block * 7.0, below: all - block * 9.0 }
    );
    assert_eq!(at(all - 100.0, all + 900.0), RowWindow { first: 499, end: 500, above: all - block, below: 0.0 });
    assert_eq!(at(all + 5_000.0, all + 6_000.0).end, 500, "scrolled beyond its end");
    assert_eq!(BlockHeights::default().between(0, 0.0, 800.0), RowWindow::default());
}

#[wasm_bindgen_test]
fn blocks_that_turn_out_higher_above_the_viewport_move_it_by_as_much() {
    let block = 100.0 * BLOCK as f64;
    let mut heights = measured();
    assert_eq!(heights.measured(10_000, 390.0, 10, &[block + 40.0, block - 10.0, block], 12), 30.0);
    assert_eq!(heights.measured(10_000, 390.0, 10, &[block + 40.0], 11), 0.0, "known by now");
    assert_eq!(heights.between(10_000, block * 20.5, block * 20.6).above, block * 20.0 + 30.0);
}

#[wasm_bindgen_test]
fn heights_of_another_width_are_void_and_a_last_block_fits_its_rows() {
    let block = 100.0 * BLOCK as f64;
    let mut heights = measured();
    assert_eq!(heights.measured(10_000, 844.0, 3, &[block / 2.0], 4), block * -2.0, "what is seen stays");
    assert_eq!(heights.between(10_000, 0.0, 10.0).below, block / 2.0 * 499.0);
    assert_eq!(measured().start(BLOCK * 2 + 5), RowWindow { first: 0, end: 2, above: 0.0, below: 500.0 });
}
