//! Settings of this device, and of the shop.

use super::shop_settings::ShopSettings;
use crate::parts::{Choice, Icon, Page, Switch};
use crate::place::Place;
use crate::platform::settings::{Language, Theme};
use crate::store::Store;
use crate::words::{self, Manner};
use leptos::prelude::*;

/// Settings. Each takes hold at once.
#[component]
pub fn SettingsScreen() -> impl IntoView {
    let store = Store::from_context();
    let settings = store.settings;
    let language = Signal::derive(move || settings.with(|settings| Manner::of(settings).language));
    let theme = Signal::derive(move || settings.with(|settings| settings.theme));
    let languages = vec![
        (Language::English, words::language_english().to_owned()),
        (Language::Spanish, words::language_spanish().to_owned()),
    ];
    let themes = vec![
        (Theme::Device, words::theme_device().to_owned()),
        (Theme::Light, words::theme_light().to_owned()),
        (Theme::Dark, words::theme_dark().to_owned()),
        (Theme::Amber, words::theme_amber().to_owned()),
    ];
    let units = vec![(false, words::units_inch().to_owned()), (true, words::units_metric().to_owned())];
    let clocks = vec![(false, words::clock_12().to_owned()), (true, words::clock_24().to_owned())];
    view! {
        <Page title=Signal::derive(|| words::settings_title().to_owned()) up=Place::More class="settings">
            <section class="card">
                <h2>{words::settings_device()}</h2>
                <Choice label=words::settings_language() name="language" options=languages value=language
                    on_pick=Callback::new(move |language| store.set(|settings| settings.language = Some(language)))/>
                <Choice label=words::settings_theme() name="theme" options=themes value=theme
                    on_pick=Callback::new(move |theme| store.set(|settings| settings.theme = theme))/>
                {move || (theme.get() == Theme::Amber).then(|| view! { <p class="caution"><Icon name="info"/>{words::theme_amber_caution()}</p> })}
                <Choice label=words::settings_units() name="units" options=units value=Signal::derive(move || settings.with(|s| s.metric))
                    on_pick=Callback::new(move |metric| store.set(|settings| settings.metric = metric))/>
                <Choice label=words::settings_clock() name="clock" options=clocks value=Signal::derive(move || settings.with(|s| s.clock_24))
                    on_pick=Callback::new(move |on| store.set(|settings| settings.clock_24 = on))/>
                <Switch id="buzz" label=words::settings_buzz() hint=words::settings_buzz_hint() value=Signal::derive(move || settings.with(|s| s.buzz))
                    on_set=Callback::new(move |on| store.set(|settings| settings.buzz = on))/>
                <Switch id="click" label=words::settings_click() value=Signal::derive(move || settings.with(|s| s.click))
                    on_set=Callback::new(move |on| store.set(|settings| settings.click = on))/>
                <p class="quiet-line">{words::keys_hint()}</p>
            </section>
            <ShopSettings/>
        </Page>
    }
}
