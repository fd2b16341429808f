/** Bees by plants, as numbers. */
import type { SeasonFigures } from '../../../season/index.js';
import type { Section } from '../section.js';

export function tableSection({ table }: SeasonFigures): Section {
  return {
    title: 'Which bees on which plants',
    shows: 'Each number is how many visits of queens of that bee were seen on that plant.',
    limits:
      'It does not show what queens prefer: a plant that was watched more, or has more flowers, gets more visits.',
    computed: 'Visits counted in all confirmed watches, a queen seen again counted again; a dot is none.',
    chart: null,
    // seventeen bees must find room on paper
    head: ['Plant', ...table.bees.map((bee) => bee.replace('Bombus ', 'B. '))],
    rows: table.plants.map((plant, at) => [
      plant,
      ...table.bees.map((_, bee) => table.counts[bee]?.[at] || '·').map(String),
    ]),
  };
}
