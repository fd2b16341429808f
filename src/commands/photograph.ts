/** Takes a photograph from a file into the data folder. */
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Content } from '../../shared/message.js';
import { keepPhotograph } from '../channels/photographs.js';
import { CommandError } from './command.js';
import { PHOTOGRAPHS } from './sweep.js';

/** Where a data folder's photographs are. */
export const photographsIn = (data: string): string => join(data, PHOTOGRAPHS);

/** Throws `CommandError` where the file cannot be read or is no photograph. */
export async function photographFrom(path: string, data: string, timeZone: string): Promise<Content> {
  let bytes: Buffer;
  try {
    bytes = await readFile(path);
  } catch (cause) {
    throw new CommandError(`The photograph ${path} cannot be read.`, { cause });
  }
  const kept = await keepPhotograph(bytes, { folder: photographsIn(data), timeZone });
  if (kept === null) throw new CommandError(`${path} is no photograph I can take: JPEG, PNG, WebP or HEIC.`);
  return kept;
}
