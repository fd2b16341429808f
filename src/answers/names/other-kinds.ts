/** The words by which all the other kinds of answers are known: "yesterday", "mph", "lgtm" are no bee and no plant. */
import type { Words } from '../../../shared/words.js';

const WORD = /\p{L}+/gu;
/** The same for plain letters, as nearly all of them are, in a third of the time. */
const PLAIN_WORD = /[a-z]+/gi;
const ONE_PLAIN_WORD = /^[a-z]+$/i;
const PLAIN_TEXT = /^[ -~]*$/;

/** A section's words, phrases taken apart: lists, and the keys of tables with the words under them. */
function collect(section: unknown, into: Set<string>): void {
  if (typeof section === 'string') {
    if (ONE_PLAIN_WORD.test(section)) into.add(section);
    else {
      const words = PLAIN_TEXT.test(section) ? PLAIN_WORD : WORD;
      for (const word of section.replaceAll("'", '').match(words) ?? []) into.add(word);
    }
  } else if (Array.isArray(section)) for (const phrase of section as unknown[]) collect(phrase, into);
  else if (typeof section === 'object' && section !== null) {
    for (const [phrase, under] of Object.entries(section)) {
      collect(phrase, into);
      collect(under, into);
    }
  }
}

export function wordsOfOtherKinds({ names: _names, dictionary: _dictionary, ...others }: Words): Set<string> {
  const words = new Set<string>();
  collect(others, words);
  return words;
}
