/**
 * Tallies as different people tell them: terse, chatty, in tables, by voice, with corrections. The rows were written down
 * by the written rules before any reader saw the line; `gold` null: it must be asked back.
 */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { z } from 'zod';
import { printed } from '../../src/answers/index.js';
import { contextOf } from './corpus/context.js';
import { verdictOf } from './corpus/score.js';

const toldSchema = z.strictObject({
  text: z.string(),
  watched: z.array(z.string()),
  gold: z.array(z.record(z.string(), z.json())).nullable(),
});

const told = readFileSync(fileURLToPath(new URL('tally-told.jsonl', import.meta.url)), 'utf8')
  .split('\n')
  .filter((line) => line !== '')
  .map((line) => toldSchema.parse(JSON.parse(line)));

test.each(told)('"$text" with $watched', ({ text, watched, gold }) => {
  const line = {
    text,
    ctx: { watched },
    first: { state: 'sure' as const, gold },
    second: { state: 'sure' as const, gold },
  };
  const reading = printed('tally', text, contextOf(line));
  if (gold === null) expect(reading.state).not.toBe('sure');
  else expect(verdictOf('tally', reading, line.first), JSON.stringify(reading)).toBe('right');
});
