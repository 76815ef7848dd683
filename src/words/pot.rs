//! Words at the pot: weighing in, correcting, labels.
