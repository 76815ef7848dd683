//! What to buy, as a list that can be shared.

use crate::components::Icon;
use crate::i18n;
use crate::platform::{share, spawn_local};
use crate::store::Store;
use lastpull_core::ink::{StockRow, StockView, ToBuy};
use leptos::prelude::*;

/// The list. Renders nothing if nothing is low.
#[component]
pub fn Shopping(stock: Memo<StockView>) -> impl IntoView {
    let store = Store::from_context();
    let share = move |_| {
        let list = stock.with_untracked(as_text);
        // During the tap itself: browsers allow sharing and copying only then.
        spawn_local(async move {
            match share::share(&list).await {
                share::ShareOutcome::Copied => store.notify(i18n::ink_list_copied()),
                share::ShareOutcome::Nowhere => store.notify(i18n::ink_list_failed()),
                share::ShareOutcome::Shared | share::ShareOutcome::Cancelled => {}
            }
        });
    };
    move || {
        let rows = stock.with(|stock| to_buy(stock).map(|(row, buy)| line(row, buy)).collect_view());
        let (cost, unpriced) = stock.with(|stock| (stock.cost, stock.unpriced));
        (!rows.is_empty()).then(|| {
            view! {
                <section class="card ink-buy" id="buy">
                    <h2>{i18n::ink_buy()}</h2>
                    <ul class="ink-lines">{rows}</ul>
                    <p class="quiet-line">
                        {(cost > 0).then(|| i18n::ink_buy_total(i18n::ink_price(cost as f64)))}
                        {(cost > 0 && unpriced > 0).then_some(" · ")}
                        {(unpriced > 0).then(|| i18n::ink_buy_unpriced(unpriced))}
                    </p>
                    <button type="button" class="button with-icon" id="share-list" on:click=share><Icon name="out"/>{i18n::ink_share_list()}</button>
                </section>
            }
        })
    }
}

fn to_buy(stock: &StockView) -> impl Iterator<Item = (&StockRow, ToBuy)> {
    stock.rows.iter().filter_map(|row| Some((row, row.buy?)))
}

fn amount(buy: ToBuy) -> String {
    match buy.tubs {
        Some(tubs) => {
            let tub = lastpull_core::units::Grams::from_milligrams(buy.grams.milligrams() / i64::from(tubs.max(1)));
            i18n::ink_buy_tubs(tubs, i18n::weight(tub))
        }
        None => i18n::ink_buy_grams(i18n::weight(buy.grams)),
    }
}

fn line(row: &StockRow, buy: ToBuy) -> AnyView {
    let why = row.low.as_ref().map(i18n::ink_low_why);
    let price = buy.cost.map(|cost| i18n::ink_price(cost as f64));
    view! {
        <li class="ink-line">
            <span class="row-words"><strong>{row.name.clone()}</strong>{why.map(|why| view! { <small class="muted">{why}</small> })}</span>
            <span class="ink-end"><strong>{amount(buy)}</strong>{price.map(|price| view! { <small class="muted">{price}</small> })}</span>
        </li>
    }.into_any()
}

/// The list as text, one item per line.
fn as_text(stock: &StockView) -> String {
    let mut list = vec![i18n::ink_buy().to_owned()];
    list.extend(to_buy(stock).map(|(row, buy)| format!("{}: {}", row.name, amount(buy))));
    list.join("\n")
}
