/**
 * All that the program says to people: the shape of `dialogs/LANGUAGE/wording.yaml`, and the function that fills a
 * sentence in. Sentences are ICU MessageFormat, so that plurals are the language's own.
 */
import { IntlMessageFormat } from 'intl-messageformat';
import { z } from 'zod';
import { ASKS, PHRASES } from './phrases.js';
import { CLOUDS, COUNTING_UNITS } from './vocabularies.js';

const sentence = z.string().min(1);

export const wordingSchema = z.strictObject({
  /** Raised with every change of the consent text: the version somebody agreed to is kept. */
  version: z.int().positive(),
  /** BCP 47 tag for plurals and numbers. */
  locale: z.string().min(2),
  questions: z.record(z.string(), z.strictObject({ ask: sentence, example: sentence, help: sentence.optional() })),
  fields: z.record(
    z.string(),
    z.strictObject({ label: sentence, ask: sentence, example: sentence, help: sentence.optional() }),
  ),
  /** What a reader asks back, by the name in its reading. `{offer}` is the best meaning, `{typed}` the words. */
  asks: z.record(z.enum(ASKS), sentence),
  phrases: z.record(z.enum(PHRASES), sentence),
  labels: z.strictObject({
    clouds: z.record(z.enum(CLOUDS), sentence),
    /** Beaufort 0 to 12. */
    winds: z.array(sentence).length(13),
    units: z.record(z.enum(COUNTING_UNITS), sentence),
    /** The same for one of them: "1 flower". */
    oneUnit: z.record(z.enum(COUNTING_UNITS), sentence),
  }),
});

export type Wording = z.infer<typeof wordingSchema>;
export type PhraseValues = Readonly<Record<string, string | number | boolean | null>>;

/** Parsed sentences, by locale and text: parsing is the slow part and the sentences are few. */
const parsed = new Map<string, IntlMessageFormat>();

/** Fills a sentence in. Throws where the sentence names a value it was not given: a mistake of ours. */
export function fill(wording: Pick<Wording, 'locale'>, sentence: string, values: PhraseValues = {}): string {
  const key = `${wording.locale}\n${sentence}`;
  let format = parsed.get(key);
  if (!format) {
    format = new IntlMessageFormat(sentence, wording.locale, undefined, { ignoreTag: true });
    parsed.set(key, format);
  }
  return String(format.format({ ...values }));
}

/** The sentence of that name, filled in. */
export function say(wording: Wording, phrase: (typeof PHRASES)[number], values: PhraseValues = {}): string {
  return fill(wording, wording.phrases[phrase], values);
}
