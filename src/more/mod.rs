//! Everything else: settings, backup, storage, the demo shop.

mod about;
mod backup;
mod menu;
mod settings;
mod shop_settings;

pub use about::{AboutScreen, InstallHint};
pub use backup::BackupScreen;
pub use menu::MoreScreen;
pub use settings::SettingsScreen;
