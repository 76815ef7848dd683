//! Exposure and reclaiming in the invented shop: one lamp, two emulsions, the tests made, and a bath that
//! is clearly slowing down.

use super::language::{EMPTY, HARBOR_BLUE, INES, Language, MARSH_GREEN, MOSS, Text, text};
use super::maker::Maker;
use crate::facts::{
    BatchTime, BathField, Coats, EmulsionField, Exposure, ExposureMethod, Fact, Family, LampField, LampKind, MeshCloth,
    MeshCount, MeshSheet, ScreenFact, ScreenField, ScreenState, StencilFact,
};
use crate::ids::{SHOP, Subject};
use crate::time::{Millis, WallTime};
use crate::units::{Length, Seconds};
use uuid::Uuid;

const MINUTE: Millis = Millis::from_minutes(1);
const HOUR: Millis = Millis::from_hours(1);
const DAY: Millis = Millis::from_days(1);

/// Minutes per screen of the previous charge and of the current one, batch by batch.
const SPENT: [f64; 8] = [5.2, 4.8, 5.1, 5.6, 6.1, 6.9, 7.6, 8.1];
const SLOWING: [f64; 9] = [4.9, 5.1, 5.0, 5.4, 5.6, 6.0, 6.1, 6.6, 6.7];

/// Screens to reclaim and their meshes: the first two are in the bath, the others wait. Thread, opening and
/// thickness in micrometres are invented.
const DONE_WITH: [(&str, MeshSheet); 5] = [
    ("21", sheet(156, 64, Some(95), Some(102))),
    ("22", sheet(156, 64, Some(95), Some(102))),
    ("23", sheet(230, 48, Some(60), Some(78))),
    ("24", sheet(230, 48, Some(60), Some(78))),
    ("25", sheet(110, 80, None, None)),
];

const fn sheet(threads: u16, thread: u16, opening_um: Option<u16>, thickness_um: Option<u16>) -> MeshSheet {
    MeshSheet {
        count: MeshCount::PerInch(threads),
        thread_um: Some(thread),
        opening_um,
        open_area_permille: None,
        thickness_um,
        dyed: false,
    }
}

/// Records the screen room of the demo shop.
pub(super) fn stencils<N: FnMut() -> Uuid>(maker: &mut Maker<N>) {
    exposures(maker);
    bath(maker);
}

fn record<N: FnMut() -> Uuid>(maker: &mut Maker<N>, at: WallTime, subject: Subject, fact: StencilFact) {
    maker.record(at, subject, Fact::Stencil(fact));
}

fn exposures<N: FnMut() -> Uuid>(maker: &mut Maker<N>) {
    let now = maker.clock.now;
    let language = maker.language;
    let start = now - 15 * DAY;
    let lamp = maker.id();
    let distance = Some(Length::from_inches(20.0));
    let fields = vec![
        LampField::Name(language.say(text("Bulb over the table", "Foco sobre la mesa"))),
        LampField::Kind(LampKind::Point),
        LampField::Distance(distance),
    ];
    record(maker, start, lamp, StencilFact::Lamp(fields));
    let mut emulsion = |name: Text, family, solids| {
        let id = maker.id();
        let name = EmulsionField::Name(language.say(name));
        let fields = vec![name, EmulsionField::Family(family), EmulsionField::Solids(Some(solids))];
        record(maker, start + MINUTE, id, StencilFact::Emulsion(fields));
        id
    };
    let (blue, green) = (emulsion(HARBOR_BLUE, Family::DualCure, 40), emulsion(MARSH_GREEN, Family::Photopolymer, 36));
    let guide = ExposureMethod::StepGuide { test: Seconds::new(120.0), solid: 5, goal: 7 };
    let columns = ExposureMethod::Columns { test: Seconds::new(280.0), percent: 70 };
    let held = text("Halftones held down to 4%.", "Se conservaron los medios tonos hasta el 4 %.");
    for (days_ago, emulsion, threads, thread, time, found, by, note) in [
        (13, green, 156, 64, 42.0, ExposureMethod::Practice, INES, EMPTY),
        (8, blue, 230, 48, 196.0, columns, MOSS, held),
        (3, blue, 156, 64, 239.431, guide, INES, EMPTY),
    ] {
        let id = maker.id();
        let exposure = Exposure {
            emulsion,
            lamp,
            distance,
            cloth: MeshCloth { count: MeshCount::PerInch(threads), thread_um: Some(thread), dyed: false },
            coats: Some(Coats { print: 2, squeegee: 1 }),
            time: Seconds::new(time),
            found,
            by: Some(language.say(by)),
            note: language.say(note),
        };
        record(maker, now - days_ago * DAY - 2 * HOUR, id, StencilFact::Exposure(exposure));
    }
}

fn bath<N: FnMut() -> Uuid>(maker: &mut Maker<N>) {
    let now = maker.clock.now;
    let language = maker.language;
    let note = language.say(text(
        "Gloves and goggles hang to the left of the tank.",
        "Los guantes y las gafas protectoras cuelgan a la izquierda del tanque.",
    ));
    let fields = vec![BathField::Capacity(Some(4)), BathField::Note(note)];
    record(maker, now - 15 * DAY, SHOP, StencilFact::Bath(fields));
    for (days_ago, minutes) in [(15, &SPENT[..]), (7, &SLOWING[..])] {
        let charged = now - days_ago * DAY - 4 * HOUR;
        let id = maker.id();
        let chemistry = language.say(text("Dip tank concentrate, 1 to 4", "Concentrado para tanque, 1 a 4"));
        let charge = StencilFact::BathCharged { chemistry, by: Some(language.say(MOSS)) };
        record(maker, charged, id, charge);
        for (index, minutes) in minutes.iter().enumerate() {
            let went_in = charged + HOUR + index as u64 * 16 * HOUR;
            let batch = maker.id();
            record(maker, went_in, batch, StencilFact::BatchIn { screens: Vec::new(), count: 4 });
            let came_out = went_in + Millis::from_seconds(minutes * 4.0 * 60.0);
            record(maker, came_out, batch, StencilFact::BatchOut { time: BatchTime::Elapsed, count: None });
        }
    }
    let mut screens = Vec::new();
    for (label, mesh) in DONE_WITH {
        let id = maker.id();
        let fields = vec![
            ScreenField::Label(label.into()),
            ScreenField::Mesh(Some(mesh)),
            ScreenField::Emulsion(language.say(HARBOR_BLUE)),
            ScreenField::Coats(Some(Coats { print: 2, squeegee: 1 })),
        ];
        maker.record(now - 14 * DAY, id, Fact::Screen(ScreenFact::Set(fields)));
        maker.record(now - 20 * HOUR, id, moved(ScreenState::ToReclaim, language));
        screens.push(id);
    }
    let (batch, in_bath) = (maker.id(), screens[..2].to_vec());
    let went_in = now - 11 * MINUTE;
    for screen in &in_bath {
        maker.record(went_in, *screen, moved(ScreenState::InBath, language));
    }
    record(maker, went_in, batch, StencilFact::BatchIn { screens: in_bath, count: 2 });
}

fn moved(to: ScreenState, language: Language) -> Fact {
    Fact::Screen(ScreenFact::Moved { to, by: Some(language.say(MOSS)) })
}
