/** A quick look whether a clock time begins somewhere, for rules of dates: "sat 3:20", "the 2nd 11 am". */
import type { Words } from '../../../shared/words.js';
import { timeWords } from './time-words.js';
import { smallNumberAt, type Token } from './tokens.js';

/** "3:20", "3.20", "3pm", "15h20", "3 to 3:15", "1520", "noon", "half past two", "two twenty". */
export function clockBegins(tokens: readonly Token[], at: number, words: Words): boolean {
  const known = timeWords(words);
  const token = tokens[at];
  if (!token) return false;
  if (known.noon(tokens, at) || known.fromHour(tokens, at)) return true;
  const hour = smallNumberAt(tokens, at, words.numbers);
  if (!hour || hour.value > 2359) return false;
  const after = tokens[hour.next];
  if (!after) return token.text.length === 4;
  const number = tokens[hour.next + 1]?.kind === 'number';
  if ([':', '-', 'h'].includes(after.text)) return number;
  if (after.text === '.') return number && tokens[hour.next + 1]?.spaced === false;
  if (known.am(tokens, hour.next) ?? known.pm(tokens, hour.next) ?? known.oclock(tokens, hour.next)) return true;
  if (token.kind === 'number' && token.text.length === 4) return known.measures(tokens, at + 1) === null;
  if (hour.written === 'words' && known.oh(tokens, hour.next)) return true;
  const minute = smallNumberAt(tokens, hour.next, words.numbers);
  if (hour.written === 'words' && minute?.written === 'words') return minute.value >= 10;
  return known.links(tokens, hour.next)?.value === 'to' && smallNumberAt(tokens, hour.next + 1, words.numbers) !== null;
}

/** "15 minutes", "quarter of an hour". */
export function lengthBegins(tokens: readonly Token[], at: number, words: Words): boolean {
  const known = timeWords(words);
  if (known.lengths(tokens, at)) return true;
  const number = smallNumberAt(tokens, at, words.numbers);
  return number !== null && known.minuteUnits(tokens, number.next) !== null;
}
