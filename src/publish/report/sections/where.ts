/** Where people watched: the cells of the public form, so that nobody's garden can be found. */
import { BLUE, labelled, type Chart } from '../chart.js';
import type { SectionOf } from '../section.js';
import type { Voice } from '../voice.js';
import type { Watching } from '../watching.js';

/** Rows of the table; the others are put together in one. */
const ROWS = 15;
/** Of the map's width, pixels; it is no higher. */
const SIDE = 256;
/** Of the circle of the cell with most watches, square pixels. */
const LARGEST = 700;
/** Of a degree in the table: about a hundred metres, and a cell is far wider. */
const DIGITS = 3;
/** Kilometres of a degree along the meridian (WGS 84 mean). */
const KILOMETRES_A_DEGREE = 111.32;
/** More of all watches than this in one cell is said. */
const LARGE_SHARE = 0.5;

const narrowing = (latitude: number): number => Math.cos((latitude * Math.PI) / 180);

/** From the least to the most, with half a cell and a little more on either side. */
function range(degrees: readonly number[], cell: number): [least: number, most: number] {
  const ends = [degrees.reduce((a, b) => Math.min(a, b)), degrees.reduce((a, b) => Math.max(a, b))] as const;
  return [ends[0] - cell, ends[1] + cell];
}

interface Compass {
  readonly latitude: (degrees: number, digits: number) => string;
  readonly longitude: (degrees: number, digits: number) => string;
}

/** "43.55° N": with the letters of the language. */
function compassOf({ words: { sections }, say, figure }: Voice): Compass {
  const { north, south, east, west } = sections.where;
  const shown =
    (above: string, below: string) =>
    (degrees: number, digits: number): string =>
      say(degrees < 0 ? below : above, { degrees: figure(Math.abs(degrees), digits) });
  return { latitude: shown(north, south), longitude: shown(east, west) };
}

/** About four ticks, on round degrees. */
function ticksIn([least, most]: readonly [number, number]): { values: number[]; digits: number } {
  const raw = (most - least) / 4;
  const power = 10 ** Math.floor(Math.log10(raw));
  const step = ([1, 2, 5, 10].find((factor) => factor * power >= raw) ?? 10) * power;
  const values: number[] = [];
  for (let tick = Math.ceil(least / step); tick * step <= most; tick++) values.push(tick * step);
  return { values, digits: Math.max(0, -Math.floor(Math.log10(step) + 1e-9)) };
}

/** As a map: a kilometre is as long to the east as to the north, at the middle of it. */
function mapOf({ cells, cellDegrees }: Watching, voice: Voice): Chart | null {
  if (cells.length === 0) return null;
  const of = (axis: 'latitude' | 'longitude') => cells.map((cell) => cell[axis]);
  const [south, north] = range(of('latitude'), cellDegrees);
  const [west, east] = range(of('longitude'), cellDegrees);
  const middle = (south + north) / 2;
  const wide = (east - west) * narrowing(middle);
  const height = Math.min(SIDE, Math.max(SIDE / 3, (SIDE * (north - south)) / wide));
  // a tall map has as much room to its sides as it needs, a flat one above and below
  const perPixel = Math.max(wide / SIDE, (north - south) / height);
  const halfWidth = (perPixel * SIDE) / 2 / narrowing(middle);
  const x = [(west + east) / 2 - halfWidth, (west + east) / 2 + halfWidth] as const;
  const y = [middle - (perPixel * height) / 2, middle + (perPixel * height) / 2] as const;
  const compass = compassOf(voice);
  const axis = (domain: readonly [number, number], name: keyof Compass) => {
    const { values, digits } = ticksIn(domain);
    const labels = values.map((value) => compass[name](value, digits));
    return {
      values,
      grid: true,
      labelExpr: labelled(values, labels),
    };
  };
  const most = cells[0]?.watches ?? 1;
  return {
    height,
    room: { left: 58, bottom: 30 },
    spec: {
      data: {
        values: cells.map(({ latitude, longitude, watches }) => ({
          latitude,
          longitude,
          watches,
          above: -Math.sqrt(((watches / most) * LARGEST) / Math.PI) - 2,
        })),
      },
      encoding: {
        x: {
          field: 'longitude',
          type: 'quantitative',
          title: null,
          scale: { domain: [...x], nice: false, zero: false },
          axis: axis(x, 'longitude'),
        },
        y: {
          field: 'latitude',
          type: 'quantitative',
          title: null,
          scale: { domain: [...y], nice: false, zero: false },
          axis: axis(y, 'latitude'),
        },
      },
      layer: [
        {
          mark: { type: 'circle', color: BLUE, opacity: 0.75 },
          encoding: {
            size: {
              field: 'watches',
              type: 'quantitative',
              scale: { type: 'linear', domain: [0, most], range: [0, LARGEST] },
              legend: null,
            },
          },
        },
        {
          mark: { type: 'text', fontSize: 11, baseline: 'bottom', dy: { expr: 'datum.above' }, color: '#222' },
          encoding: { text: { field: 'watches' } },
        },
      ],
    },
  };
}

export const whereSection: SectionOf = ({ watching }, voice) => {
  const { words, say, whole, figure } = voice;
  const { where } = words.sections;
  const { cells, cellDegrees, unplaced } = watching;
  const compass = compassOf(voice);
  const watches = cells.reduce((sum, cell) => sum + cell.watches, 0);
  const most = cells[0]?.watches ?? 0;
  const middle = cells[0]?.latitude ?? 0;
  const [shown, others] = cells.length > ROWS ? [cells.slice(0, ROWS - 1), cells.slice(ROWS - 1)] : [cells, []];
  const total = (of: 'watches' | 'minutes'): string => whole(others.reduce((sum, cell) => sum + cell[of], 0));
  return {
    title: where.title,
    shows: say(where.shows, { cells: cells.length, watches }),
    limits: where.limits,
    computed: say(where.computed, {
      cell: cellDegrees,
      high: figure(cellDegrees * KILOMETRES_A_DEGREE, 0),
      wide: figure(cellDegrees * KILOMETRES_A_DEGREE * narrowing(middle), 0),
      unplaced,
    }),
    small: cells.length > 1 && most > watches * LARGE_SHARE ? say(where.small, { most, watches }) : null,
    parts: [
      {
        title: where.map,
        chart: mapOf(watching, voice),
        head: [where.columns.cell, words.columns.watches, words.columns.minutes],
        rows: [
          ...shown.map((cell) => [
            `${compass.latitude(cell.latitude, DIGITS)}, ${compass.longitude(cell.longitude, DIGITS)}`,
            whole(cell.watches),
            whole(cell.minutes),
          ]),
          ...(others.length === 0
            ? []
            : [[say(where.others, { cells: others.length }), total('watches'), total('minutes')]]),
        ],
      },
    ],
  };
};
