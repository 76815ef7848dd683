//! Overview of ink: what the coming runs need, open pots, recipes.

use super::needs::Needs;
use super::pot_row::pot_row;
use super::recipe_list::Recipes;
use crate::components::{Empty, Icon, MenuRow, Page, long_rows};
use crate::i18n;
use crate::route::{InkRoute, PotRoute, Route};
use crate::store::Store;
use lastpull_core::ink::{InkShelf, ink_shelf};
use leptos::prelude::*;

/// The page.
#[component]
pub fn InkHomePage() -> impl IntoView {
    let store = Store::from_context();
    let shelf = Memo::new(move |_| store.shop.with(ink_shelf));
    let none = Memo::new(move |_| {
        shelf.with(|shelf| shelf.needed.is_empty() && shelf.pots.is_empty() && shelf.recipes.is_empty())
    });
    let add = || Route::Ink(InkRoute::NewRecipe).hash();
    let aside = move || {
        (!none.get()).then(|| {
            view! { <a class="button with-icon" href=add()><Icon name="plus"/>{i18n::ink_new_recipe()}</a> }
        })
    };
    view! {
        <Page title=Signal::derive(|| i18n::nav_ink().to_owned()) aside=move || view! { {aside} } class="ink">
            {move || if none.get() {
                view! {
                    <Empty icon="ink" title=i18n::ink_empty_title() text=i18n::ink_empty_text()>
                        <a class="button primary" href=add()>{i18n::ink_new_recipe()}</a>
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

/// Components that are low and must be bought before the run.
fn low_row(shelf: Memo<InkShelf>) -> AnyView {
    (move || {
        let low = shelf.with(|shelf| shelf.low);
        (low > 0).then(|| {
            view! {
                <a class="menu-row ink-low" id="low" href=Route::Ink(InkRoute::Stock).hash()>
                    <Icon name="alert"/>
                    <span class="row-words"><strong>{i18n::ink_low(low)}</strong><span>{i18n::ink_low_hint()}</span></span>
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
                    <h2>{i18n::ink_pots()}</h2>
                    {long_rows("pots", "menu", pots, pot_row)}
                </section>
            }
        })
    })
    .into_any()
}

/// Links to the stock, and to a new pot without a recipe.
fn stock_row(shelf: Memo<InkShelf>) -> AnyView {
    (move || {
        let components = shelf.with(|shelf| shelf.components);
        view! {
            <ul class="menu">
                <MenuRow id="stock" href=Route::Ink(InkRoute::Stock).hash() icon="box" title=i18n::ink_stock() text=i18n::ink_components(components)/>
                {(components > 0).then(|| view! {
                    <MenuRow id="by-eye" href=Route::Pot(PotRoute::New).hash() icon="ink" title=i18n::pot_new_by_eye() text=i18n::ink_by_eye_hint()/>
                })}
            </ul>
        }
    }).into_any()
}
