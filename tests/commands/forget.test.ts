/** What people may ask about their own data: all of it as a file, and to be forgotten without a trace. */
import { existsSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import type { Watch } from '../../shared/record.js';
import { newFolder, run, type Said } from './program.js';

const NOW = ['--now', '2026-05-06T18:30'];
/** The smallest file that begins as a JPEG does. */
const PICTURE = Buffer.from([0xff, 0xd8, 0xff, 0xe0, 1, 2, 3, 4]);

/** Words that lead to Wren and to nobody else. */
const PERSONAL = [
  'Wrenna',
  'wrenna@kestrelfen.example',
  'Marlgate',
  '43.51234',
  '90.64321',
  'kitchen window',
  'wrenna-thread',
];

const watchOf = (place: string): string[] => [
  'today 2:10 to 2:25 pm',
  place,
  '66 F, sunny, calm',
  '12 by 8 feet, meadow',
  'phlox 40',
  '2 impatiens',
];

const SAID = [
  'yes',
  ...watchOf('43.51234, -90.64321 my garden in Marlgate').flatMap((text, at) => (at === 1 ? [text, 'yes'] : [text])),
  'note: seen from the kitchen window',
  'yes',
  'Wrenna',
  'wrenna@kestrelfen.example',
];

async function talk(data: string, person: string, inputs: readonly object[]): Promise<Said[]> {
  const input = inputs.map((one) => JSON.stringify(one)).join('\n');
  const { stdout, stderr, code } = await run(
    ['talk', '--jsonl', ...NOW, '--person', person, '--data', data],
    `${input}\n`,
  );
  expect({ stderr, code }).toEqual({ stderr: '', code: 0 });
  return stdout
    .trimEnd()
    .split('\n')
    .map((line) => JSON.parse(line) as Said);
}

/** Every file below a folder. */
const files = (folder: string): string[] =>
  readdirSync(folder).flatMap((name) => {
    const path = join(folder, name);
    return statSync(path).isDirectory() ? files(path) : [path];
  });

/** Which of the words stand in which file, its name included. */
const traces = (data: string, words: readonly string[]): string[] =>
  files(data).flatMap((path) => {
    const text = `${path.slice(data.length)}\n${readFileSync(path).toString('latin1')}`;
    return words.filter((word) => text.includes(word)).map((word) => `${word} in ${path.slice(data.length)}`);
  });

const watchesIn = async (data: string): Promise<Watch[]> =>
  JSON.parse((await run(['watches', '--json', '--data', data])).stdout) as Watch[];

test('who asks to be forgotten leaves no word behind, and the watch stays', async () => {
  const data = newFolder();
  const picture = join(newFolder(), 'queen.jpg');
  writeFileSync(picture, PICTURE);
  const texts = SAID.map((text) => ({ text }));
  await talk(data, 'wrenna-thread', [...texts, { photo: picture }, { text: 'yes' }]);
  const [before] = await watchesIn(data);
  expect(before).toMatchObject({
    status: 'confirmed',
    remark: 'seen from the kitchen window',
    place: { private: true },
  });
  for (const word of PERSONAL) expect(traces(data, [word]), word).not.toEqual([]);
  expect(readdirSync(join(data, 'mail'))).toHaveLength(1);

  const said = await talk(data, 'wrenna-thread', [{ text: 'forget me' }, { text: 'yes' }]);
  expect(said.at(-1)?.replies).toEqual([
    'I have forgotten you. Thank you for your watches; you are welcome back at any time.',
  ]);
  expect(traces(data, [...PERSONAL, before!.observer])).toEqual([]);
  expect(readdirSync(join(data, 'mail'))).toEqual([]);
  expect(existsSync(join(data, 'photos')) ? readdirSync(join(data, 'photos')) : []).toEqual([]);

  const [after] = await watchesIn(data);
  expect(after).toMatchObject({
    number: 1,
    status: 'confirmed',
    date: '2026-05-06',
    temperature: { celsius: 18.9 },
    total: 2,
    remark: null,
    asTyped: {},
    // the centre of its tenth of a degree
    place: { latitude: 43.55, longitude: -90.65, words: '', private: true },
    queens: [{ bee: 'Bombus impatiens', count: 2 }],
  });
  expect(after?.place?.uncertaintyMetres).toBeGreaterThan(6000);
});

test('somebody who was forgotten is a stranger again, and others are not touched', async () => {
  const data = newFolder();
  const other = [...SAID.slice(0, -2), 'Ansel', 'ansel@kestrelfen.example'];
  await talk(
    data,
    'ansel',
    other.map((text) => ({ text })),
  );
  await talk(
    data,
    'wrenna-thread',
    [...SAID, 'forget me', 'yes'].map((text) => ({ text })),
  );
  const said = await talk(data, 'wrenna-thread', [{ text: 'hello' }]);
  expect(said.at(-1)?.asking?.fields).toEqual(['consent']);
  const watches = await watchesIn(data);
  expect(watches.map(({ place }) => place?.latitude)).toEqual([43.51234, 43.55]);
  expect(traces(data, ['ansel@kestrelfen.example'])).not.toEqual([]);
  expect(readdirSync(join(data, 'mail'))).toHaveLength(1);
});

test('anything but a yes leaves all as it is', async () => {
  const data = newFolder();
  const said = await talk(
    data,
    'wrenna-thread',
    [...SAID, 'forget me', 'wait, no'].map((text) => ({ text })),
  );
  expect(said.at(-1)?.replies[0]).toContain('Then I leave everything as it is.');
  expect(traces(data, ['wrenna@kestrelfen.example'])).not.toEqual([]);
});

test('all that is kept comes as a file, after a second yes', async () => {
  const data = newFolder();
  const said = await talk(
    data,
    'wrenna-thread',
    [...SAID, 'what do you keep about me?', 'yes'].map((text) => ({ text })),
  );
  expect(said.at(-2)?.replies[0]).toMatch(/Yes or no\.$/);
  const [sentence, path] = said.at(-1)?.replies ?? [];
  expect(sentence).toBe('Here is everything I keep about you. It is for you alone.');
  expect(statSync(path!).mode & 0o777).toBe(0o600);
  const all = JSON.parse(readFileSync(path!, 'utf8')) as Record<string, unknown[]>;
  expect(Object.keys(all)).toEqual(['person', 'places', 'watches', 'messages', 'replies', 'conversation']);
  expect(all['person']).toMatchObject({ name: 'Wrenna', mail: 'wrenna@kestrelfen.example' });
  expect(all['places']).toHaveLength(1);
  expect(all['watches']).toHaveLength(1);
  expect(all['messages']?.length).toBeGreaterThan(SAID.length);
  expect(JSON.stringify(all['replies'])).toContain('Is something wrong?'); // the receipt

  // it goes with everything else
  await talk(data, 'wrenna-thread', [{ text: 'forget me' }, { text: 'yes' }]);
  expect(traces(data, PERSONAL)).toEqual([]);
});

test('an address that two people gave leads to the mails of neither for the other', async () => {
  const data = newFolder();
  await talk(
    data,
    'wrenna-thread',
    SAID.map((text) => ({ text })),
  );
  // claims the same address, and asks for everything
  const claims = [...SAID.slice(0, -2), 'Ansel', 'wrenna@kestrelfen.example', 'my data', 'yes'];
  const said = await talk(
    data,
    'ansel',
    claims.map((text) => ({ text: text.replace('Marlgate', 'Otterby') })),
  );
  const given = readFileSync(said.at(-1)!.replies[1]!, 'utf8');
  expect(given).toContain('Otterby');
  expect(given).not.toMatch(/Wrenna|Marlgate/);

  await talk(data, 'ansel', [{ text: 'forget me' }, { text: 'yes' }]);
  expect(traces(data, ['Otterby', 'Ansel'])).toEqual([]);
  const [left, ...others] = readdirSync(join(data, 'mail'));
  expect(others).toEqual([]);
  expect(readFileSync(join(data, 'mail', left!), 'utf8')).toContain('Wrenna');
});
