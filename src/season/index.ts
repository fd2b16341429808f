/** The season's figures. A figure is a file, a key here and its test. */
import { withinProtocol } from '../../shared/protocol.js';
import type { Survey } from '../../shared/survey.js';
import type { WatchCounts } from '../../shared/watch-counts.js';
import { countedWatch } from './counted.js';
import { diversity, type Diversity } from './diversity.js';
import { dispersion, type Dispersion } from './dispersion.js';
import { effort, type Effort } from './effort.js';
import { names, type Names } from './names.js';
import { network, type Network } from './network.js';
import { participation, type Participant } from './participation.js';
import { perFlowers, type PerFlowers } from './per-flowers.js';
import { phenology, type Phenology } from './phenology.js';
import { planning, type Planning } from './planning.js';
import { preference, type Preference } from './preference.js';
import { rates, type Rate } from './rates.js';
import { table, type Table } from './table.js';

export { COVERAGE } from './coverage.js';
export { GENUS, standingOf, type Standing } from './standing.js';
export type { Diversity } from './diversity.js';
export type { Dispersion } from './dispersion.js';
export type { Effort } from './effort.js';
export type { Names } from './names.js';
export type { Network } from './network.js';
export type { Participant } from './participation.js';
export type { PerFlowers } from './per-flowers.js';
export type { Phenology } from './phenology.js';
export type { Planning } from './planning.js';
export type { Preference } from './preference.js';
export type { Rate } from './rates.js';
export type { Table } from './table.js';

/** Null stands for a figure that the data cannot give. */
export interface SeasonFigures {
  readonly effort: Effort;
  readonly table: Table;
  readonly rates: readonly Rate[] | null;
  readonly diversity: Diversity | null;
  readonly preference: readonly Preference[] | null;
  readonly network: Network | null;
  readonly phenology: Phenology | null;
  readonly names: Names;
  readonly dispersion: Dispersion | null;
  readonly perFlowers: readonly PerFlowers[];
  readonly participation: readonly Participant[];
  /** Only where a change was asked about. */
  readonly planning?: Planning | null;
}

/**
 * The figures of all confirmed watches among those given; `protocolOnly` takes only watches inside the survey's
 * protocol. The watches are gone through once and not kept, so they may come from a database row by row. `seed` is that of what
 * is resampled. `planFor`, a change in percent, asks how many watches would show it next year: that takes seconds.
 */
export function seasonFigures(
  watches: Iterable<WatchCounts>,
  {
    survey,
    protocolOnly,
    seed,
    planFor,
  }: {
    readonly survey: Pick<Survey, 'settings'>;
    readonly protocolOnly: boolean;
    readonly seed: number;
    readonly planFor?: number | null;
  },
): SeasonFigures {
  const { settings } = survey;
  const figures = {
    effort: effort(settings),
    table: table(),
    rates: rates(),
    diversity: diversity(),
    preference: preference(seed),
    network: network(),
    phenology: phenology(),
    participation: participation(settings),
    names: names(seed),
    dispersion: dispersion(),
    perFlowers: perFlowers(),
  };
  const plan = planFor == null ? null : planning(planFor, seed);
  for (const watch of watches) {
    if (watch.status !== 'confirmed') continue;
    if (protocolOnly && !withinProtocol(watch, settings)) continue;
    const counted = countedWatch(watch);
    for (const figure of Object.values(figures)) figure.add(counted);
    plan?.add(counted);
  }
  return {
    effort: figures.effort.result(),
    table: figures.table.result(),
    rates: figures.rates.result(),
    diversity: figures.diversity.result(),
    preference: figures.preference.result(),
    network: figures.network.result(),
    phenology: figures.phenology.result(),
    names: figures.names.result(),
    dispersion: figures.dispersion.result(),
    perFlowers: figures.perFlowers.result(),
    participation: figures.participation.result(),
    ...(plan === null ? {} : { planning: plan.result() }),
  };
}
