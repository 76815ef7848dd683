//! The exposure page: choices, test form, and the air of the room.

use super::{RUN, two_in};
use crate::shop::{HOUR, TestShop, near, wall};
use lastpull_core::facts::Fact;
use lastpull_core::heat::HeatFact;
use lastpull_core::ids::Subject;
use lastpull_core::screen::{
    Coats, EmulsionForm, ExposureChoice, ExposureForm, ExposureMethod, ExposureMethodKind, ExposureRefused, Family,
    HumidityEffect, LampForm, LampKind, MeshCloth, MeshCount, MeshSheet, NoDistanceLaw, ScreenFact, ScreenField,
    StencilFact, exposure_home, exposures_of, known_cloths, known_coats, mesh_rows, room_humidity,
};
use lastpull_core::units::{LengthUnit, Seconds, Temperature, Units};

fn sheet(threads: u16) -> MeshSheet {
    MeshSheet { thread_um: Some(64), ..MeshSheet::of_count(MeshCount::PerInch(threads)) }
}

/// A point lamp, an emulsion, and an exposure found for mesh 156 through the form.
fn exposed(kind: LampKind) -> (TestShop, Subject, Subject) {
    let mut press = TestShop::new();
    let (lamp, blue) = (press.id(), press.id());
    let form = LampForm { name: "Bulb".into(), kind, distance: "20".into() };
    press.record(lamp, Fact::Stencil(StencilFact::Lamp(form.check(Units::US, None).unwrap())));
    let form = EmulsionForm { name: "Harbour blue".into(), family: Some(Family::Diazo), solids: String::new() };
    press.record(blue, Fact::Stencil(StencilFact::Emulsion(form.check(None).unwrap())));
    (press, lamp, blue)
}

/// Ninety seconds from experience for mesh 156.
fn known_time(lamp: Subject, emulsion: Subject) -> ExposureForm {
    ExposureForm {
        emulsion: Some(emulsion),
        lamp: Some(lamp),
        mesh: "156".into(),
        thread: "64".into(),
        kind: ExposureMethodKind::Practice,
        time: "90".into(),
        ..ExposureForm::default()
    }
}

fn find(press: &mut TestShop, seconds: u64, form: &ExposureForm) -> Subject {
    let fact = form.check(&press.shop(), None, Units::US).unwrap();
    let id = press.id();
    press.record_at(seconds, id, Fact::Stencil(fact));
    id
}

#[test]
fn the_exposure_page_starts_with_what_was_exposed_last() {
    let (mut press, lamp, blue) = exposed(LampKind::Point);
    let first = ExposureChoice { emulsion: Some(blue), lamp: Some(lamp), ..ExposureChoice::default() };
    assert_eq!(ExposureChoice::from_latest(&press.shop()), first);
    assert_eq!(first.query(), None);
    press.screen_with("3", vec![ScreenField::Mesh(Some(sheet(230)))]);
    assert_eq!(ExposureChoice::from_latest(&press.shop()).cloth, Some(sheet(230).cloth()));
    let form = ExposureForm { coats_print: "2".into(), coats_squeegee: "1".into(), ..known_time(lamp, blue) };
    find(&mut press, 60, &form);
    let shop = press.shop();
    let pick = ExposureChoice::from_latest(&shop);
    assert_eq!((pick.cloth, pick.coats), (Some(sheet(156).cloth()), Some(Coats { print: 2, squeegee: 1 })));
    assert_eq!(known_cloths(&shop), [sheet(156).cloth(), sheet(230).cloth()]);
    assert_eq!(known_coats(&shop), [Coats { print: 2, squeegee: 1 }]);
    press.record(lamp, Fact::Deleted);
    assert_eq!(pick.without_deleted(&press.shop()).lamp, None);
}

#[test]
fn a_test_is_recorded_for_the_chosen_emulsion_mesh_and_lamp() {
    let (mut press, lamp, blue) = exposed(LampKind::Point);
    let cloth = MeshCloth { dyed: true, ..sheet(156).cloth() };
    let coats = Some(Coats { print: 2, squeegee: 1 });
    let pick = ExposureChoice { emulsion: Some(blue), lamp: Some(lamp), cloth: Some(cloth), coats };
    let form = ExposureForm { time: "60".into(), solid: "7".into(), ..ExposureForm::for_choice(&pick, Units::METRIC) };
    let id = find(&mut press, 60, &form);
    let shop = press.shop();
    let fact = &shop.exposure_log.exposure(id).unwrap().fact;
    assert_eq!((fact.cloth, fact.coats, fact.emulsion, fact.lamp), (cloth, coats, blue, lamp));
    // Back from twenty inches to thirty: (30/20)² times as long, by the inverse-square law.
    let far = LampForm { name: "Bulb".into(), kind: LampKind::Point, distance: "30".into() };
    let fields = far.check(Units::US, shop.exposure_log.lamp(lamp)).unwrap();
    press.record(lamp, Fact::Stencil(StencilFact::Lamp(fields)));
    let form = ExposureForm::for_other_distance(&pick, fact, Units::US);
    let found = form.preview(&press.shop(), None, Units::US).unwrap().unwrap();
    assert!(near(found.time.seconds(), 60.0 * 2.25));
    assert_eq!(ExposureForm::for_choice(&ExposureChoice::default(), Units::METRIC).per, LengthUnit::Centimetres);
}

#[test]
fn an_exposure_time_is_named_only_for_screens_that_say_what_they_are() {
    let (mut press, lamp, blue) = exposed(LampKind::Point);
    let is =
        |threads, emulsion: &str| vec![ScreenField::Mesh(Some(sheet(threads))), ScreenField::Emulsion(emulsion.into())];
    let screens = [
        press.screen_with("1", is(156, "Harbour Blue")),
        press.screen_with("2", is(230, "Harbour blue")),
        press.screen_with("3", is(156, "harbour blue ")),
        press.screen_with("4", vec![ScreenField::Mesh(Some(sheet(156)))]),
    ];
    let form = known_time(lamp, blue);
    find(&mut press, 60, &form);
    let rows = exposures_of(&press.shop(), &screens);
    assert_eq!(rows.len(), 2);
    assert_eq!((rows[0].screen, rows[0].labels.join(" ")), (screens[0], "1 3".into()));
    assert_eq!(rows[0].tested, Some((Seconds::new(90.0), "Bulb".into())));
    assert_eq!((rows[1].screen, rows[1].labels.join(" "), &rows[1].tested), (screens[1], "2 4".into(), &None));
    // With two numbers of coats, a screen must say which it has.
    for (seconds, coats, time) in [(70, "1", "60"), (80, "2", "120")] {
        let coats = coats.to_owned();
        let (coats_print, coats_squeegee) = (coats.clone(), coats);
        find(&mut press, seconds, &ExposureForm { coats_print, coats_squeegee, time: time.into(), ..form.clone() });
    }
    assert_eq!(exposures_of(&press.shop(), &screens)[0].tested, None);
    let coats = ScreenField::Coats(Some(Coats { print: 1, squeegee: 1 }));
    press.record(screens[0], Fact::Screen(ScreenFact::Set(vec![coats])));
    assert_eq!(exposures_of(&press.shop(), &screens)[0].tested, Some((Seconds::new(60.0), "Bulb".into())));
}

#[test]
fn an_exposure_time_that_was_deleted_is_not_named() {
    let (mut press, lamp, blue) = exposed(LampKind::Point);
    let screen =
        press.screen_with("1", vec![ScreenField::Mesh(Some(sheet(156))), ScreenField::Emulsion("Harbour blue".into())]);
    let form = known_time(lamp, blue);
    let id = find(&mut press, 60, &form);
    assert!(exposures_of(&press.shop(), &[screen])[0].tested.is_some());
    press.record(id, Fact::Deleted);
    assert_eq!(exposures_of(&press.shop(), &[screen])[0].tested, None);
}

#[test]
fn choosing_a_screen_fills_in_its_mesh_coats_and_emulsion() {
    let (mut press, lamp, blue) = exposed(LampKind::Point);
    let green = press.id();
    let form = EmulsionForm { name: "Marsh green".into(), family: Some(Family::Diazo), ..EmulsionForm::default() };
    press.record(green, Fact::Stencil(StencilFact::Emulsion(form.check(None).unwrap())));
    let screen = press.screen_with(
        "3",
        vec![
            ScreenField::Mesh(Some(sheet(230))),
            ScreenField::Emulsion("marsh GREEN ".into()),
            ScreenField::Coats(Some(Coats { print: 1, squeegee: 1 })),
        ],
    );
    let plain = press.screen_with("4", Vec::new());
    let shop = press.shop();
    let pick = ExposureChoice::for_screen(&shop, screen);
    let expected = ExposureChoice {
        emulsion: Some(green),
        cloth: Some(sheet(230).cloth()),
        coats: Some(Coats { print: 1, squeegee: 1 }),
        lamp: Some(lamp),
    };
    assert_eq!(pick, expected);
    assert_eq!(ExposureChoice::for_screen(&shop, plain).emulsion, Some(blue));
}

#[test]
fn the_preview_shows_the_factor_applied_to_the_tested_time() {
    let (press, lamp, blue) = exposed(LampKind::Point);
    let shop = press.shop();
    let form = ExposureForm {
        emulsion: Some(blue),
        lamp: Some(lamp),
        time: "120".into(),
        solid: "5".into(),
        ..ExposureForm::default()
    };
    // Two steps up: `time_factor_to_move_this_many_steps_up` of step 3 in `exposure_step_guide.csv`.
    let factor = form.preview(&shop, None, Units::US).unwrap().unwrap().factor.unwrap();
    assert!((factor - 1.995_262).abs() < 1e-6);
    // From ten inches to twenty is four times the time, by the inverse-square law.
    let moved = ExposureForm { kind: ExposureMethodKind::Distance, from: "10".into(), ..form.clone() };
    let found = moved.preview(&shop, None, Units::US).unwrap().unwrap();
    assert!(near(found.factor.unwrap(), 4.0));
    assert!(matches!(found.found, ExposureMethod::Distance { .. }));
    let known = ExposureForm { kind: ExposureMethodKind::Practice, ..form };
    let found = known.preview(&shop, None, Units::US).unwrap().unwrap();
    assert_eq!((found.factor, found.time), (None, Seconds::new(120.0)));
}

#[test]
fn tubes_panels_and_contact_tables_are_refused_before_a_distance_is_typed() {
    for (kind, law) in [
        (LampKind::Tubes, NoDistanceLaw::Tubes),
        (LampKind::Panel, NoDistanceLaw::Panel),
        (LampKind::Contact, NoDistanceLaw::Contact),
    ] {
        let (press, lamp, blue) = exposed(kind);
        let form = ExposureForm {
            emulsion: Some(blue),
            lamp: Some(lamp),
            kind: ExposureMethodKind::Distance,
            ..ExposureForm::default()
        };
        let refused = form.preview(&press.shop(), None, Units::US).unwrap_err();
        assert_eq!(refused, ExposureRefused::Distance(law));
    }
}

#[test]
fn a_climate_reading_is_used_for_two_hours() {
    let (mut press, _, blue) = exposed(LampKind::Point);
    let damp = |press: &TestShop, seconds| room_humidity(&press.shop(), blue, wall(seconds)).unwrap();
    assert_eq!(damp(&press, 0).note, HumidityEffect::NotRead);
    let reading = press.id();
    let fact = HeatFact::RoomRead { temperature: Temperature::from_fahrenheit(80.0), humidity: 62, by: None };
    press.record_at(60, reading, Fact::Heat(fact));
    assert_eq!((damp(&press, 2 * HOUR).note, damp(&press, 2 * HOUR).humidity), (HumidityEffect::MoreTime, Some(62)));
    assert_eq!(damp(&press, 2 * HOUR + 120).note, HumidityEffect::NotRead);
    assert_eq!(room_humidity(&press.shop(), reading, wall(120)), None);
}

#[test]
fn meshes_are_listed_once_with_the_frames_they_are_on() {
    let mut press = TestShop::new();
    let full = MeshSheet { opening_um: Some(95), thickness_um: Some(100), ..sheet(156) };
    press.screen_with("9", vec![ScreenField::Mesh(Some(full))]);
    press.screen_with("8", vec![ScreenField::Mesh(Some(full))]);
    press.screen_with("1", vec![ScreenField::Mesh(Some(sheet(110)))]);
    press.screen_with("2", Vec::new());
    let rows = mesh_rows(&press.shop());
    assert_eq!(rows.iter().map(|row| row.labels.join(" ")).collect::<Vec<_>>(), ["1", "8 9"]);
    assert_eq!(rows.iter().map(lastpull_core::screen::MeshRow::is_full).collect::<Vec<_>>(), [false, true]);
    let home = exposure_home(&press.shop(), wall(60));
    assert_eq!((home.meshes, home.full_sheets, home.trend), (2, 1, None));
}

#[test]
fn the_screens_home_counts_screens_waiting_and_in_the_bath() {
    let (mut press, ..) = two_in();
    press.waiting_screen(RUN, "9");
    let home = exposure_home(&press.shop(), wall(HOUR));
    assert_eq!((home.in_bath, home.waiting, home.exposures), (2, 1, 0));
}

#[test]
fn dyed_mesh_is_listed_as_a_separate_mesh() {
    let mut press = TestShop::new();
    press.screen_with("1", vec![ScreenField::Mesh(Some(sheet(156)))]);
    press.screen_with("2", vec![ScreenField::Mesh(Some(MeshSheet { dyed: true, ..sheet(156) }))]);
    let dyed: Vec<bool> = known_cloths(&press.shop()).iter().map(|cloth: &MeshCloth| cloth.dyed).collect();
    assert_eq!(dyed, [false, true]);
}
