/** The bees of the invented survey: when they fly, how many there are, what they are taken for. */
import type { Bee as ListedBee, Names } from '../../../shared/names.js';
import type { Chance } from './chance.js';
import { dayOfYear } from './calendar.js';
import { DEPTHS, type Depth } from './flora.js';

export const GENUS = 'Bombus';
type Tongue = 'short' | 'middling' | 'long';

/** Invented abundances, in the order people know them from the upper Midwest; tongues from memory. */
const ABUNDANCE: readonly (readonly [name: string, abundance: number, tongue: Tongue])[] = [
  ['Bombus bimaculatus', 1, 'middling'],
  ['Bombus impatiens', 0.95, 'middling'],
  ['Bombus griseocollis', 0.8, 'short'],
  ['Bombus auricomus', 0.3, 'long'],
  ['Bombus vagans', 0.25, 'middling'],
  ['Bombus fervidus', 0.16, 'long'],
  ['Bombus ternarius', 0.15, 'short'],
  ['Bombus rufocinctus', 0.12, 'short'],
  ['Bombus borealis', 0.09, 'long'],
  ['Bombus perplexus', 0.06, 'short'],
  ['Bombus pensylvanicus', 0.05, 'long'],
  ['Bombus citrinus', 0.05, 'short'],
  ['Bombus terricola', 0.015, 'short'],
  ['Bombus affinis', 0.006, 'short'],
];

/** How gladly a tongue goes to a depth. */
const PREFERENCE: Readonly<Record<Tongue, Readonly<Record<Depth, number>>>> = {
  short: { open: 1.6, middling: 0.8, deep: 0.3 },
  middling: { open: 0.9, middling: 1.2, deep: 0.8 },
  long: { open: 0.4, middling: 0.8, deep: 2 },
};

export interface Bee {
  readonly name: string;
  readonly words: readonly string[];
  /** Bees it is taken for in this region, and those of them that fly with it. */
  readonly lookAlikes: readonly string[];
}

/** What flies on one day, by the depth of the flower. */
export interface Flying {
  readonly queens: Readonly<Record<Depth, { readonly weights: readonly number[]; readonly total: number }>>;
  /** Workers are no part of the survey; some people tell of them. */
  readonly workers: { readonly weights: readonly number[]; readonly total: number };
}

export interface Fauna {
  readonly bees: readonly Bee[];
  flyingOn(dayOfYear: number): Flying;
  /** What an observer calls a bee in a message. */
  wordsFor(name: string, chance: Chance): string;
}

/** Of a cuckoo, which has no workers: this many days after its first. */
const CUCKOO_DAYS = 50;
/** A few are out before the usual first day. */
const EARLY_DAYS = 3;

/** A rise, a peak and a slower fall as queens stay with their nests; 1 at the peak. */
function queensFlying(day: number, first: number, last: number): number {
  if (day < first - EARLY_DAYS) return 0;
  const peak = first + 0.42 * (last - first);
  const away = day < peak ? (2 * (peak - day)) / (peak - first) : (1.5 * (day - peak)) / (last - peak);
  return Math.exp(-0.5 * away * away);
}

const workersFlying = (day: number, first: number | null): number =>
  first === null || day < first ? 0 : 1 - Math.exp((first - day) / 15);

const sum = (numbers: readonly number[]): number => numbers.reduce((all, number) => all + number, 0);
const UNKNOWN = ['not sure which', 'unknown bumble bee', 'bumble bee'] as const;

/** Throws for a bee of which the list does not say when its queens fly. */
export function faunaOf({ bees: listed }: Names): Fauna {
  const known = new Map(listed.map((bee) => [bee.name, bee]));
  const rows = ABUNDANCE.map(([name, abundance, tongue]) => {
    const bee = known.get(name);
    const from = bee?.queens_from ?? null;
    if (bee === undefined || from === null) throw new Error(`The list of bees does not say when ${name} flies.`);
    const first = dayOfYear(from);
    const workers = bee.workers_from === null ? null : dayOfYear(bee.workers_from);
    return { bee, abundance, tongue, first, last: workers ?? first + CUCKOO_DAYS, workers };
  });
  const here = new Set(rows.map(({ bee }) => bee.name));
  const words = new Map(rows.map(({ bee }) => [bee.name, wordsOf(bee)] as const));

  return {
    bees: rows.map(({ bee }) => ({
      name: bee.name,
      words: wordsOf(bee),
      lookAlikes: bee.look_alikes.filter((name) => here.has(name)),
    })),
    flyingOn(day) {
      const flying = rows.map(({ abundance, first, last }) => abundance * queensFlying(day, first, last));
      const at = (depth: Depth) => {
        const weights = rows.map(({ tongue }, index) => (flying[index] ?? 0) * PREFERENCE[tongue][depth]);
        return { weights, total: sum(weights) };
      };
      const workers = rows.map((row) => row.abundance * workersFlying(day, row.workers));
      const [open, middling, deep] = DEPTHS;
      return {
        queens: { [open]: at(open), [middling]: at(middling), [deep]: at(deep) },
        workers: { weights: workers, total: sum(workers) },
      };
    },
    wordsFor: (name, chance) => chance.one(words.get(name) ?? UNKNOWN),
  };
}

/**
 * `two-spotted`, `bimac`, `bimaculatus`, `Bombus bimaculatus`. What would be a single everyday word, "yellow", nobody
 * takes for a name: it stays "yellow bumble bee".
 */
function wordsOf({ name, common, short }: ListedBee): string[] {
  const everyday = (common[0] ?? name).replace(/(?<=[ -].*) bumble bee$/, '');
  return [everyday, everyday, name.replace(/^Bombus /, ''), short[0] ?? name, name];
}
