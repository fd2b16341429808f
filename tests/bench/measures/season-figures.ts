/** What is measured of the season's figures: one SQLite query, the bees-by-plants table with its rates, and all. */
import { countedWatch } from '../../../src/season/counted.js';
import { seasonFigures } from '../../../src/season/index.js';
import { rates } from '../../../src/season/rates.js';
import { table } from '../../../src/season/table.js';
import { confirmedCountsOf, type Connection } from '../../../src/store/index.js';
import { survey } from '../../demo-survey.js';

export const SUBJECTS = ['query', 'table and rates', 'all figures'] as const;
export type Subject = (typeof SUBJECTS)[number];

export interface Measured {
  /** Processor time, the opening of the database included. */
  readonly seconds: number;
  /** The most that was resident. */
  readonly bytes: number;
  /** Queens and visits, so that a figure that was not computed is noticed. */
  readonly sum: number;
}

/** Visits, queens and minutes by bee and plant, as reported: determinations are beyond one query. */
const QUERY = `
  select coalesce(queens.bee, 'Bombus') as bee, coalesce(plants.name, plants.asTyped) as plant,
    sum(queens.count) as visits, sum(queens.count - queens.seenBefore) as queens, sum(watches.minutes) as minutes
  from watches
    join queens on queens.survey = watches.survey and queens.watch = watches.id
    join plants on plants.survey = queens.survey and plants.watch = queens.watch and plants.plant = queens.plant
  where watches.survey = 'kestrel-fen' and watches.status = 'confirmed'
  group by 1, 2`;

const total = (numbers: readonly number[]): number => numbers.reduce((sum, one) => sum + one, 0);

/** Does it, and gives a sum of what came out. */
export const subjects: Readonly<Record<Subject, (connection: Connection) => number>> = {
  query: (connection) => {
    const rows = connection.prepared(QUERY).all() as { visits: number }[];
    return total(rows.map(({ visits }) => visits));
  },
  'table and rates': (connection) => {
    const [counts, rate] = [table(), rates()];
    for (const watch of confirmedCountsOf(connection, survey.settings.key)) {
      const counted = countedWatch(watch);
      counts.add(counted);
      rate.add(counted);
    }
    const [all] = rate.result() ?? [];
    return (all?.queens ?? 0) + total(counts.result().counts.flat());
  },
  'all figures': (connection) => {
    const watches = confirmedCountsOf(connection, survey.settings.key);
    const figures = seasonFigures(watches, { survey, protocolOnly: false, seed: 1 });
    return total(figures.table.queens) + (figures.rates?.length ?? 0);
  },
};
