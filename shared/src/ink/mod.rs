//! Ink: the colours of inks and garments, and the bench at which inks are mixed.
//!
//! A **recipe** has revisions, each a list of [`Part`]s. A **pot** is a batch: it is weighed by a revision
//! ([`weigh_in`]), then corrected, split, merged, topped up and used; what it holds is always the replay of what
//! happened to it ([`pot_state`]). Every pour, correction, yes and weighing of the shelf is an event with an id
//! of its own: to take it back is to delete that id, and its photos are photos of it.

mod addition;
mod apportion;
mod at_scale;
mod component;
mod component_card;
mod component_colour;
mod component_form;
mod contents;
mod cost;
mod cover_view;
mod curve_form;
mod drawdown_form;
mod experience;
mod known_colour;
mod known_patches;
mod label;
mod label_layout;
mod lessons;
mod limits;
mod log;
mod make_again;
mod make_form;
mod match_view;
mod needs;
mod new_pot;
mod off_sum;
mod overpour;
mod photo_sample;
mod pot;
mod pot_card;
mod pot_form;
mod pot_reading;
mod pot_runs;
mod pour_form;
mod print_use;
mod reading;
mod recipe;
mod recipe_card;
mod recipe_form;
mod remark_form;
mod replay;
mod rests_on;
mod revision;
mod rows;
mod run_ink;
mod scaled;
mod shelf;
mod stage;
mod stock;
mod stock_form;
mod stock_view;
mod suggested;
mod way_form;
mod weigh_in;
mod weigh_in_view;

pub use crate::facts::ink::{InkFact, PourStep};
pub use crate::facts::{
    BatchSize, ColourReading, ComponentField, ComponentKind, DrawdownMade, Film, Hiding, Lay, Part, PotField, PrintUse,
    ReadBy, ReadOn, RecipeField, Share, SwatchSeen, lab_of, reading_of,
};
pub use addition::{AfterAddition, after_addition, components_to_add, last_added, top_up};
pub use at_scale::{AtScale, at_scale, scale_decimals};
pub use component::Component;
pub use component_card::{ComponentCard, StockLine, StockWhat, UsedIn, component_card};
pub use component_colour::{ComponentColour, DrawdownLine, HowGood, NextDrawdown, NotDrawn, component_colour};
pub use component_form::ComponentForm;
pub use contents::Contents;
pub use cost::{InkCost, ink_cost};
pub use cover_view::{COVERS, CoverAsk, CoverForm, CoverRow, CoverRun, CoverView, NoCover, cover_runs, cover_view};
pub use curve_form::CurveForm;
pub use drawdown_form::{DrawdownForm, LayKind, kind_of};
pub use experience::{Alike, Experience, experience};
pub use known_colour::Strengths;
pub use known_patches::{KnownPatch, PatchOf, known_patches};
pub use label::{Holds, PotLabel, pot_label};
pub use label_layout::{BAND, LABEL, LabelWords, Placed, label_layout};
pub use limits::{LimitBroken, LimitOf, limits_broken};
pub use log::{InkEvent, InkLog, Revision, Scale};
pub use make_again::{MakeAgain, MakeRow, make_again};
pub use make_form::{MakeFor, MakeForm, MakeSize, made_for};
pub use match_view::{AddAdvice, AddRow, AddWay, Difference, MatchView, NEAR_ENOUGH, NoAdvice, match_view};
pub use needs::{InkNeeded, best_revision, ink_needed, recipe_for};
pub use new_pot::{NewPot, PotFor, new_pot_for, new_pot_of};
pub use off_sum::{OffSum, SumFix, SumOffer, WhyOff};
pub use overpour::{OverPour, Repair, RepairPlan, RepairRow, over_pour, repair_facts};
pub use photo_sample::{PhotoSample, WithUndo, photo_sample, reading_again, reading_facts};
pub use pot::Pot;
pub use pot_card::{LedgerLine, LedgerWhat, PotCard, PotRow, pot_card};
pub use pot_form::{PotForm, ScaleForm};
pub use pot_reading::{Garment, PotReading, garment_of, reading_now, with_reading};
pub use pot_runs::{PotRun, likely_run, runs_for_pot};
pub use pour_form::{PourForm, TakeForm, on_scale, room_of};
pub use print_use::{PrintForm, density_of};
pub use reading::ReadingForm;
pub use recipe::{Recipe, percentages};
pub use recipe_card::{RecipeCard, RevisionRow, recipe_card};
pub use recipe_form::{CheckedRecipe, PartForm, RecipeForm, RecipeProblems};
pub use remark_form::RemarkForm;
pub use replay::{PotState, pot_state};
pub use rests_on::RestsOn;
pub use revision::{
    Approval, RevisionName, SaveAs, approval, approvals_of, approve_facts, parts_in_pot, revision_fact, revision_name,
    revisions_of, save_as, save_facts, save_pot,
};
pub use rows::PartRow;
pub use run_ink::{RunInk, ink_names, run_ink};
pub use scaled::{Scaled, ScaledPart, scaled};
pub use shelf::{InkShelf, PotLine, RecipeLine, ink_shelf};
pub use stage::{PotStage, pot_stage};
pub use stock::stock_left;
pub use stock_form::StockForm;
pub use stock_view::{Low, StockRow, StockView, ToBuy, stock_view};
pub use suggested::{SuggestedBatch, suggested_batch};
pub use way_form::{WAY_FIELDS, WayForm, poured_in};
pub use weigh_in::{StepState, WeighIn, WeighStep, weigh_in};
pub use weigh_in_view::{WeighInView, WeighRow, weigh_in_view};
