/** What changes when watches outside the protocol are left out. */
import type { SeasonFigures } from '../../../season/index.js';
import { figure, interval, type Section } from '../section.js';

export function protocolSection(all: SeasonFigures, within: SeasonFigures): Section {
  const row = (what: string, { effort, rates }: SeasonFigures): string[] => {
    const total = (rates ?? []).find(({ bee, plant }) => bee === null && plant === null);
    return [
      what,
      String(effort.watches),
      String(effort.zeroWatches),
      String(total?.queens ?? 0),
      figure(total?.per15min ?? null),
      interval(total?.interval ?? null, 'too few observers for an interval'),
    ];
  };
  return {
    title: 'With and without watches outside the protocol',
    shows:
      'If the two lines differ much, the other figures lean on watches in weather or of a length that do not compare.',
    limits: 'It does not show which of the two is nearer the truth: cold and windy days are part of a spring too.',
    computed:
      'Outside are watches of another length, temperature or wind than the survey asks for, or that do not say.',
    chart: null,
    head: ['Watches taken', 'Watches', 'Without a queen', 'Queens', 'In 15 minutes', '95 % interval'],
    rows: [row('all', all), row('within the protocol', within)],
  };
}
