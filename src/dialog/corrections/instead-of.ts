/** "It's a woodland edge, not prairie": what is denied says which line is told otherwise, where its value is free words. */
import { anyOf, fold } from '../../answers/index.js';
import { tell } from '../fields.js';
import { withoutLead } from './named-line.js';
import type { Report, Scene } from '../types.js';

/** Null where no such line has what is denied. */
export function insteadOf(report: Report, typed: string, scene: Scene): Report | null {
  const { tally, putRight } = scene.survey.words;
  const text = withoutLead(typed, scene);
  const article = `(?:${anyOf(putRight.articles, putRight.one)}\\s+)?`;
  const pattern = new RegExp(
    `^\\s*(?<lead>(?:${anyOf(putRight.tellsLast, putRight.itIs)}\\s+)?${article})(?<right>.+?)[,\\s]+${anyOf(tally.denies)}\\s+${article}(?<wrong>.+?)[\\s.!]*$`,
    'u',
  );
  const { lead = '', right, wrong } = pattern.exec(fold(text))?.groups ?? {};
  if (right === undefined || wrong === undefined) return null;
  const isFree = (field: string): boolean => scene.survey.dialog.fields[field]?.reader === 'words';
  const isWrong = (value: unknown): boolean => typeof value === 'string' && fold(value) === wrong;
  const field = Object.keys(report.fields).find((name) => isFree(name) && isWrong(report.fields[name]?.value));
  if (field === undefined) return null;
  const from = fold(text).search(/\S/) + lead.trimStart().length;
  return tell(report, field, text.slice(from, from + right.length).trim(), typed, scene.message.id);
}
