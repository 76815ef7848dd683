//! A shop of any number of jobs, each with two lots and three runs, as a press of ten years leaves them.

use crate::shop::{OPENING, PHONE};
use lastpull_core::facts::{Entry, Fact, JobField, LotField, RunField};
use lastpull_core::failure::{FailureFact, FailureField, FailureKind, Remedy};
use lastpull_core::ids::{JobId, LotId, PhotoId, RunId, Subject};
use lastpull_core::job::{Fabric, Size, SizePieces};
use lastpull_core::journal::Stamp;
use lastpull_core::photo::PhotoFact;
use lastpull_core::run::{CheckItem, CheckOutcome, Expected, Flash, Location, MisprintCause, StopCause};
use lastpull_core::time::{Millis, WallClock, WallTime};
use lastpull_core::units::{Seconds, Temperature};
use uuid::Uuid;

const LOCATIONS: [Location; 4] = [Location::FullFront, Location::FullBack, Location::LeftChest, Location::LeftSleeve];
const FABRICS: [Fabric; 3] = [Fabric::Cotton, Fabric::Blend, Fabric::Polyester];
const INKS: [&str; 4] = ["Night", "White", "Brick red", "Moss"];

/// A shop's years, and what is going on at their end.
pub struct Years {
    /// Everything recorded, in order.
    pub entries: Vec<Entry>,
    /// The run on the press.
    pub on_press: RunId,
    /// The job of that run.
    pub job: JobId,
    /// A lot of it.
    pub lot: LotId,
    now: WallTime,
    ids: u128,
}

impl Years {
    /// Years with so many finished jobs of three runs, each of so many pieces; then five jobs waiting, and one with a run
    /// on the press.
    pub fn new(jobs: usize, pieces: usize) -> Self {
        let nil = Uuid::nil();
        let mut years = Self { entries: Vec::new(), on_press: nil, job: nil, lot: nil, now: OPENING, ids: 0x1_0000 };
        years.record(nil, Fact::ShopNamed("Ten Years".into()));
        for job in 0..jobs + 6 {
            years.job(job, pieces, job < jobs, job == jobs + 5);
        }
        years
    }

    /// The clock at their end.
    pub fn clock(&self) -> WallClock {
        WallClock::fixed(self.now + Millis::from_minutes(1), -300)
    }

    /// The next fact, so many seconds after the last.
    pub fn next(&mut self, seconds: u64, subject: Subject, fact: Fact) -> Entry {
        self.now += Millis::from_ms(seconds * 1_000);
        let stamp = Stamp { wall: self.now, counter: 0 };
        Entry { device: PHONE, seq: self.entries.len() as u64 + 1, stamp, at: self.now, subject, fact }
    }

    fn record(&mut self, subject: Subject, fact: Fact) {
        self.wait(1, subject, fact);
    }

    fn wait(&mut self, seconds: u64, subject: Subject, fact: Fact) {
        let entry = self.next(seconds, subject, fact);
        self.entries.push(entry);
    }

    fn id(&mut self) -> Uuid {
        self.ids += 1;
        // As the ids of a phone: later ones mostly come later, and not at even distances.
        Uuid::from_u128((self.ids << 64) | (self.ids.wrapping_mul(0x9e37_79b9_7f4a_7c15) & 0xffff_ffff_ffff_ffff))
    }

    fn job(&mut self, number: usize, pieces: usize, is_finished: bool, is_on_press: bool) {
        let job = self.id();
        let client = format!("Client {}", number % 40);
        self.record(job, Fact::JobSet(vec![JobField::Client(client), JobField::Title(format!("Order {number}"))]));
        let lots = [self.id(), self.id()];
        for (at, lot) in lots.into_iter().enumerate() {
            let fields = vec![
                LotField::Job(job),
                LotField::Garment(format!("Tee {}", number % 12)),
                LotField::Fabric(FABRICS[(number + at) % 3]),
                LotField::Pieces(vec![SizePieces { size: Size::M, pieces: pieces as u32 }]),
            ];
            self.record(lot, Fact::LotSet(fields));
        }
        for print in 0..3 {
            let run = self.id();
            self.set_up(run, lots[print % 2], number + print);
            if is_finished {
                self.print(run, pieces, number + print);
            } else if is_on_press && print == 0 {
                (self.on_press, self.job, self.lot) = (run, job, lots[0]);
                self.start(run, pieces / 2);
            }
        }
        if is_finished {
            if number.is_multiple_of(2) {
                let photo = PhotoId(std::array::from_fn(|byte| (number >> (byte % 4 * 8)) as u8));
                self.record(job, Fact::Photo(PhotoFact::Taken { photo, width: 1_600, height: 1_200, bytes: 300_000 }));
            }
            self.wait(300, job, Fact::JobFinished);
        }
    }

    fn set_up(&mut self, run: RunId, lot: LotId, kind: usize) {
        let flash = kind.is_multiple_of(2).then_some(Flash { seconds: Seconds::new(6.0), distance: None });
        let fields = vec![
            RunField::Lot(lot),
            RunField::Location(LOCATIONS[kind % 4]),
            RunField::Ink(INKS[kind % 4].into()),
            RunField::Hits(1 + (kind % 2) as u8),
            RunField::Flash(flash),
            RunField::Dryer(Some(Temperature::from_milli_celsius(160_000))),
        ];
        self.record(run, Fact::RunSet(fields));
    }

    fn start(&mut self, run: RunId, pieces: usize) {
        for (item, expected) in [
            (CheckItem::Dryer, Expected::Temperature(Temperature::from_milli_celsius(160_000))),
            (CheckItem::Passes, Expected::Count(1)),
        ] {
            let by = Some("Ines".to_owned());
            self.record(run, Fact::CheckMade { item, expected, outcome: CheckOutcome::Ticked, by });
        }
        self.record(run, Fact::RunStarted);
        for piece in 0..pieces {
            self.wait(40 + (piece * 7_919 % 9) as u64, run, Fact::Pulled { pieces: 1, size: Some(Size::M) });
        }
    }

    fn print(&mut self, run: RunId, pieces: usize, number: usize) {
        self.start(run, pieces);
        if number.is_multiple_of(3) {
            let (size, cause) = (Some(Size::M), MisprintCause::Smudge);
            self.record(run, Fact::Misprinted { pieces: 1, size, cause, was_counted: true });
        }
        if number.is_multiple_of(10) {
            let failure = self.id();
            self.record(run, Fact::Stopped(StopCause::Screen));
            let fields = vec![
                FailureField::Run(run),
                FailureField::Kind(FailureKind::Pinhole),
                FailureField::Remedy(Some(Remedy::BlockOut)),
            ];
            self.record(failure, Fact::Failure(FailureFact::Set(fields)));
            self.wait(240, run, Fact::Resumed);
        }
        self.wait(30, run, Fact::RunEnded);
        // The next one is set up in ten minutes, and on the next morning after the last of a day.
        self.now += Millis::from_minutes(if number % 6 == 5 { 14 * 60 } else { 10 });
    }
}
