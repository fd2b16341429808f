/** Finds the names of one list in the words of a text: exact, misspelled, by ear, in another order, cut short. */
import { distance as fastDistance } from 'fastest-levenshtein';
import type { Span } from '../reading.js';
import { anyOrderKey, END_LETTERS, type Key, type NameIndex, type Use } from './index-of-names.js';
import {
  distance,
  editsBetween,
  lettersApart,
  lettersIn,
  slipsAllowed,
  soundOf,
  spelled,
  SURE_ACROSS_WORDS,
  sureUpTo,
  type Spelled,
} from './similarity.js';
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

/** Words of a name that are looked at together, those that join not counted. Voice typing makes five of "bimaculatus". */
const MOST_WORDS = 6;
/** Words that join, at most, inside a name: "jack in the pulpit". */
const MOST_JOINING = 3;
/** Words of a name that may stand in any order. */
const MOST_IN_ANY_ORDER = 4;
/** Windows compared with misspelled names in one text; an answer has under 30, a long note some 300. */
const MOST_COMPARED = 500;
/** A name with words left out is as much further off as one edit. */
const EDITS_FOR_PART = 1;
/** Short forms have so few letters that two wrong ones make another. */
const MOST_EDITS_OF_SHORT = 1;
/** A name within this of the nearest is about as near. */
export const ABOUT_AS_NEAR = 0.75;

/** Words `[from, to)` that could be one name. */
interface Window {
  readonly from: number;
  readonly to: number;
  /** Words that say something. */
  readonly count: number;
  /** Their stems as one. */
  readonly stems: string;
}

/** All runs of words that could be one name, by their first word. */
function windowsIn(words: readonly Word[], search: SearchIn): Window[] {
  const windows: Window[] = [];
  for (let from = 0; from < words.length; from++) {
    if (search.leftOut(words[from]!)) continue;
    let stems = '';
    let count = 0;
    let joining = 0;
    for (let to = from; to < words.length && count < MOST_WORDS; to++) {
      const word = words[to]!;
      if (to > from && word.gap !== 'none') break;
      if (search.leftOut(word)) {
        if (++joining > MOST_JOINING) break;
        continue;
      }
      stems += word.stem;
      windows.push({ from, to: to + 1, count: ++count, stems });
    }
  }
  return windows;
}

const sayingIn = (words: readonly Word[], { from, to }: { from: number; to: number }, search: SearchIn): Word[] =>
  words.slice(from, to).filter((word) => !search.leftOut(word));

export interface SearchIn {
  readonly index: NameIndex;
  readonly manner: Manner;
  /** A word that adds nothing inside a name of this list. */
  readonly leftOut: (word: Word) => boolean;
  /** A word that is no part of any name: not compared with misspelled ones by itself. */
  readonly plain: (word: Word) => boolean;
}

const hitOf = (
  words: readonly Word[],
  { from, to }: { from: number; to: number },
  saying: readonly Word[],
  fits: readonly Near[],
  exactness: Exactness,
  firm: boolean,
): Hit => ({
  from,
  to,
  span: [words[from]!.span[0], words[to - 1]!.span[1]],
  fits,
  exactness,
  letters: saying.reduce((sum, word) => sum + word.plain.length, 0),
  firm,
  watched: false,
});

const exactFits = (uses: readonly Use[]): { fits: Near[]; exactness: Exactness } => {
  const full = uses.filter((use) => use.kind !== 'part' && use.kind !== 'epithet');
  const kept = full.length > 0 ? full : uses;
  const exactness = full.length > 0 ? 'exact' : 'part';
  return { fits: kept.map((use) => ({ use, cost: 0, letters: 0, words: 0 })), exactness };
};

/** What one slip in a word of three letters weighs: "bov cranberry", where the other words leave no other meaning. */
const EDITS_FOR_SHORT_WORD = 0.9;

/** What a slip weighs besides where the typed word is a right one too: "half back". */
const EDITS_FOR_PLAIN_WORD = 1;

/** A word of a window ready to be compared. */
interface Piece extends Spelled {
  /** A word of its own, "big", is no slip of "bog". */
  readonly plain: boolean;
}

/** How far a window is from a known name: word by word where both have as many words, else as one. */
function costOf(pieces: readonly Piece[], whole: Spelled, key: Key): number | null {
  if (pieces.length < 2 || pieces.length !== key.words.length) return distance(whole, key.whole);
  let cost = 0;
  let shortSlips = 0;
  for (const [at, piece] of pieces.entries()) {
    const known = key.words[at]!;
    const part = distance(piece, spelled(known));
    if (part !== null) cost += piece.plain && part > 0 ? part + EDITS_FOR_PLAIN_WORD : part;
    else if (!piece.plain && shortSlips++ === 0 && editsBetween(piece.letters, known, 1) <= 1)
      cost += EDITS_FOR_SHORT_WORD;
    else return null;
  }
  return cost;
}

/** Sounds that may differ in a name of that many letters which is spelled by ear. */
const soundsAllowed = (letters: number): number => (letters >= 12 ? 2 : letters >= 9 ? 1 : 0);

/** Names whose letters or sounds could be near, by cheap tests. */
function* candidates(index: NameIndex, { letters, sound }: Spelled): Generator<Key> {
  const bits = lettersIn(letters);
  const soundBits = lettersIn(sound);
  const couldBe = (key: Key): boolean => {
    const known = key.whole;
    const shorter = Math.min(known.letters.length, letters.length);
    const slips = slipsAllowed(shorter);
    const closeInLength = Math.abs(known.letters.length - letters.length) <= slips;
    if (closeInLength && lettersApart(bits, key.letters) <= 2 * slips) {
      if (fastDistance(letters, known.letters) <= slips + 1) return true;
    }
    const sounds = soundsAllowed(shorter);
    if (Math.abs(known.sound.length - sound.length) > sounds) return false;
    return lettersApart(soundBits, key.sounds) <= 2 * sounds && fastDistance(sound, known.sound) <= sounds;
  };
  const start = sound.slice(0, 1);
  const sameStart = index.byStart.get(start);
  const sameEnd = index.byEnd.get(letters.slice(-END_LETTERS));
  const apart = Math.max(1, Math.floor(letters.length / 4));
  for (let length = letters.length - apart; length <= letters.length + apart; length++) {
    for (const key of sameStart?.[length] ?? []) if (couldBe(key)) yield key;
    for (const key of sameEnd?.[length] ?? []) {
      if (!key.whole.sound.startsWith(start) && couldBe(key)) yield key;
    }
  }
}

/** Known names near to the words, nearest first, those about as near as the nearest; empty where none is. */
export function nearFits(
  saying: readonly Word[],
  whole: string,
  index: NameIndex,
  kinds: (use: Use) => boolean,
  isPlain: (word: Word) => boolean = () => false,
): Near[] {
  const typed: Spelled = { letters: whole, sound: soundOf(whole) };
  const pieces = saying.map((word): Piece => ({ ...spelled(word.plain), plain: isPlain(word) }));
  const best = new Map<string, Near>();
  for (const key of candidates(index, typed)) {
    const uses = key.uses.filter(kinds);
    if (uses.length === 0) continue;
    const cost = costOf(pieces, typed, key);
    if (cost === null) continue;
    for (const use of uses) {
      if (use.kind === 'short' && cost > MOST_EDITS_OF_SHORT) continue;
      const costWithPart = use.kind === 'part' ? cost + EDITS_FOR_PART : cost;
      const known = best.get(use.taxon.name);
      if (!known || costWithPart < known.cost)
        best.set(use.taxon.name, {
          use,
          cost: costWithPart,
          letters: key.whole.letters.length,
          words: key.words.length,
        });
    }
  }
  const sorted = [...best.values()].sort((a, b) => a.cost - b.cost);
  const nearest = sorted[0];
  if (!nearest) return [];
  // what is spelled right is meant, however near another may be
  return sorted.filter((near) => (nearest.cost === 0 ? near.cost === 0 : near.cost - nearest.cost < ABOUT_AS_NEAR));
}

function exactHits(words: readonly Word[], windows: readonly Window[], search: SearchIn): Hit[] {
  const hits: Hit[] = [];
  for (const window of windows) {
    let uses = search.index.exact.get(window.stems);
    if (!uses && search.manner === 'answer' && window.count > 1 && window.count <= MOST_IN_ANY_ORDER) {
      const saying = sayingIn(words, window, search);
      // "Rose's climbing thing" is no climbing rose
      if (!saying.some((word) => word.possessive))
        uses = search.index.anyOrder.get(anyOrderKey(saying.map((word) => word.stem)));
    }
    if (!uses) continue;
    const { fits, exactness } = exactFits(uses);
    hits.push(hitOf(words, window, sayingIn(words, window, search), fits, exactness, true));
  }
  if (search.manner === 'answer') hits.push(...turnedRound(words, search));
  return hits;
}

/** "plum, American": a name turned round at its comma, as in the register of a book. */
function turnedRound(words: readonly Word[], search: SearchIn): Hit[] {
  const hits: Hit[] = [];
  for (const [at, word] of words.entries()) {
    if (word.gap !== 'comma') continue;
    for (let from = Math.max(0, at - 2); from < at; from++) {
      for (let to = at + 1; to <= Math.min(words.length, at + 3); to++) {
        const run = words.slice(from, to);
        if (run.some((each, place) => place > 0 && from + place !== at && each.gap !== 'none')) continue;
        const saying = sayingIn(words, { from, to }, search);
        const uses = search.index.anyOrder.get(anyOrderKey(saying.map((each) => each.stem)));
        if (!uses) continue;
        const { fits, exactness } = exactFits(uses);
        if (exactness === 'exact') hits.push(hitOf(words, { from, to }, saying, fits, exactness, true));
      }
    }
  }
  return hits;
}

/** Shortest misspelled name taken out of running text: below, too many ordinary words are one letter away. */
const SHORTEST_IN_RUNNING_TEXT = 6;

function nearHits(words: readonly Word[], windows: readonly Window[], search: SearchIn, known: readonly Hit[]): Hit[] {
  const settled = new Array<boolean>(words.length).fill(false);
  for (const hit of known) {
    if (hit.exactness !== 'exact' || hit.fits.every(({ use }) => use.strength !== 'strong')) continue;
    for (let at = hit.from; at < hit.to; at++) settled[at] = true;
  }
  const hits: Hit[] = [];
  const compared = new Map<string, Near[]>();
  const { index, manner } = search;
  for (const window of windows) {
    const { from, to } = window;
    if (settled.slice(from, to).every(Boolean)) continue;
    const saying = sayingIn(words, window, search);
    if (saying.some((word) => word.digits)) continue;
    const plainWords = saying.filter(search.plain).length;
    if (plainWords === saying.length) continue;
    if (manner === 'running' && saying.length > 1 && !couldBound(saying, search)) continue;
    const short = saying.map((word) => word.plain).join('');
    if (short.length > 40 || short.length < (manner === 'running' ? SHORTEST_IN_RUNNING_TEXT : 4)) continue;
    const withJoining = words
      .slice(from, to)
      .map((word) => word.plain)
      .join('');
    for (const whole of new Set([short, withJoining])) {
      const id = `${saying.length} ${whole}`;
      let fits = compared.get(id);
      if (!fits) {
        if (compared.size >= MOST_COMPARED) return hits;
        fits = nearFits(
          saying,
          whole,
          index,
          (use) => use.kind !== 'epithet' && (manner === 'answer' || use.kind !== 'part'),
          search.plain,
        );
        compared.set(id, fits);
      }
      const nearest = fits[0];
      if (!nearest) continue;
      // ordinary words make up a name only by ear ("or a comus"), not by misspelling
      const tolerated = plainWords > 0 && !sameWordCount(saying, nearest.use) ? 1.5 : Infinity;
      if (nearest.cost > tolerated) continue;
      if (manner === 'running' && plainWords > 0 && nearest.words !== saying.length) continue;
      const upTo = sureUpTo(Math.min(whole.length, nearest.letters));
      const sameWords = Math.max(1, nearest.words) === saying.length;
      const firm = nearest.cost <= (sameWords ? upTo : Math.min(upTo, SURE_ACROSS_WORDS));
      hits.push(hitOf(words, window, saying, fits, nearest.cost === 0 ? 'exact' : 'near', firm));
    }
  }
  return hits;
}

/** In running text a misspelled name begins and ends with a strange word or with one that names begin and end with. */
const couldBound = (saying: readonly Word[], { index, plain }: SearchIn): boolean => {
  const [first, last] = [saying[0]!, saying.at(-1)!];
  return (!plain(first) || index.firsts.has(first.stem)) && (!plain(last) || index.lasts.has(last.stem));
};

const sameWordCount = (saying: readonly Word[], use: Use): boolean =>
  use.kind === 'scientific' ? saying.length <= 2 : saying.length <= 1;

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

/** Every way in which words of the text are a name of the list; they may overlap. */
export function hitsIn(words: readonly Word[], search: SearchIn): Hit[] {
  const windows = windowsIn(words, search);
  const exact = exactHits(words, windows, search);
  return [...exact, ...nearHits(words, windows, search, exact)];
}
