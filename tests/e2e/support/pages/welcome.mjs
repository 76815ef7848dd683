// The first page of a new device. It ends the demo, so it comes last.
import { press } from "../page.mjs";

export const WELCOME = [
  {
    name: "welcome", picture: ["welcome"],
    open: async (page) => {
      await press(page, page.locator(".banner-button").first());
      await page.locator("#open-demo").waitFor();
    },
  },
];
