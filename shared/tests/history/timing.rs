//! What a shop of ten years costs in milliseconds on this machine, as it ships (optimised for size):
//! `cargo test --release -p lastpull-core --test all history::timing -- --ignored --nocapture`.

use super::page_answers::{of_the_day, of_the_press};
use super::years::Years;
use lastpull_core::facts::Fact;
use lastpull_core::heat::{trial_log, trials_for};
use lastpull_core::ink::{component_card, stock_left, stock_view};
use lastpull_core::job::{Size, job_list, job_texts};
use lastpull_core::journal::Checkpoint;
use lastpull_core::shop::Shop;
use std::hint::black_box;
use std::time::Instant;

/// Milliseconds that something takes once it is prepared: the least of so many times, as other programs run too.
fn timed<P, T>(times: usize, mut prepare: impl FnMut() -> P, mut what: impl FnMut(&mut P) -> T) -> f64 {
    let each = (0..times).map(|_| {
        let mut prepared = prepare();
        let start = Instant::now();
        black_box(what(&mut prepared));
        start.elapsed().as_secs_f64() * 1_000.0
    });
    each.fold(f64::MAX, f64::min)
}

#[test]
#[ignore = "measures time"]
fn what_a_shop_costs_by_the_length_of_its_history() {
    for (jobs, pieces) in [(1, 5), (550, 26), (10_000, 26)] {
        let mut years = Years::new(jobs, pieces);
        let (run, clock, component) = (years.on_press, years.clock(), years.components[0]);
        let fold = timed(3, Shop::default, |shop| assert!(shop.apply_all(&years.entries)));
        let mut folded = Shop::default();
        assert!(folded.apply_all(&years.entries));
        let checkpoint = Checkpoint::of(&folded);
        let fresh = || checkpoint.shop().unwrap();
        let encode_folded = timed(9, || (), |()| Checkpoint::of(&folded));
        let encode_opened = timed(9, fresh, |shop| Checkpoint::of(shop));
        let open = timed(40, || (), |()| checkpoint.shop());
        let both = |draw: &dyn Fn(&Shop)| {
            let read = fresh();
            draw(&read);
            [timed(20, fresh, |shop| draw(shop)), timed(40, || (), |()| draw(&read))]
        };
        let press = both(&|shop| drop(of_the_press(shop, run, clock)));
        let day = both(&|shop| drop(of_the_day(shop, clock)));
        let list = both(&|shop| drop(job_list(shop)));
        let search = both(&|shop| drop(job_texts(shop).found("nothing")));
        let texts = job_texts(&folded);
        let more = ["e", "order 12"].map(|search| timed(40, || (), |()| texts.found(search)));
        let stock = both(&|shop| drop(stock_view(shop)));
        let left = both(&|shop| assert!(stock_left(shop, component).is_some()));
        let card = both(&|shop| drop(component_card(shop, component)));
        let trials = both(&|shop| drop(trials_for(shop, run)));
        let all_trials = both(&|shop| drop(trial_log(shop)));
        let facts = years.entries.len();
        let [one, two] = [40, 80].map(|after| {
            let piece = Fact::Pulled { pieces: 1, size: Some(Size::M) };
            [years.next(after, run, piece)]
        });
        let counted = || {
            let mut shop = fresh();
            assert!(shop.apply_all(&one));
            shop
        };
        let piece = [timed(20, fresh, |shop| shop.apply_all(&one)), timed(20, counted, |shop| shop.apply_all(&two))];
        println!(
            "{facts} facts, {} jobs, in ms, the first time and then:\n  checkpoint {:.1} kB, open {open:.3}, encode folded {encode_folded:.2}, opened {encode_opened:.2}\n  fold {fold:.1}, {:.2} µs a fact\n  press {press:.3?}, day {day:.3?}, piece {piece:.4?}\n  list of jobs {list:.3?}, search {search:.3?}, another letter {more:.3?}\n  stock {stock:.3?}, left of a component {left:.3?}, its page {card:.3?}\n  trials of a run {trials:.3?}, all {all_trials:.3?}",
            jobs + 6,
            checkpoint.bytes.len() as f64 / 1_000.0,
            fold * 1_000.0 / facts as f64,
        );
    }
}
