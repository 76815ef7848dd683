//! The invented shop's screens: some on the press, some ready, one to burn for tomorrow, one coated too
//! long ago.

use super::language::{BONE, EMPTY, HARBOR_BLUE, INES, MOSS, NIGHT, Text, text};
use super::maker::Maker;
use crate::facts::{
    AgeLimits, BurnStep, Coats, Fact, MeshCount, MeshSheet, ScreenFact, ScreenField, ScreenState, StepTimes,
};
use crate::ids::{RunId, SHOP, Subject};
use crate::screen::step_done;
use crate::time::{Millis, WallTime};
use crate::units::Seconds;
use uuid::Uuid;

const MINUTE: Millis = Millis::from_minutes(1);
const HOUR: Millis = Millis::from_hours(1);
const DAY: Millis = Millis::from_days(1);

/// The runs of the day for which screens were burned.
pub(super) struct DayRuns {
    /// On the press.
    pub(super) front: RunId,
    /// Next on the press.
    pub(super) back: RunId,
    /// Tomorrow.
    pub(super) totes: RunId,
    /// In a few days.
    pub(super) ladder: RunId,
    /// Finished this morning.
    pub(super) bib: RunId,
    /// Wall time at which the first run went on the press.
    pub(super) began: WallTime,
    /// Wall time at which this morning's run left it.
    pub(super) bib_ended: WallTime,
}

/// Values of a mesh data sheet: threads per inch; thread, opening and thickness in micrometres.
type Cloth = (u16, u16, Option<u16>, Option<u16>);

// Invented; the sheet of the coarse mesh is lost.
const COARSE: Cloth = (110, 80, None, None);
const MIDDLE: Cloth = (156, 64, Some(95), Some(102));
const FINE: Cloth = (200, 48, Some(76), Some(75));
const FINEST: Cloth = (230, 48, Some(60), Some(78));

/// Records all screens.
pub(super) fn screens<N: FnMut() -> Uuid>(maker: &mut Maker<N>, runs: &DayRuns) {
    // Slightly earlier, so that no age changes while somebody is looking.
    let now = maker.clock.now - 5 * MINUTE;
    let rack = now - 16 * DAY + HOUR;
    maker.record(rack, SHOP, Fact::Screen(ScreenFact::AgeLimits(AgeLimits { coated: 14, exposed: 60 })));
    // A cabinet with a fan dries what was washed out.
    let times = StepTimes { wash_dry: Seconds::new(25.0 * 60.0), ..StepTimes::default() };
    maker.record(rack, SHOP, Fact::Screen(ScreenFact::StepTimes(times)));
    let mut frame =
        |label: &str, cloth: Cloth, tension: u16, notes: Text| maker.screen(rack, label, cloth, tension, notes);
    let [one, two, three] = ["1", "2", "3"].map(|label| frame(label, COARSE, 215, EMPTY));
    let [four, five, six] = ["4", "5", "6"].map(|label| frame(label, MIDDLE, 228, EMPTY));
    let [seven, eight, nine] = ["7", "8", "9"].map(|label| frame(label, FINE, 240, EMPTY));
    let ten = frame("10", FINE, 236, EMPTY);
    let torn =
        text("Mesh torn at one corner; needs restretching.", "Malla rota en una esquina; hay que ponerle malla nueva.");
    let eleven = frame("11", MIDDLE, 190, torn);
    let [twelve, thirteen, fourteen, fifteen] = ["12", "13", "14", "15"].map(|label| frame(label, MIDDLE, 232, EMPTY));
    let sixteen = frame("16", FINEST, 250, EMPTY);
    // Clean: 1, 2 and 6.
    for (screen, hours) in [(one, 26), (two, 25), (six, 3)] {
        maker.to(now - (hours + 20) * HOUR, screen, ScreenState::ToReclaim, MOSS);
        maker.to(now - hours * HOUR, screen, ScreenState::Clean, MOSS);
    }
    // Coated: one long ago and forgotten, one for tomorrow's totes, one spare.
    for (screen, coated) in [(three, rack + HOUR), (four, now - 20 * HOUR), (five, now - 2 * DAY)] {
        maker.step(coated, screen, BurnStep::Coat, INES);
        maker.step(coated + 2 * HOUR, screen, BurnStep::Dry, INES);
    }
    // Exposed an hour ago, still wet.
    maker.burn(sixteen, now - DAY, now - HOUR, None, false);
    for (screen, colour) in [
        (twelve, text("Apricot, first coat", "Durazno, primera mano")),
        (thirteen, text("Apricot, top coat", "Durazno, segunda mano")),
    ] {
        maker.burn(screen, now - 2 * DAY, now - 26 * HOUR, Some((runs.front, colour)), true);
        maker.to(runs.began, screen, ScreenState::OnPress, MOSS);
    }
    for (screen, colour) in [
        (fourteen, text("White, first coat", "Blanco, primera mano")),
        (fifteen, text("White, top coat", "Blanco, segunda mano")),
    ] {
        maker.burn(screen, now - 2 * DAY, now - 25 * HOUR, Some((runs.back, colour)), true);
    }
    maker.burn(seven, now - 4 * DAY, now - 3 * DAY, Some((runs.ladder, NIGHT)), true);
    maker.burn(eight, now - 3 * DAY, now - 2 * DAY, Some((runs.bib, BONE)), true);
    maker.to(runs.bib_ended, eight, ScreenState::ToReclaim, INES);
    for (screen, exposed) in [(nine, 9), (ten, 8), (eleven, 6)] {
        maker.burn(screen, now - (exposed + 1) * DAY, now - exposed * DAY, None, true);
    }
    maker.to(now - 22 * HOUR, nine, ScreenState::ToReclaim, MOSS);
    maker.to(now - 22 * HOUR, ten, ScreenState::ToReclaim, MOSS);
    maker.to(now - DAY, eleven, ScreenState::Failed, MOSS);
}

impl<N: FnMut() -> Uuid> Maker<N> {
    fn screen(&mut self, at: WallTime, label: &str, cloth: Cloth, tension: u16, notes: Text) -> Subject {
        let id = self.id();
        let (count, thread, opening_um, thickness_um) = cloth;
        let mesh = MeshSheet {
            thread_um: Some(thread),
            opening_um,
            thickness_um,
            ..MeshSheet::of_count(MeshCount::PerInch(count))
        };
        let fields = vec![
            ScreenField::Label(label.into()),
            ScreenField::Mesh(Some(mesh)),
            ScreenField::Tension(Some(tension)),
            ScreenField::Emulsion(self.language.say(HARBOR_BLUE)),
            ScreenField::Coats(Some(Coats { print: 2, squeegee: 1 })),
            ScreenField::Notes(self.language.say(notes)),
        ];
        self.record(at, id, Fact::Screen(ScreenFact::Set(fields)));
        id
    }

    fn to(&mut self, at: WallTime, screen: Subject, to: ScreenState, by: Text) {
        let by = Some(self.language.say(by));
        self.record(at, screen, Fact::Screen(ScreenFact::Moved { to, by }));
    }

    fn step(&mut self, at: WallTime, screen: Subject, step: BurnStep, by: Text) {
        let by = self.language.say(by);
        self.record(at, screen, step_done(step, Some(&by)));
    }

    /// Records coating and exposure of a screen, and taping if it was finished.
    fn burn(
        &mut self,
        screen: Subject,
        coated: WallTime,
        exposed: WallTime,
        art: Option<(RunId, Text)>,
        finished: bool,
    ) {
        self.step(coated, screen, BurnStep::Coat, MOSS);
        self.step(coated + 90 * MINUTE, screen, BurnStep::Dry, MOSS);
        self.step(exposed, screen, BurnStep::Expose, INES);
        if let Some((run, colour)) = art {
            let art = vec![ScreenField::Run(Some(run)), ScreenField::Colour(self.language.say(colour))];
            self.record(exposed, screen, Fact::Screen(ScreenFact::Set(art)));
        }
        if finished {
            self.step(exposed + 50 * MINUTE, screen, BurnStep::WashDry, INES);
            self.step(exposed + 55 * MINUTE, screen, BurnStep::Tape, INES);
        }
    }
}
