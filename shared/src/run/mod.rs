//! A run: one garment lot, one print location, one ink. Its set-up, the checks before the first
//! pull, the count, the pace, and when it will leave the dryer.

mod checks;
mod contact;
mod count;
mod ended;
mod fan;
mod finish;
mod forecast;
mod history;
mod pace;
mod pace_chart;
mod print_run;
mod progress;
mod set_up;
mod stop;
mod student_t;

pub use crate::facts::{CheckItem, CheckOutcome, Expected, Flash, Location, MisprintCause, StopCause};
pub use checks::{CheckList, CheckRecord, CheckRow, CheckState, check_list, check_list_after};
pub use contact::{Contacts, KeyMeaning, Keys, Touch, Window};
pub use count::{CountView, PaceView, Pending, SizeCount, Standing, UndoView, count_view};
pub use ended::{EndedView, ended_view};
pub use fan::{Fan, FanPoint, fan};
pub use finish::{Spread, TimeLeft, pieces_within};
pub use forecast::{Basis, Forecast, forecast};
pub use history::{History, history_for, stop_rate};
pub use pace::{Gap, Pace, gaps};
pub use pace_chart::{ChartPoint, PaceChart, pace_chart};
pub use print_run::Run;
pub use progress::{Progress, Pull, UNMARKED_PAUSE_SECONDS};
pub use set_up::SetUp;
pub use stop::Stop;
pub use student_t::{chance_below, quantile};
