/** The plants of a watch with their open flowers, and the queens on them. */
import { fold, readPlants, type Context } from '../answers/index.js';
import type { PlantWatched, QueensRow } from '../../shared/record.js';
import type { Complaint } from './complaint.js';
import { isOneOf, ofSheet, type RawRow, type RawWatch } from './raw.js';
import type { Readers } from './readers.js';
import { notUnderstood } from './say.js';
import { wrong, type Told } from './told.js';
import { settled, truthOf, valueOf, writtenCount } from './value.js';

/** What stands for open flowers that nobody told: the same as a skipped answer. */
const NO_FLOWERS: PlantWatched['flowers'] = { value: 0, low: null, high: null, about: true, asTyped: '' };

type Named = { readonly name: string | null; readonly rank: string | null };

export interface What {
  readonly plants: readonly PlantWatched[];
  readonly queens: readonly QueensRow[];
}

export function readWhat(watch: RawWatch, readers: Readers, context: Context, complaints: Complaint[]): What {
  const plants = new Map<string, { plant: PlantWatched; flowers: Told | null }>();
  const queens: QueensRow[] = [];
  const ofRow = (row: RawRow, what: string): Complaint =>
    ofSheet({ file: watch.file, name: watch.sheet }, what, { line: row.line });

  for (const row of watch.rows) {
    const seen = queensIn(row, readers, context, complaints, ofRow);
    if (row.plant === null) {
      const needed = seen !== null || row.flowers !== null || row.bee !== null || row.count !== null;
      if (needed) complaints.push(ofRow(row, 'the row names no plant; write on which flowers it was'));
      continue;
    }
    const named = settled(row.plant, readers.plant(row.plant.text), PLANT, complaints);
    if (named === null) continue;
    const key = named.name ?? fold(row.plant.text);
    const known = plants.get(key);
    const flowers = valueOf(row.flowers, readers.flowers, FLOWERS, complaints);
    const told =
      row.flowers === null ? flowersBeside(row.plant, context) : flowers && { ...flowers, asTyped: row.flowers.text };
    if (known === undefined) {
      const unit = readers.unitOf(named.name);
      const plant = { ...named, plant: plants.size + 1, asTyped: row.plant.text, unit, flowers: told ?? NO_FLOWERS };
      plants.set(key, { plant, flowers: row.flowers });
    } else if (row.flowers !== null) {
      const before = known.flowers;
      if (before === null)
        plants.set(key, { plant: { ...known.plant, flowers: told ?? NO_FLOWERS }, flowers: row.flowers });
      else if (before.text !== row.flowers.text) {
        const what = `is another count of the same flowers than “${before.text}” in line ${before.where.line}; put one right`;
        complaints.push(wrong(row.flowers, what));
      }
    }
    const { plant } = plants.get(key)!.plant;
    if (seen !== null) queens.push({ ...seen, row: queens.length + 1, plant });
  }
  if (watch.rows.length > 0 && plants.size === 0 && complaints.length === 0) {
    complaints.push(ofSheet({ file: watch.file, name: watch.sheet }, 'the watch has no plant', { line: watch.line }));
  }
  return { plants: [...plants.values()].map(({ plant }) => plant), queens };
}

/** "dandelion (14)": the flowers that stand with the name, where they have no cell of their own. */
function flowersBeside({ text }: Told, context: Context): PlantWatched['flowers'] | null {
  if (!/\d/.test(text)) return null;
  const reading = readPlants(text, context);
  const flowers = reading.state === 'sure' && reading.value.length === 1 ? reading.value[0]?.flowers : null;
  return flowers == null ? null : { ...flowers, asTyped: text };
}

const FLOWERS = { example: '120 or about 120', written: writtenCount };
const QUEENS = { example: '2', written: writtenCount };

const written = ({ name }: Named): string => name ?? '';
const PLANT = { example: 'wild lupine', written };
const BEE = { example: 'common eastern, or unknown bumble bee', written };

/** The queens of a row; null where it tells of none. */
function queensIn(
  row: RawRow,
  readers: Readers,
  context: Context,
  complaints: Complaint[],
  ofRow: (row: RawRow, what: string) => Complaint,
): Omit<QueensRow, 'row' | 'plant'> | null {
  const { words } = context;
  const nobody = row.bee !== null && isOneOf(row.bee.text, words.sheets.noBee);
  const bee = nobody ? null : row.bee;
  const before = complaints.length;
  const count = valueOf(row.count, readers.queens, QUEENS, complaints)?.value ?? null;
  if (complaints.length > before) return null;
  if (bee === null) {
    if (count === null || count === 0) return null;
    const what = `counts bees, but the row ${nobody ? `says “${row.bee?.text ?? ''}”` : 'names none'}; write which bee, or “unknown bumble bee”`;
    complaints.push(wrong(row.count!, what));
    return null;
  }
  const named = settled(bee, readers.bee(bee.text), BEE, complaints);
  const inName = /^\d+(?=\s)/.exec(bee.text)?.[0];
  if (inName !== undefined && count !== null && Number(inName) !== count) {
    complaints.push(wrong(bee, `is another count than the ${count} of its row; put one of them right`));
    return null;
  }
  if (row.count === null || count === null) {
    complaints.push(ofRow(row, `${quotedBee(bee)} has no count; write how many there were, or 0`));
    return null;
  }
  if (named === null || count === 0) return null;
  const part = (told: Told | null): number | null => {
    const value = valueOf(told, readers.queens, QUEENS, complaints)?.value ?? null;
    if (value === null || value <= count) return value;
    complaints.push(wrong(told!, `is more than the count of the row, ${count}`));
    return null;
  };
  return {
    bee: named.name,
    rank: named.rank,
    asTyped: bee.text,
    count,
    seenBefore: part(row.seenBefore) ?? 0,
    withPollen: part(row.withPollen),
    caste: casteOf(row.caste, context, complaints),
    doubt: named.doubt === true || truthOf(row.doubt, readers.yesNo, complaints) === true,
    determinations: [],
  };
}

const quotedBee = ({ text }: Told): string => `“${text}”`;

function casteOf(told: Told | null, { words }: Context, complaints: Complaint[]): QueensRow['caste'] {
  if (told === null) return null;
  const caste = words.sheets.castes[fold(told.text).trim()];
  if (caste === undefined) complaints.push(notUnderstood(told, 'queen or worker'));
  return caste ?? null;
}
