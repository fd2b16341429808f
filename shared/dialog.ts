/** The shape of a dialog file: fields, questions, order, conditions; no sentence. */
import { z } from 'zod';

/** The kinds of answer that a field can take: each is a reader of `src/answers`. */
export const READER_KINDS = [
  'date',
  'times',
  'temperature',
  'sky',
  'wind',
  'patch',
  'place',
  'count',
  'plants',
  'tally',
  'yes-no',
  'words',
] as const;

const key = z.string().regex(/^[a-z][a-z0-9-]*$/, 'small letters, digits and hyphens, for example soil-moisture');

export const dialogSchema = z.strictObject({
  name: key,
  /** Raised with every change that an open report could notice. */
  version: z.int().positive(),
  fields: z.record(
    key,
    z.strictObject({
      reader: z.enum(READER_KINDS),
      /** May be left out by "skip". */
      skippable: z.boolean().default(false),
      /** Asked along with its question; what is not said then is left out. */
      optional: z.boolean().default(false),
      /** An optional field that is asked once more by itself where its question was asked and it was not told. */
      askedAlone: z.boolean().default(false),
      /** Asked only where all of these hold: a field name and the value it must have, or `said`/`new`. */
      when: z.record(key, z.json()).optional(),
    }),
  ),
  questions: z.array(z.strictObject({ question: key, fields: z.array(key).min(1) })).min(1),
});

export type ReaderKind = (typeof READER_KINDS)[number];
export type Dialog = z.infer<typeof dialogSchema>;
