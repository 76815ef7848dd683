//! Vibration and a click sound. On a device without them, nothing happens.

use std::cell::RefCell;
use web_sys::{AudioContext, OscillatorType};

thread_local! {
    static SPEAKER: RefCell<Option<AudioContext>> = const { RefCell::new(None) };
}

/// Vibrates for this long.
pub fn buzz(milliseconds: u32) {
    let navigator = leptos::prelude::window().navigator();
    // Not in every browser: looked up by name, so that its absence is no error.
    let has = js_sys::Reflect::has(&navigator, &"vibrate".into()).unwrap_or(false);
    if has {
        navigator.vibrate_with_duration(milliseconds);
    }
}

/// Plays a short click; `pitch` in hertz.
pub fn click(pitch: f32) {
    SPEAKER.with_borrow_mut(|speaker| {
        if speaker.is_none() {
            *speaker = AudioContext::new().ok();
        }
        if let Some(context) = speaker {
            let _ = context.resume();
            let _ = play(context, pitch);
        }
    });
}

fn play(context: &AudioContext, pitch: f32) -> Result<(), wasm_bindgen::JsValue> {
    let tone = context.create_oscillator()?;
    let volume = context.create_gain()?;
    tone.set_type(OscillatorType::Triangle);
    tone.frequency().set_value(pitch);
    let now = context.current_time();
    volume.gain().set_value_at_time(0.4, now)?;
    volume.gain().exponential_ramp_to_value_at_time(0.001, now + 0.06)?;
    tone.connect_with_audio_node(&volume)?;
    volume.connect_with_audio_node(&context.destination())?;
    tone.start()?;
    tone.stop_with_when(now + 0.07)
}
