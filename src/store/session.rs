//! What the store keeps beside its signals while the page lives.

use super::import::Picked;
use crate::platform::app_worker::AppWorker;
use lastpull_core::exchange::ImportRecord;
use lastpull_core::ids::DeviceId;
use lastpull_core::journal::Head;

/// State that is not reactive, since no page draws it.
#[derive(Default)]
pub struct Session {
    /// Number of times that a shop was opened.
    pub(super) opened: u32,
    /// Whether the journal is being read again.
    pub(super) reloading: bool,
    /// Whether to read it once more after that.
    pub(super) reload_again: bool,
    /// Whether another shop is about to be opened.
    pub(super) switching: bool,
    /// Whether no write may begin, since the shop is about to be erased or left.
    pub(super) writes_stopped: bool,
    /// The device under which facts that cannot be saved are exported, and the numbers given out so far.
    pub(super) rescue: Option<(DeviceId, Head)>,
    /// The file that was picked, until the user decides about it.
    pub(super) picked: Option<Picked>,
    /// The worker that works on the whole journal.
    pub(super) worker: Option<AppWorker>,
    /// What the last import brought, as long as it can be taken back.
    pub(super) last_import: Option<ImportRecord>,
}

impl Session {
    /// Resets what belongs to the open shop.
    pub(super) fn open_shop(&mut self) {
        self.opened += 1;
        (self.rescue, self.picked, self.last_import) = (None, None, None);
    }
}
