/** How many kinds of bee more watches would show. */
import type { SeasonFigures } from '../../../season/index.js';
import { BLUE } from '../chart.js';
import { figure, type Section } from '../section.js';

/** Rows of the table; the chart holds every point. */
const ROWS = 10;

export function accumulationSection({ diversity }: SeasonFigures): Section {
  const points = diversity?.byWatches ?? [];
  const every = Math.max(1, Math.ceil(points.length / ROWS));
  const rows = points.filter((_, at) => at % every === every - 1 || at === points.length - 1);
  const chao = diversity?.chao1;
  return {
    title: 'How many kinds of bee',
    shows:
      diversity === null || chao === undefined
        ? 'The line would show how many kinds of bee so many watches find.'
        : `The line shows how many kinds of bee so many watches find: ${diversity.richness} in all of them; by the kinds seen once or twice there may be ${figure(chao.estimate, 1)} (standard error ${figure(chao.se, 1)}).`,
    limits: 'It does not say which kinds were missed, and a wrong name can add a kind that was not there.',
    computed:
      'Mean over all orders of the watches, exact, those without queens among them. The estimate is Chao1 with bias ' +
      'correction. Queens named to the genus alone are left out.',
    chart:
      points.length < 2
        ? null
        : {
            data: { values: [...points] },
            width: 330,
            height: 180,
            mark: { type: 'line', color: BLUE },
            encoding: {
              x: { field: 'watches', type: 'quantitative', title: 'watches' },
              y: { field: 'expected', type: 'quantitative', title: 'kinds of bee' },
            },
          },
    head: ['Watches', 'Kinds of bee expected'],
    rows: rows.map(({ watches, expected }) => [String(watches), figure(expected, 1)]),
  };
}
