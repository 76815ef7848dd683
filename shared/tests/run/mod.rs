//! A run: checks, counting, pace and forecast.

mod checks;
mod counting;
mod fan;
mod forecast;
mod outlook;
mod standing;
