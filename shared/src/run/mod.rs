//! A run: one garment lot, one print location, one ink. Set-up, checks before the first pull, count, pace,
//! and when the last piece is out of the dryer.
//!
//! # Decisions
//!
//! - **Pace.** It is taken from the gaps between counts without the stops. The prediction for m more pieces
//!   is `m·x̄ ± t·s·√(m + m²/n)`; several pieces counted at once weigh as many. A gap over five minutes and
//!   over six times the median gap is a pause that nobody marked. With fewer than five gaps a run uses the
//!   shop's own runs first (those with the same location, fabric, hits and flash), then the printer's guess.
//!   The view names the basis it used.
//! - **Touches.** [`Contacts`] decides what counts: one contact at a time, no palm, no screen edge, no bounce
//!   under 120 ms. Every key that a clicker or pedal may send counts once per press.

mod checks;
mod contact;
mod count;
mod ended;
mod fan;
mod finish;
mod forecast;
mod history;
mod location;
mod misprint;
mod pace;
mod pace_chart;
mod print_run;
mod progress;
mod set_up;
mod stop;
mod student_t;

pub use checks::{
    CheckItem, CheckList, CheckOutcome, CheckRecord, CheckRow, CheckState, Expected, check_list, check_list_after,
};
pub use contact::{Contacts, KeyMeaning, Keys, Touch, Window};
pub use count::{CountView, PaceView, Pending, SizeCount, Standing, UndoView, count_view};
pub use ended::{EndedView, ended_view};
pub use fan::{Fan, FanPoint, fan};
pub use finish::{Spread, TimeLeft, pieces_within};
pub use forecast::{Basis, Forecast, forecast};
pub use history::{History, history_for, stop_rate};
pub use location::Location;
pub use misprint::MisprintCause;
pub use pace::{Gap, Pace, gaps};
pub use pace_chart::{ChartPoint, PaceChart, pace_chart};
pub use print_run::Run;
pub use progress::{Progress, Pull, UNMARKED_PAUSE_SECONDS};
pub use set_up::{Flash, SetUp};
pub use stop::{Stop, StopCause};
pub use student_t::{chance_below, quantile};
