/**
 * Takes the metadata from the photographs of who was forgotten. Their watches refer to a copy without it when all that
 * somebody sent is done, in one transaction: a program that is killed before begins anew, and one that is killed after
 * finds in the store which files are to go.
 */
import type { Survey } from '../../shared/survey.js';
import { say } from '../../shared/wording.js';
import {
  addReply,
  bared,
  keepWatch,
  photographsToBare,
  threadsToBare,
  watchByNumber,
  type Store,
  type ThreadKey,
  type Transaction,
} from '../store/index.js';
import { plain } from './sentences.js';

/** A file of the data folder. */
export interface Copy {
  readonly sha256: string;
  readonly type: string;
}

export interface BaringParts {
  readonly store: Store;
  readonly survey: Survey;
  /** Makes a copy without metadata, and gives it; null where the photograph is broken, unknown or gone. */
  readonly bare: (sha256: string) => Promise<Copy | null>;
  readonly newId: () => string;
}

export interface Baring {
  /** Whether anything is to be done. */
  waits(): boolean;
  /**
   * Does what waits. Rejected where a file cannot be read or written, or with a `StoreError`: what was not done still
   * waits. `now` is a UTC instant.
   */
  runDue(now: string): Promise<void>;
}

/** A photograph without which the watch must do, since no copy could be made, is dropped, and who sent it is told. */
function settle(
  transaction: Transaction,
  thread: ThreadKey,
  copies: ReadonlyMap<string, Copy | null>,
  { survey, newId }: BaringParts,
  now: string,
): void {
  // read anew: another program may have done it meanwhile
  const waiting = photographsToBare(transaction, thread).filter(({ sha256 }) => copies.has(sha256));
  for (const number of new Set(waiting.map(({ watch }) => watch))) {
    const watch = watchByNumber(transaction, thread.survey, number);
    if (watch === null) continue;
    const due = new Set(waiting.filter((one) => one.watch === number).map(({ sha256 }) => sha256));
    const photographs = watch.photographs.flatMap((photograph) => {
      if (!due.has(photograph.sha256)) return [photograph];
      const copy = copies.get(photograph.sha256) ?? null;
      return copy === null ? [] : [{ ...photograph, ...copy }];
    });
    keepWatch(transaction, { ...watch, photographs });
  }
  for (const one of waiting) bared(transaction, thread, one);
  const dropped = new Set(waiting.filter(({ sha256 }) => copies.get(sha256) === null).map(({ sha256 }) => sha256)).size;
  if (dropped === 0) return;
  const reply = { ...plain(say(survey.wording, 'photographs-dropped', { dropped })), erase: true };
  addReply(transaction, thread, { id: newId(), answers: 'forgotten', reply, at: now });
}

export function openBaring(parts: BaringParts): Baring {
  const { store, survey, bare } = parts;
  const { key } = survey.settings;
  return {
    waits: () => threadsToBare(store, key).length > 0,
    async runDue(now) {
      for (const thread of threadsToBare(store, key)) {
        const copies = new Map<string, Copy | null>();
        for (const { sha256 } of photographsToBare(store, thread))
          if (!copies.has(sha256)) copies.set(sha256, await bare(sha256));
        store.writing((transaction) => settle(transaction, thread, copies, parts, now));
      }
    },
  };
}
