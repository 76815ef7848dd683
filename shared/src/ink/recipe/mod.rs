//! Recipes: their parts in percent and in grams, their limits, costs and revisions.

pub(crate) mod apportion;
mod cost;
mod limits;
pub(crate) mod percentages;
pub(crate) mod revisions;
pub(crate) mod rows;
pub(crate) mod scaled;
pub(crate) mod sum_check;

pub use apportion::written_percents;
pub use cost::{InkCost, ink_cost};
pub use limits::{LimitBroken, LimitOf, limits_broken};
pub use percentages::percentages;
pub use revisions::{
    Approval, RevisionName, SaveAs, approval, approvals_of, approve_facts, parts_in_pot, revision_fact, revision_name,
    revisions_of, save_as, save_facts, save_pot,
};
pub use rows::PartRow;
pub use scaled::{Scaled, ScaledPart, scaled};
pub use sum_check::{SumError, SumErrorCause, SumRepair, SumRepairOption};
