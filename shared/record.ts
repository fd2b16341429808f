/**
 * The record of a watch: its only definition. What is stored, printed by `watches --json`, exported and imported is
 * this shape; its types are inferred here. Dates and times are local with an IANA zone; instants are UTC and only stamp.
 */
import { z } from 'zod';
import {
  CASTES,
  CHANGE_ROLES,
  CLOUDS,
  COUNTING_UNITS,
  PATCH_SHAPES,
  QUERY_STATES,
  ROLES,
  STATUSES,
  WEIGHTS,
} from './vocabularies.js';

/** A local day, `2026-05-02`. */
export const localDate = z.iso.date();
/** A local wall-clock time to the minute, `15:30`. */
export const localTime = z.string().regex(/^([01]\d|2[0-3]):[0-5]\d$/, 'a time is written HH:MM, for example 15:30');
/** A moment in UTC, `2026-05-02T20:30:00Z`. */
export const instant = z.iso.datetime();

const whole = z.int().nonnegative();

export const timesSchema = z.strictObject({ start: localTime, end: localTime });
export const temperatureSchema = z.strictObject({ celsius: z.number() });
export const skySchema = z.strictObject({ cloud: z.enum(CLOUDS), rain: z.boolean() });
export const windSchema = z.strictObject({ beaufort: z.int().min(0).max(12) });
export const patchSchema = z.strictObject({
  squareMetres: z.number().positive(),
  shape: z.enum(PATCH_SHAPES),
  lengthMetres: z.number().positive().nullable(),
  widthMetres: z.number().positive().nullable(),
  diameterMetres: z.number().positive().nullable(),
});
export const placeSchema = z.strictObject({
  latitude: z.number().min(-90).max(90).nullable(),
  longitude: z.number().min(-180).max(180).nullable(),
  uncertaintyMetres: z.number().positive().nullable(),
  words: z.string(),
  site: z.string().nullable(),
  private: z.boolean(),
});
export const countSchema = z.strictObject({
  value: whole,
  low: whole.nullable(),
  high: whole.nullable(),
  about: z.boolean(),
});

export const plantWatchedSchema = z.strictObject({
  plant: z.int().positive(),
  name: z.string().nullable(),
  rank: z.string().nullable(),
  asTyped: z.string(),
  unit: z.enum(COUNTING_UNITS),
  flowers: countSchema.extend({ asTyped: z.string() }),
});

export const determinationSchema = z.strictObject({
  /** One name; a pair that cannot be told apart; none: cannot be told. */
  taxa: z.array(z.string()).max(2),
  qualifier: z.string().nullable(),
  count: z.int().positive(),
  caste: z.enum(CASTES).nullable(),
  by: z.string(),
  role: z.enum(ROLES),
  at: instant,
  from: z.enum(['photograph', 'description']),
});

export const queensRowSchema = z.strictObject({
  row: z.int().positive(),
  plant: z.int().positive(),
  bee: z.string().nullable(),
  rank: z.string().nullable(),
  asTyped: z.string(),
  count: z.int().positive(),
  /** How many of `count` were already counted on another plant. */
  seenBefore: whole,
  withPollen: whole.nullable(),
  caste: z.enum(CASTES).nullable(),
  doubt: z.boolean(),
  determinations: z.array(determinationSchema),
});

export const photographSchema = z.strictObject({
  sha256: z.string(),
  type: z.string(),
  takenAt: instant.nullable(),
  queensRow: z.int().positive().nullable(),
  licence: z.string().nullable(),
});

export const findingSchema = z.strictObject({
  check: z.string(),
  weight: z.enum(WEIGHTS),
  values: z.record(z.string(), z.json()),
  reply: z.string().nullable(),
  at: instant,
});

export const querySchema = z.strictObject({
  number: z.int().positive(),
  check: z.string().nullable(),
  to: z.enum(['observer', 'coordinator']),
  question: z.string(),
  state: z.enum(QUERY_STATES),
  answer: z.string().nullable(),
  by: z.string().nullable(),
  openedAt: instant,
  closedAt: instant.nullable(),
});

export const changeSchema = z.strictObject({
  at: instant,
  by: z.string(),
  role: z.enum(CHANGE_ROLES),
  /** The channel or command it came through. */
  through: z.string(),
  /** A JSON Pointer into the watch. */
  path: z.string(),
  from: z.json(),
  to: z.json(),
  why: z.string().nullable(),
});

export const watchSchema = z.strictObject({
  id: z.uuid(),
  /** Short number within the survey, for people to say. */
  number: z.int().positive(),
  survey: z.string(),
  dialog: z.string(),
  dialogVersion: z.int().positive(),
  /** The observer's key; name and address are kept elsewhere. */
  observer: z.string(),
  via: z.string(),
  status: z.enum(STATUSES),
  statusReason: z.string().nullable(),
  date: localDate,
  times: timesSchema,
  timeZone: z.string(),
  /** Minutes watched, pauses out. */
  minutes: z.number().nonnegative(),
  place: placeSchema.nullable(),
  temperature: temperatureSchema.nullable(),
  sky: skySchema.nullable(),
  wind: windSchema.nullable(),
  patch: patchSchema.nullable(),
  habitat: z.string().nullable(),
  remark: z.string().nullable(),
  /** People who watched together. */
  watchers: z.int().positive(),
  /** Fields that only another dialog has. */
  more: z.record(z.string(), z.json()),
  asTyped: z.record(z.string(), z.string()),
  plants: z.array(plantWatchedSchema),
  /** Distinct queens: counts less those seen before. */
  total: whole,
  queens: z.array(queensRowSchema),
  photographs: z.array(photographSchema),
  findings: z.array(findingSchema),
  queries: z.array(querySchema),
  history: z.array(changeSchema),
  storedAt: instant,
  changedAt: instant,
});

export type Watch = z.infer<typeof watchSchema>;
export type PlantWatched = z.infer<typeof plantWatchedSchema>;
export type QueensRow = z.infer<typeof queensRowSchema>;
export type Determination = z.infer<typeof determinationSchema>;
export type Photograph = z.infer<typeof photographSchema>;
export type Finding = z.infer<typeof findingSchema>;
export type Query = z.infer<typeof querySchema>;
export type Change = z.infer<typeof changeSchema>;
export type Times = z.infer<typeof timesSchema>;
export type Temperature = z.infer<typeof temperatureSchema>;
export type Sky = z.infer<typeof skySchema>;
export type Wind = z.infer<typeof windSchema>;
export type Patch = z.infer<typeof patchSchema>;
export type Place = z.infer<typeof placeSchema>;
export type Count = z.infer<typeof countSchema>;
