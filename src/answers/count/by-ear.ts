/** Numbers said in other ways than by number words: "a baker's dozen", "IV", "|||", and by ear "for queens", "sixty ate". */
import { findNumbers } from '../numbers.js';
import type { Context } from '../reading.js';
import type { CountPhrases } from './phrases.js';

/** The folded text with such a number in digits, same length, where it is all there is to count. */
export function byEar(folded: string, context: Context, phrases: CountPhrases): string {
  const match = phrases.byEar.exec(folded);
  if (!match) return folded;
  const { before = '', tens = '', heard = '', scale = '' } = match.groups ?? {};
  const whole = (findNumbers(tens, context.words)[0]?.value ?? 0) + (context.words.count.byEar[heard] ?? 0);
  // "too hundred"
  if (tens === '' && scale === '' && findNumbers(folded, context.words).length > 0) return folded;
  if (scale !== '' && findNumbers(folded, context.words).length > 1) return folded;
  const end = before.length + tens.length + heard.length;
  return before + String(whole).padEnd(tens.length + heard.length) + folded.slice(end);
}

/** "a baker's dozen" in digits, same length. */
export function sayings(folded: string, context: Context, phrases: CountPhrases): string {
  return folded.replace(phrases.sayings, (said) => {
    const value = context.words.count.sayings[said.replace(/\s+/g, ' ')];
    return value === undefined || said.length < String(value).length ? said : String(value).padEnd(said.length);
  });
}

const ROMAN_DIGITS: Readonly<Record<string, number>> = { I: 1, V: 5, X: 10, L: 50, C: 100 };

/** Strokes of a tally ("|||| ||") or a Roman numeral of two letters or more in capitals, as the whole answer. */
export function strokesOrRoman(text: string): number | null {
  const typed = text.trim().replace(/[.!]+$/u, '');
  if (/^[|/](?:[|/\s]{0,60})$/u.test(typed) && typed.length > 1) return typed.replace(/\s/g, '').length;
  if (!/^(?=[IVXLC]{2,8}$)C{0,3}(?:XC|XL|L?X{0,3})(?:IX|IV|V?I{0,4})$/u.test(typed)) return null;
  const digits = [...typed].map((letter) => ROMAN_DIGITS[letter] ?? 0);
  return digits.reduce((sum, digit, at) => sum + (digit < (digits[at + 1] ?? 0) ? -digit : digit), 0);
}
