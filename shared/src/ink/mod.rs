//! Ink: the colours of inks and garments, and the bench at which inks are mixed.
//!
//! A **recipe** has revisions, each a list of [`Part`]s. A **pot** is a batch: it is weighed by a revision
//! ([`weigh_in`]), then corrected, split, merged, topped up and used; what it holds is always the replay of what
//! happened to it ([`pot_state`]). Every pour, correction, yes and weighing of the shelf is an event with an id
//! of its own: to take it back is to delete that id, and its photos are photos of it.

mod addition;
mod apportion;
mod at_scale;
mod colour;
mod component;
mod component_card;
mod component_form;
mod contents;
mod cost;
mod experience;
mod fact;
mod label;
mod label_layout;
mod limits;
mod log;
mod make_again;
mod make_form;
mod needs;
mod new_pot;
mod off_sum;
mod overpour;
mod pot;
mod pot_card;
mod pot_form;
mod pot_runs;
mod pour_form;
mod print_use;
mod reading;
mod recipe;
mod recipe_card;
mod recipe_form;
mod remark_form;
mod replay;
mod revision;
mod rows;
mod run_ink;
mod scaled;
mod share;
mod shelf;
mod stage;
mod stock;
mod stock_form;
mod stock_view;
mod suggested;
mod weigh_in;
mod weigh_in_view;

pub use addition::{AfterAddition, after_addition, components_to_add, top_up};
pub use at_scale::{AtScale, at_scale, scale_decimals};
pub use colour::Colour;
pub use component::{Component, ComponentField, ComponentKind, Hiding};
pub use component_card::{ComponentCard, StockLine, StockWhat, UsedIn, component_card};
pub use component_form::ComponentForm;
pub use contents::Contents;
pub use cost::{InkCost, ink_cost};
pub use experience::{Alike, Experience, experience};
pub use fact::{InkFact, PourStep};
pub use label::{Holds, PotLabel, pot_label};
pub use label_layout::{BAND, LABEL, LabelWords, Placed, label_layout};
pub use limits::{LimitBroken, LimitOf, limits_broken};
pub use log::{InkEvent, InkLog, Revision, Scale};
pub use make_again::{MakeAgain, MakeRow, make_again};
pub use make_form::{MakeFor, MakeForm, MakeSize, made_for};
pub use needs::{InkNeeded, best_revision, ink_needed, recipe_for};
pub use new_pot::{NewPot, PotFor, new_pot_for, new_pot_of};
pub use off_sum::{OffSum, SumFix, SumOffer, WhyOff};
pub use overpour::{OverPour, Repair, RepairPlan, RepairRow, over_pour, repair_facts};
pub use pot::{Pot, PotField};
pub use pot_card::{LedgerLine, LedgerWhat, PotCard, PotRow, pot_card};
pub use pot_form::{PotForm, ScaleForm};
pub use pot_runs::{PotRun, runs_for_pot};
pub use pour_form::{PourForm, TakeForm, on_scale, room_of};
pub use print_use::{PrintForm, PrintUse, density_of};
pub use reading::{ColourReading, ReadBy, ReadingForm};
pub use recipe::{Part, Recipe, RecipeField, percentages};
pub use recipe_card::{RecipeCard, RevisionRow, recipe_card};
pub use recipe_form::{CheckedRecipe, PartForm, RecipeForm, RecipeProblems};
pub use remark_form::RemarkForm;
pub use replay::{PotState, pot_state};
pub use revision::{
    Approval, RevisionName, approval, approvals_of, approve_facts, parts_in_pot, revision_fact, revision_name,
    revisions_of, save_facts, save_pot,
};
pub use rows::PartRow;
pub use run_ink::{RunInk, ink_names, run_ink};
pub use scaled::{BatchSize, Scaled, ScaledPart, scaled};
pub use share::Share;
pub use shelf::{InkShelf, PotLine, RecipeLine, ink_shelf};
pub use stage::{PotStage, pot_stage};
pub use stock::stock_left;
pub use stock_form::StockForm;
pub use stock_view::{Low, StockRow, StockView, ToBuy, stock_view};
pub use suggested::{SuggestedBatch, suggested_batch};
pub use weigh_in::{StepState, WeighIn, WeighStep, weigh_in};
pub use weigh_in_view::{WeighInView, WeighRow, weigh_in_view};
