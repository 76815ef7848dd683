// Readings of colours, typed and from a photo.
import { addComponent } from "./ink-helpers.mjs";
import { go, press } from "./page.mjs";

/** Opens the colour page of a component of the demo. */
export async function openColour(page, component) {
  await go(page, "#/ink/stock", "main .ink-row");
  await press(page, page.locator("main .ink-row").filter({ hasText: component }).first());
  await press(page, page.locator('a[href^="#/colour/component/"]').first());
  await page.locator(".colour-lines").waitFor();
}

/** Enters a component of that name, and opens its colour page. */
export async function newComponentColour(page, name) {
  await addComponent(page, name);
  await press(page, page.locator('a[href^="#/colour/component/"]').first());
}

/** Types a Lab reading into the field of that name. */
export async function fillLab(page, name, [l, a, b]) {
  await page.locator(`#${name}-l`).fill(String(l));
  await page.locator(`#${name}-a`).fill(String(a));
  await page.locator(`#${name}-b`).fill(String(b));
}

/** A photo of target, sample and a white card side by side; `falls` darkens it to the right, in percent. */
export async function photo(page, { target = "#5a7a3c", sample = "#6a7a3c", card = "#d8d8d8", falls = 0 } = {}) {
  const base64 = await page.evaluate(async ([target, sample, card, falls]) => {
    const canvas = document.createElement("canvas");
    [canvas.width, canvas.height] = [900, 600];
    const context = canvas.getContext("2d");
    [target, sample, card].forEach((colour, at) => {
      context.fillStyle = colour;
      context.fillRect(at * 300, 0, 300, 600);
    });
    if (falls) {
      const shade = context.createLinearGradient(0, 0, 900, 0);
      shade.addColorStop(0, "rgb(0 0 0 / 0%)");
      shade.addColorStop(1, `rgb(0 0 0 / ${falls}%)`);
      context.fillStyle = shade;
      context.fillRect(0, 0, 900, 600);
    }
    const blob = await new Promise((give) => canvas.toBlob(give, "image/png"));
    const bytes = new Uint8Array(await blob.arrayBuffer());
    let text = "";
    for (let at = 0; at < bytes.length; at += 8192) text += String.fromCharCode(...bytes.subarray(at, at + 8192));
    return btoa(text);
  }, [target, sample, card, falls]);
  return { name: "swatches.png", mimeType: "image/png", buffer: Buffer.from(base64, "base64") };
}

/** Presses the photo at these shares of its width and height, one after another. */
export async function mark(page, at) {
  for (const [x, y] of at) {
    const box = await page.locator("#board").boundingBox();
    const position = { x: box.width * x, y: box.height * y };
    await page.locator("#board")[page.pressMethod]({ position });
  }
}

/** Where target, sample and card are on such a photo. */
export const MIDDLES = [[1 / 6, 0.5], [0.5, 0.5], [5 / 6, 0.5]];
