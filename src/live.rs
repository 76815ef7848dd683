//! What screens are: Leptos' own views, erased.
use leptos::prelude::*;

/// Something drawn.
pub use leptos::prelude::AnyView as Drawn;

/// Leptos' own `view!`, erased.
macro_rules! view {
    ($($t:tt)*) => { ::leptos::prelude::IntoAny::into_any(::leptos::prelude::view! { $($t)* }) };
}
pub(crate) use view;

/// Draws nothing.
pub fn nothing() -> AnyView {
    ().into_any()
}

/// Draws anew whenever a signal it read changes.
pub fn live<T: RenderHtml + Send + 'static>(mut draw: impl FnMut() -> T + Send + 'static) -> AnyView {
    let draw: Box<dyn FnMut() -> AnyView + Send> = Box::new(move || draw().into_any());
    draw.into_any()
}

/// What can stand in a view.
pub trait Draw {
    /// It, drawn.
    fn drawn(self) -> AnyView;
}

impl<T: RenderHtml + Send + 'static> Draw for T {
    fn drawn(self) -> AnyView {
        self.into_any()
    }
}
