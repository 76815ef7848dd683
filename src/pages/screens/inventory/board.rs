//! All screens by state, with a search; several can be selected and moved together.

use super::row::{Row, Words};
use super::select_bar::SelectBar;
use crate::components::{Choice, SearchField, searched};
use crate::i18n;
use crate::store::Store;
use lastpull_core::ids::Subject;
use lastpull_core::screen::{ScreenBoard, ScreenFilter, ScreenGroup, ScreenState, screen_board};
use leptos::prelude::*;

/// Number of screens from which a search field is shown.
const SEARCHABLE: u32 = 9;

/// Which screens are shown.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Show {
    All,
    In(ScreenState),
    TooOld,
}

/// The list.
#[component]
pub fn Board() -> impl IntoView {
    let store = Store::from_context();
    let show = RwSignal::new(Show::All);
    let search = searched();
    // The selected screens; `None` if not selecting.
    let picked = RwSignal::new(None::<Vec<Subject>>);
    let board = store.every_minute(move |shop, clock| {
        let show = show.get();
        let state = if let Show::In(state) = show { Some(state) } else { None };
        let filter = ScreenFilter { state, warned: show == Show::TooOld, search: search.get() };
        screen_board(shop, &filter, clock.now)
    });
    let picking = Memo::new(move |_| picked.with(Option::is_some));
    let searchable = Memo::new(move |_| board.with(|board| board.total >= SEARCHABLE));
    view! {
        <section class="screen-board">
            <div class="screen-board-head">
                <h2>{i18n::board_title()}</h2>
                <button type="button" class="button" id="select" on:click=move |_| picked.update(|picked| *picked = if picked.is_some() { None } else { Some(Vec::new()) })>
                    {move || if picking.get() { i18n::cancel() } else { i18n::screens_select() }}
                </button>
            </div>
            <Chips board show/>
            {move || searchable.get().then(|| view! { <SearchField label=i18n::board_search() search/> })}
            {move || {
                let picking = picking.get();
                let groups = board.with(|board| board.groups.clone());
                let shown = board.with(|board| board.shown);
                view! {
                    {(shown == 0).then(|| view! { <p class="quiet-line">{i18n::board_none()}</p> })}
                    {groups
                        .into_iter()
                        .filter(|group| !group.rows.is_empty())
                        .map(|group| view! { <Group group picking picked/> })
                        .collect_view()}
                }
            }}
            {move || picking.get().then(|| view! { <SelectBar picked/> })}
        </section>
    }
}

/// The filters, each with its count.
#[component]
fn Chips(board: Memo<ScreenBoard>, show: RwSignal<Show>) -> impl IntoView {
    let counts = Memo::new(move |_| {
        board.with(|board| {
            let states: Vec<_> = board.groups.iter().map(|group| (group.state, group.count)).collect();
            (board.total, board.warned, states)
        })
    });
    move || {
        let (total, warned, states) = counts.get();
        let mut options = vec![(Show::All, i18n::board_all(total))];
        if warned > 0 || show.get() == Show::TooOld {
            options.push((Show::TooOld, i18n::board_warned(warned)));
        }
        options.extend(
            states.iter().map(|(state, count)| (Show::In(*state), format!("{} {count}", i18n::screen_state(*state)))),
        );
        view! {
            <div class="screen-chips">
                <Choice label=i18n::board_show() name="show" options value=Signal::from(show) on_pick=Callback::new(move |to| show.set(to))/>
            </div>
        }
    }
}

/// The screens in one state.
#[component]
fn Group(group: ScreenGroup, picking: bool, picked: RwSignal<Option<Vec<Subject>>>) -> impl IntoView {
    let ScreenGroup { state, count, rows } = group;
    let ids: Vec<Subject> = rows.iter().map(|row| row.id).collect();
    let name = i18n::screen_state(state);
    let pick_all = move |_| {
        picked.update(|picked| {
            let picked = picked.get_or_insert_default();
            // A second tap deselects them.
            let all = ids.iter().all(|id| picked.contains(id));
            picked.retain(|id| !ids.contains(id));
            if !all {
                picked.extend(&ids);
            }
        });
    };
    view! {
        <section class="screen-group" data-state=format!("{state:?}")>
            <div class="screen-group-head">
                <h3>{name}" "<span class="muted">{count}</span></h3>
                {picking.then(|| view! {
                    <button type="button" class="button quiet" aria-label=i18n::screens_select_all_of(name) on:click=pick_all>{i18n::screens_select_all()}</button>
                })}
            </div>
            <ul class="screen-rows">
                {rows.into_iter().map(|row| if picking {
                    let id = row.id;
                    let input = format!("pick-{id}");
                    let toggle = move |_| picked.update(|picked| {
                        let picked = picked.get_or_insert_default();
                        match picked.iter().position(|other| *other == id) {
                            Some(at) => drop(picked.remove(at)),
                            None => picked.push(id),
                        }
                    });
                    view! {
                        <li class="screen-pick">
                            <input
                                type="checkbox"
                                id=input.clone()
                                prop:checked=move || picked.with(|picked| picked.as_ref().is_some_and(|picked| picked.contains(&id)))
                                on:change=toggle
                            />
                            <label class="screen-row" for=input><Words row/></label>
                        </li>
                    }.into_any()
                } else {
                    view! { <Row row/> }.into_any()
                }).collect_view()}
            </ul>
        </section>
    }
}
