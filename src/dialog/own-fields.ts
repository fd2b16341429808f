/** Fields by the reader that the dialog file names for them: those of every watch, and those that only another dialog has. */
import {
  correctsOnly,
  readCount,
  readFields,
  readTemperature,
  readYesNo,
  type Context,
  type FieldName,
  type Reading,
} from '../answers/index.js';
import type { Scene } from './types.js';

/** Fields that `readFields` knows by name; other fields of a dialog are read by the reader they name. */
export const STANDARD = ['date', 'times', 'place', 'temperature', 'sky', 'wind', 'patch', 'plants', 'tally'] as const;
export const isStandard = (field: string): field is FieldName => STANDARD.some((name) => name === field);

/** Reads a field that only another dialog has, by the reader that its dialog file names. */
export function readOwnField(field: string, text: string, context: Context, scene: Scene): Reading<unknown> | null {
  switch (scene.survey.dialog.fields[field]?.reader) {
    case 'yes-no': {
      const reading = readYesNo(text, context);
      if (correctsOnly(reading, text)) return null;
      if (reading.state === 'sure') return { ...reading, value: reading.value.answer === 'yes' };
      if (reading.state === 'none') return reading;
      return { ...reading, offer: reading.offer.map(({ answer }) => answer === 'yes') };
    }
    case 'count':
      return readCount(text, context);
    case 'temperature':
      return readTemperature(text, context);
    case 'words':
      return text.trim() === '' ? null : { state: 'sure', value: text.trim(), used: [[0, text.length]] };
    default: {
      const reader = scene.survey.dialog.fields[field]?.reader;
      if (reader === undefined || !isStandard(reader)) return null;
      return readFields(text, context, [reader]).fields[reader] ?? null;
    }
  }
}

export const isOwnWords = (field: string, { survey }: Scene): boolean =>
  survey.dialog.fields[field]?.reader === 'words';
