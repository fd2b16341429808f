/**
 * Diversity and dispersion against R's vegan and MASS on their open data sets. The values stand in `r/figures.json`; the
 * script that made them, `r/figures.R`, is run again where R is there.
 */
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import type { Watch } from '../../shared/record.js';
import { seasonFigures } from '../../src/season/index.js';
import { plantWatched, queensRow, watch } from '../a-watch.js';
import { survey } from '../demo-survey.js';

type Figures = Readonly<Record<string, readonly number[]>> & { readonly sites: readonly (readonly number[])[] };

const pathOf = (name: string): string => fileURLToPath(new URL(`r/${name}`, import.meta.url));
const recorded = JSON.parse(readFileSync(pathOf('figures.json'), 'utf8')) as Figures;
const list = (key: string): readonly number[] => recorded[key] ?? [];
const one = (key: string): number => list(key)[0] ?? NaN;

const figuresOf = (watches: Watch[]) => seasonFigures(watches, { survey, protocolOnly: false, seed: 1 });

/** A watch with so many queens of each species. */
const counted = (counts: readonly number[], more: Partial<Watch> = {}): Watch =>
  watch({
    plants: [plantWatched(1, 'A', 10)],
    queens: counts.flatMap((count, at) =>
      count === 0 ? [] : [queensRow(1, `Bombus species-${at}`, count, { row: at + 1 })],
    ),
    ...more,
  });

test('the recorded values are what R gives, where R is there', () => {
  const run = spawnSync('Rscript', [pathOf('figures.R')], { encoding: 'utf8' });
  const fresh = run.status === 0 ? (JSON.parse(run.stdout) as Figures) : recorded;
  expect(fresh).toEqual(recorded);
});

test('vegan: diversity, Chao 1 and rarefaction of one plot of trees', () => {
  const found = figuresOf([counted(list('plot1'))]).diversity;
  expect(found?.richness).toBe(93);
  expect(found?.shannon).toBeCloseTo(one('shannon'), 8);
  expect(found?.simpson).toBeCloseTo(one('simpson'), 8);
  expect(found?.hill.q2).toBeCloseTo(one('invsimpson'), 6);
  expect(found?.chao1.estimate).toBeCloseTo(one('chao1'), 6);
  expect(found?.chao1.se).toBeCloseTo(one('chao1se'), 6);
  const rarefied = (found?.rarefaction ?? []).slice(0, list('sizes').length);
  expect(rarefied.map(({ n }) => n)).toEqual(list('sizes'));
  list('rarefied').forEach((expected, at) => expect(rarefied[at]?.expected).toBeCloseTo(expected, 6));
  list('rarefiedse').forEach((se, at) => expect(rarefied[at]?.se).toBeCloseTo(se, 5));
});

test('vegan: exact accumulation over ten plots', () => {
  const found = figuresOf(recorded.sites.map((site) => counted(site))).diversity?.byWatches ?? [];
  expect(found.map(({ watches }) => watches)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10]);
  list('accumulated').forEach((expected, at) => expect(found[at]?.expected).toBeCloseTo(expected, 6));
});

test('MASS: a negative binomial of days absent from school', () => {
  const found = figuresOf(list('days').map((days) => counted([days]))).dispersion?.negativeBinomial;
  expect(found?.theta).toBeCloseTo(one('theta'), 4);
  expect(found?.per15min).toBeCloseTo(one('mean'), 4);
});

test('MASS: the same with an effort of its own for each', () => {
  const watches = list('days').map((days, at) => counted([days], { minutes: list('minutes')[at]! }));
  const found = figuresOf(watches).dispersion;
  expect(found?.negativeBinomial.theta).toBeCloseTo(one('thetaoffset'), 4);
  expect(found?.negativeBinomial.per15min).toBeCloseTo(one('rateoffset') * 15, 4);
  expect(found?.index).toBeCloseTo(one('pearson') / (list('days').length - 1), 8);
  expect(found?.p).toBe(0);
});

test('counts that are even show no overdispersion, rather than a huge θ', () => {
  const found = figuresOf([2, 2, 2, 3, 1, 2, 2, 3, 1, 2].map((count) => counted([count]))).dispersion;
  expect(found?.negativeBinomial.theta).toBeNull();
  expect(found?.p).toBeGreaterThan(0.9);
});
