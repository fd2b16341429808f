/** When people watched: by week and by hour of the day. */
import type { Phenology } from '../../../season/index.js';
import { BLUE, labelled, YELLOW, type Chart } from '../chart.js';
import { FEW } from '../few.js';
import type { SectionOf } from '../section.js';
import { weeksThrough } from '../weeks.js';

const HEIGHT = 150;
/** More of them leave some out. */
const MOST_LABELS = 16;

const byWeek = (phenology: Phenology | null): Map<string, { watches: number; minutes: number }> =>
  new Map((phenology?.weeks ?? []).filter(({ bee }) => bee === null).map((one) => [one.week, one]));

/** `within` of a bar's watches are drawn apart from the rest, where `kinds` says what they are called. */
function barsOf(
  bars: readonly { readonly label: string; readonly watches: number; readonly within?: number }[],
  title: string,
  kinds: readonly [within: string, outside: string] | null = null,
): Chart | null {
  if (bars.length === 0) return null;
  const values = bars.flatMap(({ watches, within = watches }, at) => [
    { at, watches: within, kind: kinds?.[0] ?? '', part: 0 },
    { at, watches: watches - within, kind: kinds?.[1] ?? '', part: 1 },
  ]);
  const labels = bars.map(({ label }) => label);
  return {
    height: HEIGHT,
    room: { left: 46, bottom: 62, top: kinds === null ? 10 : 52 },
    spec: {
      data: { values },
      mark: { type: 'bar', stroke: BLUE, strokeWidth: 1, color: BLUE },
      encoding: {
        x: {
          field: 'at',
          type: 'ordinal',
          title: null,
          axis: {
            labelAngle: -45,
            labelOverlap: bars.length > MOST_LABELS,
            labelExpr: labelled([...bars.keys()], labels),
          },
        },
        y: { field: 'watches', type: 'quantitative', title, axis: { tickCount: 4, tickMinStep: 1 } },
        ...(kinds === null
          ? {}
          : {
              color: { field: 'kind', type: 'nominal', scale: { domain: [...kinds], range: [BLUE, YELLOW] } },
              order: { field: 'part', type: 'quantitative' },
            }),
      },
    },
  };
}

export const whenSection: SectionOf = ({ all, within, watching }, { words, say, whole, weeks: weeksOf, hour }) => {
  const { when } = words.sections;
  const { columns } = words;
  const [every, inside] = [byWeek(all.phenology), byWeek(within.phenology)];
  const names = weeksThrough([...every.keys()]);
  const { monday, days } = weeksOf(names);
  const weeks = names.map((week) => ({
    label: monday(week),
    days: days(week),
    watches: every.get(week)?.watches ?? 0,
    minutes: every.get(week)?.minutes ?? 0,
    within: inside.get(week)?.watches ?? 0,
  }));
  const few = weeks.filter(({ watches }) => watches > 0 && watches < FEW.watchesOfWeek).length;
  const hours = watching.hours.map((one) => ({ ...one, label: hour(one.hour) }));
  return {
    title: when.title,
    shows: when.shows,
    limits: when.limits,
    computed: when.computed,
    small: few > 0 ? say(when.small, { weeks: few }) : null,
    parts: [
      {
        title: when.weeks,
        chart: barsOf(weeks, columns.watches, [when.within, when.outside]),
        head: [columns.week, columns.watches, when.columns.within, columns.minutes],
        rows: weeks.map((one) => [one.days, whole(one.watches), whole(one.within), whole(one.minutes)]),
      },
      {
        title: when.hours,
        chart: barsOf(hours, columns.watches),
        head: [when.columns.hour, columns.watches, columns.minutes],
        rows: hours.map((one) => [one.label, whole(one.watches), whole(one.minutes)]),
      },
    ],
  };
};
