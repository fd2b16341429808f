/**
 * The corpus: for each kind of answer what people type. Each line was labelled twice by the same written rules, the
 * second time without sight of the first labels; where they differ, `settled` is what was agreed on afterwards. Most
 * lines are for tuning the readers; a part that is held back only measures them.
 */
import { createHash } from 'node:crypto';
import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { z } from 'zod';

const labelSchema = z.strictObject({
  state: z.enum(['sure', 'unsure', 'none']),
  /** The value; of an unsure answer the best one to offer, null where `offer` names several or only a part is asked. */
  gold: z.json(),
  /** Names of which one must be offered. */
  offer: z.array(z.string()).optional(),
});
export type Label = z.infer<typeof labelSchema>;

const lineSchema = z.strictObject({
  text: z.string(),
  ctx: z
    .strictObject({
      order: z.enum(['MDY', 'DMY']).optional(),
      temperatureUnit: z.enum(['F', 'C']).optional(),
      lengthUnit: z.enum(['ft', 'm']).optional(),
      watched: z.array(z.string()).optional(),
      of: z.enum(['queens', 'flowers']).optional(),
    })
    .optional(),
  first: labelSchema,
  second: labelSchema,
  settled: labelSchema.optional(),
  /** A later collection that was read while tuning: it cannot measure any more. */
  seen: z.literal(true).optional(),
  why: z.string().optional(),
});
export type Line = z.infer<typeof lineSchema>;

export const labelOf = ({ first, settled }: Line): Label => settled ?? first;

export const CORPUS_KINDS = [
  'date',
  'times',
  'temperature',
  'sky',
  'wind',
  'patch',
  'place',
  'count',
  'plant',
  'bee',
  'tally',
  'yes-no',
  'note',
] as const;
export type CorpusKind = (typeof CORPUS_KINDS)[number];

export const HALVES = ['tuned', 'held'] as const;
export type Half = (typeof HALVES)[number];

/**
 * By a fixed hash of the text: nobody chooses where a line falls. Once half of the lines were held; a second bit of the
 * hash let half of these go to tuning, so that a quarter still measures.
 */
export function halfOf({ text, seen }: Line): Half {
  const [first = 0, second = 0] = createHash('sha256').update(text).digest();
  return seen === true || first % 2 === 0 || second % 2 === 0 ? 'tuned' : 'held';
}

const pathOf = (kind: string): string => fileURLToPath(new URL(`${kind}.jsonl`, import.meta.url));

export function linesOf(kind: CorpusKind): Line[] {
  const path = pathOf(kind);
  if (!existsSync(path)) return [];
  return readFileSync(path, 'utf8')
    .split('\n')
    .filter((line) => line !== '')
    .map((line) => lineSchema.parse(JSON.parse(line)));
}
