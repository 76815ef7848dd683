// What is typed into a form is kept until it is saved.
import assert from "node:assert/strict";
import { test } from "node:test";
import { day } from "../support/clock.mjs";
import { fillForm, go, press, save } from "../support/page.mjs";
import { openDemo, openShop, testServer } from "../support/setup.mjs";
import { addGarments, newJob } from "../support/shop.mjs";

const app = testServer();

const restored = (page) => page.locator("#draft-restored");
const value = (page, id) => page.locator(`#${id}`).inputValue();
const drafts = (page) => page.evaluate(() => Object.keys(localStorage).filter((key) => key.startsWith("lastpull.draft.")));

test("a new job half typed is there after a reload and after another page", async (t) => {
  const page = await openShop(t, app);
  await go(page, "#/job/new", "#client");
  assert.equal(await restored(page).count(), 0);
  await fillForm(page, { client: "Harbour Night Choir", title: "Tour tees", notes: "fold in tens", exempt: true });
  await page.reload();
  await page.locator("#client").waitFor();
  await restored(page).waitFor();
  assert.deepEqual([await value(page, "client"), await value(page, "title"), await value(page, "notes")], ["Harbour Night Choir", "Tour tees", "fold in tens"]);
  assert.ok(await page.locator("#exempt").isChecked());
  await go(page, "#/ink", "nav a[href='#/ink'][aria-current=page]");
  await page.locator("#client").waitFor({ state: "detached" });
  await page.goBack();
  await restored(page).waitFor();
  assert.equal(await value(page, "title"), "Tour tees");
});

test("a draft is gone once the form is saved", async (t) => {
  const page = await openShop(t, app);
  await go(page, "#/job/new", "#client");
  await fillForm(page, { client: "Harbour Night Choir", title: "Tour tees", due_day: day() });
  assert.equal((await drafts(page)).length, 1);
  await save(page);
  await page.locator(".page.job").waitFor();
  assert.deepEqual(await drafts(page), []);
  await go(page, "#/job/new", "#client");
  assert.deepEqual([await value(page, "client"), await restored(page).count()], ["", 0]);
});

test("a form that is left while it is saved is saved, and its draft is gone", async (t) => {
  const page = await openShop(t, app);
  await go(page, "#/job/new", "#client");
  await fillForm(page, { client: "Harbour Night Choir", title: "Tour tees" });
  await page.evaluate(() => {
    document.querySelector(".save-bar [type=submit]").click();
    location.hash = "#/jobs";
  });
  await page.locator(".job-row").getByText("Tour tees").waitFor();
  assert.equal(await page.evaluate(() => location.hash), "#/jobs", "the page that was opened stays");
  assert.deepEqual(await drafts(page), []);
});

test("a restored draft can be discarded", async (t) => {
  const page = await openShop(t, app);
  await newJob(page);
  await press(page, ".page.job .head-aside a");
  await fillForm(page, { title: "Tour hoodies" });
  await page.reload();
  await restored(page).waitFor();
  assert.equal(await value(page, "title"), "Tour hoodies");
  await press(page, "#draft-discard");
  await restored(page).waitFor({ state: "detached" });
  assert.equal(await value(page, "title"), "Tour tees", "as it is saved");
  assert.deepEqual(await drafts(page), []);
});

test("sizes, choices and rows of a form are kept with their texts", async (t) => {
  const page = await openShop(t, app);
  await newJob(page);
  await press(page, ".lots > .button");
  await fillForm(page, { garment: "Race shirt", "size-m": 7, "size-youths": 3 });
  await press(page, page.getByRole("radio", { name: "Polyester" }));
  await page.reload();
  await restored(page).waitFor();
  assert.deepEqual([await value(page, "garment"), await value(page, "size-m"), await value(page, "size-youths")], ["Race shirt", "7", "3"]);
  await page.locator(".caution").first().waitFor();
  assert.ok(await page.getByRole("radio", { name: "Polyester" }).isChecked());
});

test("drafts of the demo shop do not reach the own shop", async (t) => {
  const page = await openDemo(t, app);
  await go(page, "#/job/new", "#client");
  await fillForm(page, { client: "Somebody" });
  await press(page, "#demo-banner button");
  await page.locator("#demo-banner").waitFor({ state: "detached" });
  assert.deepEqual(await drafts(page), []);
});

test("a draft of each lot's run is its own", async (t) => {
  const page = await openShop(t, app);
  await newJob(page);
  await addGarments(page);
  await fillForm(page, { ink: "Violet", off_contact: "1/8" });
  const first = page.url();
  await go(page, "#/jobs", ".job-row");
  await press(page, ".job-row");
  await addGarments(page, { garment: "Tote" });
  assert.deepEqual([await value(page, "ink"), await restored(page).count()], ["", 0]);
  await page.goto(first);
  await restored(page).waitFor();
  assert.deepEqual([await value(page, "ink"), await value(page, "off_contact")], ["Violet", "1/8"]);
});
