//! Settings of this device, and of the shop.

use super::shop::ShopSettings;
use crate::components::{Choice, Icon, Page, Switch};
use crate::i18n;
use crate::platform::currency::CURRENCIES;
use crate::platform::settings::{Language, Settings, Theme};
use crate::route::{MoreRoute, Route};
use crate::store::Store;
use lastpull_core::units::{LengthUnit, TemperatureUnit};
use leptos::prelude::*;

/// The page. Each setting takes effect at once.
#[component]
pub fn DeviceSettingsPage() -> impl IntoView {
    let store = Store::from_context();
    let settings = store.settings;
    let language = Signal::derive(move || settings.with(Settings::language_or_browser));
    let theme = Signal::derive(move || settings.with(|settings| settings.theme));
    let languages = vec![
        (Language::English, i18n::language_english().to_owned()),
        (Language::Spanish, i18n::language_spanish().to_owned()),
    ];
    let themes = vec![
        (Theme::Device, i18n::theme_device().to_owned()),
        (Theme::Light, i18n::theme_light().to_owned()),
        (Theme::Dark, i18n::theme_dark().to_owned()),
        (Theme::Amber, i18n::theme_amber().to_owned()),
    ];
    let lengths = vec![
        (LengthUnit::Inches, i18n::length_inches().to_owned()),
        (LengthUnit::Centimetres, i18n::length_centimetres().to_owned()),
    ];
    let temperatures = vec![(false, "°F".to_owned()), (true, "°C".to_owned())];
    let weights = vec![(false, i18n::weight_grams().to_owned()), (true, i18n::weight_ounces().to_owned())];
    let units = Signal::derive(move || settings.with(Settings::units));
    let clocks = vec![(false, i18n::clock_12().to_owned()), (true, i18n::clock_24().to_owned())];
    // Chosen once: another currency opens the page again.
    let currencies = CURRENCIES.into_iter().chain([""]).map(|code| {
        let (chosen, name) = (code == i18n::currency(), if code.is_empty() { i18n::currency_none() } else { code });
        view! { <option value=code selected=chosen>{name}</option> }
    });
    let currencies = currencies.collect_view();
    view! {
        <Page title=Signal::derive(|| i18n::settings_title().to_owned()) up=Route::More(MoreRoute::Menu) class="settings">
            <section class="card">
                <h2>{i18n::settings_device()}</h2>
                <Choice label=i18n::settings_language() name="language" options=languages value=language
                    on_pick=Callback::new(move |language| store.update_settings(|settings| settings.language = Some(language)))/>
                <Choice label=i18n::settings_theme() name="theme" options=themes value=theme
                    on_pick=Callback::new(move |theme| store.update_settings(|settings| settings.theme = theme))/>
                {move || (theme.get() == Theme::Amber).then(|| view! { <p class="caution"><Icon name="info"/>{i18n::theme_amber_caution()}</p> })}
                <Choice label=i18n::settings_length() name="length" options=lengths value=Signal::derive(move || units.get().length)
                    on_pick=Callback::new(move |unit| store.update_settings(|settings| settings.set_length(unit)))/>
                <Choice label=i18n::settings_temperature() name="temperature" options=temperatures value=Signal::derive(move || units.get().temperature == TemperatureUnit::Celsius)
                    on_pick=Callback::new(move |celsius| store.update_settings(|settings| settings.celsius = Some(celsius)))/>
                <Choice label=i18n::settings_weight() name="weight" options=weights value=Signal::derive(move || settings.with(|s| s.ounces))
                    on_pick=Callback::new(move |ounces| store.update_settings(|settings| settings.ounces = ounces))/>
                <div class="field">
                    <label for="currency">{i18n::settings_currency()}</label>
                    <select id="currency" on:change=move |event| choose_currency(store, &event_target_value(&event))>
                        {currencies}
                    </select>
                </div>
                <Choice label=i18n::settings_clock() name="clock" options=clocks value=Signal::derive(move || settings.with(|s| s.clock_24))
                    on_pick=Callback::new(move |on| store.update_settings(|settings| settings.clock_24 = on))/>
                <Switch id="buzz" label=i18n::settings_buzz() hint=i18n::settings_buzz_hint() value=Signal::derive(move || settings.with(|s| s.buzz))
                    on_set=Callback::new(move |on| store.update_settings(|settings| settings.buzz = on))/>
                <Switch id="click" label=i18n::settings_click() value=Signal::derive(move || settings.with(|s| s.click))
                    on_set=Callback::new(move |on| store.update_settings(|settings| settings.click = on))/>
                <p class="quiet-line">{i18n::keys_hint()}</p>
            </section>
            <ShopSettings/>
        </Page>
    }
}

fn choose_currency(store: Store, code: &str) {
    let chosen = CURRENCIES.into_iter().chain([""]).find(|known| *known == code);
    store.update_settings(|settings| settings.currency = chosen);
}
