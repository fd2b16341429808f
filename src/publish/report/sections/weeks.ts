/** Queens of all bees per fifteen minutes, week by week. */
import type { SeasonFigures } from '../../../season/index.js';
import { BLUE } from '../chart.js';
import { figure, interval, type Section } from '../section.js';

export function weeksSection({ phenology }: SeasonFigures): Section {
  const weeks = (phenology?.weeks ?? []).filter(({ bee }) => bee === null);
  const drawn = weeks.flatMap(({ week, per15min, poisson }) =>
    per15min === null ? [] : [{ week, rate: per15min, low: poisson?.low95, high: poisson?.high95 }],
  );
  return {
    title: 'Week by week',
    shows: 'Each dot is the number of queens of all bees seen in fifteen minutes of watching in that week.',
    limits: 'It does not tell the season from the weather, or from who happened to watch where in that week.',
    computed:
      'Queens divided by minutes, times fifteen, in weeks from Monday to Sunday (ISO 8601). The bar is a 95 % interval ' +
      '(Garwood) if every watch were alike, so it is rather too short. A week without a watch has no rate.',
    chart:
      drawn.length === 0
        ? null
        : {
            data: { values: drawn },
            width: 330,
            height: 180,
            encoding: { x: { field: 'week', type: 'ordinal', title: 'week' } },
            layer: [
              {
                transform: [{ filter: 'isValid(datum.low)' }],
                mark: { type: 'rule', color: BLUE },
                encoding: { y: { field: 'low', type: 'quantitative' }, y2: { field: 'high' } },
              },
              {
                mark: { type: 'point', filled: true, size: 60, color: BLUE },
                encoding: { y: { field: 'rate', type: 'quantitative', title: 'queens in 15 minutes' } },
              },
            ],
          },
    head: ['Week', 'Watches', 'Minutes', 'Queens', 'In 15 minutes', 'If every watch were alike'],
    rows: weeks.map((week) => [
      week.week,
      String(week.watches),
      String(week.minutes),
      String(week.queens),
      figure(week.per15min),
      interval(week.poisson),
    ]),
  };
}
