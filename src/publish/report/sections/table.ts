/** Bees by plants, as numbers. */
import { FEW } from '../few.js';
import type { SectionOf } from '../section.js';

export const tableSection: SectionOf = ({ all: { table } }, { words, say, whole, bee, plant }) => {
  const { table: wording } = words.sections;
  const visits = table.counts.flat().reduce((sum, count) => sum + count, 0);
  const cell = (count: number): string => (count === 0 ? words.missing.none : whole(count));
  return {
    title: wording.title,
    shows: wording.shows,
    limits: wording.limits,
    computed: wording.computed,
    small: visits < FEW.visits ? say(wording.small, { visits }) : null,
    parts: [
      {
        title: wording.part,
        chart: null,
        head: [words.columns.plant, ...table.bees.map(bee), words.names.allBees],
        rows: table.plants.map((name, at) => {
          const counts = table.bees.map((_, row) => table.counts[row]?.[at] ?? 0);
          return [plant(name), ...[...counts, counts.reduce((sum, count) => sum + count, 0)].map(cell)];
        }),
        upright: true,
      },
    ],
  };
};
