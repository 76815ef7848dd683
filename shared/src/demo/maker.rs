//! Generates the facts of an invented day as a crew would have recorded them.

use super::language::{Language, Text, text};
use crate::colour::Colour;
use crate::facts::{
    CheckOutcome, Draft, Fabric, Fact, Flash, JobField, Location, LotField, RunField, Size, SizePieces,
};
use crate::run::check_list;
use crate::shop::Shop;
use crate::time::{Due, Millis, WallClock, WallTime};
use crate::units::{Length, Seconds, Temperature};
use uuid::Uuid;

/// Collects facts in the order in which they happened.
pub(super) struct Maker<N> {
    pub(super) clock: WallClock,
    pub(super) language: Language,
    pub(super) drafts: Vec<Draft>,
    new_id: N,
    noise: u64,
}

/// A garment lot to generate.
pub(super) struct LotPlan<'a> {
    pub(super) garment: Text,
    pub(super) fabric: Fabric,
    pub(super) colour: &'a str,
    pub(super) colour_name: Text,
    pub(super) pieces: &'a [(Size, u32)],
}

/// A run to generate.
pub(super) struct RunPlan<'a> {
    pub(super) location: Location,
    pub(super) ink: Text,
    pub(super) colour: &'a str,
    pub(super) hits: u8,
    pub(super) flash: bool,
    pub(super) fahrenheit: f64,
    pub(super) dwell: f64,
    pub(super) below_collar: Option<f64>,
    pub(super) screens: &'a str,
}

impl<N: FnMut() -> Uuid> Maker<N> {
    pub(super) fn new(clock: WallClock, language: Language, new_id: N) -> Self {
        Self { clock, language, drafts: Vec::new(), new_id, noise: 0x9e37_79b9_7f4a_7c15 }
    }

    /// A new id.
    pub(super) fn id(&mut self) -> Uuid {
        (self.new_id)()
    }

    pub(super) fn record(&mut self, at: WallTime, subject: Uuid, fact: Fact) {
        self.drafts.push(Draft { at, subject, fact });
    }

    /// The next number of a fixed pseudo-random sequence between 0 and 1.
    pub(super) fn noise(&mut self) -> f64 {
        self.noise = self.noise.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (self.noise >> 40) as f64 / f64::from(1 << 24)
    }

    pub(super) fn job(
        &mut self,
        at: WallTime,
        client: Text,
        title: Text,
        due: Option<Due>,
        exempt: bool,
        notes: Text,
    ) -> Uuid {
        let id = (self.new_id)();
        let fields = vec![
            JobField::Client(self.language.say(client)),
            JobField::Title(self.language.say(title)),
            JobField::Due(due),
            JobField::Notes(self.language.say(notes)),
            JobField::Exempt(exempt),
        ];
        self.record(at, id, Fact::JobSet(fields));
        id
    }

    pub(super) fn lot(&mut self, at: WallTime, job: Uuid, plan: &LotPlan) -> Uuid {
        let id = (self.new_id)();
        let pieces = plan.pieces.iter().map(|&(size, pieces)| SizePieces { size, pieces }).collect();
        let mut fields = vec![
            LotField::Job(job),
            LotField::Garment(self.language.say(plan.garment)),
            LotField::Fabric(plan.fabric),
            LotField::ColourName(self.language.say(plan.colour_name)),
            LotField::Pieces(pieces),
        ];
        fields.extend(Colour::from_hex(plan.colour).map(LotField::Colour));
        self.record(at, id, Fact::LotSet(fields));
        id
    }

    pub(super) fn run(&mut self, at: WallTime, lot: Uuid, plan: &RunPlan) -> Uuid {
        let id = (self.new_id)();
        let flash = plan.flash.then(|| Flash { seconds: Seconds::new(7.0), distance: Some(Length::from_inches(2.5)) });
        let mut fields = vec![
            RunField::Lot(lot),
            RunField::Location(plan.location),
            RunField::Ink(self.language.say(plan.ink)),
            RunField::Screens(plan.screens.into()),
            RunField::Mesh(Some(if plan.flash { 156 } else { 200 })),
            RunField::Flash(flash),
            RunField::Hits(plan.hits),
            RunField::Dryer(Some(Temperature::from_fahrenheit(plan.fahrenheit))),
            RunField::Dwell(Some(Seconds::new(plan.dwell))),
            RunField::Passes(1),
            RunField::Squeegee(self.language.say(text("70, sharp edge", "70, filo recto"))),
            RunField::OffContact(Some(Length::from_inches(0.125))),
            RunField::BelowCollar(plan.below_collar.map(Length::from_inches)),
        ];
        fields.extend(Colour::from_hex(plan.colour).map(RunField::InkColour));
        self.record(at, id, Fact::RunSet(fields));
        id
    }

    /// Records every check of a run, a few with a measured value.
    pub(super) fn check(&mut self, at: WallTime, run: Uuid, by: Text) {
        let mut shop = Shop::default();
        shop.apply_all(&self.entries());
        for (index, row) in check_list(&shop, run).rows().enumerate() {
            let measured = row.expected.value().filter(|_| index == 0).map(|value| value + 900);
            let outcome = measured.map_or(CheckOutcome::Ticked, CheckOutcome::Measured);
            let (item, expected, by) = (row.item, row.expected.clone(), Some(self.language.say(by)));
            self.record(
                at + index as u64 * Millis::from_ms(9_000),
                run,
                Fact::CheckMade { item, expected, outcome, by },
            );
        }
    }

    /// Pulls pieces size by size, about `seconds` apart. Returns the time of the last pull.
    pub(super) fn pull(&mut self, from: WallTime, run: Uuid, sizes: &[(Size, u32)], seconds: f64) -> WallTime {
        let mut at = from.unix_ms() as f64;
        for &(size, pieces) in sizes {
            for _ in 0..pieces {
                at += seconds * 1000.0 * (0.8 + 0.4 * self.noise());
                self.record(WallTime::from_unix_ms(at as u64), run, Fact::Pulled { pieces: 1, size: Some(size) });
            }
        }
        WallTime::from_unix_ms(at as u64)
    }

    /// The facts so far as entries of one device, for queries to the core.
    pub(super) fn entries(&self) -> Vec<crate::facts::Entry> {
        let mut head = crate::journal::Head::default();
        crate::journal::assign_sequence(&mut head, Uuid::from_u128(1), &self.drafts)
    }
}
