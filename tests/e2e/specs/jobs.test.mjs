// Entering jobs: what a new one starts from, repeats, deleting, lengths as printers write them, sizes with too many.
import assert from "node:assert/strict";
import { test } from "node:test";
import { pull, waitForCount } from "../support/counting.mjs";
import { fillForm, go, hashOf, press, save, waitForText } from "../support/page.mjs";
import { openShop, testServer } from "../support/setup.mjs";
import { addGarments, addRun, newJob, openChecks, openCounting, startCounting } from "../support/shop.mjs";

const app = testServer();

const value = (page, id) => page.locator(`#${id}`).inputValue();
const choose = (page, name) => press(page, page.getByRole("radio", { name, exact: true }));
const chosen = (page, name) => page.getByRole("radio", { name, exact: true }).isChecked();
const titles = (page) => page.locator(".job-row strong").allInnerTexts();

test("no fabric is taken from another client; a known garment has its own", async (t) => {
  const page = await openShop(t, app);
  await newJob(page, { client: "North Riders", title: "Race shirts" });
  await press(page, ".lots > .button");
  await choose(page, "Polyester");
  await fillForm(page, { garment: "Race shirt", "size-m": 3 });
  await save(page);
  await addRun(page);

  await newJob(page, { client: "Harbour Night Choir", title: "Tour tees" });
  await press(page, ".lots > .button");
  assert.deepEqual([await value(page, "garment"), await chosen(page, "Cotton")], ["", true], "nothing of the race shirts");
  await fillForm(page, { garment: "race shirt" });
  await waitForText(page, "#fabric-from", "Fabric copied from race shirt");
  assert.ok(await chosen(page, "Polyester"));
  await fillForm(page, { garment: "race shirt in cotton" });
  await page.locator("#fabric-from").waitFor({ state: "detached" });
  assert.ok(await chosen(page, "Cotton"), "a longer name is another garment");
  await fillForm(page, { garment: "race shirt" });
  await waitForText(page, "#fabric-from", "Fabric copied from race shirt");
  await choose(page, "Cotton");
  await fillForm(page, { garment: "Race shirt" });
  assert.ok(await chosen(page, "Cotton"), "a fabric chosen by hand stays");
});

test("a second lot has the ink and the guess of the first", async (t) => {
  const page = await openShop(t, app);
  await newJob(page);
  await addGarments(page);
  await addRun(page, { ink: "Violet", guess: 25, dryer: 320 });
  await addGarments(page, { garment: "Tote" });
  assert.deepEqual([await value(page, "ink"), await value(page, "guess"), await value(page, "dryer")], ["Violet", "25", "320"]);
  await newJob(page, { title: "Another" });
  await addGarments(page);
  assert.deepEqual([await value(page, "ink"), await value(page, "guess"), await value(page, "dryer")], ["", "", "320"], "another job has its own ink");
});

test("an off-contact typed as a fraction is the same on the next run", async (t) => {
  const page = await openShop(t, app);
  await newJob(page);
  await addGarments(page);
  await addRun(page, { off_contact: "1/8", below_collar: "2 1/2" });
  await press(page, page.locator(".run-row a.icon-button").first());
  assert.deepEqual([await value(page, "off_contact"), await value(page, "below_collar")], ["1/8", "2 1/2"]);
  await fillForm(page, { off_contact: "1/x" });
  await save(page);
  await page.locator("#off_contact-help .problem").waitFor();
  await fillForm(page, { off_contact: "1/16" });
  await save(page);
  await addGarments(page, { garment: "Hoodie" });
  assert.equal(await value(page, "off_contact"), "1/16");
});

test("a repeat is created once, when it is saved", async (t) => {
  const page = await openShop(t, app);
  await newJob(page);
  const first = await hashOf(page);
  await addGarments(page);
  await addRun(page);
  const again = page.locator(".job-actions a");
  await again.evaluate((link) => { link.click(); link.click(); });
  await page.locator("#repeats").waitFor();
  assert.deepEqual([await value(page, "title"), await value(page, "due_day")], ["Tour tees", ""]);
  await go(page, "#/jobs", ".job-row");
  assert.equal((await titles(page)).length, 1, "nothing before it is saved");
  await go(page, `${first}/again`, "#repeats");
  await fillForm(page, { title: "Tour tees, second" });
  await page.locator(".save-bar [type=submit]").evaluate((button) => { button.click(); button.click(); });
  await page.locator(".page.job .run-row").waitFor();
  assert.notEqual(await hashOf(page), first);
  await go(page, "#/jobs", ".job-row");
  assert.deepEqual((await titles(page)).sort(), ["Tour tees", "Tour tees, second"]);
});

test("deleting a job asks first and can be undone", async (t) => {
  const page = await openShop(t, app);
  await newJob(page);
  await press(page, "#delete-job");
  await press(page, page.locator("dialog .button.primary"));
  await page.locator("dialog[open]").waitFor({ state: "detached" });
  await press(page, "#delete-job");
  await press(page, "#delete-yes");
  await page.locator(".page.jobs").waitFor();
  assert.deepEqual(await titles(page), []);
  await press(page, ".notice-undo");
  await page.locator(".job-row").waitFor();
});

test("each action is undone once, whichever button is used", async (t) => {
  const page = await openCounting(t, app);
  await pull(page, 3);
  await press(page, "#misprint");
  await press(page, "[data-cause=Smudge]");
  await waitForCount(page, 2);
  await press(page, "#undo");
  await waitForCount(page, 3);
  assert.equal(await page.locator(".notice-undo").count(), 0, "its notice offers no second undo");

  await press(page, "#number");
  await page.locator("#pieces").fill("5");
  await press(page, "#number-add");
  await waitForCount(page, 8);
  await press(page, "#undo");
  await waitForCount(page, 3);
  assert.equal(await page.locator(".notice-undo").count(), 0);

  await press(page, "#number");
  await page.locator("#pieces").fill("5");
  await press(page, "#number-add");
  await waitForCount(page, 8);
  await press(page, ".notice-undo");
  await waitForCount(page, 3);
  await press(page, "#undo");
  await waitForCount(page, 2);
});

test("too many of a size are shown at the count, in list and summary", async (t) => {
  const page = await openCounting(t, app, { garments: { "size-s": 2, "size-m": 3, "size-l": "" } });
  await pull(page, 2);
  await press(page, "#number");
  await choose(page, "S");
  await page.locator("#pieces").fill("4");
  await press(page, "#number-add");
  await waitForCount(page, 6);
  await waitForText(page, ".zone-left", "3 left · 4 over");
  assert.deepEqual(await page.locator(".size-button strong").allInnerTexts(), ["+4", "3"]);
  await press(page, "#pace, .pace-button");
  await waitForText(page, "#pace-words", "4 over");
  await press(page, "dialog .sheet-head .icon-button");
  const run = await hashOf(page);
  await go(page, "#/jobs", ".job-row");
  await waitForText(page, ".job-row .row-count", "2 of 5");
  await waitForText(page, ".job-row .badge.tight", "4 over");
  await go(page, run, "#zone");
  await press(page, "#stop");
  await press(page, "#end-anyway");
  await waitForText(page, "#over", "S × 4");
});

test("a job whose last run is done is finished from its summary", async (t) => {
  const page = await openShop(t, app);
  await newJob(page);
  await addGarments(page, { "size-s": 1, "size-m": "", "size-l": "" });
  await addRun(page);
  await openChecks(page);
  await startCounting(page);
  await pull(page, 1);
  await press(page, "#end");
  await go(page, "#/jobs", ".job-row");
  await waitForText(page, ".job-row .badge.good", "Printed");
  await page.goBack();
  await press(page, "#finish-job");
  await page.getByText("Tour tees is finished.").waitFor();
  await page.locator("#finish-job").waitFor({ state: "detached" });
});
