// What a host is told: which files to ask for again each time, and that no other page may show the app in a frame.
import assert from "node:assert/strict";
import { readFileSync, readdirSync } from "node:fs";
import { join } from "node:path";
import { test } from "node:test";
import { DIST } from "../support/setup.mjs";

/** The rules of the built app's `_headers`: the headers by address. */
const rules = () => {
  const blocks = readFileSync(join(DIST, "_headers"), "utf8").trim().split("\n\n").map((block) => block.split("\n"));
  return new Map(blocks.map(([address, ...headers]) => [address, headers.map((header) => header.trim())]));
};

test("a host at the root asks again for all that names the build", () => {
  // What is in other folders never changes under its name, or is only drawn by the browser.
  const named = readdirSync(DIST).filter((name) => /\.(html|js)$/.test(name)).map((name) => `/${name}`);
  assert.ok(named.includes("/index.html") && named.includes("/sw.js"));
  // Only addresses as they are: hosts differ in what an asterisk stands for within one.
  const asked = [...rules()].filter(([, headers]) => headers.includes("Cache-Control: no-cache")).map(([address]) => address);
  assert.deepEqual(asked.sort(), ["/", ...named].sort());
});

test("a host that reads the rules lets no other page frame the app", () => {
  assert.ok(rules().get("/*").includes("Content-Security-Policy: frame-ancestors 'none'"));
});
