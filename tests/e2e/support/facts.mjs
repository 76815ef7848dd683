// A shop's history before a test begins, as facts in a backup file that is imported. The test then does by hand only
// what it is about.
import assert from "node:assert/strict";
import { importBackup } from "./backup.mjs";
import { now } from "./clock.mjs";
import { backupFile, id } from "./journal-file.mjs";

/** Facts of another device of the shop, from one hour ago. */
export class FactRecorder {
  #device = id(1);
  #at = now() - 3600_000;
  #lines = [];

  /** Records a fact about a subject (a new one by default) and returns the subject's id. */
  record(fact, subject = id(100 + this.#lines.length)) {
    this.#lines.push(JSON.stringify({ device: this.#device, seq: this.#lines.length + 1, stamp: [this.#at, 0], subject, fact }));
    this.#at += 1000;
    return subject;
  }

  /** Imports the recorded facts into the shop of a page. */
  async importInto(page) {
    const summary = await importBackup(page, backupFile(this.#lines, this.#at));
    assert.match(summary, new RegExp(`^${this.#lines.length} entries new; 0 entries already here`));
  }
}
