//! The sizes of the run with the pieces left of each; one is being counted.

use crate::i18n;
use lastpull_core::job::Size;
use lastpull_core::run::CountView;
use leptos::prelude::*;

/// The sizes. Renders nothing if the lot has only one.
#[component]
pub fn Sizes(
    count: Memo<CountView>,
    size: Memo<Option<Size>>,
    picked: RwSignal<Option<Option<Size>>>,
) -> impl IntoView {
    let sizes = Memo::new(move |_| count.with(|count| count.sizes.iter().map(|row| row.size).collect::<Vec<_>>()));
    move || {
        (sizes.with(Vec::len) > 1).then(|| {
            view! {
                <div class="count-sizes" role="group" aria-label=i18n::count_sizes()>
                    <For each=move || sizes.get() key=|size| *size let:of>
                        <SizeButton of count size picked/>
                    </For>
                </div>
            }
        })
    }
}

#[component]
fn SizeButton(
    of: Option<Size>,
    count: Memo<CountView>,
    size: Memo<Option<Size>>,
    picked: RwSignal<Option<Option<Size>>>,
) -> impl IntoView {
    let row = Memo::new(move |_| count.with(|count| count.sizes.iter().find(|row| row.size == of).copied()));
    let left = move || row.get().map_or(0, |row| row.left());
    view! {
        <button
            type="button"
            class="size-button"
            class:full=move || left() == 0
            aria-pressed=move || (size.get() == of).to_string()
            on:click=move |_| picked.set(Some(of))
        >
            <span>{i18n::size(of)}</span>
            {move || match row.get().map_or(0, |row| row.over()) {
                0 => view! { <strong>{left}</strong><span class="visually-hidden">{i18n::size_left()}</span> }.into_any(),
                over => view! { <strong class="over">{format!("+{over}")}</strong><span class="visually-hidden">{i18n::size_over()}</span> }.into_any(),
            }}
        </button>
    }
}
