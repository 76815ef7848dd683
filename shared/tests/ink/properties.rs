//! Properties of the ink bench under any course of events.

use crate::shop::{PHONE, TABLET, TestShop};
use lastpull_core::facts::{Fact, Journal};
use lastpull_core::ids::{SHOP, Subject};
use lastpull_core::ink::{
    ComponentKind, InkFact, Part, PourStep, RecipeField, Repair, Share, StepState, over_pour, pot_state, repair_facts,
    revision_fact, weigh_in,
};
use lastpull_core::shop::Shop;
use lastpull_core::units::Grams;
use proptest::prelude::*;
use proptest::sample::Index;
use std::collections::BTreeMap;
use uuid::Uuid;

const POTS: usize = 3;

#[derive(Clone, Debug)]
enum Step {
    Pour(usize, usize, i64),
    Move(usize, usize, i64),
    Waste(usize, i64),
    Use(usize, i64),
    TakeBack(Index),
}

fn any_step() -> impl Strategy<Value = Step> {
    let pot = 0..POTS;
    let mg = 1..300_000i64;
    prop_oneof![
        6 => (pot.clone(), 0..4usize, mg.clone()).prop_map(|(pot, component, mg)| Step::Pour(pot, component, mg)),
        2 => (pot.clone(), pot.clone(), mg.clone()).prop_map(|(from, to, mg)| Step::Move(from, to, mg)),
        1 => (pot.clone(), mg.clone()).prop_map(|(pot, mg)| Step::Waste(pot, mg)),
        1 => (pot, mg).prop_map(|(pot, mg)| Step::Use(pot, mg)),
        2 => any::<Index>().prop_map(Step::TakeBack),
    ]
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(120))]

    /// By another hand: plain numbers, played again from what was not taken back.
    #[test]
    fn the_grams_poured_equal_the_grams_in_the_pots_after_replay(
        steps in prop::collection::vec(any_step(), 1..30),
        halves in prop::collection::vec(any::<bool>(), 60),
    ) {
        let mut press = TestShop::new();
        let pots: Vec<Subject> = (0..POTS).map(|_| press.pot(None, 0.0)).collect();
        let parts: Vec<Subject> = (0..4).map(|n| press.component(&n.to_string(), ComponentKind::Pigment)).collect();
        let mut recorded: Vec<(Subject, Step)> = Vec::new();
        for (at, step) in steps.iter().enumerate() {
            press.on(if at % 2 == 0 { PHONE } else { TABLET });
            let mg = |mg: &i64| Grams::from_milligrams(*mg);
            let fact = match step {
                Step::Pour(pot, component, grams) => InkFact::Poured {
                    pot: pots[*pot],
                    component: parts[*component],
                    grams: mg(grams),
                    step: PourStep::Correction,
                    note: String::new(),
                    reading: None,
                    by: None,
                },
                Step::Move(from, to, grams) =>
                    InkFact::Moved { from: pots[*from], to: pots[*to], grams: mg(grams), by: None },
                Step::Waste(pot, grams) =>
                    InkFact::Wasted { pot: pots[*pot], grams: mg(grams), note: String::new(), by: None },
                Step::Use(pot, grams) => InkFact::Used {
                    pot: pots[*pot], run: None, grams: mg(grams), pieces: 1, paper: None, by: None,
                },
                Step::TakeBack(index) => {
                    if !recorded.is_empty() {
                        let (id, _) = recorded.remove(index.index(recorded.len()));
                        press.record(id, Fact::Deleted);
                    }
                    continue;
                }
            };
            recorded.push((press.ink_event(fact), step.clone()));
        }
        let mut model = vec![[0.0f64; 4]; POTS];
        let (mut poured, mut gone) = (0.0, 0.0);
        let take = |pot: &mut [f64; 4], mg: i64| {
            let sum: f64 = pot.iter().sum();
            let part = if sum > 0.0 { (mg as f64).min(sum) / sum } else { 0.0 };
            let taken = pot.map(|here| here * part);
            pot.iter_mut().zip(taken).for_each(|(here, out)| *here -= out);
            taken
        };
        for (_, step) in &recorded {
            match step {
                Step::Pour(pot, component, mg) => {
                    model[*pot][*component] += *mg as f64;
                    poured += *mg as f64;
                }
                Step::Move(from, to, mg) if from != to => {
                    let taken = take(&mut model[*from], *mg);
                    model[*to].iter_mut().zip(taken).for_each(|(here, more)| *here += more);
                }
                Step::Waste(pot, mg) | Step::Use(pot, mg) =>
                    gone += take(&mut model[*pot], *mg).iter().sum::<f64>(),
                _ => {}
            }
        }
        let shop = press.shop();
        let mut all = Grams::ZERO;
        for (pot, expected) in pots.iter().zip(&model) {
            let state = pot_state(&shop, *pot);
            for (component, expected) in parts.iter().zip(expected) {
                let off = state.contents.of(*component).milligrams() as f64 - expected;
                // Each line rounds to a milligram; what is moved on carries it.
                prop_assert!(off.abs() <= 2.0 * recorded.len() as f64 + 1.0, "{off}");
            }
            let held = state.contents.total();
            prop_assert_eq!(state.total_in, held.saturating_add(state.used).saturating_add(state.wasted).saturating_add(state.moved_out));
            let percent: f64 = state.contents.percentages().iter().map(|(_, percent)| percent).sum();
            prop_assert!(!held.is_positive() || (percent - 100.0).abs() <= 1e-9);
            all = all.saturating_add(held).saturating_add(state.used).saturating_add(state.wasted);
        }
        prop_assert_eq!(all, Grams::from_milligrams(poured as i64), "{}", gone);

        // The same story out of two files that overlap, the later first.
        let entries = press.entries();
        let part = |keep: bool| -> Vec<_> {
            let kept = entries.iter().zip(halves.iter().cycle()).filter(|(_, half)| **half == keep);
            kept.map(|(entry, _)| entry.clone()).collect()
        };
        let mut journal = Journal::default();
        journal.absorb(part(true)).unwrap();
        journal.absorb(part(false)).unwrap();
        journal.absorb(entries.iter().rev().take(9).cloned().collect()).unwrap();
        let merged = Shop::fold(&journal);
        for pot in &pots {
            prop_assert_eq!(pot_state(&merged, *pot), pot_state(&shop, *pot));
        }
    }

    #[test]
    fn scaling_the_rest_of_an_over_pour_keeps_the_proportions(
        weights in prop::collection::vec(1..1_000u32, 2..7),
        size in 50..3_000u32,
        step in prop::sample::select(vec![10i64, 100, 1_000]),
        over in any::<Index>(),
        by in 1..400i64,
    ) {
        let mut press = TestShop::new();
        let sum: u32 = weights.iter().sum();
        let ids: Vec<Subject> = (0..weights.len()).map(|n| press.component(&n.to_string(), ComponentKind::Base)).collect();
        let mut left = Share::WHOLE.billionths();
        let parts: Vec<Part> = ids.iter().zip(&weights).enumerate().map(|(at, (component, weight))| {
            let share = if at + 1 == ids.len() { left } else { (u64::from(*weight) * 1_000_000_000 / u64::from(sum)) as u32 };
            left -= share;
            Part { component: *component, share: Share::from_billionths(share), on_top: false }
        }).collect();
        let recipe = press.id();
        press.record_ink(SHOP, InkFact::ScaleSet { step: Grams::from_milligrams(step), most: None });
        press.record_ink(recipe, InkFact::RecipeSet(vec![RecipeField::Name("Any".into())]));
        let fact = revision_fact(&press.shop(), recipe, parts.clone(), None, None, "", None);
        let revision = press.ink_event(fact);
        let pot = press.pot(Some(revision), f64::from(size));
        let before = weigh_in(&press.shop(), pot).unwrap();
        let over = over.index(ids.len());
        for (at, row) in before.steps.iter().enumerate().take(over + 1) {
            // By more than counts as on target.
            let more = if at == over { by * step + row.target.milligrams() / 100 / step * step } else { 0 };
            let grams = row.target.saturating_add(Grams::from_milligrams(more));
            if grams.is_positive() {
                press.pour(pot, row.component, grams.grams(), PourStep::WeighIn);
            }
        }
        let weighing = weigh_in(&press.shop(), pot).unwrap();
        prop_assert_eq!(weighing.steps[over].state, StepState::Over);
        let plan = over_pour(&press.shop(), pot, &weighing).unwrap();
        prop_assert_eq!(plan.component, ids[over]);
        let rest = plan.scale_rest;
        prop_assert!(rest.whole >= before.whole);
        for (row, part) in rest.rows.iter().zip(&parts) {
            let ideal = rest.whole.milligrams() as f64 * f64::from(part.share.billionths()) / 1e9;
            prop_assert!((row.exact.milligrams() as f64 - ideal).abs() <= 1.0);
            // Of what is less than half a step, one step is weighed.
            let rounded = (row.target.milligrams() - row.exact.milligrams()).abs() <= step / 2 + 1;
            prop_assert!(rounded || row.target.milligrams() == step || row.to_pour == Grams::ZERO);
        }
        for (row, was) in rest.rows.iter().zip(&weighing.steps) {
            prop_assert!(row.target >= was.poured, "nothing has to come out again");
        }
        // Done as asked, the pot holds the recipe, to what the scale can show.
        let mut id = 0x9000;
        let facts = repair_facts(&press.shop(), pot, &weighing, Repair::ScaleRest, None, || {
            id += 1;
            Uuid::from_u128(id)
        });
        press.record_all(facts);
        let resized = weigh_in(&press.shop(), pot).unwrap();
        prop_assert!(resized.steps.iter().all(|row| row.state != StepState::Over));
        for row in resized.steps.iter().filter(|row| row.to_go().is_positive()) {
            press.pour(pot, row.component, row.to_go().grams(), PourStep::WeighIn);
        }
        let shop = press.shop();
        let done = weigh_in(&shop, pot).unwrap();
        prop_assert!(done.is_done() && done.steps.iter().all(|row| row.poured.is_positive()));
        prop_assert_eq!(pot_state(&shop, pot).holds, Some(revision));
        let total = done.holds.milligrams() as f64;
        for (row, part) in done.steps.iter().zip(&parts) {
            let off = row.poured.milligrams() as f64 - total * f64::from(part.share.billionths()) / 1e9;
            let slack = (step as f64).max(row.target.milligrams() as f64 / 500.0 + 1.0);
            prop_assert!(off.abs() <= slack * (ids.len() as f64 + 1.0), "{row:?} {off}");
        }
        let same: BTreeMap<_, _> = done.steps.iter().map(|row| (row.component, row.poured)).collect();
        prop_assert_eq!(pot_state(&shop, pot).contents.rows(), same.into_iter().filter(|(_, grams)| grams.is_positive()).collect::<Vec<_>>());
    }
}
