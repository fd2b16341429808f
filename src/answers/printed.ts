/** A reading as `queenpost read` prints it (formats: the reading): every kind of answer by its name. */
import type { Ask } from '../../shared/phrases.js';
import { readBee } from './bee.js';
import { readCount } from './count.js';
import { readDate } from './date.js';
import { readNote } from './note.js';
import { readPatch } from './patch.js';
import { readPlace } from './place.js';
import { readPlant } from './plant.js';
import type { Context, Reading } from './reading.js';
import { readSky } from './sky.js';
import { readTally, type TallyRow } from './tally.js';
import { readTemperature } from './temperature.js';
import { readTimes } from './times.js';
import { readWind } from './wind.js';
import { readYesNo } from './yes-no.js';

export interface PrintedReading {
  readonly text: string;
  readonly state: 'sure' | 'unsure' | 'none';
  readonly value: unknown;
  /** Best first; for a note by field. */
  readonly offer: unknown;
  readonly ask: Ask | null;
}

type Print = (text: string, context: Context) => Omit<PrintedReading, 'text'>;

function print<Value>(
  reading: Reading<Value>,
  show: (value: Value) => unknown = (value) => value,
): Omit<PrintedReading, 'text'> {
  switch (reading.state) {
    case 'sure':
      return { state: 'sure', value: show(reading.value), offer: null, ask: null };
    case 'unsure':
      return { state: 'unsure', value: null, offer: reading.offer.map(show), ask: reading.ask };
    case 'none':
      return { state: 'none', value: null, offer: null, ask: reading.ask };
  }
}

/** Rows without the words they came from, which the conversation keeps and a reading does not show. */
const rows = (tally: readonly TallyRow[]): unknown => tally.map(({ typed: _typed, ...row }) => row);

/** A kind is a line here. */
const KINDS = {
  date: (text, context) => print(readDate(text, context)),
  times: (text, context) => print(readTimes(text, context)),
  temperature: (text, context) => print(readTemperature(text, context)),
  sky: (text, context) => print(readSky(text, context)),
  wind: (text, context) => print(readWind(text, context)),
  patch: (text, context) => print(readPatch(text, context)),
  place: (text, context) => print(readPlace(text, context)),
  count: (text, context) => print(readCount(text, context)),
  plant: (text, context) => print(readPlant(text, context)),
  bee: (text, context) => print(readBee(text, context)),
  tally: (text, context) => print(readTally(text, context), rows),
  'yes-no': (text, context) => print(readYesNo(text, context)),
  note: (text, context) => {
    const { state, value, offer, ask } = readNote(text, context);
    return { state, value, offer, ask };
  },
} as const satisfies Record<string, Print>;

export type PrintedKind = keyof typeof KINDS;
export const PRINTED_KINDS = Object.keys(KINDS) as readonly PrintedKind[];

export const printed = (kind: PrintedKind, text: string, context: Context): PrintedReading => ({
  text,
  ...KINDS[kind](text, context),
});
