//! Repeating an order.

use crate::facts::{Fact, JobField, LotField, RunField, SizePieces};
use crate::ids::{JobId, Subject};
use crate::shop::Shop;
use uuid::Uuid;

/// The facts that repeat a job, and the id of the new job: the same client, title, garments, runs and
/// set-ups, without a due date and without prints. `new_id` returns the new ids. The facts are empty if
/// there is no such job.
pub fn repeat_order(shop: &Shop, job: JobId, mut new_id: impl FnMut() -> Uuid) -> (JobId, Vec<(Subject, Fact)>) {
    let new_job = new_id();
    let Some(original) = shop.job(job) else { return (new_job, Vec::new()) };
    let mut facts = vec![(
        new_job,
        Fact::JobSet(vec![
            JobField::Client(original.client.clone()),
            JobField::Title(original.title.clone()),
            JobField::Notes(original.notes.clone()),
            JobField::Exempt(original.exempt),
            JobField::RepeatOf(job),
        ]),
    )];
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
        for (_, run) in shop.runs_of(lot_id) {
            let mut fields = vec![
                RunField::Lot(new_lot),
                RunField::Location(run.location),
                RunField::Ink(run.ink.clone()),
                RunField::Guess(run.guess),
            ];
            fields.extend(run.ink_colour.map(RunField::InkColour));
            fields.extend(run.set_up.fields());
            facts.push((new_id(), Fact::RunSet(fields)));
        }
    }
    (new_job, facts)
}
