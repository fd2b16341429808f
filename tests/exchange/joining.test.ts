/** One person in two threads: joined by a code that was mailed, never by a claim; nobody learns who has an address. */
import { Temporal } from 'temporal-polyfill';
import { expect, test } from 'vitest';
import { v7 } from 'uuid';
import type { Message } from '../../shared/message.js';
import type { Person } from '../../shared/person.js';
import { codeSaid, dayAndPlaceOf, newThread, step } from '../../src/dialog/index.js';
import { openExchange } from '../../src/exchange/index.js';
import {
  codeOf,
  everythingOf,
  keepPerson,
  keepPlace,
  keepWatch,
  lastWatchesOf,
  personOf,
  placesOf,
  replyFailed,
  replySent,
  waitingReplies,
  type Store,
} from '../../src/store/index.js';
import { consented, messageOf } from '../bench/measures/talking.js';
import { survey as demo } from '../demo-survey.js';
import { sampleWatch, uuid } from '../store/sample.js';
import { openScratch } from '../store/scratch.js';

const server = { host: '127.0.0.1', port: 2525, security: 'none' } as const;
const survey = {
  ...demo,
  settings: { ...demo.settings, mail: { from: 'queenpost@kestrelfen.example', server } },
};
const SURVEY = survey.settings.key;
const MAIL = 'wren@kestrelfen.example';
const WRONG = 'That code is not right, or its half hour is over. “New code” asks for another.';
const thread = (person: string) => ({ survey: SURVEY, channel: 'bench', person });

/** People who have told a watch each, over one exchange whose clock is moved by hand; codes are 000001, 000002 … */
class Threads {
  #now = Temporal.Instant.from('2026-05-06T23:30:00Z');
  #codes = 0;
  readonly exchange;

  constructor(
    readonly store: Store,
    settings: typeof demo.settings = survey.settings,
  ) {
    this.exchange = openExchange({
      store,
      survey: { ...survey, settings },
      conversation: { newThread, step, codeSaid, dayAndPlaceOf },
      now: () => this.now,
      newId: () => v7(),
      newCode: () => String((this.#codes += 1)).padStart(6, '0'),
    });
  }
  get now(): string {
    return this.#now.toString();
  }
  wait(minutes: number): void {
    this.#now = this.#now.add({ minutes });
  }
  /** Somebody with one stored watch and one saved place. */
  knows(person: string, number: number, more: Partial<Person> = {}): void {
    const observer = uuid(100 + number);
    this.store.writing((transaction) => {
      keepPerson(transaction, { ...consented(person, observer), declined: [], ...more });
      keepWatch(transaction, sampleWatch({ number, observer }));
      keepPlace(transaction, {
        survey: SURVEY,
        observer,
        key: `garden of ${person}`,
        words: `garden of ${person}`,
        latitude: 43.1,
        longitude: -89.4,
        uncertaintyMetres: null,
        site: null,
        private: true,
        lastUsed: '2026-05-01T10:00:00Z',
      });
    });
  }
  async say(person: string, text: string, more: Partial<Message> = {}): Promise<string[]> {
    const message = { ...messageOf(person, { kind: 'text', text }), at: this.now, ...more };
    const { replies, failures } = await this.exchange.receive(message);
    expect(failures).toEqual([]);
    return replies.filter(({ receipt }) => receipt === undefined).map((reply) => reply.text);
  }
  /** Codes that wait to be mailed, by address; they go out, as it were. */
  mailed(): [address: string, code: string][] {
    const codes: [string, string][] = [];
    for (;;) {
      const waiting = waitingReplies(this.store, { survey: SURVEY, channel: 'mail', now: this.now, most: 50 });
      if (waiting.length === 0) return codes;
      this.store.writing((transaction) => {
        for (const { person, reply, sequence } of waiting) {
          const code = /write (\d{6}) /.exec(reply.text)?.[1];
          if (code !== undefined) codes.push([person, code]);
          replySent(transaction, { survey: SURVEY, sequence }, { handle: null, at: this.now });
        }
      });
    }
  }
  key = (person: string): string | undefined => personOf(this.store, thread(person))?.key;
}

/** Wren has given her address on the phone, and gives it again in a second thread. */
async function twoThreads(more: Partial<Person> = {}): Promise<Threads> {
  const threads = new Threads(await openScratch());
  threads.knows('phone', 1, { mail: MAIL, ...more });
  threads.knows('terminal', 2, { name: null, declined: ['name', 'reminders'] });
  await threads.say('terminal', 'join my threads');
  await threads.say('terminal', 'Wren@kestrelfen.example');
  return threads;
}

test('typed in both threads the code makes them one: watches, places, progress, name, licence', async () => {
  const threads = await twoThreads({ photographLicence: 'CC-BY-4.0', declined: ['licence'] });
  const [[address, code], ...others] = threads.mailed() as [[string, string]];
  expect([address, code, others]).toEqual(['Wren@kestrelfen.example', '000001', []]);
  // proven here, which tells nothing of the other thread and gives nothing away
  expect(await threads.say('terminal', code)).toEqual([
    expect.stringMatching(/^That is the code\. Now write it in your other thread too/) as string,
  ]);
  expect(threads.key('terminal')).not.toBe(threads.key('phone'));
  expect(await threads.say('phone', `the code is ${code}`)).toEqual([
    'Your two threads are one now, with the same watches, places and reminders.',
  ]);
  const key = threads.key('phone')!;
  expect(threads.key('terminal')).toBe(key);
  expect(await threads.say('terminal', code)).toEqual([WRONG]); // it has done its work
  const [second, first] = lastWatchesOf(threads.store, { survey: SURVEY, observer: key, most: 9 });
  expect([second?.number, first?.number]).toEqual([2, 1]);
  const moved = [first, second].find((watch) => watch?.history.some(({ path }) => path === '/observer'));
  expect(moved?.history.at(-1)).toMatchObject({ path: '/observer', to: key, by: key, role: 'observer' });
  expect(
    placesOf(threads.store, { survey: SURVEY, observer: key, most: 9 })
      .map(({ words }) => words)
      .sort(),
  ).toEqual(['garden of phone', 'garden of terminal']);
  for (const person of ['phone', 'terminal']) {
    expect(personOf(threads.store, thread(person))).toMatchObject({
      name: 'Wren',
      mailProven: true,
      photographLicence: 'CC-BY-4.0',
    });
    expect(await threads.say(person, 'what have you got')).toEqual([expect.stringMatching(/have 2 stored watches/)]);
    expect((await threads.say(person, 'fix watch 1'))[0]).toContain('I opened watch 1 again');
  }
});

test('the thread that was there before is told', async () => {
  const threads = await twoThreads();
  const code = threads.mailed()[0]![1];
  await threads.say('phone', code);
  await threads.say('terminal', code);
  const everything = JSON.stringify(everythingOf(threads.store, thread('phone')));
  expect(everything).toContain('Another thread that proved it reads your mail is one with this one now');
});

test('who has proven the address once need not do it again', async () => {
  const threads = await twoThreads();
  const code = threads.mailed()[0]![1];
  await threads.say('phone', code);
  await threads.say('terminal', code);
  threads.knows('third', 3, { mail: MAIL, name: null });
  await threads.say('third', 'new code');
  const [, again] = threads.mailed()[0]!;
  expect(again).not.toBe(code);
  expect(await threads.say('third', again)).toEqual([expect.stringMatching(/are one now/)]);
  expect(threads.key('third')).toBe(threads.key('phone'));
});

test('a claim gives nothing: a squatter on the address gets at nothing of its owner, nor the owner at theirs', async () => {
  const threads = new Threads(await openScratch());
  threads.knows('squatter', 1, { mail: MAIL });
  threads.knows('owner', 2, { mail: MAIL });
  await threads.say('owner', 'new code');
  const code = threads.mailed()[0]![1];
  await threads.say('owner', code);
  const seen = JSON.stringify(everythingOf(threads.store, thread('squatter')));
  expect(seen).not.toContain('garden of owner');
  expect(JSON.stringify(everythingOf(threads.store, thread('owner')))).not.toContain('garden of squatter');
  expect(threads.key('owner')).not.toBe(threads.key('squatter'));
});

/** What somebody is told who gives an address and tries codes. */
async function answersTo(mail: string): Promise<string[][]> {
  const threads = new Threads(await openScratch());
  threads.knows('phone', 1, { mail: MAIL });
  threads.knows('curious', 2, { name: null });
  const said: string[][] = [];
  for (const text of ['join my threads', mail, '999999', 'skip', 'new code', '999998', 'my data', 'yes'])
    said.push((await threads.say('curious', text)).map((line) => line.replaceAll(mail, 'ADDRESS')));
  return said;
}
test('the answers are the same whether an address is known or not', async () => {
  const known = await answersTo(MAIL);
  expect(known).toEqual(await answersTo('nobody@kestrelfen.example'));
  expect(known[2]).toEqual([expect.stringContaining(WRONG)]);
  expect(known[4]).toEqual([expect.stringContaining('If ADDRESS is the address of another thread of yours too')]);
});

test('what is given as kept says nothing of a code that was mailed to an address only claimed', async () => {
  const threads = await twoThreads();
  expect(everythingOf(threads.store, thread('terminal'))).not.toHaveProperty('code');
  await threads.say('terminal', threads.mailed()[0]![1]);
  expect(everythingOf(threads.store, thread('terminal'))).toHaveProperty('code');
});

test('a code is good for thirty minutes', async () => {
  for (const [minutes, isGood] of [
    [29, true],
    [30, false],
  ] as const) {
    const threads = await twoThreads();
    const code = threads.mailed()[0]![1];
    threads.wait(minutes);
    expect((await threads.say('terminal', code))[0]).toMatch(isGood ? /^That is the code/ : /^That code is not right/);
  }
});

test('a code has three tries, whoever types; the right one is none', async () => {
  const threads = await twoThreads();
  const code = threads.mailed()[0]![1];
  await threads.say('terminal', '111111');
  await threads.say('phone', '111111');
  expect((await threads.say('terminal', code))[0]).toMatch(/^That is the code/);
  expect(await threads.say('terminal', '111111')).toEqual([WRONG]);
  expect(await threads.say('phone', code)).toEqual([WRONG]);
  expect(threads.key('terminal')).not.toBe(threads.key('phone'));
});

test('a new code ends the one before, and three a day go to an address, whoever asks', async () => {
  const threads = await twoThreads();
  await threads.say('terminal', 'new code');
  await threads.say('phone', 'new code');
  await threads.say('terminal', 'new code');
  const codes = threads.mailed().map(([, code]) => code);
  expect(codes.sort()).toEqual(['000001', '000002', '000003']);
  expect(await threads.say('terminal', codes[0]!)).toEqual([WRONG]);
  threads.wait(24 * 60);
  await threads.say('terminal', 'new code');
  expect(threads.mailed()).toHaveLength(1);
});

test('to be forgotten does not give more tries or mails', async () => {
  const threads = await twoThreads();
  threads.mailed();
  await threads.say('terminal', '111111');
  await threads.say('terminal', 'forget me');
  await threads.say('terminal', 'yes');
  expect(codeOf(threads.store, { survey: SURVEY, mail: MAIL })).toMatchObject({ triesLeft: 2, sent: 1 });
  await threads.say('phone', 'forget me');
  await threads.say('phone', 'yes');
  // nobody has that address any more
  expect(codeOf(threads.store, { survey: SURVEY, mail: MAIL })).toBeNull();
});

test('the code is kept nowhere once it was mailed, or could not be', async () => {
  const threads = await twoThreads();
  const texts = () => JSON.stringify(threads.store.prepared('select reply from outbox').all());
  expect(texts()).toContain('000001');
  expect(JSON.stringify(codeOf(threads.store, { survey: SURVEY, mail: MAIL }))).not.toContain('000001');
  threads.mailed();
  expect(texts()).not.toContain('000001');
  await threads.say('terminal', 'new code');
  const [waiting] = waitingReplies(threads.store, { survey: SURVEY, channel: 'mail', now: threads.now, most: 9 });
  threads.store.writing((transaction) =>
    replyFailed(transaction, { survey: SURVEY, sequence: waiting!.sequence }, { error: 'refused', at: threads.now }),
  );
  expect(texts()).not.toContain('000002');
});

test('joined, to be forgotten is to be forgotten in both threads, without a trace of either key', async () => {
  const threads = await twoThreads();
  const keys = [threads.key('phone')!, threads.key('terminal')!];
  const code = threads.mailed()[0]![1];
  await threads.say('phone', code);
  await threads.say('terminal', code);
  const given = everythingOf(threads.store, thread('terminal'));
  expect(given['otherThreads']).toMatchObject([{ person: { person: 'phone' }, messages: [{ person: 'phone' }] }]);
  await threads.say('terminal', 'forget me');
  await threads.say('terminal', 'yes');
  threads.mailed();
  const tables = ['inbox', 'outbox', 'threads', 'timers', 'persons', 'places', 'codes', 'watches', 'changes'];
  const left = tables.map((table) => JSON.stringify(threads.store.prepared(`select * from ${table}`).all())).join('\n');
  for (const trace of [...keys, 'garden of', 'wren@', 'Wren@', '"phone"']) expect(left).not.toContain(trace);
  expect(threads.store.prepared('select count(*) as watches from watches').all()).toEqual([{ watches: 2 }]);
});

test('of two who are reminded one is, and who asked in the other thread is reminded there', async () => {
  const threads = new Threads(await openScratch());
  threads.knows('phone', 1, { mail: MAIL });
  threads.knows('terminal', 2, { mail: MAIL });
  await threads.say('phone', 'remind me');
  await threads.say('terminal', 'remind me');
  const reminded = () => threads.store.prepared(`select person from timers where key = 'remind'`).all();
  expect(reminded()).toHaveLength(2);
  await threads.say('terminal', 'new code');
  const code = threads.mailed()[0]![1];
  await threads.say('phone', code);
  await threads.say('terminal', code);
  expect(reminded()).toEqual([{ person: 'phone' }]);
  await threads.say('terminal', 'remind me');
  expect(reminded()).toEqual([{ person: 'terminal' }]);
  await threads.say('phone', 'no reminders');
  expect(personOf(threads.store, thread('terminal'))?.reminders).toBe(false);
});

test('who kept their photographs back in one thread keeps them back in both', async () => {
  const threads = await twoThreads({ photographLicence: 'CC-BY-4.0', declined: ['licence'] });
  await threads.say('terminal', 'do not publish my photos');
  const code = threads.mailed()[0]![1];
  await threads.say('terminal', code);
  await threads.say('phone', code);
  expect(personOf(threads.store, thread('phone'))?.photographLicence).toBeNull();
});

test('a watch that was open for mending while threads were joined is stored under the one key, and says so', async () => {
  const threads = await twoThreads();
  const code = threads.mailed()[0]![1];
  await threads.say('phone', code);
  await threads.say('terminal', 'fix my last watch');
  await threads.say('terminal', 'note: it rained before');
  expect((await threads.say('terminal', code))[0]).toMatch(/are one now/);
  await threads.say('terminal', 'yes');
  const key = threads.key('phone')!;
  const watch = lastWatchesOf(threads.store, { survey: SURVEY, observer: key, most: 9 }).find(
    ({ number }) => number === 2,
  );
  expect(watch).toMatchObject({ observer: key, remark: 'it rained before' });
  expect(watch?.history.map(({ path }) => path)).toEqual(expect.arrayContaining(['/observer', '/remark']));
});

test('without a mail server all is as it was: no code, and six digits are what they are', async () => {
  const threads = new Threads(await openScratch(), demo.settings);
  threads.knows('phone', 1, { mail: MAIL });
  threads.knows('terminal', 2, { mail: MAIL });
  expect((await threads.say('terminal', 'new code'))[0]).not.toMatch(/code/);
  expect((await threads.say('terminal', '111111')).join()).not.toMatch(/code/);
  expect(threads.mailed()).toEqual([]);
});

test('six digits that answer a question are its answer, and are a try all the same', async () => {
  const threads = await twoThreads();
  threads.mailed();
  for (const text of ['today 2:10 to 2:25 pm', 'Fen Boardwalk', '71 F, sunny, calm', '12 by 8 feet', 'willow'])
    await threads.say('terminal', text);
  await threads.say('terminal', '100000');
  const state = JSON.stringify(everythingOf(threads.store, thread('terminal'))['conversation']);
  expect(state).toContain('"value":100000');
  expect(codeOf(threads.store, { survey: SURVEY, mail: MAIL })?.triesLeft).toBe(2);
});

const table: [said: string, code: string | null][] = [
  ['123456', '123456'],
  [' 123456. ', '123456'],
  ['the code is 123456', '123456'],
  ['Code: 123 456', '123456'],
  ['12345', null],
  ['1234567', null],
  ['100 200', null], // two numbers
  ['120-150', null], // from the one to the other
  ['phlox 123456', null],
];
test.each(table)('"%s" is the code %s', (said, code) => {
  const message = messageOf('wren', { kind: 'text', text: said });
  expect(codeSaid(message, survey)).toBe(code);
  expect(codeSaid({ ...message, proven: false }, survey)).toBeNull();
});
