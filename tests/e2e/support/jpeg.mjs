// Photos like those of a phone's camera, and the segments of a JPEG file (ITU T.81, annex B).

/** A JPEG drawn by the browser: a light background with a dark spot. */
export async function drawJpeg(page, width = 640, height = 480) {
  const base64 = await page.evaluate(async ([width, height]) => {
    const canvas = document.createElement("canvas");
    [canvas.width, canvas.height] = [width, height];
    const context = canvas.getContext("2d");
    context.fillStyle = "#d8c9a8";
    context.fillRect(0, 0, width, height);
    context.fillStyle = "#24304a";
    context.fillRect(width / 3, height / 3, width / 8, width / 8);
    const blob = await new Promise((give) => canvas.toBlob(give, "image/jpeg", 0.9));
    const bytes = new Uint8Array(await blob.arrayBuffer());
    let text = "";
    for (let at = 0; at < bytes.length; at += 8192) text += String.fromCharCode(...bytes.subarray(at, at + 8192));
    return btoa(text);
  }, [width, height]);
  return Buffer.from(base64, "base64");
}

const entry = (tag, type, count, value) => {
  const bytes = Buffer.alloc(12);
  bytes.writeUInt16BE(tag, 0);
  bytes.writeUInt16BE(type, 2);
  bytes.writeUInt32BE(count, 4);
  value.copy(bytes, 8);
  return bytes;
};
const four = (number) => { const bytes = Buffer.alloc(4); bytes.writeUInt32BE(number); return bytes; };
const directory = (entries) => Buffer.concat([Buffer.from([0, entries.length]), ...entries, four(0)]);

/** The JPEG with what a camera adds: an Exif segment with maker and location (Exif 2.3, sections 4.5 and 4.6), and a comment. */
export function withCameraMetadata(jpeg, { maker = "Invented Camera", degrees = [35, 9, 0] } = {}) {
  const name = Buffer.from(`${maker}\0`);
  const header = Buffer.from("MM\0\x2a\0\0\0\x08", "latin1");
  const first = 2 + 2 * 12 + 4;
  const gpsAt = header.length + first;
  const gps = 2 + 2 * 12 + 4;
  const place = Buffer.concat(degrees.flatMap((value) => [four(value), four(1)]));
  const tiff = Buffer.concat([
    header,
    directory([entry(0x010f, 2, name.length, four(gpsAt + gps + place.length)), entry(0x8825, 4, 1, four(gpsAt))]),
    directory([entry(1, 2, 2, Buffer.from("N\0")), entry(2, 5, 3, four(gpsAt + gps))]),
    place,
    name,
  ]);
  const segment = (marker, body) => {
    const head = Buffer.from([0xff, marker, 0, 0]);
    head.writeUInt16BE(body.length + 2, 2);
    return Buffer.concat([head, body]);
  };
  return Buffer.concat([
    jpeg.subarray(0, 2),
    segment(0xe1, Buffer.concat([Buffer.from("Exif\0\0", "latin1"), tiff])),
    segment(0xe1, Buffer.from("http://ns.adobe.com/xap/1.0/\0<x:xmpmeta/>")),
    segment(0xfe, Buffer.from("taken at the press")),
    jpeg.subarray(2),
  ]);
}

/** Markers and bodies of a JPEG's segments before the picture data. Throws if it is no JPEG. */
export function segments(bytes) {
  if (bytes[0] !== 0xff || bytes[1] !== 0xd8) throw new Error("no start of image");
  const found = [];
  for (let at = 2; at < bytes.length; ) {
    if (bytes[at] !== 0xff) throw new Error(`no marker at ${at}`);
    const marker = bytes[at + 1];
    const length = (bytes[at + 2] << 8) | bytes[at + 3];
    found.push({ marker, body: bytes.subarray(at + 4, at + 2 + length) });
    if (marker === 0xda) return found;
    at += 2 + length;
  }
  throw new Error("no start of scan");
}

/** Segments with metadata: APPn except the JFIF header, and comments. */
export function metadataSegments(bytes) {
  return segments(bytes).filter(({ marker, body }) =>
    marker === 0xfe || (marker > 0xe0 && marker <= 0xef) || (marker === 0xe0 && Buffer.from(body.subarray(0, 5)).toString("latin1") !== "JFIF\0"));
}
