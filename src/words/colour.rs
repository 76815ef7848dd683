//! Words of colour: readings, differences, what to add.
