/** A program that opens a database at the moment when a file appears: `opens-at-once.ts DATABASE FILE`. */
import { existsSync } from 'node:fs';
import { openStore } from '../../src/store/index.js';

const [database, signal] = process.argv.slice(2);
if (database === undefined || signal === undefined) throw new Error('Two paths are needed.');

console.log('ready');
const look = new Int32Array(new SharedArrayBuffer(4));
while (!existsSync(signal)) Atomics.wait(look, 0, 0, 1); // all start in the same millisecond, without using up the machine
(await openStore(database)).close();
console.log('opened');
