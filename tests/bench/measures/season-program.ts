/**
 * A program of its own, since only so its memory can be told: `season-program.ts DATABASE SUBJECT` does what
 * `season-figures.ts` says and prints what it took as JSON.
 */
import { readFileSync } from 'node:fs';
import { openStore } from '../../../src/store/index.js';
import { subjects, type Measured, type Subject } from './season-figures.js';

const [path = '', subject = 'query'] = process.argv.slice(2);
const before = process.cpuUsage();
const store = await openStore(path, { readonly: true });
const sum = store.reading(subjects[subject as Subject]);
store.close();
const { user, system } = process.cpuUsage(before);
// not resourceUsage's, which on Linux begins with what the program had that started this one
const kibibytes = Number(/VmHWM:\s+(\d+)/.exec(readFileSync('/proc/self/status', 'utf8'))?.[1]);
const measured: Measured = { seconds: (user + system) / 1e6, bytes: kibibytes * 1024, sum };
console.log(JSON.stringify(measured));
