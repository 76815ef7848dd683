//! Ink: the colours of inks and garments, and the mixing of inks.
//!
//! A **recipe** has revisions, each a list of [`Part`]s. A **pot** is a batch: it is weighed by a revision
//! ([`weigh_in`]), then corrected, split, merged, topped up and used; what it holds is always replayed from its events
//! ([`pot_state`]). Every pour, correction, approval and weighing of the shelf is an event with its own id: deleting
//! that id undoes it, and its photos refer to it.
//!
//! # Decisions
//!
//! - **Ledger.** What a pot holds is never stored. Its events are replayed in whole milligrams divided by largest
//!   remainder, so that the grams in equal the grams in pots, used and wasted, exactly. Recording a fact again under
//!   its event's id corrects it in place.
//! - **Recipes.** Parts are billionths, in either convention ([`Part`]). A revision keeps the number it was saved
//!   with, since pots are labelled with it; a mark of four characters distinguishes revisions with the same number.
//! - **Approval.** Whether a pot holds a revision as written, and so whether its approval is still valid, depends on
//!   its contents within the accuracy of the scale. A client always approves a revision. "Make again" takes the one
//!   approved last and says so, also if a newer one exists. Matches and approvals repeat the reading they are based on
//!   as a note only: the reading itself determines the colour, so undoing that reading is enough.
//! - **At the scale** the printer types the total that the scale shows; what to pour, what is in and what is next is
//!   calculated. An over-pour beyond the tolerance (half a step of the scale, or a five-hundredth of the target) asks
//!   first: scale the rest or accept it, both calculated to the gram. Nothing is chosen silently, and undo takes the
//!   reading back.
//! - **Drawdowns** are facts of a component: what the ink lay on, and what was read (a colour, an instrument's curve,
//!   or a chart's flat white or black). A component's constants are calculated from its latest eight drawdowns when
//!   needed and never stored. A clear base without drawdowns is assumed clear and reported as such. One film is one hit
//!   as the drawdowns were printed.
//! - **Tinting strength** is learned from corrections with a single pigment that were read before and after, or, for
//!   a movement of three units or more, found to match by eye. Two pigments between two readings do not count: one
//!   colour does not tell which of them was the stronger. A pot that was changed since its reading is calculated from
//!   that reading, and reported as such.
//! - **Swatches** are read thick or printed on the garment of the pot's run, as the recipe specifies ([`ReadOn`]). A
//!   lot's colour is the one shown on screen until the garment is read.
//! - **Photos** measure differences only. A garment is read beside the target, a target beside a garment that was
//!   read, a drawdown beside a patch that an instrument read ([`known_patches`]) or beside a control card with typed
//!   values. The picture is kept with what was read; the patch beside a drawdown is named in its note. Whatever is
//!   based on a photo says so ([`RestsOn`]), also through a white or base.

mod addition;
mod apportion;
mod at_scale;
mod colour;
mod component;
mod component_card;
mod component_colour;
mod component_form;
mod contents;
mod cost;
mod cover_view;
mod curve_form;
mod drawdown;
mod drawdown_form;
mod experience;
mod fact;
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
mod read_on;
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
mod share;
mod shelf;
mod stage;
mod stock;
mod stock_form;
mod stock_view;
mod suggested;
mod way_form;
mod weigh_in;
mod weigh_in_view;

pub use addition::{AfterAddition, after_addition, components_to_add, last_added, top_up};
pub use at_scale::{AtScale, at_scale, scale_decimals};
pub use colour::Colour;
pub use component::{Component, ComponentField, ComponentKind, Hiding};
pub use component_card::{ComponentCard, StockLine, StockWhat, UsedIn, component_card};
pub use component_colour::{ComponentColour, DrawdownLine, HowGood, NextDrawdown, NotDrawn, component_colour};
pub use component_form::ComponentForm;
pub use contents::Contents;
pub use cost::{InkCost, ink_cost};
pub use cover_view::{COVERS, CoverAsk, CoverForm, CoverRow, CoverRun, CoverView, NoCover, cover_runs, cover_view};
pub use curve_form::CurveForm;
pub use drawdown::{DrawdownMade, Film, Lay, SwatchSeen, lab_of, reading_of};
pub use drawdown_form::{DrawdownForm, LayKind, kind_of};
pub use experience::{Alike, Experience, experience};
pub use fact::{InkFact, PourStep};
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
pub use pot::{Pot, PotField};
pub use pot_card::{LedgerLine, LedgerWhat, PotCard, PotRow, pot_card};
pub use pot_form::{PotForm, ScaleForm};
pub use pot_reading::{Garment, PotReading, garment_of, reading_now, with_reading};
pub use pot_runs::{PotRun, likely_run, runs_for_pot};
pub use pour_form::{PourForm, TakeForm, on_scale, room_of};
pub use print_use::{PrintForm, PrintUse, density_of};
pub use read_on::ReadOn;
pub use reading::{ColourReading, ReadBy, ReadingForm};
pub use recipe::{Part, Recipe, RecipeField, percentages};
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
pub use scaled::{BatchSize, Scaled, ScaledPart, scaled};
pub use share::Share;
pub use shelf::{InkShelf, PotLine, RecipeLine, ink_shelf};
pub use stage::{PotStage, pot_stage};
pub use stock::stock_left;
pub use stock_form::StockForm;
pub use stock_view::{Low, StockRow, StockView, ToBuy, stock_view};
pub use suggested::{SuggestedBatch, suggested_batch};
pub use way_form::{WAY_FIELDS, WayForm, poured_in};
pub use weigh_in::{StepState, WeighIn, WeighStep, weigh_in};
pub use weigh_in_view::{WeighInView, WeighRow, weigh_in_view};
