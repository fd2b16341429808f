/** Which plants the queens chose more, or less, than their open flowers would make likely. */
import type { Preference } from '../../../season/index.js';
import { rowsOfDots } from '../dots.js';
import { FEW } from '../few.js';
import type { Part, SectionOf } from '../section.js';

/** Rows of a chart. */
const MOST_DRAWN = 20;

export const preferenceSection: SectionOf = ({ all }, { words, say, figure, whole, interval, bee, plant }) => {
  const { columns } = words;
  const { preference: wording } = words.sections;
  const everything = all.preference ?? [];
  const told = everything.filter(({ used, expected }) => used > 0 || expected >= 1);
  const byBee = new Map<string, Preference[]>();
  for (const one of told) byBee.set(one.bee, [...(byBee.get(one.bee) ?? []), one]);
  // its ratios would fill a chart with bars that say nothing
  const isFew = (rows: readonly Preference[]): boolean => rows.reduce((sum, { used }) => sum + used, 0) < FEW.choices;
  const others = [...byBee.values()].filter(isFew);
  const head = [columns.plant, wording.columns.seen, wording.columns.expected, wording.columns.ratio, columns.interval];
  const numbers = ({ plant: name, used, expected, ratio, low95, high95 }: Preference): string[] => [
    plant(name),
    whole(used),
    figure(expected, 1),
    figure(ratio),
    interval({ low95, high95 }),
  ];
  const part = ([name, rows]: [string, Preference[]]): Part => {
    const drawn = rows
      .filter(({ ratio, low95 }) => ratio !== null && low95 !== null)
      .sort((a, b) => b.expected - a.expected)
      .slice(0, MOST_DRAWN)
      .map((one) => ({ name: plant(one.plant), value: one.ratio ?? 0, low: one.low95, high: one.high95 }));
    return {
      title: bee(name),
      chart: rowsOfDots(drawn, wording.measure, { lineAt: 1 }),
      head,
      rows: rows.map(numbers),
    };
  };
  return {
    title: wording.title,
    shows: wording.shows,
    limits: wording.limits,
    computed: say(wording.computed, {
      least: FEW.choices,
      most: MOST_DRAWN,
      hidden: everything.length - told.length,
    }),
    small: others.length > 0 ? say(wording.small, { bees: others.length, least: FEW.choices }) : null,
    parts: [
      ...[...byBee].filter(([, rows]) => !isFew(rows)).map(part),
      ...(others.length === 0
        ? []
        : [
            {
              title: wording.others,
              chart: null,
              head: [columns.bee, ...head],
              rows: others.flat().map((one) => [bee(one.bee), ...numbers(one)]),
            },
          ]),
    ],
  };
};
