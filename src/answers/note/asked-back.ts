/** What the writer asks: "is a gentle breeze the one where leaves move?" tells nothing of the weather. */
import type { Words } from '../../../shared/words.js';
import { anyOf } from '../any-of.js';
import type { Span } from '../reading.js';
import { fold, madeOnce } from '../text.js';

const asks = madeOnce(({ note: { asking } }: Words) => new RegExp(`^[\\s,-]*${anyOf(asking)}`, 'u'));

/** A sentence with its question mark. */
const QUESTION = /[^.!?;\n]{1,300}\?/gu;

/** Where such questions stand; "68 I think?" is a doubt and none. */
export const askedBackIn = (text: string, words: Words): Span[] =>
  text.includes('?')
    ? [...fold(text).matchAll(QUESTION)].flatMap(({ index, 0: said }): Span[] =>
        asks(words).test(said) ? [[index, index + said.length]] : [],
      )
    : [];
