/**
 * The part of a watch's record that the season's figures are made of: who watched when, where and how long, which
 * plants, and which queens under which names. A whole `Watch` is one too.
 */
import { z } from 'zod';
import { determinationSchema, placeSchema, plantWatchedSchema, queensRowSchema, watchSchema } from './record.js';

const determinationCounts = determinationSchema.pick({ taxa: true, count: true, caste: true, role: true, at: true });

const queensCounts = queensRowSchema
  .pick({ row: true, plant: true, bee: true, count: true, seenBefore: true, caste: true })
  .extend({ determinations: z.array(determinationCounts) });

const plantCounts = plantWatchedSchema
  .pick({ plant: true, name: true, asTyped: true, unit: true })
  .extend({ flowers: plantWatchedSchema.shape.flowers.pick({ value: true }) });

export const watchCountsSchema = watchSchema
  .pick({ number: true, observer: true, status: true, date: true, minutes: true, temperature: true, wind: true })
  .extend({
    place: placeSchema.pick({ site: true, latitude: true, longitude: true, words: true }).nullable(),
    plants: z.array(plantCounts),
    queens: z.array(queensCounts),
  });

export type WatchCounts = z.infer<typeof watchCountsSchema>;
export type QueensCounts = WatchCounts['queens'][number];
export type DeterminationCounts = QueensCounts['determinations'][number];
