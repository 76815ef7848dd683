//! Reports saved entries to other tabs of the same shop. If the browser has no `BroadcastChannel`, another tab
//! sees them after a reload; nothing is lost, since sequence numbers are assigned in the database.

use js_sys::{Array, Uint8Array};
use lastpull_core::facts::Entry;
use lastpull_core::journal::record;
use std::cell::RefCell;
use wasm_bindgen::{JsCast, closure::Closure};
use web_sys::{BroadcastChannel, MessageEvent};

thread_local! {
    static CHANNEL: RefCell<Option<BroadcastChannel>> = const { RefCell::new(None) };
}

/// A message from another tab.
pub enum TabMessage {
    /// It saved these entries.
    Saved(Vec<Entry>),
    /// It made a larger change: read everything again.
    Changed,
}

/// Opens the channel of a shop.
pub fn listen(shop: &str, on_message_received: impl Fn(TabMessage) + 'static) {
    let Ok(channel) = BroadcastChannel::new(shop) else { return };
    let on_message = Closure::<dyn Fn(MessageEvent)>::new(move |event: MessageEvent| {
        let records = event.data().dyn_into::<Array>().unwrap_or_default();
        let entries: Option<Vec<Entry>> =
            records.iter().map(|bytes| record::decode(&Uint8Array::new(&bytes).to_vec()).ok()).collect();
        match entries {
            Some(entries) if !entries.is_empty() => on_message_received(TabMessage::Saved(entries)),
            _ => on_message_received(TabMessage::Changed),
        }
    });
    channel.set_onmessage(Some(on_message.as_ref().unchecked_ref()));
    on_message.forget();
    if let Some(old) = CHANNEL.replace(Some(channel)) {
        old.close();
    }
}

/// Reports saved entries to the other tabs.
pub fn notify_saved(entries: &[Entry]) {
    let records: Array = entries.iter().map(|entry| Uint8Array::from(record::encode(entry).as_slice())).collect();
    tell(&records);
}

/// Tells the other tabs to read everything again.
pub fn notify_changed() {
    tell(&Array::new());
}

fn tell(message: &Array) {
    CHANNEL.with_borrow(|channel| {
        if let Some(channel) = channel {
            let _ = channel.post_message(message);
        }
    });
}
