/** The program as a whole: what `talk` holds, keeps and survives. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import type { Watch } from '../../shared/record.js';
import { newFolder, run, Talk, type Said } from './program.js';

const NOW = ['--now', '2026-05-06T18:30'];
const SAID = [
  'yes',
  'today 2:10 to 2:25 pm',
  'Otter Lane allotment',
  'no',
  '19, sunny, calm',
  'yes',
  '12 by 8 feet, garden',
  'Virginia bluebells, dandelion 15',
  'about 120',
  '3',
  '2 bimaculatus on the bluebells',
  '1 impatiens on the dandelion',
  'yes',
  'Wren',
  'wren@kestrelfen.example',
] as const;

async function storedIn(data: string): Promise<Watch[]> {
  const { stdout, code } = await run(['watches', '--json', '--data', data]);
  expect(code).toBe(0);
  return JSON.parse(stdout) as Watch[];
}

/** Two runs have ids of their own; everything else must be the same. */
const comparable = (watches: readonly Watch[]): unknown =>
  watches.map(({ id: _id, observer: _observer, ...rest }) => rest);

describe('talk --jsonl', () => {
  test('gives one line before any input and one for each line, and stores the watch', async () => {
    const data = newFolder();
    const input = SAID.map((text) => JSON.stringify({ text })).join('\n');
    const { stdout, stderr, code } = await run(['talk', '--jsonl', ...NOW, '--data', data], `${input}\n`);
    expect({ stderr, code }).toEqual({ stderr: '', code: 0 });
    const lines = stdout
      .trimEnd()
      .split('\n')
      .map((line) => JSON.parse(line) as Said);
    expect(lines).toHaveLength(SAID.length + 1);
    for (const line of lines) expect(Object.keys(line)).toEqual(['replies', 'asking', 'offer', 'stored']);
    expect(lines.map(({ asking }) => asking?.fields.join('+') ?? null)).toEqual([
      'consent',
      'date+times',
      'place',
      'private',
      'temperature+sky+wind',
      'temperature',
      'patch+habitat',
      'plants',
      'flowers',
      'tally',
      'tally',
      'tally',
      'confirm',
      'name',
      'mail',
      'confirm', // whether the name may be published
    ]);
    expect(lines.map(({ stored }) => stored).filter((stored) => stored !== null)).toEqual([1]);
    expect(await storedIn(data)).toMatchObject([{ number: 1, status: 'confirmed', total: 3, via: 'terminal' }]);
    const receipts = readdirSync(join(data, 'mail'));
    expect(receipts).toHaveLength(1);
    expect(readFileSync(join(data, 'mail', receipts[0]!), 'utf8')).toContain('\r\nTo: wren@kestrelfen.example\r\n');
  });

  test('a line that is no such object is answered like any other', async () => {
    const { stdout, code } = await run(
      ['talk', '--jsonl', ...NOW, '--data', newFolder()],
      'nonsense\n{"texts": "hi"}\n{"text": "yes"}\n',
    );
    const lines = stdout
      .trimEnd()
      .split('\n')
      .map((line) => JSON.parse(line) as Said);
    expect(code).toBe(0);
    expect(lines).toHaveLength(4);
    expect(lines[1]?.replies[0]).toMatch(/not understood.*\{"text"/);
    expect(lines[3]?.asking?.fields).toEqual(['date', 'times']);
  });

  test('killed after any message, it goes on where it was: the record is that of the unbroken run', async () => {
    const whole = newFolder();
    await run(
      ['talk', '--jsonl', ...NOW, '--data', whole],
      SAID.map((text) => `${JSON.stringify({ text })}\n`).join(''),
    );
    const expected = comparable(await storedIn(whole));

    const broken = newFolder();
    for (const text of SAID) {
      const talk = new Talk([...NOW, '--data', broken]);
      await talk.next();
      await talk.send({ text });
      await talk.kill();
    }
    expect(comparable(await storedIn(broken))).toEqual(expected);
  }, 120_000);

  test('killed in the middle of a message, the message is taken whole or not at all', async () => {
    const data = newFolder();
    for (const text of SAID) {
      for (let tries = 0; ; tries++) {
        const talk = new Talk([...NOW, '--data', data]);
        const before = await talk.next();
        const answer = talk.send({ text });
        answer.catch(() => undefined);
        if (tries === 0) {
          await talk.kill();
          const again = new Talk([...NOW, '--data', data]);
          const after = await again.next();
          await again.kill();
          // it was taken before the kill: asking something else now
          if (JSON.stringify(after.asking) !== JSON.stringify(before.asking)) break;
          continue;
        }
        await answer;
        await talk.end();
        break;
      }
    }
    expect(await storedIn(data)).toMatchObject([
      { status: 'confirmed', total: 3, plants: [{ flowers: { value: 120 } }, { flowers: { value: 15 } }] },
    ]);
    // some twenty programs are started: one minute, and twice that where the machine is busy
  }, 300_000);
});

describe('plain talk', () => {
  test('with standard input that is no terminal takes each line as a message', async () => {
    const data = newFolder();
    const { stdout, code } = await run(['talk', ...NOW, '--data', data], `${SAID.join('\n')}\n`);
    expect(code).toBe(0);
    expect(stdout).toMatch(/Stored as watch 1/);
    expect(await storedIn(data)).toHaveLength(1);
  });
});

describe('words that do not fit', () => {
  const table: [args: string[], said: RegExp][] = [
    [['talk', '--now', 'yesterday'], /--now yesterday.*2026-05-06T18:30/],
    [['talk', '--loud'], /--loud.*Usage: queenpost talk/],
    [['dance'], /"dance".*talk, serve, read, watches, season, export, import, publish, demo/],
    [['read', 'mood'], /"mood".*date, times/],
    [['read', 'date', '--today', 'May'], /--today May.*2026-05-06/],
    [['watches', '--data', '/nowhere/at/all'], /No watches are stored in/],
    [['talk', '--survey', '/nowhere/survey.yaml'], /\/nowhere\/survey.yaml: cannot be read/],
  ];
  test.each(table)('%j is one sentence on standard error', async (args, said) => {
    const { stdout, stderr, code } = await run(args);
    expect(stdout).toBe('');
    expect(stderr.trimEnd().split('\n')).toHaveLength(1);
    expect(stderr).toMatch(said);
    expect(code).toBe(1);
  });
});
