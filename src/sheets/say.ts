/** The usual complaints about a cell. */
import type { Complaint } from './complaint.js';
import { wrong, type Told } from './told.js';

const MOST_OFFERED = 4;

/** `example` is a cell that works. */
export const notUnderstood = (told: Told, example: string): Complaint =>
  told.cell.kind === 'broken'
    ? wrong(told, told.cell.what)
    : wrong(told, `is not understood; write it like ${example}`);

/** `offers` are cells that would be sure, best first. */
export function notClear(told: Told, offers: readonly string[]): Complaint {
  const [first, ...others] = [...new Set(offers)].slice(0, MOST_OFFERED);
  if (first === undefined) return wrong(told, 'is not clear; write it in full');
  return wrong(told, `is not clear; write ${[first, ...others].join(', or ')} if that is meant`);
}
