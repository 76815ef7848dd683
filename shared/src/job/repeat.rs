//! Repeating an order.

use crate::facts::{Fact, InkFact, JobField, LotField, RunField, SizePieces};
use crate::ids::{JobId, Subject};
use crate::shop::Shop;
use uuid::Uuid;

/// The facts that repeat a job, and the id of the new job: these fields, and the same garments, runs, set-ups and what
/// their prints take, without prints. `new_id` returns the new ids. The facts are empty if there is no such job.
pub fn repeat_order(
    shop: &Shop,
    job: JobId,
    mut fields: Vec<JobField>,
    mut new_id: impl FnMut() -> Uuid,
) -> (JobId, Vec<(Subject, Fact)>) {
    let new_job = new_id();
    if shop.job(job).is_none() {
        return (new_job, Vec::new());
    }
    fields.push(JobField::RepeatOf(job));
    let mut facts = vec![(new_job, Fact::JobSet(fields))];
    for (lot_id, lot) in shop.lots_of(job) {
        let new_lot = new_id();
        let mut fields = vec![
            LotField::Job(new_job),
            LotField::Garment(lot.garment.clone()),
            LotField::Fabric(lot.fabric),
            LotField::ColourName(lot.colour_name.clone()),
            LotField::Pieces(lot.pieces.iter().map(|(&size, &pieces)| SizePieces { size, pieces }).collect()),
        ];
        fields.extend(lot.colour.map(LotField::Colour));
        facts.push((new_lot, Fact::LotSet(fields)));
        for (run_id, run) in shop.runs_of(lot_id) {
            let mut fields = vec![
                RunField::Lot(new_lot),
                RunField::Location(run.location),
                RunField::Ink(run.ink.clone()),
                RunField::Guess(run.guess),
            ];
            fields.extend(run.ink_colour.map(RunField::InkColour));
            fields.extend(run.set_up.fields());
            let new_run = new_id();
            facts.push((new_run, Fact::RunSet(fields)));
            facts.extend(shop.ink.print(run_id).map(|print| (new_run, Fact::Ink(InkFact::PrintSet(Some(*print))))));
        }
    }
    (new_job, facts)
}
