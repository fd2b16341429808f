/** Words by which a tally that was told is put right, or goes on: while a live watch runs, and at the summary. */
import { z } from 'zod';
import { words } from './kinds.js';

export const putRightSection = z.strictObject({
  /** In a live watch, alone: one more of what was said last. */
  oneMore: words,
  /** In a live watch, beside a number that means so many more of what was said last: "two more of them". */
  besideMore: words,
  /** They are about what was told last: "that was", "wrong plant". The first stands for all. */
  tellsLast: words,
  /** With a comma behind them they take back what was told last: "no, an imp". */
  saysNo: words,
  /** Queens that come besides those told: "forgot", "also". */
  tellsMore: words,
});
