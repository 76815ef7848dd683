// Chromium as the tests start it: headless, without network traffic of its own.
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

/**
 * The engine of Chromium without a browser around it, where it is installed (Debian and Ubuntu package
 * chromium-headless-shell): a page in it takes half of the processor time. CHROMIUM_SHELL is its path, or empty to do without.
 */
const shell = process.env.CHROMIUM_SHELL ?? ["/usr/bin/chromium-headless-shell"].find(existsSync);

/** The engine if it is installed, otherwise a browser; without a profile. */
export function launchEngine() {
  return chromium.launch({ executablePath: shell || executablePath, args });
}

/** A browser without a profile. */
export function launch() {
  return chromium.launch({ executablePath, args });
}

/** A browser context that keeps its data in `folder`. */
export function launchPersistent(folder, options = {}) {
  return chromium.launchPersistentContext(folder, { executablePath, args, ...options });
}

/** A phone in portrait with touch, as it stands on the press. */
export const PHONE = {
  viewport: { width: 390, height: 844 },
  deviceScaleFactor: 2,
  hasTouch: true,
  isMobile: true,
  locale: "en-US",
  timezoneId: ZONE,
};

/** A desktop computer. */
export const DESK = { viewport: { width: 1280, height: 800 }, deviceScaleFactor: 1, locale: "en-US", timezoneId: ZONE };
