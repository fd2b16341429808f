/** What is doubtful, and how far the figures lean on it: with and without. Numbers alone, nothing of a single watch. */
import type { SeasonFigures } from '../../../season/index.js';
import type { Doubts } from '../doubts.js';
import { rowsOfDots } from '../dots.js';
import { FEW } from '../few.js';
import type { Part, Season, SectionOf } from '../section.js';
import type { Voice } from '../voice.js';

const MINUTES = 15;

function checksPart({ noticed, outside }: Doubts, { words, whole }: Voice): Part {
  const { checks } = words.sections.doubts;
  const { none } = words.missing;
  const cell = (count: number): string => (count === 0 ? none : whole(count));
  const nameOf = (check: string | null): string => (check === null ? checks.other : (checks.names[check] ?? check));
  return {
    title: checks.part,
    chart: null,
    head: [
      checks.columns.check,
      words.columns.watches,
      checks.columns.asked,
      checks.columns.answered,
      checks.columns.open,
    ],
    rows: [
      ...noticed.map(({ check, watches, asked, answered, open }) => [
        nameOf(check),
        ...[watches, asked, answered, open].map(cell),
      ]),
      ...[
        [checks.wind, outside.wind] as const,
        [checks.untold, outside.untold] as const,
        [checks.outside, outside.any] as const,
      ].map(([what, watches]) => [what, cell(watches), none, none, none]),
    ],
  };
}

function countedPart({ queens, workers, unconfirmed, setAside, practice }: Doubts, { words, say, whole }: Voice): Part {
  const { counted } = words.sections.doubts;
  const rows: [what: string, number: number][] = [
    [counted.byObserver, queens.byObserver],
    [counted.doubted, queens.doubted],
    [counted.genus, queens.genus],
    [counted.workers, workers],
    [say(counted.unconfirmed, { queens: unconfirmed.queens }), unconfirmed.watches],
    [counted.setAside, setAside],
    [counted.practice, practice],
  ];
  return {
    title: counted.part,
    chart: null,
    head: [counted.columns.what, counted.columns.number],
    rows: rows.map(([what, number]) => [what, whole(number)]),
  };
}

const ratesOf = ({ rates }: SeasonFigures): NonNullable<SeasonFigures['rates']> =>
  (rates ?? []).filter(({ plant }) => plant === null);

function weightPart({ all, within, doubts: { unconfirmed } }: Season, { words, figure, whole }: Voice): Part {
  const { weight } = words.sections.doubts;
  const { columns } = weight;
  const { none } = words.missing;
  const total = (season: SeasonFigures) => ratesOf(season).find(({ bee }) => bee === null);
  const { queens = 0, minutes = 0 } = total(all) ?? {};
  const together = minutes + unconfirmed.minutes;
  const rate = together === 0 ? null : ((queens + unconfirmed.queens) / together) * MINUTES;
  const kinds = ({ diversity }: SeasonFigures): string => figure(diversity?.richness ?? null, 0);
  const shannon = ({ diversity }: SeasonFigures): string => figure(diversity?.shannon ?? null);
  const determined = all.diversity?.determinedOnly ?? null;
  return {
    title: weight.part,
    chart: null,
    head: [columns.figure, columns.all, columns.within, columns.unconfirmed, columns.determined],
    rows: [
      [
        weight.watches,
        whole(all.effort.watches),
        whole(within.effort.watches),
        whole(all.effort.watches + unconfirmed.watches),
        none,
      ],
      [weight.total, figure(total(all)?.per15min ?? null), figure(total(within)?.per15min ?? null), figure(rate), none],
      [weight.kinds, kinds(all), kinds(within), none, determined === null ? none : figure(determined.richness, 0)],
      [weight.shannon, shannon(all), shannon(within), none, determined === null ? none : figure(determined.shannon)],
    ],
  };
}

function byBeePart({ all, within }: Season, { words, figure, bee }: Voice): Part {
  const { weight } = words.sections.doubts;
  const inside = new Map(ratesOf(within).map((rate) => [rate.bee, rate.per15min]));
  // a bee that is in no watch of the protocol was seen there no times
  const insideRate = (name: string | null): number | null =>
    within.effort.watches === 0 ? null : (inside.get(name) ?? 0);
  const bees = ratesOf(all).filter((rate) => rate.bee !== null);
  const dots = bees.flatMap(({ bee: name, per15min, interval }) =>
    per15min === null
      ? []
      : [{ name: bee(name), value: per15min, low: interval?.low95 ?? null, high: interval?.high95 ?? null }],
  );
  const rings = new Map(bees.map(({ bee: name }) => [bee(name), insideRate(name)]));
  return {
    title: weight.byBee,
    chart: rowsOfDots(dots, words.columns.rate, { second: { dots: weight.all, rings: weight.within, values: rings } }),
    head: [words.columns.bee, weight.columns.all, weight.columns.within],
    rows: bees.map(({ bee: name, per15min }) => [bee(name), figure(per15min), figure(insideRate(name))]),
  };
}

/** Bees whose rate leaves its interval once the watches outside the protocol are left out. */
function matters({ all, within }: Season, { words, say, list, bee }: Voice): string {
  const inside = new Map(ratesOf(within).map((rate) => [rate.bee, rate.per15min]));
  const moved = ratesOf(all).filter(({ bee: name, interval }) => {
    const rate = inside.get(name) ?? 0;
    return interval !== null && (rate < interval.low95 || rate > interval.high95);
  });
  const names = moved.map((rate) => bee(rate.bee));
  return say(words.sections.doubts.weight.matters, { bees: names.length, list: list(names) });
}

export const doubtsSection: SectionOf = (season, voice) => {
  const { doubts: wording } = voice.words.sections;
  const { watches } = season.within.effort;
  const some = season.all.effort.watches > 0;
  return {
    title: wording.title,
    shows: some ? `${wording.shows} ${matters(season, voice)}` : wording.shows,
    limits: wording.limits,
    computed: wording.computed,
    small: watches < FEW.watches ? voice.say(wording.small, { within: watches }) : null,
    parts: [
      checksPart(season.doubts, voice),
      countedPart(season.doubts, voice),
      weightPart(season, voice),
      byBeePart(season, voice),
    ],
  };
};
