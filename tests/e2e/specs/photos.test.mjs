// Photos: added, stored without location, shown, deleted, exported. Here they belong to a failure on the press; photos
// of other subjects work the same way.
import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { test } from "node:test";
import { expectRefused, exportBackup, importBackup } from "../support/backup.mjs";
import { openStep, reportFailure } from "../support/failure.mjs";
import { go, press } from "../support/page.mjs";
import { QUOTA_EXCEEDED, setStorageFault } from "../support/saving-blocked.mjs";
import { openFirst, openShop, testServer } from "../support/setup.mjs";
import { openCounting } from "../support/shop.mjs";
import { failWrites } from "../support/storage-faults.mjs";

const app = testServer();

/** A shop with a failure on the press. */
async function openFailure(t, app, options) {
  const page = await openCounting(t, app, options);
  page.failure = await reportFailure(page);
  return page;
}

/** A JPEG drawn by the browser: red left, blue right; with `speckled` also noise. */
async function picture(page, width, height, { speckled = false } = {}) {
  const base64 = await page.evaluate(async ({ width, height, speckled }) => {
    const canvas = document.createElement("canvas");
    [canvas.width, canvas.height] = [width, height];
    const context = canvas.getContext("2d");
    context.fillStyle = "#f00";
    context.fillRect(0, 0, width, height);
    context.fillStyle = "#00f";
    context.fillRect(width / 2, 0, width, height);
    for (let seed = 1, n = 0; speckled && n < 40_000; n += 1) {
      seed = (Math.imul(seed, 1664525) + 1013904223) >>> 0;
      context.fillStyle = `#${(seed >>> 8).toString(16).padStart(6, "0")}`;
      context.fillRect(seed % width, (seed >>> 7) % height, 4, 4);
    }
    const blob = await new Promise((give) => canvas.toBlob(give, "image/jpeg", 0.92));
    const bytes = new Uint8Array(await blob.arrayBuffer());
    let text = "";
    for (let at = 0; at < bytes.length; at += 8192) text += String.fromCharCode(...bytes.subarray(at, at + 8192));
    return btoa(text);
  }, { width, height, speckled });
  return Buffer.from(base64, "base64");
}

/** The same with an Exif segment with rotation by a quarter and a location (Exif 2.3, section 4.5). */
function withExif(jpeg, app = "35.15 N 90.05 W") {
  const tiff = Buffer.concat([
    Buffer.from("Exif\0\0MM\0\x2a\0\0\0\x08\0\x01", "latin1"),
    Buffer.from([0x01, 0x12, 0, 3, 0, 0, 0, 1, 0, 6, 0, 0, 0, 0, 0, 0]),
    Buffer.from(app),
  ]);
  const head = Buffer.from([0xff, 0xe1, 0, 0]);
  head.writeUInt16BE(tiff.length + 2, 2);
  return Buffer.concat([jpeg.subarray(0, 2), head, tiff, jpeg.subarray(2)]);
}

const file = (name, buffer, mimeType = "image/jpeg") => ({ name, buffer, mimeType });

/** Chooses files and waits until this many photos are shown in all. */
async function addPhotos(page, files, expected, from = "picture") {
  await page.locator(`input[data-photos=${from}]`).setInputFiles(files);
  await page.waitForFunction((n) => document.querySelectorAll(".photo-tile img").length === n && !document.querySelector(".photo-status progress"), expected);
}

/** Sizes in pixels of the photos on the page, opened one by one. */
async function sizes(page) {
  const found = [];
  for (const tile of await page.locator(".photo-tile").all()) {
    await press(page, tile);
    const image = page.locator(".photo-stage img");
    await image.waitFor();
    found.push(await image.evaluate(async (image) => { await image.decode(); return [image.naturalWidth, image.naturalHeight]; }));
    await page.keyboard.press("Escape");
    await page.locator(".photo-view").waitFor({ state: "detached" });
  }
  return found;
}

/** Names, compression, sizes, hashes and bytes of the files in a ZIP, read by Python. */
function zipContents(path) {
  const list = "import sys,zipfile,json,hashlib\nz=zipfile.ZipFile(sys.argv[1])\nprint(json.dumps([[i.filename,i.compress_type,i.file_size,hashlib.sha256(z.read(i)).hexdigest(),z.read(i).hex() if i.filename.endswith('.jpg') else ''] for i in z.infolist()]))";
  return JSON.parse(execFileSync("python3", ["-c", list, path], { encoding: "utf8", maxBuffer: 1 << 28 }));
}

/** Opens the failure's photos. */
async function openPhotos(page, { failure } = page) {
  await go(page, failure, "#downtime");
  await openStep(page, "photos");
}

test("photos are stored upright and small; a bad file is reported", async (t) => {
  const page = await openFailure(t, app);
  await openPhotos(page);
  const plain = await picture(page, 2400, 1200);
  await addPhotos(page, [
    file("turned.jpg", withExif(plain)),
    file("notes.jpg", Buffer.from("no picture")),
    file("speckled.jpg", await picture(page, 2000, 2000, { speckled: true })),
  ], 2);
  assert.match(await page.locator(".photo-status").innerText(), /notes\.jpg: this browser can't find a picture/);
  const [turned, [width, height]] = await sizes(page);
  assert.deepEqual(turned, [800, 1600]);
  // Noise compresses badly: the picture is scaled down until the file is small enough.
  assert.ok(width === height && width >= 640 && width <= 1600, `${width} × ${height}`);
  await page.reload();
  await openPhotos(page);
  await page.waitForFunction(() => document.querySelectorAll(".photo-tile img").length === 2);
});

test("a backup holds photos by hash, without their location", async (t) => {
  const page = await openFailure(t, app);
  await openPhotos(page);
  await addPhotos(page, [file("one.jpg", withExif(await picture(page, 600, 400)))], 1);
  const { path, bytes } = await exportBackup(page);
  const [journal, photo, ...more] = zipContents(path);
  assert.deepEqual([journal[0], more], ["journal.ndjson", []]);
  const [name, method, size, hash, hex] = photo;
  assert.deepEqual([name, method], [`photos/${hash}.jpg`, 0]);
  assert.ok(size <= 300_000);
  for (const trace of ["Exif", "35.15 N"]) assert.ok(!Buffer.from(hex, "hex").includes(trace), trace);

  const other = await openFirst(t, app);
  await press(other, "#have-file");
  await other.locator("#file").waitFor();
  assert.match(await importBackup(other, bytes), /1 new photo/);
  assert.doesNotMatch(await importBackup(other, bytes), /photo/);
  await openPhotos(other, page);
  await other.waitForFunction(() => document.querySelectorAll(".photo-tile img").length === 1);
});

test("a backup without its photos imports; they show as missing", async (t) => {
  const page = await openFailure(t, app);
  await openPhotos(page);
  await addPhotos(page, [file("one.jpg", await picture(page, 600, 400))], 1);
  const { path } = await exportBackup(page);
  const bare = execFileSync("python3", ["-c", "import sys,zipfile,io\nz=zipfile.ZipFile(sys.argv[1]); o=io.BytesIO(); w=zipfile.ZipFile(o,'w'); w.writestr('journal.ndjson', z.read('journal.ndjson')); w.close(); sys.stdout.buffer.write(o.getvalue())", path]);
  const other = await openFirst(t, app);
  await press(other, "#have-file");
  await other.locator("#file").waitFor();
  assert.match(await importBackup(other, bare), /1 photo is still missing here/);
  await openPhotos(other, page);
  await other.getByText("Not on this device").waitFor();
});

test("a backup with a photo under a wrong hash is refused", async (t) => {
  const page = await openFailure(t, app);
  await openPhotos(page);
  await addPhotos(page, [file("one.jpg", await picture(page, 600, 400))], 1);
  const { path } = await exportBackup(page);
  const forged = execFileSync("python3", ["-c", "import sys,zipfile,io\nz=zipfile.ZipFile(sys.argv[1]); o=io.BytesIO(); w=zipfile.ZipFile(o,'w')\nfor i in z.infolist():\n  w.writestr('photos/'+'0'*64+'.jpg' if i.filename.startswith('photos/') else i.filename, z.read(i))\nw.close(); sys.stdout.buffer.write(o.getvalue())", path]);
  const other = await openFirst(t, app);
  await press(other, "#have-file");
  await other.locator("#file").waitFor();
  assert.match(await importBackup(other, forged), /does not match its name.*Nothing was changed/s);
});

test("photos of an import that then finds no room are removed again", async (t) => {
  const page = await openFailure(t, app);
  await openPhotos(page);
  await addPhotos(page, [file("one.jpg", await picture(page, 600, 400))], 1);
  const { bytes } = await exportBackup(page);
  const other = await openShop(t, app, { initScript: failWrites });
  await other.evaluate(() => {
    window.photosStored = 0;
    const { put } = IDBObjectStore.prototype;
    IDBObjectStore.prototype.put = function (...all) {
      if (this.name.includes("photo")) window.photosStored += 1;
      return put.apply(this, all);
    };
  });
  // The photos go first.
  await setStorageFault(other, QUOTA_EXCEEDED, "segments");
  await expectRefused(other, bytes, /^This device has no space left for the shop\./);
  assert.ok(await other.evaluate(() => window.photosStored > 0), "photos were stored");
  await setStorageFault(other, null);
  assert.match(await importBackup(other, bytes), /1 new photo/);
});

test("undo restores a deleted photo at its position", async (t) => {
  const page = await openFailure(t, app);
  await openPhotos(page);
  await addPhotos(page, [file("wide.jpg", await picture(page, 600, 200)), file("tall.jpg", await picture(page, 200, 600))], 2);
  await press(page, page.locator(".photo-tile").first());
  await press(page, "#photo-delete");
  await page.waitForFunction(() => document.querySelectorAll(".photo-tile").length === 1);
  assert.deepEqual(await sizes(page), [[200, 600]]);
  await press(page, ".notice-undo");
  await page.waitForFunction(() => document.querySelectorAll(".photo-tile img").length === 2);
  assert.deepEqual(await sizes(page), [[600, 200], [200, 600]]);
});

test("the keyboard browses and zooms photos", async (t) => {
  const page = await openFailure(t, app);
  await openPhotos(page);
  await addPhotos(page, [file("a.jpg", await picture(page, 600, 200)), file("b.jpg", await picture(page, 200, 600))], 2);
  await page.locator(".photo-tile").first().focus();
  await page.keyboard.press("Enter");
  await page.locator(".photo-stage img").waitFor();
  const label = () => page.locator("#photo-label").innerText();
  assert.match(await label(), /^Photo 1 of 2/);
  await page.keyboard.press("ArrowRight");
  await page.waitForFunction(() => /^Photo 2 of 2/.test(document.querySelector("#photo-label").innerText));
  const scale = () => page.locator(".photo-moved").evaluate((moved) => new DOMMatrix(getComputedStyle(moved).transform).a);
  assert.equal(await scale(), 1);
  await page.keyboard.press("+");
  assert.equal(await scale(), 1.5);
  await page.keyboard.press("0");
  assert.equal(await scale(), 1);
  const [x, y] = await page.locator(".photo-stage").evaluate((stage) => { const box = stage.getBoundingClientRect(); return [box.x + box.width / 2, box.y + box.height / 2]; });
  await page.mouse.dblclick(x, y);
  assert.equal(await scale(), 2.5);
  await page.keyboard.press("Escape");
  await page.locator(".photo-view").waitFor({ state: "detached" });
  assert.ok(await page.locator(".photo-tile").first().evaluate((tile) => tile === document.activeElement));
});

test("with too little disk space no photo is stored", async (t) => {
  const page = await openFailure(t, app, {
    initScript: () => { navigator.storage.estimate = async () => ({ usage: 99_000_000, quota: 100_000_000 }); },
  });
  await openPhotos(page);
  await page.locator("input[data-photos=camera]").setInputFiles([file("one.jpg", await picture(page, 600, 400))]);
  await page.getByText("Too little space left for photos").waitFor();
  assert.equal(await page.locator(".photo-tile").count(), 0);
});
