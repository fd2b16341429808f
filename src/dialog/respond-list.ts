/** Answers to the numbered list in which mail asks for everything that is open. */
import type { Ask } from '../../shared/phrases.js';
import { fold, ownText, readWish, type Wish } from '../answers/index.js';
import { itemQuestion } from './ask.js';
import { openFields } from './fields.js';
import { changed } from './thread.js';
import { hear, type Heard } from './hear.js';
import { notUnderstood, outcome } from './outcome.js';
import { answerTotal } from './respond-tally.js';
import { briefly } from './summary.js';
import { answerWish } from './wish.js';
import type { Asking, Outcome, Report, Scene, Thread } from './types.js';

type List = Asking & { kind: 'list' };
type Item = List['items'][number];

/** Lines that answer one item of the list; `item` null: told without saying which of them it answers. */
interface Part {
  readonly item: Item | null;
  readonly lines: string[];
}

/** "1. 68", "1) 68", "#1: 68" */
const NUMBERED = /^\s*#?(?<item>\d{1,2})\s?[.):]\s+(?=\S)/u;
/** "1 - 68": also "8 - 10 ft", so only where lines begin so from the first item on. */
const DASHED = /^\s*(?<item>\d{1,2})\s+[-–—]\s+(?=\S)/u;

/** What may be wished of one item: that it is left out, that it is the place used last. */
const OF_ONE_ITEM: ReadonlySet<Wish['wish']> = new Set<Wish['wish']>(['skip', 'unknown', 'same-place']);

interface HeardItem {
  readonly report: Report;
  readonly taken: readonly string[];
  readonly said: readonly string[];
}

const plain = (text: string): string => fold(text).replace(/\s+/g, ' ').trim();

/** Which items a quoted text asks: of one that quotes the whole list, all. */
function itemsAsked(quoted: string, asks: readonly string[], { items }: List): readonly Item[] {
  const said = plain(quoted.replace(/^[ \t>]+/gmu, ''));
  return items.filter((_, at) => said.includes(plain(asks[at] ?? '')));
}

/** The question written once more before its answer is no part of it: "1. When did you watch? Yesterday". */
function withoutEcho(answer: string, ask: string): string {
  const sentences = [ask, ask.slice(0, ask.indexOf('?') + 1)].filter((sentence) => sentence !== '');
  const echo = sentences.find((sentence) => fold(answer).startsWith(fold(sentence)));
  return echo === undefined ? answer : answer.slice(echo.length).replace(/^[\s:–-]+/u, '');
}

/**
 * The lines of a mail by what they answer: behind a number, under the quoted question, or going on right below such a
 * line. What is told apart from them, above or below, answers whatever it does.
 */
function partsOf(text: string, list: List, asks: readonly string[], scene: Scene): Part[] {
  const own = ownText(text, scene.survey.words);
  const typed = text.split('\n');
  const kept = own.text.split('\n');
  const numbers = (pattern: RegExp): number[] =>
    typed.flatMap((line, at) => (kept[at]?.trim() ? Number(pattern.exec(line)?.groups?.['item'] ?? Number.NaN) : []));
  const dashed = numbers(DASHED).filter((number) => !Number.isNaN(number));
  const isDashed = dashed.length > 1 && dashed.every((number, at) => number === at + 1);
  const parts: Part[] = [];
  let current: Part | null = null;
  let from = 0;
  for (const [at, line] of typed.entries()) {
    const start = from;
    from += line.length + 1;
    const keptLine = kept[at] ?? '';
    if (keptLine.trim() === '') {
      // below an empty line something else is told, unless a question stands quoted there
      current = null;
      continue;
    }
    const number = NUMBERED.exec(line) ?? (isDashed ? DASHED.exec(line) : null);
    const item = list.items[Number(number?.groups?.['item']) - 1];
    if (number !== null && item !== undefined) {
      current = { item, lines: [] };
      const answer = withoutEcho(line.slice(number[0].length), asks[list.items.indexOf(item)] ?? '');
      if (answer.trim() !== '') current.lines.push(answer);
      parts.push(current);
      continue;
    }
    if (current === null) {
      const quoted = own.parts.find(({ span }) => span[0] < start + line.length && start < span[1])?.question ?? null;
      const asked = quoted === null ? [] : itemsAsked(quoted, asks, list);
      const only = asked.length === 1 ? (asked[0] ?? null) : null;
      const last = parts.at(-1);
      current = only === null && last?.item === null ? last : { item: only, lines: [] };
      if (current !== last) parts.push(current);
    }
    current.lines.push(keptLine);
  }
  return parts.filter(({ lines }) => lines.length > 0);
}

/** Read along with everything else a text tells; a bare place or "none" would be found anywhere. */
const IN_PASSING: ReadonlySet<string> = new Set(['date', 'times', 'habitat']);
/** Told by a line of its own: "Oak Rise", "none". */
const BY_A_LINE: readonly string[] = ['place', 'tally'];

/** A text that answers several questions at once, in any order; a line that tells nothing else may be a bare answer. */
function hearAll(report: Report, lines: readonly string[], items: readonly Item[], scene: Scene): Heard {
  const fields = items.flatMap((item) => item.fields);
  const asked = fields.filter((field) => IN_PASSING.has(field));
  const heard = hear(report, lines.join('\n'), asked, scene);
  const bare = lines.filter((line) => !hear(report, line, asked, scene).understood);
  return BY_A_LINE.filter((field) => fields.includes(field)).reduce((so, field) => {
    const isOpen = items.some(
      ({ question }) => openFields(question, so.report, scene).includes(field) && lines.length > 1,
    );
    if (!isOpen) return so;
    const [answer, ...others] = bare.flatMap((line) => {
      const one = hear(so.report, line, [field], scene);
      return one.taken.includes(field) ? [one] : [];
    });
    if (answer === undefined || others.length > 0) return so;
    return { ...answer, taken: [...so.taken, ...answer.taken], ask: so.ask };
  }, heard);
}

/** One item's own answer, as if that question had been asked alone. `said`: what could not be taken of it. */
function hearItem(thread: Thread, report: Report, item: Item, text: string, scene: Scene): HeardItem {
  const alone: Thread = { ...thread, report, asking: { kind: 'question', ...item, again: false } };
  const wish = readWish(text, scene.survey.words);
  if (wish !== null && OF_ONE_ITEM.has(wish.wish)) {
    const granted = answerWish(alone, wish, scene);
    if (granted?.thread.report) return { report: granted.thread.report, taken: [], said: granted.said };
  }
  const heard = hear(report, text, item.fields, scene);
  if (heard.understood) {
    const next = changed(heard.report, { asked: [...heard.report.asked, item.question] });
    return { report: next, taken: heard.taken, said: [] };
  }
  const total = item.fields.includes('tally') ? answerTotal(alone, report, text, scene)?.thread.report : undefined;
  if (total) return { report: total, taken: ['tally'], said: [] };
  return { report, taken: [], said: notUnderstood(alone, heard.ask ?? 'not-that', text, scene).said };
}

/** "1. 68" goes to the first item, whatever the order; text without numbers is read for all of them. */
export function answerList(thread: Thread, report: Report, asking: List, text: string, scene: Scene): Outcome {
  const asks = asking.items.map((item) => itemQuestion(item, report, scene));
  const parts = partsOf(text, asking, asks, scene);
  let next = report;
  const taken: string[] = [];
  const said: string[] = [];
  for (const item of asking.items)
    for (const { lines } of parts.filter((part) => part.item === item)) {
      const heard = hearItem(thread, next, item, lines.join('\n'), scene);
      next = heard.report;
      taken.push(...heard.taken);
      said.push(...heard.said);
    }
  let ask: Ask | null = null;
  for (const { lines } of parts.filter(({ item }) => item === null)) {
    const heard = hearAll(next, lines, asking.items, scene);
    next = heard.report;
    taken.push(...heard.taken);
    ask ??= heard.ask;
  }
  if (next === report && said.length === 0)
    return { ...notUnderstood(thread, ask ?? 'not-that', text, scene), then: 'repeat' };
  return { ...outcome(thread, next, said), echo: briefly(taken, next, scene) };
}
