// What happened before a test begins, told as facts in a file that is brought in. What a test is about it
// does by hand; that the screens write these facts, the tests of the screens show.
import assert from "node:assert/strict";
import { backupFile, id } from "./journal-file.mjs";
import { bringIn } from "./backup.mjs";
import { now } from "./clock.mjs";

/** Another device of the shop, and what it tells; its clock stands an hour back. */
export class Teller {
  #device = id(1);
  #at = now() - 3600_000;
  #lines = [];

  /** Tells a fact of a subject, of a new one where none is named, and gives the subject. */
  say(fact, subject = id(100 + this.#lines.length)) {
    this.#lines.push(JSON.stringify({ device: this.#device, seq: this.#lines.length + 1, stamp: [this.#at, 0], subject, fact }));
    this.#at += 1000;
    return subject;
  }

  /** Brings what was told to the shop of a page. */
  async bringTo(page) {
    const said = await bringIn(page, backupFile(this.#lines, this.#at));
    assert.match(said, new RegExp(`^${this.#lines.length} facts new; 0 facts were here already`));
  }
}
