/**
 * Reads which plants were watched, each with about how many open flowers: "squirrel corn 60, phlox about 40". Flowers
 * are null where no number was given, or only "lots": they are asked for plant by plant. A name that the list does not
 * hold is kept as typed.
 */
import type { Ask } from '../../shared/phrases.js';
import type { Count } from '../../shared/record.js';
import { readCount } from './count.js';
import { blankLines } from './note/blank-lines.js';
import { listNumbersIn } from './note/list-numbers.js';
import { groupsOf, type Group } from './plants/groups.js';
import { plantsWords } from './plants/vocabulary.js';
import { none, sure, unsure, type Context, type Reader } from './reading.js';
import { blank, fold } from './text.js';

export interface PlantTold {
  /** Accepted name; null for a plant that the list does not hold. */
  readonly name: string | null;
  readonly rank: string | null;
  /** Its name in their words. */
  readonly asTyped: string;
  /** Open flowers; null where they are still to be asked for. */
  readonly flowers: Count | null;
  readonly flowersTyped: string | null;
  readonly doubt?: true;
}

/** Longer answers are a note or none at all. */
const LONGEST = 4000;
const MOST_OFFERS = 6;
interface Flowers {
  readonly count: Count | null;
  readonly typed: string | null;
  readonly ask: Ask | null;
}

const NOT_COUNTED: Flowers = { count: null, typed: null, ask: null };

/** The count of a plant's flowers, from all that was said of it but its name. */
function flowersOf(text: string, folded: string, group: Group, context: Context): Flowers {
  if (!group.counted) return NOT_COUNTED;
  const { saysCount, countsBearers, saysFlowers, withoutEach } = plantsWords(context.words);
  const withoutName = blank(text, [group.nameSpan]);
  const pieces = group.pieces.filter((piece) => !group.takenBack.includes(piece));
  const numbers = pieces.filter(({ hasNumber }) => hasNumber);
  const amounts = numbers.length > 0 ? numbers : pieces.filter(({ span }) => saysCount(folded.slice(...span)));
  const spans = amounts.map(({ span }) => span);
  const said = spans
    .map((span) =>
      withoutName
        .slice(...span)
        .replace(/\s+/g, ' ')
        .trim(),
    )
    .filter((words) => words !== '');
  // "1 lilac bush" counts bushes, though its name has the word
  const flowers = said.filter(
    (words) =>
      !countsBearers(fold(words)) && !(bearsAlone(words, group) && countsBearers(folded.slice(...group.nameSpan))),
  );
  if (flowers.length === 0) return NOT_COUNTED;
  // "just the one lilac, about 60 clusters"
  const named = flowers.filter((words) => saysFlowers(fold(words)));
  const typed = (named.length > 0 ? named : flowers).join(', ');
  const reading = readCount(withoutEach(typed), { ...context, of: 'flowers' });
  const shown = typed.replace(/^[\s,:;=()-]+|[\s,:;=()-]+$/g, '');
  switch (reading.state) {
    case 'sure':
      return { count: reading.value, typed: shown, ask: null };
    case 'unsure':
      return { count: reading.offer[0] ?? null, typed: shown, ask: 'plants-count-doubt' };
    case 'none':
      return NOT_COUNTED;
  }
}

/** True for a number right before the plant's name, with nothing else said. */
const bearsAlone = (words: string, group: Group): boolean => /^[\d\s]+$/.test(words) && group.pieces.length > 1;

function toldOf(text: string, group: Group, flowers: Flowers, choice: number): PlantTold {
  const value = group.names[choice] ?? null;
  // "bluebells maybe 60" doubts the sixty
  const doubt = group.doubt && flowers.ask === null;
  return {
    name: value?.name ?? null,
    rank: value?.rank ?? null,
    asTyped: text.slice(...group.nameSpan).trim(),
    flowers: flowers.count,
    flowersTyped: flowers.typed,
    ...(doubt ? { doubt: true as const } : {}),
  };
}

/** A plant named twice is one: the count said last stands. Two words for one genus are two plants. */
function withoutRepeats(plants: readonly PlantTold[]): PlantTold[] {
  const keyOf = ({ name, rank, asTyped }: PlantTold): string =>
    rank === 'genus' || name === null ? `${name ?? ''} ${asTyped.toLowerCase()}` : name;
  const kept: PlantTold[] = [];
  for (const plant of plants) {
    const at = kept.findIndex((other) => keyOf(other) === keyOf(plant));
    if (at === -1) kept.push(plant);
    else if (plant.flowers !== null)
      kept[at] = { ...kept[at]!, flowers: plant.flowers, flowersTyped: plant.flowersTyped };
  }
  return kept;
}

export const readPlants: Reader<PlantTold[]> = (typed, context) => {
  if (typed.trim() === '') return none('empty');
  if (typed.length > LONGEST) return none('too-long');
  const text = blankLines(typed, listNumbersIn(typed));
  const folded = fold(text);
  const groups = groupsOf(text, folded, context);
  if (groups.length === 0) return none('plants-no-name');
  const flowers = groups.map((group) => flowersOf(text, folded, group, context));
  const used = groups.flatMap((group) => [
    group.nameSpan,
    ...group.pieces.filter(({ hasNumber }) => hasNumber).map(({ span }) => span),
  ]);
  const told = (changed: number, choice: number): PlantTold[] =>
    withoutRepeats(groups.map((group, at) => toldOf(text, group, flowers[at]!, at === changed ? choice : 0)));
  const ask = groups.find(({ asks }) => asks !== null)?.asks ?? flowers.find((each) => each.ask !== null)?.ask ?? null;
  if (ask === null) return sure(told(0, 0), used);
  const others = groups.flatMap(({ names, asks }, at) =>
    asks === null ? [] : names.slice(1).map((_, choice) => told(at, choice + 1)),
  );
  const offers = [told(0, 0), ...others];
  return unsure(
    offers.length <= MOST_OFFERS ? offers : [...offers.slice(0, MOST_OFFERS - 1), offers.at(-1)!],
    ask,
    used,
  );
};
