//! The place of ink: what the day needs, the pots that stand open, the recipes.

use super::needs::Needs;
use super::pots::pot_row;
use super::recipes::Recipes;
use crate::parts::{Empty, Icon, MenuRow, Page};
use crate::place::{InkPlace, Place, PotPlace};
use crate::store::Store;
use crate::words;
use lastpull_core::ink::{InkShelf, ink_shelf};
use leptos::prelude::*;

/// The first of these screens.
#[component]
pub fn InkHome() -> impl IntoView {
    let store = Store::from_context();
    let shelf = Memo::new(move |_| store.shop.with(ink_shelf));
    let none = Memo::new(move |_| {
        shelf.with(|shelf| shelf.needed.is_empty() && shelf.pots.is_empty() && shelf.recipes.is_empty())
    });
    let add = || Place::Ink(InkPlace::NewRecipe).hash();
    let aside = move || {
        (!none.get()).then(|| {
            view! { <a class="button with-icon" href=add()><Icon name="plus"/>{words::ink_new_recipe()}</a> }
        })
    };
    view! {
        <Page title=Signal::derive(|| words::place_ink().to_owned()) aside=move || view! { {aside} } class="ink">
            {move || if none.get() {
                view! {
                    <Empty icon="ink" title=words::ink_empty_title() text=words::ink_empty_text()>
                        <a class="button primary" href=add()>{words::ink_new_recipe()}</a>
                    </Empty>
                    {stock_row(shelf)}
                }
            } else {
                view! {
                    <Needs shelf/>
                    {low_row(shelf)}
                    {pots(shelf)}
                    <Recipes shelf/>
                    {stock_row(shelf)}
                }
            }}
        </Page>
    }
}

/// What is low, which somebody has to buy before the run comes.
fn low_row(shelf: Memo<InkShelf>) -> AnyView {
    (move || {
        let low = shelf.with(|shelf| shelf.low);
        (low > 0).then(|| {
            view! {
                <a class="menu-row ink-low" id="low" href=Place::Ink(InkPlace::Stock).hash()>
                    <Icon name="alert"/>
                    <span class="row-words"><strong>{words::ink_low(low)}</strong><span>{words::ink_low_hint()}</span></span>
                    <Icon name="next"/>
                </a>
            }
        })
    }).into_any()
}

fn pots(shelf: Memo<InkShelf>) -> AnyView {
    (move || {
        let pots = shelf.with(|shelf| shelf.pots.clone());
        (!pots.is_empty()).then(|| {
            view! {
                <section class="ink-section" id="pots">
                    <h2>{words::ink_pots()}</h2>
                    <ul class="menu">{pots.iter().map(pot_row).collect::<Vec<_>>()}</ul>
                </section>
            }
        })
    })
    .into_any()
}

/// The way to the shelf, whatever is on it, and to a pot that no recipe is of.
fn stock_row(shelf: Memo<InkShelf>) -> AnyView {
    (move || {
        let components = shelf.with(|shelf| shelf.components);
        view! {
            <ul class="menu">
                <MenuRow id="stock" href=Place::Ink(InkPlace::Stock).hash() icon="box" title=words::ink_stock() text=words::ink_components(components)/>
                {(components > 0).then(|| view! {
                    <MenuRow id="by-eye" href=Place::Pot(PotPlace::New).hash() icon="ink" title=words::pot_new_by_eye() text=words::ink_by_eye_hint()/>
                })}
            </ul>
        }
    }).into_any()
}
