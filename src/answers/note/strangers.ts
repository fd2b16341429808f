/** Plants that their watcher could not name: "a white flower I don't know the name of", "unknown pink wildflower". */
import type { Words } from '../../../shared/words.js';
import { anyOf } from '../any-of.js';
import type { FoundName, FoundNames } from '../names/index.js';
import type { Span } from '../reading.js';
import { fold, madeOnce } from '../text.js';

const patternsOf = madeOnce(({ names, note }: Words) => {
  const nouns = anyOf(note.strangers.nouns);
  const describing = `(?:${anyOf(names.describing)}[ ,-]+)`;
  const before = anyOf(note.strangers.before);
  const after = `[ ]*[,(]?[ ]*(?:(?:that|which|whose|and)[ ]+)?${anyOf(note.strangers.after)}`;
  return new RegExp(
    [
      // "an unknown small white flower", "mystery shrub"
      `${before}[ ]+${describing}{0,3}(?:[\\p{L}]+[ ]+)?${nouns}`,
      // "a little white star flower I don't know"
      `${describing}{0,3}(?:[\\p{L}]+[ ]+)?${nouns}${after}`,
    ].join('|'),
    'gu',
  );
});

const overlaps = (one: Span, other: Span): boolean => one[0] < other[1] && other[0] < one[1];

/** The names with each such plant among them, in place of what its words happened to name. */
export function withStrangers(text: string, { bees, plants }: FoundNames, words: Words): FoundNames {
  const folded = fold(text);
  const strangers = [...folded.matchAll(patternsOf(words))].map((match): FoundName => {
    const span: Span = [match.index, match.index + match[0].length];
    return {
      names: [{ name: text.slice(...span), rank: null }],
      clear: true,
      span,
      doubt: false,
      exactness: 'exact',
    };
  });
  if (strangers.length === 0) return { bees, plants };
  const isOutside = ({ span }: FoundName): boolean => !strangers.some((stranger) => overlaps(stranger.span, span));
  return {
    bees: bees.filter(isOutside),
    plants: [...plants.filter(isOutside), ...strangers].sort((a, b) => a.span[0] - b.span[0]),
  };
}
