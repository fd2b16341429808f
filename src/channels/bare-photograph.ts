/**
 * A photograph without its metadata: who took it, when, where and with what. The picture is decoded and written anew, so
 * that nothing else of the file is left, known or not: EXIF, GPS, XMP, IPTC, comments, thumbnails, what stands behind
 * its end. What is kept of somebody forgotten goes through here, and any copy that would leave the data folder must.
 */
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { MainModule } from 'libheif-js/libheif-wasm/libheif.js';
import { keepFile, typeOfPicture } from './photographs.js';

/** High enough that no hair of a bee is lost to it; in per cent, for JPEG and WebP. Common practice, no source. */
const QUALITY = 95;
/** What sharp takes of any format, 268 megapixels: a larger HEIC is not decoded either. */
const MOST_PIXELS = 0x3fff * 0x3fff;

export interface BarePhotograph {
  readonly bytes: Buffer;
  /** That of the photograph; of HEIC it is JPEG, since no library that may go with ours writes HEIC. */
  readonly type: string;
}

interface Pixels {
  readonly data: Uint8Array;
  readonly width: number;
  readonly height: number;
}

/** What libheif gives for a decoded picture; its type file says nothing of it. Rows are `stride` bytes apart. */
interface Decoded {
  readonly channels?: readonly { readonly data: Uint8Array; readonly stride: number }[];
  readonly width: number;
  readonly height: number;
}

function pixelsOf({ channels, width, height }: Decoded): Pixels | null {
  const channel = channels?.[0];
  if (channel === undefined) return null;
  const { data, stride } = channel;
  const row = width * 3;
  if (stride === row) return { data, width, height };
  const packed = new Uint8Array(row * height);
  for (let y = 0; y < height; y++) packed.set(data.subarray(y * stride, y * stride + row), y * row);
  return { data: packed, width, height };
}

/** libheif with a memory of its own, which goes with it. */
async function openHeif(): Promise<MainModule> {
  // its type file is written as for an ES module, which it is not
  const open = (await import('libheif-js/libheif-wasm/libheif.js')).default as unknown as () => MainModule;
  return open();
}

/**
 * Red, green and blue of a HEIC picture, turned as it is meant to be seen; null where it cannot be decoded. By the bare
 * calls, since the class around them writes to standard output.
 */
function heicPixels(heif: MainModule, bytes: Buffer): Pixels | null {
  const context = heif.heif_context_alloc();
  if (heif.heif_context_read_from_memory(context, bytes).code.value !== 0) return null;
  const handle = heif.heif_js_context_get_primary_image_handle(context) as object;
  if ('code' in handle) return null; // an error in its place
  const picture = handle as Parameters<typeof heif.heif_image_handle_get_width>[0];
  const pixels = heif.heif_image_handle_get_width(picture) * heif.heif_image_handle_get_height(picture);
  if (pixels > MOST_PIXELS) return null;
  const { heif_colorspace: spaces, heif_chroma: chromas } = heif;
  const { heif_colorspace_RGB: rgb } = spaces;
  return pixelsOf(heif.heif_js_decode_image2(picture, rgb, chromas.heif_chroma_interleaved_RGB) as Decoded);
}

/**
 * The picture alone, upright. Null where the bytes are no photograph that we take, or one that is cut off or cannot be
 * decoded. Throws where the library that does it cannot be loaded.
 */
export async function barePhotograph(bytes: Buffer): Promise<BarePhotograph | null> {
  const type = typeOfPicture(bytes);
  if (type === null) return null;
  const { default: sharp } = await import('sharp');
  const heif = type === 'image/heic' ? await openHeif() : null;
  try {
    const heic = heif === null ? null : heicPixels(heif, bytes);
    if (heif !== null && heic === null) return null;
    const picture =
      heic === null
        ? sharp(bytes, { failOn: 'error' }).autoOrient()
        : sharp(heic.data, { raw: { width: heic.width, height: heic.height, channels: 3 } });
    switch (type) {
      case 'image/png':
        return { bytes: await picture.png().toBuffer(), type };
      case 'image/webp':
        return { bytes: await picture.webp({ quality: QUALITY }).toBuffer(), type };
      default:
        // colours as fine as brightness: bands of hair are told by them
        return {
          bytes: await picture.jpeg({ quality: QUALITY, chromaSubsampling: '4:4:4' }).toBuffer(),
          type: 'image/jpeg',
        };
    }
  } catch {
    return null; // both throw nothing but that the picture is broken
  }
}

const isMissing = (error: unknown): boolean => error instanceof Error && 'code' in error && error.code === 'ENOENT';

/**
 * Keeps a copy without metadata of the photograph of that hash beside it, and gives its hash and type. Null where there is
 * none to be made: the photograph is broken, unknown or gone. Rejected where the folder cannot be read or written.
 */
export async function bareCopy(
  folder: string,
  sha256: string,
): Promise<{ readonly sha256: string; readonly type: string } | null> {
  let bytes: Buffer;
  try {
    bytes = await readFile(join(folder, sha256));
  } catch (error) {
    if (isMissing(error)) return null;
    throw error;
  }
  const bare = await barePhotograph(bytes);
  return bare === null ? null : { sha256: await keepFile(folder, bare.bytes), type: bare.type };
}
