// The day.
import { go } from "../page.mjs";

export const openDay = (page) => go(page, "#/", "#verdict");

export const DAY = [
  { name: "day", picture: ["day"], open: openDay },
];
