/** Which line of the summary a correction names, by its number or in words, and what is left for its value. */
import { anyOf, fold, madeOnce } from '../../answers/index.js';
import type { Words } from '../../../shared/words.js';
import type { Scene } from '../types.js';

/** A field named at the beginning of a correction, and what is left for its value. */
export interface Named {
  readonly field: string;
  readonly value: string;
}

const escape = (word: string): string => word.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');

/** "line", "number": what may stand before a line's number, with a blank between them or none; "watch 3" is another watch. */
export const lineLead = ({ lineNumber }: Words['wishes']): string => lineNumber.map(escape).join('|');

interface NamePatterns {
  /** With a sign, a word like "is" or a number behind the name, or nothing. */
  readonly told: RegExp;
  /** With any word behind it. */
  readonly bare: RegExp;
}

/** Made once for a language: they are looked at in every message while a question stands. */
const patternsOf = madeOnce(({ count, hedges, putRight, wishes }: Words) => {
  const becomes = anyOf(wishes.becomes);
  const lead = lineLead(wishes);
  const byField = new Map<string, NamePatterns>();
  const namePatterns = (field: string): NamePatterns => {
    const names = anyOf([field.replaceAll('-', ' ')], wishes.fields[field] ?? []);
    const name = `^\\s*(?:${anyOf(putRight.articles)}\\s+)?${names}(?:\\s+${anyOf(putRight.lineNouns)})?`;
    return {
      told: new RegExp(
        `${name}(?:\\s+(?:${anyOf(wishes.beforeValue)}\\s+)?${becomes}(?=[\\s:]|$)|\\s*[:=]|(?=\\s*$)|(?=\\s+(?:${anyOf(count.about)}\\s+)?[-+]?\\d))\\s*`,
        'u',
      ),
      bare: new RegExp(`${name}\\s+(?=\\p{L})`, 'u'),
    };
  };
  return {
    leads: new RegExp(
      `^(?:[\\s,.!:;…-]*${anyOf(putRight.leads, putRight.saysNo, hedges.correcting, wishes.polite)})+(?:[\\s,.!:;…-]+|$)`,
      'u',
    ),
    beforeValue: new RegExp(`^\\s*(?:${anyOf(wishes.beforeValue)}\\s*)?[:=]?\\s*`, 'u'),
    byNumber: new RegExp(
      `^\\s*(?<mark>(?:(?:${lead})\\s+|#\\s*))?(?<line>\\d{1,2})(?<sign>\\s*[:.)=](?!\\d)|\\s+${becomes}(?=[\\s:])|(?=\\s*$)|(?=\\s))\\s*`,
      'u',
    ),
    lineAlone: new RegExp(`^\\s*(?:${lead})\\s+\\d`, 'u'),
    isWrong: new RegExp(`^${anyOf(putRight.isWrong, putRight.isRight)}[\\s.!]*$`, 'u'),
    named(field: string): NamePatterns {
      const known = byField.get(field) ?? namePatterns(field);
      byField.set(field, known);
      return known;
    },
  };
});

/** "hmm", "no", "i said", "ugh no.": nothing of these is the correction itself. */
export function withoutLead(text: string, { survey }: Scene): string {
  const match = patternsOf(survey.words).leads.exec(fold(text));
  return match === null ? text : text.slice(match[0].length);
}

/** "should read simply: wetland": what stands before a new value and is no part of it. */
function value(rest: string, { survey }: Scene): string {
  const match = patternsOf(survey.words).beforeValue.exec(fold(rest));
  return rest.slice(match?.[0].length ?? 0).trim();
}

/** "4: 68", "line 4 should be 68", "#4", "4". A bare number before other words is not a line. */
function namedByNumber(text: string, fields: readonly string[], scene: Scene): Named | null {
  const match = patternsOf(scene.survey.words).byNumber.exec(fold(text));
  if (!match?.groups) return null;
  const field = fields[Number(match.groups['line']) - 1];
  const rest = text.slice(match[0].length).trim();
  const marked = match.groups['mark'] !== undefined || match.groups['sign'] !== '' || rest === '';
  return field !== undefined && marked
    ? { field, value: match.groups['sign'] === '' ? rest : value(rest, scene) }
    : null;
}

/** "temp was 68", "the habitat one is just a garden", "temperature"; of a field told in free words also "habitat prairie". */
function namedByWord(text: string, fields: readonly string[], scene: Scene): Named | null {
  const folded = fold(text);
  for (const field of fields) {
    const { told, bare } = patternsOf(scene.survey.words).named(field);
    const match = told.exec(folded);
    if (match) return { field, value: value(text.slice(match[0].length), scene) };
    const beside = isFree(field, scene) && !folded.includes('?') ? bare.exec(folded) : null;
    if (beside) return { field, value: text.slice(beside[0].length).trim() };
  }
  return null;
}

/** A field whose value is words as they come: whatever stands behind its name is meant. */
const isFree = (field: string, { survey }: Scene): boolean => survey.dialog.fields[field]?.reader === 'words';

/** "Line 10", "line 10 is wrong": with the word that says that a line is meant. */
export function lineAlone(text: string, fields: readonly string[], scene: Scene): string | null {
  const isLine = patternsOf(scene.survey.words).lineAlone.test(fold(text));
  const named = isLine ? namedLine(text, fields, scene) : null;
  return named?.value === '' ? named.field : null;
}

/** The line that a text names in words, not by a number. */
export const namedInWords = (text: string, fields: readonly string[], scene: Scene): Named | null =>
  namedByWord(text, fields, scene) ?? namedByWord(withoutLead(text, scene), fields, scene);

/** The line that a text begins with, after words that only lead to it. */
export function namedLine(text: string, fields: readonly string[], scene: Scene): Named | null {
  const bare = withoutLead(text, scene);
  const named =
    namedByNumber(text, fields, scene) ??
    namedByWord(text, fields, scene) ??
    (bare === text ? null : (namedByNumber(bare, fields, scene) ?? namedByWord(bare, fields, scene)));
  if (named === null) return null;
  // "the habitat is wrong" names it, and says no new value
  return patternsOf(scene.survey.words).isWrong.test(fold(named.value)) ? { ...named, value: '' } : named;
}

/** Where sentences, and parts between commas, begin. */
const BREAKS = /[.;!\n]+\s+|\n+|,\s*(?:and\s+)?/gu;

/** "I said prairie. habitat is prairie", "temp was 70, wind was calm": from each line named to the next. One where none is. */
export function byLines(text: string, fields: readonly string[], scene: Scene): string[] {
  const starts = [...text.matchAll(BREAKS)].map((match) => match.index + match[0].length);
  const isLine = (from: number): boolean => {
    const named = namedLine(text.slice(from), fields, scene);
    return named !== null && named.value !== '';
  };
  const cuts = starts.filter((from) => from < text.length && isLine(from));
  return [0, ...cuts].map((from, at) => text.slice(from, cuts[at] ?? text.length).trim());
}

/** "Note that they were mowing"; null where the text does not begin so. */
export function remarkIn(text: string, { survey }: Scene): string | null {
  const begins = new RegExp(`^\\s*${anyOf(survey.words.wishes.remarkThat)}[\\s,:]+(?=\\S)`, 'u').exec(fold(text));
  return begins === null ? null : text.slice(begins[0].length).trim();
}

/** "... from number 10", "... on line 9": a line is meant, and no count. */
export function withoutLine(text: string, { survey }: Scene): string {
  const { tally, wishes } = survey.words;
  const from = anyOf(tally.prepositions, tally.onPlants);
  const line = `(?:(?:${lineLead(wishes)})\\s*|#\\s*)\\d{1,2}`;
  const match = new RegExp(`\\s+(?:${from}\\s+)?${line}[\\s.!]*$`, 'u').exec(fold(text));
  return match === null || match.index === 0 ? text : text.slice(0, match.index);
}

/** What stands in "take the violets out"; null for anything else. */
export function takenApart(text: string, { survey }: Scene): string | null {
  const { before, after } = survey.words.wishes.takeOutApart;
  const pattern = new RegExp(`^\\s*${anyOf(before)}\\s+(?<what>\\S.*?)\\s+${anyOf(after)}(?<rest>\\s.*)?$`, 'u');
  const match = pattern.exec(fold(text).replace(/[\s.!]+$/, ''));
  return match === null ? null : `${match.groups?.['what'] ?? ''}${match.groups?.['rest'] ?? ''}`;
}
