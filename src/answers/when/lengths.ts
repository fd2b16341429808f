/** How long a watch took: "15 minutes", "a quarter of an hour", "for 15", "1.5 hours". */
import type { TimeScan } from './clock.js';
import { smallNumberAt } from './tokens.js';

export interface Length {
  readonly minutes: number;
  /** "10-15 minutes". */
  readonly inexact: boolean;
  readonly at: number;
  readonly next: number;
}

/** A number after "for" is minutes from here up; below it is more likely an hour or a count. */
const LEAST_WITHOUT_UNIT = 5;
/** Nobody watches flowers longer. */
const MOST_MINUTES = 600;

/** Not the watch's: "15 minutes later", "every 5 minutes", "20 minute walk". */
function isOfSomethingElse({ tokens, timeWords }: TimeScan, at: number, next: number): boolean {
  if (timeWords.notLengthBefore(tokens, next)) return true;
  for (let from = Math.max(0, at - 2); from < at; from++) {
    if (timeWords.notLengthAfter(tokens, from)?.next === at) return true;
  }
  return false;
}

/** "1.5", "15", "fifteen". */
function amountAt({ tokens, words }: TimeScan, at: number): { value: number; next: number } | null {
  const number = smallNumberAt(tokens, at, words.numbers);
  if (!number) return null;
  const [point, decimals] = tokens.slice(number.next, number.next + 2);
  if (
    number.written === 'digits' &&
    point?.text === '.' &&
    !point.spaced &&
    decimals?.kind === 'number' &&
    !decimals.spaced
  ) {
    return { value: Number(`${number.value}.${decimals.text}`), next: number.next + 2 };
  }
  return number;
}

export function lengthAt(scan: TimeScan, at: number): Length | null {
  const { tokens, words, timeWords, taken } = scan;
  if (taken[at] === true) return null;
  const length = (minutes: number, next: number): Length | null => {
    if (minutes < 1 || minutes > MOST_MINUTES || isOfSomethingElse(scan, at, next)) return null;
    const [sign, before] = [tokens[at - 1], tokens[at - 2]];
    const inexact =
      (sign?.text === '-' || sign?.text === 'or' || sign?.text === 'to') &&
      before !== undefined &&
      smallNumberAt(tokens, at - 2, words.numbers)?.next === at - 1 &&
      tokens[at - 3]?.text !== ':';
    return { minutes, inexact, at, next };
  };

  const phrase = timeWords.lengths(tokens, at);
  if (phrase) return length(phrase.value, phrase.next);

  const lead = timeWords.lengthLeads(tokens, at);
  const leads = lead && (timeWords.articles(tokens, lead.next)?.next ?? lead.next);
  const phraseAfter =
    lead && leads !== null ? (timeWords.lengths(tokens, lead.next) ?? timeWords.lengths(tokens, leads)) : null;
  if (phraseAfter) return length(phraseAfter.value, phraseAfter.next);
  // "for about the full 15"
  let numberAt = leads ?? at;
  if (lead) {
    for (let more = 0; more < 3; more++) {
      const another = timeWords.lengthLeads(tokens, numberAt) ?? timeWords.afterTime(tokens, numberAt);
      const at_ = timeWords.links(tokens, numberAt);
      numberAt = another?.next ?? (at_?.value === 'at' ? at_.next : numberAt);
    }
  }
  const amount = amountAt(scan, numberAt);
  if (!amount) return null;
  const unitAt = tokens[amount.next]?.text === '-' ? amount.next + 1 : amount.next;
  const minutes = timeWords.minuteUnits(tokens, unitAt);
  if (minutes) return length(amount.value, minutes.next);
  const hours = timeWords.hourUnits(tokens, unitAt);
  if (hours && amount.value <= 10) return length(amount.value * 60, hours.next);
  if (!lead) return null;

  const short = tokens[amount.next];
  const next = short && !short.spaced && short.text === 'm' ? amount.next + 1 : amount.next;
  const after = tokens[next];
  const goesOn =
    after && !after.spaced && [':', '.', '/', '-', '%'].includes(after.text) && tokens[next + 1]?.kind === 'number';
  const clock = timeWords.am(tokens, next) ?? timeWords.pm(tokens, next) ?? timeWords.oclock(tokens, next);
  const stands =
    !after || after.kind === 'sign' || after.kind === 'number' || timeWords.mayFollow(tokens, next) !== null;
  if (goesOn || clock || !stands || amount.value < LEAST_WITHOUT_UNIT || amount.value > 180) return null;
  return length(amount.value, next);
}
