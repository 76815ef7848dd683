//! Whatever the order, overlap and repetition in which devices' files arrive, the shop is the same.

use super::any_entries::{any_entries, any_frozen_ink_fact, any_ink_fact, bytes_of};
use lastpull_core::facts::{Entry, Fact, JobField, Journal};
use lastpull_core::journal::{Checkpoint, Packed, Stamp, record, segment};
use lastpull_core::shop::Shop;
use lastpull_core::time::WallTime;
use lastpull_core::units::Grams;
use proptest::prelude::*;
use proptest::sample::Index;
use uuid::Uuid;

proptest! {
    #![proptest_config(ProptestConfig::with_cases(300))]

    /// As a device does it: a file that follows what is folded is folded on top, now and then from the checkpoint; one
    /// with something earlier makes it fold everything again.
    #[test]
    fn files_in_any_order_or_repeated_fold_one_by_one_to_the_same_bytes(
        entries in any_entries(),
        files in prop::collection::vec((prop::collection::vec(any::<Index>(), 0..30), any::<bool>()), 0..6),
        rest in 1..30_usize,
    ) {
        let whole = Journal::of(entries.clone()).unwrap();
        let picked = files.into_iter().map(|(file, reopen)| (file.iter().map(|index| index.get(&entries).clone()).collect(), reopen));
        let sorted: Vec<Entry> = whole.in_order().into_iter().cloned().collect();
        let arriving: Vec<(Vec<Entry>, bool)> = picked.chain(sorted.chunks(rest).map(|file| (file.to_vec(), false))).collect();
        let (mut journal, mut shop) = (Journal::default(), Shop::default());
        for (file, reopen) in arriving {
            let before = journal.coverage();
            journal.absorb(file).unwrap();
            if !shop.apply_all(&journal.beyond(&before)) {
                shop = Shop::fold(&journal);
            }
            if reopen {
                shop = Checkpoint::of(&shop).shop().unwrap();
            }
        }
        prop_assert_eq!(&whole, &journal);
        prop_assert_eq!(bytes_of(&whole), Checkpoint::of(&shop).bytes);
    }

    #[test]
    fn a_checkpoint_and_what_came_after_fold_to_the_same_bytes(entries in any_entries(), cut in any::<Index>()) {
        let journal = Journal::of(entries).unwrap();
        let ordered: Vec<Entry> = journal.in_order().into_iter().cloned().collect();
        let (before, after) = ordered.split_at(cut.index(ordered.len()));
        let mut shop = Shop::default();
        prop_assert!(shop.apply_all(before));
        let mut opened = Checkpoint::of(&shop).shop().unwrap();
        prop_assert!(opened.apply_all(after));
        prop_assert_eq!(Checkpoint::of(&opened).bytes, bytes_of(&journal));
    }

    #[test]
    fn a_fact_from_before_the_checkpoint_is_not_folded_on_top(entries in any_entries()) {
        let journal = Journal::of(entries).unwrap();
        let mut shop = Shop::fold(&journal);
        let first = journal.in_order()[0].clone();
        let before = shop.clone();
        prop_assert!(!shop.apply_all(&[first]));
        prop_assert_eq!(shop, before);
    }

    #[test]
    fn every_entry_survives_the_line_the_record_and_the_segment(entries in any_entries()) {
        for entry in &entries {
            prop_assert_eq!(&Entry::from_line(&entry.to_line()).unwrap(), entry);
            prop_assert_eq!(&record::decode(&record::encode(entry)).unwrap(), entry);
        }
        let packed = Packed::sorted(&entries);
        let back: Vec<Entry> = packed.segments().iter().flat_map(|s| segment::unpack(&s.bytes).unwrap()).collect();
        prop_assert_eq!(Journal::of(back).unwrap(), Journal::of(entries).unwrap());
    }

    #[test]
    fn damaged_bytes_never_panic(bytes in prop::collection::vec(any::<u8>(), 0..200)) {
        let _ = record::decode::<Fact>(&bytes);
        let _ = segment::unpack::<Fact>(&bytes);
        let _ = pollster::block_on(lastpull_core::exchange::read_backup(bytes.as_slice())).map(|backup| backup.facts);
        let mut ours = vec![1u8];
        ours.extend(&bytes);
        let _ = record::decode::<Fact>(&ours);
        let _ = segment::unpack::<Fact>(&ours);
        let _ = Checkpoint { bytes: ours }.shop();
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(60))]

    /// Whatever arrives, in whatever order, everything that is shown can be computed, and adds up.
    #[test]
    fn no_journal_makes_the_screen_or_failure_views_panic(entries in any_entries(), now in (0..4_000_000u64).prop_map(WallTime::from_unix_ms)) {
        let shop = Shop::fold(&Journal::of(entries).unwrap());
        let clock = lastpull_core::time::WallClock::fixed(now, 60);
        let board = lastpull_core::screen::screen_board(&shop, &lastpull_core::screen::ScreenFilter::default(), now);
        prop_assert_eq!(board.groups.iter().map(|group| group.count).sum::<u32>(), board.total);
        lastpull_core::screen::screen_needs(&shop, clock);
        lastpull_core::failure::failures_today(&shop, clock);
        for id in (0x10u128..0x14).map(Uuid::from_u128) {
            lastpull_core::screen::screen_card(&shop, id, now);
            lastpull_core::failure::failure_card(&shop, id, clock);
            lastpull_core::failure::delete_facts(&shop, id);
            lastpull_core::screen::facts_on_end(&shop, id, false, None);
            let pieces = lastpull_core::failure::run_pieces(&shop, id);
            let counted = shop.run(id).map_or(0, |run| run.progress.good());
            prop_assert_eq!(pieces.good + pieces.suspect, counted);
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(60))]

    #[test]
    fn no_journal_makes_the_ink_views_panic_or_lose_a_gram(
        facts in prop::collection::vec(
            ((0x10u128..0x18).prop_map(Uuid::from_u128), prop_oneof![3 => any_ink_fact(), 1 => any_frozen_ink_fact()]),
            1..60,
        ),
    ) {
        use lastpull_core::ink::*;
        let entries = facts.into_iter().enumerate().map(|(at, (subject, fact))| Entry {
            device: Uuid::from_u128(1),
            seq: at as u64 + 1,
            stamp: Stamp { wall: WallTime::from_unix_ms(at as u64), counter: 0 },
            at: WallTime::from_unix_ms(at as u64),
            subject,
            fact: Fact::Ink(fact),
        });
        let shop = Shop::fold(&Journal::of(entries.collect()).unwrap());
        ink_shelf(&shop);
        stock_view(&shop);
        for id in (0x10u128..0x18).map(Uuid::from_u128) {
            let state = pot_state(&shop, id);
            let gone = state.used.saturating_add(state.wasted).saturating_add(state.moved_out);
            prop_assert_eq!(state.total_in, state.contents.total().saturating_add(gone));
            pot_card(&shop, id);
            recipe_card(&shop, id);
            match_view(&shop, id);
            component_colour(&shop, id);
            if let Some(view) = weigh_in_view(&shop, id, Some(id)) {
                prop_assert!(view.over.is_none() || view.now.is_none());
            }
            if let Some(again) = make_again(&shop, id, None, BatchSize::Ink(Grams::MOST)) {
                prop_assert_eq!(again.rows.iter().map(|row| row.exact).sum::<Grams>(), again.whole);
            }
            approve_facts(&shop, id, "", "client", None, Uuid::nil);
            top_up(&shop, id, Grams::MOST);
        }
    }
}

#[test]
fn two_phones_that_counted_the_same_run_add_up() {
    let run = Uuid::from_u128(3);
    let pull = |device: u128, seq: u64, wall: u64| Entry {
        device: Uuid::from_u128(device),
        seq,
        stamp: Stamp { wall: WallTime::from_unix_ms(wall), counter: 0 },
        at: WallTime::from_unix_ms(wall),
        subject: run,
        fact: Fact::Pulled { pieces: 1, size: None },
    };
    let mut journal = Journal::of((1..=10).map(|n| pull(1, n, n * 40)).collect()).unwrap();
    journal.absorb((1..=7).map(|n| pull(2, n, n * 50)).collect()).unwrap();
    assert_eq!(Shop::fold(&journal).run(run).unwrap().progress.good(), 17);
}

#[test]
fn the_later_stamp_wins_a_field_whichever_file_came_last() {
    let job = Uuid::from_u128(3);
    let title = |device: u128, wall: u64, text: &str| Entry {
        device: Uuid::from_u128(device),
        seq: 1,
        stamp: Stamp { wall: WallTime::from_unix_ms(wall), counter: 0 },
        at: WallTime::from_unix_ms(wall),
        subject: job,
        fact: Fact::JobSet(vec![JobField::Title(text.into())]),
    };
    let early = title(1, 10, "early");
    let late = title(2, 20, "late");
    for order in [[early.clone(), late.clone()], [late, early]] {
        let mut journal = Journal::default();
        for entry in order {
            journal.absorb(vec![entry]).unwrap();
        }
        assert_eq!(Shop::fold(&journal).job(job).unwrap().title, "late");
    }
}
