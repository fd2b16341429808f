/** What is named and then told with "it": the ", it" of "I forgot the temp, it was 64" says nothing. */
import type { Words } from '../../../shared/words.js';
import { anyOf } from '../any-of.js';
import type { Span } from '../reading.js';
import { madeOnce } from '../text.js';

const patternOf = madeOnce(({ note: { labels, resuming } }: Words) => {
  const named = anyOf(labels.temperature, labels.sky, labels.wind, labels.weather, labels.patch);
  return new RegExp(`(?<=${named})(?:[ \\t]*[,.;-]+)?[ \\t]+${anyOf(resuming)}`, 'gu');
});

/** Where those words stand between the name of a field and what is told of it. */
export const resumedIn = (folded: string, words: Words): Span[] =>
  [...folded.matchAll(patternOf(words))].map(({ index, 0: found }) => [index, index + found.length]);
