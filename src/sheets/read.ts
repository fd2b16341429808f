/** Reads whole sheets: finds how each is laid out, and reads its watches. */
import type { Context } from '../answers/index.js';
import type { Sheet } from './cell.js';
import { inOrder, quoted, type Complaint } from './complaint.js';
import { looksLikeGrid, readGrids } from './grid.js';
import { ofSheet, type Layout } from './raw.js';
import { readWatch, type Reading, type SheetWatch } from './read-watch.js';
import { readersOf } from './readers.js';
import { headerOf, readRows, saysAnything } from './rows.js';
import type { Told } from './told.js';
import { dayKey, habitsOf } from './when.js';

export interface SheetsRead {
  /** In the order of sheets and lines. */
  readonly watches: readonly SheetWatch[];
  /** What is wrong with a sheet or its headings, and so with all that is in it. */
  readonly complaints: readonly Complaint[];
  /** What was passed over, as whole sentences. */
  readonly notices: readonly string[];
}

const NEITHER =
  'has neither a line of headings (such as date, start, observer, plant, flowers, bee, count) nor labels (such as “Date:”) above a table of bees by plants';

function layoutOf(sheet: Sheet, context: Context, dayOf: (told: Told) => string): Layout | null {
  const header = headerOf(sheet, context.words);
  if (header !== null) return readRows(sheet, header, context, dayOf);
  return looksLikeGrid(sheet, context.words) ? readGrids(sheet, context.words) : null;
}

/** Two watches of one observer that began at the same moment: a slip in one of them, or the same watch twice. */
function sameMoments(watches: readonly SheetWatch[]): Map<SheetWatch, Complaint> {
  const first = new Map<string, SheetWatch>();
  const found = new Map<SheetWatch, Complaint>();
  for (const watch of watches) {
    const { observer, date, times, file, sheet, line, foundBy } = watch;
    if (observer === null || date === null || times === null) continue;
    const key = JSON.stringify([observer.toLowerCase(), date, times.start]);
    const before = first.get(key);
    if (before === undefined) first.set(key, watch);
    // those that were given numbers of their own are two, whatever else they have in common
    else if (foundBy !== 'number' || before.foundBy !== 'number' || before.sheet !== sheet) {
      const other = `line ${before.line}${before.sheet === sheet ? '' : ` of sheet ${quoted(before.sheet ?? '')}`}`;
      const what = `the watch of ${observer} on ${date} began at ${times.start}, and so did the one in ${other}; write place and times alike in all rows of a watch, give each watch a number in a column “watch”, or leave one out`;
      found.set(watch, ofSheet({ file, name: sheet }, what, { about: 'place', line }));
    }
  }
  return found;
}

/** Reads the sheets of one file. `siteOf` tells the survey's site that a place belongs to. */
export function readSheets(sheets: readonly Sheet[], context: Context, siteOf: Reading['siteOf']): SheetsRead {
  const days = new Map<string, string>();
  const dayOf = (told: Told): string => {
    const key = `${told.unit ?? ''} ${told.text}`;
    const day = days.get(key) ?? dayKey(told, context);
    days.set(key, day);
    return day;
  };
  const full = sheets.filter((sheet) => saysAnything(sheet, context.words));
  const laidOut = full.map((sheet) => ({ sheet, layout: layoutOf(sheet, context, dayOf) }));
  const layouts = laidOut.flatMap(({ layout }) => layout ?? []);
  const strange = laidOut.filter(({ layout }) => layout === null).map(({ sheet }) => sheet);
  const raw = layouts.flatMap(({ watches }) => watches);

  const readers = readersOf(context);
  const habits = habitsOf(raw, context);
  const read = raw.map((watch) => readWatch(watch, { context, habits, readers, siteOf }));
  const twice = sameMoments(read);
  const watches = read.map((watch) => {
    const complaint = twice.get(watch);
    if (complaint === undefined) return watch;
    return {
      ...watch,
      complaints: [...watch.complaints, complaint],
      astray: watch.astray || watch.foundBy === 'cells',
    };
  });

  const complaints = layouts.flatMap((layout) => layout.complaints);
  const notices = layouts.flatMap((layout) => layout.notices);
  // a page of explanations is no harm beside pages of watches
  for (const sheet of strange) {
    if (raw.length === 0) complaints.push(ofSheet(sheet, NEITHER));
    else
      notices.push(
        `${sheet.file}: sheet ${quoted(sheet.name ?? '')} has no watches that could be found, and was passed over.`,
      );
  }
  const [any] = sheets;
  if (full.length === 0 && any !== undefined) complaints.push(ofSheet({ file: any.file, name: null }, 'is empty'));
  else if (raw.length === 0 && complaints.length === 0 && any !== undefined) {
    complaints.push(ofSheet({ file: any.file, name: null }, 'has headings, but no watch below them'));
  }
  const order = sheets.map(({ name }) => name);
  return { watches, complaints: inOrder(complaints, order), notices };
}
