//! A shop of any number of jobs, each with two lots and three runs, as a press of ten years leaves them.

use crate::shop::{OPENING, PHONE};
use lastpull_core::facts::{Entry, Fact, JobField, LotField, RunField};
use lastpull_core::failure::{FailureFact, FailureField, FailureKind, Remedy};
use lastpull_core::heat::{HeatFact, TestField, TestResult, TrialField};
use lastpull_core::ids::{JobId, LotId, PhotoId, RunId, SHOP, Subject};
use lastpull_core::ink::{BatchSize, ComponentField, InkFact, Part, PotField, PourStep, RecipeField, Share};
use lastpull_core::job::{Fabric, Size, SizePieces};
use lastpull_core::journal::Stamp;
use lastpull_core::photo::PhotoFact;
use lastpull_core::run::{CheckItem, CheckOutcome, Expected, Flash, Location, MisprintCause, StopCause};
use lastpull_core::screen::{ScreenFact, ScreenField};
use lastpull_core::time::{Millis, WallClock, WallTime};
use lastpull_core::units::{Grams, Seconds, Temperature};
use uuid::Uuid;

const LOCATIONS: [Location; 4] = [Location::FullFront, Location::FullBack, Location::LeftChest, Location::LeftSleeve];
const FABRICS: [Fabric; 3] = [Fabric::Cotton, Fabric::Blend, Fabric::Polyester];
const INKS: [&str; 4] = ["Night", "White", "Brick red", "Moss"];

/// Number of screens, the first of which fails three times in the first weeks and never again.
const SCREENS: usize = 20;

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
    /// The recipes of the inks.
    pub recipes: Vec<Subject>,
    /// The revision of each.
    pub revisions: Vec<Subject>,
    /// The component that each is.
    pub components: Vec<Subject>,
    /// The screens.
    pub screens: Vec<Subject>,
    failures: usize,
    now: WallTime,
    ids: u128,
}

impl Years {
    /// Years with so many finished jobs of three runs, each of so many pieces; then five jobs waiting, and one with a run
    /// on the press.
    pub fn new(jobs: usize, pieces: usize) -> Self {
        let nil = Uuid::nil();
        let (on_press, job, lot, now) = (nil, nil, nil, OPENING);
        let [recipes, revisions, components, screens] = [(); 4].map(|()| Vec::new());
        let (entries, failures, ids) = (Vec::new(), 0, 0x1_0000);
        let mut years =
            Self { entries, on_press, job, lot, recipes, revisions, components, screens, failures, now, ids };
        years.record(SHOP, Fact::ShopNamed("Ten Years".into()));
        INKS.iter().for_each(|ink| years.recipe(ink));
        for number in 0..SCREENS {
            let screen = years.id();
            years.record(screen, Fact::Screen(ScreenFact::Set(vec![ScreenField::Label(format!("A{number}"))])));
            years.screens.push(screen);
        }
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

    fn recipe(&mut self, ink: &str) {
        let [recipe, revision, component] = [self.id(), self.id(), self.id()];
        self.record(recipe, Fact::Ink(InkFact::RecipeSet(vec![RecipeField::Name(ink.into())])));
        self.record(component, Fact::Ink(InkFact::ComponentSet(vec![ComponentField::Name(ink.into())])));
        self.deliver(component);
        let parts = vec![Part { component, share: Share::WHOLE, on_top: false }];
        let (number, parent, pot, note, by) = (1, None, None, String::new(), None);
        self.record(revision, Fact::Ink(InkFact::RevisionSaved { recipe, number, parts, parent, pot, note, by }));
        self.recipes.push(recipe);
        self.revisions.push(revision);
        self.components.push(component);
    }

    fn deliver(&mut self, component: Subject) {
        let (event, grams) = (self.id(), Grams::from_grams(20_000.0));
        self.record(event, Fact::Ink(InkFact::Delivered { component, grams, note: String::new(), by: None }));
    }

    /// A pot of an ink that was weighed in and used up, each fifth time a test of one, and each twentieth a trial.
    fn mix(&mut self, number: usize) {
        let (pot, event) = (self.id(), self.id());
        let [revision, component] = [&self.revisions, &self.components].map(|of| of[number % INKS.len()]);
        let fields = vec![
            PotField::Name(INKS[number % INKS.len()].into()),
            PotField::Revision(Some(revision)),
            PotField::Size(Some(BatchSize::Whole(Grams::from_grams(500.0)))),
            PotField::Capacity(Some(Grams::from_grams(1_000.0))),
        ];
        self.record(pot, Fact::Ink(InkFact::PotSet(fields)));
        let (grams, step, note) = (Grams::from_grams(500.0), PourStep::WeighIn, String::new());
        self.record(event, Fact::Ink(InkFact::Poured { pot, component, grams, step, note, reading: None, by: None }));
        self.record(pot, Fact::Ink(InkFact::PotSet(vec![PotField::Closed(true)])));
        if number.is_multiple_of(37) {
            self.deliver(component);
        }
        if number.is_multiple_of(20) {
            let (trial, of) = (self.id(), number / 20);
            let ink = TrialField::Ink(INKS[of % INKS.len()].into());
            self.record(
                trial,
                Fact::Heat(HeatFact::TrialSet(vec![ink, TrialField::Fabric(FABRICS[of % FABRICS.len()])])),
            );
        }
        if number.is_multiple_of(5) {
            let (test, of) = (self.id(), number / 5);
            let fields = vec![
                TestField::Ink(INKS[of % INKS.len()].into()),
                TestField::Fabric(FABRICS[of % FABRICS.len()]),
                TestField::Result(if of.is_multiple_of(7) { TestResult::Fail } else { TestResult::Pass }),
            ];
            self.record(test, Fact::Heat(HeatFact::TestSet(fields)));
        }
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
            self.mix(number);
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
            let screen = if self.failures < 3 { 0 } else { 1 + self.failures % (SCREENS - 1) };
            self.failures += 1;
            let fields = vec![
                FailureField::Run(run),
                FailureField::Screen(Some(self.screens[screen])),
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
