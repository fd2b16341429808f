/**
 * A photograph without its metadata: who took it, when, where and with what. The picture is decoded and written anew, so
 * that nothing else of the file is left, known or not: EXIF, GPS, XMP, IPTC, comments, thumbnails, what stands behind
 * its end. What is kept of somebody forgotten goes through here, and any copy that would leave the data folder must.
 */
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { heicPixels } from './heic-pixels.js';
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

/**
 * The picture alone, upright. Null where the bytes are no photograph that we take, or one that is cut off or cannot be
 * decoded. Throws where what does it cannot be loaded, or its thread dies.
 */
export async function barePhotograph(bytes: Buffer): Promise<BarePhotograph | null> {
  const type = typeOfPicture(bytes);
  if (type === null) return null;
  const { default: sharp } = await import('sharp');
  const heic = type === 'image/heic' ? await heicPixels(bytes, { mostPixels: MOST_PIXELS }) : null;
  if (type === 'image/heic' && heic === null) return null;
  try {
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
