//! The form of a failure.

use super::open::set_fact;
use super::{Failure, suspects_before};
use crate::bounds::total;
use crate::facts::{Fact, FailureField, FailureKind, Mark};
use crate::form::{Problems, TYPED_NOTE, changed_fields, collect, collect_optional, parse_text};
use crate::ids::Subject;
use crate::shop::Shop;
use crate::units::parse_whole;

/// The form of a failure.
#[derive(Clone, Debug, PartialEq, Default)]
pub struct FailureForm {
    /// What failed.
    pub kind: Option<FailureKind>,
    /// The screen that failed.
    pub screen: Option<Subject>,
    /// Where on the print it is.
    pub mark: Option<Mark>,
    /// Number of pieces printed since the last one known to be good, or empty.
    pub since: String,
    /// Free notes.
    pub notes: String,
}

impl FailureForm {
    /// The form filled in from a failure.
    pub fn of(failure: &Failure) -> Self {
        Self {
            kind: failure.kind,
            screen: failure.screen,
            mark: failure.mark,
            since: failure.since.map(|pieces| pieces.to_string()).unwrap_or_default(),
            notes: failure.notes.clone(),
        }
    }

    /// The facts that change the failure `id`; empty if nothing changes. Every field may be empty, because
    /// a failure is entered step by step while the press is stopped. Another number of pieces makes other
    /// pieces suspect; inspected pieces keep their verdict.
    ///
    /// # Errors
    /// [`Problems`] by field: `since`, `notes`. `since` can be at most the number of pieces counted in the
    /// run.
    pub fn check(&self, shop: &Shop, id: Subject) -> Result<Vec<(Subject, Fact)>, Problems> {
        let Some(failure) = shop.failures.live(id) else { return Ok(Vec::new()) };
        let mut problems = Problems::new();
        let most = max_since(shop, failure);
        let since = collect_optional(&mut problems, "since", &self.since, |text| parse_whole(text, 0, most));
        let notes = collect(&mut problems, "notes", parse_text(&self.notes, TYPED_NOTE));
        let (Some(notes), true) = (notes, problems.is_empty()) else { return Err(problems) };
        let fields = |screen, mark, since, notes, kind: Option<FailureKind>| {
            let mut fields = vec![
                FailureField::Screen(screen),
                FailureField::Mark(mark),
                FailureField::Since(since),
                FailureField::Notes(notes),
            ];
            fields.extend(kind.map(FailureField::Kind));
            fields
        };
        let before = fields(failure.screen, failure.mark, failure.since, failure.notes.clone(), failure.kind);
        let mut fields = changed_fields(fields(self.screen, self.mark, since, notes, self.kind), &before);
        if let Some(run) = failure.run.filter(|_| since != failure.since) {
            fields.push(FailureField::Suspects(suspects_before(shop, run, id, failure.at, since.unwrap_or(0))));
        }
        Ok(if fields.is_empty() { Vec::new() } else { vec![(id, set_fact(fields))] })
    }
}

/// The highest number of pieces that can be suspect: those counted before the failure was found.
pub(super) fn max_since(shop: &Shop, failure: &Failure) -> u32 {
    let progress = failure.run.and_then(|run| shop.run(run)).map(|run| &run.progress);
    let printed = progress.map_or(0, |progress| {
        let pulls = progress.pulls().iter().filter(|pull| pull.at <= failure.at);
        total(pulls.map(|pull| pull.pieces))
    });
    // Counts that were archived at packing are gone from the list, so the number never drops below `since`.
    printed.max(failure.since.unwrap_or(0))
}
