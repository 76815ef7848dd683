// Makes a photo small enough to keep, beside the page: decoded and turned upright, drawn at the size that is kept,
// encoded as JPEG. src/platform/pictures.rs says how large and how well, and does the same where this cannot.
"use strict";

/** The picture at a longest side of at most `longest`, never larger than it is. */
function drawn(picture, longest) {
  const scale = Math.min(1, longest / Math.max(picture.width, picture.height));
  const size = (side) => Math.max(1, Math.round(side * scale));
  const canvas = new OffscreenCanvas(size(picture.width), size(picture.height));
  const context = canvas.getContext("2d");
  // JPEG has no see-through: what is so in the picture lies on white.
  context.fillStyle = "#fff";
  context.fillRect(0, 0, canvas.width, canvas.height);
  // "High" takes half as long again on a phone, "low" makes patterns of a halftone.
  context.imageSmoothingQuality = "medium";
  context.drawImage(picture, 0, 0, canvas.width, canvas.height);
  return canvas;
}

const encoded = (canvas, quality) => canvas.convertToBlob({ type: "image/jpeg", quality });
const bytes = async (blob) => new Uint8Array(await blob.arrayBuffer());

/** The photo by the first of `tries` (longest side, quality) of at most `most` bytes, and the small one. */
async function made(file, tries, most, small) {
  let picture = await createImageBitmap(file, { imageOrientation: "from-image" });
  let side = 0;
  for (const [longest, quality] of tries) {
    if (longest !== side) {
      // From here on what was drawn does in place of the camera's own: a tenth of its size.
      const smaller = drawn(picture, longest);
      picture.close?.();
      picture = smaller;
      side = longest;
    }
    const photo = await encoded(picture, quality);
    if (photo.type !== "image/jpeg") return {};
    if (photo.size > most) continue;
    return { photo: await bytes(photo), little: await bytes(await encoded(drawn(picture, small[0]), small[1])) };
  }
  return {};
}

onmessage = async ({ data: [id, ...ask] }) => {
  const answer = await made(...ask).catch(() => ({}));
  postMessage({ id, ...answer }, [answer.photo, answer.little].filter(Boolean).map((all) => all.buffer));
};
