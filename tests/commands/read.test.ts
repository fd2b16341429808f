/** `read`: one line in, one line out, in order, whatever the line. */
import { expect, test } from 'vitest';
import { run } from './program.js';

interface Printed {
  readonly text: string;
  readonly state: string;
  readonly value: unknown;
  readonly offer: unknown;
  readonly ask: string | null;
}

async function read(
  kind: string,
  lines: readonly string[],
  options: readonly string[] = ['--jsonl'],
): Promise<Printed[]> {
  const { stdout, stderr, code } = await run(
    ['read', kind, '--today', '2026-05-06', ...options],
    `${lines.join('\n')}\n`,
  );
  expect({ stderr, code }).toEqual({ stderr: '', code: 0 });
  return stdout
    .trimEnd()
    .split('\n')
    .map((line) => JSON.parse(line) as Printed);
}

test('each line gives one line with the same five keys, empty and malformed ones too', async () => {
  const lines = [
    '{"text": "62 F"}',
    '',
    'nonsense',
    '{"text": 7}',
    '{"text": "18", "temperatureUnit": "C", "why": "passed over"}',
    '{"text": "18"}',
  ];
  const printed = await read('temperature', lines);
  for (const one of printed) expect(Object.keys(one)).toEqual(['text', 'state', 'value', 'offer', 'ask']);
  expect(printed.map(({ state, value, offer, ask }) => [state, value, offer, ask])).toEqual([
    ['sure', { celsius: 16.7 }, null, null],
    ['none', null, null, 'malformed-line'],
    ['none', null, null, 'malformed-line'],
    ['none', null, null, 'malformed-line'],
    ['sure', { celsius: 18 }, null, null],
    ['unsure', null, [{ celsius: 18 }], 'temperature-unit'],
  ]);
});

test('plain lines are texts', async () => {
  expect(await read('date', ['yesterday', ''], [])).toMatchObject([
    { text: 'yesterday', state: 'sure', value: '2026-05-05' },
    { text: '', state: 'none' },
  ]);
});

test('"today" in a line is its own evening', async () => {
  expect(await read('date', ['{"text": "today", "today": "2026-04-20"}'])).toMatchObject([{ value: '2026-04-20' }]);
});

test('a note has its sure fields in any state, and offers by field', async () => {
  const [note] = await read('note', [
    '{"text": "yesterday noon to 12:15, 18 degrees, sunny, bluebells 40, none seen"}',
  ]);
  expect(note).toMatchObject({
    state: 'unsure',
    value: { date: '2026-05-05', times: { start: '12:00', end: '12:15' }, sky: { cloud: 'clear', rain: false } },
    offer: { temperature: [{ celsius: 18 }] },
  });
});

test('a tally has names as strings and nothing else beside them', async () => {
  const [tally] = await read('tally', ['{"text": "2 imp", "watched": ["Mertensia virginica"]}']);
  expect(tally?.value).toEqual([{ count: 2, bee: 'Bombus impatiens', plant: 'Mertensia virginica' }]);
});
