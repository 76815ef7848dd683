// Whether everything has its place: nothing is wider than the page, and words stay inside their buttons and rows.

/** Returns a function that sets the window's width, and the text size of the browser's settings in percent of the usual one. */
export async function windowSizes(page) {
  const session = await page.context().newCDPSession(page);
  const { height } = page.viewportSize();
  return async (width, percent) => {
    // The text first: Chromium looks at container queries in em again only when the container's size changes.
    const standard = Math.round((16 * percent) / 100);
    await session.send("Page.setFontSizes", { fontSizes: { standard, fixed: standard } });
    await page.setViewportSize({ width, height });
  };
}

/** Runs in the page: what sticks out of a page of this width, or out of a box. */
function findOverflow(width) {
  const found = new Set();
  const dialog = document.querySelector("dialog[open]");
  const root = dialog ?? document.body;
  const BUTTON = "button, .button, .badge, .place, .choice-option label";
  const name = (element) => `${element.localName}${[element.id && `#${element.id}`, ...[...element.classList].map((one) => `.${one}`)].join("")} "${element.textContent.trim().replace(/\s+/g, " ").slice(0, 30)}"`;

  const [wide, room] = dialog ? [dialog.scrollWidth, dialog.clientWidth] : [document.documentElement.scrollWidth, width];
  if (wide > room) found.add(`${dialog ? "the dialog" : "the page"} is ${wide} px wide of ${room}`);

  const boxes = new Map();
  /** What an element is to the content inside it. */
  const boxOf = (element) => {
    if (boxes.has(element)) return boxes.get(element);
    const { display, overflowX, position, textOverflow } = getComputedStyle(element);
    const clips = /hidden|clip/.test(overflowX);
    const isButton = element.matches(BUTTON);
    const box = {
      frame: element.getBoundingClientRect(),
      holds: !/^(inline|contents)$/.test(display),
      holdsHeight: clips || isButton,
      // It scrolls sideways, or ends with an ellipsis: what is in it may be wider.
      gives: (/auto|scroll/.test(overflowX) && element !== root) || (clips && textOverflow === "ellipsis"),
      // A button among some that scroll sideways.
      ends: isButton && element.closest(".screen-chips, .count-sizes") !== null,
      // Placed freely: around it is only the page.
      floats: /absolute|fixed/.test(position),
    };
    boxes.set(element, box);
    return box;
  };
  const isIn = (rect, frame, holdsHeight) => rect.left >= frame.left - 1 && rect.right <= frame.right + 1 && !(holdsHeight && (rect.top < frame.top - 1 || rect.bottom > frame.bottom + 1));
  /** Compares rectangles inside an element with the boxes around them. */
  const check = (element, rects, what) => {
    for (let around = element; around && around !== document.documentElement; around = around.parentElement) {
      const { frame, holds, holdsHeight, gives, ends, floats } = boxOf(around);
      if (gives) return;
      if (holds && !rects.every((rect) => isIn(rect, frame, holdsHeight))) return found.add(`${what} sticks out of ${name(around)}`);
      if (ends) return;
      if (floats) break;
    }
    if (rects.some((rect) => rect.left < -1 || rect.right > width + 1)) found.add(`${what} sticks out of the page`);
  };
  const isShown = (element) => element.checkVisibility({ visibilityProperty: true }) && !element.closest(".skip, .visually-hidden, .screen-chips legend");

  const texts = document.createTreeWalker(root, NodeFilter.SHOW_TEXT);
  for (let text = texts.nextNode(); text; text = texts.nextNode()) {
    const [element, words] = [text.parentElement, text.data.trim()];
    if (!words || element.closest("svg, datalist, script, noscript") || !isShown(element)) continue;
    const range = document.createRange();
    range.selectNodeContents(text);
    // As high as the letters, not as the line.
    const lines = [...range.getClientRects()].filter((rect) => rect.width > 0).map(({ left, right, top, bottom, height }) => ({ left, right, top: top + height * 0.15, bottom: bottom - height * 0.15 }));
    if (element.closest(BUTTON) && new Set(lines.map((line) => Math.round(line.top))).size > words.split(/[\s-]+/).length) found.add(`"${words}" is broken in ${name(element)}`);
    check(element, lines, `"${words.slice(0, 40)}" in ${name(element)}`);
  }
  for (const element of root.querySelectorAll("input, textarea, .button:not(.quiet), .control, .icon, .swatch, img, progress, table")) {
    // Buttons that are only an icon, and quiet ones, stick out by design: what is in them is in line with the words below.
    if (!element.getClientRects().length || !isShown(element) || element.matches(".choice-option input, .file-button input") || element.closest(".icon-button, .head-back")) continue;
    check(element.parentElement, [element.getBoundingClientRect()], name(element));
  }
  return [...found];
}

/** What sticks out of the page as it is shown, or out of a box on it, as text. */
export async function overflows(page, pageName) {
  const found = await page.evaluate(findOverflow, page.viewportSize().width);
  return found.map((line) => `${pageName}: ${line}`);
}
