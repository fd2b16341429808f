/**
 * Plants with their flowers and the tally of queens, out of one text that tells both: "wild geranium 85 flowers,
 * 1 griseocollis".
 */
import type { Count } from '../../../shared/record.js';
import { readCount } from '../count.js';
import type { FoundName, FoundNames } from '../names/index.js';
import { readPlant } from '../plant.js';
import type { PlantTold } from '../plants.js';
import { namesSaid } from '../plants/plants-said.js';
import { sure, unsure, type Context, type Reading, type Span } from '../reading.js';
import { findTallyAmong, readTally, type TallyRow } from '../tally.js';
import { fold } from '../text.js';
import { storiesIn } from './asides.js';
import { blankLines, keepOnly } from './blank-lines.js';
import { calledAgain } from './called-again.js';
import { floraIn, type FloraSaid } from './flowers.js';
import { isWithin, sentencesIn } from './sentences.js';
import { onlyMentioned, takenBack, withoutPlants } from './plants-watched.js';
import { withStrangers } from './strangers.js';
import { noteWords } from './vocabulary.js';

export interface Flora {
  readonly plants: Reading<PlantTold[]> | null;
  readonly tally: Reading<TallyRow[]> | null;
}

interface Told {
  readonly plants: readonly PlantTold[];
  /** Each other choice of a shared name, one at a time. */
  readonly others: readonly (readonly PlantTold[])[];
  readonly shared: boolean;
  readonly doubted: boolean;
  readonly used: readonly Span[];
}

const keyOf = (found: FoundName): string => found.names[0]?.name ?? '';
const genusOf = (name: string): string => name.split(' ')[0]!;

/** "the geranium" of a text that tells of wild geranium is that one, and so is a shared name that fits one plant told. */
function asTold(plants: readonly FoundName[]): FoundName[] {
  const species = plants.filter(({ names, clear }) => clear && names[0]?.rank !== 'genus' && names[0]?.rank !== null);
  return plants.map((found) => {
    const [value] = found.names;
    if (!value || species.includes(found)) return found;
    const fits = species.filter(({ names: [other] }) =>
      value.rank === 'genus'
        ? genusOf(other!.name) === value.name
        : found.names.some(({ name }) => name === other!.name),
    );
    const keys = new Set(fits.map(keyOf));
    return keys.size === 1 ? { ...found, names: fits[0]!.names, clear: true } : found;
  });
}

function countOf(
  text: string,
  spans: readonly Span[],
  context: Context,
): { count: Count | null; doubted: boolean; typed: string } {
  // of "one … 60 clusters" the clusters count
  const { saysFlowers } = noteWords(context.words);
  const named = spans.filter((span) => saysFlowers(fold(text.slice(...span))));
  const typed = (named.length > 0 ? named : spans).map((span) => text.slice(...span).trim()).join(', ');
  const reading = readCount(typed, { ...context, of: 'flowers' });
  if (reading.state === 'sure') return { count: reading.value, doubted: false, typed };
  if (reading.state === 'unsure') return { count: reading.offer[0] ?? null, doubted: true, typed };
  // numbers that make no count are asked for
  return { count: null, doubted: true, typed };
}

/** Each plant once, in the order of its first mention, with the flowers said of it anywhere. */
function plantsOf(text: string, { plants, flowers }: FloraSaid, context: Context): Told {
  const keys = [...new Set(plants.map(keyOf))].filter((key) => key !== '');
  const told: PlantTold[] = [];
  let doubted = false;
  let shared = false;
  const others: (readonly PlantTold[])[] = [];
  const choices: { at: number; names: FoundName['names'] }[] = [];
  for (const key of keys) {
    const mentions = plants.filter((found) => keyOf(found) === key);
    const first = mentions[0]!;
    const spans = flowers
      .filter(({ plant }) => plant !== null && keyOf(plants[plant]!) === key)
      .map(({ span }) => span);
    const counted = spans.length > 0 ? countOf(text, spans, context) : null;
    doubted ||= counted?.doubted === true;
    const [value] = first.names;
    const listed = value !== undefined && value.rank !== null;
    if (!mentions.some(({ clear }) => clear)) {
      shared = true;
      choices.push({ at: told.length, names: first.names.slice(1) });
    }
    told.push({
      name: listed ? value.name : null,
      rank: listed ? value.rank : null,
      asTyped: listed ? text.slice(...first.span) : (value?.name ?? ''),
      flowers: counted?.count ?? null,
      flowersTyped: counted?.count ? counted.typed : null,
      ...(mentions.some(({ doubt }) => doubt) && counted?.doubted !== true ? { doubt: true as const } : {}),
    });
  }
  for (const { at, names } of choices) {
    for (const { name, rank } of names)
      others.push(told.map((plant, index) => (index === at ? { ...plant, name, rank } : plant)));
  }
  const used = [
    ...plants.map(({ span }) => span),
    ...flowers.filter(({ plant }) => plant !== null).map(({ span }) => span),
  ];
  return { plants: told, others, shared, doubted, used };
}

/** More are no help to choose from. */
const MOST_OFFERS = 6;

function readingOf({ plants, others, shared, doubted, used }: Told): Reading<PlantTold[]> | null {
  if (plants.length === 0) return null;
  if (shared)
    return unsure([[...plants], ...others.map((other) => [...other])].slice(0, MOST_OFFERS), 'plants-shared', used);
  return doubted ? unsure([[...plants]], 'plants-count-doubt', used) : sure([...plants], used);
}

/** The 0 of "columbine 20 fl, 0; phlox …". */
const NUMBER_NONE = /(?<![\d.:/-])0(?![\d.:/%-])/;

/**
 * The text for the tally: numbers of flowers are out of it, and so are the plants where they stand in a list of their
 * own ("bluebells 85, phlox 40. 2 imps on the phlox"), which must not head what follows.
 */
function withoutFlowers(text: string, { bees, plants, flowers }: FloraSaid, context: Context): string {
  const spans = flowers.map(({ span }) => span);
  const counted = plants.filter((_, at) => flowers.some(({ plant }) => plant === at));
  const { saysNone } = noteWords(context.words);
  const parted = counted.slice(0, -1).every((found, at) => {
    const next = counted[at + 1]!.span[0];
    const bee = bees.some(({ span }) => span[0] >= found.span[1] && span[1] <= next);
    const between = fold(text.slice(found.span[1], next));
    return bee || saysNone(between) || NUMBER_NONE.test(between);
  });
  if (parted) return blankLines(text, spans);
  const left = blankLines(text, spans);
  const untold = namedBefore(counted, plants, bees, (end) => saysNone(fold(left.slice(0, end))));
  const listed = [...withSynonyms(counted, plants, left), ...untold];
  return blankLines(text, [...spans, ...listed.map(({ span }) => span)]);
}

/** "redbud and phlox, 250 flowers on the redbud, 60 on the phlox": those named first, where no bees are told so far. */
function namedBefore(
  counted: readonly FoundName[],
  plants: readonly FoundName[],
  bees: readonly FoundName[],
  saysNoneBefore: (end: number) => boolean,
): FoundName[] {
  const from = counted[0]!.span[0];
  if (bees.some(({ span }) => span[0] < from) || saysNoneBefore(from)) return [];
  const keys = new Set(counted.map(keyOf));
  return plants.filter((found) => found.span[1] <= from && keys.has(keyOf(found)));
}

/** Signs that part two names of one plant: "columbine (Aquilegia canadensis)". */
const BESIDE_SYNONYM = /^[ \t,()[\]/=–-]*$/;

/** Those plants with the other names that stand right beside them. `text` is without the numbers of flowers. */
function withSynonyms(counted: readonly FoundName[], plants: readonly FoundName[], text: string): FoundName[] {
  const isBeside = (one: FoundName, other: FoundName | undefined): boolean => {
    if (other === undefined || keyOf(one) !== keyOf(other)) return false;
    const [first, second] = one.span[0] < other.span[0] ? [one, other] : [other, one];
    return BESIDE_SYNONYM.test(text.slice(first.span[1], second.span[0]));
  };
  return plants.filter(
    (found, at) =>
      counted.includes(found) ||
      [plants[at - 1], plants[at + 1]].some((other) => other && counted.includes(other) && isBeside(found, other)),
  );
}

/** `watched` as before, with the plants told now: names, or words as typed. */
export const watchedWith = (context: Context, plants: readonly PlantTold[]): Context => {
  const keys = plants.map(({ name, asTyped }) => name ?? asTyped);
  const added = keys.filter((key) => !context.watched.includes(key));
  return added.length === 0 ? context : { ...context, watched: [...context.watched, ...added] };
};

/** A tally on a plant whose name is shared is as unsure as that plant: each choice is offered. */
function withChoices(tally: Reading<TallyRow[]>, { plants, others, shared }: Told): Reading<TallyRow[]> {
  if (tally.state !== 'sure' || !shared) return tally;
  const rowsFor = (other: readonly PlantTold[]): TallyRow[] =>
    tally.value.map((row) => {
      const at = plants.findIndex(({ name }) => name !== null && name === row.plant);
      return at === -1 ? row : { ...row, plant: other[at]?.name ?? row.plant };
    });
  const choices = others.map(rowsFor);
  const changes = choices.filter((rows) => rows.some(({ plant }, at) => plant !== tally.value[at]!.plant));
  if (changes.length === 0) return tally;
  return unsure([tally.value, ...changes].slice(0, MOST_OFFERS), 'plants-shared', tally.used);
}

/**
 * Reads both, out of a text whose names are known. `tallyAsked`: bare counts are queens too. `found` holds for plants
 * watched before; where several are told now, names are looked up again, for then "the indigo" is one of them.
 */
export function readFlora(text: string, context: Context, found: FoundNames, tallyAsked: boolean): Flora {
  const folded = fold(text);
  const called = asTold(calledAgain(folded, found.plants, found.plants));
  const seen = floraIn(folded, { ...found, plants: called }, context.words);
  const ownerless = seen.flowers.find(({ plant }) => plant === null);
  const owner = ownerless ? plantBefore(withoutBees(text, found), folded, ownerless.span, context) : null;
  const all = owner ? floraIn(folded, withPlant(found, owner), context.words) : seen;
  const back = takenBack(folded, all, context.words);
  const standing = withoutPlants(all, back);
  const mentioned = onlyMentioned(folded, standing, context.words);
  const said = withoutPlants(standing, mentioned);
  const told = plantsOf(text, said, context);
  const watching = watchedWith(context, told.plants);
  const isNamed = (sentence: Span): boolean =>
    [...said.bees, ...said.plants].some(({ span }) => isWithin(span, sentence));
  const rest = blankLines(
    withoutFlowers(text, said, context),
    [
      ...storiesIn(folded, context.words, isNamed).map((span) => ({ span })),
      ...mentioned,
      ...back,
      ...all.flowers.filter(({ plant }) => plant !== null && back.includes(all.plants[plant]!)),
    ].map(({ span }) => span),
  );
  const names = told.plants.length > 1 ? namesOfTally(text, rest, said, watching) : visibleNames(rest, said);
  const tally = tallyAsked ? readTally(rest, watching) : (findTallyAmong(rest, watching, names)[0] ?? null);
  return { plants: readingOf(told), tally: tally && withChoices(tally, told) };
}

/**
 * The plant of "Redbud still going, maybe 250 flowers left": where flowers are told of no plant that running text shows,
 * the words before them are read as the answer to "which plant".
 */
function plantBefore(text: string, folded: string, [from]: Span, context: Context): FoundName | null {
  const start = Math.max(...['.', ';', '\n', '!'].map((sign) => folded.lastIndexOf(sign, from - 1))) + 1;
  const reading = readPlant(text.slice(start, from), context);
  if (reading.state === 'none') return null;
  const values = reading.state === 'sure' ? [reading.value] : reading.offer;
  const names = values.flatMap(({ name, rank }) => (name === null ? [] : [{ name, rank }]));
  const [used] = reading.used;
  if (names.length === 0 || !used) return null;
  const span: Span = [used[0] + start, used[1] + start];
  return { names, clear: reading.state === 'sure', span, doubt: values[0]?.doubt === true, exactness: 'exact' };
}

/**
 * Names for the tally, where several plants are watched: in the sentences that tell of bees they are looked up again,
 * for there "the star" is one of them. Elsewhere they are as found, for looking up is slow. `whole` is the text with the
 * plants that `text` lacks.
 */
function namesOfTally(whole: string, text: string, found: FoundNames, watching: Context): FoundNames {
  const { tellsOfBees } = noteWords(watching.words);
  const folded = fold(text);
  const sentences = sentencesIn(folded).filter(
    (sentence) => found.bees.some(({ span }) => isWithin(span, sentence)) || tellsOfBees(folded.slice(...sentence)),
  );
  const outside = ({ span }: FoundName): boolean => !sentences.some((sentence) => isWithin(span, sentence));
  const again = namesSaid(fold(keepOnly(text, sentences)), watching);
  const known = visibleNames(text, found);
  const plants = calledAgain(fold(whole), again.plants, found.plants);
  const inOrder = (names: readonly FoundName[]): FoundName[] => [...names].sort((a, b) => a.span[0] - b.span[0]);
  return withStrangers(
    text,
    {
      bees: inOrder([...known.bees.filter(outside), ...again.bees]),
      plants: inOrder([...known.plants.filter(outside), ...plants]),
    },
    watching.words,
  );
}

const withPlant = ({ bees, plants }: FoundNames, added: FoundName): FoundNames => ({
  bees,
  plants: asTold([...plants, added].sort((a, b) => a.span[0] - b.span[0])),
});

/** "3, all impatiens, on 60 flowers" names no touch-me-not. */
const withoutBees = (text: string, { bees }: FoundNames): string =>
  blankLines(
    text,
    bees.map(({ span }) => span),
  );

/** Names that are not blanked out of the text. */
export const visibleNames = (text: string, { bees, plants }: FoundNames): FoundNames => {
  const visible = ({ span }: FoundName): boolean =>
    text.slice(...span).trim() !== '' && !/^\s|\s$/.test(text.slice(...span));
  return { bees: bees.filter(visible), plants: plants.filter(visible) };
};
