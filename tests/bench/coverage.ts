/**
 * The coverage that each kind of interval reaches: `npm run coverage [-- ROUNDS]`. Prints a table, and with it the rows
 * that `src/season/coverage.ts` holds for the report to quote. A minute at most.
 */
import { COVERAGE } from '../../src/season/coverage.js';
import { coverageOf } from './coverage/simulated.js';
import { DESIGNS, seedOf } from './coverage/designs.js';

const rounds = Number(process.argv[2] ?? COVERAGE.rounds);
const rows = DESIGNS.map((design, index) => coverageOf(design, { rounds, seed: seedOf(index) }));
const shown = (value: number | null): string => (value === null ? 'none' : `${value.toFixed(1)} %`);

console.log('| observers | sites | spread | Poisson | clustered | headline | seasons with a headline |');
console.log('| --- | --- | --- | --- | --- | --- | --- |');
for (const { observers, sites, spread, poisson, clustered, headline, withHeadline } of rows)
  console.log(
    `| ${[observers, sites, spread, ...[poisson, clustered, headline, withHeadline].map(shown)].join(' | ')} |`,
  );
console.log(`\n${rows.map((row) => JSON.stringify(row)).join(',\n')}`);
