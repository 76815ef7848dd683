//! The screen inventory: where screens stand, how long they have lain, what they carry, and what the
//! day's runs still need burned. Step times and limits are our own or common practice; the tests set theirs.

use crate::shop::{DAY, HOUR, Press, clock, wall};
use lastpull_core::facts::{Fact, RunField};
use lastpull_core::form::FormProblem;
use lastpull_core::ids::RunId;
use lastpull_core::ids::Subject;
use lastpull_core::job::{Fabric, Size};
use lastpull_core::journal::JournalFact;
use lastpull_core::plan::RunFit;
use lastpull_core::screen::{
    AgeLimits, AgeWarning, BurnStep, Coats, MeshCount, MeshSheetForm, ScreenFact, ScreenField, ScreenFilter,
    ScreenForm, ScreenSettingsForm, ScreenState, StepTimes, burn_steps, facts_on_end, facts_on_finish, facts_on_start,
    match_labels, move_facts, new_labels, next_states, not_ready, off_press, readiness, screen_board, screen_card,
    screen_needs, sheet_to_copy, should_keep_ready, step_done, tick_facts, undo_facts, undo_latest, undo_step_fact,
};
use lastpull_core::shop::Shop;
use lastpull_core::units::{Seconds, Units};
use uuid::Uuid;

const MINUTE: u64 = 60;

trait ScreenRoom {
    fn screen(&mut self, label: &str) -> Subject;
    fn to(&mut self, seconds: u64, screen: Subject, state: ScreenState) -> &mut Self;
    fn all(&mut self, facts: Vec<(Subject, Fact)>) -> &mut Self;
    fn times(&mut self) -> &mut Self;
    fn named(&mut self, run: RunId, labels: &str) -> &mut Self;
}

impl ScreenRoom for Press {
    fn screen(&mut self, label: &str) -> Subject {
        let id = self.id();
        self.say(id, Fact::Screen(ScreenFact::Set(vec![ScreenField::Label(label.into())])));
        id
    }

    fn to(&mut self, seconds: u64, screen: Subject, state: ScreenState) -> &mut Self {
        self.say_at(seconds, screen, Fact::Screen(ScreenFact::Moved { to: state, by: Some("Ines".into()) }))
    }

    fn all(&mut self, facts: Vec<(Subject, Fact)>) -> &mut Self {
        for (subject, fact) in facts {
            assert!(fact.in_bounds(), "{fact:?}");
            self.say(subject, fact);
        }
        self
    }

    /// Reclaim 20, coat 10, dry 60, expose 5, wash and dry 30, tape 5 minutes.
    fn times(&mut self) -> &mut Self {
        let minutes = |n: f64| Seconds::new(n * 60.0);
        let times = StepTimes {
            reclaim: minutes(20.0),
            coat: minutes(10.0),
            dry: minutes(60.0),
            expose: minutes(5.0),
            wash_dry: minutes(30.0),
            tape: minutes(5.0),
        };
        self.say(Uuid::nil(), Fact::Screen(ScreenFact::StepTimes(times)))
    }

    fn named(&mut self, run: RunId, labels: &str) -> &mut Self {
        self.set_up(run, vec![RunField::Screens(labels.into())])
    }
}

fn labels(shop: &Shop, line: &str) -> Vec<(String, bool)> {
    match_labels(shop, line).into_iter().map(|found| (found.label, found.screen.is_some())).collect()
}

#[test]
fn a_runs_line_is_read_as_labels_however_they_are_parted() {
    let mut press = Press::new();
    for label in ["A3", "A4", "Frame 3", "Frame 3 wide"] {
        press.screen(label);
    }
    let shop = press.shop();
    let found = |label: &str| (label.to_owned(), true);
    for line in ["A3, A4", "a3+a4", " A3  a4 ", "A3/A4;a3"] {
        assert_eq!(labels(&shop, line), [found("A3"), found("A4")], "{line}");
    }
    assert_eq!(labels(&shop, "frame 3 WIDE, frame 3"), [found("Frame 3 wide"), found("Frame 3")]);
    assert_eq!(labels(&shop, "A3, B9"), [found("A3"), ("B9".into(), false)]);
    assert_eq!(labels(&shop, " , "), []);
}

#[test]
fn the_board_groups_by_state_and_counts_what_a_filter_hides() {
    let mut press = Press::new();
    let run = press.ten_minutes(None);
    let [a2, a10, b1] = ["A2", "A10", "B1"].map(|label| press.screen(label));
    press.named(run, "B1");
    press.to(60, a10, ScreenState::Coated).to(90, b1, ScreenState::Ready);
    let board = screen_board(&press.shop(), &ScreenFilter::default(), wall(100));
    let states: Vec<_> = board.groups.iter().map(|group| (group.state, group.count)).collect();
    assert_eq!(states, [(ScreenState::Clean, 1), (ScreenState::Coated, 1), (ScreenState::Ready, 1)]);
    assert_eq!((board.total, board.shown, board.warned), (3, 3, 0));
    let ready = &board.groups[2].rows[0];
    assert_eq!((ready.id, ready.age, ready.assigned[0].run), (b1, 10_000, run));
    assert_eq!(ready.assigned[0].title, "Ten");

    let only = ScreenFilter { state: Some(ScreenState::Clean), ..ScreenFilter::default() };
    let board = screen_board(&press.shop(), &only, wall(100));
    assert_eq!((board.total, board.shown, board.groups.len()), (3, 1, 3));
    assert_eq!(board.groups[0].rows[0].id, a2);
    let search = ScreenFilter { search: "ten b1".into(), ..ScreenFilter::default() };
    assert_eq!(screen_board(&press.shop(), &search, wall(100)).shown, 1, "by its label and its job");
}

#[test]
fn moves_offered_for_a_selection_are_those_all_of_it_can_make() {
    let mut press = Press::new();
    let [clean, coated, ready] = ["A", "B", "C"].map(|label| press.screen(label));
    press.to(1, coated, ScreenState::Coated).to(2, ready, ScreenState::Ready);
    let shop = press.shop();
    assert_eq!(next_states(&shop, &[clean]), [ScreenState::Coated, ScreenState::Failed]);
    assert_eq!(next_states(&shop, &[coated, ready]), [ScreenState::ToReclaim, ScreenState::Failed]);
    assert_eq!(next_states(&shop, &[]), []);
    let facts = move_facts(&shop, &[coated, ready, coated], ScreenState::ToReclaim, Some("Moss"));
    assert_eq!(facts.len(), 2, "each once");
    press.say_at(3, clean, Fact::Deleted).all(facts);
    let shop = press.shop();
    assert!(shop.screens.iter().all(|(_, screen)| screen.state == ScreenState::ToReclaim));
    assert_eq!(shop.screens.get(ready).unwrap().log.last().unwrap().by.as_deref(), Some("Moss"));
    assert_eq!(move_facts(&shop, &[clean, ready], ScreenState::ToReclaim, None), [], "deleted, and there already");
}

#[test]
fn a_move_taken_back_leaves_the_screen_as_it_stood_and_as_old_as_it_was() {
    let mut press = Press::new();
    let run = press.ten_minutes(None);
    let [coated, ready] = ["A", "B"].map(|label| press.screen(label));
    let art = vec![ScreenField::Run(Some(run)), ScreenField::Colour("red".into())];
    press.say(ready, Fact::Screen(ScreenFact::Set(art)));
    press.to(0, coated, ScreenState::Coated).to(0, ready, ScreenState::Exposed);
    press.say_at(10, coated, step_done(BurnStep::Dry, None));
    press.to(DAY, ready, ScreenState::Ready);
    let before = press.shop();
    let cards = |shop: &Shop| [coated, ready].map(|id| shop.screens.live(id).unwrap().clone());

    for (day, ids, to) in [(2, vec![coated, ready], ScreenState::ToReclaim), (3, vec![ready], ScreenState::Clean)] {
        let shop = press.shop();
        let facts = move_facts(&shop, &ids, to, Some("Moss"));
        let back = undo_facts(&shop, &facts);
        let undone = back.iter().filter(|(_, fact)| matches!(fact, Fact::Screen(ScreenFact::Undone { .. })));
        assert_eq!(undone.count(), ids.len());
        press.say_at(day * DAY, Uuid::nil(), Fact::ShopNamed("Two Kettles".into())).all(facts);
        assert_ne!(cards(&press.shop()), cards(&before));
        press.say_at(day * DAY + 5, Uuid::nil(), Fact::ShopNamed("Two Kettles".into())).all(back);
        assert_eq!(cards(&press.shop()), cards(&before));
    }
    let board = screen_board(&press.shop(), &ScreenFilter::default(), wall(30 * DAY));
    assert_eq!(board.groups[0].rows[0].warning, Some(AgeWarning::Coated { days: 30, limit: 28 }), "its age counts on");
}

#[test]
fn the_latest_change_can_be_taken_back_long_after() {
    let mut press = Press::new();
    let screen = press.screen("A");
    assert!(undo_latest(press.shop().screens.live(screen).unwrap()).is_none(), "nothing happened to it yet");
    press.to(5, screen, ScreenState::Coated).to(DAY, screen, ScreenState::Exposed);
    let shop = press.shop();
    let (change, fact) = undo_latest(shop.screens.live(screen).unwrap()).unwrap();
    assert_eq!(change.at, wall(DAY));
    press.say_at(2 * DAY, screen, fact);
    let shop = press.shop();
    let screen = shop.screens.live(screen).unwrap();
    assert_eq!((screen.state, screen.since, screen.exposed), (ScreenState::Coated, wall(5), None));
    assert_eq!(screen.log.len(), 1);
}

#[test]
fn a_step_ticked_for_a_run_puts_its_art_on_the_screen_and_reclaiming_takes_it_off() {
    let mut press = Press::new();
    let run = press.ten_minutes(None);
    let [a, b] = ["A", "B"].map(|label| press.screen(label));
    press.to(1, a, ScreenState::Coated).to(1, b, ScreenState::Coated);
    let facts = tick_facts(&press.shop(), &[a, b], BurnStep::Expose, Some(run), Some("Ines"));
    press.all(facts);
    let carries = |press: &Press, id| press.shop().screens.live(id).map(|screen| (screen.state, screen.run));
    assert_eq!(carries(&press, a), Some((ScreenState::Exposed, Some(run))));
    press.to(2, b, ScreenState::ToReclaim);
    let facts = tick_facts(&press.shop(), &[b], BurnStep::Reclaim, Some(run), None);
    press.all(facts);
    assert_eq!(carries(&press, b), Some((ScreenState::Clean, None)));
}

#[test]
fn a_tick_taken_back_takes_the_later_ones_with_it_and_the_age_counts_on() {
    let mut press = Press::new();
    let screen = press.screen("A");
    for (at, step) in [(10, BurnStep::Coat), (20, BurnStep::Dry), (30, BurnStep::Expose), (40, BurnStep::WashDry)] {
        press.say_at(at, screen, step_done(step, None));
    }
    let back = |press: &Press, step| {
        let shop = press.shop();
        undo_step_fact(shop.screens.live(screen).unwrap(), step, wall(DAY))
    };
    let undone = |to, since: u64, dry: Option<u64>, exposed: Option<u64>| {
        Fact::Screen(ScreenFact::Undone { to, since: wall(since), dry: dry.map(wall), exposed: exposed.map(wall) })
    };
    assert_eq!(back(&press, BurnStep::WashDry), undone(ScreenState::Exposed, 30, None, Some(30)));
    assert_eq!(back(&press, BurnStep::Expose), undone(ScreenState::Coated, 10, Some(20), None));
    assert_eq!(back(&press, BurnStep::Dry), undone(ScreenState::Coated, 10, None, None));
    assert_eq!(back(&press, BurnStep::Coat), undone(ScreenState::Clean, 0, None, None));
    // Never ticked, but passed over: nothing tells since when.
    assert_eq!(back(&press, BurnStep::Reclaim), undone(ScreenState::ToReclaim, DAY, None, Some(30)));
    let fact = back(&press, BurnStep::Dry);
    press.say_at(DAY, screen, fact);
    let card = screen_card(&press.shop(), screen, wall(DAY)).unwrap();
    assert_eq!((card.next_step, card.row.since, card.screen.log.len()), (Some(BurnStep::Dry), wall(10), 1));
}

#[test]
fn several_screens_are_added_with_one_form() {
    let mut press = Press::new();
    press.screen("A2");
    let form = ScreenForm {
        label: "A1-A4".into(),
        mesh: MeshSheetForm { count: "156".into(), thickness: "98".into(), ..MeshSheetForm::default() },
        tension: "22".into(),
        ..ScreenForm::default()
    };
    let id = |index: usize| Uuid::from_u128(0x900 + index as u128);
    assert_eq!(
        new_labels(&press.shop(), &form.label),
        (vec!["A1".into(), "A3".into(), "A4".into()], vec!["A2".into()])
    );
    assert_eq!(form.check_new(&press.shop(), ScreenState::Clean, None, id).unwrap_err()["label"], FormProblem::Taken);
    let wrong = ScreenForm { label: "1-99".into(), tension: "x".into(), ..form.clone() };
    let problems = wrong.check_new(&press.shop(), ScreenState::Clean, None, id).unwrap_err();
    assert!(matches!(problems["label"], FormProblem::TooMany { most: 60 }) && problems.contains_key("tension"));

    let form = ScreenForm { label: "A3, A4, B1-2".into(), ..form };
    let facts = form.check_new(&press.shop(), ScreenState::Coated, Some("Ines"), id).unwrap();
    press.all(facts);
    let shop = press.shop();
    let board = screen_board(&shop, &ScreenFilter::default(), wall(1));
    let coated = &board.groups[1];
    assert_eq!((coated.state, coated.count), (ScreenState::Coated, 4));
    let labels: Vec<&str> = coated.rows.iter().map(|row| row.label.as_str()).collect();
    assert_eq!(labels, ["A3", "A4", "B1", "B2"]);
    assert!(coated.rows.iter().all(|row| row.tension == Some(220) && row.mesh.unwrap().thickness_um == Some(98)));
    // Sent a second time with the same ids, they are still the same four.
    assert_eq!(form.check_new(&shop, ScreenState::Coated, None, id).map(|facts| facts.len()), Ok(0));
}

#[test]
fn the_data_sheet_of_a_mesh_is_offered_for_another_screen_of_it() {
    let mut press = Press::new();
    let new = press.id();
    let sheet = MeshSheetForm { count: "156".into(), thickness: "98".into(), ..MeshSheetForm::default() };
    let form = ScreenForm { label: "A".into(), mesh: sheet.clone(), ..ScreenForm::default() };
    let facts = form.check(&press.shop(), new).unwrap();
    press.all(facts);
    let shop = press.shop();
    let typed = |count: &str| MeshSheetForm { count: count.into(), ..MeshSheetForm::default() };
    assert_eq!(sheet_to_copy(&shop, &typed("156")).unwrap().thickness_um, Some(98));
    assert_eq!(sheet_to_copy(&shop, &typed("230")), None, "another mesh");
    assert_eq!(sheet_to_copy(&shop, &sheet), None, "it says so itself");
}

#[test]
fn a_clean_screen_carries_nothing() {
    let mut press = Press::new();
    let run = press.ten_minutes(None);
    let screen = press.screen("A");
    press.say(
        screen,
        Fact::Screen(ScreenFact::Set(vec![ScreenField::Run(Some(run)), ScreenField::Colour("red".into())])),
    );
    press.to(5, screen, ScreenState::ToReclaim);
    let facts = move_facts(&press.shop(), &[screen], ScreenState::Clean, None);
    press.all(facts);
    let shop = press.shop();
    let screen = shop.screens.live(screen).unwrap();
    assert_eq!((screen.run, screen.colour.as_str(), screen.exposed), (None, "", None));
}

#[test]
fn a_deleted_screen_comes_back_as_it_was_even_when_its_deletion_arrived_first() {
    let mut press = Press::new();
    let screen = press.screen("A");
    press.to(5, screen, ScreenState::Coated).say_at(6, screen, Fact::Deleted);
    assert_eq!(screen_card(&press.shop(), screen, wall(7)), None);
    press.say_at(8, screen, Fact::Restored);
    assert_eq!(screen_card(&press.shop(), screen, wall(9)).unwrap().screen.state, ScreenState::Coated);

    let mut press = Press::new();
    let id = press.id();
    press.say(id, Fact::Deleted);
    press.say(id, Fact::Screen(ScreenFact::Set(vec![ScreenField::Label("A".into())])));
    assert_eq!(press.shop().screens.iter().count(), 0);
}

#[test]
fn coated_and_exposed_stock_is_warned_of_after_the_shops_own_days() {
    let mut press = Press::new();
    let [coated, exposed] = ["A", "B"].map(|label| press.screen(label));
    let limits = AgeLimits { coated: 3, exposed: 5 };
    press.say(Uuid::nil(), Fact::Screen(ScreenFact::AgeLimits(limits)));
    press.to(0, coated, ScreenState::Coated).to(0, exposed, ScreenState::Exposed);
    press.to(DAY, exposed, ScreenState::Ready);
    let warnings = |seconds: u64| -> Vec<Option<AgeWarning>> {
        let board = screen_board(&press.shop(), &ScreenFilter::default(), wall(seconds));
        board.groups.iter().flat_map(|group| &group.rows).map(|row| row.warning).collect()
    };
    assert_eq!(warnings(3 * DAY - 1), [None, None]);
    assert_eq!(warnings(3 * DAY), [Some(AgeWarning::Coated { days: 3, limit: 3 }), None]);
    assert_eq!(warnings(5 * DAY)[1], Some(AgeWarning::Exposed { days: 5, limit: 5 }), "counted from its exposure");
    let filter = ScreenFilter { warned: true, ..ScreenFilter::default() };
    assert_eq!(screen_board(&press.shop(), &filter, wall(4 * DAY)).shown, 1);
}

#[test]
fn a_label_is_of_one_screen_only_until_that_one_is_deleted() {
    let mut press = Press::new();
    let first = press.screen("A 3");
    let new = press.id();
    let form = ScreenForm { label: "a  3".into(), ..ScreenForm::default() };
    assert_eq!(form.check(&press.shop(), new).unwrap_err()["label"], FormProblem::Taken);
    assert_eq!(ScreenForm::default().check(&press.shop(), new).unwrap_err()["label"], FormProblem::Missing);
    assert!(form.check(&press.shop(), first).is_ok(), "it may keep its own");
    press.say(first, Fact::Deleted);
    assert!(form.check(&press.shop(), new).is_ok());
}

#[test]
fn a_screen_reads_back_as_it_was_typed_and_left_alone_records_nothing() {
    let mut press = Press::new();
    let id = press.id();
    let form = ScreenForm {
        label: "A3".into(),
        mesh: MeshSheetForm { count: "156".into(), per: Units::UsCustomary, ..MeshSheetForm::default() },
        tension: "24,5".into(),
        emulsion: "Dual cure".into(),
        coats_print: "1".into(),
        coats_squeegee: "2".into(),
        colour: "white".into(),
        run: None,
        notes: "corner dent".into(),
    };
    let facts = form.check(&press.shop(), id).unwrap();
    press.all(facts);
    let shop = press.shop();
    let screen = shop.screens.live(id).unwrap();
    assert_eq!(screen.tension, Some(245));
    assert_eq!(screen.coats, Some(Coats { print: 1, squeegee: 2 }));
    assert_eq!(screen.mesh.unwrap().count, MeshCount::PerInch(156));
    let again = ScreenForm::of(screen);
    assert_eq!(again, ScreenForm { tension: "24.5".into(), ..form });
    assert_eq!(again.check(&shop, id), Ok(vec![]));
    let wrong = ScreenForm { tension: "tight".into(), coats_print: "1.5".into(), ..again };
    let problems = wrong.check(&shop, id).unwrap_err();
    assert!(problems.contains_key("tension") && problems.contains_key("coats_print") && problems.len() == 2);
}

#[test]
fn the_screen_rooms_settings_record_only_what_changed() {
    let mut press = Press::new();
    let mut form = ScreenSettingsForm::of(&press.shop());
    assert_eq!(form.check(&press.shop()), Ok(vec![]));
    form.dry = "45".into();
    let facts = form.check(&press.shop()).unwrap();
    assert_eq!(facts.len(), 1);
    press.all(facts);
    assert_eq!(press.shop().screens.times.of(BurnStep::Dry), 45 * 60_000);
    form.coated_days = "0".into();
    form.tape = "soon".into();
    assert_eq!(form.check(&press.shop()).unwrap_err().len(), 2);
}

#[test]
fn each_step_ticked_leaves_less_to_do_and_ticking_can_be_taken_back() {
    let mut press = Press::new();
    press.times();
    let screen = press.screen("A");
    let left = |press: &Press, seconds: u64| -> u64 {
        let shop = press.shop();
        let steps = burn_steps(shop.screens.live(screen).unwrap(), &shop.screens.times, wall(seconds));
        steps.iter().map(|step| step.left / 60_000).sum()
    };
    assert_eq!(left(&press, 0), 110, "all but reclaiming");
    let mut expected = 110;
    for (at, step, time) in [
        (600, BurnStep::Coat, 10),
        (1_200, BurnStep::Dry, 60),
        (1_800, BurnStep::Expose, 5),
        (2_400, BurnStep::WashDry, 30),
        (3_000, BurnStep::Tape, 5),
    ] {
        let before = left(&press, at);
        press.say_at(at, screen, step_done(step, Some("Moss")));
        expected -= time;
        assert_eq!(left(&press, at), expected, "{step:?}");
        let done = screen_card(&press.shop(), screen, wall(at)).unwrap();
        let row = done.steps.iter().find(|row| row.step == step).unwrap();
        assert_eq!((row.at, row.by.as_deref()), (Some(wall(at)), Some("Moss")));
        // Taken back in another telling of the same day, it is to do again.
        let mut other = Press::new();
        other.times();
        other.screen("A");
        for (at, done) in [
            (600, BurnStep::Coat),
            (1_200, BurnStep::Dry),
            (1_800, BurnStep::Expose),
            (2_400, BurnStep::WashDry),
            (3_000, BurnStep::Tape),
        ] {
            if done <= step {
                other.say_at(at, screen, step_done(done, None));
            }
        }
        let back = undo_latest(other.shop().screens.live(screen).unwrap()).unwrap().1;
        assert!(back.in_bounds());
        other.say_at(at, screen, back);
        let undone = screen_card(&other.shop(), screen, wall(at)).unwrap();
        assert_eq!(undone.next_step, Some(step));
        assert!(left(&other, at) >= before, "{step:?}");
    }
    assert_eq!(screen_card(&press.shop(), screen, wall(3_000)).unwrap().next_step, None);
}

#[test]
fn what_dries_has_dried_a_while_already_and_what_takes_hands_has_not_begun() {
    let mut press = Press::new();
    press.times();
    let screen = press.screen("A");
    press.to(0, screen, ScreenState::Coated);
    let left = |press: &Press, seconds: u64| {
        let shop = press.shop();
        let rows = burn_steps(shop.screens.live(screen).unwrap(), &shop.screens.times, wall(seconds));
        rows.iter().map(|row| row.left).sum::<u64>() / 60_000
    };
    assert_eq!(left(&press, 0), 100);
    assert_eq!(left(&press, 45 * MINUTE), 55);
    assert_eq!(left(&press, 5 * HOUR), 40, "dry, but not exposed by itself");
}

#[test]
fn screens_follow_their_run_onto_the_press_and_off_it() {
    let mut press = Press::new();
    let run = press.ten_minutes(None);
    let [a, b, c] = ["A", "B", "C"].map(|label| press.screen(label));
    press.named(run, "A, B, X").to(1, a, ScreenState::Ready).to(2, c, ScreenState::Ready);
    let facts = facts_on_start(&press.shop(), run, Some("Ines"));
    press.start_at(10, run).all(facts);
    let state = |press: &Press, id| press.shop().screens.get(id).unwrap().state;
    assert_eq!([a, b, c].map(|id| state(&press, id)), [ScreenState::OnPress, ScreenState::OnPress, ScreenState::Ready]);
    assert_eq!(press.shop().screens.get(a).unwrap().run, Some(run));
    assert_eq!(facts_on_start(&press.shop(), run, None), [], "said already");

    assert!(should_keep_ready(&press.shop(), run), "pieces are left");
    press.pulls(run, 20, 30, 10);
    assert!(!should_keep_ready(&press.shop(), run));
    let other = press.ten_minutes(None);
    press.named(other, "b").end_at(400, run);
    let facts = facts_on_end(&press.shop(), run, false, None);
    press.all(facts);
    assert_eq!(state(&press, a), ScreenState::ToReclaim);
    assert_eq!(state(&press, b), ScreenState::Ready, "another run wants it");

    let off = off_press(&press.shop(), run).unwrap();
    assert_eq!((off.screens, off.labels.as_str(), off.kept), (vec![a], "A", false), "the other is not ours to let go");
    let facts = move_facts(&press.shop(), &[a], ScreenState::Ready, None);
    press.all(facts);
    assert!(off_press(&press.shop(), run).unwrap().kept);
    assert_eq!(off_press(&press.shop(), other), None, "it was never on the press");
}

#[test]
fn finishing_a_job_takes_its_screens_off_the_press() {
    let mut press = Press::new();
    let run = press.ten_minutes(None);
    let screen = press.screen("A");
    press.named(run, "A").to(1, screen, ScreenState::Ready);
    let facts = facts_on_start(&press.shop(), run, None);
    press.start_at(10, run).all(facts);
    let job = press.shop().job_of(run).unwrap().0;
    let facts = facts_on_finish(&press.shop(), job, None);
    press.all(facts).say(job, Fact::JobFinished);
    assert_eq!(press.shop().screens.get(screen).unwrap().state, ScreenState::ToReclaim);
    assert_eq!(facts_on_finish(&press.shop(), job, None), []);
}

#[test]
fn a_run_says_which_of_its_screens_cannot_print_yet() {
    let mut press = Press::new();
    let run = press.ten_minutes(None);
    press.named(run, "A, B, Z");
    assert_eq!(not_ready(&press.shop(), run), None, "the shop keeps no list");
    let [a, b] = ["A", "B"].map(|label| press.screen(label));
    press.to(1, a, ScreenState::Ready).to(2, b, ScreenState::Coated);
    assert_eq!(not_ready(&press.shop(), run), Some(vec!["B".to_owned()]));
    press.to(3, b, ScreenState::OnPress);
    assert_eq!(not_ready(&press.shop(), run), Some(vec![]));
}

/// Two runs of ten minutes with ten of set-up each: the press is free for the second at 20 minutes.
fn morning() -> (Press, RunId, RunId, Subject) {
    let mut press = Press::new();
    press.times();
    let first = press.ten_minutes(None);
    let second = press.ten_minutes(None);
    let screens = ["A", "B"].map(|label| press.screen(label));
    press.named(first, "A").named(second, "B").to(0, screens[0], ScreenState::Ready);
    (press, first, second, screens[1])
}

#[test]
fn steps_are_counted_back_from_when_the_press_is_free() {
    let (mut press, _, second, screen) = morning();
    press.to(0, screen, ScreenState::Exposed);
    let needs = screen_needs(&press.shop(), clock(0));
    assert_eq!(needs.len(), 1, "the first run's screen is ready");
    let need = &needs[0];
    assert_eq!((need.run, need.wanted, need.ready), (second, wall(20 * MINUTE), wall(35 * MINUTE)));
    assert_eq!(need.late_by, 15 * 60_000);
    let rows: Vec<_> = need.steps.iter().map(|step| (step.step, step.latest, step.late)).collect();
    // Taping takes 5 minutes, washing out and drying 30 before it: begun 15 minutes ago at the latest.
    assert_eq!(rows, [(BurnStep::WashDry, wall(0) - 15 * 60_000, true), (BurnStep::Tape, wall(15 * MINUTE), false)]);
    let now: Vec<_> = need.steps.iter().map(|step| step.now.clone()).collect();
    assert_eq!(now, [vec![screen], vec![]], "it cannot be taped before it is dry");
}

#[test]
fn a_run_waits_for_its_screen_and_those_behind_it_too() {
    let (mut press, first, second, screen) = morning();
    let third = press.ten_minutes(None);
    press.to(0, screen, ScreenState::Exposed);
    let rail = press.rail(0);
    let rows: Vec<_> =
        rail.runs.iter().map(|run| (run.id, run.press_free, run.waits_until, run.set_up_begins)).collect();
    let at = |minutes: u64| wall(minutes * MINUTE);
    assert_eq!(
        rows,
        [(first, at(0), None, at(0)), (second, at(20), Some(at(35)), at(35)), (third, at(55), None, at(55))]
    );
    assert_eq!(rail.runs[1].finish.unwrap()[0], at(55));
    // In time for its turn it delays nobody.
    press.to(60, screen, ScreenState::Ready);
    let rail = press.rail(60);
    assert_eq!((rail.runs[1].waits_until, rail.runs[1].set_up_begins), (None, at(21)));
}

#[test]
fn a_screen_that_comes_too_late_for_closing_is_seen_on_the_rail() {
    let (mut press, _, second, _) = morning();
    press.closes(9 * 60 + 30);
    let rail = press.rail(0);
    assert_eq!((rail.runs[1].id, rail.runs[1].fit), (second, RunFit::MissesClosing), "110 minutes of burning first");
    assert_eq!(rail.runs[0].fit, RunFit::Fits);
}

#[test]
fn hands_take_one_screen_after_another_and_screens_dry_side_by_side() {
    let mut press = Press::new();
    press.times();
    let run = press.ten_minutes(None);
    press.screen("A");
    press.screen("B");
    press.named(run, "A B");
    let left = readiness(&press.shop(), run, wall(0)).unwrap();
    let minutes: Vec<u64> = left.steps.iter().map(|step| step.time / 60_000).collect();
    assert_eq!(minutes, [20, 60, 10, 30, 10]);
    assert!(left.steps.iter().all(|step| step.screens == 2));
    assert_eq!(left.ready, wall(130 * MINUTE));
}

#[test]
fn a_label_that_is_not_on_the_list_is_shown_but_delays_nothing() {
    let mut press = Press::new();
    let run = press.ten_minutes(None);
    press.named(run, "Z9");
    assert_eq!(screen_needs(&press.shop(), clock(0)), [], "a shop that keeps no list");
    press.screen("A");
    let needs = screen_needs(&press.shop(), clock(0));
    assert_eq!((needs[0].screens[0].label.as_str(), needs[0].screens[0].screen), ("Z9", None));
    assert_eq!((needs[0].steps.len(), needs[0].late_by), (0, 0));
    assert_eq!(press.rail(0).runs[0].waits_until, None);
}

#[test]
fn a_screen_with_another_jobs_art_is_pointed_out() {
    let mut press = Press::new();
    let earlier = press.order("Earlier", None, Fabric::Cotton, &[(Size::M, 1)]);
    let run = press.ten_minutes(None);
    let screen = press.screen("A");
    press.named(run, "A");
    press.say(screen, Fact::Screen(ScreenFact::Set(vec![ScreenField::Run(Some(earlier))])));
    press.to(1, screen, ScreenState::Exposed);
    let needs = screen_needs(&press.shop(), clock(2));
    let row = needs.iter().find(|need| need.run == run).unwrap();
    assert_eq!(row.screens[0].assigned_elsewhere, Some(earlier));
}

#[test]
fn the_log_of_a_screen_keeps_its_latest_changes_only() {
    let mut press = Press::new();
    let screen = press.screen("A");
    for round in 0..30 {
        press.to(round * 2, screen, ScreenState::Coated).to(round * 2 + 1, screen, ScreenState::Clean);
    }
    let card = screen_card(&press.shop(), screen, wall(100)).unwrap();
    assert_eq!(card.screen.log.len(), 24);
    assert_eq!(card.screen.log.last().unwrap().at, wall(59));
}
