/** What is wrong with a data package: file, line and column, what stands there and what would do. */
import { LAYOUTS, type FileName } from '../../../shared/columns.js';

export interface Problem {
  readonly file: FileName;
  /** The line of the text at which the row begins, the header being 1; null speaks of the whole file. */
  readonly line: number | null;
  readonly column: string | null;
  /** The rest of the sentence, such as `"7O" is no number; write it like 21.5`. */
  readonly what: string;
}

/** `watches.csv, line 14, column temperature_c: "7O" is no number; write it like 21.5`. */
export function sayProblem({ file, line, column, what }: Problem): string {
  const where = [file, line === null ? '' : `line ${line}`, column === null ? '' : `column ${column}`];
  return `${where.filter((part) => part !== '').join(', ')}: ${what}`;
}

const LONGEST_SHOWN = 60;

/** A cell as it is shown: in quotes, on one line, cut where it is long. */
export function shown(text: string): string {
  const letters = [...text];
  return JSON.stringify(letters.length <= LONGEST_SHOWN ? text : `${letters.slice(0, LONGEST_SHOWN).join('')}…`);
}

/** `clear, few or overcast`. */
export const eitherOf = (words: readonly string[]): string =>
  words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} or ${words.at(-1)}`;

const fileOrder = (file: FileName): number => LAYOUTS.findIndex((layout) => layout.file === file);

/** In the order in which one would go through the files. */
export const inOrder = (problems: readonly Problem[]): Problem[] =>
  [...problems].sort((a, b) => fileOrder(a.file) - fileOrder(b.file) || (a.line ?? 0) - (b.line ?? 0));
