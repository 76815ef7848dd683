// Makes a backup file of any size without the app: a ZIP (APPNOTE 6.3, stored or deflated) with journal.ndjson, whose format
// DEVELOPERS.md describes.
import { crc32, deflateRawSync } from "node:zlib";

/** A UUID that ends in this number. */
export const id = (number) => `00000000-0000-7000-8000-${number.toString(16).padStart(12, "0")}`;

/** Records a job of one garment and one print, number `number` of its shop, with this many pieces. Returns the ids of job and run. */
function recordOrder(record, at, number, pieces, more = []) {
  const [job, lot, run] = [10 + number * 3, 11 + number * 3, 12 + number * 3].map(id);
  record(at, job, { job_set: [{ client: `Client ${number % 40}` }, { title: `Order ${number}` }, ...more] });
  record(at, lot, { lot_set: [{ job }, { garment: "Tee" }, { fabric: "cotton" }, { pieces: [{ size: "m", pieces }] }] });
  record(at, run, { run_set: [{ lot }, { location: "full_front" }, { ink: "Night" }, { hits: 1 }] });
  return { job, run };
}

/** Journal lines of a shop with `pulls` counted pieces in finished jobs, and at the end one run on the press. `now` is in ms. */
export function shopLines(pulls, now) {
  const device = id(1);
  const lines = [];
  let seq = 0;
  const record = (at, subject, fact) => lines.push(JSON.stringify({ device, seq: ++seq, stamp: [at, 0], subject, fact }));
  const perRun = 60;
  const runs = Math.ceil(pulls / perRun);
  let at = now - (runs + 1) * 3_000_000;
  record(at, id(0), { shop_named: "Bench" });
  for (let run = 0; run <= runs; run++) {
    const { job, run: print } = recordOrder(record, at, run, perRun);
    record(at, print, "run_started");
    const count = run === runs ? 12 : Math.min(perRun, pulls - run * perRun);
    for (let piece = 0; piece < count; piece++) record((at += 40_000 + ((piece * 7919) % 9000)), print, { pulled: { pieces: 1, size: "m" } });
    if (run < runs) {
      record((at += 30_000), print, "run_ended");
      record((at += 30_000), job, "job_finished");
    }
  }
  return lines;
}

/** Journal lines of a shop with finished jobs of one counted piece each, "Order 0" the first; its note is "lantern". */
export function jobLines(jobs, now) {
  const device = id(1);
  const lines = [];
  let seq = 0;
  const record = (at, subject, fact) => lines.push(JSON.stringify({ device, seq: ++seq, stamp: [at, 0], subject, fact }));
  record(now - (jobs + 1) * 3_600_000, id(0), { shop_named: "Old shop" });
  for (let number = 0; number < jobs; number++) {
    const at = now - (jobs - number) * 3_600_000;
    const notes = number === 0 ? [{ notes: "lantern" }] : [];
    const { job, run } = recordOrder(record, at, number, 1, notes);
    record(at, run, { pulled: { pieces: 1, size: "m" } });
    record(at + 60_000, job, "job_finished");
  }
  return lines;
}

/** Bytes of a backup file with these lines, made at this time (ms); packed as the app packs it, or as it is. */
export function backupFile(lines, made, { packed = false } = {}) {
  const heading = JSON.stringify({ journal: "lastpull", version: 1, entries: lines.length, made });
  const data = Buffer.from([heading, ...lines].join("\n") + "\n");
  const stored = packed ? deflateRawSync(data) : data;
  const name = Buffer.from("journal.ndjson");
  const local = Buffer.alloc(30);
  local.writeUInt32LE(0x04034b50, 0);
  local.writeUInt16LE(20, 4);
  local.writeUInt16LE(packed ? 8 : 0, 8);
  local.writeUInt16LE(0x21, 12);
  local.writeUInt32LE(crc32(data), 14);
  local.writeUInt32LE(stored.length, 18);
  local.writeUInt32LE(data.length, 22);
  local.writeUInt16LE(name.length, 26);
  const central = Buffer.alloc(46);
  central.writeUInt32LE(0x02014b50, 0);
  central.writeUInt16LE(20, 4);
  local.copy(central, 6, 4, 30);
  const end = Buffer.alloc(22);
  end.writeUInt32LE(0x06054b50, 0);
  end.writeUInt16LE(1, 8);
  end.writeUInt16LE(1, 10);
  end.writeUInt32LE(central.length + name.length, 12);
  end.writeUInt32LE(local.length + name.length + stored.length, 16);
  return Buffer.concat([local, name, stored, central, name, end]);
}
