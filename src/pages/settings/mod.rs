//! The menu: settings of device and shop, backup, storage.

mod backup;
mod deleted;
mod device;
mod import;
mod menu;
mod shop;
mod storage;

pub use backup::BackupPage;
pub use deleted::DeletedPage;
pub use device::DeviceSettingsPage;
pub use menu::MenuPage;
pub use storage::{InstallHint, StoragePage};
