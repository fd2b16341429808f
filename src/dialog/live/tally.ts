/** What a message of a live watch counts, and the tally as the sum of all of them. */
import { fold, rankOf, readFields, readTotal, type Context, type TallyRow } from '../../answers/index.js';
import { contextOf, lineOf } from '../hear.js';
import { changed } from '../thread.js';
import type { Live, Report, Scene, TallyLine } from '../types.js';
import { combinationSaid } from './buttons.js';
import { livePlants } from './plants.js';

export const messagesOf = ({ entries, entryMessages }: Live): readonly string[] =>
  entryMessages ?? entries.map(() => '');

/** In a live watch lines add up: each message is what was seen since the last. */
function summed(entries: Live['entries']): TallyLine[] {
  const all: TallyLine[] = [];
  for (const line of entries.flat()) {
    const at = all.findIndex(
      (known) =>
        known.plant === line.plant &&
        known.bee === line.bee &&
        known.caste === line.caste &&
        known.doubt === line.doubt,
    );
    const known = all[at];
    if (known === undefined) {
      all.push(line);
      continue;
    }
    const withPollen = line.withPollen === null ? known.withPollen : (known.withPollen ?? 0) + line.withPollen;
    all[at] = { ...known, count: known.count + line.count, seenBefore: known.seenBefore + line.seenBefore, withPollen };
  }
  // "nothing on the phlox" said early gives way to what came later
  const isOver = ({ plant }: TallyLine): boolean =>
    all.some((other) => other.count > 0 && (plant === null || other.plant === plant));
  return all.filter((line) => line.count > 0 || !isOver(line));
}

export function withEntries(
  report: Report & { live: Live },
  entries: Live['entries'],
  entryMessages: readonly string[],
): Report & { live: Live } {
  const live = { ...report.live, entries, entryMessages, corrected: undefined, unreadSince: 0 };
  return { ...changed(report, { tally: summed(entries) }), live };
}

export function countLines(
  report: Report & { live: Live },
  lines: readonly TallyLine[],
  text: string,
  scene: Scene,
): Report {
  return {
    ...withEntries(report, [...report.live.entries, lines], [...messagesOf(report.live), scene.message.id]),
    tallyTyped: [...report.tallyTyped, text],
    tallyMessage: scene.message.id,
  };
}

/** Words that say one more of the last, and nothing else: "another one!". */
const saysOneMore = (text: string, { words }: Context): boolean =>
  words.putRight.oneMore.includes(
    fold(text)
      .replace(/[^\p{L}\p{N}]+/gu, ' ')
      .trim(),
  );

/** How many more of the last, where nothing else is said: "3", "two more", but not "a fat one". */
function bareTotal(text: string, context: Context): number | null {
  const total = readTotal(text, { ...context, of: 'queens' });
  if (total.state !== 'sure' || total.value <= 0) return null;
  const beside = total.used.reduceRight((rest, [from, to]) => `${rest.slice(0, from)} ${rest.slice(to)}`, text);
  const left = context.words.putRight.besideMore.reduce(
    (rest, word) => rest.replaceAll(` ${word} `, ' '),
    ` ${fold(beside)
      .replace(/[^\p{L}\p{N}]+/gu, ' ')
      .trim()} `,
  );
  return left.trim() === '' ? total.value : null;
}

/** A button's words, a tally, "+1" or "another one" for one more like the last, or a bee without its plant: then the plant said last. */
export function readLiveTally(report: Report & { live: Live }, text: string, scene: Scene): TallyLine[] | null {
  const context = { ...contextOf(scene, report), watched: livePlants(report) };
  const said = combinationSaid(report, text, scene);
  if (said !== null) {
    const { bee, plant, isSame } = said;
    const row: TallyRow = { count: 1, bee, plant, ...(isSame ? { seenBefore: 1 } : {}) };
    return [lineOf(row, text, context)];
  }
  const last = report.live.entries.at(-1)?.at(-1);
  const moreOfLast = (count: number): TallyLine[] | null =>
    last === undefined ? null : [{ ...last, count, seenBefore: 0, withPollen: null, typed: text }];
  const plus = /^\s*\+\s*(?<more>\d{1,3})?\s*$/.exec(text);
  if (plus) return moreOfLast(Number(plus.groups?.['more'] ?? 1));
  if (saysOneMore(text, context)) return moreOfLast(1);
  const rows = rowsAfter(last, text, context);
  if (rows !== null) {
    return rows.map((row) => {
      const line = lineOf(row, text, context);
      const bee = line.bee ?? (line.count > 0 ? (last?.bee ?? null) : null);
      const rank = bee === null ? null : rankOf(bee, context);
      return { ...line, bee, rank, plant: line.plant ?? last?.plant ?? null };
    });
  }
  const total = bareTotal(text, context);
  return total === null ? null : moreOfLast(total);
}

/** The rows of a text; "same one on the phlox" means the bee of the message before, so that is said before it. */
function rowsAfter(last: TallyLine | undefined, text: string, context: Context): readonly TallyRow[] | null {
  const alone = readFields(text, context, ['tally']).fields.tally;
  if (alone?.state === 'sure') return alone.value;
  if (last?.bee == null || last.plant === null) return null;
  const watched = [...new Set([...context.watched, last.plant])];
  const both = readFields(`1 ${last.bee} on ${last.plant}, ${text}`, { ...context, watched }, ['tally']).fields.tally;
  return both?.state === 'sure' && both.value.length > 1 ? both.value.slice(1) : null;
}
