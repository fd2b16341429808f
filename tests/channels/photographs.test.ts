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

const AT = { latitude: 43.5121, longitude: -90.6402 };
const places: [what: string, at: Parameters<typeof photograph>[0]['at'], place: unknown][] = [
  ['west of Greenwich', AT, { ...AT, uncertaintyMetres: null }],
  ['with how far it may be off', { ...AT, errorMetres: 8.5 }, { ...AT, uncertaintyMetres: 8.5 }],
  [
    'south and east',
    { latitude: -33.85, longitude: 151.2 },
    { latitude: -33.85, longitude: 151.2, uncertaintyMetres: null },
  ],
  ['0, 0, as of a phone that did not know', { latitude: 0, longitude: 0 }, undefined],
  ['none on the earth', { latitude: 93, longitude: 10 }, undefined],
  ['none', undefined, undefined],
];
test.each(places)('its place: %s', async (_what, at, place) => {
  const content = await kept(photograph(at === undefined ? {} : { at }));
  if (place === undefined) return expect(content).not.toHaveProperty('place');
  const told = place as { latitude: number; longitude: number; uncertaintyMetres: number | null };
  expect(content).toHaveProperty('place');
  const { place: read } = content as { place: typeof told };
  expect(read.latitude).toBeCloseTo(told.latitude, 6);
  expect(read.longitude).toBeCloseTo(told.longitude, 6);
  expect(read.uncertaintyMetres).toBe(told.uncertaintyMetres);
});

test('the same bytes are kept once, and nothing unfinished is left', async () => {
  const before = readdirSync(folder);
  await kept(photograph({}));
  expect(readdirSync(folder)).toEqual(before);
  expect(before.filter((name) => name.endsWith('.part'))).toEqual([]);
});
