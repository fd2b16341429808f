/** Whether a reading is what a label says. */
import type { PrintedReading } from '../../../src/answers/index.js';
import type { CorpusKind, Label } from './lines.js';

/** `right`; `asked`: not read, but asked back, so nothing is lost; `wrong`: a sure reading that was not meant. */
export type Verdict = 'right' | 'asked' | 'wrong';

type Fields = Readonly<Record<string, unknown>>;
type Row = { readonly count: number; readonly bee: string | null; readonly plant: string | null } & Fields;

const near = (one: unknown, other: unknown, share: number, least: number): boolean =>
  typeof one === 'number' && typeof other === 'number'
    ? Math.abs(one - other) <= Math.max(least, Math.abs(other) * share)
    : (one ?? null) === (other ?? null);

const wordsOf = (text: unknown): string =>
  typeof text === 'string'
    ? text
        .toLowerCase()
        .replaceAll(/[’']/g, '')
        .replaceAll(/[^\p{L}\p{N}]+/gu, ' ')
        .trim()
    : '';

/** Only keys that the label has are compared: it leaves out what no rule settles. */
const same = (value: Fields, gold: Fields, keys: readonly string[]): boolean =>
  keys.every((key) => !(key in gold) || (value[key] ?? null) === (gold[key] ?? null));

const sameCount = (value: Fields, gold: Fields): boolean =>
  same(value, gold, ['value', 'low', 'high']) &&
  // a range has `about` whether or not it was said
  (gold['low'] !== gold['high'] || same(value, gold, ['about']));

function samePatch(value: Fields, gold: Fields): boolean {
  const sides = ['squareMetres', 'lengthMetres', 'widthMetres', 'diameterMetres'];
  return (
    same(value, gold, ['shape']) && sides.every((key) => !(key in gold) || near(value[key], gold[key], 0.01, 0.01))
  );
}

function samePlace(value: Fields, gold: Fields): boolean {
  const degrees = ['latitude', 'longitude'].every((key) => near(value[key], gold[key], 0, 0.00005));
  const uncertain =
    gold['uncertaintyMetres'] === undefined || near(value['uncertaintyMetres'], gold['uncertaintyMetres'], 0.1, 0.5);
  return degrees && uncertain && wordsOf(value['words']) === wordsOf(gold['words']);
}

function sameName(value: Fields, gold: Fields): boolean {
  const also = Array.isArray(gold['also']) ? (gold['also'] as unknown[]) : [];
  const doubt = !('doubt' in gold) || Boolean(value['doubt']) === Boolean(gold['doubt']);
  return doubt && [gold['name'], ...also].some((name) => name === value['name']);
}

const rowKey = (row: Row, keys: readonly string[]): string =>
  JSON.stringify(keys.map((key) => (row[key] === undefined || row[key] === false || row[key] === 0 ? null : row[key])));

function sameTally(value: readonly Row[], gold: readonly Row[]): boolean {
  const more = ['doubt', 'seenBefore', 'withPollen', 'caste'].filter((key) => gold.some((row) => key in row));
  // which insect a plain count is of, is queens unless workers were said
  const keys = ['count', 'bee', 'plant', ...more];
  const plain = (rows: readonly Row[]): string[] =>
    rows.map((row) => rowKey({ ...row, caste: row['caste'] === 'queen' ? null : row['caste'] }, keys)).sort();
  return JSON.stringify(plain(value)) === JSON.stringify(plain(gold));
}

function samePlants(value: readonly Fields[], gold: readonly Fields[]): boolean {
  const left = [...value];
  return (
    value.length === gold.length &&
    gold.every((plant) => {
      const at = left.findIndex(
        (other) =>
          sameName(other, plant) &&
          (plant['flowers'] == null
            ? other['flowers'] == null
            : other['flowers'] != null && sameCount(other['flowers'] as Fields, plant['flowers'] as Fields)),
      );
      if (at === -1) return false;
      left.splice(at, 1);
      return true;
    })
  );
}

export function sameValue(kind: string, value: unknown, gold: unknown): boolean {
  if (value == null || gold == null) return (value ?? null) === (gold ?? null);
  const [is, meant] = [value as Fields, gold as Fields];
  switch (kind) {
    case 'date':
      return value === gold;
    case 'times':
      return same(is, meant, ['start', 'end']);
    case 'temperature':
      return near(is['celsius'], meant['celsius'], 0, 0.06);
    case 'sky':
      return same(is, meant, ['cloud', 'rain']);
    case 'wind':
      return same(is, meant, ['beaufort']);
    case 'patch':
      return samePatch(is, meant);
    case 'place':
      return samePlace(is, meant);
    case 'count':
      return sameCount(is, meant);
    case 'plant':
    case 'bee':
      return sameName(is, meant);
    case 'tally':
      return sameTally(value as readonly Row[], gold as readonly Row[]);
    case 'plants':
      return samePlants(value as readonly Fields[], gold as readonly Fields[]);
    case 'yes-no':
      return is['answer'] === meant['answer'] && wordsOf(is['rest']) === wordsOf(meant['rest']);
    default:
      throw new TypeError(`No kind of answer is called "${kind}".`);
  }
}

function offered(kind: CorpusKind, reading: PrintedReading, label: Label): boolean {
  const offers = Array.isArray(reading.offer) ? (reading.offer as unknown[]) : [];
  if (label.offer !== undefined) {
    const names = label.offer;
    return offers.some((offer) => names.includes((offer as { name?: string }).name ?? ''));
  }
  return label.gold === null || offers.some((offer) => sameValue(kind, offer, label.gold));
}

/** A whole answer of one kind. */
export function verdictOf(kind: CorpusKind, reading: PrintedReading, label: Label): Verdict {
  if (reading.state === 'sure') {
    return label.state === 'sure' && sameValue(kind, reading.value, label.gold) ? 'right' : 'wrong';
  }
  if (reading.state !== label.state) return 'asked';
  return reading.state === 'none' || offered(kind, reading, label) ? 'right' : 'asked';
}

/** A note, field by field. */
export function verdictsOfNote(reading: PrintedReading, label: Label): { field: string; verdict: Verdict }[] {
  const value = (reading.value ?? {}) as Fields;
  const gold = (label.gold ?? {}) as Fields;
  const offers = (reading.offer ?? {}) as Fields;
  const fields = [...new Set([...Object.keys(gold), ...Object.keys(value)])];
  if (fields.length === 0) return [{ field: 'whole', verdict: reading.state === label.state ? 'right' : 'asked' }];
  return fields.map((field) => {
    // of two watches in one note nothing may be stored unasked
    if (label.state === 'unsure' && reading.state === 'unsure' && field in offers) return { field, verdict: 'right' };
    if (!(field in value)) return { field, verdict: 'asked' };
    return { field, verdict: field in gold && sameValue(field, value[field], gold[field]) ? 'right' : 'wrong' };
  });
}
