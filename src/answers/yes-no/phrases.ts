/** The words of yes and no, made ready to search. */
import type { Words } from '../../../shared/words.js';
import { anyOf } from '../any-of.js';
import { madeOnce } from '../text.js';
import { assessments, withoutApostrophes } from './assessments.js';
import { phraseSet, type PhraseSet } from './phrase-set.js';
import { speller } from './spelling.js';

/** Later ones win where a phrase stands in two lists. */
const KINDS = [
  'chat',
  'fillers',
  'leads',
  'contrasts',
  'corrections',
  'doubtful',
  'doubtfulNo',
  'unknowing',
  'yesAlone',
  'noAlone',
  'yes',
  'no',
  'bareNo',
] as const;
export type Kind = (typeof KINDS)[number];

export const yesNoPhrases = madeOnce((yesNo: Words['yesNo']) => {
  const kinds = new Map<string, Kind>();
  for (const kind of KINDS) for (const phrase of withoutApostrophes(yesNo[kind])) kinds.set(phrase, kind);
  const setOf = (...lists: readonly (readonly string[])[]): PhraseSet => phraseSet(withoutApostrophes(lists.flat()));
  return {
    kinds,
    any: phraseSet([...kinds.keys()]),
    bareNo: setOf(yesNo.bareNo),
    chat: setOf(yesNo.chat, yesNo.fillers),
    afterNo: setOf(yesNo.afterNo),
    nothings: setOf(yesNo.nothings),
    changes: setOf(yesNo.changes),
    topics: setOf(yesNo.topics),
    pleasantries: setOf(yesNo.pleasantries),
    futures: setOf(yesNo.futures),
    questions: setOf(yesNo.questions),
    leads: setOf(yesNo.leads),
    corrections: setOf(yesNo.corrections),
    halting: setOf(yesNo.halting),
    fixing: setOf(yesNo.fixing),
    denying: setOf(yesNo.denying),
    insteadOf: setOf(yesNo.insteadOf),
    wanting: setOf(yesNo.wanting),
    wrongLater: setOf(yesNo.wrongLater),
    tapbackYes: new RegExp(`^\\s*${anyOf(yesNo.tapbackYes)}\\s+"`, 'u'),
    tapbackNo: new RegExp(`^\\s*${anyOf(yesNo.tapbackNo)}\\s+"`, 'u'),
    assess: assessments(yesNo.assessing),
    /** "The place is right": what was asked about, found right by its name. */
    namedRight: new RegExp(
      `^(?:\\p{L}+\\s+){1,3}?${anyOf(yesNo.assessing.links)}\\s+${anyOf(yesNo.assessing.right, yesNo.assessing.good)}$`,
      'u',
    ),
    respell: speller(yesNo),
  };
});
export type YesNoPhrases = ReturnType<typeof yesNoPhrases>;

/** Marks, white space and what modifies an emoji: skin tone, variation, joiner. */
const GAP = /[\s.,;:!…\-()"'*\u200d\ufe0f\u{1f3fb}-\u{1f3ff}]*/uy;

/** Where the next word begins. */
export function skip(folded: string, at: number): number {
  GAP.lastIndex = at;
  return at + (GAP.exec(folded)?.[0].length ?? 0);
}
