/** What a message costs beside few and beside many stored watches. */
import { join } from 'node:path';
import { keepPerson, keepWatch, openStore, type Store, type Transaction } from '../../../src/store/index.js';
import { survey } from '../../demo-survey.js';
import { madeSeason } from '../made-season.js';
import { median } from './numbers.js';
import { ANSWERS, consented, exchangeWithDialog, text } from './talking.js';

export interface StoredWish {
  readonly folder: string;
  /** Numbers of stored watches, rising; each a multiple of the first. */
  readonly sizes: readonly number[];
  /** How many whole conversations are held beside each. */
  readonly conversations: number;
}

const PARTS = ['plants', 'queens', 'determinations', 'photographs', 'queries', 'changes'] as const;
/** Watches of one observer in a copy, so that there are as many observers as there would be. */
const WATCHES_OF_ONE = 25;

const columnsOf = (transaction: Transaction, table: string): string[] =>
  transaction
    .prepared(`select name from pragma_table_info('${table}')`)
    .all()
    .map((row) => (row as { name: string }).name);

/** The rows of a table again under other ids, `times` over; `changed` gives a column another value. */
function copyRows(transaction: Transaction, table: string, times: number, changed: Record<string, string>): void {
  const columns = columnsOf(transaction, table);
  const values = columns.map((column) => changed[column] ?? `"${column}"`);
  const names = columns.map((column) => `"${column}"`).join(', ');
  transaction
    .prepared(
      `with recursive copy(n) as (select 1 union all select n + 1 from copy where n < @times)
       insert into ${table} (${names}) select ${values.join(', ')} from copy cross join ${table}`,
    )
    .run({ times });
}

/** A store that holds `size` watches: made ones, copied over and over with other ids, numbers and observers. */
export async function filled(path: string, size: number, made: number): Promise<Store> {
  const store = await openStore(path);
  store.prepared('pragma synchronous = OFF').run();
  // each part's watch was copied just before
  store.prepared('pragma foreign_keys = OFF').run();
  store.writing((transaction) => {
    const watches = madeSeason({ seed: 1, observers: Math.ceil(made / WATCHES_OF_ONE), watches: made, survey });
    for (const watch of watches) keepWatch(transaction, watch);
    const times = size / made - 1;
    if (times < 1) return;
    // in the order of ids, as watches come in
    const idOf = (id: string): string => `printf('%08x', 4026531840 + n) || substr(${id}, 9)`;
    copyRows(transaction, 'watches', times, {
      id: idOf('id'),
      number: `number + n * ${made}`,
      // the made ones differ in their first letters only
      observer: `substr(observer, 1, 24) || printf('%012x', n)`,
    });
    for (const table of PARTS) copyRows(transaction, table, times, { watch: idOf('watch') });
  });
  store.prepared('pragma foreign_keys = ON').run();
  return store;
}

/** An observer with a whole past. */
function busiest(store: Store): string {
  const row = store
    .prepared(`select observer from watches group by observer having count(*) >= 20 order by observer limit 1`)
    .get() as { observer: string } | undefined;
  const any = store.prepared('select observer from watches limit 1').get() as { observer: string };
  return (row ?? any).observer;
}

/**
 * Milliseconds a message beside each number of watches. The same message goes to each in turn, so that a busy machine
 * slows all alike; without waiting for the disk, whose time is the same for all.
 */
export async function measureStored({ folder, sizes, conversations }: StoredWish, said: (text: string) => void) {
  const stores: { size: number; store: Store; receive: ReturnType<typeof exchangeWithDialog>['receive'] }[] = [];
  for (const size of sizes) {
    said(`storing ${size} watches`);
    const store = await filled(join(folder, `stored-${size}.sqlite`), size, Math.min(...sizes));
    store.writing((transaction) => keepPerson(transaction, consented('returning', busiest(store))));
    stores.push({ size, store, receive: exchangeWithDialog(store).receive });
  }
  said('a message beside them');
  const took = new Map<number, number[][]>(sizes.map((size) => [size, ANSWERS.map(() => [])]));
  const warmUp = Math.ceil(conversations / 5);
  for (let round = -warmUp; round < conversations; round++) {
    for (const [at, answer] of ANSWERS.entries()) {
      for (const { size, receive } of stores) {
        const start = performance.now();
        await receive(text('returning', answer));
        if (round >= 0) took.get(size)![at]!.push(performance.now() - start);
      }
    }
  }
  for (const { store } of stores) store.close();
  // the median of each answer, since answers differ more than anything else
  const costOf = (size: number): number => {
    const medians = took.get(size)!.map(median);
    return medians.reduce((sum, one) => sum + one, 0) / medians.length;
  };
  return sizes.map((size) => ({ size, milliseconds: costOf(size) }));
}
