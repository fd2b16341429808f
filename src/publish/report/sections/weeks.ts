/** Queens of all bees per fifteen minutes, week by week. */
import { BLUE, labelled } from '../chart.js';
import { FEW } from '../few.js';
import type { SectionOf } from '../section.js';
import { weeksThrough } from '../weeks.js';

/** More of them leave some out. */
const MOST_LABELS = 16;

export const weeksSection: SectionOf = ({ all }, { words, say, figure, whole, interval, weeks: weeksOf }) => {
  const { columns } = words;
  const { weeks: wording } = words.sections;
  const weeks = (all.phenology?.weeks ?? []).filter(({ bee }) => bee === null);
  const through = weeksThrough(weeks.map((one) => one.week));
  const { monday, days } = weeksOf(through);
  const drawn = weeks.flatMap(({ week: name, watches, per15min, poisson }) =>
    per15min === null
      ? []
      : [
          {
            week: name,
            rate: per15min,
            low: poisson?.low95,
            high: poisson?.high95,
            few: watches < FEW.watchesOfWeek,
          },
        ],
  );
  const few = drawn.filter((one) => one.few).length;
  return {
    title: wording.title,
    shows: wording.shows,
    limits: wording.limits,
    computed: wording.computed,
    small: few > 0 ? say(wording.small, { weeks: few }) : null,
    parts: [
      {
        title: wording.part,
        chart:
          drawn.length === 0
            ? null
            : {
                height: 180,
                room: { left: 46, bottom: 62 },
                spec: {
                  data: { values: drawn },
                  encoding: {
                    x: {
                      field: 'week',
                      type: 'ordinal',
                      title: null,
                      // weeks that nobody watched keep their room
                      scale: { domain: through },
                      axis: {
                        labelAngle: -45,
                        labelOverlap: through.length > MOST_LABELS,
                        labelExpr: labelled(through, through.map(monday)),
                      },
                    },
                  },
                  layer: [
                    {
                      transform: [{ filter: 'isValid(datum.low)' }],
                      mark: { type: 'rule', color: BLUE, strokeWidth: 2 },
                      encoding: {
                        y: { field: 'low', type: 'quantitative', title: columns.rate },
                        y2: { field: 'high' },
                      },
                    },
                    {
                      mark: { type: 'point', size: 70, color: BLUE, opacity: 1, strokeWidth: 2 },
                      encoding: {
                        y: { field: 'rate', type: 'quantitative' },
                        fill: { condition: { test: 'datum.few', value: 'white' }, value: BLUE },
                      },
                    },
                  ],
                },
              },
        head: [columns.week, columns.watches, columns.minutes, columns.queens, columns.rate, columns.alike],
        rows: weeks.map((one) => [
          days(one.week),
          whole(one.watches),
          whole(one.minutes),
          whole(one.queens),
          figure(one.per15min),
          interval(one.poisson),
        ]),
      },
    ],
  };
};
