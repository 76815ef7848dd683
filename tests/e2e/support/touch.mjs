// What a hand is to a touch screen, and what it needs of one.

/** Fingers on the glass, with their size, as the screen driver tells of them. */
export async function fingers(page) {
  const session = await page.context().newCDPSession(page);
  const send = (type, touchPoints) => session.send("Input.dispatchTouchEvent", { type, touchPoints });
  const finger = (point) => ({ radiusX: 10, radiusY: 10, ...point });
  return {
    /** All that lie on the glass now, a new one among them. */
    down: (...points) => send("touchStart", points.map(finger)),
    move: (...points) => send("touchMove", points.map(finger)),
    /** All that still lie; none for the last. */
    up: (...points) => send("touchEnd", points.map(finger)),
  };
}

const PRESS = "#zone, .control, .size-button, .check-buttons button, .huge, .cause, .place, .failure-kind, .failure-screen, .failure-remedy, .failure-plus, .failure-next, .failure-tick, .failure-step-head, .failure-quick .button, .failure-all .button";
const OTHER = "button, a[href], input:not([type=radio], [type=checkbox], [type=file]), textarea, label[for]:is(.choice-option label, .switch label), .file-button, .grip";

/** Press targets under 64 px, and other things to press under 48 px high, on the screen as it stands. */
export async function targets(page, screen) {
  const small = await page.evaluate(([press, other]) => {
    const shown = (part) => part.getClientRects().length > 0 && !part.matches(".skip, .visually-hidden") && !part.closest("[inert]");
    // Behind a sheet nothing can be pressed.
    const root = document.querySelector("dialog[open]") ?? document.body;
    const measure = (selector, width, height) => [...root.querySelectorAll(selector)].filter(shown).flatMap((part) => {
      const box = part.getBoundingClientRect();
      const name = part.id ? `#${part.id}` : `${part.tagName.toLowerCase()}.${part.className}`;
      return box.width >= width - 0.5 && box.height >= height - 0.5 ? [] : [`${name} "${part.textContent.trim().slice(0, 24)}" is ${box.width.toFixed(0)}×${box.height.toFixed(0)}, needs ${width || "any"}×${height}`];
    });
    // A link inside a line of words is part of the line.
    return [...measure(press, 64, 64), ...measure(other, 0, 48).filter((line) => !/^a\.badge/.test(line))];
  }, [PRESS, OTHER]);
  return small.map((line) => `${screen}: ${line}`);
}

/** Parts that another lies over, or that are cut off, where they can be brought to. */
export function hidden(page, parts) {
  return page.locator(parts).evaluateAll((parts) => parts.filter((part) => part.getClientRects().length).flatMap((part) => {
    part.scrollIntoView({ block: "center", inline: "center" });
    const box = part.getBoundingClientRect();
    const heights = [0.1, 0.5, 0.9].filter((at) => {
      const hit = document.elementFromPoint(box.x + box.width / 2, box.y + box.height * at);
      return !(hit && (part.contains(hit) || hit.contains(part)) && hit !== document.documentElement && hit !== document.body);
    });
    return heights.length ? [`${part.id || part.className} "${part.textContent.trim().slice(0, 20)}" at ${heights} of its height`] : [];
  }));
}

/** Words that stand on more lines than they have parts. */
export function broken(page, words) {
  return page.locator(words).evaluateAll((labels) => labels.filter((label) => {
    const range = document.createRange();
    range.selectNodeContents(label);
    return new Set([...range.getClientRects()].map((line) => Math.round(line.top))).size > label.textContent.trim().split(/\s+/).length;
  }).map((label) => label.textContent));
}
