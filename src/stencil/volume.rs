//! The ink a mesh holds, from its data sheet.

use super::StencilPlace;
use super::cloth_fields::counted;
use super::need::Need;
use crate::parts::{Choice, Field, Icon, Kind, Page, bound};
use crate::place::Place;
use crate::store::Store;
use crate::words;
use lastpull_core::job::Problems;
use lastpull_core::screen::{MeshRow, MeshSheetForm, MeshVolume, OpenArea, SheetLacks, mesh_rows, mesh_volume};
use leptos::prelude::*;

/// What is known of the mesh: none while none is picked or typed.
type Volume = Option<Result<MeshVolume, SheetLacks>>;

/// The volume of a mesh of the shop or a typed one, and what a run needs.
#[component]
pub fn VolumeScreen() -> impl IntoView {
    let store = Store::from_context();
    let rows = store.shop.with_untracked(mesh_rows);
    let form = RwSignal::new(MeshSheetForm { per: words::units(), ..MeshSheetForm::default() });
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
    let labels: Vec<String> = rows.iter().map(|row| words::volume_on(row.labels.join(", "))).collect();
    let mut options: Vec<_> =
        rows.iter().enumerate().map(|(index, row)| (Some(index), words::cloth_short(&row.sheet.cloth()))).collect();
    options.push((None, words::volume_typed().to_owned()));
    view! {
        <Page title=Signal::derive(|| words::stencil_volume().to_owned()) up=Place::Stencil(StencilPlace::Home) class="stencil-volume">
            <section class="card stencil-answer" id="volume" aria-live="polite">{move || told(volume.get(), none)}</section>
            {(!none).then(|| view! {
                <div class="stencil-hinted">
                    <Choice label=format!("{} ({})", words::screen_mesh(), words::unit_mesh()) name="mesh" options value=picked on_pick=Callback::new(move |index| picked.set(index))/>
                    <p class="field-help">{move || picked.get().and_then(|index| labels.get(index).cloned()).map(|text| view! { <span>{text}</span> })}</p>
                </div>
            })}
            {move || picked.get().is_none().then(|| view! { <Typed form problems/> })}
            <Need volume=Memo::new(move |_| volume.get().and_then(Result::ok).map(|volume| volume.cm3_m2))/>
        </Page>
    }
}

fn told(volume: Volume, none: bool) -> AnyView {
    match volume {
        None => view! { <p class="lead">{if none { words::volume_none() } else { words::volume_type_count() }}</p> }
            .into_any(),
        Some(Err(lacks)) => {
            view! { <p class="stencil-unknown" id="lacks"><Icon name="alert"/>{words::sheet_lacks(lacks)}</p> }
                .into_any()
        }
        Some(Ok(volume)) => {
            let percent = words::number(volume.open_area.share() * 100.0, 1);
            let area = match volume.open_area {
                OpenArea::Sheet(_) => words::volume_sheet_area(percent),
                OpenArea::FromOpening(_) => words::volume_own_area(percent),
            };
            let amount = words::number(volume.cm3_m2, 1);
            view! {
                <p class="stencil-time"><strong>{amount.clone()}</strong>" "<span>{words::volume_unit()}</span></p>
                <p>{words::volume_wet(amount)}" "{area}</p>
                <p class="muted">{words::volume_theory()}</p>
            }
            .into_any()
        }
    }
}

/// A data sheet as it is typed.
#[component]
fn Typed(form: RwSignal<MeshSheetForm>, problems: Memo<Problems>) -> impl IntoView {
    view! {
        <div class="stencil-typed">
            {counted(form, |form| &mut form.per)}
            <div class="field-pair">
                <Field name="count" label=words::volume_count() kind=Kind::Whole bound=bound(form, |f| &mut f.count) problems/>
                <Field name="thickness" label=words::screen_form_thickness() kind=Kind::Whole unit=words::exposure_um() bound=bound(form, |f| &mut f.thickness) problems/>
            </div>
            <div class="field-pair">
                <Field name="open_area" label=words::screen_form_open_area() kind=Kind::Decimal unit=words::emulsion_percent() bound=bound(form, |f| &mut f.open_area) problems/>
                <Field name="opening" label=words::screen_form_opening() kind=Kind::Whole unit=words::exposure_um() bound=bound(form, |f| &mut f.opening) problems/>
            </div>
        </div>
    }
}
