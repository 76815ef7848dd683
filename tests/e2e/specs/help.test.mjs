// Help: what a term means, beside it and in the glossary; and the first steps of a new shop.
import assert from "node:assert/strict";
import { test } from "node:test";
import { DESK } from "../support/browser.mjs";
import { pull, waitForCount } from "../support/counting.mjs";
import { go, hashOf, press, waitForDialog, waitForText } from "../support/page.mjs";
import { openDemo, openShop, testServer } from "../support/setup.mjs";
import { addGarments, addRun, newJob, openChecks, openCounting, startCounting } from "../support/shop.mjs";

const app = testServer();

const question = (page) => page.getByRole("button", { name: "What does “Dye migration” mean?" });
const noDialog = (page) => page.locator("dialog[open]").waitFor({ state: "detached" });
const waitForFocus = (page, label) => page.waitForFunction((label) => document.activeElement?.getAttribute("aria-label") === label, label);

/** Opens the fabric limits, and there what dye migration means. */
async function openTerm(page) {
  await go(page, "#/heat/limits", ".heat-limit");
  await press(page, question(page));
  await waitForDialog(page);
}

for (const [name, options] of Object.entries({ phone: {}, desktop: { device: DESK } })) {
  test(`on a ${name} a “?” says what a term means, and has the focus again after Esc`, async (t) => {
    const page = await openDemo(t, app, options);
    await openTerm(page);
    await waitForText(page, "dialog[open] h2", "Dye migration");
    await waitForText(page, "dialog[open] .help-text", "Heat frees the dye in polyester");
    await page.getByRole("img", { name: "Drawing: Dye migration" }).waitFor();
    await page.keyboard.press("Escape");
    await noDialog(page);
    await waitForFocus(page, "What does “Dye migration” mean?");
  });
}

test("back closes what a term means and the page stays", async (t) => {
  const page = await openDemo(t, app);
  await openTerm(page);
  await page.goBack();
  await noDialog(page);
  await waitForFocus(page, "What does “Dye migration” mean?");
  assert.equal(await hashOf(page), "#/heat/limits");
});

test("a “?” leads to its term in the glossary, and from there back to its page", async (t) => {
  const page = await openDemo(t, app);
  await openTerm(page);
  await press(page, "dialog[open] .button-row a");
  await page.locator(".glossary-terms").waitFor();
  await page.waitForFunction(() => document.activeElement?.matches(".glossary-terms h2") && document.activeElement.textContent === "Dye migration");
  await press(page, ".head-back");
  await page.locator(".heat-limit").first().waitFor();
  assert.equal(await hashOf(page), "#/heat/limits");
  assert.equal(await page.locator("dialog[open]").count(), 0);
});

test("a “?” over a dialog is closed alone, and back to its button", async (t) => {
  const page = await openCounting(t, app, { device: DESK });
  await pull(page, 1);
  await press(page, "#misprint");
  const label = "What does “Misprint” mean?";
  const shown = page.locator("dialog dialog[open]");
  const open = async () => {
    await press(page, page.getByRole("button", { name: label }));
    await shown.getByText("A printed garment that can't be delivered").waitFor();
  };
  const closed = async () => {
    await shown.waitFor({ state: "detached" });
    await waitForFocus(page, label);
    await page.locator("dialog[open] [data-cause=Smudge]").waitFor();
  };
  await open();
  await page.getByRole("dialog", { name: "Misprint", exact: true }).waitFor();
  await page.keyboard.press("Escape");
  await closed();
  await open();
  await page.goBack();
  await closed();
  await page.goBack();
  await noDialog(page);
  await waitForCount(page, 1);
});

test("the day and the pace have a “?” whose texts come later", async (t) => {
  const page = await openDemo(t, app);
  await press(page, page.getByRole("button", { name: "What does “Makes it, tight, late” mean?" }));
  await waitForText(page, "dialog[open] .help-text", "can go either way");
  await page.keyboard.press("Escape");
  await noDialog(page);
  await waitForFocus(page, "What does “Makes it, tight, late” mean?");
  await go(page, "#/press", "#zone");
  await press(page, "#pace");
  await press(page, page.getByRole("button", { name: "What does “80% likely” mean?" }));
  await waitForText(page, "dialog dialog[open] .help-text", "8 times in 10");
});

test("the checks say what dwell time and off-contact are", async (t) => {
  const page = await openShop(t, app);
  await newJob(page);
  await addGarments(page);
  await addRun(page, { dwell: 90, off_contact: "1/8" });
  await openChecks(page);
  for (const [term, text] of [["Dwell time", "under the heat of the dryer"], ["Off-contact", "gap between screen and garment"]]) {
    await press(page, page.getByRole("button", { name: `What does “${term}” mean?` }));
    await waitForText(page, "dialog[open] .help-text", text);
    await page.goBack();
    await noDialog(page);
  }
});

for (const [language, code, some] of [["english", "en", ["Delta E (ΔE)", "Drawdown", "Wash test"]], ["spanish", "es", ["Área abierta", "Extendido", "Prueba de lavado"]]]) {
  test(`the glossary lists all terms in the order of the ${language} alphabet`, async (t) => {
    const page = await openShop(t, app, { settings: { language } });
    await go(page, "#/more", ".menu");
    await press(page, ".menu a[href='#/more/glossary']");
    await page.locator(".glossary-terms").waitFor();
    const names = await page.locator(".glossary-terms h2").allTextContents();
    assert.ok(names.length >= 40, `${names.length} terms`);
    assert.deepEqual(names, [...names].sort(new Intl.Collator(code).compare));
    for (const name of some) assert.ok(names.includes(name), name);
    const empty = await page.locator(".glossary-terms li").evaluateAll((terms) => terms.filter((term) => term.querySelector("p").textContent.length < 40).length);
    assert.equal(empty, 0, "every term has its text");
  });
}

/** Waits until the card of the first steps shows this step as the next, after so many that are done. */
async function waitForStep(page, title, done) {
  await waitForText(page, "#first-steps [aria-current=step] strong", title);
  assert.equal(await page.locator("#first-steps [data-done=true]").count(), done);
}

const nextStep = (page) => press(page, "#first-steps .button.primary");

test("the first steps lead from a job to the count and are ticked as they are done", async (t) => {
  const page = await openShop(t, app);
  await waitForStep(page, "Job", 0);
  await nextStep(page);
  await page.locator("#client").waitFor();
  await newJob(page);
  await go(page, "#/", "#first-steps");
  await waitForStep(page, "Garments and run", 1);
  await nextStep(page);
  await page.locator(".page.job").waitFor();
  await addGarments(page);
  await addRun(page);
  await go(page, "#/", "#first-steps");
  await waitForStep(page, "Count", 2);
  await nextStep(page);
  await page.locator("#start").waitFor();
  await startCounting(page);
  await pull(page, 1);
  await go(page, "#/", ".rail-runs > li");
  assert.equal(await page.locator("#first-steps").count(), 0, "a shop that has counted needs no first steps");
});

test("skipped first steps stay away after the page is loaded again", async (t) => {
  const page = await openShop(t, app);
  await press(page, "#first-steps-skip");
  await page.locator("#first-steps").waitFor({ state: "detached" });
  await page.locator(".page.day .empty").waitFor();
  await page.reload();
  // The page of the same chunk: once it is there, nothing of the chunk is still to come.
  await go(page, "#/jobs", ".page.jobs");
  await go(page, "#/", ".page.day .empty");
  assert.equal(await page.locator("#first-steps").count(), 0);
});

test("the demo shop has no first steps", async (t) => {
  const page = await openDemo(t, app);
  await go(page, "#/jobs", ".page.jobs");
  await go(page, "#/", "#verdict");
  assert.equal(await page.locator("#first-steps").count(), 0);
});
