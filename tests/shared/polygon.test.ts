import { expect, test } from 'vitest';
import type { Position } from '../../shared/distance.js';
import { metresOutside } from '../../shared/polygon.js';

const at = (latitude: number, longitude: number): Position => ({ latitude, longitude });
/** A square degree with a notch cut into its northern side, down to the middle. */
const notched = [at(0, 0), at(0, 1), at(1, 1), at(0.5, 0.5), at(1, 0)];
/** From 179° E to 179° W. */
const acrossTheDateLine = [at(0, 179), at(0, -179), at(1, -179), at(1, 179)];

/** A degree of longitude at 1° N, in degrees of latitude. */
const shrunk = Math.cos(Math.PI / 180);

const table: [what: string, position: Position, polygon: Position[], metres: number][] = [
  ['inside', at(0.2, 0.5), notched, 0],
  [
    'in the notch, half a degree above its sides',
    at(1, 0.5),
    notched,
    (111_320 * 0.5 * shrunk) / Math.sqrt(1 + shrunk ** 2),
  ],
  ['at the bottom of the notch', at(0.5, 0.5), notched, 0],
  ['on a side', at(0, 0.3), notched, 0],
  ['on a corner', at(1, 1), notched, 0],
  ['a degree south', at(-1, 0.5), notched, 111_320],
  ['a degree west, on the equator', at(0, -1), notched, 111_320],
  ['level with two corners', at(1, 2), notched, 111_320 * shrunk],
  ['east of the date line, inside', at(0.5, -179.5), acrossTheDateLine, 0],
  ['west of the date line, inside', at(0.5, 179.5), acrossTheDateLine, 0],
  ['beyond its eastern side', at(0, -178), acrossTheDateLine, 111_320],
  ['beyond its western side', at(0, 178), acrossTheDateLine, 111_320],
  ['the other way round', at(0.2, 0.5), [...notched].reverse(), 0],
];
test.each(table)('%s', (_what, position, polygon, metres) => {
  expect(metresOutside(position, polygon)).toBeCloseTo(metres, 3);
});
