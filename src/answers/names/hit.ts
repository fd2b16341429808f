/** What a search finds: words of a text that are a name of a list, and which taxa the name fits. */
import type { Span } from '../reading.js';
import type { NameIndex } from './name-index.js';
import type { Use } from './use.js';
import type { Word } from './tokens.js';

/**
 * `answer`: the text is the answer to "which one?", so nearly every word may belong to a name. `running`: it tells
 * other things too, so that only what can hardly be anything else is a name.
 */
export type Manner = 'answer' | 'running';

export type Exactness = 'exact' | 'near' | 'part' | 'short';

/** A use with how far the typed words are from it, in edits. */
export interface Near {
  readonly use: Use;
  readonly cost: number;
  /** Letters and words of the known name. */
  readonly letters: number;
  readonly words: number;
}

export interface Hit {
  /** Words `[from, to)`. */
  readonly from: number;
  readonly to: number;
  readonly span: Span;
  /** Nearest first; several where they fit alike. */
  readonly fits: readonly Near[];
  readonly exactness: Exactness;
  readonly letters: number;
  /** False where it is too far from the name, or too short, to be taken without asking. */
  readonly firm: boolean;
  /** Found among the names of the plants being watched. */
  readonly watched: boolean;
}

export interface SearchIn {
  readonly index: NameIndex;
  readonly manner: Manner;
  /** A word that adds nothing inside a name of this list. */
  readonly leftOut: (word: Word) => boolean;
  /** A word after a name, which is then not turned round: a "lilac hedge" is no hedge lilac. */
  readonly behind: (word: Word) => boolean;
  /** A word that is no part of any name: not compared with misspelled ones by itself. */
  readonly plain: (word: Word) => boolean;
  /** An everyday word, which in running text is no slip of a name. */
  readonly everyday: (word: Word) => boolean;
}

export const hitOf = (
  words: readonly Word[],
  { from, to }: { readonly from: number; readonly to: number },
  fits: readonly Near[],
  exactness: Exactness,
  firm: boolean,
  letters: number,
): Hit => ({
  from,
  to,
  span: [words[from]!.span[0], words[to - 1]!.span[1]],
  fits,
  exactness,
  letters,
  firm,
  watched: false,
});

/** An edit weighs as much as so many letters when hits compete for the same words. */
const LETTERS_PER_EDIT = 3;
/** Words that belong to a name speak for it: "dg fennel" is no fennel. */
const LETTERS_PER_WORD = 1;
/** A name with words left out gives way to a whole one of the same length. */
const LETTERS_PER_PART = 2;
/** A plant being watched is meant rather than another of the same words. */
const LETTERS_FOR_WATCHED = 1;

const weightOf = ({ from, to, letters, fits, exactness, watched }: Hit): number => {
  const whole = watched ? LETTERS_FOR_WATCHED : exactness === 'part' ? -LETTERS_PER_PART : 0;
  return letters + LETTERS_PER_WORD * (to - from) - LETTERS_PER_EDIT * fits[0]!.cost + whole;
};

/** The hits that do not stand in each other's way, the weightiest first; left to right. */
export function withoutOverlaps(hits: readonly Hit[]): Hit[] {
  const taken: Hit[] = [];
  const occupied = new Set<number>();
  const sorted = [...hits].sort((a, b) => weightOf(b) - weightOf(a) || a.from - b.from);
  for (const hit of sorted) {
    let free = true;
    for (let at = hit.from; at < hit.to && free; at++) free = !occupied.has(at);
    if (!free) continue;
    for (let at = hit.from; at < hit.to; at++) occupied.add(at);
    taken.push(hit);
  }
  return taken.sort((a, b) => a.from - b.from);
}
