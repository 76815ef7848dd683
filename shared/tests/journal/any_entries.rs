//! Strategies for any fact and any entries.

use lastpull_core::colour::Colour;
use lastpull_core::facts::frozen::{rows, subject_of};
use lastpull_core::facts::{Entry, Fact, JobField, Journal, LotField, RunField};
use lastpull_core::failure::{FailureFact, FailureField, FailureKind, Mark, Remedy, Suspects, Verdict};
use lastpull_core::heat::{
    HeatFact, HeaterField, HeaterKind, LimitKind, SensorMethod, SheetField, TestField, TestResult, TrialField,
    TrialVerdict,
};
use lastpull_core::ids::PhotoId;
use lastpull_core::ink::{
    BatchSize, ColourReading, ComponentField, ComponentKind, DrawdownRecord, Film, InkFact, Part, PotField, PourStep,
    PrintUse, ReadBy, ReadOn, RecipeField, RecordedLayer, Share, SwatchMeasurement,
};
use lastpull_core::job::{Fabric, Size, SizePieces};
use lastpull_core::journal::{Checkpoint, Stamp};
use lastpull_core::photo::PhotoFact;
use lastpull_core::run::{CheckItem, CheckOutcome, Expected, MisprintCause, StopCause};
use lastpull_core::screen::{
    AgeLimits, BatchTime, BathField, Coats, EmulsionField, Exposure, ExposureMethod, Family, LampField, LampKind,
    MeshCloth, MeshCount, ScreenFact, ScreenField, ScreenState, StencilFact, StepTimes,
};
use lastpull_core::shop::Shop;
use lastpull_core::time::{Millis, WallTime};
use lastpull_core::units::{Grams, Length, Seconds, Temperature};
use proptest::prelude::*;
use proptest::sample::select;
use uuid::Uuid;

pub const DEVICES: u128 = 6;

pub fn any_heat() -> impl Strategy<Value = Fact> {
    let text = "[a-zñ ]{0,6}";
    let warm = (20..200i32).prop_map(|degrees| Temperature::from_milli_celsius(degrees * 1000));
    let dryer = Uuid::from_u128(0x12);
    prop_oneof![
        (warm.clone(), 0..=100u8).prop_map(|(temperature, humidity)| HeatFact::RoomRead {
            temperature,
            humidity,
            by: None
        }),
        text.prop_map(|t| HeatFact::HeaterSet(vec![HeaterField::Name(t), HeaterField::Kind(HeaterKind::Dryer)])),
        (warm.clone(), warm.clone()).prop_map(|(setting, found)| HeatFact::SensorRead {
            setting,
            found,
            method: SensorMethod::Probe
        }),
        Just(HeatFact::SensorUnread),
        prop::option::of(Just(dryer)).prop_map(HeatFact::DryerChosen),
        (text, warm.clone())
            .prop_map(|(t, cure)| HeatFact::SheetSet(vec![SheetField::Ink(t), SheetField::Cure(Some(cure))])),
        (prop::option::of(warm.clone()), text).prop_map(|(temperature, note)| HeatFact::FabricLimit {
            fabric: Fabric::Polyester,
            kind: LimitKind::DyeMigration,
            temperature,
            note,
        }),
        (warm.clone(), warm.clone()).prop_map(move |(from, to)| HeatFact::SettlingStarted { dryer, from, to }),
        (1..900_000u32).prop_map(|ms| HeatFact::SettlingFinished(Seconds::from_milliseconds(ms))),
        (warm.clone(), warm.clone(), 1..900_000u32).prop_map(move |(from, to, ms)| {
            HeatFact::SettlingLogged { dryer, from, to, took: Seconds::from_milliseconds(ms) }
        }),
        (text, select(vec![TestResult::Waiting, TestResult::Pass, TestResult::Fail]))
            .prop_map(|(t, result)| HeatFact::TestSet(vec![TestField::Ink(t), TestField::Result(result)])),
        text.prop_map(|t| HeatFact::TrialSet(vec![TrialField::Ink(t), TrialField::Verdict(TrialVerdict::Keep)])),
    ]
    .prop_map(Fact::Heat)
}

pub fn any_fact() -> impl Strategy<Value = (Uuid, Fact)> {
    let subject = (0x10u128..0x14).prop_map(Uuid::from_u128);
    let size = prop::option::of(select(vec![Size::S, Size::M, Size::YouthL]));
    let text = "[a-zñ ]{0,6}";
    let fact = prop_oneof![
        8 => (1..4i32, size.clone()).prop_map(|(pieces, size)| Fact::Pulled { pieces, size }),
        2 => (-3..0i32, size.clone()).prop_map(|(pieces, size)| Fact::Pulled { pieces, size }),
        2 => (prop_oneof![Just(1), Just(-1)], size, any::<bool>()).prop_map(|(pieces, size, was_counted)| {
            Fact::Misprinted { pieces, size, cause: MisprintCause::Smudge, was_counted }
        }),
        1 => Just(Fact::RunStarted),
        1 => Just(Fact::RunEnded),
        1 => Just(Fact::Stopped(StopCause::Ink)),
        1 => Just(Fact::Resumed),
        1 => Just(Fact::Deleted),
        1 => Just(Fact::Restored),
        1 => Just(Fact::JobFinished),
        1 => Just(Fact::JobReopened),
        1 => text.prop_map(|t| Fact::JobSet(vec![JobField::Title(t.clone()), JobField::Client(t)])),
        1 => text.prop_map(|t| Fact::LotSet(vec![
            LotField::Job(Uuid::from_u128(0x10)),
            LotField::Garment(t),
            LotField::Fabric(Fabric::Polyester),
            LotField::Colour(Colour::BLACK),
            LotField::Pieces(vec![SizePieces { size: Size::M, pieces: 9 }]),
        ])),
        1 => text.prop_map(|t| Fact::RunSet(vec![RunField::Lot(Uuid::from_u128(0x11)), RunField::Ink(t), RunField::Hits(2)])),
        1 => (0..3u32).prop_map(|n| Fact::CheckMade {
            item: CheckItem::Hits,
            expected: Expected::Count(n),
            outcome: CheckOutcome::Ticked,
            by: None,
        }),
        3 => any_stencil_fact().prop_map(Fact::Stencil),
        3 => any_screen_fact().prop_map(Fact::Screen),
        3 => any_failure_fact().prop_map(Fact::Failure),
        6 => any_heat(),
        12 => any_ink_fact().prop_map(Fact::Ink),
        1 => (0..3u8).prop_map(|n| {
            Fact::Photo(PhotoFact::Taken { photo: PhotoId([n; 32]), width: 160, height: 120, bytes: 9 })
        }),
        1 => (0..3u8).prop_map(|n| Fact::Photo(PhotoFact::Dropped(PhotoId([n; 32])))),
        1 => text.prop_map(|t| Fact::Unknown { kind: "later".into(), body: format!("{{\"later\":\"{t}\"}}") }),
    ];
    (subject, fact)
}

pub fn any_stencil_fact() -> impl Strategy<Value = StencilFact> {
    let number = 1..12u16;
    prop_oneof![
        number.clone().prop_map(|n| StencilFact::Lamp(vec![
            LampField::Name(n.to_string()),
            LampField::Kind(LampKind::Tubes),
            LampField::Distance(Some(Length::from_micrometres(i32::from(n)))),
        ])),
        number.clone().prop_map(|n| StencilFact::Emulsion(vec![
            EmulsionField::Name(n.to_string()),
            EmulsionField::Family(Family::Photopolymer),
            EmulsionField::Solids(Some(n as u8)),
        ])),
        number.clone().prop_map(|n| StencilFact::Goal(n as u8)),
        number.clone().prop_map(|n| StencilFact::Exposure(Exposure {
            emulsion: Uuid::from_u128(0x10),
            lamp: Uuid::from_u128(0x11),
            distance: None,
            cloth: MeshCloth { count: MeshCount::PerCentimetre(40 + n), thread_um: None, dyed: n > 6 },
            coats: Some(Coats { print: 2, squeegee: 1 }),
            time: Seconds::from_milliseconds(u32::from(n) * 1_000),
            found: ExposureMethod::StepGuide { test: Seconds::from_milliseconds(1_000), solid: 7, goal: 7 },
            by: None,
            note: String::new(),
        })),
        number.clone().prop_map(|n| StencilFact::BathCharged { chemistry: n.to_string(), by: None }),
        number.clone().prop_map(|n| StencilFact::Bath(vec![
            BathField::Capacity(Some(n)),
            BathField::RechargeAt(Some(100 + n)),
            BathField::Note(n.to_string()),
        ])),
        number.clone().prop_map(|count| StencilFact::BatchIn { screens: vec![Uuid::from_u128(0x12)], count }),
        number.prop_map(|n| StencilFact::BatchOut {
            time: if n > 6 { BatchTime::Elapsed } else { BatchTime::Whole(Seconds::from_milliseconds(u32::from(n))) },
            count: Some(n),
        }),
    ]
}

/// Components, recipes, revisions, pots and pours all under the same few ids.
pub fn any_ink_fact() -> impl Strategy<Value = InkFact> {
    let id = || (0x10u128..0x14).prop_map(Uuid::from_u128);
    let grams = || prop_oneof![(1..400i64), Just(1_000_000_000)].prop_map(Grams::from_milligrams);
    let note = String::new;
    let read = ColourReading::from_lab([50.0, 1.0, -1.0], ReadBy::Photo);
    let reading = Some(read);
    let print = PrintUse {
        width: Length::from_micrometres(900),
        height: Length::from_micrometres(900),
        coverage: 500,
        volume: 9,
        hits: 1,
        transfer: 900,
        density: 1_000,
        loss: 50,
    };
    prop_oneof![
        1 => ("[a-c]", grams()).prop_map(|(name, grams)| InkFact::ComponentSet(vec![
            ComponentField::Name(name),
            ComponentField::Kind(ComponentKind::Pigment),
            ComponentField::Most(Some(Share::from_percent(5.0))),
            ComponentField::Tub(Some(grams)),
            ComponentField::LowAt(Some(grams)),
        ])),
        1 => "[a-c]".prop_map(move |name| InkFact::RecipeSet(vec![
            RecipeField::Name(name),
            RecipeField::Colour(None),
            RecipeField::Target(reading),
            RecipeField::ReadOn(ReadOn::Garment),
        ])),
        3 => (id(), grams(), any::<bool>()).prop_map(|(id, grams, ink)| InkFact::PotSet(vec![
            PotField::Name("P".into()),
            PotField::Revision(Some(id)),
            PotField::Run(Some(id)),
            PotField::Size(Some(if ink { BatchSize::Ink(grams) } else { BatchSize::Whole(grams) })),
            PotField::Capacity(Some(grams)),
        ])),
        1 => (1..400i64).prop_map(|step| InkFact::ScaleSet { step: Grams::from_milligrams(step), most: None }),
        1 => prop::option::of(Just(print)).prop_map(InkFact::PrintSet),
        3 => (id(), id(), id(), 1..9u16, prop::option::of(id())).prop_map(move |(recipe, one, two, number, parent)| {
            InkFact::RevisionSaved {
                recipe,
                number,
                parts: vec![
                    Part { component: one, share: Share::WHOLE, on_top: false },
                    Part { component: two, share: Share::from_percent(f64::from(number)), on_top: true },
                ],
                parent,
                pot: parent,
                note: note(),
                by: None,
            }
        }),
        4 => (id(), id(), grams(), select(vec![PourStep::WeighIn, PourStep::Correction, PourStep::TopUp])).prop_map(
            move |(pot, component, grams, step)| InkFact::Poured {
                pot,
                component,
                grams,
                step,
                note: note(),
                reading,
                by: None
            }
        ),
        1 => (id(), grams()).prop_map(|(pot, whole)| InkFact::Resized { pot, whole, by: None }),
        1 => (id(), id(), grams()).prop_map(|(pot, component, grams)| InkFact::Accepted { pot, component, grams, by: None }),
        2 => (id(), id(), grams()).prop_map(|(from, to, grams)| InkFact::Moved { from, to, grams, by: None }),
        1 => (id(), grams()).prop_map(move |(pot, grams)| InkFact::Wasted { pot, grams, note: note(), by: None }),
        1 => (id(), id(), grams()).prop_map(|(pot, run, grams)| InkFact::Used {
            pot,
            run: Some(run),
            grams,
            pieces: 3,
            paper: Some(grams),
            by: None
        }),
        1 => id().prop_map(move |pot| InkFact::Matched { pot, reading, by: None }),
        1 => (id(), id()).prop_map(move |(revision, pot)| InkFact::Approved {
            revision,
            pot: Some(pot),
            client: note(),
            reading,
            by: None
        }),
        1 => (id(), grams()).prop_map(move |(component, grams)| InkFact::Delivered { component, grams, note: note(), by: None }),
        1 => (id(), grams()).prop_map(|(component, grams)| InkFact::Counted { component, grams, by: None }),
        2 => (id(), prop::option::of(id()), 1..=100u32, any::<bool>(), 0..=10_000u16).prop_map(
            move |(component, rest, percent, over, level)| InkFact::DrawnDown(DrawdownRecord {
                component,
                share: Share::from_percent(f64::from(percent)),
                rest,
                lay: if over { RecordedLayer::Over { film: Film::Hits(1), backing: SwatchMeasurement::Flat(level) } } else { RecordedLayer::Hiding },
                seen: if over { SwatchMeasurement::Flat(level / 2) } else { SwatchMeasurement::Curve(vec![level; 31]) },
                note: note(),
                by: None,
            })
        ),
        1 => prop::option::of(Just(read)).prop_map(InkFact::GarmentRead),
        1 => id().prop_map(move |pot| InkFact::SwatchRead { pot, reading: read, note: note(), by: None }),
    ]
}

pub fn any_screen_fact() -> impl Strategy<Value = ScreenFact> {
    let id = || (0x10u128..0x14).prop_map(Uuid::from_u128);
    prop_oneof![
        ("[A-C]", id()).prop_map(|(label, id)| ScreenFact::Set(vec![
            ScreenField::Label(label),
            ScreenField::Run(Some(id)),
            ScreenField::Replaces(Some(id)),
        ])),
        select(ScreenState::ALL.to_vec()).prop_map(|to| ScreenFact::Moved { to, by: Some("Ines".into()) }),
        any::<bool>().prop_map(|dry| ScreenFact::Dried { dry, by: None }),
        (select(ScreenState::ALL.to_vec()), (0..9_000u64).prop_map(WallTime::from_unix_ms)).prop_map(|(to, since)| {
            ScreenFact::Undone { to, since, dry: Some(since + Millis::from_ms(1)), exposed: None }
        }),
        (1..9u16).prop_map(|coated| ScreenFact::AgeLimits(AgeLimits { coated, exposed: 9 })),
        Just(ScreenFact::StepTimes(StepTimes::default())),
    ]
}

pub fn any_failure_fact() -> impl Strategy<Value = FailureFact> {
    let id = || (0x10u128..0x14).prop_map(Uuid::from_u128);
    let size = prop::option::of(select(vec![Size::S, Size::M]));
    prop_oneof![
        (id(), 0..5u32, size.clone()).prop_map(|(id, pieces, size)| FailureFact::Set(vec![
            FailureField::Run(id),
            FailureField::Screen(Some(id)),
            FailureField::Kind(FailureKind::Ghost),
            FailureField::Mark(Some(Mark { x: 1, y: 2 })),
            FailureField::Since(Some(pieces)),
            FailureField::Suspects(vec![Suspects { size, pieces }]),
        ])),
        id().prop_map(|id| FailureFact::Set(vec![
            FailureField::Remedy(Some(Remedy::BurnAgain)),
            FailureField::Replacement(Some(id)),
        ])),
        (-2..3i32, size, any::<bool>()).prop_map(|(pieces, size, good)| FailureFact::Judged {
            pieces,
            size,
            verdict: if good { Verdict::Good } else { Verdict::Spoiled },
            by: None,
        }),
    ]
}

/// Any fact of the frozen rows, about what it is made for or about something else: so every variant is drawn.
pub fn any_frozen_fact() -> impl Strategy<Value = (Uuid, Fact)> {
    let facts: Vec<Fact> = rows().into_iter().map(|row| row.fact).collect();
    (select(facts), prop::option::of((0x10u128..0x14).prop_map(Uuid::from_u128)))
        .prop_map(|(fact, other)| (other.unwrap_or_else(|| subject_of(&fact)), fact))
}

/// Any fact of the ink bench among the frozen rows.
pub fn any_frozen_ink_fact() -> impl Strategy<Value = InkFact> {
    let ink = rows().into_iter().filter_map(|row| if let Fact::Ink(fact) = row.fact { Some(fact) } else { None });
    select(ink.collect::<Vec<_>>())
}

/// Facts of six devices, each numbered from 1, at wall times that collide and cross.
pub fn any_entries() -> impl Strategy<Value = Vec<Entry>> {
    let fact = prop_oneof![2 => any_fact(), 1 => any_frozen_fact()];
    // The clock that a device shows is now and then behind or ahead of its stamps.
    let lag = prop_oneof![3 => Just(0), 1 => 0..3_000_000u64];
    prop::collection::vec((0..DEVICES, 0..2_000_000u64, lag, fact), 1..60).prop_map(|rows| {
        let mut next = [1u64; DEVICES as usize];
        rows.into_iter()
            .map(|(device, wall, lag, (subject, fact))| {
                let seq = next[device as usize];
                next[device as usize] += 1;
                let stamp = Stamp { wall: WallTime::from_unix_ms(wall / 1000 * 1000), counter: (wall % 3) as u32 };
                let at = if lag == 0 { stamp.wall } else { WallTime::from_unix_ms(lag) };
                Entry { device: Uuid::from_u128(device + 1), seq, stamp, at, subject, fact }
            })
            .collect()
    })
}

pub fn bytes_of(journal: &Journal) -> Vec<u8> {
    Checkpoint::of(&Shop::fold(journal)).bytes
}
