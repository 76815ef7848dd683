// Numbers as the app writes them, and the units of a device.

/** Options of a device with metric units. */
export const METRIC = { settings: { language: "english", metric: true } };

/** Options of a device in inches and °F that weighs ink in ounces. */
export const OUNCES = { settings: { language: "english", metric: false, ounces: true } };

export const NBSP = "\u00a0";
export const g = (number) => `${number}${NBSP}g`;
export const percent = (number) => `${number}%`;
export const degrees = (number) => `${number}${NBSP}°F`;
