/** Names that misspelled or misheard words are near to. */
import { distance as fastDistance } from 'fastest-levenshtein';
import { END_LETTERS, startSound } from './building.js';
import type { Near } from './hit.js';
import type { NameIndex } from './name-index.js';
import type { Use } from './use.js';
import type { KnownName } from './known-name.js';
import { distance, editsBetween, lettersApart, lettersIn, slipsAllowed, spelled, type Spelled } from './similarity.js';
import { byWord, madeOnce } from '../text.js';
import type { Word } from './tokens.js';

/** A name with words left out is as much further off as one edit. */
const EDITS_FOR_PART = 1;
/** Short forms have so few letters that two wrong ones make another. */
const MOST_EDITS_OF_SHORT = 1;
/** A name within this of the nearest is about as near. */
export const ABOUT_AS_NEAR = 0.75;
/** What one slip in a word of three letters weighs: "bov cranberry", where the other words leave no other meaning. */
const EDITS_FOR_SHORT_WORD = 0.9;
/** What a slip weighs besides where the typed word is a right one too: "half back". */
const EDITS_FOR_PLAIN_WORD = 1;

/** A word ready to be compared. */
interface Piece extends Spelled {
  /** A word of its own, "big", is no slip of "bog", nor is the mallow of "prairie mallow" one of "willow". */
  readonly plain: boolean;
}

/** How far the words are from a known name: word by word where both have as many words, else as one. */
function costOf(pieces: readonly Piece[], whole: Spelled, known: KnownName): number | null {
  if (pieces.length < 2 || pieces.length !== known.words.length) return distance(whole, known);
  let cost = 0;
  let shortSlips = 0;
  for (const [at, piece] of pieces.entries()) {
    const knownWord = known.words[at]!;
    const part = distance(piece, spelled(knownWord));
    if (part !== null) {
      cost += piece.plain && part > 0 ? part + EDITS_FOR_PLAIN_WORD : part;
      continue;
    }
    const shortSlip = !piece.plain && shortSlips++ === 0 && editsBetween(piece.letters, knownWord, 1) <= 1;
    if (!shortSlip) return null;
    cost += EDITS_FOR_SHORT_WORD;
  }
  return cost;
}

/** Sounds that may differ in a name of that many letters which is spelled by ear. */
const soundsAllowed = (letters: number): number => (letters >= 12 ? 2 : letters >= 9 ? 1 : 0);

/** Names whose letters or sounds could be near, by cheap tests. */
function candidates(index: NameIndex, { letters, sound }: Spelled): KnownName[] {
  const bits = lettersIn(letters);
  const soundBits = lettersIn(sound);
  const couldBe = (known: KnownName): boolean => {
    const shorter = Math.min(known.letters.length, letters.length);
    const slips = slipsAllowed(shorter);
    const closeInLength = Math.abs(known.letters.length - letters.length) <= slips;
    if (closeInLength && lettersApart(bits, known.letterBits) <= 2 * slips) {
      if (fastDistance(letters, known.letters) <= slips + 1) return true;
    }
    const sounds = soundsAllowed(shorter);
    if (lettersApart(soundBits, known.soundBits) > 2 * sounds) return false;
    return Math.abs(known.sound.length - sound.length) <= sounds && fastDistance(sound, known.sound) <= sounds;
  };
  const start = startSound(letters);
  const sameStart = index.byStart.get(start);
  const apart = Math.max(1, Math.floor(letters.length / 4));
  const found: KnownName[] = [];
  for (let length = letters.length - apart; length <= letters.length + apart; length++) {
    for (const known of sameStart?.[length] ?? []) if (couldBe(known)) found.push(known);
  }
  for (const known of index.byEnd.get(letters.slice(-END_LETTERS)) ?? []) {
    const near = Math.abs(known.letters.length - letters.length) <= apart;
    if (near && startSound(known.letters) !== start && couldBe(known)) found.push(known);
  }
  return found;
}

/** Asked for the same words again and again: most words of a message are in no name, whoever writes it. */
const candidatesOf = madeOnce((index: NameIndex) => byWord((letters) => candidates(index, spelled(letters))));

/**
 * Known names near to the words, nearest first, those about as near as the nearest; empty where none is. `whole` is
 * their letters as one; with no words given, only that is compared.
 */
export function nearFits(
  saying: readonly Word[],
  whole: string,
  index: NameIndex,
  kinds: (use: Use) => boolean,
  isPlain: (word: Word) => boolean = () => false,
): Near[] {
  const typed = spelled(whole);
  const found = candidatesOf(index)(whole);
  if (found.length === 0) return [];
  const isRight = (word: Word): boolean => isPlain(word) || index.lasts.has(word.stem);
  const pieces = saying.map((word): Piece => ({ ...spelled(word.plain), plain: isRight(word) }));
  const best = new Map<string, Near>();
  for (const known of found) {
    const uses = known.uses.filter(kinds);
    if (uses.length === 0) continue;
    const edits = costOf(pieces, typed, known);
    if (edits === null) continue;
    const { letters, words } = known;
    for (const use of uses) {
      if (use.kind === 'short' && edits > MOST_EDITS_OF_SHORT) continue;
      const cost = use.kind === 'part' ? edits + EDITS_FOR_PART : edits;
      const other = best.get(use.taxon.name);
      if (!other || cost < other.cost) {
        best.set(use.taxon.name, { use, cost, letters: letters.length, words: words.length });
      }
    }
  }
  const sorted = [...best.values()].sort((a, b) => a.cost - b.cost);
  const least = sorted[0]?.cost ?? 0;
  // what is spelled right is meant, however near another may be
  return sorted.filter(({ cost }) => (least === 0 ? cost === 0 : cost - least < ABOUT_AS_NEAR));
}
