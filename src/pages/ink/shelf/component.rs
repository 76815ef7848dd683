//! A component: its stock, its history, its data sheet.

use super::stock_dialog::{StockEntry, StockSheet};
use crate::components::{Icon, MenuRow, NotHere, Page, Swatch, long_rows};
use crate::i18n;
use crate::pages::photos::Photos;
use crate::route::{ColourRoute, InkRoute, PotRoute, Route};
use crate::store::Store;
use lastpull_core::ids::Subject;
use lastpull_core::ink::{
    Component, ComponentCard, ComponentKind, StockChange, StockLine, StockRow, component_card, stock_line,
};
use lastpull_core::units::Grams;
use leptos::prelude::*;

/// Lines of its history that are shown at first.
const FIRST_LINES: usize = 5;

/// The page.
#[component]
pub fn ComponentPage(id: Subject) -> impl IntoView {
    let store = Store::from_context();
    let card = Memo::new(move |_| store.shop.with(|shop| component_card(shop, id)));
    let here = Memo::new(move |_| card.with(Option::is_some));
    let ask = RwSignal::new(None::<StockEntry>);
    move || {
        if !here.get() {
            return view! { <NotHere/> }.into_any();
        }
        let title = Signal::derive(move || {
            card.with(|card| card.as_ref().map(|card| card.component.name.clone()).unwrap_or_default())
        });
        let aside = move || {
            view! { <a class="icon-button" href=Route::Ink(InkRoute::EditComponent(id)).hash() aria-label=i18n::edit()><Icon name="edit"/></a> }
        };
        view! {
            <Page title up=Route::Ink(InkRoute::Stock) aside class="ink">
                {move || card.with(|card| card.as_ref().map(left))}
                <div class="button-row">
                    <button type="button" class="button primary with-icon" id="count" on:click=move |_| ask.set(Some(StockEntry::Count))><Icon name="down"/>{i18n::ink_count()}</button>
                    <button type="button" class="button with-icon" id="came-in" on:click=move |_| ask.set(Some(StockEntry::Delivery))><Icon name="in"/>{i18n::ink_came_in()}</button>
                </div>
                {move || card.with(|card| card.as_ref().map(|card| details(store, card)))}
                <section class="ink-section"><h2>{i18n::photos_title()}</h2><Photos subject=id/></section>
                <StockSheet id ask/>
            </Page>
        }.into_any()
    }
}

fn left(card: &ComponentCard) -> AnyView {
    let StockRow { left, low, .. } = &card.stock;
    let component = &card.component;
    let kind = format!("{} · {}", i18n::ink_kind_name(component.kind), i18n::ink_hiding_name(component.hiding));
    view! {
        <div class="ink-left" id="left">
            <Swatch colour=component.colour/>
            <div>
                {match left {
                    Some(left) => view! { <p class="ink-big"><strong>{i18n::weight(*left)}</strong>" "{i18n::ink_left()}</p> },
                    None => view! { <p class="ink-big">{i18n::ink_never_counted()}</p> },
                }}
                <p class="muted">{kind}</p>
            </div>
        </div>
        {(component.kind == ComponentKind::Additive).then(|| view! { <p class="caution"><Icon name="alert"/><span>{i18n::caution_additive()}</span></p> })}
        {low.as_ref().map(|low| view! { <p class="caution"><Icon name="alert"/><span>{i18n::ink_low_why(low)}</span></p> })}
        {left.is_some_and(|left| left < Grams::ZERO).then(|| view! { <p class="caution"><Icon name="alert"/><span>{i18n::ink_below_nothing()}</span></p> })}
        <p class="quiet-line">{story_line(card)}</p>
    }.into_any()
}

/// When it was weighed, and what is on order.
fn story_line(card: &ComponentCard) -> String {
    let StockRow { left, counted, required: wanted, .. } = &card.stock;
    let weighed = match (left, counted) {
        (None, _) => Some(i18n::ink_never_counted_hint().to_owned()),
        (_, Some(at)) => Some(i18n::ink_counted_on(i18n::moment(*at))),
        _ => None,
    };
    let coming = wanted.is_positive().then(|| i18n::ink_wanted(i18n::weight(*wanted)));
    let parts: Vec<String> = [weighed, coming].into_iter().flatten().collect();
    parts.join(" · ")
}

fn details(store: Store, card: &ComponentCard) -> AnyView {
    let id = card.id;
    view! {
        <ul class="menu">
            <MenuRow href=Route::Colour(ColourRoute::Component(id)).hash() icon="drop" title=i18n::ink_how_it_colours() text=i18n::ink_how_it_colours_hint()/>
        </ul>
        {story(store, &card.changes)}
        {(!card.used_in.is_empty()).then(|| view! {
            <section class="ink-section">
                <h2>{i18n::ink_used_in()}</h2>
                <ul class="menu">
                    {card.used_in.iter().map(|row| view! {
                        <li><a class="menu-row ink-row" href=Route::Ink(InkRoute::Recipe(row.recipe)).hash()><Swatch colour=row.colour/><span class="row-words"><strong>{row.name.clone()}</strong></span><Icon name="next"/></a></li>
                    }).collect::<Vec<_>>()}
                </ul>
            </section>
        })}
        {data(&card.component)}
    }.into_any()
}

fn story(store: Store, changes: &[(Subject, Option<Grams>)]) -> Option<AnyView> {
    let (first, more) = changes.split_at(changes.len().min(FIRST_LINES));
    let row = move |(event, left): &(Subject, Option<Grams>)| {
        let (event, left) = (*event, *left);
        let shown = Memo::new(move |_| store.shop.with(|shop| stock_line(shop, event, left)));
        (move || shown.with(|shown| shown.as_ref().map(|shown| line(store, shown)))).into_any()
    };
    let rows = |name, changes: &[(Subject, Option<Grams>)]| long_rows(name, "ink-lines", changes.to_vec(), row);
    (!changes.is_empty()).then(|| {
        view! {
            <section class="ink-section" id="story">
                <h2>{i18n::ink_story()}</h2>
                {rows("first", first)}
                {(!more.is_empty()).then(|| view! {
                    <details class="screen-fold"><summary>{format!("+ {}", more.len())}</summary>{rows("more", more)}</details>
                })}
            </section>
        }
        .into_any()
    })
}

fn line(store: Store, line: &StockLine) -> AnyView {
    let (what, note, sign) = match &line.what {
        StockChange::Delivered(note) => (i18n::ink_line_delivered().into_any(), note.clone(), "+"),
        StockChange::Counted => (i18n::ink_line_counted().into_any(), String::new(), ""),
        StockChange::Poured { pot, name, step } => (
            view! { <a href=Route::Pot(PotRoute::Pot(*pot)).hash()>{i18n::ink_line_poured(name)}</a> }.into_any(),
            i18n::ink_step(*step).to_owned(),
            "−",
        ),
    };
    let when = match &line.by {
        Some(by) => i18n::ink_saved_by(i18n::moment(line.at), by),
        None => i18n::moment(line.at),
    };
    // Pours are undone at their pot, where the effect is visible.
    let own = !matches!(line.what, StockChange::Poured { .. });
    let event = line.event;
    let take_back = move |_| {
        store.delete_with_undo(event, i18n::ink_taken_back());
    };
    view! {
        <div class="ink-line">
            <span class="row-words">
                <span>{what}</span>
                {(!note.is_empty()).then(|| view! { <small class="muted">{note}</small> })}
                <small class="muted">{when}</small>
            </span>
            <span class="ink-end">
                <strong>{format!("{sign}{}", i18n::weight_fine(line.grams))}</strong>
                {line.left.filter(|_| line.what != StockChange::Counted).map(|left| view! { <small class="muted">{i18n::ink_line_left(i18n::weight(left))}</small> })}
            </span>
            {if own {
                view! { <button type="button" class="icon-button" aria-label=i18n::ink_take_back() on:click=take_back><Icon name="undo"/></button> }.into_any()
            } else {
                view! { <span class="ink-no-undo"></span> }.into_any()
            }}
        </div>
    }.into_any()
}

fn data(component: &Component) -> Option<AnyView> {
    let share = |value: lastpull_core::ink::Share| i18n::percent(value.percent(), 2);
    let rows: Vec<(&'static str, String)> = [
        component
            .density
            .map(|value| (i18n::ink_density(), i18n::ink_density_of(i18n::number(f64::from(value) / 1000.0, 3)))),
        component.most.map(|most| (i18n::ink_most(), share(most))),
        component.most_pigment.map(|most| (i18n::ink_most_pigment(), share(most))),
        component.cost.map(|cost| (i18n::ink_cost(), i18n::ink_price(f64::from(cost)))),
        component.tub.map(|tub| (i18n::ink_tub(), i18n::weight(tub))),
        component.low_at.map(|low| (i18n::ink_low_at(), i18n::weight(low))),
    ]
    .into_iter()
    .flatten()
    .collect();
    let note = component.note.clone();
    (!rows.is_empty() || !note.is_empty()).then(|| {
        view! {
            <details class="group screen-fold">
                <summary>{i18n::ink_data()}</summary>
                <dl class="ink-data">
                    {rows.into_iter().map(|(name, value)| view! { <div><dt>{name}</dt><dd>{value}</dd></div> }).collect::<Vec<_>>()}
                </dl>
                {(!note.is_empty()).then(|| view! { <p class="job-notes">{note}</p> })}
            </details>
        }
        .into_any()
    })
}
