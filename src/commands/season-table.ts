/** Draws the bees-by-plants table for a terminal: bees down, plants across, in as many blocks as its width takes. */
import Table from 'cli-table3';
import { beeLabel } from '../../shared/labels.js';
import type { Survey } from '../../shared/survey.js';
import { say } from '../../shared/wording.js';
import type { SeasonFigures } from '../season/index.js';
import { columnsOf, harmless, wrapped } from './plain-text.js';

/** Columns of a line: what every terminal has, and a mail of plain text too. */
export const TERMINAL_COLUMNS = 80;
const MOST_LABEL_COLUMNS = 34;
/** Headings are broken into lines of the least, unless a word of theirs is longer; the most cuts it. */
const HEADING_COLUMNS = { least: 10, most: 15 };
const GAP_COLUMNS = 2;
/** Stands for none seen: a table of many zeros hides the few that are not. */
const NONE = '·';

/** One column of the table. */
interface Column {
  readonly heading: readonly string[];
  readonly byBee: readonly number[];
  readonly allBees: number;
  /** Null where there is no such number. */
  readonly flowers: number | null;
  readonly watches: number | null;
}

const sum = (numbers: readonly number[]): number => numbers.reduce((total, number) => total + number, 0);

/** Common names of plants; where two of them share one, their scientific names; words as typed as they are. */
function plantLabels(plants: readonly string[], { names }: Pick<Survey, 'names'>): string[] {
  const common = plants.map((name) => names.plants.find((plant) => plant.name === name)?.common[0] ?? name);
  return plants.map((name, index) => {
    const label = common[index] ?? name;
    return common.filter((other) => other === label).length > 1 ? name : label;
  });
}

function headingOf(title: string): string[] {
  const text = harmless(title);
  const longest = Math.max(...text.split(/\s+/).map(columnsOf));
  return wrapped(text, Math.min(HEADING_COLUMNS.most, Math.max(HEADING_COLUMNS.least, longest)));
}

/** Columns side by side as far as there is room; those of a group stay together. */
function inBlocks(
  groups: readonly (readonly Column[])[],
  widthOf: (column: Column) => number,
  room: number,
): Column[][] {
  const blocks: Column[][] = [];
  for (const group of groups) {
    const block = blocks.at(-1);
    if (block === undefined || sum([...block, ...group].map(widthOf)) > room) blocks.push([...group]);
    else block.push(...group);
  }
  return blocks;
}

export interface TableOptions {
  /** The figures are of watches inside the protocol only; said under the table. */
  readonly protocolOnly: boolean;
  /** Width of a line in characters. */
  readonly columns: number;
}

/** Ends without a line break; no line is longer than `columns`. */
export function seasonTable(
  { effort, table }: Pick<SeasonFigures, 'effort' | 'table'>,
  survey: Pick<Survey, 'names' | 'wording'>,
  { protocolOnly, columns }: TableOptions,
): string {
  const { wording } = survey;
  const lines = (text: string): string => wrapped(text, columns).join('\n');
  const leftOut = say(wording, 'season-left-out', { protocolOnly: String(protocolOnly) });
  if (effort.watches === 0) return lines(`${say(wording, 'season-none')} ${leftOut}`);

  const numbers = new Intl.NumberFormat(wording.locale);
  const shown = (number: number | null): string => (number === null ? '' : numbers.format(number));
  const labelled = (text: string): string[] => wrapped(harmless(text), MOST_LABEL_COLUMNS);

  const plants = plantLabels(table.plants, survey).map((title, plant): Column => {
    const byBee = table.counts.map((visits) => visits[plant] ?? 0);
    const [flowers, watches] = [table.flowers[plant] ?? 0, table.watches[plant] ?? 0];
    return { heading: headingOf(title), byBee, allBees: sum(byBee), flowers, watches };
  });
  const total = (phrase: 'season-visits' | 'season-queens', byBee: readonly number[]): Column => {
    // Flowers of several counting units do not add up, and a watch of two plants would count twice.
    return { heading: headingOf(say(wording, phrase)), byBee, allBees: sum(byBee), flowers: null, watches: null };
  };
  const totals = [total('season-visits', table.counts.map(sum)), total('season-queens', table.queens)];

  const beeRows = table.bees.map((name, bee) => ({
    label: labelled(beeLabel(name, survey.names, say(wording, 'season-genus'))),
    cell: ({ byBee }: Column) => ((byBee[bee] ?? 0) === 0 ? NONE : shown(byBee[bee] ?? 0)),
  }));
  const sumRows = [
    { label: labelled(say(wording, 'season-all-bees')), cell: (column: Column) => shown(column.allBees) },
    { label: labelled(say(wording, 'season-flowers')), cell: (column: Column) => shown(column.flowers) },
    { label: labelled(say(wording, 'season-watches')), cell: (column: Column) => shown(column.watches) },
  ];
  const rows = [
    { label: [], cell: ({ heading }: Column) => heading.join('\n') },
    ...beeRows,
    { label: [], cell: () => '' },
    ...sumRows,
  ];

  const labelColumns = Math.max(...rows.flatMap(({ label }) => label.map(columnsOf)));
  const widthOf = (column: Column): number =>
    GAP_COLUMNS + Math.max(...rows.flatMap(({ cell }) => cell(column).split('\n').map(columnsOf)));

  const blocks = inBlocks([...plants.map((plant) => [plant]), totals], widthOf, columns - labelColumns).map((block) => {
    const grid = new Table({
      chars: NO_LINES,
      style: { head: [], border: [], 'padding-left': 0, 'padding-right': 0 },
      colWidths: [labelColumns, ...block.map(widthOf)],
      colAligns: ['left', ...block.map(() => 'right' as const)],
    });
    for (const { label, cell } of rows) {
      grid.push([label.join('\n'), ...block.map(cell)].map((content) => ({ content, vAlign: 'bottom' as const })));
    }
    return grid.toString().replaceAll(/ +$/gm, '').trimEnd();
  });

  const minutes = shown(effort.minutes);
  return [
    lines(say(wording, 'season-title', { watches: effort.watches, minutes })),
    ...blocks,
    lines(`${say(wording, 'season-legend', { none: NONE })} ${leftOut}`),
  ].join('\n\n');
}

/** The columns stand by themselves. */
export const NO_LINES = {
  top: '',
  'top-mid': '',
  'top-left': '',
  'top-right': '',
  bottom: '',
  'bottom-mid': '',
  'bottom-left': '',
  'bottom-right': '',
  left: '',
  'left-mid': '',
  mid: '',
  'mid-mid': '',
  right: '',
  'right-mid': '',
  middle: '',
};
