// What is under More: settings, backup, deleted things, storage, glossary.
import { now } from "../clock.mjs";
import { backupFile, shopLines } from "../journal-file.mjs";
import { go, press } from "../page.mjs";

export const MORE = [
  { name: "more", picture: ["more"], open: (page) => go(page, "#/more", ".menu") },
  { name: "settings", picture: ["settings"], open: (page) => go(page, "#/more/settings", "#crew") },
  { name: "backup", picture: ["backup"], open: (page) => go(page, "#/more/backup", "#prepare") },
  {
    name: "backup ready, a file refused", from: "backup",
    open: async (page) => {
      await press(page, "#prepare");
      await page.locator("#ready").waitFor();
      await page.locator("#file").setInputFiles({ name: "x.zip", mimeType: "application/zip", buffer: Buffer.from("hello") });
      await page.locator("#import-result .problem").waitFor();
    },
  },
  {
    name: "a file before it is merged", from: "backup",
    open: async (page) => {
      await page.locator("#file").setInputFiles({ name: "x.zip", mimeType: "application/zip", buffer: backupFile(shopLines(20, now() - 3600_000), now()) });
      await page.locator("#preview").waitFor();
    },
  },
  { name: "recently deleted", open: (page) => go(page, "#/more/deleted", ".page.deleted") },
  { name: "storage and app", picture: ["about"], open: (page) => go(page, "#/more/about", "#facts") },
  { name: "glossary", open: (page) => go(page, "#/more/glossary", ".glossary-terms") },
];
