// Touch input with several fingers, and whether a page suits gloved hands.

/** Touch input with fingers of 20 px: each call takes the points that it is about. */
export async function touchInput(page) {
  const session = await page.context().newCDPSession(page);
  const send = (type, touchPoints) => session.send("Input.dispatchTouchEvent", { type, touchPoints });
  const finger = (point) => ({ radiusX: 10, radiusY: 10, ...point });
  return {
    /** All fingers on the screen now, a new one among them. */
    down: (...points) => send("touchStart", points.map(finger)),
    move: (...points) => send("touchMove", points.map(finger)),
    /** The fingers that are lifted; all of them if none is given. */
    up: (...points) => send("touchEnd", points.map(finger)),
    /** The browser takes all fingers away, as for a gesture of its own. */
    cancel: () => send("touchCancel", []),
  };
}

const PRESS_TARGETS = "#zone, .control, .size-button, .check-buttons button, .huge, .cause, .place, .failure-kind, .failure-screen, .failure-remedy, .failure-plus, .failure-next, .failure-tick, .failure-step-head, .failure-quick .button, .failure-all .button";
const OTHER_TARGETS = "button, a[href], input:not([type=radio], [type=checkbox], [type=file]), textarea, label[for]:is(.choice-option label, .switch label), .file-button, .grip";

/** Touch targets that are too small: under 64×64 px at the press, under 48 px high elsewhere. */
export async function smallTargets(page, pageName) {
  const small = await page.evaluate(([pressTargets, otherTargets]) => {
    const shown = (element) => element.getClientRects().length > 0 && !element.matches(".skip, .visually-hidden") && !element.closest("[inert]");
    // Nothing behind an open dialog can be pressed.
    const root = document.querySelector("dialog[open]") ?? document.body;
    const measure = (selector, width, height) => [...root.querySelectorAll(selector)].filter(shown).flatMap((element) => {
      const box = element.getBoundingClientRect();
      const name = element.id ? `#${element.id}` : `${element.tagName.toLowerCase()}.${element.className}`;
      return box.width >= width - 0.5 && box.height >= height - 0.5 ? [] : [`${name} "${element.textContent.trim().slice(0, 24)}" is ${box.width.toFixed(0)}×${box.height.toFixed(0)}, needs ${width || "any"}×${height}`];
    });
    // A link inside a line of text is as high as the line.
    return [...measure(pressTargets, 64, 64), ...measure(otherTargets, 0, 48).filter((line) => !/^a\.badge/.test(line))];
  }, [PRESS_TARGETS, OTHER_TARGETS]);
  return small.map((line) => `${pageName}: ${line}`);
}

/** Elements that another covers, or that are cut off, after scrolling to them. */
export function coveredElements(page, selector) {
  return page.locator(selector).evaluateAll((elements) => elements.filter((element) => element.getClientRects().length).flatMap((element) => {
    element.scrollIntoView({ block: "center", inline: "center" });
    const box = element.getBoundingClientRect();
    const heights = [0.1, 0.5, 0.9].filter((share) => {
      const hit = document.elementFromPoint(box.x + box.width / 2, box.y + box.height * share);
      return !(hit && (element.contains(hit) || hit.contains(element)) && hit !== document.documentElement && hit !== document.body);
    });
    return heights.length ? [`${element.id || element.className} "${element.textContent.trim().slice(0, 20)}" at ${heights} of its height`] : [];
  }));
}

/** Labels with more lines than words: a word is broken. */
export function brokenLabels(page, selector) {
  return page.locator(selector).evaluateAll((labels) => labels.filter((label) => {
    const range = document.createRange();
    range.selectNodeContents(label);
    return new Set([...range.getClientRects()].map((line) => Math.round(line.top))).size > label.textContent.trim().split(/\s+/).length;
  }).map((label) => label.textContent));
}
