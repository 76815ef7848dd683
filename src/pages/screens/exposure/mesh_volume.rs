//! The ink volume of a mesh, from its data sheet.

use super::ink_need::Need;
use super::mesh_fields::counted;
use crate::components::{Choice, Icon, Page};
use crate::forms::{Field, Kind, bound};
use crate::i18n::{self, Term};
use crate::pages::help::help;
use crate::route::{ExposureRoute, Route};
use crate::store::Store;
use lastpull_core::form::Problems;
use lastpull_core::screen::{MeshRow, MeshSheetForm, MeshVolume, MissingSheetValue, OpenArea, mesh_rows, mesh_volume};
use leptos::prelude::*;

/// The volume of the mesh; `None` while none is chosen or typed.
type Volume = Option<Result<MeshVolume, MissingSheetValue>>;

/// The volume of one of the shop's meshes or of a typed one, and the ink need of a run.
#[component]
pub fn MeshVolumePage() -> impl IntoView {
    let store = Store::from_context();
    let rows = store.shop.with_untracked(mesh_rows);
    let form = RwSignal::new(MeshSheetForm { per: i18n::units().length, ..MeshSheetForm::default() });
    let problems = Memo::new(move |_| form.with(MeshSheetForm::check).err().unwrap_or_default());
    let picked = RwSignal::new(rows.iter().position(MeshRow::is_full).or((!rows.is_empty()).then_some(0)));
    let sheets = StoredValue::new(rows.iter().map(|row| row.sheet).collect::<Vec<_>>());
    let volume = Memo::new(move |_| -> Volume {
        let sheet = match picked.get() {
            Some(index) => sheets.with_value(|sheets| sheets.get(index).copied()),
            None => form.with(MeshSheetForm::check).ok().flatten(),
        };
        sheet.map(|sheet| mesh_volume(&sheet))
    });
    let none = rows.is_empty();
    let labels: Vec<String> = rows.iter().map(|row| i18n::volume_on(row.labels.join(", "))).collect();
    let mut options: Vec<_> =
        rows.iter().enumerate().map(|(index, row)| (Some(index), i18n::cloth_short(&row.sheet.cloth()))).collect();
    options.push((None, i18n::exposure_other_mesh().to_owned()));
    view! {
        <Page title=Signal::derive(|| i18n::stencil_volume().to_owned()) up=Route::Exposure(ExposureRoute::Home) aside=help(Term::InkVolume) class="stencil-volume">
            <section class="card stencil-answer" id="volume" aria-live="polite">{move || volume_text(volume.get(), none)}</section>
            {(!none).then(|| view! {
                <div class="stencil-hinted">
                    <Choice label=format!("{} ({})", i18n::screen_mesh(), i18n::unit_mesh()) name="mesh" options value=picked on_pick=Callback::new(move |index| picked.set(index))/>
                    <p class="field-help">{move || picked.get().and_then(|index| labels.get(index).cloned()).map(|text| view! { <span>{text}</span> })}</p>
                </div>
            })}
            {move || picked.get().is_none().then(|| view! { <Typed form problems/> })}
            <Need volume=Memo::new(move |_| volume.get().and_then(Result::ok).map(|volume| volume.cm3_m2))/>
        </Page>
    }
}

fn volume_text(volume: Volume, none: bool) -> AnyView {
    match volume {
        None => view! { <p class="lead">{if none { i18n::volume_none() } else { i18n::volume_type_count() }}</p> }
            .into_any(),
        Some(Err(lacks)) => {
            view! { <p class="stencil-unknown" id="lacks"><Icon name="alert"/>{i18n::sheet_lacks(lacks)}</p> }
                .into_any()
        }
        Some(Ok(volume)) => {
            let percent = i18n::number(volume.open_area.share() * 100.0, 1);
            let area = match volume.open_area {
                OpenArea::Sheet(_) => i18n::volume_sheet_area(percent),
                OpenArea::FromOpening(_) => i18n::volume_own_area(percent),
            };
            let amount = i18n::number(volume.cm3_m2, 1);
            view! {
                <p class="stencil-time"><strong>{amount.clone()}</strong>" "<span>{i18n::volume_unit()}</span></p>
                <p>{i18n::volume_wet(amount)}" "{area}</p>
                <p class="muted">{i18n::volume_theory()}</p>
            }
            .into_any()
        }
    }
}

/// The form of a data sheet.
#[component]
fn Typed(form: RwSignal<MeshSheetForm>, problems: Memo<Problems>) -> impl IntoView {
    view! {
        <div class="stencil-typed">
            {counted(bound!(form.per))}
            <div class="field-pair">
                <Field label=i18n::volume_count() kind=Kind::Whole bound=bound!(form.count) problems/>
                <Field label=i18n::screen_form_thickness() kind=Kind::Whole unit=i18n::exposure_um() bound=bound!(form.thickness) problems/>
            </div>
            <div class="field-pair">
                <Field label=i18n::screen_form_open_area() kind=Kind::Decimal unit=i18n::emulsion_percent() bound=bound!(form.open_area) problems/>
                <Field label=i18n::screen_form_opening() kind=Kind::Whole unit=i18n::exposure_um() bound=bound!(form.opening) problems/>
            </div>
        </div>
    }
}
