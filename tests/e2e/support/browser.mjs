// Chromium as the tests start it: headless, with nothing of its own going out to a network.
import { existsSync } from "node:fs";
import { chromium } from "playwright-core";
import { ZONE } from "./clock.mjs";

export const executablePath = process.env.CHROMIUM ?? ["/usr/bin/chromium", "/usr/bin/google-chrome"].find(existsSync);
export const args = [
  "--no-sandbox",
  "--disable-gpu",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
];

/** A browser without a profile. */
export function launch() {
  return chromium.launch({ executablePath, args });
}

/** A browser that keeps its data in `folder`, as a phone does. */
export function launchKeeping(folder, options = {}) {
  return chromium.launchPersistentContext(folder, { executablePath, args, ...options });
}

/** A phone in portrait with touch, as the shop props it on the press. */
export const PHONE = {
  viewport: { width: 390, height: 844 },
  deviceScaleFactor: 2,
  hasTouch: true,
  isMobile: true,
  locale: "en-US",
  timezoneId: ZONE,
};

/** A desk. */
export const DESK = { viewport: { width: 1280, height: 800 }, deviceScaleFactor: 1, locale: "en-US", timezoneId: ZONE };
