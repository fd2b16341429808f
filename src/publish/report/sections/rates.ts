/** Queens per fifteen minutes, of each bee over all plants. */
import { COVERAGE } from '../../../season/index.js';
import { rowsOfDots } from '../dots.js';
import { FEW } from '../few.js';
import type { SectionOf } from '../section.js';

/** The least and the most that a kind of interval reached, percent. */
function reached(kind: 'headline' | 'poisson'): [least: number, most: number] {
  const shares = COVERAGE.rows.flatMap((row) => row[kind] ?? []);
  return [Math.min(...shares), Math.max(...shares)];
}

export const ratesSection: SectionOf = ({ all }, { words, say, figure, whole, interval, bee }) => {
  const { columns, missing } = words;
  const { rates: wording } = words.sections;
  const rates = (all.rates ?? []).filter(({ plant }) => plant === null);
  const few = rates.filter((rate) => rate.bee !== null && rate.queens < FEW.seen).length;
  const total = rates.find((rate) => rate.bee === null);
  // beside all bees together those of one kind would be dots on one line
  const drawn = rates.flatMap(({ bee: name, per15min, interval: ends }) =>
    per15min === null || name === null
      ? []
      : [{ name: bee(name), value: per15min, low: ends?.low95 ?? null, high: ends?.high95 ?? null }],
  );
  const spoken = (kind: 'headline' | 'poisson'): string => {
    const [least, most] = reached(kind);
    return say(wording.reached, { least: figure(least, 1), most: figure(most, 1) });
  };
  return {
    title: wording.title,
    shows: say(wording.shows, {
      total: figure(total?.per15min ?? null),
      interval: interval(total?.interval ?? null, missing.interval),
    }),
    limits: wording.limits,
    computed: say(wording.computed, { headline: spoken('headline'), alike: spoken('poisson') }),
    small: few > 0 ? say(wording.small, { bees: few }) : null,
    parts: [
      {
        title: wording.part,
        chart: rowsOfDots(drawn, columns.rate),
        head: [columns.bee, columns.queens, columns.rate, columns.interval, columns.alike],
        rows: rates.map((rate) => [
          bee(rate.bee),
          whole(rate.queens),
          figure(rate.per15min),
          interval(rate.interval, missing.interval),
          interval(rate.poisson),
        ]),
      },
    ],
  };
};
