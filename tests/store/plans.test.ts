/** No query walks through a table that grows with the survey: each finds its rows by the index named here. */
import { expect, test, vi } from 'vitest';
import {
  codeOf,
  confirmedCountsOf,
  Connection,
  dueTimers,
  failedReplies,
  firstWaiting,
  keepWatch,
  lastWatchesOf,
  messageDone,
  messagesToCome,
  nextReplyDue,
  nextTimerDue,
  nextWatchNumber,
  personOf,
  personsByMail,
  placesOf,
  progressOf,
  replySaid,
  replySent,
  stuckMessages,
  takeTimer,
  threadOf,
  threadsOfObserver,
  waitingMessages,
  waitingReplies,
  waitingThreads,
  watchById,
  watchByNumber,
  watchesNearOn,
  watchesOf,
  type Store,
} from '../../src/store/index.js';
import { openScratch, scratchPath } from './scratch.js';
import { sampleWatch, SURVEY } from './sample.js';

const thread = { survey: SURVEY, channel: 'terminal', person: 'wren' };
const now = '2026-05-06T23:30:00Z';
const inTransaction = (store: Store, work: Parameters<Store['writing']>[0]) => store.writing(work);

const table: [asked: string, ask: (store: Store) => unknown, by: string[]][] = [
  ['the first waiting message', (store) => firstWaiting(store, thread), ['inbox INDEX inboxWaiting']],
  [
    'the waiting threads',
    (store) => waitingThreads(store, SURVEY, 9),
    ['inbox COVERING INDEX inboxWaiting', 'coming INDEX inboxComing'],
  ],
  [
    'how many wait',
    (store) => waitingMessages(store, SURVEY),
    ['inbox COVERING INDEX inboxWaiting', 'coming INDEX inboxComing'],
  ],
  [
    'the files to come',
    (store) => messagesToCome(store, { survey: SURVEY, channel: 'telegram', most: 9 }),
    ['inbox INDEX inboxComing', 'earlier COVERING INDEX inboxWaiting'],
  ],
  ['the thread', (store) => threadOf(store, thread), ['threads PRIMARY KEY']],
  ['the person', (store) => personOf(store, thread), ['persons PRIMARY KEY']],
  [
    'the threads of an observer',
    (store) => threadsOfObserver(store, { survey: SURVEY, key: 'o' }),
    ['persons COVERING INDEX personsOfObserver'],
  ],
  [
    'who gave an address',
    (store) => personsByMail(store, { survey: SURVEY, mail: 'w@x.example' }),
    ['persons INDEX personsByMail'],
  ],
  ['the code of an address', (store) => codeOf(store, { survey: SURVEY, mail: 'w@x.example' }), ['codes PRIMARY KEY']],
  ['the places', (store) => placesOf(store, { survey: SURVEY, observer: 'o', most: 9 }), ['places PRIMARY KEY']],
  [
    'the last watches',
    (store) => lastWatchesOf(store, { survey: SURVEY, observer: 'o', most: 20 }),
    ['watches INDEX watchesOfObserver'],
  ],
  [
    'the progress',
    (store) => progressOf(store, { survey: SURVEY, observer: 'o', from: '2026-04-10', to: '2026-06-30' }),
    ['watches INDEX watchesOfObserver'],
  ],
  [
    'the watches near by',
    (store) =>
      watchesNearOn(store, { survey: SURVEY, date: '2026-05-04', latitude: 1, longitude: 1, metres: 1000, most: 9 }),
    ['watches INDEX watchesOnDay'],
  ],
  ['the next number', (store) => nextWatchNumber(store, SURVEY), ['watches COVERING INDEX watchNumbers']],
  ['a watch', (store) => watchByNumber(store, SURVEY, 1), ['watches INDEX watchNumbers']],
  [
    'what the figures are made of',
    (store) => [...confirmedCountsOf(store, SURVEY)],
    ['watches PRIMARY KEY', 'plants PRIMARY KEY', 'queens PRIMARY KEY', 'determinations PRIMARY KEY'],
  ],
  ['all watches', (store) => [...watchesOf(store, SURVEY)], ['watches INDEX watchNumbers']],
  [
    'the due replies',
    (store) => waitingReplies(store, { survey: SURVEY, channel: 'terminal', now, most: 9 }),
    ['outbox INDEX outboxWaiting', 'earlier COVERING INDEX outboxWaiting'],
  ],
  ['what was said', (store) => replySaid(store, thread, '3'), ['outbox INDEX outboxSlots']],
  ['the watch that was meant', (store) => watchById(store, SURVEY, 'w'), ['watches PRIMARY KEY']],
  ['the next reply', (store) => nextReplyDue(store, SURVEY, 'terminal'), ['outbox INDEX outboxWaiting', 'heads']],
  [
    'the due timers',
    (store) => dueTimers(store, { survey: SURVEY, now, most: 9 }),
    ['timers INDEX timersDue', 'threads PRIMARY KEY'],
  ],
  ['the next timer', (store) => nextTimerDue(store, SURVEY), ['timers COVERING INDEX timersDue']],
  ['what is stuck', (store) => stuckMessages(store, SURVEY), ['stuck PRIMARY KEY', 'inbox INDEX inboxIds']],
  [
    'a message taken',
    (store) => inTransaction(store, (transaction) => messageDone(transaction, { ...thread, id: 'm' })),
    ['inbox COVERING INDEX inboxIds'],
  ],
  [
    'a reply sent',
    (store) =>
      inTransaction(store, (transaction) =>
        replySent(transaction, { survey: SURVEY, sequence: 1 }, { handle: null, at: now }),
      ),
    ['outbox PRIMARY KEY', 'outbox PRIMARY KEY'],
  ],
  [
    'a timer taken',
    (store) => inTransaction(store, (transaction) => takeTimer(transaction, thread, { key: 'k', due: now })),
    ['timers PRIMARY KEY'],
  ],
  [
    'a watch kept',
    (store) => inTransaction(store, (transaction) => keepWatch(transaction, sampleWatch())),
    [
      'watches PRIMARY KEY', // is it counted?
      'watches PRIMARY KEY', // deleted, and its parts with it
      ...['changes', 'queries', 'findings', 'photographs', 'determinations', 'queens', 'plants'].map(
        (part) => `${part} PRIMARY KEY`,
      ),
    ],
  ],
  // Asked by the coordinator only.
  ['what was given up', (store) => failedReplies(store, SURVEY), ['outbox PRIMARY KEY']],
];

test.each(table)('%s: found by its index', async (_, ask, by) => {
  const path = scratchPath();
  // As it is when its tables were just made, and as every later run of the program finds it.
  for (const store of [await openScratch(path), await openScratch(path)]) {
    const prepare = vi.spyOn(Connection.prototype, 'prepared');
    ask(store);
    const asked = prepare.mock.calls.map(([sql]) => sql).filter((sql) => /^(select|update|delete|insert)/.test(sql));
    prepare.mockRestore();

    const steps = asked.flatMap((sql) => {
      const places: Record<string, number> = Object.fromEntries(
        [...sql.matchAll(/@(\w+)/g)].map((found) => [found[1]!, 1]),
      );
      return store.prepared(`explain query plan ${sql}`).all(places) as { detail: string }[];
    });
    const found = steps.flatMap(({ detail }) => {
      const step = /^(?<way>SEARCH|SCAN) (?<table>\w+)(?: USING (?<index>[\w ]+?))?(?: \(|$)/.exec(detail)?.groups;
      return step ? [[step.way === 'SCAN' ? 'all of' : '', step.table, step.index].filter(Boolean).join(' ')] : [];
    });
    expect(found).toEqual(by);
  }
});
