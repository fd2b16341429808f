/** How many kinds of bee more watches would show. */
import { BLUE } from '../chart.js';
import { FEW } from '../few.js';
import type { SectionOf } from '../section.js';

/** Rows of the table; the chart holds every point. */
const ROWS = 10;

export const accumulationSection: SectionOf = ({ all: { diversity } }, { words, say, figure, whole }) => {
  const { columns } = words;
  const { accumulation: wording } = words.sections;
  const points = diversity?.byWatches ?? [];
  const every = Math.max(1, Math.ceil(points.length / ROWS));
  const rows = points.filter((_, at) => at % every === every - 1 || at === points.length - 1);
  const chao = diversity?.chao1;
  return {
    title: wording.title,
    shows: say(
      wording.shows,
      diversity === null || chao === undefined
        ? { richness: 'none', estimate: '', se: '' }
        : { richness: whole(diversity.richness), estimate: figure(chao.estimate, 1), se: figure(chao.se, 1) },
    ),
    limits: wording.limits,
    computed: wording.computed,
    small: points.length > 0 && points.length < FEW.watches ? say(wording.small, { watches: points.length }) : null,
    parts: [
      {
        title: wording.part,
        chart:
          points.length < 2
            ? null
            : {
                height: 180,
                room: { left: 46, bottom: 44 },
                spec: {
                  data: { values: [...points] },
                  mark: { type: 'line', color: BLUE },
                  encoding: {
                    x: { field: 'watches', type: 'quantitative', title: columns.watches, axis: { tickCount: 5 } },
                    y: { field: 'expected', type: 'quantitative', title: wording.columns.expected },
                  },
                },
              },
        head: [columns.watches, wording.columns.expected],
        rows: rows.map(({ watches, expected }) => [whole(watches), figure(expected, 1)]),
      },
    ],
  };
};
