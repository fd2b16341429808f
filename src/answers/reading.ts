/** What every reader takes and gives: the reading of one answer is sure, unsure or none. */
import type { Ask } from '../../shared/phrases.js';
import type { Names } from '../../shared/names.js';
import type { SurveySettings } from '../../shared/survey.js';
import type { Words } from '../../shared/words.js';

/** Positions `[from, to)` in the text, in UTF-16 code units. */
export type Span = readonly [from: number, to: number];

export type Reading<Value> =
  /** One meaning. */
  | { readonly state: 'sure'; readonly value: Value; readonly used: readonly Span[] }
  /** A best meaning and a doubt: `offer`, best first, never empty but where only a missing part can be asked for. */
  | { readonly state: 'unsure'; readonly offer: readonly Value[]; readonly ask: Ask; readonly used: readonly Span[] }
  /** No meaning. */
  | { readonly state: 'none'; readonly ask: Ask; readonly used: readonly Span[] };

/** What a reader may know besides the text. Plain data; `today` and `time` are local to the survey's zone. */
export interface Context {
  readonly survey: SurveySettings;
  readonly words: Words;
  readonly names: Names;
  /** `2026-05-06`. */
  readonly today: string;
  /** `18:30`. */
  readonly time: string;
  /** Plants of the patch: accepted names, or the words as typed where the list has none. */
  readonly watched: readonly string[];
  /** What a count is of, where that is known. */
  readonly of: 'queens' | 'flowers' | null;
}

/** Letters of an answer to one question, at most: two pages. A reader may take 17 µs a letter over what is meant to be slow. */
export const LONGEST_TEXT = 4000;

/** Reads one text as the answer to a question for this kind of value. Pure; never throws on any text. */
export type Reader<Value> = (text: string, context: Context) => Reading<Value>;

/** A value found in passing in a longer text: only with its own unit, label or an unmistakable word. */
export type Finder<Value> = (text: string, context: Context) => readonly Reading<Value>[];

export const sure = <Value>(value: Value, used: readonly Span[]): Reading<Value> => ({ state: 'sure', value, used });

export const unsure = <Value>(offer: readonly Value[], ask: Ask, used: readonly Span[] = []): Reading<Value> => ({
  state: 'unsure',
  offer,
  ask,
  used,
});

export const none = (ask: Ask, used: readonly Span[] = []): Reading<never> => ({ state: 'none', ask, used });

/** The reading of a part of a text, with its place told in the whole. */
export function movedBy<Value>(by: number, reading: Reading<Value>): Reading<Value> {
  return by === 0 ? reading : { ...reading, used: reading.used.map(([from, to]): Span => [from + by, to + by]) };
}
