/** A program that opens a database at the moment when a file appears: `opens-at-once.ts DATABASE FILE`. */
import { existsSync } from 'node:fs';
import { openStore } from '../../src/store/index.js';

const [database, signal] = process.argv.slice(2);
if (database === undefined || signal === undefined) throw new Error('Two paths are needed.');

console.log('ready');
while (!existsSync(signal)); // all start in the same instant
(await openStore(database)).close();
console.log('opened');
