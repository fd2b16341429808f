/**
 * Marks of a tally told among other things: only what surely speaks of queens is kept. "None" must be none of bees, a
 * number must stand beside a bee, and bees hoped for or seen at another time are none.
 */
import type { Span } from '../reading.js';
import type { Mark } from './mark.js';

/** The next mark that says something, in the same clause. */
function after(marks: readonly Mark[], at: number, most = 3): Mark | undefined {
  let seen = 0;
  for (let next = at + 1; next < marks.length && seen < most; next++) {
    const mark = marks[next]!;
    if (mark.kind === 'break') return mark;
    if (mark.kind === 'unknown' || (mark.kind === 'count' && mark.count.article)) {
      seen++;
      continue;
    }
    return mark;
  }
  return undefined;
}

/** Words, at most, of "1 that I think was a two-spotted". */
const MOST_TALK = 6;
const TALK: ReadonlySet<Mark['kind']> = new Set(['unknown', 'thing', 'doubtful', 'mostly']);

/** The bee that a number counts, whatever is said of it in between. */
function countedBee(marks: readonly Mark[], at: number): Mark | undefined {
  const isTalk = (mark: Mark): boolean => TALK.has(mark.kind) || (mark.kind === 'count' && mark.count.article);
  const next = marks.slice(at + 1, at + 1 + MOST_TALK).find((mark) => !isTalk(mark));
  return next?.kind === 'bee' ? next : undefined;
}

const isBee = (mark: Mark | undefined): boolean =>
  mark !== undefined && ['bee', 'queens', 'cannot-tell', 'worker', 'insect'].includes(mark.kind);
const isPlant = (mark: Mark | undefined): boolean => mark?.kind === 'plant' || mark?.kind === 'plants';
const ends = (mark: Mark | undefined): boolean => mark === undefined || mark.kind === 'break';

const isNoThing = ({ kind }: Mark): boolean => kind !== 'thing';

/** Behind `at`: a plant, perhaps with a preposition before it. */
function standsOnPlant(marks: readonly Mark[], at: number): boolean {
  const next = after(marks, at);
  if (isPlant(next)) return true;
  return next?.kind === 'preposition' && isPlant(after(marks, marks.indexOf(next)));
}

/** "none", "no bees", "nothing on the phlox", "queens: 0". `text` is folded. */
function isNoneOfBees(
  marks: readonly Mark[],
  at: number,
  folded: string,
  { saysSeeing, saysQueens }: Passing,
): boolean {
  const mark = marks[at]!;
  const phrase = folded.slice(...mark.span);
  const next = after(marks, at);
  if (isBee(next)) return next!.kind !== 'insect';
  if (phrase === 'no') return false;
  if (saysSeeing(phrase) || saysQueens(phrase) || standsOnPlant(marks, at)) return true;
  const before = marks[at - 1];
  const labelled =
    before?.kind === 'break' && (before.strength === 'colon' || before.strength === 'dash') ? marks[at - 2] : before;
  // "nothing on it", "nothing visited"
  const last = next?.kind === 'preposition' ? marks.slice(marks.indexOf(next) + 1).find(isNoThing) : next;
  if (isBee(labelled) || (isPlant(labelled) && ends(last))) return true;
  return ends(before) && ends(last);
}

export interface Passing {
  /** "unknown bumble bee" */
  readonly saysQueens: (phrase: string) => boolean;
  /** "saw none": a zero that needs no bee beside it. */
  readonly saysSeeing: (phrase: string) => boolean;
  /** "hoping for", "last year": what was not seen in this watch. */
  readonly notSeen: readonly Span[];
}

/** True for what its clause says was hoped for, or seen at another time. */
export function isUnseen(marks: readonly Mark[], at: number, notSeen: readonly Span[]): boolean {
  if (notSeen.length === 0) return false;
  const said = marks[at]!.span[0];
  for (let before = at; before >= 0; before--) {
    const mark = marks[before]!;
    const from = before === 0 ? 0 : marks[before - 1]!.span[1];
    if (notSeen.some((span) => span[0] >= from && span[0] <= mark.span[0] && said < span[1])) return true;
    if (mark.kind === 'break' && mark.strength !== 'and' && mark.strength !== 'or') return false;
  }
  return false;
}

export function marksInPassing(marks: readonly Mark[], folded: string, passing: Passing): Mark[] {
  const { saysQueens, notSeen } = passing;
  const anyBee = marks.some(({ kind }) => kind === 'bee' || kind === 'cannot-tell');
  const unseen = (at: number): boolean => isUnseen(marks, at, notSeen);
  return marks.filter((mark, at) => {
    switch (mark.kind) {
      case 'unknown':
      case 'nothing-else':
        return false;
      case 'moved-on':
        return anyBee && standsOnPlant(marks, at);
      case 'bee':
        return !unseen(at);
      case 'cannot-tell': {
        // "no idea how warm" is of no bee
        const before = marks[at - 1]?.kind === 'break' ? marks[at - 2] : marks[at - 1];
        const beside = before?.kind === 'count' || isBee(before) || isBee(after(marks, at));
        return (beside || saysQueens(folded.slice(...mark.span)) || standsOnPlant(marks, at)) && !unseen(at);
      }
      case 'zero':
        return isNoneOfBees(marks, at, folded, passing) && !unseen(at);
      case 'another':
      case 'same':
        return anyBee && (isBee(after(marks, at)) || standsOnPlant(marks, at));
      case 'same-one':
      case 'same-ones':
      case 'total':
      case 'all-bees':
        return anyBee;
      case 'count': {
        if (unseen(at)) return false;
        const first = after(marks, at);
        const next = first?.kind === 'of-them' ? after(marks, marks.indexOf(first)) : first;
        if (countedBee(marks, at)) return true;
        if (isBee(next) || next?.kind === 'pollen' || next?.kind === 'no-pollen') return true;
        const before = marks[at - 1];
        const named =
          before?.kind === 'break' &&
          before.strength !== 'line' &&
          before.strength !== 'stop' &&
          before.strength !== 'and'
            ? marks[at - 2]
            : before;
        if (named?.kind === 'bee' || named?.kind === 'queens') return true;
        // "phlox - 0"
        if (mark.count.values[0] === 0 && mark.count.exact && isPlant(named)) return true;
        if (before && ['another', 'same-one', 'same', 'queens'].includes(before.kind)) return true;
        return anyBee && !mark.count.article && standsOnPlant(marks, at);
      }
      default:
        return true;
    }
  });
}

/** Larger numbers beside bees are of something else. */
const MOST_LOST = 20;

/** True where a clause that tells of a bee has a number in figures that no reading took: "imp 3 per 1". */
export function losesNumbers(all: readonly Mark[], kept: readonly Mark[], folded: string): boolean {
  let tellsBee = false;
  let lost = false;
  for (const mark of all) {
    if (mark.kind === 'break' && ['stop', 'line', 'comma'].includes(mark.strength)) {
      if (tellsBee && lost) return true;
      tellsBee = lost = false;
    } else if (mark.kind === 'bee') tellsBee ||= kept.includes(mark);
    else if (mark.kind === 'count' && !mark.count.article && !kept.includes(mark)) {
      const [value = 0] = mark.count.values;
      lost ||= value > 0 && value <= MOST_LOST && /^\d/.test(folded.slice(...mark.span));
    }
  }
  return tellsBee && lost;
}
