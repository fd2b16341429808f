/** Cuts folded text into tokens and finds phrases among them: the longest wins, and time grows with the text only. */
import type { Span } from '../reading.js';
import { lately } from '../text.js';

export interface Token {
  /** Without apostrophes: "didn't" is "didnt". A sign stands alone. */
  readonly text: string;
  readonly span: Span;
  readonly isWord: boolean;
}

const TOKEN = /[\p{L}\p{M}]+(?:'[\p{L}\p{M}]+)*|\p{N}+(?:[.,]\p{N}+)*|[^\s\p{L}\p{N}]/gu;

const cut = lately((folded): readonly Token[] =>
  [...folded.matchAll(TOKEN)].map((match) => ({
    text: match[0].length > 1 ? match[0].replaceAll("'", '') : match[0],
    span: [match.index, match.index + match[0].length],
    isWord: /^[\p{L}\p{N}]/u.test(match[0]),
  })),
);

export const tokensOf = (folded: string): readonly Token[] => cut(folded, undefined);

export interface PhraseFound<Kind> {
  readonly kinds: ReadonlySet<Kind>;
  readonly phrase: string;
  /** Tokens `[from, to)`. */
  readonly from: number;
  readonly to: number;
}

interface Entry<Kind> {
  readonly tokens: readonly string[];
  readonly phrase: string;
  readonly kinds: Set<Kind>;
}

export interface Lexicon<Kind> {
  /** The longest phrase that begins at `tokens[at]`; null where none does. */
  at(tokens: readonly Token[], at: number): PhraseFound<Kind> | null;
}

export function lexiconOf<Kind>(table: Iterable<readonly [phrase: string, kind: Kind]>): Lexicon<Kind> {
  const byPhrase = new Map<string, Entry<Kind>>();
  for (const [phrase, kind] of table) {
    const tokens = tokensOf(phrase).map(({ text }) => text);
    const key = tokens.join(' ');
    const entry = byPhrase.get(key) ?? { tokens, phrase: key, kinds: new Set<Kind>() };
    entry.kinds.add(kind);
    byPhrase.set(key, entry);
  }
  const byFirst = new Map<string, Entry<Kind>[]>();
  for (const entry of byPhrase.values()) {
    const first = entry.tokens[0];
    if (first !== undefined) byFirst.set(first, [...(byFirst.get(first) ?? []), entry]);
  }
  for (const entries of byFirst.values()) entries.sort((a, b) => b.tokens.length - a.tokens.length);
  return {
    at: (tokens, at) => {
      const first = tokens[at];
      if (!first) return null;
      for (const { tokens: wanted, phrase, kinds } of byFirst.get(first.text) ?? []) {
        if (wanted.every((text, index) => tokens[at + index]?.text === text)) {
          return { kinds, phrase, from: at, to: at + wanted.length };
        }
      }
      return null;
    },
  };
}
