/** The readers of answers, each text read once: a season repeats its few names, places and winds in thousands of rows. */
import {
  readBee,
  readCount,
  readPatch,
  readPlace,
  readPlant,
  readSky,
  readTemperature,
  readWind,
  readYesNo,
  type Context,
  type Reader,
} from '../answers/index.js';

const once = <Value>(read: (text: string) => Value): ((text: string) => Value) => {
  const known = new Map<string, Value>();
  return (text) => {
    const before = known.get(text);
    if (before !== undefined) return before;
    const value = read(text);
    known.set(text, value);
    return value;
  };
};

export function readersOf(context: Context) {
  const of = <Value>(reader: Reader<Value>, within: Context = context) => once((text) => reader(text, within));
  const yesNo = of(readYesNo);
  const units = new Map(context.names.plants.map(({ name, unit }) => [name, unit]));
  return {
    temperature: of(readTemperature),
    sky: of(readSky),
    wind: of(readWind),
    patch: of(readPatch),
    place: of(readPlace),
    plant: of(readPlant),
    bee: of(readBee),
    flowers: of(readCount, { ...context, of: 'flowers' }),
    queens: of(readCount, { ...context, of: 'queens' }),
    /** What is counted as one open flower of a plant; a flower of one that no list holds. */
    unitOf: (plant: string | null) => (plant === null ? undefined : units.get(plant)) ?? 'flower',
    /** Null where it is neither for sure. */
    yesNo: (text: string): boolean | null => {
      const reading = yesNo(text);
      return reading.state === 'sure' ? reading.value.answer === 'yes' : null;
    },
  };
}

export type Readers = ReturnType<typeof readersOf>;
