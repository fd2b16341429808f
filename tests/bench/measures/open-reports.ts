/**
 * A program of its own, since only so its memory can be told: `open-reports.ts FOLDER REPORTS`. People begin a report
 * each, and all reports stay open; it prints `{"before", "after", "most"}` in bytes of resident memory.
 */
import { join } from 'node:path';
import { keepPerson, openStore } from '../../../src/store/index.js';
import { consented, exchangeWithDialog, text } from './talking.js';

const SIDE_BY_SIDE = 50;

const [folder = '.', reports = '0'] = process.argv.slice(2);
const people = Array.from({ length: Number(reports) }, (_, index) => `person-${index}`);

const store = await openStore(join(folder, 'open-reports.sqlite'));
store.prepared('pragma synchronous = OFF').run();
store.writing((transaction) => {
  for (const person of people) keepPerson(transaction, consented(person, `observer of ${person}`));
});
const { receive } = exchangeWithDialog(store);
await receive(text('somebody', 'yes'));
const before = process.memoryUsage.rss();
for (let from = 0; from < people.length; from += SIDE_BY_SIDE) {
  const some = people.slice(from, from + SIDE_BY_SIDE);
  await Promise.all(some.map((person) => receive(text(person, 'today 2:10 to 2:25 pm'))));
}
const { open } = store.prepared(`select count(*) as open from threads where state like '%"report":{%'`).get() as {
  open: number;
};
const most = process.resourceUsage().maxRSS * 1024;
console.log(JSON.stringify({ before, after: process.memoryUsage.rss(), most, open }));
store.close();
