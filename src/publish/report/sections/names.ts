/** How far the observers' names can be trusted, and what the counts would be without wrong ones. */
import type { SeasonFigures } from '../../../season/index.js';
import { figure, interval, type Section } from '../section.js';

export function namesSection({ names }: SeasonFigures): Section {
  const { reported, determined, agree, corrected } = names;
  return {
    title: 'How sure the names are',
    shows: `Of ${reported} queens reported, ${determined} were named by an expert too, who agreed on ${agree}; the table shows what the counts would be if the others went wrong as often.`,
    limits:
      'It takes the queens that an expert named as a fair sample of those of that name; where photographs were asked for ' +
      'rare bees only, they are not.',
    computed:
      'The chance that a reported name is truly another, from the queens with both names, with a weak lean towards ' +
      'agreement; carried into the queens that nobody checked. Intervals by drawing observers again.',
    chart: null,
    head: ['Bee', 'Counted', 'Corrected', '95 % interval'],
    rows: (corrected ?? []).map((one) => [
      one.bee,
      String(one.counted),
      figure(one.corrected, 1),
      interval(one.low95 === null || one.high95 === null ? null : { low95: one.low95, high95: one.high95 }),
    ]),
  };
}
