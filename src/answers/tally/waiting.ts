/** What came between two heads and waits for the next one. */
import type { Head } from './heads.js';
import type { Break } from './mark.js';
import type { TakesBack } from './said.js';

const STRENGTH: Readonly<Record<Break, number>> = {
  and: 1,
  or: 1,
  dash: 2,
  colon: 2,
  open: 2,
  close: 0,
  comma: 3,
  stop: 4,
  line: 5,
};
export const stronger = (left: Break | null, right: Break): Break =>
  left === null || STRENGTH[right] >= STRENGTH[left] ? right : left;

export interface Waiting {
  gap: Break | null;
  or: boolean;
  doubt: boolean;
  worker: boolean;
  all: boolean;
  allNumber: number | null;
  again: Head['again'];
  pollen: boolean;
  each: boolean;
  total: boolean;
  queens: boolean;
  takesBack: TakesBack;
  uncertain: boolean;
  denied: boolean;
}

export const nothingWaits = (): Waiting => ({
  gap: null,
  or: false,
  doubt: false,
  worker: false,
  all: false,
  allNumber: null,
  again: null,
  pollen: false,
  each: false,
  total: false,
  queens: false,
  takesBack: 'no',
  uncertain: false,
  denied: false,
});
