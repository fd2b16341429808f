/** Progress is said late and seldom, with the time left, and never on a terminal that it does not wipe again. */
import { expect, test } from 'vitest';
import { Progress, roughly } from '../../src/commands/progress.js';

test.each([
  [0, '1 s'],
  [1000, '1 s'],
  [1001, '2 s'],
  [89_000, '89 s'],
  [90_000, '2 min'],
  [149_000, '2 min'],
  [151_000, '3 min'],
])('%d milliseconds are roughly %s', (milliseconds, expected) => {
  expect(roughly(milliseconds)).toBe(expected);
});

/** So many items, each of which takes so long; what was written, and what came out. */
function run(isTTY: boolean | undefined, items: number, millisecondsEach: number) {
  let now = 50;
  const written: string[] = [];
  const progress = new Progress(
    { ...(isTTY === undefined ? {} : { isTTY }), write: (text) => written.push(text) },
    () => now,
  );
  function* working() {
    for (let item = 1; item <= items; item++) {
      now += millisecondsEach;
      yield item;
    }
  }
  const out = [...progress.through(working(), items, 'Reading watches')];
  progress.stage('Working out the figures');
  progress.end();
  return { written, out };
}

test('the items pass as they are', () => {
  expect(run(true, 1200, 10).out).toEqual(Array.from({ length: 1200 }, (_, at) => at + 1));
});

test('work that is soon done says nothing', () => {
  expect(run(true, 1900, 1).written).toEqual([]);
  expect(run(undefined, 29_000, 1).written).toEqual([]);
});

test('on a terminal one line, from the second second on, wiped at the end', () => {
  // 500 items take 1 s, so the first look after 2 s is at 1,000; 2,000 are left of 3,000
  expect(run(true, 3000, 2).written).toEqual([
    '\r\u001b[KReading watches: 1,000 of 3,000, about 4 s left',
    '\r\u001b[KReading watches: 1,500 of 3,000, about 3 s left',
    '\r\u001b[KReading watches: 2,000 of 3,000, about 2 s left',
    '\r\u001b[KReading watches: 2,500 of 3,000, about 1 s left',
    '\r\u001b[KReading watches: 3,000 of 3,000, about 1 s left',
    '\r\u001b[KWorking out the figures ...',
    '\r\u001b[K',
  ]);
});

test('elsewhere a line every half minute', () => {
  expect(run(false, 100_000, 1).written).toEqual([
    'Reading watches: 30,000 of 100,000, about 70 s left\n',
    'Reading watches: 60,000 of 100,000, about 40 s left\n',
    'Reading watches: 90,000 of 100,000, about 10 s left\n',
    'Working out the figures ...\n',
  ]);
});

test('more items than were expected are no time left', () => {
  const written: string[] = [];
  let now = 0;
  const progress = new Progress({ isTTY: true, write: (text) => written.push(text) }, () => (now += 2000));
  expect([...progress.through(new Array<number>(500).fill(1), 400, 'Reading watches')]).toHaveLength(500);
  expect(written).toEqual(['\r\u001b[KReading watches: 500 of 400, about 1 s left']);
});
