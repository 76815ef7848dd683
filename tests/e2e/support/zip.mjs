// Writing and reading ZIP files independently of the app.
import { deflateRawSync, inflateRawSync } from "node:zlib";

const TABLE = Array.from({ length: 256 }, (_, n) => {
  for (let bit = 0; bit < 8; bit += 1) n = n & 1 ? 0xedb88320 ^ (n >>> 1) : n >>> 1;
  return n >>> 0;
});

function crc(bytes) {
  let sum = 0xffffffff;
  for (const byte of bytes) sum = TABLE[(sum ^ byte) & 255] ^ (sum >>> 8);
  return (sum ^ 0xffffffff) >>> 0;
}

/** A ZIP of one file. `claims` is the uncompressed size it states, `sum` the checksum. */
export function zipOf(name, text, { claims, sum } = {}) {
  const bytes = Buffer.from(text);
  const packed = deflateRawSync(bytes);
  const head = (signature, extra) => {
    const out = Buffer.alloc(signature === 0x04034b50 ? 30 : 46);
    out.writeUInt32LE(signature);
    let at = 4;
    const two = (value) => { out.writeUInt16LE(value, at); at += 2; };
    const four = (value) => { out.writeUInt32LE(value, at); at += 4; };
    if (extra) two(20);
    [20, 0, 8, 0, 33].forEach(two);
    [sum ?? crc(bytes), packed.length, claims ?? bytes.length].forEach(four);
    two(name.length);
    return Buffer.concat([out, Buffer.from(name)]);
  };
  const local = head(0x04034b50, false);
  const central = head(0x02014b50, true);
  const end = Buffer.alloc(22);
  end.writeUInt32LE(0x06054b50);
  end.writeUInt16LE(1, 8);
  end.writeUInt16LE(1, 10);
  end.writeUInt32LE(central.length, 12);
  end.writeUInt32LE(local.length + packed.length, 16);
  return Buffer.concat([local, packed, central, end]);
}

/** Lines of the journal in a backup: the heading, then one fact each. */
export function journalLines(backup) {
  const size = backup.indexOf(Buffer.from([0x50, 0x4b, 1, 2]));
  const packed = backup.readUInt32LE(size + 20);
  const start = 30 + backup.readUInt16LE(26) + backup.readUInt16LE(28);
  return inflateRawSync(backup.subarray(start, start + packed)).toString("utf8").trimEnd().split("\n");
}

/** A backup of these lines, with `entries` as the number of facts in its heading. */
export function backupZip(lines, entries = lines.length - 1) {
  const heading = JSON.stringify({ ...JSON.parse(lines[0]), entries });
  return zipOf("journal.ndjson", [heading, ...lines.slice(1), ""].join("\n"));
}
