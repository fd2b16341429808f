/**
 * The part of a watch's record that the season's figures are made of: who watched when, where and how long, which
 * plants, and which queens under which names. A whole `Watch` is one too, so what else it has is no mistake.
 */
import { z } from 'zod';
import { localDate } from './record.js';
import { CASTES, COUNTING_UNITS, ROLES, STATUSES } from './vocabularies.js';

// A million of these are read for one table, so ranges are not looked at again: the record's schema let them through
// when they were stored, and the columns hold numbers only.
const number = z.number();
const text = z.string();

const determinationCounts = z.object({
  taxa: z.array(text),
  count: number,
  caste: z.enum(CASTES).nullable(),
  role: z.enum(ROLES),
  at: text,
});

const queensCounts = z.object({
  row: number,
  plant: number,
  bee: text.nullable(),
  count: number,
  seenBefore: number,
  caste: z.enum(CASTES).nullable(),
  determinations: z.array(determinationCounts),
});

const plantCounts = z.object({
  plant: number,
  name: text.nullable(),
  asTyped: text,
  unit: z.enum(COUNTING_UNITS),
  flowers: z.object({ value: number }),
});

export const watchCountsSchema = z.object({
  number,
  observer: text,
  status: z.enum(STATUSES),
  date: localDate,
  minutes: number,
  place: z
    .object({ site: text.nullable(), latitude: number.nullable(), longitude: number.nullable(), words: text })
    .nullable(),
  temperature: z.object({ celsius: number }).nullable(),
  wind: z.object({ beaufort: number }).nullable(),
  plants: z.array(plantCounts),
  queens: z.array(queensCounts),
});

export type WatchCounts = z.infer<typeof watchCountsSchema>;
export type QueensCounts = WatchCounts['queens'][number];
export type DeterminationCounts = QueensCounts['determinations'][number];
