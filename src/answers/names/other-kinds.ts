/** The words by which all the other kinds of answers are known: "yesterday", "mph", "lgtm" are no bee and no plant. */
import type { Words } from '../../../shared/words.js';

/** A section's words, phrases taken apart: lists, and the keys of tables with the words under them. */
function* wordsIn(section: unknown): Generator<string> {
  if (typeof section === 'string') yield* section.replaceAll("'", '').match(/\p{L}+/gu) ?? [];
  else if (Array.isArray(section)) for (const phrase of section as unknown[]) yield* wordsIn(phrase);
  else if (typeof section === 'object' && section !== null) {
    for (const [phrase, under] of Object.entries(section)) {
      yield* wordsIn(phrase);
      yield* wordsIn(under);
    }
  }
}

export const wordsOfOtherKinds = ({ names: _names, ...others }: Words): Set<string> =>
  new Set(Object.values(others).flatMap((section) => [...wordsIn(section)]));
