/** Visits to a hundred open flowers, plant by plant; each counting unit by itself. */
import type { PerFlowers } from '../../../season/index.js';
import { COUNTING_UNITS } from '../../../../shared/vocabularies.js';
import { rowsOfDots } from '../dots.js';
import { FEW } from '../few.js';
import type { SectionOf } from '../section.js';

/** Minutes × flowers: a hundred flowers for a quarter of an hour. */
const UNIT_OF_EXPOSURE = 1500;
/** Of a hundred flowers for two hours. With less a bar is longer than the chart. */
const DRAWN_FROM = 8 * UNIT_OF_EXPOSURE;
const MOST_DRAWN = 20;

export const perFlowersSection: SectionOf = ({ all }, { words, say, figure, whole, interval, bee, plant }) => {
  const { perFlowers: wording } = words.sections;
  const { columns } = words;
  const allBees = all.perFlowers.filter((one) => one.bee === null);
  const drawn = [...allBees]
    .filter(({ flowerMinutes }) => flowerMinutes >= DRAWN_FROM)
    .sort((a, b) => b.flowerMinutes - a.flowerMinutes);
  const few = allBees.filter(({ visits }) => visits < FEW.seen).length;
  const numbers = (one: PerFlowers): string[] => [
    whole(one.visits),
    figure(one.flowerMinutes / UNIT_OF_EXPOSURE, 1),
    figure(one.per15minPer100),
    interval(one.poisson),
  ];
  const head = [columns.visits, wording.columns.exposure, wording.columns.rate, wording.columns.alike];
  const byBee = all.perFlowers.filter((one) => one.bee !== null && one.visits >= FEW.seen);
  return {
    title: wording.title,
    shows: wording.shows,
    limits: wording.limits,
    computed: say(wording.computed, { most: MOST_DRAWN }),
    small: few > 0 ? say(wording.small, { plants: few }) : null,
    parts: [
      ...COUNTING_UNITS.flatMap((unit) => {
        const rows = allBees.filter((one) => one.unit === unit);
        if (rows.length === 0) return [];
        const dots = drawn
          .filter((one) => one.unit === unit)
          .slice(0, MOST_DRAWN)
          .flatMap(({ plant: name, per15minPer100, poisson }) =>
            per15minPer100 === null
              ? []
              : [
                  {
                    name: plant(name),
                    value: per15minPer100,
                    low: poisson?.low95 ?? null,
                    high: poisson?.high95 ?? null,
                  },
                ],
          );
        return [
          {
            title: say(wording.part, { unit: words.names.units[unit] }),
            chart: rowsOfDots(dots, wording.measure),
            head: [columns.plant, ...head],
            rows: rows.map((one) => [plant(one.plant), ...numbers(one)]),
          },
        ];
      }),
      ...(byBee.length === 0
        ? []
        : [
            {
              title: wording.bees,
              chart: null,
              head: [columns.plant, columns.unit, columns.bee, ...head],
              rows: byBee.map((one) => [plant(one.plant), words.names.units[one.unit], bee(one.bee), ...numbers(one)]),
            },
          ]),
    ],
  };
};
