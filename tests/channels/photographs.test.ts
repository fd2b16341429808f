/** What a photograph is told by: its bytes and its EXIF data. */
import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { keepPhotograph } from '../../src/channels/photographs.js';
import { photograph } from './a-photograph.js';

const folder = mkdtempSync(join(tmpdir(), 'queenpost-photos-'));
afterAll(() => rmSync(folder, { recursive: true }));
const kept = (bytes: Buffer) => keepPhotograph(bytes, { folder, timeZone: 'America/Chicago' });

const table: [what: string, bytes: Buffer, type: string | null, takenAt: string | null][] = [
  [
    'a camera with its zone',
    photograph({ taken: '2026:04:22 18:36:12', offset: '+02:00' }),
    'image/jpeg',
    '2026-04-22T16:36:12Z',
  ],
  [
    'a camera without one: the survey’s',
    photograph({ taken: '2026:04:22 11:36:12' }),
    'image/jpeg',
    '2026-04-22T16:36:12Z',
  ],
  ['a clock that was never set', photograph({ taken: '0000:00:00 00:00:00' }), 'image/jpeg', null],
  ['no clock', photograph({}), 'image/jpeg', null],
  ['EXIF data cut short', photograph({ taken: '2026:04:22 11:36:12' }).subarray(0, 40), 'image/jpeg', null],
  ['PNG', Buffer.from('\x89PNG\r\n\x1a\n....', 'latin1'), 'image/png', null],
  ['WebP', Buffer.from('RIFF....WEBPVP8 ', 'latin1'), 'image/webp', null],
  ['HEIC', Buffer.from('....ftypheic....', 'latin1'), 'image/heic', null],
  ['a moving picture', Buffer.from('....ftypisom....', 'latin1'), null, null],
  ['a page', Buffer.from('<html>'), null, null],
  ['nothing', Buffer.alloc(0), null, null],
];
test.each(table)('%s', async (_what, bytes, type, takenAt) => {
  const content = await kept(bytes);
  expect(content).toEqual(
    type === null ? null : { kind: 'photo', type, takenAt, sha256: expect.stringMatching(/^[0-9a-f]{64}$/) as string },
  );
});

test('the same bytes are kept once, and nothing unfinished is left', async () => {
  const before = readdirSync(folder);
  await kept(photograph({}));
  expect(readdirSync(folder)).toEqual(before);
  expect(before.filter((name) => name.endsWith('.part'))).toEqual([]);
});
