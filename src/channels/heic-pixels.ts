/**
 * The pixels of a HEIC picture, decoded in a thread of its own: a phone's photograph takes libheif three seconds, in
 * which nobody else would be answered. The thread lives for one picture, and its memory goes with it.
 */
import { once } from 'node:events';
import { join } from 'node:path';
import { Worker } from 'node:worker_threads';

/** Red, green and blue of each pixel, row by row from the upper left, turned as the picture is meant to be seen. */
export interface Pixels {
  readonly data: Uint8Array;
  readonly width: number;
  readonly height: number;
}

/** Beside this file, and beside the built program. */
const THREAD = join(import.meta.dirname, 'heic-worker.mjs');
/** A photograph of 48 megapixels, on a machine many times slower than ours. Common practice, no source. */
const MOST_SECONDS = 120;

export interface Limits {
  /** A larger picture is not decoded. */
  readonly mostPixels: number;
  readonly mostSeconds?: number;
  /** What the thread runs, in place of the decoder. */
  readonly thread?: string;
}

/**
 * Null where the picture cannot be decoded or is too large. Rejected where the thread dies, takes too long or cannot load
 * the library: that tells nothing of the picture. No thread is left behind in any case.
 */
export async function heicPixels(
  bytes: Buffer,
  { mostPixels, mostSeconds = MOST_SECONDS, thread = THREAD }: Limits,
): Promise<Pixels | null> {
  // with no flags of the program's own
  const worker = new Worker(thread, { workerData: { bytes: new Uint8Array(bytes), mostPixels }, execArgv: [] });
  worker.on('error', () => undefined); // what comes when nobody waits any more must not end the program
  const ended = new AbortController();
  const { signal } = ended;
  const timer = setTimeout(() => ended.abort('late'), mostSeconds * 1000);
  try {
    const [pixels] = (await Promise.race([
      once(worker, 'message', { signal }),
      once(worker, 'exit', { signal }).then(([code]) => {
        throw new Error(`its thread ended with code ${code}`);
      }),
    ])) as [Pixels | null];
    return pixels;
  } catch (error) {
    const why = signal.aborted
      ? `it took more than ${mostSeconds} seconds`
      : error instanceof Error
        ? error.message
        : String(error);
    throw new Error(`A HEIC photograph could not be decoded (${why}); it stays as it is and is tried again.`, {
      cause: error,
    });
  } finally {
    clearTimeout(timer);
    ended.abort();
    await worker.terminate();
  }
}
