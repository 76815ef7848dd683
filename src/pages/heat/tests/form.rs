//! The form of a wash, crock or stretch test.

use crate::components::{Choice, NotHere, Page};
use crate::forms::{Field, FormSubmit, Kind, SaveBar, TextArea, bound, delete, set};
use crate::i18n::{self, Term};
use crate::pages::help::help;
use crate::pages::photos::Photos;
use crate::platform::ids;
use crate::route::{HeatRoute, Route};
use crate::store::Store;
use lastpull_core::facts::Fact;
use lastpull_core::heat::{
    CureTest, HeatFact, HeatSettings, TestForm, TestKind, TestMethod, TestResult, heat_settings,
};
use lastpull_core::ids::RunId;
use lastpull_core::ids::Subject;
use lastpull_core::job::Fabric;
use leptos::prelude::*;

const LIST: Route = Route::Heat(HeatRoute::Tests);

/// A new test; of what a run prints, if opened from a run.
#[component]
pub fn NewTestPage(#[prop(into)] run: Option<RunId>) -> impl IntoView {
    let store = Store::from_context();
    let by = store.operator().unwrap_or_default();
    let (form, settings) = store.shop.with_untracked(|shop| {
        let found = run.and_then(|id| shop.run(id).map(|run| (id, run)));
        let ink = found.map(|(_, run)| run.ink.clone()).unwrap_or_default();
        let lot = found.and_then(|(_, run)| run.lot).and_then(|lot| shop.lot(lot));
        let fabric = lot.map(|lot| lot.fabric).unwrap_or_default();
        (TestForm { ink, fabric, by, ..TestForm::default() }, found.and_then(|(id, _)| heat_settings(shop, id)))
    });
    fields(store, ids::new_id(), None, form, settings, run.map_or(LIST, Route::Run))
}

/// A recorded test.
#[component]
pub fn TestPage(id: Subject) -> impl IntoView {
    let store = Store::from_context();
    let before = store.shop.with_untracked(|shop| shop.heat.test(id).filter(|test| !test.deleted).cloned());
    let Some(before) = before else { return view! { <NotHere/> }.into_any() };
    let form = TestForm::of(&before);
    fields(store, id, Some(before), form, None, LIST).into_any()
}

/// The form. A new test records the garment's heat settings; a recorded one has them already.
fn fields(
    store: Store,
    id: Subject,
    before: Option<CureTest>,
    start: TestForm,
    settings: Option<HeatSettings>,
    up: Route,
) -> AnyView {
    let home_washes = before.as_ref().map_or(0, CureTest::home_washes);
    let went_through = before.as_ref().map(|test| test.settings.clone()).or(settings.clone());
    let is_new = before.is_none();
    let form = RwSignal::new(start);
    let submit = FormSubmit::new(Box::new(move || {
        let fields = form.with(|form| form.check(settings.clone(), before.as_ref()))?;
        Ok(set(id, fields, |fields| Fact::Heat(HeatFact::TestSet(fields))))
    }))
    .with_draft(form);
    let problems = submit.problems;
    let kind = Signal::derive(move || form.with(|form| form.kind));
    let kinds = [TestKind::Wash, TestKind::Crock, TestKind::Stretch];
    let kinds = kinds.map(|kind| (kind, i18n::test_kind_of(kind).to_owned())).to_vec();
    let results = [TestResult::Waiting, TestResult::Pass, TestResult::Fail];
    let results = results.map(|result| (result, i18n::test_result_of(result).to_owned())).to_vec();
    let fabrics = Fabric::ALL.map(|fabric| (fabric, i18n::fabric(fabric).to_owned())).to_vec();
    let title = if is_new { i18n::test_new() } else { i18n::test_edit() };
    // After a new test is saved, its photos are taken next.
    let then = if is_new { Route::Heat(HeatRoute::Test(id)) } else { up };
    view! {
        <Page title=Signal::derive(move || title.to_owned()) up class="form">
            <form on:submit=move |event| submit.submit(store, &event, then) novalidate=true>
                {submit.draft_line()}
                <Choice label=i18n::test_result() name="result" options=results value=Signal::derive(move || form.with(|form| form.result)) on_pick=Callback::new(move |result| form.update(|form| form.result = result))/>
                <Field label=i18n::item_ink() kind=Kind::Words bound=bound!(form.ink) problems/>
                <Choice label=i18n::lot_fabric() name="fabric" options=fabrics value=Signal::derive(move || form.with(|form| form.fabric)) on_pick=Callback::new(move |fabric| form.update(|form| form.fabric = fabric))/>
                <Choice label=i18n::test_kind() name="kind" options=kinds value=kind on_pick=Callback::new(move |kind| form.update(|form| {
                    form.kind = kind;
                    form.method = TestMethod::Own;
                }))/>
                {move || view! { <TestMethodFields kind=kind.get() form/> }}
                <Field label=i18n::test_method_note() kind=Kind::Words bound=bound!(form.method_note) problems hint=i18n::test_method_note_hint()/>
                <div class="field-pair">
                    {move || view! { <Field label=times_label(kind.get()) kind=Kind::Whole bound=bound!(form.times) problems help=help(term_of(kind.get()))/> }}
                    <Field label=i18n::test_grade() kind=Kind::Decimal bound=bound!(form.grade) problems hint=i18n::test_grade_hint() help=help(Term::GrayScale)/>
                </div>
                <Field label=i18n::test_by() kind=Kind::Words bound=bound!(form.by) problems/>
                <TextArea label=i18n::notes() bound=bound!(form.notes) problems/>
                {(home_washes > 0).then(|| view! { <p class="quiet-line">{i18n::test_home_washes(u32::from(home_washes))}</p> })}
                {went_through.map(|settings| view! { <p class="quiet-line" id="went-through">{i18n::test_went_through()}": "{settings_line(&settings)}</p> })}
                <SaveBar problems busy=submit.busy/>
            </form>
            {(!is_new).then(|| view! {
                <section class="card heat-photos"><h2>{i18n::test_photos()}</h2><Photos subject=id/></section>
                <button type="button" class="button danger" id="delete" on:click=move |_| delete(store, id, i18n::test_deleted(), LIST)>{i18n::delete()}</button>
            })}
        </Page>
    }.into_any()
}

/// The test method. Renders nothing if there is only one.
#[component]
fn TestMethodFields(kind: TestKind, form: RwSignal<TestForm>) -> impl IntoView {
    let methods = TestMethod::of(kind);
    if methods.len() < 2 {
        return ().into_any();
    }
    let options = methods.iter().map(|method| (*method, i18n::test_method_of(*method).to_owned())).collect();
    let value = Signal::derive(move || form.with(|form| form.method));
    view! { <Choice label=i18n::test_method() name="method" options value on_pick=Callback::new(move |method| form.update(|form| form.method = method))/> }.into_any()
}

fn times_label(kind: TestKind) -> &'static str {
    match kind {
        TestKind::Wash => i18n::test_times_wash(),
        TestKind::Crock => i18n::test_times_rub(),
        TestKind::Stretch => i18n::test_times_stretch(),
    }
}

fn term_of(kind: TestKind) -> Term {
    match kind {
        TestKind::Wash => Term::WashTest,
        TestKind::Crock => Term::RubTest,
        TestKind::Stretch => Term::StretchTest,
    }
}

/// The heat settings of the garment, in one line.
fn settings_line(settings: &HeatSettings) -> String {
    let mut parts: Vec<String> = settings.temperature.map(i18n::temperature).into_iter().collect();
    parts.extend(settings.offset.map(i18n::dryer_error));
    parts.extend(settings.dwell.map(i18n::seconds));
    parts.push(i18n::passes_n(u32::from(settings.passes.max(1))));
    parts.extend(settings.flash.map(|flash| i18n::flash_for(i18n::seconds(flash.seconds))));
    parts.join(" · ")
}
