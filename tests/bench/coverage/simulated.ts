/**
 * How often the season's intervals hold the rate that they are about, in seasons whose rate is known because they were
 * drawn from it: observers and sites each see more or less than usual, log-normally, and counts are Poisson given that.
 */
import type { Coverage } from '../../../src/season/coverage.js';
import { clusterKeys } from '../../../src/season/clusters.js';
import { GENUS } from '../../../src/season/index.js';
import { rates } from '../../../src/season/rates.js';
import { watch } from '../../a-watch.js';
import { chanceOf, type Chance } from '../made-season/chance.js';

/** What a season is drawn from. */
export type Design = Pick<Coverage, 'observers' | 'sites' | 'spread'>;

/** Queens in a watch of 15 minutes, over all observers and sites there could be. */
const TRUE_RATE = 1.5;
/** Watches beyond an observer's first. */
const MORE_WATCHES = 3;
/** How often an observer watches where they usually do. */
const AT_HOME = 0.8;

const SEEN = {
  bee: GENUS,
  plant: 'any',
  entry: 1,
  caste: 'queen',
  determined: false,
  reported: GENUS,
  by: null,
} as const;

/** Log-normal with mean 1, so that the true rate is the same whatever the spread. */
const effects = (count: number, spread: number, chance: Chance): number[] =>
  Array.from({ length: count }, () => chance.times(spread) * Math.exp(-0.5 * spread ** 2));

function seasonsRate({ observers, sites, spread }: Design, chance: Chance) {
  const figure = rates();
  const byObserver = effects(observers, spread, chance);
  const bySite = effects(sites, spread, chance);
  for (const [observer, seesTimes] of byObserver.entries()) {
    const home = observer % sites;
    for (let left = 1 + chance.poisson(MORE_WATCHES); left > 0; left--) {
      const site = chance.yes(AT_HOME) ? home : chance.whole(0, sites - 1);
      const queens = chance.poisson(TRUE_RATE * seesTimes * (bySite[site] ?? 1));
      const place = { latitude: null, longitude: null, uncertaintyMetres: null, words: '', private: false };
      const one = watch({ observer: `observer ${observer}`, place: { ...place, site: `site ${site}` } });
      figure.add({
        watch: one,
        clusters: clusterKeys(one),
        plants: [],
        queens: queens === 0 ? [] : [{ ...SEEN, queens, visits: queens }],
        workers: 0,
      });
    }
  }
  const whole = figure.result()?.[0];
  if (whole === undefined) throw new Error('A season of watches has a rate.');
  return whole;
}

/** The shares, in percent to a tenth, over so many seasons; the same seed gives the same. */
export function coverageOf(
  design: Design,
  { rounds, seed }: { readonly rounds: number; readonly seed: number },
): Coverage {
  const chance = chanceOf(seed);
  const kinds = ['poisson', 'clustered', 'interval'] as const;
  const given = { poisson: 0, clustered: 0, interval: 0 };
  const held = { poisson: 0, clustered: 0, interval: 0 };
  for (let round = 0; round < rounds; round++) {
    const rate = seasonsRate(design, chance);
    for (const kind of kinds) {
      const interval = rate[kind];
      if (interval === null) continue;
      given[kind] += 1;
      if (interval.low95 <= TRUE_RATE && TRUE_RATE <= interval.high95) held[kind] += 1;
    }
  }
  const percent = (part: number, of: number): number | null => (of === 0 ? null : Math.round((1000 * part) / of) / 10);
  return {
    ...design,
    poisson: percent(held.poisson, given.poisson),
    clustered: percent(held.clustered, given.clustered),
    headline: percent(held.interval, given.interval),
    withHeadline: percent(given.interval, rounds) ?? 0,
  };
}
