/** One cell: its text as a value of its column's type, and back. */
import type { Column } from '../../../shared/columns.js';
import { instant, localDate, localTime, type Finding } from '../../../shared/record.js';
import { eitherOf, shown } from './problem.js';

export type CellValue = string | number | boolean | Finding['values'] | null;
export type ReadCell = { readonly value: CellValue } | { readonly problem: string };

/** What would do, where the column has no example of its own. */
const EXAMPLES: Readonly<Record<Column['type'], string>> = {
  integer: '12',
  number: '21.5',
  boolean: 'true or false',
  string: 'some words',
  date: '2026-05-02',
  time: '13:05',
  datetime: '2026-05-02T18:30:00Z',
  object: '{"celsius": 3}',
};

const NUMBER = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?$/;
/** Programs that know no whole number with gaps in its column write 2 as "2.0". */
const WHOLE = /^[+-]?\d+(?:\.0*)?$/;
/** The spellings that Table Schema takes by default, in any case. */
const TRUE = ['true', '1'];
const FALSE = ['false', '0'];

const wouldDo = (column: Column): string =>
  column.words === undefined
    ? `write ${column.type === 'boolean' ? '' : 'it like '}${column.example ?? EXAMPLES[column.type]}`
    : `write ${eitherOf(column.words)}`;

const not = (what: string, text: string, column: Column): ReadCell => ({
  problem: `${shown(text)} is no ${what}; ${wouldDo(column)}`,
});

function numberOf(text: string, column: Column): ReadCell {
  const pattern = column.type === 'integer' ? WHOLE : NUMBER;
  const value = Number(text);
  const possible = column.type === 'integer' ? Number.isSafeInteger(value) : Number.isFinite(value);
  if (!pattern.test(text) || !possible) {
    return not(column.type === 'integer' ? 'whole number' : 'number', text, column);
  }
  const { least, most, above } = column;
  if (least !== undefined && value < least) return { problem: `${shown(text)} is too low; the least is ${least}` };
  if (most !== undefined && value > most) return { problem: `${shown(text)} is too high; the most is ${most}` };
  if (above !== undefined && value <= above) return { problem: `${shown(text)} is too low; it must be above ${above}` };
  return { value: value + 0 }; // no minus zero: it would be written as 0
}

function objectOf(text: string, column: Column): ReadCell {
  try {
    const value: unknown = JSON.parse(text);
    if (typeof value === 'object' && value !== null && !Array.isArray(value)) {
      return { value: value as Finding['values'] };
    }
  } catch {
    // said below, with what would do
  }
  return not('JSON object', text, column);
}

/** Text is taken letter by letter; in all other cells blanks around the value do not matter. An empty cell is null. */
export function readCell(column: Column, text: string): ReadCell {
  const value = column.type === 'string' && column.words === undefined ? text : text.trim();
  if (value === '') {
    return column.required && !column.mayBeMissing ? { problem: `is empty; ${wouldDo(column)}` } : { value: null };
  }
  switch (column.type) {
    case 'integer':
    case 'number':
      return numberOf(value, column);
    case 'boolean':
      if (TRUE.includes(value.toLowerCase())) return { value: true };
      return FALSE.includes(value.toLowerCase())
        ? { value: false }
        : { problem: `${shown(value)} is not understood; ${wouldDo(column)}` };
    case 'string':
      return column.words === undefined || column.words.includes(value)
        ? { value }
        : { problem: `${shown(value)} is not known here; ${wouldDo(column)}` };
    case 'date':
      return localDate.safeParse(value).success ? { value } : not('day', value, column);
    case 'time':
      return localTime.safeParse(value).success ? { value } : not('time', value, column);
    case 'datetime':
      return instant.safeParse(value).success || localDate.safeParse(value).success
        ? { value }
        : not('moment', value, column);
    case 'object':
      return objectOf(value, column);
  }
}

/** Numbers with all their digits, so that reading gives the same number again. */
export function writeCell(value: CellValue): string {
  if (value === null) return '';
  return typeof value === 'object' ? JSON.stringify(value) : String(value);
}
