/**
 * Text made plain without moving it: small letters, straight quotes, plain spaces and hyphens, no accents. Every
 * position in the folded text is the same position in the text as typed, so that `used` can be told.
 */
import type { Span } from './reading.js';

const PLAIN: Readonly<Record<string, string>> = {
  '‘': "'",
  '’': "'",
  ʼ: "'",
  '′': "'",
  '`': "'",
  '´': "'",
  '“': '"',
  '”': '"',
  '″': '"',
  '‐': '-',
  '‑': '-',
  '‒': '-',
  '–': '-',
  '—': '-',
  '−': '-',
  '×': 'x',
  '\u00a0': ' ',
  '\u2009': ' ',
  '\u202f': ' ',
  '\u3000': ' ',
};

/** Small letters of these are already plain: all of ASCII but the grave accent, which stands for an apostrophe. */
const PLAIN_ONLY = /^[\x00-\x5f\x61-\x7f]*$/;

/** Same length as `text`, code unit by code unit. */
export function fold(text: string): string {
  return PLAIN_ONLY.test(text) ? text.toLowerCase() : foldedSigns(text, undefined);
}

function foldSigns(text: string): string {
  let folded = '';
  for (const unit of text.split('')) {
    const plain = PLAIN[unit];
    if (plain !== undefined) {
      folded += plain;
      continue;
    }
    if (unit < '\u0080') {
      folded += unit.toLowerCase();
      continue;
    }
    // half of a sign beyond the first plane: an emoji
    if (unit >= '\ud800' && unit <= '\udfff') {
      folded += unit;
      continue;
    }
    const bare = unit.normalize('NFKD').replace(/\p{M}/gu, '').toLowerCase();
    folded += bare.length === 1 ? bare : unit;
  }
  return folded;
}

/** As many texts are remembered as the readers cut out of one message. */
const TEXTS_REMEMBERED = 32;

/**
 * Remembers what was made of the last few texts: the readers look at the same words of a message in turn. What is made
 * must follow from text and source alone, and is shared, so nobody may change it.
 */
export function lately<Made, Source = undefined>(
  make: (text: string, source: Source) => Made,
): (text: string, source: Source) => Made {
  const kept = new Map<string, { readonly source: Source; readonly made: Made }>();
  return (text, source) => {
    const known = kept.get(text);
    if (known !== undefined && known.source === source) return known.made;
    const made = make(text, source);
    if (kept.size >= TEXTS_REMEMBERED) kept.delete(kept.keys().next().value!);
    kept.set(text, { source, made });
    return made;
  };
}

const foldedSigns = lately(foldSigns);

/** Words that people use again and again are worth keeping; made-up ones must not fill the memory. */
const WORDS_REMEMBERED = 4000;

/** Remembers what single words mean. */
export function byWord<Made>(make: (word: string) => Made): (word: string) => Made {
  const kept = new Map<string, Made>();
  return (word) => {
    let made = kept.get(word);
    if (made === undefined) {
      made = make(word);
      if (kept.size >= WORDS_REMEMBERED) kept.clear();
      kept.set(word, made);
    }
    return made;
  };
}

/** A phrase table made ready to search: the longest phrase wins, and only whole words count. */
export interface PhraseFinder<Value> {
  (folded: string): readonly { readonly value: Value; readonly phrase: string; readonly span: Span }[];
}

const ENDS_WITH_WORD = /[\p{L}\p{N}]$/u;
const WORD_SIGN = /[\p{L}\p{N}]/u;

/** Whether a letter or digit stands at that position. */
function isWordAt(folded: string, at: number): boolean {
  const code = folded.codePointAt(at);
  if (code === undefined) return false;
  if (code < 128) return (code >= 97 && code <= 122) || (code >= 48 && code <= 57) || (code >= 65 && code <= 90);
  return WORD_SIGN.test(String.fromCodePoint(code));
}

/** Where a phrase may begin: at a word, or at any sign. */
interface Start {
  readonly at: number;
  /** The word, or the sign. */
  readonly text: string;
}

const WORD_OR_SIGN = /[\p{L}\p{N}]+|[^\s\p{L}\p{N}]/gu;
const startsIn = lately((folded): readonly Start[] =>
  [...folded.matchAll(WORD_OR_SIGN)].map((match) => ({ at: match.index, text: match[0] })),
);

/** The position behind those words with any white space between them; -1 where they do not stand there. */
function endOf(folded: string, at: number, parts: readonly string[]): number {
  let end = at;
  for (const [index, part] of parts.entries()) {
    if (index > 0) {
      const before = end;
      while (/\s/.test(folded[end] ?? '')) end++;
      if (end === before) return -1;
    }
    if (!folded.startsWith(part, end)) return -1;
    end += part.length;
  }
  return end;
}

/**
 * Finds any of the phrases, left to right, none overlapping. Linear in the text for a fixed table. Phrases of signs
 * ("~", "👍") are found anywhere; phrases of letters only as whole words; a blank stands for any white space.
 */
export function phraseFinder<Value>(table: Iterable<readonly [phrase: string, value: Value]>): PhraseFinder<Value> {
  const values = new Map<string, Value>();
  for (const [phrase, value] of table) values.set(phrase.replace(/\s+/g, ' '), value);
  interface Entry {
    readonly phrase: string;
    readonly parts: readonly string[];
    readonly endsWithWord: boolean;
    readonly value: Value;
  }
  const byStart = new Map<string, Entry[]>();
  const longestFirst = [...values].sort(([a], [b]) => b.length - a.length);
  for (const [phrase, value] of longestFirst) {
    const [start] = startsIn(phrase, undefined);
    if (start?.at !== 0) throw new Error(`The phrase "${phrase}" begins with no word and no sign.`);
    const entry = { phrase, parts: phrase.split(' '), endsWithWord: ENDS_WITH_WORD.test(phrase), value };
    byStart.set(start.text, [...(byStart.get(start.text) ?? []), entry]);
  }
  return (folded) => {
    const found: { value: Value; phrase: string; span: Span }[] = [];
    let end = 0;
    for (const { at, text } of startsIn(folded, undefined)) {
      const entries = at < end ? undefined : byStart.get(text);
      if (entries === undefined) continue;
      for (const { phrase, parts, endsWithWord, value } of entries) {
        const to = endOf(folded, at, parts);
        if (to === -1 || (endsWithWord && isWordAt(folded, to))) continue;
        found.push({ value, phrase, span: [at, to] });
        end = to;
        break;
      }
    }
    return found;
  };
}

/** Keeps what was made from a section of the words: made once for each loaded language, whoever asks. */
export function madeOnce<Source extends object, Made>(make: (source: Source) => Made): (source: Source) => Made {
  const made = new WeakMap<Source, Made>();
  return (source) => {
    let kept = made.get(source);
    if (kept === undefined) {
      kept = make(source);
      made.set(source, kept);
    }
    return kept;
  };
}

/** Joins spans that touch or overlap; sorted. */
export function joinSpans(spans: readonly Span[]): Span[] {
  const sorted = [...spans].sort((a, b) => a[0] - b[0]);
  const joined: Span[] = [];
  for (const span of sorted) {
    const last = joined.at(-1);
    if (last && span[0] <= last[1]) joined[joined.length - 1] = [last[0], Math.max(last[1], span[1])];
    else joined.push(span);
  }
  return joined;
}

/** The text with those spans blanked out, same length: what one reader used, the next must not see. */
export function blank(text: string, spans: readonly Span[]): string {
  let out = '';
  let at = 0;
  for (const [from, to] of joinSpans(spans)) {
    out += text.slice(at, from) + ' '.repeat(to - from);
    at = to;
  }
  return out + text.slice(at);
}

const finderOfWords = madeOnce((words: readonly string[]) => phraseFinder(words.map((word) => [word, word] as const)));

/** Whether any of the words stands in the text, as whole words. */
export const saysAnyOf = (text: string, words: readonly string[]): boolean =>
  finderOfWords(words)(fold(text)).length > 0;
