/** A program killed in the middle of its work has lost nothing that it acknowledged, and kept nothing by halves. */
import { writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { expect, test } from 'vitest';
import { openExchange } from '../../src/exchange/index.js';
import { threadOf, watchesOf, type Store } from '../../src/store/index.js';
import { CHILD_TIMEOUT, startChild } from '../child-program.js';
import { survey } from '../demo-survey.js';
import { SURVEY, uuid } from '../store/sample.js';
import { openScratch, scratchPath } from '../store/scratch.js';
import { echo, NOW, type EchoThread } from './echo.js';
import { BATCH, MESSAGES } from './kill-messages.js';

const column = (store: Store, sql: string) => store.prepared(sql).pluck().all().map(String);

/** Each thing that one message makes is there, or none of it. */
function whole(store: Store): string[] {
  expect(column(store, 'pragma integrity_check')).toEqual(['ok']);
  const taken = column(store, `select id from inbox where state = 'done' order by sequence`);
  expect(column(store, 'select id from inbox')).toHaveLength(taken.length);
  expect(column(store, 'select answers from outbox order by sequence')).toEqual(taken);
  const texts = new Map(
    MESSAGES.map(({ id, person, what }) => [id, { person, text: what.kind === 'text' ? what.text : '' }]),
  );
  for (let person = 0; person < 10; person += 1) {
    const own = taken.map((id) => texts.get(id)!).filter((message) => message.person === `person-${person}`);
    const thread = threadOf(store, { survey: SURVEY, channel: 'terminal', person: `person-${person}` });
    const { heard } = (thread?.state ?? { heard: [] }) as EchoThread;
    expect(heard).toEqual(own.map(({ text }) => text));
  }
  const watches = taken.filter((id) => texts.get(id)!.text.startsWith('watch'));
  expect([...watchesOf(store, SURVEY)].map(({ number }) => number)).toEqual(watches.map((_, index) => index + 1));
  return taken;
}

const table: [when: string, diesAt: string, killAfterLines: number | null][] = [
  ['in the middle of a batch', `m${BATCH * 3 + 11}`, null],
  ['in the last step of a batch', `m${BATCH * 4 - 1}`, null],
  ['from outside, at no chosen moment', 'never', 35],
];
test.each(table)(
  'killed %s',
  async (_, diesAt, killAfterLines) => {
    const path = scratchPath();
    const surveyFile = `${dirname(path)}-survey.json`;
    writeFileSync(surveyFile, JSON.stringify({ settings: survey.settings, wording: survey.wording }));
    const child = startChild(join(import.meta.dirname, 'takes-until-killed.ts'), [path, surveyFile, diesAt]);
    if (killAfterLines !== null) {
      await child.printed(killAfterLines);
      child.kill('SIGKILL');
    }
    expect(await child.ended).toBe('SIGKILL');

    const store = await openScratch(path);
    const taken = whole(store);
    expect(taken.slice(0, child.lines.length)).toEqual(child.lines); // all acknowledged, in order
    expect(taken.length % BATCH).toBe(0); // a commit is there as a whole
    if (killAfterLines === null) expect(taken).toHaveLength(BATCH * 3);

    // The channel delivers again what was not acknowledged, and more than that.
    let ids = 0;
    const newId = () => uuid((ids += 1));
    const exchange = openExchange({
      store,
      survey,
      conversation: echo(),
      now: () => NOW,
      newId,
      newCode: () => '000000',
    });
    await Promise.all(MESSAGES.map((message) => exchange.receive(message)));
    expect(whole(store)).toEqual(MESSAGES.map(({ id }) => id));
  },
  CHILD_TIMEOUT,
);
