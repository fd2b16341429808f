/** Which line of the summary a correction names, by its number or in words, and what is left for its value. */
import { anyOf, fold } from '../../answers/index.js';
import type { Scene } from '../types.js';

/** A field named at the beginning of a correction, and what is left for its value. */
export interface Named {
  readonly field: string;
  readonly value: string;
}

/** "line", "number": what may stand before a line's number; "watch 3" is another watch. */
export const lineLead = ({ watchNumber }: Scene['survey']['words']['wishes']): string =>
  ['line', ...watchNumber.filter((word) => word !== 'watch')].map(escape).join('|');

const escape = (word: string): string => word.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');

/** "hmm", "no", "i said", "ugh no.": nothing of these is the correction itself. */
export function withoutLead(text: string, { survey }: Scene): string {
  const { hedges, putRight, wishes } = survey.words;
  const leads = anyOf(putRight.leads, putRight.saysNo, hedges.correcting, wishes.polite);
  const match = new RegExp(`^(?:[\\s,.!:;…-]*${leads})+(?:[\\s,.!:;…-]+|$)`, 'u').exec(fold(text));
  return match === null ? text : text.slice(match[0].length);
}

/** "should read simply: wetland": what stands before a new value and is no part of it. */
function value(rest: string, { survey }: Scene): string {
  const match = new RegExp(`^\\s*(?:${anyOf(survey.words.wishes.beforeValue)}\\s*)?[:=]?\\s*`, 'u').exec(fold(rest));
  return rest.slice(match?.[0].length ?? 0).trim();
}

/** "4: 68", "line 4 should be 68", "#4", "4". A bare number before other words is not a line. */
function namedByNumber(text: string, fields: readonly string[], scene: Scene): Named | null {
  const becomes = scene.survey.words.wishes.becomes.map(escape).join('|');
  const lead = lineLead(scene.survey.words.wishes);
  const pattern = new RegExp(
    `^\\s*(?<mark>(?:(?:${lead})\\s+|#\\s*))?(?<line>\\d{1,2})(?<sign>\\s*[:.)=](?!\\d)|\\s+(?:${becomes})(?=[\\s:])|(?=\\s*$)|(?=\\s))\\s*`,
    'u',
  );
  const match = pattern.exec(fold(text));
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
  const { wishes, putRight } = scene.survey.words;
  const folded = fold(text);
  const becomes = wishes.becomes.map(escape).join('|');
  for (const field of fields) {
    const names = [field.replaceAll('-', ' '), ...(wishes.fields[field] ?? [])]
      .sort((a, b) => b.length - a.length)
      .map(escape)
      .join('|');
    const lead = `^\\s*(?:the |my )?(?:${names})(?:\\s+${anyOf(putRight.lineNouns)})?`;
    const pattern = new RegExp(
      `${lead}(?:\\s+(?:actually\\s+)?(?:${becomes})(?=[\\s:]|$)|\\s*[:=]|(?=\\s*$)|(?=\\s+(?:about |around )?[-+]?\\d))\\s*`,
      'u',
    );
    const match = pattern.exec(folded);
    if (match) return { field, value: value(text.slice(match[0].length), scene) };
    const bare = new RegExp(`${lead}\\s+(?=\\p{L})`, 'u').exec(folded);
    if (bare && isFree(field, scene) && !folded.includes('?'))
      return { field, value: text.slice(bare[0].length).trim() };
  }
  return null;
}

/** A field whose value is words as they come: whatever stands behind its name is meant. */
const isFree = (field: string, { survey }: Scene): boolean => survey.dialog.fields[field]?.reader === 'words';

/** "Line 10", "line 10 is wrong": with the word that says that a line is meant. */
export function lineAlone(text: string, fields: readonly string[], scene: Scene): string | null {
  const lead = new RegExp(`^\\s*(?:${lineLead(scene.survey.words.wishes)})\\s+\\d`, 'u');
  const named = lead.test(fold(text)) ? namedLine(text, fields, scene) : null;
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
  const { isWrong: wrong, isRight } = scene.survey.words.putRight;
  const isWrong = new RegExp(`^${anyOf(wrong, isRight)}[\\s.!]*$`, 'u').test(fold(named.value));
  return isWrong ? { ...named, value: '' } : named;
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
