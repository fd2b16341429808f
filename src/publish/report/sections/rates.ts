/** Queens per fifteen minutes, of each bee over all plants. */
import type { SeasonFigures } from '../../../season/index.js';
import { BLUE } from '../chart.js';
import { figure, interval, type Section } from '../section.js';

export function ratesSection({ rates }: SeasonFigures): Section {
  const bees = (rates ?? []).filter(({ plant }) => plant === null);
  const drawn = bees.flatMap(({ bee, per15min, interval: ends }) =>
    per15min === null ? [] : [{ bee: bee ?? 'all bees', rate: per15min, low: ends?.low95, high: ends?.high95 }],
  );
  return {
    title: 'How many queens in fifteen minutes',
    shows:
      'Each dot is the number of queens seen in fifteen minutes of watching; its bar is how far chance may have moved it.',
    limits: 'It does not show how many queens live there: a bee that is harder to see is counted less often.',
    computed:
      'Queens divided by minutes, times fifteen. The bar is a 95 % interval by leaving out one observer (or site) at a ' +
      'time; there is none below ten of them. The last column would be right only if every watch were alike.',
    chart:
      drawn.length === 0
        ? null
        : {
            data: { values: drawn },
            width: 330,
            encoding: { y: { field: 'bee', type: 'nominal', title: null, sort: null, axis: { labelLimit: 260 } } },
            layer: [
              {
                transform: [{ filter: 'isValid(datum.low)' }],
                mark: { type: 'rule', color: BLUE },
                encoding: { x: { field: 'low', type: 'quantitative' }, x2: { field: 'high' } },
              },
              {
                mark: { type: 'point', filled: true, size: 60, color: BLUE },
                encoding: { x: { field: 'rate', type: 'quantitative', title: 'queens in 15 minutes' } },
              },
            ],
          },
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
