/** How far the observers' names can be trusted, and what the counts would be without wrong ones. */
import { FEW } from '../few.js';
import type { SectionOf } from '../section.js';

export const namesSection: SectionOf = ({ all: { names } }, { words, say, figure, whole, interval, bee }) => {
  const { columns } = words;
  const { names: wording } = words.sections;
  const { reported, determined, agree, corrected } = names;
  return {
    title: wording.title,
    shows: say(wording.shows, { reported, determined, agree }),
    limits: wording.limits,
    computed: wording.computed,
    small: determined < FEW.determined ? say(wording.small, { determined }) : null,
    parts: [
      {
        title: wording.part,
        chart: null,
        head: [columns.bee, wording.columns.counted, wording.columns.corrected, columns.interval],
        rows: (corrected ?? []).map((one) => [
          bee(one.bee),
          whole(one.counted),
          figure(one.corrected, 1),
          interval(one),
        ]),
      },
    ],
  };
};
