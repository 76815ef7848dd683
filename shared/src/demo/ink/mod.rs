//! The ink data of the invented shop: its components, its recipes and their revisions, pots of the earlier
//! weeks and of today, and what was printed from them.

use super::maker::Maker;
use super::screens::DayRuns;
use crate::ids::RunId;
use crate::time::WallTime;
use colours::{apricot, bone, fern, jersey_white};
use shelf::{DemoInks, shelf};
use uuid::Uuid;

mod colours;
mod pots;
pub(crate) mod shelf;

/// A finished run of the earlier weeks.
pub(super) struct Printed {
    /// The run.
    pub(super) run: RunId,
    /// Number of pieces planned.
    pub(super) pieces: u32,
    /// Wall time at which it ended.
    pub(super) ended: WallTime,
}

/// Records everything about ink. `earlier` are the runs of the weeks before, oldest first, alternately
/// apricot and bone.
pub(super) fn bench<N: FnMut() -> Uuid>(maker: &mut Maker<N>, day: &DayRuns, earlier: &[Printed]) -> DemoInks {
    let inks = shelf(maker);
    apricot(maker, &inks, day, earlier);
    bone(maker, &inks, day, earlier);
    fern(maker, &inks, day);
    jersey_white(maker, &inks, day);
    inks
}

#[cfg(test)]
pub(crate) mod tests {
    use crate::demo::day::tests::{NOW, shop};
    use crate::facts::BatchSize;
    use crate::ink::{
        LowReason, PotStage, Similarity, ink_names, ink_shelf, limits_broken, make_again, pot_card, pot_label,
        pot_state, recipe_card, recipe_named, run_ink, stock_view, suggested_batch, weigh_in_view,
    };
    use crate::plan::rail;
    use crate::units::Grams;

    #[test]
    fn the_demo_fills_every_ink_page() {
        let (shop, _) = shop(NOW);
        let shelf = ink_shelf(&shop);
        let needed: Vec<_> = shelf.needed.iter().map(|row| (row.ink.as_str(), row.recipe.is_some())).collect();
        assert_eq!(needed, [("Apricot", true), ("Jersey white", true), ("Fern", true), ("Night", false)]);
        let [choir, jerseys, totes, ladder] = &shelf.needed[..] else { panic!("{:?}", shelf.needed) };
        assert_eq!(choir.to_mix, Some(Grams::ZERO), "the choir's is mixed: {choir:?}");
        assert!(jerseys.to_mix.is_some_and(Grams::is_positive) && totes.to_mix.is_some_and(Grams::is_positive));
        assert!(ladder.grams.is_none());
        let pots: Vec<_> = shelf.pots.iter().map(|pot| (pot.name.as_str(), pot.stage)).collect();
        assert_eq!(
            pots,
            [
                ("White, jerseys", PotStage::Weighing),
                ("Apricot, choir", PotStage::Approved),
                ("Fern, totes", PotStage::Mixed),
                ("Bone", PotStage::Approved),
            ]
        );
        assert_eq!((shelf.recipes.len(), shelf.components, shelf.low), (4, 9, 2));
        for pot in &shelf.pots {
            let card = pot_card(&shop, pot.id).unwrap();
            assert!(!card.ledger.is_empty() && pot_label(&shop, pot.id).is_some());
            assert!(!pot_state(&shop, pot.id).shortfall.is_positive(), "{card:?}");
        }
        let half = weigh_in_view(&shop, shelf.pots[0].id, None).unwrap();
        assert_eq!((half.now, half.done), (Some(1), false));
        assert_eq!(pot_state(&shop, shelf.pots[2].id).changes, 2);
    }

    #[test]
    fn the_demo_runs_find_their_ink() {
        let (shop, clock) = shop(NOW);
        let pots = |run: usize| {
            let found = run_ink(&shop, rail(&shop, clock).runs[run].id);
            found.map(|ink| ink.pots.into_iter().map(|pot| pot.name).collect::<Vec<_>>())
        };
        assert_eq!(pots(0).unwrap(), ["Apricot, choir"]);
        assert_eq!(pots(1).unwrap(), ["White, jerseys"]);
        assert_eq!(pots(3), None, "nobody wrote down what night is mixed of");
        assert_eq!(ink_names(&shop), ["Apricot", "Bone", "Fern", "Jersey white", "Night"]);
    }

    #[test]
    fn demo_recipes_are_within_limits_and_one_has_an_unapproved_revision() {
        let (shop, _) = shop(NOW);
        let card = |ink| recipe_card(&shop, recipe_named(&shop, ink).unwrap().0).unwrap();
        let apricot = card("Apricot");
        assert_eq!(apricot.revisions.len(), 2);
        assert_eq!(apricot.best, Some(apricot.revisions[0].name.id));
        assert!(apricot.revisions[0].pot.is_some() && apricot.revisions[0].parent.is_some());
        assert_eq!(apricot.revisions[0].approval.as_ref().unwrap().client, "Harbor Night Choir");
        let bone = card("Bone");
        assert!(bone.newer_unapproved && bone.best == Some(bone.revisions[1].name.id));
        let again = make_again(&shop, bone.id, None, BatchSize::Whole(Grams::from_grams(500.0))).unwrap();
        assert_eq!((again.revision.number, again.newer.len()), (1, 1));
        assert!(card("Fern").revisions[0].on_top && card("Jersey white").revisions[0].approval.is_none());
        for recipe in ["Apricot", "Bone", "Fern", "Jersey white"].map(card) {
            for revision in recipe.revisions {
                let percent: Vec<_> = revision.parts.iter().map(|part| (part.component, part.percent)).collect();
                assert_eq!(limits_broken(&shop, &percent), []);
                assert!(revision.density.is_some() && revision.cost.unpriced == 0.0);
            }
        }
    }

    #[test]
    fn the_demo_runs_out_of_clear_base_before_the_totes() {
        let (shop, clock) = shop(NOW);
        let stock = stock_view(&shop);
        let low: Vec<_> = stock.rows.iter().filter_map(|row| Some((row.name.as_str(), row.low.clone()?))).collect();
        assert_eq!(low.len(), 2, "{low:?}");
        assert!(
            matches!(&low[0], ("Base, clear", LowReason::ForRun { title, .. }) if title == "Swap day totes"),
            "{low:?}"
        );
        assert_eq!(low[1], ("Yellow", LowReason::BelowLimit));
        assert!(stock.cost > 0 && stock.unpriced == 0);
        assert_eq!(stock.unknown.len(), 1);
        let choir = rail(&shop, clock).runs[0].id;
        let batch = suggested_batch(&shop, choir, shop.ink.print(choir).unwrap(), 19);
        let learned = batch.experience.unwrap();
        assert_eq!((learned.similarity, learned.weighings), (Similarity::Ink, 2));
        assert!((1.1..2.5).contains(&learned.ratio), "{learned:?}");
    }
}
