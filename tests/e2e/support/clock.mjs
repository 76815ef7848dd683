// The date and time that the pages see. They are fixed at the start of each test file, so that no result depends on
// the day on which the tests run. To run the tests as if on another day:
//   LASTPULL_TEST_NOW    local date, with or without a time: 2026-11-28 or 2026-11-28T09:30
//   LASTPULL_TEST_ZONE   IANA time zone: America/Chicago
// Only `Date` in the page is shifted. Timers, animation frames, `performance.now()` and the timestamps of events stay
// real, because the app measures touches with them. The workers and the service worker read no date.

/** Time zone of every page. */
export const ZONE = process.env.LASTPULL_TEST_ZONE ?? "America/Chicago";

/** A working day, followed by another. */
export const WEDNESDAY = "2026-06-17T09:30";

/** A Saturday, on which a new shop is closed. */
export const SATURDAY = "2026-06-20T09:30";

/** A Wednesday morning, far from midnight, closing time, a month's end and a change of the clocks. */
export const START = process.env.LASTPULL_TEST_NOW ?? "2026-06-17T09:30";

const ADVANCED = "test.advanced";
const INSTALLED = "test.clock";

/** What the clocks of the zone show at an instant, in milliseconds as if they showed UTC. */
function localTime(instant) {
  const parts = Object.fromEntries(
    new Intl.DateTimeFormat("en-CA", { timeZone: ZONE, year: "numeric", month: "2-digit", day: "2-digit", hour: "2-digit", minute: "2-digit", second: "2-digit", hourCycle: "h23" })
      .formatToParts(instant)
      .map(({ type, value }) => [type, Number(value)]),
  );
  return Date.UTC(parts.year, parts.month - 1, parts.day, parts.hour, parts.minute, parts.second);
}

/** The instant at which the clocks of the zone show this date and time. */
function instantOf(text) {
  const local = Date.parse(`${text.includes("T") ? text : `${text}T09:30`}Z`);
  if (Number.isNaN(local)) throw new Error(`not a date and time: ${text}`);
  const offset = (instant) => localTime(instant) - instant;
  const near = local - offset(local);
  return local - offset(near);
}

const shiftTo = (text) => instantOf(text) - Date.now();
const shift = shiftTo(START);

/** Milliseconds since 1970 by the clock of the tests. */
export const now = () => Date.now() + shift;

/** A day of the shop's calendar as a form takes it (YYYY-MM-DD), that many days from today. */
export function day(fromToday = 0) {
  return new Date(localTime(Math.floor(now() / 1000) * 1000) + fromToday * 24 * 3600_000).toISOString().slice(0, 10);
}

/** Runs in the page before the app does. */
function shiftDate([shift, key, installed]) {
  let advanced = 0;
  try {
    if (localStorage.getItem(installed)) return;
    advanced = Number(localStorage.getItem(key) ?? 0);
  } catch {
    // A page without storage, such as about:blank.
  }
  const SystemDate = Date;
  window.Date = class Date extends SystemDate {
    constructor(...fields) {
      super(...(fields.length ? fields : [Date.now()]));
    }

    static now() {
      return SystemDate.now() + shift + advanced;
    }
  };
  window.advanceClock = (milliseconds) => {
    advanced += milliseconds;
    localStorage.setItem(key, String(advanced));
  };
}

/** Gives every page of a context (or one page) the clock of the tests, or one that starts at another local time. */
export function installClock(target, start) {
  return target.addInitScript(shiftDate, [start ? shiftTo(start) : shift, ADVANCED, INSTALLED]);
}

/** Moves the clock of a page forward, also for its later loads: stops and paces take minutes, tests do not. */
export function advance(page, seconds) {
  return page.evaluate((milliseconds) => window.advanceClock(milliseconds), seconds * 1000);
}

/** Gives the page a clock that the test moves together with the timers, by `page.clock`. It begins at the date of the tests. */
export async function installTimers(page) {
  await page.evaluate((key) => localStorage.setItem(key, "installed"), INSTALLED);
  await page.clock.install({ time: now() });
  await page.reload();
  await page.locator(".page.day").waitFor();
}
