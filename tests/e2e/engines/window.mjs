// What a person does in the window of any engine. An engine's `start(folder)` returns:
//   name                         the engine and its version
//   downloads                    the folder in which downloads end up
//   goto(url), reload()          both wait until the page has loaded
//   run(work, ...args)           calls a function in the page (or one given as text), and returns its JSON value
//   touch(x, y)                  touches a point of the page
//   type(text)                   presses keys
//   chooseFile(selector, path)   picks a file in a file input
//   kill()                       SIGKILL for all processes of the browser
import assert from "node:assert/strict";
import { watch } from "node:fs";
import { readFile, readdir } from "node:fs/promises";
import { join } from "node:path";

/** How long to wait for a state, in milliseconds: for slow shared cores. */
const TIMEOUT = 25_000;

/** Waits until a function in the page returns neither `false`, `null` nor `undefined`, and returns its value. */
export async function waitFor(window, what, condition, ...args) {
  const answer = await window.run(
    `async (timeout, ...args) => {
      const condition = ${condition};
      for (const end = performance.now() + timeout; performance.now() < end; ) {
        const found = await condition(...args);
        if (found !== false && found !== null && found !== undefined) return { found };
        await new Promise((next) => setTimeout(next, 20));
      }
      return { on: location.hash, reads: document.querySelector("main")?.innerText.slice(0, 300) };
    }`,
    TIMEOUT,
    ...args,
  );
  assert.ok("found" in answer, `${window.name}: no ${what}: ${JSON.stringify(answer)}`);
  return answer.found;
}

/** Waits for an element. */
export const shows = (window, selector) => waitFor(window, selector, (selector) => document.querySelector(selector) !== null, selector);

/** Waits until an element that the selector matches contains this text. */
export const reads = (window, selector, text) =>
  waitFor(window, `"${text}" in ${selector}`, (selector, text) => [...document.querySelectorAll(selector)].some((element) => element.innerText.includes(text)), selector, text);

/** The text of an element. */
export const textOf = (window, selector) => window.run((selector) => document.querySelector(selector).innerText, selector);

/** Touches the middle of an element, once it is there, enabled, in view and covered by nothing. */
export async function press(window, selector) {
  const [x, y] = await waitFor(window, `${selector} to press`, (selector) => {
    const element = document.querySelector(selector);
    if (!element || element.disabled) return null;
    element.scrollIntoView({ block: "center", behavior: "instant" });
    const box = element.getBoundingClientRect();
    const at = [box.x + box.width / 2, box.y + box.height / 2];
    const hit = document.elementFromPoint(...at);
    return hit && (element.contains(hit) || hit.contains(element)) ? at : null;
  }, selector);
  await window.touch(x, y);
}

/** Opens a hash route and waits for an element of its page. */
export async function go(window, hash, selector) {
  await window.run((hash) => { location.hash = hash; }, hash);
  await shows(window, selector);
}

/** Presses a field and types into it. */
export async function typeInto(window, selector, text) {
  await press(window, selector);
  await waitFor(window, `focus in ${selector}`, (selector) => document.activeElement === document.querySelector(selector), selector);
  await window.type(text);
  await waitFor(window, `"${text}" in ${selector}`, (selector, text) => document.querySelector(selector).value === text, selector, text);
}

/** Waits until the zone shows exactly this many pieces, all saved, and takes the next touch. */
export async function waitForCount(window, pieces) {
  await waitFor(window, `${pieces} saved pieces`, (pieces) => {
    const zone = document.querySelector("#zone");
    // The app ignores a touch sooner than this after the last: a bounce.
    const rested = performance.now() - (window.lastTouched ?? -1000) > 130;
    return zone?.dataset.saved === pieces && zone.dataset.unsaved === "0" && rested;
  }, String(pieces));
  assert.equal(await textOf(window, "#count"), String(pieces));
}

/** Counts pieces by touch, from this number, and waits for each to be saved. */
export async function pull(window, from, pieces) {
  for (let piece = 1; piece <= pieces; piece += 1) {
    await press(window, "#zone");
    await waitForCount(window, from + piece);
  }
}

/** Waits for a finished download whose name matches, and returns its bytes. */
export async function downloaded(window, pattern) {
  const events = watch(window.downloads);
  const changed = () => new Promise((next) => events.once("change", next));
  try {
    for (;;) {
      const next = changed();
      const names = await readdir(window.downloads);
      const name = names.find((name) => pattern.test(name));
      // Until a download is complete, both engines write it to a file of another name; Firefox keeps an empty one beside it.
      if (name && names.length === 1) {
        const bytes = await readFile(join(window.downloads, name));
        if (bytes.length) return bytes;
      }
      await next;
    }
  } finally {
    events.close();
  }
}

/** Fails if the page had errors. */
export async function expectNoErrors(window) {
  assert.deepEqual(await window.run(() => window.pageErrors), [], `${window.name}: no errors inside the page`);
}
