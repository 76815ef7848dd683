//! What the screen room's own screens lay on top of exposures and bath: batches that take their screens
//! along, what can be picked, the room's air, the figures on the way in.

use crate::shop::{HOUR, Press, near, wall};
use lastpull_core::facts::Fact;
use lastpull_core::form::FormProblem;
use lastpull_core::heat::HeatFact;
use lastpull_core::ids::RunId;
use lastpull_core::ids::Subject;
use lastpull_core::journal::JournalFact;
use lastpull_core::screen::{
    BatchInForm, BatchOutForm, BatchTimeKind, Coats, EmulsionForm, ExposureChoice, ExposureForm, ExposureMethod,
    ExposureMethodKind, ExposureRefused, FactsWithUndo, Family, HumidityEffect, LampForm, LampKind, MeshCloth,
    MeshCount, MeshSheet, NoDistanceLaw, ScreenFact, ScreenField, ScreenState, StencilFact, bath_view, delete_batch,
    exposure_home, known_cloths, known_coats, mesh_rows, put_in, room_humidity, take_out, waiting_screens,
};
use lastpull_core::shop::Shop;
use lastpull_core::units::{NumberProblem, Seconds, Temperature, Units};
use uuid::Uuid;

const MINUTE: u64 = 60;

trait Bench {
    fn frame(&mut self, label: &str, fields: Vec<ScreenField>) -> Subject;
    fn waits(&mut self, label: &str) -> Subject;
    fn all(&mut self, seconds: u64, facts: &[(Subject, Fact)]) -> &mut Self;
}

impl Bench for Press {
    fn frame(&mut self, label: &str, mut fields: Vec<ScreenField>) -> Subject {
        let id = self.id();
        fields.push(ScreenField::Label(label.into()));
        self.say(id, Fact::Screen(ScreenFact::Set(fields)));
        id
    }

    fn waits(&mut self, label: &str) -> Subject {
        let fields = vec![ScreenField::Run(Some(RUN)), ScreenField::Colour("Bone".into())];
        let id = self.frame(label, fields);
        self.say(id, Fact::Screen(ScreenFact::Moved { to: ScreenState::ToReclaim, by: None }));
        id
    }

    fn all(&mut self, seconds: u64, facts: &[(Subject, Fact)]) -> &mut Self {
        for (subject, fact) in facts {
            assert!(fact.in_bounds(), "{fact:?}");
            self.say_at(seconds, *subject, fact.clone());
        }
        self
    }
}

const RUN: RunId = Uuid::from_u128(0xa1);

fn stands(shop: &Shop, screens: &[Subject]) -> Vec<ScreenState> {
    screens.iter().map(|id| shop.screens.live(*id).unwrap().state).collect()
}

/// Two screens that wait, put in together a minute after opening.
fn two_in() -> (Press, [Subject; 2], Subject, FactsWithUndo) {
    let mut press = Press::new();
    let screens = [press.waits("7"), press.waits("8")];
    let batch = press.id();
    let form = BatchInForm { screens: screens.to_vec(), count: String::new() };
    let step = put_in(&press.shop(), batch, &form, Some("Ines")).unwrap();
    press.all(MINUTE, &step.facts);
    (press, screens, batch, step)
}

#[test]
fn a_batch_takes_its_screens_into_the_bath_and_out_of_it_clean() {
    let (mut press, screens, batch, _) = two_in();
    assert_eq!(stands(&press.shop(), &screens), [ScreenState::InBath; 2]);
    assert_eq!(waiting_screens(&press.shop()), 0);
    let step = take_out(&press.shop(), batch, &BatchOutForm::default(), None).unwrap();
    press.all(11 * MINUTE, &step.facts);
    let shop = press.shop();
    assert_eq!(stands(&shop, &screens), [ScreenState::Clean; 2]);
    assert_eq!(shop.screens.live(screens[0]).unwrap().run, None);
    let done = bath_view(&shop, 0, wall(HOUR)).done;
    assert_eq!((done.len(), done[0].count), (1, 2));
    assert!(near(done[0].minutes.unwrap(), 5.0));
}

#[test]
fn undo_of_going_in_lets_the_screens_wait_again() {
    let (mut press, screens, _, step) = two_in();
    press.all(2 * MINUTE, &step.undo);
    let shop = press.shop();
    assert_eq!(stands(&shop, &screens), [ScreenState::ToReclaim; 2]);
    assert!(bath_view(&shop, 0, wall(HOUR)).in_bath.is_empty());
}

#[test]
fn undo_of_coming_out_puts_the_screens_back_with_what_they_carried_and_the_clock_runs_on() {
    let (mut press, screens, batch, _) = two_in();
    let step = take_out(&press.shop(), batch, &BatchOutForm::default(), None).unwrap();
    press.all(11 * MINUTE, &step.facts).all(12 * MINUTE, &step.undo);
    let shop = press.shop();
    assert_eq!(stands(&shop, &screens), [ScreenState::InBath; 2]);
    let screen = shop.screens.live(screens[1]).unwrap();
    assert_eq!((screen.run, screen.colour.as_str()), (Some(RUN), "Bone"));
    let view = bath_view(&shop, 0, wall(13 * MINUTE));
    assert_eq!((view.done.len(), view.in_bath[0].elapsed), (0, 12 * 60_000));
    assert_eq!(view.in_bath[0].screens, screens);
}

#[test]
fn a_screen_that_did_not_come_clean_waits_again_and_is_not_counted() {
    let (mut press, screens, batch, _) = two_in();
    let form = BatchOutForm { not_clean: vec![screens[1]], ..BatchOutForm::default() };
    let step = take_out(&press.shop(), batch, &form, None).unwrap();
    press.all(11 * MINUTE, &step.facts);
    let shop = press.shop();
    assert_eq!(stands(&shop, &screens), [ScreenState::Clean, ScreenState::ToReclaim]);
    assert_eq!(bath_view(&shop, 0, wall(HOUR)).done[0].count, 1);
    press.all(12 * MINUTE, &step.undo);
    assert_eq!(stands(&press.shop(), &screens), [ScreenState::InBath; 2]);
}

#[test]
fn a_batch_of_which_nothing_came_clean_is_left_in() {
    let (press, screens, batch, _) = two_in();
    let form = BatchOutForm { not_clean: screens.to_vec(), ..BatchOutForm::default() };
    let problems = take_out(&press.shop(), batch, &form, None).unwrap_err();
    assert_eq!(problems["count"], FormProblem::Number(NumberProblem::TooLow { least: 1.0 }));
}

#[test]
fn a_screen_that_went_on_since_is_not_pulled_back_by_its_batch() {
    let (mut press, screens, batch, _) = two_in();
    for state in [ScreenState::Clean, ScreenState::Coated] {
        press.say_at(5 * MINUTE, screens[0], Fact::Screen(ScreenFact::Moved { to: state, by: None }));
    }
    let step = take_out(&press.shop(), batch, &BatchOutForm::default(), None).unwrap();
    press.all(11 * MINUTE, &step.facts);
    assert_eq!(stands(&press.shop(), &screens), [ScreenState::Coated, ScreenState::Clean]);
}

#[test]
fn a_batch_put_in_by_mistake_is_forgotten_and_remembered_again_with_its_screens() {
    let (mut press, screens, batch, _) = two_in();
    let step = delete_batch(&press.shop(), batch, None);
    press.all(3 * MINUTE, &step.facts);
    assert_eq!(stands(&press.shop(), &screens), [ScreenState::ToReclaim; 2]);
    press.all(4 * MINUTE, &step.undo);
    let shop = press.shop();
    assert_eq!(stands(&shop, &screens), [ScreenState::InBath; 2]);
    assert_eq!(bath_view(&shop, 0, wall(HOUR)).in_bath[0].id, batch);
}

#[test]
fn a_batch_nobody_put_in_is_noted_with_its_count_and_minutes() {
    let mut press = Press::new();
    let batch = press.id();
    assert!(take_out(&press.shop(), batch, &BatchOutForm::default(), None).is_err());
    let form =
        BatchOutForm { kind: BatchTimeKind::Whole, minutes: "20".into(), count: "4".into(), not_clean: Vec::new() };
    let step = take_out(&press.shop(), batch, &form, None).unwrap();
    press.all(MINUTE, &step.facts);
    assert!(near(bath_view(&press.shop(), 0, wall(HOUR)).done[0].minutes.unwrap(), 5.0));
    press.all(2 * MINUTE, &step.undo);
    assert!(bath_view(&press.shop(), 0, wall(HOUR)).done.is_empty());
}

fn sheet(threads: u16) -> MeshSheet {
    MeshSheet { thread_um: Some(64), ..MeshSheet::of_count(MeshCount::PerInch(threads)) }
}

/// A point lamp, an emulsion, and an exposure found for mesh 156 through the form.
fn exposed(kind: LampKind) -> (Press, Subject, Subject) {
    let mut press = Press::new();
    let (lamp, blue) = (press.id(), press.id());
    let form = LampForm { name: "Bulb".into(), kind, distance: "20".into() };
    press.say(lamp, Fact::Stencil(StencilFact::Lamp(form.check(Units::UsCustomary, None).unwrap())));
    let form = EmulsionForm { name: "Harbour blue".into(), family: Some(Family::Diazo), solids: String::new() };
    press.say(blue, Fact::Stencil(StencilFact::Emulsion(form.check(None).unwrap())));
    (press, lamp, blue)
}

fn find(press: &mut Press, seconds: u64, form: &ExposureForm) -> Subject {
    let fact = form.check(&press.shop(), None, Units::UsCustomary).unwrap();
    let id = press.id();
    press.say_at(seconds, id, Fact::Stencil(fact));
    id
}

#[test]
fn the_desk_begins_with_what_the_shop_exposed_last() {
    let (mut press, lamp, blue) = exposed(LampKind::Point);
    let first = ExposureChoice { emulsion: Some(blue), lamp: Some(lamp), ..ExposureChoice::default() };
    assert_eq!(ExposureChoice::from_latest(&press.shop()), first);
    assert_eq!(first.query(), None);
    press.frame("3", vec![ScreenField::Mesh(Some(sheet(230)))]);
    assert_eq!(ExposureChoice::from_latest(&press.shop()).cloth, Some(sheet(230).cloth()));
    let form = ExposureForm {
        emulsion: Some(blue),
        lamp: Some(lamp),
        mesh: "156".into(),
        thread: "64".into(),
        coats_print: "2".into(),
        coats_squeegee: "1".into(),
        kind: ExposureMethodKind::Practice,
        time: "90".into(),
        ..ExposureForm::default()
    };
    find(&mut press, 60, &form);
    let shop = press.shop();
    let pick = ExposureChoice::from_latest(&shop);
    assert_eq!((pick.cloth, pick.coats), (Some(sheet(156).cloth()), Some(Coats { print: 2, squeegee: 1 })));
    assert_eq!(known_cloths(&shop), [sheet(156).cloth(), sheet(230).cloth()]);
    assert_eq!(known_coats(&shop), [Coats { print: 2, squeegee: 1 }]);
    press.say(lamp, Fact::Deleted);
    assert_eq!(pick.without_deleted(&press.shop()).lamp, None);
}

#[test]
fn a_test_is_written_down_for_what_was_picked() {
    let (mut press, lamp, blue) = exposed(LampKind::Point);
    let cloth = MeshCloth { dyed: true, ..sheet(156).cloth() };
    let coats = Some(Coats { print: 2, squeegee: 1 });
    let pick = ExposureChoice { emulsion: Some(blue), lamp: Some(lamp), cloth: Some(cloth), coats };
    let form = ExposureForm { time: "60".into(), solid: "7".into(), ..ExposureForm::for_choice(&pick, Units::Metric) };
    let id = find(&mut press, 60, &form);
    let shop = press.shop();
    let fact = &shop.exposure_log.exposure(id).unwrap().fact;
    assert_eq!((fact.cloth, fact.coats, fact.emulsion, fact.lamp), (cloth, coats, blue, lamp));
    // Back from twenty inches to thirty: (30/20)² times as long, by the inverse-square law.
    let far = LampForm { name: "Bulb".into(), kind: LampKind::Point, distance: "30".into() };
    let fields = far.check(Units::UsCustomary, shop.exposure_log.lamp(lamp)).unwrap();
    press.say(lamp, Fact::Stencil(StencilFact::Lamp(fields)));
    let form = ExposureForm::for_other_distance(&pick, fact, Units::UsCustomary);
    let found = form.preview(&press.shop(), None, Units::UsCustomary).unwrap().unwrap();
    assert!(near(found.time.seconds(), 60.0 * 2.25));
    assert_eq!(ExposureForm::for_choice(&ExposureChoice::default(), Units::Metric).per, Units::Metric);
}

#[test]
fn a_screen_brings_its_own_mesh_coats_and_emulsion() {
    let (mut press, lamp, blue) = exposed(LampKind::Point);
    let green = press.id();
    let form = EmulsionForm { name: "Marsh green".into(), family: Some(Family::Diazo), ..EmulsionForm::default() };
    press.say(green, Fact::Stencil(StencilFact::Emulsion(form.check(None).unwrap())));
    let screen = press.frame(
        "3",
        vec![
            ScreenField::Mesh(Some(sheet(230))),
            ScreenField::Emulsion("marsh GREEN ".into()),
            ScreenField::Coats(Some(Coats { print: 1, squeegee: 1 })),
        ],
    );
    let plain = press.frame("4", Vec::new());
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
fn the_preview_tells_by_what_the_tests_time_is_multiplied() {
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
    let factor = form.preview(&shop, None, Units::UsCustomary).unwrap().unwrap().factor.unwrap();
    assert!((factor - 1.995_262).abs() < 1e-6);
    // From ten inches to twenty is four times the time, by the inverse-square law.
    let moved = ExposureForm { kind: ExposureMethodKind::Distance, from: "10".into(), ..form.clone() };
    let found = moved.preview(&shop, None, Units::UsCustomary).unwrap().unwrap();
    assert!(near(found.factor.unwrap(), 4.0));
    assert!(matches!(found.found, ExposureMethod::Distance { .. }));
    let known = ExposureForm { kind: ExposureMethodKind::Practice, ..form };
    let found = known.preview(&shop, None, Units::UsCustomary).unwrap().unwrap();
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
        let refused = form.preview(&press.shop(), None, Units::UsCustomary).unwrap_err();
        assert_eq!(refused, ExposureRefused::Distance(law));
    }
}

#[test]
fn a_reading_of_the_room_says_something_for_two_hours() {
    let (mut press, _, blue) = exposed(LampKind::Point);
    let damp = |press: &Press, seconds| room_humidity(&press.shop(), blue, wall(seconds)).unwrap();
    assert_eq!(damp(&press, 0).note, HumidityEffect::NotRead);
    let reading = press.id();
    let fact = HeatFact::RoomRead { temperature: Temperature::from_fahrenheit(80.0), humidity: 62, by: None };
    press.say_at(60, reading, Fact::Heat(fact));
    assert_eq!((damp(&press, 2 * HOUR).note, damp(&press, 2 * HOUR).humidity), (HumidityEffect::MoreTime, Some(62)));
    assert_eq!(damp(&press, 2 * HOUR + 120).note, HumidityEffect::NotRead);
    assert_eq!(room_humidity(&press.shop(), reading, wall(120)), None);
}

#[test]
fn meshes_are_listed_once_with_the_frames_they_are_on() {
    let mut press = Press::new();
    let full = MeshSheet { opening_um: Some(95), thickness_um: Some(100), ..sheet(156) };
    press.frame("9", vec![ScreenField::Mesh(Some(full))]);
    press.frame("8", vec![ScreenField::Mesh(Some(full))]);
    press.frame("1", vec![ScreenField::Mesh(Some(sheet(110)))]);
    press.frame("2", Vec::new());
    let rows = mesh_rows(&press.shop());
    assert_eq!(rows.iter().map(|row| row.labels.join(" ")).collect::<Vec<_>>(), ["1", "8 9"]);
    assert_eq!(rows.iter().map(lastpull_core::screen::MeshRow::is_full).collect::<Vec<_>>(), [false, true]);
    let home = exposure_home(&press.shop(), wall(60));
    assert_eq!((home.meshes, home.full_sheets, home.trend), (2, 1, None));
}

#[test]
fn the_way_in_counts_what_waits_and_what_lies_in_the_bath() {
    let (mut press, ..) = two_in();
    press.waits("9");
    let home = exposure_home(&press.shop(), wall(HOUR));
    assert_eq!((home.in_bath, home.waiting, home.exposures), (2, 1, 0));
}

#[test]
fn dyed_mesh_is_another_mesh_to_pick() {
    let mut press = Press::new();
    press.frame("1", vec![ScreenField::Mesh(Some(sheet(156)))]);
    press.frame("2", vec![ScreenField::Mesh(Some(MeshSheet { dyed: true, ..sheet(156) }))]);
    let dyed: Vec<bool> = known_cloths(&press.shop()).iter().map(|cloth: &MeshCloth| cloth.dyed).collect();
    assert_eq!(dyed, [false, true]);
}
