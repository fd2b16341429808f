/**
 * What somebody finds of what was shown, put together from small parts: "that all looks right to me", "it isn't quite
 * right", "I see nothing wrong with it". Such sentences are too many for a list of phrases.
 */
import type { Words } from '../../../shared/words.js';
import { phraseSet, type PhraseSet } from './phrase-set.js';

/** `half`, `half-no`: not whole ("mostly right", "might be wrong"), and so no answer to store by. */
export type Verdict = 'yes' | 'no' | 'half' | 'half-no';

export interface Assessment {
  readonly verdict: Verdict;
  readonly length: number;
}

/** "thats" for "that's". */
export const withoutApostrophes = (phrases: readonly string[]): string[] =>
  phrases.flatMap((one) => [one, one.replaceAll("'", '')]);

/** A sentence that is only "it was" ends here. */
const ENDS = /^\s*(?:[.,;!)]|$|\p{Extended_Pictographic})/u;

function nextWord(folded: string, at: number): number {
  let next = at;
  while (folded[next] === ' ') next += 1;
  return next;
}

export function assessments(words: Words['yesNo']['assessing']): (folded: string, at: number) => Assessment | null {
  const setOf = (phrases: readonly string[]): PhraseSet => phraseSet(withoutApostrophes(phrases));
  const sets = {
    subjects: setOf(words.subjects),
    joined: setOf(words.joined),
    links: setOf(words.links),
    notLinks: setOf(words.notLinks),
    maybeLinks: setOf(words.maybeLinks),
    adverbs: setOf(words.adverbs),
    half: setOf(words.half),
    short: setOf(words.short),
    nots: setOf(words.nots),
    pastLinks: setOf(words.pastLinks),
    denials: setOf(words.denials),
    right: setOf(words.right),
    emphatic: setOf(words.emphatic),
    good: setOf(words.good),
    bad: setOf(words.bad),
    tails: setOf(words.tails),
    what: setOf(words.what),
    sayers: setOf(words.sayers),
    said: setOf(words.said),
    nothing: setOf(words.nothing),
    faults: setOf(words.faults),
    pronouns: setOf(words.pronouns),
    auxiliaries: setOf(words.auxiliaries),
    auxiliariesNot: setOf(words.auxiliariesNot),
  };
  type Part = keyof typeof sets;

  return (folded, from) => {
    let at = from;
    /** Takes the part where it stands next. */
    const take = (part: Part): boolean => {
      const next = nextWord(folded, at);
      const found = sets[part].at(folded, next);
      if (found) at = next + found.length;
      return found !== null;
    };
    const takeAll = (part: Part): void => {
      while (take(part));
    };
    const takeWhatWasSaid = (): boolean => {
      const before = at;
      if (take('what')) {
        const sayer = at;
        // "what I had" is whole, "what I" is not
        if (take('sayers') && (take('said') || /\S\s\S/u.test(folded.slice(sayer, at).trim()))) return true;
      }
      at = before;
      return false;
    };
    const ended = (verdict: Verdict): Assessment => {
      takeAll('tails');
      return { verdict, length: at - from };
    };

    // "I see nothing wrong with it", "no mistakes that I can see"
    if (take('nothing')) {
      take('links');
      if (take('faults')) return ended('yes');
      at = from;
    }
    // "I didn't", "it was"
    if (take('pronouns')) {
      const denied = take('auxiliariesNot');
      if ((denied || take('auxiliaries')) && ENDS.test(folded.slice(at, at + 20))) return ended(denied ? 'no' : 'yes');
      at = from;
    }
    // "I don't think" · "that's" or "that all" · "looks", "doesn't look", "should be" · "not quite", "mostly", "almost" ·
    // "right", "wrong"
    const denied = take('denials');
    const joined = take('joined');
    const subject = !joined && take('subjects');
    const notLink = take('notLinks');
    const maybeLink = !notLink && take('maybeLinks');
    // "it was right" is of what was shown; "it was great" of the morning
    const pastLink = !notLink && !maybeLink && take('pastLinks');
    const link = notLink || maybeLink || pastLink || take('links');
    const emphasis = take('adverbs');
    takeAll('adverbs');
    const not = take('nots');
    takeAll('adverbs');
    const half = take('half');
    const short = !half && take('short');
    takeAll('adverbs');
    const what = takeWhatWasSaid();
    const plainly = sets.emphatic.at(folded, nextWord(folded, at)) !== null;
    const good = what || take('right') || (!pastLink && take('good'));
    if (!good && !take('bad')) return null;
    // "good" by itself is a phrase of its own; "that good" is none; "exactly what I saw" is a sentence
    const emphatic = (what || plainly) && !subject && emphasis;
    if (!joined && !link && !emphatic && (subject || !(not || half || short))) return null;
    const denials = [denied, notLink, not].filter(Boolean).length;
    const doubted = half || maybeLink;
    if ((denials % 2 === 1) === good || short) return ended(doubted && !good && !short ? 'half-no' : 'no');
    return ended(doubted ? 'half' : 'yes');
  };
}
