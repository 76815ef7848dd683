//! A shop to test with: facts made by hand, recorded in the order they happened, folded into a `Shop`.
//!
//! Every time is in seconds after 08:00 on Wednesday 25 November 2026, five hours west of UTC. The
//! shop closes at 17:00 unless a test says otherwise.

use lastpull_core::facts::{Entry, Journal};
use lastpull_core::facts::{Fact, JobField, LotField, RunField};
use lastpull_core::ids::{DeviceId, JobId, LotId, RunId, SHOP};
use lastpull_core::job::{Fabric, Size, SizePieces};
use lastpull_core::journal::{HybridClock, JournalFact};
use lastpull_core::plan::{Rail, rail};
use lastpull_core::run::{
    CountView, Fan, MisprintCause, PaceView, RunPace, StopCause, count_view, fan, forecast, run_pace,
};
use lastpull_core::shop::Shop;
use lastpull_core::time::{Day, Due, Millis, TimeOfDay, WallClock, WallTime};
use lastpull_core::units::Seconds;
use std::collections::BTreeMap;
use uuid::Uuid;

mod bath;
mod drawdowns;
mod exposure;
mod ink;
mod published;
mod screens;

pub use bath::Tank;
pub use drawdowns::{DrawdownBench, hump, said};
pub use exposure::ExposureRoom;
pub use ink::g;
pub use published::{Published, published};

/// 2026-11-25T13:00Z, 08:00 in the shop: a Wednesday.
pub const OPENING: WallTime = WallTime::from_unix_ms(1_795_611_600_000);
/// Minutes from UTC to the shop's wall.
pub const WEST: i32 = -300;
/// The phone on the press.
pub const PHONE: DeviceId = Uuid::from_u128(0xd1);
/// The tablet at the dryer.
pub const TABLET: DeviceId = Uuid::from_u128(0xd2);
/// Seconds in an hour.
pub const HOUR: u64 = 3_600;
/// Seconds in a day.
pub const DAY: u64 = 24 * HOUR;

/// The wall time so many seconds after opening.
pub fn wall(seconds: u64) -> WallTime {
    OPENING + self::seconds(seconds)
}

/// A span of so many seconds.
pub fn seconds(seconds: u64) -> Millis {
    Millis::from_ms(seconds * 1_000)
}

/// A span of so many minutes.
pub fn minutes(minutes: u64) -> Millis {
    Millis::from_minutes(minutes)
}

/// The shop's clock so many seconds after opening.
pub fn clock(seconds: u64) -> WallClock {
    WallClock::fixed(wall(seconds), WEST)
}

/// The day of opening.
pub fn today() -> Day {
    clock(0).today()
}

/// Due on a day, at minutes after midnight.
#[allow(clippy::unnecessary_wraps)] // as the field wants it
pub fn due(day: Day, minutes: u16) -> Option<Due> {
    Some(Due { day, time: TimeOfDay::from_minutes(minutes) })
}

/// Whether two numbers are the same but for rounding.
pub fn near(a: f64, b: f64) -> bool {
    (a - b).abs() < 1e-6
}

/// A shop to test with: its devices, and everything they record.
pub struct TestShop {
    entries: Vec<Entry>,
    clock: HybridClock,
    seqs: BTreeMap<DeviceId, u64>,
    device: DeviceId,
    now: WallTime,
    ids: u128,
}

impl TestShop {
    /// A new shop. The phone records, from opening on.
    pub fn new() -> Self {
        let clock = HybridClock::default();
        Self { entries: Vec::new(), clock, seqs: BTreeMap::new(), device: PHONE, now: OPENING, ids: 0x1000 }
    }

    /// A shop with one cotton run of these pieces, its set-up at its plainest.
    pub fn with_run(pieces: &[(Size, u32)]) -> (Self, RunId) {
        let mut shop = Self::new();
        let run = shop.order("Tour tees", None, Fabric::Cotton, pieces);
        (shop, run)
    }

    /// A shop that printed six runs of 36 mediums on the day before, about a minute a piece, ten minutes of set-up before
    /// each: what it says of cotton runs rests on more than a guess.
    pub fn with_history() -> Self {
        let mut shop = Self::new();
        let mut at = OPENING - seconds(DAY);
        for _ in 0..6 {
            shop.now = at;
            let run = shop.order("Earlier", None, Fabric::Cotton, &[(Size::M, 36)]);
            for piece in 0..36 {
                shop.now = at;
                shop.record(run, Fact::Pulled { pieces: 1, size: Some(Size::M) });
                at += seconds(if piece % 2 == 0 { 55 } else { 65 });
            }
            shop.record(run, Fact::RunEnded);
            at = shop.now + minutes(10);
        }
        shop.now = OPENING;
        shop
    }

    /// What is recorded from here on comes from this device.
    pub fn on(&mut self, device: DeviceId) -> &mut Self {
        self.device = device;
        self
    }

    /// A fresh id.
    pub fn id(&mut self) -> Uuid {
        self.ids += 1;
        Uuid::from_u128(self.ids)
    }

    /// Records a fact at the moment of the last one.
    pub fn record(&mut self, subject: Uuid, fact: Fact) -> &mut Self {
        let seq = self.seqs.entry(self.device).or_insert(0);
        *seq += 1;
        let stamp = self.clock.stamp(self.now);
        self.entries.push(Entry { device: self.device, seq: *seq, stamp, at: self.now, subject, fact });
        self
    }

    /// Records a fact so many seconds after opening.
    pub fn record_at(&mut self, seconds: u64, subject: Uuid, fact: Fact) -> &mut Self {
        assert!(wall(seconds) >= self.now, "a test records its day in order");
        self.now = wall(seconds);
        self.record(subject, fact)
    }

    /// Records a fact on a device whose clock shows so many seconds after opening. It is the moment of the last one all the
    /// same.
    pub fn record_with_clock_at(&mut self, seconds: u64, subject: Uuid, fact: Fact) -> &mut Self {
        let now = std::mem::replace(&mut self.now, wall(seconds));
        self.record(subject, fact);
        self.now = now;
        self
    }

    /// Records facts at the moment of the last one. Each must be in bounds.
    pub fn record_all(&mut self, facts: impl AsRef<[(Uuid, Fact)]>) -> &mut Self {
        for (subject, fact) in facts.as_ref() {
            assert!(fact.in_bounds(), "{fact:?}");
            self.record(*subject, fact.clone());
        }
        self
    }

    /// Records facts so many seconds after opening. Each must be in bounds.
    pub fn record_all_at(&mut self, seconds: u64, facts: impl AsRef<[(Uuid, Fact)]>) -> &mut Self {
        for (subject, fact) in facts.as_ref() {
            assert!(fact.in_bounds(), "{fact:?}");
            self.record_at(seconds, *subject, fact.clone());
        }
        self
    }

    pub fn job(&mut self, title: &str, due: Option<Due>) -> JobId {
        let job = self.id();
        self.record(job, Fact::JobSet(vec![JobField::Title(title.into()), JobField::Due(due)]));
        job
    }

    pub fn lot(&mut self, job: JobId, fabric: Fabric, pieces: &[(Size, u32)]) -> LotId {
        let lot = self.id();
        let pieces = pieces.iter().map(|&(size, pieces)| SizePieces { size, pieces }).collect();
        let fields = vec![
            LotField::Job(job),
            LotField::Garment("Tee".into()),
            LotField::Fabric(fabric),
            LotField::Pieces(pieces),
        ];
        self.record(lot, Fact::LotSet(fields));
        lot
    }

    /// A run on a lot: full front, one hit, no flash.
    pub fn run(&mut self, lot: LotId) -> RunId {
        let run = self.id();
        self.set_up(run, vec![RunField::Lot(lot), RunField::Ink("Brick".into())]);
        run
    }

    /// A job with one lot and one run.
    pub fn order(&mut self, title: &str, due: Option<Due>, fabric: Fabric, pieces: &[(Size, u32)]) -> RunId {
        let job = self.job(title, due);
        let lot = self.lot(job, fabric, pieces);
        self.run(lot)
    }

    /// Ten pieces guessed at a minute each: with ten minutes of set-up before, 1,200 s from now.
    pub fn ten_minutes(&mut self, due: Option<Due>) -> RunId {
        let run = self.order("Ten", due, Fabric::Cotton, &[(Size::M, 10)]);
        self.guess(run, 60.0);
        run
    }

    pub fn set_up(&mut self, run: RunId, fields: Vec<RunField>) -> &mut Self {
        self.record(run, Fact::RunSet(fields))
    }

    /// The printer's guess: so many seconds a piece.
    pub fn guess(&mut self, run: RunId, seconds: f64) -> &mut Self {
        self.set_up(run, vec![RunField::Guess(Some(Seconds::new(seconds)))])
    }

    /// Closing today, in minutes after midnight.
    pub fn closes(&mut self, minutes: u16) -> &mut Self {
        self.record(SHOP, Fact::DayClosing { day: today(), time: TimeOfDay::from_minutes(minutes) })
    }

    pub fn start_at(&mut self, seconds: u64, run: RunId) -> &mut Self {
        self.record_at(seconds, run, Fact::RunStarted)
    }

    pub fn end_at(&mut self, seconds: u64, run: RunId) -> &mut Self {
        self.record_at(seconds, run, Fact::RunEnded)
    }

    pub fn stop_at(&mut self, seconds: u64, run: RunId, cause: StopCause) -> &mut Self {
        self.record_at(seconds, run, Fact::Stopped(cause))
    }

    pub fn resume_at(&mut self, seconds: u64, run: RunId) -> &mut Self {
        self.record_at(seconds, run, Fact::Resumed)
    }

    /// One medium, pulled.
    pub fn pull_at(&mut self, seconds: u64, run: RunId) -> &mut Self {
        self.count_at(seconds, run, 1, Some(Size::M))
    }

    pub fn count_at(&mut self, seconds: u64, run: RunId, pieces: i32, size: Option<Size>) -> &mut Self {
        self.record_at(seconds, run, Fact::Pulled { pieces, size })
    }

    /// So many mediums, the first at `from`, the others `each` seconds apart.
    pub fn pulls(&mut self, run: RunId, from: u64, each: u64, pieces: u64) -> &mut Self {
        for piece in 0..pieces {
            self.pull_at(from + piece * each, run);
        }
        self
    }

    /// One medium spoiled by a smudge; negative when that is taken back.
    pub fn misprint_at(&mut self, seconds: u64, run: RunId, pieces: i32, was_counted: bool) -> &mut Self {
        let cause = MisprintCause::Smudge;
        self.record_at(seconds, run, Fact::Misprinted { pieces, size: Some(Size::M), cause, was_counted })
    }

    /// A whole earlier run of six mediums, five gaps of `each` seconds, started at `from`, ended a
    /// second after the last.
    pub fn earlier_run(&mut self, from: u64, each: u64, run: RunId) -> &mut Self {
        self.start_at(from, run).pulls(run, from, each, 6).end_at(from + 5 * each + 1, run)
    }

    /// The job a run belongs to is finished.
    pub fn finish_at(&mut self, seconds: u64, run: RunId) -> &mut Self {
        let (job, _) = self.shop().job_of(run).map(|(id, job)| (id, job.clone())).expect("a run of a job");
        self.record_at(seconds, job, Fact::JobFinished)
    }

    /// What was recorded.
    pub fn entries(&self) -> Vec<Entry> {
        self.entries.clone()
    }

    /// The shop all of it adds up to.
    pub fn shop(&self) -> Shop {
        Shop::fold(&Journal::of(self.entries()).expect("no two facts under one number"))
    }

    /// The counting page of the phone on the press.
    pub fn count(&self, run: RunId, seconds: u64) -> CountView {
        count_view(&self.shop(), run, PHONE, clock(seconds), &[])
    }

    /// What the counting page shows of the pace.
    pub fn run_pace(&self, run: RunId, seconds: u64) -> RunPace {
        run_pace(&self.shop(), run, clock(seconds))
    }

    /// Pace and forecast of a run of which something is known.
    pub fn pace(&self, run: RunId, seconds: u64) -> PaceView {
        self.run_pace(run, seconds).pace.expect("something is known")
    }

    /// The line of a run and the fan of its forecast.
    pub fn fan(&self, run: RunId, seconds: u64) -> Fan {
        let shop = self.shop();
        let forecast = forecast(&shop, run, wall(seconds));
        fan(&shop.run(run).expect("a run").progress, forecast.as_ref(), clock(seconds))
    }

    /// The rail of the day.
    pub fn rail(&self, seconds: u64) -> Rail {
        rail(&self.shop(), clock(seconds))
    }
}
