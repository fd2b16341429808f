/** One cell through the reader of its kind: a sure value, or a complaint. */
import type { Reading } from '../answers/index.js';
import type { Count, Patch, Sky, Temperature, Wind } from '../../shared/record.js';
import { plain } from './cell.js';
import type { Complaint } from './complaint.js';
import { notClear, notUnderstood } from './say.js';
import { withUnit, type Told } from './told.js';

export interface Kind<Value> {
  /** A cell that works. */
  readonly example: string;
  /** A value as a cell that would be sure. */
  readonly written: (value: Value) => string;
}

export const writtenTemperature = ({ celsius }: Temperature): string => `${plain(celsius)} C`;
export const writtenSky = ({ cloud, rain }: Sky): string => `${cloud}${rain ? ', rain' : ''}`;
export const writtenWind = ({ beaufort }: Wind): string => `Beaufort ${beaufort}`;
export const writtenPatch = ({ squareMetres }: Patch): string => `${plain(squareMetres)} m2`;
export const writtenCount = ({ value }: Count): string => String(value);

/** What a reading of a cell comes to; null where it is not sure, which is then among the complaints. */
export function settled<Value>(
  told: Told,
  reading: Reading<Value>,
  { example, written }: Kind<Value>,
  complaints: Complaint[],
): Value | null {
  switch (reading.state) {
    case 'sure':
      return reading.value;
    case 'unsure':
      complaints.push(notClear(told, reading.offer.map(written)));
      return null;
    case 'none':
      complaints.push(notUnderstood(told, example));
      return null;
  }
}

/** What a cell means; null where it is empty or not sure. */
export const valueOf = <Value>(
  told: Told | null,
  read: (text: string) => Reading<Value>,
  kind: Kind<Value>,
  complaints: Complaint[],
): Value | null => (told === null ? null : settled(told, read(withUnit(told)), kind, complaints));

/** True and false of a spreadsheet, or yes and no in words. */
export function truthOf(
  told: Told | null,
  yesNo: (text: string) => boolean | null,
  complaints: Complaint[],
): boolean | null {
  if (told === null) return null;
  const { cell, text } = told;
  const truth = cell.kind === 'truth' ? cell.truth : text === '1' ? true : text === '0' ? false : yesNo(text);
  if (truth === null) complaints.push(notUnderstood(told, 'yes or no'));
  return truth;
}
