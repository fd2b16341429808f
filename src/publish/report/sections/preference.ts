/** Which plants the queens chose more, or less, than their open flowers would make likely. */
import type { SeasonFigures } from '../../../season/index.js';
import { rowsOfDots } from '../chart.js';
import { figure, interval, type Section } from '../section.js';

/** A bee with fewer visits is left to the table: its ratios would fill the chart with bars that say nothing. */
const LEAST_VISITS_DRAWN = 20;

export function preferenceSection({ preference }: SeasonFigures): Section {
  const all = preference ?? [];
  const visitsOf = (bee: string): number =>
    all.filter((one) => one.bee === bee).reduce((sum, { used }) => sum + used, 0);
  const drawn = all.flatMap(({ bee, plant, ratio, low95, high95 }) =>
    ratio === null || low95 === null || visitsOf(bee) < LEAST_VISITS_DRAWN
      ? []
      : [{ name: `${bee.replace('Bombus ', 'B. ')} on ${plant}`, value: ratio, low: low95, high: high95 }],
  );
  return {
    title: 'Which plants the queens chose',
    shows:
      'A ratio above 1 means that more visits were seen on the plant than its share of the open flowers would bring.',
    limits:
      'It does not say why, and flowers that were not in the patch are no part of the choice; wide intervals mean that ' +
      'the choice could as well be none.',
    computed:
      'Selection ratio: visits seen, divided by visits expected from the shares of open flowers in each watch with two or ' +
      'more plants (after Manly and others 2002). Intervals by drawing observers again, for all plants of a bee at once. ' +
      `Drawn are those with an interval, of bees with ${LEAST_VISITS_DRAWN} or more visits.`,
    chart: rowsOfDots(drawn, 'visits seen / visits expected', 1),
    head: ['Bee', 'Plant', 'Visits seen', 'Expected', 'Ratio', '95 % interval'],
    rows: all.map(({ bee, plant, used, expected, ratio, low95, high95 }) => [
      bee,
      plant,
      String(used),
      figure(expected, 1),
      figure(ratio),
      interval(low95 === null || high95 === null ? null : { low95, high95 }),
    ]),
  };
}
