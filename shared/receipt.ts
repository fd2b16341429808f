/** The mail that says what was stored: its sentences as plain data, which a mail channel sets as text and as HTML. */
import { z } from 'zod';

/** The channel that takes receipts; its persons are mail addresses. */
export const MAIL = 'mail';

export const receiptSchema = z.strictObject({
  /** BCP 47 tag of the sentences. */
  locale: z.string(),
  subject: z.string(),
  /** Paragraphs before the watch. */
  opening: z.array(z.string()),
  /** The watch, numbered as in the summary, so that "4 should be 68 F" means the same line. */
  lines: z.array(z.strictObject({ label: z.string(), value: z.string() })),
  /** Paragraphs after it. */
  closing: z.array(z.string()),
});

export type Receipt = z.infer<typeof receiptSchema>;
