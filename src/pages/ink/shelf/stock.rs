//! The stock: low components first, what to buy, then everything by kind.

use super::shopping_list::Shopping;
use crate::components::{Empty, Icon, MenuRow, Page, Swatch};
use crate::i18n;
use crate::route::{InkRoute, Route};
use crate::store::Store;
use lastpull_core::ink::{ComponentKind, StockRow, StockView, stock_view};
use leptos::prelude::*;

/// The page.
#[component]
pub fn StockPage() -> impl IntoView {
    let store = Store::from_context();
    let stock = Memo::new(move |_| store.shop.with(stock_view));
    let none = Memo::new(move |_| stock.with(|stock| stock.rows.is_empty()));
    let add = || Route::Ink(InkRoute::NewComponent).hash();
    let aside = move || {
        (!none.get()).then(|| {
            view! { <a class="button with-icon" href=add()><Icon name="plus"/>{i18n::ink_add_component()}</a> }
        })
    };
    view! {
        <Page title=Signal::derive(|| i18n::ink_stock().to_owned()) up=Route::Ink(InkRoute::Home) aside=move || view! { {aside} } class="ink">
            {move || if none.get() {
                view! {
                    <Empty icon="box" title=i18n::ink_stock_empty_title() text=i18n::ink_stock_empty_text()>
                        <a class="button primary" href=add()>{i18n::ink_add_component()}</a>
                    </Empty>
                }.into_any()
            } else {
                view! { <Shopping stock/> {shelf(stock)} {scale(store)} }.into_any()
            }}
        </Page>
    }
}

fn shelf(stock: Memo<StockView>) -> AnyView {
    (move || {
        let unknown = stock.with(|stock| stock.unknown.len() as u32);
        let kinds =
            stock.with(|stock| ComponentKind::ALL.into_iter().filter_map(|kind| of_kind(stock, kind)).collect_view());
        view! {
            {kinds}
            {(unknown > 0).then(|| view! { <p class="quiet-line">{i18n::ink_unknown_needs(unknown)}</p> })}
        }
    })
    .into_any()
}

fn of_kind(stock: &StockView, kind: ComponentKind) -> Option<AnyView> {
    let rows = stock.rows.iter().filter(|row| row.kind == kind).map(row).collect_view();
    (!rows.is_empty()).then(|| {
        view! {
            <section class="ink-section">
                <h2>{i18n::ink_kind_names(kind)}</h2>
                <ul class="menu">{rows}</ul>
            </section>
        }
        .into_any()
    })
}

fn row(row: &StockRow) -> AnyView {
    let left = row.left.map_or_else(|| "–".to_owned(), i18n::weight);
    let never = row.left.is_none().then_some(i18n::ink_never_counted());
    let wanted = row.required.is_positive().then(|| i18n::ink_wanted_short(i18n::weight(row.required)));
    view! {
        <li>
            <a class="menu-row ink-row" data-low=row.low.is_some().then_some("") href=Route::Ink(InkRoute::Component(row.component)).hash()>
                <Swatch colour=row.colour/>
                <span class="row-words">
                    <strong>{row.name.clone()}</strong>
                    {never.map(|words| view! { <span class="muted">{words}</span> })}
                    {row.low.as_ref().map(|low| view! { <span class="ink-newer">{i18n::ink_low_why(low)}</span> })}
                </span>
                <span class="ink-end"><strong>{left}</strong>{wanted.map(|words| view! { <small class="muted">{words}</small> })}</span>
            </a>
        </li>
    }.into_any()
}

fn scale(store: Store) -> AnyView {
    (move || {
        let step = store.shop.with(|shop| shop.ink.scale.step);
        view! {
            <ul class="menu">
                <MenuRow id="scale" href=Route::Ink(InkRoute::Scale).hash() icon="gear" title=i18n::ink_scale() text=i18n::ink_scale_line(i18n::grams(step))/>
            </ul>
        }
    }).into_any()
}
