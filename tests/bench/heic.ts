/**
 * How long nobody else would be answered while the metadata is taken from a HEIC photograph: the longest stall of the
 * event loop. `node --import ./tests/run-typescript.mjs tests/bench/heic.ts FILE.heic`
 */
import { readFileSync } from 'node:fs';
import { monitorEventLoopDelay } from 'node:perf_hooks';
import { setTimeout as wait } from 'node:timers/promises';
import { barePhotograph } from '../../src/channels/bare-photograph.js';

const [file] = process.argv.slice(2);
if (file === undefined)
  throw new Error('Name a HEIC file, for example: tests/bench/heic.ts tests/channels/telling.heic');
const bytes = readFileSync(file);
const delay = monitorEventLoopDelay({ resolution: 1 });
await wait(100);
delay.enable();
await wait(100);
delay.reset();
const began = performance.now();
const bare = await barePhotograph(bytes);
const took = performance.now() - began;
await wait(10); // a stall is noted when it is over
delay.disable();
const milliseconds = (value: number): string => `${Math.round(value)} ms`;
const made = bare === null ? 'no picture' : `${bare.bytes.length} bytes of ${bare.type}`;
process.stdout.write(`${made} in ${milliseconds(took)}; longest stall ${milliseconds(delay.max / 1e6)}\n`);
