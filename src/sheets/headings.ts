/** What a heading, or a label beside a value, names: "Temp (F)", "wind mph", "start_time", "Date (DD/MM/YYYY)". */
import { distance } from 'fastest-levenshtein';
import type { Words } from '../../shared/words.js';
import { SHEET_COLUMNS, type SheetColumn } from '../../shared/words/sheets.js';
import { fold } from '../answers/index.js';

export type Heading =
  | { readonly state: 'known'; readonly column: SheetColumn; readonly unit: string | null }
  /** Its unit is none that this column has. */
  | { readonly state: 'unit'; readonly column: SheetColumn; readonly said: string; readonly known: readonly string[] }
  /** Nearly a known one: a slip of the pen that must not lose a column. */
  | { readonly state: 'slip'; readonly near: string }
  | { readonly state: 'unknown' };

/** Shorter headings than this are other words as soon as one letter differs. */
const LEAST_LETTERS_OF_SLIP = 4;
const LETTERS_FOR_TWO_SLIPS = 8;
/** Longer ones are sentences. */
const MOST_LETTERS = 60;
const MOST_WORDS_OF_UNIT = 3;

/** Small letters, one blank between words; "startTime" and "start_time" are "start time". */
const plainWords = (text: string): string =>
  fold(text.replace(/(\p{Ll})(\p{Lu})/gu, '$1 $2'))
    .replaceAll('#', ' no ')
    .replace(/[_:;*?!"\\|]+|\.(?=\s|$)/g, ' ')
    .replace(/\s+/g, ' ')
    .trim();

interface Vocabulary {
  readonly columns: ReadonlyMap<string, SheetColumn>;
  readonly besides: ReadonlySet<string>;
}

/** "start/end", "watch-no": signs between words may be there or not. */
const columnOf = (name: string, { columns }: Vocabulary): SheetColumn | undefined =>
  columns.get(name) ?? columns.get(name.replace(/[\s/&-]+/g, ' ').trim());

const vocabularies = new WeakMap<Words, Vocabulary>();

function vocabularyOf(words: Words): Vocabulary {
  const known = vocabularies.get(words);
  if (known) return known;
  const { headings, besides } = words.sheets;
  const columns = new Map(SHEET_COLUMNS.flatMap((column) => headings[column].map((word) => [word, column] as const)));
  const made = { columns, besides: new Set(besides) };
  vocabularies.set(words, made);
  return made;
}

/** Heading and what stands in brackets or behind a comma in it. */
function apart(text: string): { name: string; aside: string | null } {
  const bracket = /[([{<](?<aside>[^)\]}>]*)[)\]}>]?/.exec(text);
  if (bracket) {
    const name = `${text.slice(0, bracket.index)} ${text.slice(bracket.index + bracket[0].length)}`;
    return { name: plainWords(name), aside: plainWords(bracket.groups?.['aside'] ?? '') };
  }
  const comma = text.indexOf(',');
  if (comma < 0) return { name: plainWords(text), aside: null };
  return { name: plainWords(text.slice(0, comma)), aside: plainWords(text.slice(comma + 1)).replace(/^in /, '') };
}

/** "wind mph", "temperature in f", "cloud %": the last words are the unit. */
function unitBehind(name: string, words: Words): Heading | null {
  const parts = name.replace(/(?<=\p{L})%/u, ' %').split(' ');
  for (let count = 1; count <= Math.min(MOST_WORDS_OF_UNIT, parts.length - 1); count++) {
    const before = parts.slice(0, -count);
    if (before.length > 1 && before.at(-1) === 'in') before.pop();
    const column = columnOf(before.join(' '), vocabularyOf(words));
    const unit = column === undefined ? undefined : words.sheets.units[column]?.[parts.slice(-count).join(' ')];
    if (column !== undefined && unit !== undefined) return { state: 'known', column, unit };
  }
  return null;
}

/** The known heading of which this one is a slip. */
function nearest(name: string, words: Words): string | null {
  if (name.length < LEAST_LETTERS_OF_SLIP || name.length > MOST_LETTERS) return null;
  const most = name.length < LETTERS_FOR_TWO_SLIPS ? 1 : 2;
  for (const word of vocabularyOf(words).columns.keys()) {
    if (word.length < LEAST_LETTERS_OF_SLIP || Math.abs(word.length - name.length) > most) continue;
    if (distance(word, name) <= most) return word;
  }
  return null;
}

/** What a heading names. Any case; a unit in brackets, behind a comma or as its last words. */
export function readHeading(text: string, words: Words): Heading {
  const vocabulary = vocabularyOf(words);
  const { name, aside } = apart(text);
  const whole = columnOf(plainWords(text), vocabulary);
  if (whole !== undefined) return { state: 'known', column: whole, unit: null };
  if (aside !== null) {
    // "Time (start)", "Count (queens)"
    const both = columnOf(`${name} ${aside}`, vocabulary) ?? columnOf(`${aside} ${name}`, vocabulary);
    if (both !== undefined) return { state: 'known', column: both, unit: null };
  }
  const column = columnOf(name, vocabulary);
  if (column === undefined) {
    const behind = unitBehind(name, words);
    if (behind !== null) return behind;
    const near = nearest(name, words);
    return near === null ? { state: 'unknown' } : { state: 'slip', near };
  }
  const units = words.sheets.units[column];
  if (units === undefined || aside === null || aside === '') return { state: 'known', column, unit: null };
  const unit = units[aside];
  if (unit !== undefined) return { state: 'known', column, unit };
  if (vocabulary.besides.has(aside)) return { state: 'known', column, unit: null };
  return { state: 'unit', column, said: aside, known: [...new Set(Object.values(units))] };
}
