/** The words of clock times and lengths of a language, made ready to be met in a text. */
import type { Words } from '../../../shared/words.js';
import { madeOnce } from '../text.js';
import { phraseIndex, phraseSet, type PhraseIndex } from './tokens.js';

/** What stands between and around clock times. */
export type Link =
  'to' | 'between' | 'and' | 'start' | 'end' | 'end-after-start' | 'at' | 'aside' | 'or' | 'before' | 'after';

/** Hours that a part of the day holds: from, up to. */
export type Window = readonly [fromHour: number, toHour: number];

export interface TimeWords {
  readonly am: PhraseIndex<true>;
  readonly pm: PhraseIndex<true>;
  readonly amLetters: PhraseIndex<true>;
  readonly pmLetters: PhraseIndex<true>;
  readonly now: PhraseIndex<true>;
  readonly justEnded: PhraseIndex<true>;
  readonly typedTo: PhraseIndex<true>;
  readonly noon: PhraseIndex<number>;
  readonly oclock: PhraseIndex<true>;
  readonly hourMarks: PhraseIndex<true>;
  readonly fromHour: PhraseIndex<number>;
  readonly halfOnly: PhraseIndex<true>;
  readonly past: PhraseIndex<true>;
  readonly minutesTo: PhraseIndex<true>;
  readonly oh: PhraseIndex<true>;
  readonly afterTime: PhraseIndex<true>;
  readonly links: PhraseIndex<Link>;
  readonly minuteUnits: PhraseIndex<true>;
  readonly hourUnits: PhraseIndex<true>;
  readonly lengths: PhraseIndex<number>;
  readonly lengthLeads: PhraseIndex<true>;
  readonly notLengthBefore: PhraseIndex<true>;
  readonly notLengthAfter: PhraseIndex<true>;
  /** Null for a greeting, which looks like a part of the day and says nothing. */
  readonly partsOfDay: PhraseIndex<Window | null>;
  readonly mayFollow: PhraseIndex<true>;
  readonly measures: PhraseIndex<true>;
  /** What a number may count: "flowers", "queens". */
  readonly counted: PhraseIndex<true>;
  readonly articles: PhraseIndex<true>;
}

export const timeWords = madeOnce((words: Words): TimeWords => {
  const { times, when, numbers, count } = words;
  const links: (readonly [Link, readonly string[]])[] = [
    ['at', times.at],
    ['to', times.to],
    ['between', times.between],
    ['and', times.and],
    ['start', times.starts],
    ['end', times.ends],
    ['end-after-start', times.endsAfterStart],
    ['aside', times.asides],
    ['or', when.or],
    ['before', times.before],
    ['after', times.past],
  ];
  return {
    am: phraseSet(times.am),
    pm: phraseSet(times.pm),
    amLetters: phraseSet(times.amLetters),
    pmLetters: phraseSet(times.pmLetters),
    now: phraseSet(times.now),
    justEnded: phraseSet(times.justEnded),
    typedTo: phraseSet(times.typedTo),
    noon: phraseIndex(Object.entries(times.noon)),
    oclock: phraseSet(times.oclock),
    hourMarks: phraseSet(times.hourMarks),
    // "a quarter to three"
    fromHour: phraseIndex(
      Object.entries(times.fromHour).flatMap(([phrase, minutes]) =>
        ['', ...numbers.articles].map((article) => [`${article} ${phrase}`.trim(), minutes] as const),
      ),
    ),
    halfOnly: phraseSet(times.halfOnly),
    past: phraseSet(times.past),
    minutesTo: phraseSet(times.minutesTo),
    oh: phraseSet(times.oh),
    afterTime: phraseSet(times.afterTime),
    links: phraseIndex(links.flatMap(([link, phrases]) => phrases.map((phrase) => [phrase, link] as const))),
    minuteUnits: phraseSet(times.minuteUnits),
    hourUnits: phraseSet(times.hourUnits),
    lengths: phraseIndex(Object.entries(times.lengths)),
    lengthLeads: phraseSet(times.lengthLeads),
    notLengthBefore: phraseSet(times.notLengthBefore),
    notLengthAfter: phraseSet(times.notLengthAfter),
    partsOfDay: phraseIndex<Window | null>([
      ...Object.entries(times.partsOfDay),
      ...times.greetings.map((greeting) => [greeting, null] as const),
    ]),
    mayFollow: phraseSet(times.mayFollow),
    measures: phraseSet(times.measures),
    counted: phraseSet([...count.flowers, ...count.queens, ...count.bees]),
    articles: phraseSet(numbers.articles),
  };
});
