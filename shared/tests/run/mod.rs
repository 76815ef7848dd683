//! A run: checks, counting, pace and forecast.

mod calibration;
mod checks;
mod counting;
mod fan;
mod forecast;
mod outlook;
mod standing;
mod student_t;
mod timing;
