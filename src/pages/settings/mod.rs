//! The menu: settings of device and shop, backup, storage.

mod backup;
mod device;
mod menu;
mod shop;
mod storage;

pub use backup::BackupPage;
pub use device::DeviceSettingsPage;
pub use menu::MenuPage;
pub use storage::{InstallHint, StoragePage};
