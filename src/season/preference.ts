/**
 * Which plants a bee chose of those it had: selection ratios after Manly et al. 2002, with the watch as the choice set,
 * by visits. Only watches with two plants or more in which the bee was seen say anything: without a visit a watch
 * expects none. Bees known to the genus alone are left out.
 */
import type { CountedWatch } from './counted.js';
import { addTo, sortedNames, sum, type Figure, type Sums } from './figure.js';
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
  /** Not built yet but for a single choice set (Manly's design I). Null too where the plant was not used. */
  readonly se: number | null;
  readonly low95: null;
  readonly high95: null;
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

/** What is kept of a bee. */
interface Choices {
  readonly used: Sums;
  readonly expected: Sums;
  /** The distinct choice sets it met, as text. */
  readonly sets: Set<string>;
}

const ratioOf = (one: number, other: number): number | null => (other === 0 ? null : one / other);

function preferencesOf(bee: string, { used, expected, sets }: Choices): Preference[] {
  const visits = sum([...used.values()]);
  const plants = sortedNames(expected.keys()).map((plant) => {
    const [u, e] = [used.get(plant) ?? 0, expected.get(plant) ?? 0];
    return { plant, used: u, expected: e, ratio: ratioOf(u, e) };
  });
  const ratios = sum(plants.map(({ ratio }) => ratio ?? 0));
  return plants.map(({ plant, used: u, expected: e, ratio }) => {
    const [o, p] = [u / visits, e / visits];
    const designOne = sets.size === 1 && u > 0 && e > 0;
    return {
      bee,
      plant,
      used: u,
      expected: e,
      ratio,
      se: designOne ? Math.sqrt((o * (1 - o)) / (visits * p ** 2)) : null,
      low95: null,
      high95: null,
      standardised: ratio === null ? null : ratioOf(ratio, ratios),
      jacobs: ratioOf(o - p, o + p - 2 * o * p),
      ivlev: ratioOf(o - p, o + p),
    };
  });
}

export function preference(): Figure<Preference[] | null> {
  const choices = new Map<string, Choices>();
  return {
    add(counted) {
      const shares = sharesOf(counted);
      if (shares === null) return;
      const set = JSON.stringify([...shares].sort());
      const known = counted.queens.filter(({ bee }) => bee !== GENUS);
      for (const seen of known) {
        const kept = choices.get(seen.bee) ?? { used: new Map(), expected: new Map(), sets: new Set() };
        choices.set(seen.bee, kept);
        // More than one is all that must be known.
        if (kept.sets.size < 2) kept.sets.add(set);
        addTo(kept.used, seen.plant, seen.visits);
        for (const [plant, share] of shares) addTo(kept.expected, plant, seen.visits * share);
      }
    },
    result: () =>
      choices.size === 0
        ? null
        : sortedNames(choices.keys()).flatMap((bee) => {
            const kept = choices.get(bee);
            return kept ? preferencesOf(bee, kept) : [];
          }),
  };
}
