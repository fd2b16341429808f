/**
 * Which plants a bee chose of those it had: selection ratios after Manly et al. 2002, with the watch as the choice set,
 * by visits. Only watches with two plants or more in which the bee was seen say anything: without a visit a watch
 * expects none. Bees known to the genus alone are left out. With one choice set the standard error is Manly's design I;
 * with more it comes from resampling observers, or watches where observers are fewer than ten.
 */
import normal from '@stdlib/stats-base-dists-normal-quantile';
import { quantileOf, resampled, standardDeviation } from './bootstrap.js';
import type { CountedWatch } from './counted.js';
import { sortedNames, type Figure } from './figure.js';
import { addTo, sum, type Sums } from './sums.js';
import { GENUS } from './standing.js';

export interface Preference {
  readonly bee: string;
  readonly plant: string;
  /** Visits. */
  readonly used: number;
  /** Visits that would fall to the plant if the bee chose by open flowers alone. */
  readonly expected: number;
  /** used / expected; null where no flower was open. */
  readonly ratio: number | null;
  /** These three are null where the plant was not used. The interval is Bonferroni's over the bee's plants. */
  readonly se: number | null;
  readonly low95: number | null;
  readonly high95: number | null;
  /** The ratio by the sum of the bee's ratios. */
  readonly standardised: number | null;
  /** Jacobs' D, −1 to 1. */
  readonly jacobs: number | null;
  /** Ivlev's E, −1 to 1. */
  readonly ivlev: number | null;
}

/** Each plant's share of the open flowers; null where there is no choice, or flowers that do not compare. */
function sharesOf({ plants }: CountedWatch): Sums | null {
  const flowers: Sums = new Map();
  for (const plant of plants) addTo(flowers, plant.name, plant.flowers);
  const total = sum([...flowers.values()]);
  // A head of dandelion and a flower of a bluebell are not one choice each.
  const units = new Set(plants.map(({ unit }) => unit));
  if (flowers.size < 2 || units.size > 1 || total === 0) return null;
  return new Map([...flowers].map(([name, value]) => [name, value / total]));
}

/** Visits and expected visits of a bee, by plant. */
interface Visits {
  readonly used: Sums;
  readonly expected: Sums;
}

/** What is kept of a bee. */
interface Choices extends Visits {
  /** The distinct choice sets it met, as text; more than one is all that must be known. */
  readonly sets: Set<string>;
  readonly byObserver: Map<string, Visits>;
  /** Kept only as long as observers are too few to be resampled. */
  readonly byWatch: Map<string, Visits>;
}

/** Below this many, watches are resampled instead. */
const LEAST_OBSERVERS = 10;
/** Left out at either end, over all of a bee's plants. */
const TAIL = 0.025;

/** Keys in the order of the numbers. */
const watchKey = (number: number): string => String(number).padStart(12, '0');

const visitsNone = (): Visits => ({ used: new Map(), expected: new Map() });
const ratioOf = (one: number, other: number): number | null => (other === 0 ? null : one / other);

interface Spread {
  readonly se: number;
  readonly low95: number;
  readonly high95: number;
}

/** Manly's design I: every animal had the same choice. */
function designOne(plants: readonly string[], { used, expected }: Visits): (Spread | null)[] {
  const visits = sum([...used.values()]);
  return plants.map((plant) => {
    const [u, e] = [used.get(plant) ?? 0, expected.get(plant) ?? 0];
    if (u === 0 || e === 0) return null;
    const [o, p] = [u / visits, e / visits];
    const se = Math.sqrt((o * (1 - o)) / (visits * p ** 2));
    const reach = normal(1 - TAIL / plants.length, 0, 1) * se;
    return { se, low95: u / e - reach, high95: u / e + reach };
  });
}

/** Those of the clusters that met the plant, in their order, with their visits. */
function metBy(
  clusters: readonly Visits[],
  plant: string,
): { clusters: Uint32Array; used: Float64Array; expected: Float64Array } {
  const whose = clusters.flatMap(({ used, expected }, cluster) =>
    used.has(plant) || expected.has(plant) ? [cluster] : [],
  );
  const of = (sums: 'used' | 'expected'): Float64Array =>
    Float64Array.from(whose, (cluster) => clusters[cluster]![sums].get(plant) ?? 0);
  return { clusters: Uint32Array.from(whose), used: of('used'), expected: of('expected') };
}

/** Whole observers, or watches, drawn anew; a plant that a draw does not hold has no ratio in it. */
function byResampling(plants: readonly string[], bee: Choices, seed: number): (Spread | null)[] {
  const units = bee.byObserver.size >= LEAST_OBSERVERS ? bee.byObserver : bee.byWatch;
  // in the order of their keys: the order in which watches came must not matter
  const clusters = [...units].sort(([one], [other]) => (one < other ? -1 : 1)).map(([, visits]) => visits);
  // an observer meets a few of a season's plants, so that most of a whole table would be zeros
  const met = plants.map((plant) => metBy(clusters, plant));
  const rounds = resampled(clusters.length, seed, (draws) =>
    met.map(({ clusters: whose, used, expected }) => {
      let [usedInRound, expectedInRound] = [0, 0];
      for (let at = 0; at < whose.length; at++) {
        const times = draws[whose[at]!]!;
        usedInRound += times * used[at]!;
        expectedInRound += times * expected[at]!;
      }
      return expectedInRound === 0 ? NaN : usedInRound / expectedInRound;
    }),
  );
  return plants.map((plant, at) => {
    const ratios = rounds.map((round) => round[at]!).filter((ratio) => !Number.isNaN(ratio));
    // what one observer, or one watch, alone was offered says nothing of how others differ
    const offered = met[at]!.expected.filter((visits) => visits > 0).length;
    if ((bee.used.get(plant) ?? 0) === 0 || offered < 2 || ratios.length < 2) return null;
    return {
      se: standardDeviation(ratios),
      low95: quantileOf(ratios, TAIL / plants.length),
      high95: quantileOf(ratios, 1 - TAIL / plants.length),
    };
  });
}

function preferencesOf(bee: string, choices: Choices, seed: number): Preference[] {
  const { used, expected, sets } = choices;
  const visits = sum([...used.values()]);
  const plants = sortedNames(expected.keys());
  const ratios = plants.map((plant) => ratioOf(used.get(plant) ?? 0, expected.get(plant) ?? 0));
  const all = sum(ratios.map((ratio) => ratio ?? 0));
  const spreads = sets.size === 1 ? designOne(plants, choices) : byResampling(plants, choices, seed);
  return plants.map((plant, at) => {
    const [u, e, ratio] = [used.get(plant) ?? 0, expected.get(plant) ?? 0, ratios[at] ?? null];
    const [o, p] = [u / visits, e / visits];
    return {
      bee,
      plant,
      used: u,
      expected: e,
      ratio,
      se: spreads[at]?.se ?? null,
      low95: spreads[at]?.low95 ?? null,
      high95: spreads[at]?.high95 ?? null,
      standardised: ratio === null ? null : ratioOf(ratio, all),
      jacobs: ratioOf(o - p, o + p - 2 * o * p),
      ivlev: ratioOf(o - p, o + p),
    };
  });
}

/** `seed` is that of the resampling. */
export function preference(seed: number): Figure<Preference[] | null> {
  const choices = new Map<string, Choices>();
  return {
    add(counted) {
      const shares = sharesOf(counted);
      if (shares === null) return;
      const set = JSON.stringify([...shares].sort());
      const visitsInWatch = new Map<string, Sums>();
      for (const seen of counted.queens.filter(({ bee }) => bee !== GENUS)) {
        const byPlant = visitsInWatch.get(seen.bee) ?? new Map<string, number>();
        visitsInWatch.set(seen.bee, byPlant);
        addTo(byPlant, seen.plant, seen.visits);
      }
      for (const [bee, used] of visitsInWatch) {
        const kept: Choices = choices.get(bee) ?? {
          ...visitsNone(),
          sets: new Set(),
          byObserver: new Map(),
          byWatch: new Map(),
        };
        choices.set(bee, kept);
        if (kept.sets.size < 2) kept.sets.add(set);
        const { observer } = counted.watch;
        const own = kept.byObserver.get(observer) ?? visitsNone();
        kept.byObserver.set(observer, own);
        const inWatch = visitsNone();
        const visits = sum([...used.values()]);
        for (const to of [kept, own, inWatch]) {
          for (const [plant, count] of used) addTo(to.used, plant, count);
          for (const [plant, share] of shares) addTo(to.expected, plant, visits * share);
        }
        if (kept.byObserver.size < LEAST_OBSERVERS) kept.byWatch.set(watchKey(counted.watch.number), inWatch);
        else kept.byWatch.clear();
      }
    },
    result: () =>
      choices.size === 0
        ? null
        : sortedNames(choices.keys()).flatMap((bee) => {
            const kept = choices.get(bee);
            return kept ? preferencesOf(bee, kept, seed) : [];
          }),
  };
}
