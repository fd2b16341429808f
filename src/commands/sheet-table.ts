/** Draws what was understood of a spreadsheet: a watch to a row, for somebody who compares it with the sheet. */
import Table from 'cli-table3';
import type { SheetWatch } from '../sheets/index.js';
import type { Survey } from '../../shared/survey.js';
import { showDegrees } from '../../shared/display.js';
import { beeLabel } from '../../shared/labels.js';
import { metresPerUnit } from '../../shared/units.js';
import { say } from '../../shared/wording.js';
import { harmless, wrapped } from './plain-text.js';
import { NO_LINES } from './season-table.js';
import type { Fate, Planned } from './sheet-plan.js';

/** Of a hundred columns of a terminal; what is left over goes to plants and queens. */
const WIDTHS = { line: 6, when: 13, where: 17, weather: 15, plants: 19, queens: 20, fate: 10 };
/** Of the eighty that every terminal has. */
const NARROW = { line: 5, when: 13, where: 14, weather: 12, plants: 14, queens: 15, fate: 7 };
/** Beside names of sheets all else is narrower. */
const IN_SHEETS = { line: 6, when: 0, where: -2, weather: -1, plants: -2, queens: -1, fate: 0 };
const sumOf = (widths: typeof WIDTHS): number => Object.values(widths).reduce((sum, width) => sum + width, 0);
const MOST_COLUMNS = 140;
const GAP_COLUMNS = 2;

type Columns = Record<keyof typeof WIDTHS, string[]>;
const HEADINGS: Columns = {
  line: ['line'],
  when: ['date, time'],
  where: ['observer, place'],
  weather: ['weather, patch'],
  plants: ['plants'],
  queens: ['queens'],
  fate: [''],
};

function weatherOf({ temperature, sky, wind, patch }: SheetWatch, { settings, wording }: Survey): string[] {
  const metres = metresPerUnit[settings.lengthUnit];
  const area = patch === null ? null : patch.squareMetres / metres ** 2;
  return [
    temperature === null ? '' : showDegrees(temperature.celsius, settings.temperatureUnit),
    sky === null ? '' : `${wording.labels.clouds[sky.cloud]}${sky.rain ? ', rain' : ''}`,
    wind === null ? '' : (wording.labels.winds[wind.beaufort] ?? ''),
    area === null ? '' : `${Number(area.toFixed(area < 10 ? 1 : 0))} sq ${settings.lengthUnit}`,
  ];
}

function placeOf({ place }: SheetWatch): string {
  if (place === null) return '';
  if (place.words !== '') return place.words;
  return place.latitude === null || place.longitude === null
    ? (place.site ?? '')
    : `${place.latitude.toFixed(4)}, ${place.longitude.toFixed(4)}`;
}

function fateOf(fate: Fate, { complaints }: SheetWatch): string[] {
  switch (fate.kind) {
    case 'doubtful':
      return [complaints.length > 1 ? `${complaints.length} doubts` : 'a doubt'];
    case 'stored':
      return [`is watch ${fate.number}`];
    case 'new':
      return fate.noticed.length > 0 ? ['see below'] : [];
  }
}

function cellsOf({ told, fate }: Planned, survey: Survey, inSheets: boolean): Columns {
  const plants = told.plants.map(({ name, asTyped, flowers }) => {
    const common = survey.names.plants.find((plant) => plant.name === name)?.common[0];
    const count = flowers.asTyped === '' ? 'flowers not told' : `${flowers.about ? 'about ' : ''}${flowers.value}`;
    return `${common ?? name ?? asTyped}: ${count}`;
  });
  const several = told.plants.length > 1;
  const queens = told.queens.map(({ bee, count, plant }) => {
    const on = several ? ` on ${plant}` : '';
    return `${count} ${bee === null ? '?' : beeLabel(bee, survey.names, say(survey.wording, 'season-genus'))}${on}`;
  });
  return {
    line: [...(inSheets ? [told.sheet ?? ''] : []), String(told.line)],
    when: [told.date ?? '?', told.times === null ? '?' : `${told.times.start}–${told.times.end}`],
    where: [told.observer ?? '?', placeOf(told)],
    weather: weatherOf(told, survey),
    plants: several ? plants.map((plant, at) => `${at + 1} ${plant}`) : plants,
    // of a watch that was not understood nobody knows that there were none
    queens: queens.length === 0 ? [fate.kind === 'doubtful' ? '?' : 'none'] : queens,
    fate: fateOf(fate, told),
  };
}

/** No line is longer than `columns`, or than eighty where there are fewer. Ends without a line break. */
export function sheetTable(planned: readonly Planned[], survey: Survey, columns: number): string {
  const inSheets = new Set(planned.map(({ told }) => told.sheet)).size > 1;
  const names = Object.keys(WIDTHS) as (keyof typeof WIDTHS)[];
  const least = columns < sumOf(WIDTHS) ? NARROW : WIDTHS;
  const spare = Math.max(0, Math.min(columns, MOST_COLUMNS) - sumOf(least));
  const widths = {
    ...least,
    plants: least.plants + Math.floor(spare / 2),
    queens: least.queens + Math.ceil(spare / 2),
  };
  if (inSheets) for (const name of names) widths[name] += IN_SHEETS[name];
  const grid = new Table({
    chars: NO_LINES,
    style: { head: [], border: [], 'padding-left': 0, 'padding-right': 0 },
    colWidths: Object.values(widths),
  });
  const draw = (cells: Columns): void => {
    const drawn = names.map((name) => {
      const lines = cells[name].map(harmless).filter((text) => text !== '');
      return lines.flatMap((text) => wrapped(text, widths[name] - GAP_COLUMNS)).join('\n');
    });
    grid.push(drawn);
  };
  draw(inSheets ? { ...HEADINGS, line: ['sheet, line'] } : HEADINGS);
  for (const one of planned) draw(cellsOf(one, survey, inSheets));
  return grid.toString().replaceAll(/ +$/gm, '');
}
