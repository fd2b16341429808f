/**
 * What a long note says of other things than its watch: questions to us, other years, what is still to come. Sentences
 * that tell a time of day, or that somebody watched, are none.
 */
import type { Words } from '../../../shared/words.js';
import { anyOf } from '../any-of.js';
import type { Span } from '../reading.js';
import { madeOnce } from '../text.js';
import { isWithin, paragraphsIn, sentencesIn } from './sentences.js';
import { noteWords } from './vocabulary.js';

/** A note of fewer letters or sentences tells its watch and little else. */
const LEAST_LETTERS = 250;
const LEAST_SENTENCES = 4;

/** "redbud 200, violets 30" above the times is a list of what was watched. */
const LEAST_WORDS_OF_STORY = 10;

/** "2:10", "1 pm", "2-2:15", "14h05" */
const CLOCK =
  /\d:\d\d|\d\s?(?:am|pm|a\.m|p\.m)(?!\p{L})|\d\s?[-–]\s?\d|(?<!\d)\d{1,2}h\d\d|(?<![\d.])\d{4}(?=\s?[-–])/u;

const patternsOf = madeOnce(({ note, count }: Words) => {
  const opening = `^[^\\p{L}\\d]*(?:${anyOf(note.beforeAside)}[\\s,:]*){0,3}`;
  return {
    asks: new RegExp(`${opening}${anyOf(note.asksUs)}`, 'u'),
    begins: new RegExp(`${opening}${anyOf(note.elsewhen, note.coming)}`, 'u'),
    holds: new RegExp(anyOf(note.elsewhen), 'u'),
    coming: new RegExp(anyOf(note.coming), 'u'),
    thisTime: new RegExp(anyOf(note.thisTime), 'u'),
    watching: new RegExp(anyOf(note.watching, note.watchNouns), 'u'),
    watch: new RegExp(anyOf(note.ofWatch, count.flowers), 'u'),
  };
});

/** Whether a text is long enough to tell of other things too. */
export const isLong = (folded: string, sentences: readonly Span[]): boolean =>
  folded.length >= LEAST_LETTERS && sentences.length >= LEAST_SENTENCES;

/** Ends a clause within a sentence. */
const CLAUSE_END = /[,;:](?=\s)/g;

/** From the clause that speaks of what is to come: "2 imps on the phlox, will go again tomorrow". */
function comingClause(sentence: string, coming: RegExp): number | null {
  const at = coming.exec(sentence)?.index;
  if (at === undefined) return null;
  return [...sentence.slice(0, at).matchAll(CLAUSE_END)].at(-1)?.index ?? 0;
}

/** The sentences, and ends of sentences, that tell nothing of the watch; none in a short note. `isNamed`: a bee is named there, `namesPlant`: a plant. */
export function asidesIn(
  folded: string,
  words: Words,
  isNamed: (sentence: Span) => boolean,
  namesPlant: (sentence: Span) => boolean,
): Span[] {
  const sentences = sentencesIn(folded);
  if (!isLong(folded, sentences)) return [];
  const { asks, begins, holds, coming, thisTime, watching } = patternsOf(words);
  const isAside = (span: Span, sentence: string): boolean => {
    if (sentence.trimEnd().endsWith('?') && asks.test(sentence)) return !isNamed(span) || begins.test(sentence);
    // "last year none, this year 2 imps"
    if (begins.test(sentence)) return !thisTime.test(sentence);
    return (
      holds.test(sentence) && !watching.test(sentence) && !isNamed(span) && !namesPlant(span) && !/\d/.test(sentence)
    );
  };
  return sentences.flatMap((span): Span[] => {
    const sentence = folded.slice(...span);
    if (CLOCK.test(sentence)) return [];
    if (isAside(span, sentence)) return [span];
    const from = comingClause(sentence, coming);
    return from === null ? [] : [[span[0] + from, span[1]]];
  });
}

/**
 * What stands above the watch of a long mail: the paragraphs before the first that tells anything of it, of the garden
 * and of work days. `told`: where times, weather, sizes and bees were found.
 */
export function preambleOf(folded: string, words: Words, told: readonly Span[]): Span[] {
  if (!isLong(folded, sentencesIn(folded))) return [];
  const paragraphs = paragraphsIn(folded);
  const first = paragraphs.findIndex((paragraph) => told.some((span) => isWithin(span, paragraph)));
  const { watch } = patternsOf(words);
  const isStory = (paragraph: string): boolean =>
    (paragraph.match(/\p{L}+/gu) ?? []).length >= LEAST_WORDS_OF_STORY && !watch.test(paragraph);
  return paragraphs.slice(0, Math.max(0, first)).filter((paragraph) => isStory(folded.slice(...paragraph)));
}

/** Sentences of a long note that tell of no queens. `isNamed`: a bee or a plant is named there. */
export function storiesIn(folded: string, words: Words, isNamed: (sentence: Span) => boolean): Span[] {
  const sentences = sentencesIn(folded);
  if (!isLong(folded, sentences)) return [];
  const { saysQueens } = noteWords(words);
  return sentences.filter((sentence) => !isNamed(sentence) && !saysQueens(folded.slice(...sentence)));
}
