/** How near two names are: by the letters that differ, and by the sounds that differ when they are read aloud. */

/**
 * Letters that may be wrong in a name of that length and still be a slip: none up to 3, one up to 5, two up to 9,
 * three above. Tried on invented names and ordinary words, which must stay outside; common practice, no source.
 */
export function slipsAllowed(letters: number): number {
  if (letters <= 3) return 0;
  if (letters <= 5) return 1;
  return letters <= 9 ? 2 : 3;
}

/**
 * Edits that turn one text into the other: a letter more, less or another, or two neighbours swapped (optimal string
 * alignment). Stops early and answers `most + 1` where there are more than `most`.
 */
export function editsBetween(left: string, right: string, most = Infinity): number {
  if (left === right) return 0;
  if (Math.abs(left.length - right.length) > most) return most + 1;
  let beforeLast: number[] = [];
  let last = Array.from({ length: right.length + 1 }, (_, at) => at);
  for (let i = 1; i <= left.length; i++) {
    const row = [i];
    let least = i;
    for (let j = 1; j <= right.length; j++) {
      const same = left[i - 1] === right[j - 1];
      let edits = Math.min(last[j]! + 1, row[j - 1]! + 1, last[j - 1]! + (same ? 0 : 1));
      if (!same && i > 1 && j > 1 && left[i - 1] === right[j - 2] && left[i - 2] === right[j - 1]) {
        edits = Math.min(edits, beforeLast[j - 2]! + 1);
      }
      row.push(edits);
      if (edits < least) least = edits;
    }
    if (least > most) return most + 1;
    beforeLast = last;
    last = row;
  }
  return last[right.length]!;
}

const VOWELS = new Set('aeiouy');
/** Letters before which c is s: "citrinus". */
const SOFTENS = new Set('eiy');
/** First letters that are not heard before the second: "psithyrus", "knautia". */
const SILENT_STARTS = new Set(['ps', 'pn', 'pt', 'kn', 'gn', 'mn', 'wr']);

/**
 * How a name sounds to somebody who spells by ear, of small letters without blanks: a run of vowels is one "a", c is k
 * or s, m is n, doubled letters are one, h is heard only in ph. "impatience" and "impatiens" sound the same.
 */
export function soundOf(letters: string): string {
  let sound = '';
  const hear = (heard: string): void => {
    if (!sound.endsWith(heard)) sound += heard;
  };
  for (let at = SILENT_STARTS.has(letters.slice(0, 2)) ? 1 : 0; at < letters.length; at++) {
    const letter = letters[at]!;
    const next = letters[at + 1] ?? '';
    if (VOWELS.has(letter)) {
      const silent = letter === 'e' && next === '' && at > 1 && !VOWELS.has(letters[at - 1]!);
      if (!silent) hear('a');
    } else if (letter === 'c') {
      if (next === 'h') hear('k');
      else hear(SOFTENS.has(next) ? 's' : 'k');
    } else if (letter === 'p' && next === 'h') {
      hear('f');
      at++;
    } else if (letter === 'h') {
      continue;
    } else if (letter === 'x') {
      hear(at === 0 ? 's' : 'ks');
    } else if (letter === 'q') {
      hear('k');
      if (next === 'u') at++;
    } else if (letter === 'w') {
      if (at === 0) hear('w');
    } else if (letter === 'm') hear('n');
    else if (letter === 'j') hear('g');
    else if (letter === 'z') hear('s');
    else hear(letter);
  }
  return sound;
}

/** Which letters occur, one bit each: a quick test that two texts cannot be near. */
export function lettersIn(letters: string): number {
  let bits = 0;
  for (let at = 0; at < letters.length; at++) {
    const code = letters.charCodeAt(at) - 97;
    if (code >= 0 && code < 26) bits |= 1 << code;
  }
  return bits;
}

/** How many letters occur in one of two texts only. */
export function lettersApart(left: number, right: number): number {
  let bits = left ^ right;
  let count = 0;
  while (bits !== 0) {
    bits &= bits - 1;
    count++;
  }
  return count;
}

/** A text ready to be compared. */
export interface Spelled {
  readonly letters: string;
  readonly sound: string;
}

export const spelled = (letters: string): Spelled => ({ letters, sound: soundOf(letters) });

/**
 * How far a typed name is from a known one: the middle of the letters and the sounds that differ; null where they
 * are no slip of each other. A name that sounds the same may differ in up to half its letters ("griz", "impatience").
 */
export function distance(typed: Spelled, known: Spelled): number | null {
  const shorter = Math.min(typed.letters.length, known.letters.length);
  const slips = slipsAllowed(shorter);
  const most = Math.max(slips, Math.floor(shorter / 2));
  const letters = editsBetween(typed.letters, known.letters, most);
  if (letters > most) return null;
  const sounds = editsBetween(typed.sound, known.sound);
  const middle = (letters + sounds) / 2;
  if (letters <= slips) return middle;
  if (sounds === 0 && shorter >= 5) return middle;
  if (sounds === 1 && shorter >= 9 && letters <= 0.4 * shorter) return middle;
  if (sounds === 2 && shorter >= 12 && letters <= 0.35 * shorter) return middle;
  return null;
}

/** A name whose words are typed as one, or one as several, must be nearer to be surely meant. */
export const SURE_ACROSS_WORDS = 1.5;

/** Up to this distance a name of that length is surely the one meant, where no other is about as near. */
export function sureUpTo(letters: number): number {
  if (letters <= 5) return 1;
  return letters <= 9 ? 1.5 : 2;
}
