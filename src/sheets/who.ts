/** Who watched, how many together, and what the watch is good for. */
import { fold, type Context } from '../answers/index.js';
import type { Watch } from '../../shared/record.js';
import type { Complaint } from './complaint.js';
import type { Readers } from './readers.js';
import { notUnderstood } from './say.js';
import { wrong, type Told } from './told.js';
import { valueOf, writtenCount } from './value.js';

const MOST_LETTERS_OF_NAME = 60;

/** A first name or a key, as it stands; null where there is none. */
export function observerOf(told: Told | null, complaints: Complaint[]): string | null {
  if (told === null) return null;
  const name = told.text.replace(/\s+/g, ' ');
  if (name.includes('@')) {
    // an address is not said again: what is printed here may be passed on
    complaints.push({ ...wrong(told, 'a mail address is no observer; write a first name, or the key'), value: null });
    return null;
  }
  if ([...name].length <= MOST_LETTERS_OF_NAME) return name;
  complaints.push(wrong(told, 'is too long for an observer; write a first name, or the key'));
  return null;
}

export function statusOf(told: Told | null, { words }: Context, complaints: Complaint[]): Watch['status'] {
  if (told === null) return 'confirmed';
  const status = words.sheets.statuses[fold(told.text).trim()];
  if (status === undefined) complaints.push(notUnderstood(told, 'confirmed or practice'));
  return status ?? 'confirmed';
}

const WATCHERS = { example: '2', written: writtenCount };

export function watchersOf(told: Told | null, readers: Readers, complaints: Complaint[]): number {
  const watchers = valueOf(told, readers.queens, WATCHERS, complaints)?.value ?? 1;
  if (watchers > 0) return watchers;
  if (told !== null) complaints.push(wrong(told, 'is nobody; write how many people watched together, like 2'));
  return 1;
}
