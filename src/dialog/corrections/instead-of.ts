/** "It's a woodland edge, not prairie": what is denied says which line is told otherwise, where its value is free words. */
import { anyOf, fold } from '../../answers/index.js';
import { tell } from '../fields.js';
import { withoutLead } from './named-line.js';
import type { Report, Scene } from '../types.js';

/** Longer texts tell more than one kind of place. */
const LONGEST = 200;

/** Null where no such line has what is denied. */
export function insteadOf(report: Report, typed: string, scene: Scene): Report | null {
  const { tally, putRight, yesNo } = scene.survey.words;
  if (typed.length > LONGEST) return null;
  const text = withoutLead(typed, scene);
  const article = `(?:${anyOf(putRight.articles, putRight.one)}\\s+)?`;
  const lead = `^\\s*(?<lead>(?:${anyOf(putRight.tellsLast, putRight.itIs)}\\s+)?${article})`;
  const behind = new RegExp(
    `${lead}(?<right>.+?)[,\\s]+${anyOf(tally.denies)}\\s+${article}(?<wrong>.+?)[\\s.!]*$`,
    'u',
  );
  // "it's not a meadow, it's a wet meadow"
  const denied = `^\\s*(?:${anyOf(yesNo.denying)}|(?:${anyOf(putRight.itIs)}\\s+)?${anyOf(tally.denies)})\\s+${article}`;
  const ahead = new RegExp(
    `${denied}(?<wrong>.+?)[,;.\\s]+${anyOf(putRight.itIs)}\\s+${article}(?<right>.+?)[\\s.!]*$`,
    'u',
  );
  const folded = fold(text);
  const found = ahead.exec(folded) ?? behind.exec(folded);
  const { right, wrong } = found?.groups ?? {};
  if (right === undefined || wrong === undefined) return null;
  const isFree = (field: string): boolean => scene.survey.dialog.fields[field]?.reader === 'words';
  const isWrong = (value: unknown): boolean => typeof value === 'string' && fold(value) === wrong;
  const field = Object.keys(report.fields).find((name) => isFree(name) && isWrong(report.fields[name]?.value));
  if (field === undefined) return null;
  const from = folded.indexOf(right, found?.groups?.['lead'] === undefined ? folded.indexOf(wrong) + wrong.length : 0);
  return tell(report, field, text.slice(from, from + right.length).trim(), typed, scene.message.id);
}
