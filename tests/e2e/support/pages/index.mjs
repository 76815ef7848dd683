// Every page, dialog and state of the demo shop, and how to open it: the one list for the accessibility tests and the
// pictures. It is written by area, in the files that are joined here.
import { closeDialog } from "../page.mjs";
import { DAY } from "./day.mjs";
import { FAILURE } from "./failure.mjs";
import { HEAT } from "./heat.mjs";
import { COLOUR } from "./ink/colour.mjs";
import { POTS } from "./ink/pot.mjs";
import { INK } from "./ink/shelf.mjs";
import { JOBS } from "./jobs.mjs";
import { CHECKS_AND_SUMMARY, COUNT } from "./press.mjs";
import { SCREENS, STENCIL } from "./screens.mjs";
import { MORE } from "./settings.mjs";
import { WELCOME } from "./welcome.mjs";

/**
 * `open` shows the page. If it needs another one on screen to start from, `from` names that. `details` expands what is
 * collapsed. `picture` are the names of its pictures.
 *
 * The order is one in which each can be opened after the one before.
 */
const PAGES = [...DAY, ...JOBS, ...COUNT, ...FAILURE, ...CHECKS_AND_SUMMARY, ...STENCIL, ...INK, ...POTS, ...COLOUR, ...SCREENS, ...HEAT, ...MORE, ...WELCOME];

/** What was typed on an earlier page must not come back as the draft of the same form. */
const deleteDrafts = (page) => page.evaluate(() => {
  for (const key of Object.keys(localStorage)) if (key.startsWith("lastpull.draft.")) localStorage.removeItem(key);
});

/**
 * Opens every page (or those whose name `only` accepts) one after another, with everything expanded, and calls
 * `visit` with its name.
 */
export async function visitPages(page, visit, only = () => true) {
  let previous = null;
  for (const { name, from, open, details } of PAGES.filter((entry) => only(entry.name))) {
    try {
      if (from !== previous) {
        await closeDialog(page);
        await deleteDrafts(page);
      }
      await open(page);
      if (details) await details(page);
    } catch (error) {
      throw new Error(`${name}: ${error.message}`);
    }
    await visit(name);
    previous = name;
  }
}

/** Names of all pictures. */
export const PICTURES = PAGES.flatMap(({ picture = [] }) => picture);

/** Opens, in a demo shop just opened, the page of a picture and those it starts from. */
export async function openForPicture(page, picture) {
  const openFrom = async ({ from, open }) => {
    if (from) await openFrom(PAGES.find((entry) => entry.name === from));
    await open(page);
  };
  await openFrom(PAGES.find((entry) => entry.picture?.includes(picture)));
}
