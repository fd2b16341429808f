/** Queens per fifteen minutes, of each bee over all plants. */
import { COVERAGE, type SeasonFigures } from '../../../season/index.js';
import { rowsOfDots } from '../chart.js';
import { figure, interval, type Section } from '../section.js';

/** "88.5 to 95.6": the least and the most that a kind of interval reached. */
function reached(kind: 'headline' | 'poisson'): string {
  const shares = COVERAGE.rows.flatMap((row) => row[kind] ?? []);
  return `${Math.min(...shares).toFixed(1)} to ${Math.max(...shares).toFixed(1)} %`;
}

export function ratesSection({ rates }: SeasonFigures): Section {
  const bees = (rates ?? []).filter(({ plant }) => plant === null);
  const drawn = bees.flatMap(({ bee, per15min, interval: ends }) =>
    per15min === null
      ? []
      : [{ name: bee ?? 'all bees', value: per15min, low: ends?.low95 ?? null, high: ends?.high95 ?? null }],
  );
  return {
    title: 'How many queens in fifteen minutes',
    shows:
      'Each dot is the number of queens seen in fifteen minutes of watching; its bar is how far chance may have moved it.',
    limits: 'It does not show how many queens live there: a bee that is harder to see is counted less often.',
    computed:
      'Queens divided by minutes, times fifteen. The bar is a 95 % interval by leaving out one observer (or site) at a ' +
      'time; there is none below ten of them. The last column would be right only if every watch were alike. In drawn ' +
      'seasons whose true rate was known, with no to great differences between observers, ' +
      `the bar held it in ${reached('headline')} of them, the last column in ${reached('poisson')}.`,
    chart: rowsOfDots(drawn, 'queens in 15 minutes'),
    head: ['Bee', 'Queens', 'Minutes', 'In 15 minutes', '95 % interval', 'If every watch were alike'],
    rows: bees.map((rate) => [
      rate.bee ?? 'all bees',
      String(rate.queens),
      String(rate.minutes),
      figure(rate.per15min),
      interval(rate.interval, 'too few observers for an interval'),
      interval(rate.poisson),
    ]),
  };
}
