// Numbers as the app writes them, and a device that weighs in grams.

/** Options of a device with metric units. */
export const METRIC = { settings: { language: "english", metric: true } };

export const NBSP = "\u00a0";
export const g = (number) => `${number}${NBSP}g`;
export const percent = (number) => `${number}%`;
export const degrees = (number) => `${number}${NBSP}°F`;
