/** The date words of a language, made ready to be met in a text, small misspellings included. */
import { distance } from 'fastest-levenshtein';
import type { Words } from '../../../shared/words.js';
import { byWord, madeOnce } from '../text.js';
import { withVowels } from '../vowels.js';
import type { Feast } from './calendar.js';
import { phraseIndex, phraseSet, type PhraseIndex, type Token } from './tokens.js';

/** What one word names. A short weekday ("sat") is one only in the right company. */
export type Name =
  | { readonly is: 'month'; readonly month: number }
  | { readonly is: 'weekday'; readonly weekday: number; readonly short: boolean }
  | { readonly is: 'days'; readonly daysBack: number };

/** Shorter words are too near to other words to be taken for a slip of the thumb. */
const LEAST_LETTERS_OF_SLIP = 5;
/** Words this long may have two slips ("yestrdy"): nothing else in English is as near. */
const LETTERS_FOR_TWO_SLIPS = 8;

export type WeekdayLead = 'last' | 'just-past' | 'this' | 'next';
export type WeekdayTail = 'next' | 'last-week' | 'this-week' | 'before-last' | 'week-ago' | 'last';

export interface DayWords {
  /** What a word names; several where a slip is as near to two names. */
  readonly namesOf: (token: Token) => readonly Name[];
  readonly ordinals: Readonly<Record<string, number>>;
  readonly days: PhraseIndex<number>;
  readonly daysWhenAsked: PhraseIndex<number>;
  readonly weekdayLeads: PhraseIndex<WeekdayLead>;
  readonly weekdayTails: PhraseIndex<WeekdayTail>;
  readonly feasts: PhraseIndex<Feast>;
  readonly shifts: PhraseIndex<number>;
  readonly inexact: PhraseIndex<number>;
  readonly the: PhraseIndex<true>;
  readonly of: PhraseIndex<true>;
  readonly on: PhraseIndex<true>;
  readonly ordinalEndings: PhraseIndex<true>;
  readonly afterNumber: PhraseIndex<true>;
  readonly ago: PhraseIndex<true>;
  readonly roughly: PhraseIndex<true>;
  readonly orSo: PhraseIndex<true>;
  readonly before: PhraseIndex<true>;
  readonly after: PhraseIndex<true>;
  readonly dayUnitsOfShift: PhraseIndex<true>;
  readonly lastWeek: PhraseIndex<true>;
  readonly weekAgo: PhraseIndex<true>;
  readonly lastMonth: PhraseIndex<true>;
  readonly thisMonth: PhraseIndex<true>;
  readonly weekend: PhraseIndex<true>;
  readonly vague: PhraseIndex<true>;
  readonly never: PhraseIndex<true>;
  readonly fractionOf: PhraseIndex<true>;
  readonly fractionBefore: PhraseIndex<true>;
  readonly counted: PhraseIndex<true>;
  readonly notMonthBefore: PhraseIndex<true>;
  readonly labels: PhraseIndex<true>;
  readonly dayGoesOn: PhraseIndex<true>;
  readonly partsOfDay: PhraseIndex<true>;
  readonly or: PhraseIndex<true>;
}

/** One pair of neighbouring letters changed places: "thrusday". */
function swapped(typed: string, word: string): boolean {
  if (typed.length !== word.length) return false;
  const at = [...typed].findIndex((letter, i) => letter !== word[i]);
  if (at < 0) return false;
  const mended = typed.slice(0, at) + (typed[at + 1] ?? '') + (typed[at] ?? '') + typed.slice(at + 2);
  return mended === word;
}

function namesFinder({ date, dictionary }: Words): (token: Token) => readonly Name[] {
  const exact = new Map<string, Name>();
  for (const [word, month] of Object.entries(date.months)) exact.set(word, { is: 'month', month });
  for (const [word, weekday] of Object.entries(date.weekdays))
    exact.set(word, { is: 'weekday', weekday, short: false });
  for (const [word, weekday] of Object.entries(date.weekdaysShort)) {
    exact.set(word, { is: 'weekday', weekday, short: true });
  }
  const slippable = new Map([...exact].filter(([word]) => word.length >= LEAST_LETTERS_OF_SLIP));
  for (const [word, daysBack] of Object.entries(date.days)) {
    if (/^\p{L}+$/u.test(word) && word.length >= LEAST_LETTERS_OF_SLIP) slippable.set(word, { is: 'days', daysBack });
  }
  const notSlips = new Set(date.notSlips);
  const clipped = withVowels(
    [...slippable].map(([word, name]) => [word, JSON.stringify(name)] as const),
    notSlips,
  );

  const meant = byWord((stem): readonly Name[] => {
    const known = exact.get(stem);
    if (known) return [known];
    if (stem.length < LEAST_LETTERS_OF_SLIP - 1 || notSlips.has(stem) || dictionary.has(stem)) return [];
    const whole = clipped(stem);
    if (whole !== undefined) return [JSON.parse(whole) as Name];
    // People slip in the middle of a word; another first letter is another word ("larch")
    const near = [...slippable].flatMap(([word, name]) => {
      if (word[0] !== stem[0] || Math.abs(word.length - stem.length) > 2) return [];
      const slips = swapped(stem, word) ? 1 : distance(stem, word);
      const allowed = word.length >= LETTERS_FOR_TWO_SLIPS ? 2 : 1;
      return slips <= allowed ? [{ name, slips }] : [];
    });
    const least = Math.min(...near.map(({ slips }) => slips));
    const names = near.filter(({ slips }) => slips === least).map(({ name }) => name);
    return names.filter((name, i) => names.findIndex((other) => JSON.stringify(other) === JSON.stringify(name)) === i);
  });
  return ({ kind, stem }) => (kind === 'word' ? meant(stem) : []);
}

const kinds = <Kind>(...lists: (readonly [readonly string[], Kind])[]): PhraseIndex<Kind> =>
  phraseIndex(lists.flatMap(([phrases, kind]) => phrases.map((phrase) => [phrase, kind] as const)));

export const dayWords = madeOnce((words: Words): DayWords => {
  const { date, when } = words;
  return {
    namesOf: namesFinder(words),
    ordinals: date.ordinals,
    days: phraseIndex(Object.entries(date.days)),
    daysWhenAsked: phraseIndex(Object.entries(date.daysWhenAsked)),
    weekdayLeads: kinds<WeekdayLead>(
      [date.last, 'last'],
      [date.justPast, 'just-past'],
      [date.this, 'this'],
      [date.next, 'next'],
    ),
    weekdayTails: kinds<WeekdayTail>(
      [date.last, 'last'],
      [date.next, 'next'],
      [date.lastWeek, 'last-week'],
      [date.thisWeek, 'this-week'],
      [date.beforeLast, 'before-last'],
      [date.weekAgo, 'week-ago'],
    ),
    feasts: phraseIndex(Object.entries(date.feasts)),
    shifts: phraseIndex(Object.entries(date.shifts)),
    inexact: phraseIndex(Object.entries(date.inexact)),
    the: phraseSet(date.the),
    of: phraseSet(date.of),
    on: phraseSet(date.on),
    ordinalEndings: phraseSet(date.ordinalEndings),
    afterNumber: phraseSet(date.afterNumber),
    ago: phraseSet(date.ago),
    roughly: phraseSet(date.roughly),
    orSo: phraseSet(date.orSo),
    before: phraseSet(date.before),
    after: phraseSet(date.after),
    dayUnitsOfShift: phraseSet(date.dayUnitsOfShift),
    lastWeek: phraseSet(date.lastWeek),
    weekAgo: phraseSet(date.weekAgo),
    lastMonth: phraseSet(date.lastMonth),
    thisMonth: phraseSet(date.thisMonth),
    weekend: phraseSet(date.weekend),
    vague: phraseSet(date.vague),
    never: phraseSet(date.never),
    fractionOf: phraseSet(date.fractionOf),
    fractionBefore: phraseSet(date.fractionBefore),
    counted: phraseSet(date.counted),
    notMonthBefore: phraseSet(date.notMonthBefore),
    labels: phraseSet(date.labels),
    dayGoesOn: phraseSet(date.dayGoesOn),
    partsOfDay: phraseSet(date.partsOfDay),
    or: phraseSet(when.or),
  };
});
