/** A size or temperature in the unit in which it was told, beside the survey's own: "4 × 2.5 m (13.1 × 8.2 ft)". */
import { showDegrees } from '../../shared/display.js';
import type { Patch, Temperature } from '../../shared/record.js';
import { metresPerUnit, toFahrenheit } from '../../shared/units.js';
import { showPatch } from './show.js';
import type { Report, Scene } from './types.js';

/** Numbers as they stand in the words; "2,5" is 2.5. */
const numbersIn = (typed: string): number[] =>
  (typed.match(/\d+(?:[.,]\d+)?/g) ?? []).map((number) => Number(number.replace(',', '.')));

const tenths = (value: number): number => Math.round(value * 10) / 10;

/** Whether the words hold all of these numbers, to a tenth. */
const holds = (typed: string, values: readonly number[]): boolean => {
  const said = numbersIn(typed);
  return values.length > 0 && values.every((value) => said.some((number) => tenths(number) === tenths(value)));
};

const sidesOf = (
  { shape, lengthMetres, widthMetres, diameterMetres, squareMetres }: Patch,
  metres: number,
): number[] =>
  shape === 'area'
    ? [squareMetres / metres ** 2]
    : [lengthMetres, widthMetres, diameterMetres].flatMap((side) => (side === null ? [] : [side / metres]));

/** Null where the words tell it in the survey's unit, or in neither. */
export function asTold(field: string, report: Report, scene: Scene): string | null {
  const told = report.fields[field];
  const { settings } = scene.survey;
  if (told === undefined) return null;
  if (field === 'temperature') {
    const { celsius } = told.value as unknown as Temperature;
    const [own, other] = settings.temperatureUnit === 'F' ? (['F', 'C'] as const) : (['C', 'F'] as const);
    const degrees = { C: celsius, F: toFahrenheit(celsius) };
    const isOther = holds(told.typed, [degrees[other]]) && !holds(told.typed, [Math.round(degrees[own])]);
    return isOther ? `${showDegrees(celsius, other)} (${showDegrees(celsius, own)})` : null;
  }
  if (field !== 'patch') return null;
  const patch = told.value as unknown as Patch;
  const own = settings.lengthUnit;
  const other = own === 'ft' ? 'm' : 'ft';
  const isOther =
    holds(told.typed, sidesOf(patch, metresPerUnit[other])) && !holds(told.typed, sidesOf(patch, metresPerUnit[own]));
  return isOther ? `${showPatch(patch, scene.survey, other)} (${showPatch(patch, scene.survey)})` : null;
}
