/** What a phrase with several meanings ("both", "all") means in a tally, by what stands before it. */
import type { Span } from '../reading.js';
import type { Mark } from './mark.js';
import type { Meaning } from './vocabulary.js';

type Bare = Mark extends infer Each ? (Each extends { span: Span } ? Omit<Each, 'span'> : never) : never;

/** The mark of the last word that is no article or break. */
const lastOf = (marks: readonly Mark[]): Mark | undefined => {
  for (let at = marks.length - 1; at >= 0; at--) {
    const mark = marks[at]!;
    if (mark.kind !== 'count' || !mark.count.article) return mark;
  }
  return undefined;
};

/** What the phrase means here; null for one that means nothing by itself. `zeroFollows`: "rest none". */
export function markOf(
  kinds: ReadonlySet<Meaning>,
  before: readonly Mark[],
  phrase: string,
  units: Readonly<Record<string, number>>,
  zeroFollows: boolean,
): Bare | null {
  const last = lastOf(before);
  const placed = last?.kind === 'preposition';
  const has = (kind: Meaning): boolean => kinds.has(kind);
  if (has('notZero')) return null;
  if (has('unsettling')) return { kind: 'unsettling' };
  if (has('missed')) return { kind: 'thing' };
  // "oops" at the very start takes nothing back
  if (has('takesBack')) return before.length > 0 ? { kind: 'takes-back' } : null;
  if (has('takesBackWeakly')) return before.length > 0 ? { kind: 'takes-back-weakly' } : null;
  const pollenSaid = has('withoutIt') && before.some(({ kind }) => kind === 'pollen');
  const counted = last?.kind === 'count' || last?.kind === 'queens';
  if (pollenSaid && (counted || (last?.kind === 'bee' && phrase.startsWith('w')))) return { kind: 'no-pollen' };
  if (has('denies')) return { kind: 'denies' };
  if (has('nothingElse')) return { kind: 'nothing-else' };
  if (has('thatIsAll')) return { kind: 'that-is-all' };
  if (has('noPollen')) return { kind: 'no-pollen' };
  if (has('restPlants') && (placed || zeroFollows || last?.kind === 'zero' || phrase.split(' ').length > 1))
    return { kind: 'plants', which: 'rest', each: true };
  if (has('each'))
    return placed || phrase.includes(' ') ? { kind: 'plants', which: 'all', each: true } : { kind: 'each' };
  if (has('allPlants') && has('zero')) return { kind: 'zero' };
  if (has('allPlants') && (placed || /(?:plants?|flowers?|kinds?|species)$/.test(phrase))) {
    return { kind: 'plants', which: 'all', each: false };
  }
  if (has('sameOnes')) return { kind: 'same-ones' };
  if (has('sameOne')) return { kind: 'same-one' };
  if (has('same')) return { kind: 'same' };
  if (has('movedOn')) return { kind: 'moved-on' };
  if (has('another')) return { kind: 'another' };
  if (has('mostly')) return { kind: 'mostly' };
  if (has('zero')) return { kind: 'zero' };
  if (has('pollen')) return { kind: 'pollen' };
  if (has('cannotTell')) return { kind: 'cannot-tell' };
  if (has('otherInsects')) return { kind: 'insect' };
  if (has('workers')) return { kind: 'worker', plural: phrase.endsWith('s') };
  if (has('total')) return { kind: 'total' };
  if (has('allBees') || has('bothBees')) {
    const number = phrase.split(' ').flatMap((word) => (word === 'both' ? [2] : (units[word] ?? [])))[0];
    return { kind: 'all-bees', number: number ?? null };
  }
  if (has('ofThem') && last?.kind === 'count') return { kind: 'of-them' };
  if (has('saying')) return { kind: 'says' };
  if (has('queens')) return { kind: 'queens', plural: has('queensPlural') };
  if (has('doubtful')) return { kind: 'doubtful', ofZero: has('doubtsZero'), behind: phrase === '?' };
  if (has('concluding') && before.length > 0) return { kind: 'concludes' };
  if (has('ands')) return { kind: 'break', strength: 'and' };
  if (has('ors')) return { kind: 'break', strength: 'or' };
  if (has('onPlants') || has('prepositions')) return { kind: 'preposition', strong: has('onPlants') };
  if (has('plantThings')) return { kind: 'thing' };
  return null;
}
