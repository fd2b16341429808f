/**
 * One folder for all that a run of the tests writes into the temporary folder: those of the tests, and of the programs that
 * they start and kill, lie in it, and go with it when the run ends. A run that was killed itself leaves it to the next.
 */
import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** With the number of the process whose it is. */
const NAME = /^queenpost-tests-(?<process>\d+)-/;

function isRunning(number: number): boolean {
  try {
    process.kill(number, 0); // no signal: only whether it could be sent
    return true;
  } catch (error) {
    return error instanceof Error && 'code' in error && error.code === 'EPERM'; // somebody else's
  }
}

/** Removes the folders of runs that are over without having done so. */
function removeLeftOver(parent: string): void {
  for (const name of readdirSync(parent)) {
    const owner = NAME.exec(name)?.groups?.['process'];
    if (owner !== undefined && !isRunning(Number(owner))) rmSync(join(parent, name), { recursive: true, force: true });
  }
}

/** Run by vitest before its workers begin, which inherit the variables; what it gives is run at the end. */
export function setup(): () => void {
  const parent = tmpdir();
  removeLeftOver(parent);
  const folder = mkdtempSync(join(parent, `queenpost-tests-${process.pid}-`));
  const remove = (): void => rmSync(folder, { recursive: true, force: true, maxRetries: 5 });
  for (const variable of ['TMPDIR', 'TMP', 'TEMP']) process.env[variable] = folder;
  process.on('exit', remove); // also where vitest is interrupted
  return remove;
}
