//! The query: emulsion, mesh, lamp and coats.

use super::mesh_fields::{MeshBindings, mesh_inputs};
use crate::components::Choice;
use crate::forms::bound;
use crate::i18n;
use crate::store::Store;
use lastpull_core::screen::{
    Coats, ExposureChoice, MeshCloth, MeshSheet, MeshSheetForm, emulsion_list, known_cloths, known_coats, lamp_list,
};
use leptos::prelude::*;

/// The fields of the query.
#[component]
pub fn QueryFields(pick: RwSignal<ExposureChoice>) -> impl IntoView {
    let store = Store::from_context();
    let (emulsions, lamps, cloths, coats) = store.shop.with_untracked(|shop| {
        let emulsions: Vec<_> = emulsion_list(shop).into_iter().map(|row| (Some(row.id), row.emulsion.name)).collect();
        let lamps: Vec<_> = lamp_list(shop).into_iter().map(|row| (Some(row.id), row.lamp.name)).collect();
        (emulsions, lamps, known_cloths(shop), known_coats(shop))
    });
    view! {
        <section class="stencil-picks">
            <Choice
                label=i18n::screen_emulsion()
                name="emulsion"
                options=emulsions
                value=Signal::derive(move || pick.with(|pick| pick.emulsion))
                on_pick=Callback::new(move |id| pick.update(|pick| pick.emulsion = id))
            />
            <Cloth pick cloths/>
            <Choice
                label=i18n::exposure_lamp()
                name="lamp"
                options=lamps
                value=Signal::derive(move || pick.with(|pick| pick.lamp))
                on_pick=Callback::new(move |id| pick.update(|pick| pick.lamp = id))
            />
            {(!coats.is_empty()).then(|| view! { <Coating pick coats/> })}
        </section>
    }
}

/// One of the shop's meshes, or another one.
#[component]
fn Cloth(pick: RwSignal<ExposureChoice>, cloths: Vec<MeshCloth>) -> impl IntoView {
    let now = pick.with_untracked(|pick| pick.cloth);
    let is_other = cloths.is_empty() || now.is_some_and(|now| !cloths.contains(&now));
    let other = RwSignal::new(is_other);
    let start = now.filter(|_| is_other).map(|cloth| MeshSheetForm::of(&MeshSheet::of_cloth(&cloth)));
    let form =
        RwSignal::new(start.unwrap_or_else(|| MeshSheetForm { per: i18n::units().length, ..MeshSheetForm::default() }));
    let problems = Memo::new(move |_| form.with(MeshSheetForm::check).err().unwrap_or_default());
    Effect::new(move || {
        if other.get() {
            let cloth = form.with(MeshSheetForm::check).ok().flatten().map(|sheet| sheet.cloth());
            if pick.with_untracked(|pick| pick.cloth != cloth) {
                pick.update(|pick| pick.cloth = cloth);
            }
        }
    });
    let bindings = move || MeshBindings {
        count: bound!(form.count),
        thread: bound!(form.thread),
        per: bound!(form.per),
        dyed: bound!(form.dyed),
    };
    let mut options: Vec<_> = cloths.iter().map(|cloth| (Some(*cloth), i18n::cloth_short(cloth))).collect();
    options.push((None, i18n::exposure_other_mesh().to_owned()));
    let chosen = Signal::derive(move || if other.get() { None } else { pick.with(|pick| pick.cloth) });
    let choose = Callback::new(move |cloth: Option<MeshCloth>| {
        other.set(cloth.is_none());
        if cloth.is_some() {
            pick.update(|pick| pick.cloth = cloth);
        }
    });
    view! {
        {(!cloths.is_empty()).then(|| view! {
            <Choice label=format!("{} ({})", i18n::screen_mesh(), i18n::unit_mesh()) name="cloth" options value=chosen on_pick=choose/>
        })}
        {move || other.get().then(|| view! { <div class="stencil-typed">{mesh_inputs(bindings(), problems.into())}</div> })}
    }
}

/// The coats; without a choice, the usual ones.
#[component]
fn Coating(pick: RwSignal<ExposureChoice>, coats: Vec<Coats>) -> impl IntoView {
    let mut options = vec![(None, i18n::exposure_coats_any().to_owned())];
    options.extend(coats.iter().map(|coats| (Some(*coats), i18n::coats(*coats))));
    view! {
        <Choice
            label=i18n::screen_coats()
            name="coats"
            options
            value=Signal::derive(move || pick.with(|pick| pick.coats))
            on_pick=Callback::new(move |coats| pick.update(|pick| pick.coats = coats))
        />
    }
}
