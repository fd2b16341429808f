/**
 * A thread that decodes one HEIC picture and says its pixels, or null where it cannot be decoded; it dies where the
 * library cannot be loaded. Plain JavaScript: Node loads it as it stands, in a test as in the built program.
 */
import { parentPort, workerData } from 'node:worker_threads';
// libheif with a memory of its own, which goes with the thread
import open from 'libheif-js/libheif-wasm/libheif.js';

/** Rows of a decoded picture are `stride` bytes apart; none of the library's memory can be handed over. */
function packed({ channels, width, height }) {
  const channel = channels?.[0];
  if (channel === undefined) return null;
  const { data, stride } = channel;
  const row = width * 3;
  const pixels = new Uint8Array(row * height);
  for (let y = 0; y < height; y++) pixels.set(data.subarray(y * stride, y * stride + row), y * row);
  return { data: pixels, width, height };
}

/** By the bare calls, since the class around them writes to standard output. */
function decoded(heif, { bytes, mostPixels }) {
  const context = heif.heif_context_alloc();
  if (heif.heif_context_read_from_memory(context, bytes).code.value !== 0) return null;
  const picture = heif.heif_js_context_get_primary_image_handle(context);
  if ('code' in picture) return null; // an error in its place
  if (heif.heif_image_handle_get_width(picture) * heif.heif_image_handle_get_height(picture) > mostPixels) return null;
  const { heif_colorspace_RGB: rgb } = heif.heif_colorspace;
  const { heif_chroma_interleaved_RGB: interleaved } = heif.heif_chroma;
  return packed(heif.heif_js_decode_image2(picture, rgb, interleaved));
}

const heif = open();
let pixels = null;
try {
  pixels = decoded(heif, workerData);
} catch {
  // it throws nothing but that the picture is broken
}
parentPort.postMessage(pixels, pixels === null ? [] : [pixels.data.buffer]);
