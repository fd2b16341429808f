/** Finds the names of one list in the words of a text: exact, misspelled, by ear, in another order, cut short. */
import { madeOnce } from '../text.js';
import { anyOrderKey } from './building.js';
import { hitOf, type Hit, type Near, type SearchIn } from './hit.js';
import type { Use } from './use.js';
import { nearFits } from './near.js';
import { SURE_ACROSS_WORDS, sureUpTo } from './similarity.js';
import { countedUpTo, type Gap, type Word } from './tokens.js';

/** Words of a name that are looked at together, those that join not counted. Voice typing makes five of "bimaculatus". */
const MOST_WORDS = 6;
/** Words that join, at most, inside a name: "jack in the pulpit". */
const MOST_JOINING = 3;
/** Words of a name that may stand in any order. */
const MOST_IN_ANY_ORDER = 4;
/** Windows compared with misspelled names in one text; an answer has under 30, a long note some 300. */
const MOST_COMPARED = 500;

/** Letters of the longest names, blanks left out, are under 35; longer runs of words are no name. */
const MOST_LETTERS = 40;

/** Words `[from, to)` that could be one name, `count` of which say something, with their stems as one. */
type Visit = (from: number, to: number, count: number, stems: string) => void;

/** Visits all runs of words that could be one name, by their first word; both ends say something. */
function visitWindows(words: readonly Word[], search: SearchIn, visit: Visit): void {
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
      if (stems.length > MOST_LETTERS) break;
      visit(from, to + 1, ++count, stems);
    }
  }
}

const sayingIn = (words: readonly Word[], { from, to }: { from: number; to: number }, search: SearchIn): Word[] =>
  words.slice(from, to).filter((word) => !search.leftOut(word));

const lettersOf = (words: readonly Word[]): string => words.map(({ plain }) => plain).join('');

interface ExactFits {
  readonly fits: readonly Near[];
  readonly exactness: 'exact' | 'part';
}

const exactFits = madeOnce((uses: readonly Use[]): ExactFits => {
  const full = uses.filter((use) => use.kind !== 'part' && use.kind !== 'epithet');
  const fits = (full.length > 0 ? full : uses).map((use) => ({ use, cost: 0, letters: 0, words: 0 }));
  return { fits, exactness: full.length > 0 ? 'exact' : 'part' };
});

function exactHits(words: readonly Word[], search: SearchIn): Hit[] {
  const hits: Hit[] = [];
  visitWindows(words, search, (from, to, count, stems) => {
    let uses = search.index.exact.get(stems);
    if (!uses && search.manner === 'answer' && count > 1 && count <= MOST_IN_ANY_ORDER) {
      const saying = sayingIn(words, { from, to }, search);
      // "Rose's climbing thing" is no climbing rose
      const mayBeTurned = !saying.some((word) => word.possessive) && !search.behind(saying.at(-1)!);
      if (mayBeTurned) uses = search.index.anyOrder.get(anyOrderKey(saying.map(({ stem }) => stem)));
    }
    if (!uses) return;
    const { fits, exactness } = exactFits(uses);
    const letters = lettersOf(sayingIn(words, { from, to }, search)).length;
    hits.push(hitOf(words, { from, to }, fits, exactness, true, letters));
  });
  // of "dame's rockets, purple" the rocket is told already
  const isCut = (turned: Hit): boolean =>
    hits.some((hit) => hit.exactness === 'exact' && hit.to - hit.from > 1 && bordersCross(turned, hit));
  return [...hits, ...turnedRound(words, search).filter((turned) => !isCut(turned))];
}

/** They share words, and each has others too. */
const bordersCross = (left: Hit, right: Hit): boolean =>
  left.from < right.from
    ? right.from < left.to && left.to < right.to
    : right.from < left.from && left.from < right.to && right.to < left.to;

/** Where a name can be turned round; running text has commas and dashes between names, too. */
const TURNS: Readonly<Record<SearchIn['manner'], readonly Gap[]>> = {
  answer: ['comma', 'bracket', 'dash'],
  running: ['bracket'],
};

/** Words before a turn that may end a name, "lily of the valley (wild)", and after it that may begin one. */
const MOST_BEFORE_TURN = 4;
const MOST_AFTER_TURN = 3;

/**
 * "plum, American", "plum (American)", "plum - American": a name turned round, as in the register of a book. A "tree
 * (lilac)" is no tree lilac: what stands first is the name's end.
 */
function turnedRound(words: readonly Word[], search: SearchIn): Hit[] {
  const hits: Hit[] = [];
  for (const [at, word] of words.entries()) {
    // "violets (in the lawn)" only tells where
    if (!TURNS[search.manner].includes(word.gap) || search.leftOut(word)) continue;
    for (let from = Math.max(0, at - MOST_BEFORE_TURN); from < at; from++) {
      for (let to = at + 1; to <= Math.min(words.length, at + MOST_AFTER_TURN); to++) {
        const run = words.slice(from, to);
        if (run.some((each, place) => place > 0 && from + place !== at && each.gap !== 'none')) continue;
        // "sage (meadow by the barn)" goes on about the meadow
        if (word.gap !== 'comma' && words[to]?.gap === 'none') continue;
        const uses = usesTurned(words, { from, at, to }, search);
        if (!uses) continue;
        const { fits, exactness } = exactFits(uses);
        if (exactness !== 'exact') continue;
        const letters = lettersOf(sayingIn(words, { from, to }, search)).length;
        hits.push(hitOf(words, { from, to }, fits, exactness, true, letters));
      }
    }
  }
  return hits;
}

/** The name of which the words from `at` on are the beginning, two of them in either order: "indigo, wild white". */
function usesTurned(
  words: readonly Word[],
  { from, at, to }: { readonly from: number; readonly at: number; readonly to: number },
  search: SearchIn,
): readonly Use[] | undefined {
  const stems = (run: { from: number; to: number }): string[] => sayingIn(words, run, search).map(({ stem }) => stem);
  const end = stems({ from, to: at }).join('');
  const beginning = stems({ from: at, to });
  if (end === '' || beginning.length === 0) return undefined;
  const asSaid = search.index.exact.get(beginning.join('') + end);
  return asSaid ?? (beginning.length === 2 ? search.index.exact.get(beginning[1]! + beginning[0]! + end) : undefined);
}

/** Shortest misspelled name, in letters. In running text too many ordinary words are one letter from shorter ones. */
const SHORTEST_MISSPELLED = { answer: 4, running: 6 };
/** Edits up to which ordinary words make up a name of fewer words: by ear ("or a comus"), not by misspelling. */
const MOST_EDITS_OF_PLAIN_WORDS = 1.5;

/** Runs of strange words that are looked at; a long note has some 500. */
const MOST_STRANGE_RUNS = 3000;

function nearHits(words: readonly Word[], search: SearchIn, known: readonly Hit[]): Hit[] {
  const { index, manner, leftOut, plain, everyday } = search;
  const settled = settledIn(words.length, known);
  const unsettled = countedUpTo(words, (_, at) => !settled[at]);
  const plainWords = countedUpTo(words, (word) => plain(word) && !leftOut(word));
  const everydayWords = countedUpTo(words, (word) => (plain(word) || everyday(word)) && !leftOut(word));
  const digits = countedUpTo(words, (word) => word.digits);
  const kinds = (use: Use): boolean => use.kind !== 'epithet' && (manner === 'answer' || use.kind !== 'part');
  const hits: Hit[] = [];
  const compared = new Map<string, Near[]>();
  let runs = 0;
  visitWindows(words, search, (from, to, count) => {
    const within = (counted: readonly number[]): number => counted[to]! - counted[from]!;
    const plainInside = within(plainWords);
    if (within(unsettled) === 0 || plainInside === count || within(digits) > 0) return;
    if (manner === 'running' && within(everydayWords) === count) return;
    if (manner === 'running' && count > 1 && !couldBound(words[from]!, words[to - 1]!, search)) return;
    if (++runs > MOST_STRANGE_RUNS) return;
    const saying = sayingIn(words, { from, to }, search);
    const letters = lettersOf(saying);
    if (letters.length < SHORTEST_MISSPELLED[manner]) return;
    for (const whole of new Set([letters, lettersOf(words.slice(from, to))])) {
      const id = `${count} ${whole}`;
      let fits = compared.get(id);
      if (!fits && compared.size >= MOST_COMPARED) return;
      if (!fits) compared.set(id, (fits = besideUnlisted(nearFits(saying, whole, index, kinds, plain))));
      const nearest = fits[0];
      if (!nearest) continue;
      const { cost, use } = nearest;
      if (plainInside > 0 && cost > MOST_EDITS_OF_PLAIN_WORDS && !sameWordCount(saying, use)) continue;
      if (plainInside > 0 && manner === 'running' && nearest.words !== count) continue;
      const upTo = sureUpTo(Math.min(whole.length, nearest.letters));
      const sameWords = Math.max(1, nearest.words) === count;
      const firm = cost <= (sameWords ? upTo : Math.min(upTo, SURE_ACROSS_WORDS));
      hits.push(hitOf(words, { from, to }, fits, cost === 0 ? 'exact' : 'near', firm, letters.length));
    }
  });
  return hits;
}

/** A slip of a plant that the list lacks is none of one that it has, unless it is about as near to that. */
function besideUnlisted(fits: Near[]): Near[] {
  const listed = fits.filter(({ use }) => use.kind !== 'unlisted');
  return listed.length > 0 ? listed : fits;
}

/** Words that are part of a name which stands by itself. */
function settledIn(count: number, known: readonly Hit[]): boolean[] {
  const settled = new Array<boolean>(count).fill(false);
  for (const hit of known) {
    if (hit.exactness !== 'exact' || hit.fits.every(({ use }) => use.strength !== 'strong')) continue;
    settled.fill(true, hit.from, hit.to);
  }
  return settled;
}

/** In running text a misspelled name begins and ends with a strange word or with one that names begin and end with. */
const couldBound = (first: Word, last: Word, { index, plain }: SearchIn): boolean =>
  (!plain(first) || index.firsts.has(first.stem)) && (!plain(last) || index.lasts.has(last.stem));

const sameWordCount = (saying: readonly Word[], use: Use): boolean =>
  use.kind === 'scientific' ? saying.length <= 2 : saying.length <= 1;

/** Asked of a word once, however many windows it is in. */
function remembered(ask: (word: Word) => boolean): (word: Word) => boolean {
  const known = new Map<Word, boolean>();
  return (word) => {
    let answer = known.get(word);
    if (answer === undefined) known.set(word, (answer = ask(word)));
    return answer;
  };
}

/** Every way in which words of the text are a name of the list; they may overlap. */
export function hitsIn(words: readonly Word[], searchIn: SearchIn): Hit[] {
  const search = { ...searchIn, leftOut: remembered(searchIn.leftOut), plain: remembered(searchIn.plain) };
  const exact = exactHits(words, search);
  return [...exact, ...nearHits(words, search, exact)];
}
