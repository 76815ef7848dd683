// Colour: match, target, coverage, drawdowns.
import { openColour } from "../../colour.mjs";
import { drawJpeg } from "../../jpeg.mjs";
import { press } from "../../page.mjs";
import { openInk } from "./shelf.mjs";

export const COLOUR = [
  {
    name: "colour: match", picture: ["match"],
    open: async (page) => {
      await openInk(page);
      await press(page, page.locator("#pots a").filter({ hasText: /Fern|Helecho/ }).first());
      await press(page, "#to-match");
      await page.locator(".colour-way").first().waitFor();
    },
    details: (page) => press(page, ".colour-advice summary"),
  },
  {
    name: "colour: pour with a mistake", from: "colour: match",
    open: async (page) => {
      await press(page, ".colour-way.first");
      await page.locator("#grams_1").fill("x");
      await press(page, "#poured");
      await page.locator("#grams_1-help .problem").waitFor();
    },
  },
  {
    name: "colour: read the pot", from: "colour: match",
    open: async (page) => {
      await press(page, "#read-pot");
      await page.locator("#swatch-l").fill("x");
      await page.locator("#swatch-help .problem").waitFor();
    },
  },
  {
    name: "colour: a screen colour", from: "colour: match",
    open: async (page) => {
      await press(page, "#read-pot");
      await press(page, "#swatch-2");
      await page.locator("#swatch-hex").fill("#12");
      await page.locator("#swatch-help .problem").waitFor();
    },
  },
  {
    name: "colour: a photo", from: "colour: match",
    open: async (page) => {
      await press(page, "#read-pot");
      await press(page, "#swatch-1");
      await page.locator("[data-colour=picture]").waitFor({ state: "attached" });
    },
  },
  {
    name: "colour: its marks", from: "colour: match",
    open: async (page) => {
      await press(page, "#read-pot");
      await press(page, "#swatch-1");
      await page.locator("[data-colour=picture]").setInputFiles({ name: "swatches.jpg", mimeType: "image/jpeg", buffer: await drawJpeg(page) });
      await page.locator("#board").waitFor();
      for (const x of [0.1, 0.2, 0.8]) { const box = await page.locator("#board").boundingBox(); await page.locator("#board")[page.pressMethod]({ position: { x: box.width * x, y: box.height * 0.8 } }); }
      await page.locator("#photo-says .colour-words, #photo-says .caution").first().waitFor();
    },
  },
  {
    name: "colour: target", from: "colour: match", picture: ["target"],
    open: async (page) => { await press(page, "#to-target"); await page.locator("#target-clear").waitFor(); },
  },
  {
    name: "colour: cover", picture: ["cover"],
    open: async (page) => {
      await openInk(page);
      await press(page, page.locator("#recipes a").filter({ hasText: /Apricot|Durazno/ }).first());
      await press(page, page.locator('a[href^="#/colour/cover/"]').first());
      await page.locator("#cover-answer").waitFor();
    },
    details: (page) => press(page, page.locator(".page summary").last()),
  },
  {
    name: "colour: another garment", from: "colour: cover",
    open: async (page) => {
      await press(page, page.locator("fieldset:has([name=cover-on]) input").last());
      await page.locator("#cloth-hex").waitFor();
    },
  },
  { name: "colour: known component", picture: ["component-colour"], open: (page) => openColour(page, /Blue|Azul/) },
  { name: "colour: component", open: (page) => openColour(page, /Black|Negro/) },
  {
    name: "colour: drawdown", from: "colour: component", picture: ["drawdown"],
    open: async (page) => { await press(page, "#next-drawdown"); await page.locator("#share").waitFor(); },
  },
  {
    name: "colour: drawdown with mistakes", from: "colour: drawdown",
    open: async (page) => {
      await page.locator("#share").fill("x");
      await press(page, page.locator("fieldset:has([name=lay]) input").last());
      await press(page, page.locator("summary").first());
      await press(page, page.locator("summary").last());
      await press(page, ".save-bar [type=submit]");
      await page.locator("#share-help .problem").waitFor();
    },
  },
  {
    name: "colour: beside a drawdown", from: "colour: drawdown", picture: ["drawdown-beside"],
    open: async (page) => { await press(page, "#seen-1"); await page.locator("#beside").waitFor(); },
    details: (page) => press(page, "#beside summary"),
  },
  {
    name: "colour: beside a drawdown, a card with a mistake", from: "colour: beside a drawdown",
    open: async (page) => {
      await press(page, "#beside-card");
      await page.locator("#card-l").fill("x");
      await page.locator("#card-help .problem").waitFor();
    },
  },
  {
    name: "colour: its photo", from: "colour: beside a drawdown, a card with a mistake",
    open: async (page) => {
      await press(page, "#beside-change");
      await press(page, page.locator("button.colour-beside-row").first());
      await page.locator("[data-colour=picture]").waitFor({ state: "attached" });
    },
  },
];
