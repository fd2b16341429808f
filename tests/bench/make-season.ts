/**
 * How fast watches of a made season come, and what memory they take on the way. Run from the top folder:
 * `node --import ./tests/run-typescript.mjs tests/bench/make-season.ts [watches] [observers]`. Processor time is what is
 * told: on a busy machine the clock says nothing.
 */
import { survey } from '../demo-survey.js';
import { madeSeason } from './made-season.js';

const watches = Number(process.argv[2] ?? 1_000_000);
const observers = Number(process.argv[3] ?? 5000);

const before = process.cpuUsage();
let [queens, mostBytes] = [0, 0];
for (const { number, total } of madeSeason({ seed: 1, observers, watches, survey })) {
  queens += total;
  if (number % 10_000 === 0) mostBytes = Math.max(mostBytes, process.memoryUsage().heapUsed);
}
const { user, system } = process.cpuUsage(before);
console.log(`${watches} watches, ${queens} bees: ${Math.round((watches / (user + system)) * 1e6)} watches/s`);
console.log(`most heap in use, uncollected included: ${Math.round(mostBytes / 1e6)} MB`);
