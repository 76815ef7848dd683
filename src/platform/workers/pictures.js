// Worker that makes a photo small enough to store: decodes it upright, scales it, and encodes it as JPEG.
// src/platform/pictures.rs decides the sizes and qualities, and does the same on the main thread if this fails.
"use strict";

/** The picture with its longest side at most `longest` pixels, never enlarged. */
function scaled(picture, longest) {
  const scale = Math.min(1, longest / Math.max(picture.width, picture.height));
  const size = (side) => Math.max(1, Math.round(side * scale));
  const canvas = new OffscreenCanvas(size(picture.width), size(picture.height));
  const context = canvas.getContext("2d");
  // JPEG has no transparency: transparent pixels become white.
  context.fillStyle = "#fff";
  context.fillRect(0, 0, canvas.width, canvas.height);
  // "high" takes half as long again on a phone, "low" causes moiré in a halftone.
  context.imageSmoothingQuality = "medium";
  context.drawImage(picture, 0, 0, canvas.width, canvas.height);
  return canvas;
}

const encode = (canvas, quality) => canvas.convertToBlob({ type: "image/jpeg", quality });
const bytesOf = async (blob) => new Uint8Array(await blob.arrayBuffer());

/** The first of `attempts` (longest side, quality) that takes at most `maxBytes`, and a thumbnail of size `small`. */
async function shrink(file, attempts, maxBytes, small) {
  let picture = await createImageBitmap(file, { imageOrientation: "from-image" });
  let side = 0;
  for (const [longest, quality] of attempts) {
    if (longest !== side) {
      // Later attempts start from this smaller picture: a tenth of the camera's size.
      const smaller = scaled(picture, longest);
      picture.close?.();
      picture = smaller;
      side = longest;
    }
    const photo = await encode(picture, quality);
    if (photo.type !== "image/jpeg") return {};
    if (photo.size > maxBytes) continue;
    return { photo: await bytesOf(photo), little: await bytesOf(await encode(scaled(picture, small[0]), small[1])) };
  }
  return {};
}

onmessage = async ({ data: [id, ...request] }) => {
  const answer = await shrink(...request).catch(() => ({}));
  postMessage({ id, ...answer }, [answer.photo, answer.little].filter(Boolean).map((bytes) => bytes.buffer));
};
