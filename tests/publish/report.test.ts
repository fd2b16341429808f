/** The report page of the demo season. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { LAYOUTS } from '../../shared/columns.js';
import { readPackage } from '../../src/publish/package/index.js';
import { reportPage } from '../../src/publish/report/index.js';
import { seasonFigures } from '../../src/season/index.js';
import { survey } from '../demo-survey.js';

const FOLDER = join(import.meta.dirname, '..', '..', 'demo', 'season');
const texts = Object.fromEntries(LAYOUTS.map(({ file }) => [file, readFileSync(join(FOLDER, file), 'utf8')]));
let ids = 0;
const { watches } = readPackage(texts, {
  survey,
  now: '2026-07-01T00:00:00Z',
  newId: () => `00000000-0000-7000-8000-${String((ids += 1)).padStart(12, '0')}`,
  siteOf: () => null,
});
const figures = seasonFigures(watches, { survey, protocolOnly: false, seed: 1 });
const within = seasonFigures(watches, { survey, protocolOnly: true, seed: 1 });
const empty = seasonFigures([], { survey, protocolOnly: false, seed: 1 });

test('the page needs nothing from elsewhere, and comes out the same twice', async () => {
  const page = await reportPage(figures, within, survey.settings);
  expect(page).not.toMatch(/<script|NaN|undefined|(?:src|href)="|url\(|@import/);
  expect(page.match(/<h2>/g)).toHaveLength(7);
  expect(page.match(/<svg/g)).toHaveLength(4);
  expect(await reportPage(figures, within, survey.settings)).toBe(page);
});

test('the demo season is read', () => expect(watches.length).toBeGreaterThan(0));

test('its numbers are the figures', async () => {
  const page = await reportPage(figures, within, survey.settings);
  const all = figures.rates?.find(({ bee, plant }) => bee === null && plant === null);
  expect(page).toContain(`<td>${all?.queens}</td><td>${all?.minutes}</td><td>${all?.per15min?.toFixed(2)}</td>`);
});

test('watches outside the protocol are told apart', async () => {
  const page = await reportPage(figures, within, survey.settings);
  expect(within.effort.watches).toBeLessThan(figures.effort.watches);
  expect(page).toContain(`<td>within the protocol</td><td>${within.effort.watches}</td>`);
});

test('what the intervals reached in drawn seasons is quoted', async () => {
  // the least and the most of the table that DEVELOPERS.md shows
  const page = await reportPage(figures, within, survey.settings);
  expect(page).toContain('held it in 88.5 to 95.6 % of them, the last column in 33.2 to 95.3 %');
});

test('a preference is told as it was computed', async () => {
  const page = await reportPage(figures, within, survey.settings);
  const one = figures.preference?.find(({ low95 }) => low95 !== null);
  const cells = [one?.bee, one?.plant, one?.used, one?.expected.toFixed(1), one?.ratio?.toFixed(2)];
  expect(page).toContain(cells.map((cell) => `<td>${cell}</td>`).join(''));
});

test('without watches it says so', async () => {
  const page = await reportPage(empty, empty, survey.settings);
  expect(page).toContain('not enough data');
  expect(page).not.toMatch(/NaN|undefined|<svg/);
});

test('what people typed is shown, not run', async () => {
  const table = { ...figures.table, plants: ['<script>alert(1)</script>', ...figures.table.plants.slice(1)] };
  const page = await reportPage({ ...figures, table }, within, survey.settings);
  expect(page).toContain('&lt;script&gt;alert(1)&lt;/script&gt;');
  expect(page).not.toContain('<script');
});
