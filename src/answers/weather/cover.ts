/** Finds how much of the sky is said to be cloud in numbers: "30%", "3/8", "6 oktas", "1/4 cloud", "80% clear". */
import type { Cloud } from '../../../shared/vocabularies.js';
import type { Words } from '../../../shared/words.js';
import { findAmounts } from '../numbers.js';
import type { Span } from '../reading.js';
import { madeOnce } from '../text.js';
import { findMeasures } from './measures.js';
import { clauseAt, tokenAt, type Spoken } from './spoken.js';

export interface Cover {
  /** One class, or two where the number lies just between them, the cloudier first. */
  readonly clouds: readonly Cloud[];
  /** A unit or a word for cloud says that it is of the sky. */
  readonly marked: boolean;
  /** Could as well be something else: "1/4", "8/10". */
  readonly doubtful: boolean;
  readonly span: Span;
  readonly clause: number;
}

const EIGHTHS = 8;
/** Lowest okta of each class. Source: the okta classes of synoptic meteorology (WMO-No. 8): FEW 1–2, SCT 3–4, BKN 5–7, OVC 8. */
const cloudOfOktas = (oktas: number): Cloud =>
  oktas >= 8 ? 'overcast' : oktas >= 5 ? 'broken' : oktas >= 3 ? 'scattered' : oktas >= 1 ? 'few' : 'clear';

/**
 * The class of a share of the sky, 0 to 1, by the nearest okta. Any cloud is at least 1 okta, any gap at most 7. Just
 * between two oktas of different classes it is both.
 */
export function cloudsOf(share: number): readonly Cloud[] {
  const exact = share * EIGHTHS;
  const okta = (nearest: number): number => Math.min(exact < EIGHTHS ? 7 : 8, Math.max(exact > 0 ? 1 : 0, nearest));
  const up = cloudOfOktas(okta(Math.floor(exact + 0.5)));
  const down = cloudOfOktas(okta(Math.ceil(exact - 0.5)));
  return up === down ? [up] : [up, down];
}

type Unit = 'percent' | 'eighths';

const patternsOf = madeOnce(({ sky }: Words) => {
  const anyOf = (list: readonly string[]): string => list.join('|');
  return {
    percent: new RegExp(`^\\s{0,2}(?:${anyOf(sky.percent)})(?!\\p{L})`, 'u'),
    eighths: new RegExp(`^[\\s-]{0,2}(?:${anyOf(sky.eighths)})(?!\\p{L})`, 'u'),
    // 3/8 · 3-4/8 · 3 of 8 · 7 / 10
    ratio: new RegExp(
      `(?<![\\p{L}\\p{N}/.:-])(?<low>\\d{1,2})(?:\\s?(?:-|to|or)\\s?(?<high>\\d{1,2}))?\\s{0,2}(?:/|${anyOf(sky.outOf)})\\s{0,2}(?<whole>8|10)(?![\\p{N}/:]|[.,-]\\d|th(?!s))`,
      'gu',
    ),
  };
});

/** Words for cloud or its absence are looked for so many words behind the number, and before it. */
const FARTHEST_BEHIND = 5;
const FARTHEST_BEFORE = 3;

type Side = 'covered' | 'uncovered' | null;

/** What the number is a share of: cloud, or clear sky. */
function sideOf(
  text: Spoken,
  span: Span,
  words: Words,
  others: ReadonlySet<number>,
): { side: Side; other: boolean; span: Span } {
  const { tokens, clauses } = text;
  const clause = clauseAt(text, span[0]);
  const from = tokenAt(text, span[0]);
  const to = tokenAt(text, span[1]);
  const { sky } = words;
  const sideAt = (at: number): Side => {
    const word = tokens[at]!.word;
    return sky.covered.includes(word) ? 'covered' : sky.uncovered.includes(word) ? 'uncovered' : null;
  };
  const other = others.has(clause);
  for (let at = to; at < to + FARTHEST_BEHIND && tokens[at]?.clause === clause; at++) {
    if (/^\d/.test(tokens[at]!.word) || sky.otherPercent.includes(tokens[at]!.word)) break;
    if (sky.otherPart.includes(tokens[at]!.word)) break;
    const side = sideAt(at);
    if (side) return { side, other: false, span: [span[0], tokens[at]!.span[1]] };
  }
  for (let at = from - 1; at >= from - FARTHEST_BEFORE && tokens[at]?.clause === clause; at--) {
    const side = sideAt(at);
    if (side) return { side, other: false, span: [tokens[at]!.span[0], span[1]] };
  }
  const before = clauses[clause - 1];
  const label = before && before.to - before.from <= 2 && /[:=-]\s*$/.test(clauses[clause]!.gap);
  if (label && tokens.slice(before.from, before.to).some((token) => sky.covered.includes(token.word))) {
    return { side: 'covered', other: false, span: [before.span[0], span[1]] };
  }
  return { side: null, other, span };
}

/** Layers of an aviation report with their height in hundreds of feet: "FEW050", "SCT035CB". Source: WMO-No. 306, FM 15. */
const LAYER = /(?<![\p{L}\p{N}])(?<amount>few|sct|bkn|ovc)\d{3}(?:cb|tcu)?(?![\p{L}\p{N}])/gu;
const LAYER_CLOUDS: Readonly<Record<string, Cloud>> = {
  few: 'few',
  sct: 'scattered',
  bkn: 'broken',
  ovc: 'overcast',
};

/** The layers as one cover: seen from below, the amount of each layer counts those below it in. */
function layersIn(text: Spoken): Cover[] {
  const layers = [...text.folded.matchAll(LAYER)];
  const [first, last] = [layers[0], layers.at(-1)];
  if (!first || !last) return [];
  const clouds = layers.map((match) => LAYER_CLOUDS[match.groups?.['amount'] ?? '']!);
  const most = (['overcast', 'broken', 'scattered', 'few'] as const).find((cloud) => clouds.includes(cloud))!;
  const span: Span = [first.index, last.index + last[0].length];
  return [{ clouds: [most], marked: true, doubtful: false, span, clause: clauseAt(text, span[0]) }];
}

/** All that is said in numbers of the sky, left to right. */
export function coversIn(text: Spoken, words: Words): Cover[] {
  const { folded } = text;
  const patterns = patternsOf(words);
  const otherWords = new Set(words.sky.otherPercent);
  const others = new Set(text.tokens.flatMap(({ word, clause }) => (otherWords.has(word) ? [clause] : [])));
  const covers: Cover[] = [];
  const taken = new Set<number>();
  const isTaken = ([from, to]: Span): boolean => {
    for (let position = from; position < to; position++) if (taken.has(position)) return true;
    return false;
  };
  const add = (share: number, span: Span, as: { marked: boolean; doubtful: boolean }): void => {
    const { side, other, span: reach } = sideOf(text, span, words, others);
    if (other || share < 0 || share > 1) return;
    for (let position = span[0]; position < span[1]; position++) taken.add(position);
    covers.push({
      clouds: cloudsOf(side === 'uncovered' ? 1 - share : share),
      marked: as.marked || side !== null,
      doubtful: as.doubtful && side === null,
      span: reach,
      clause: clauseAt(text, span[0]),
    });
  };

  const unitAt = (rest: string): { unit: Unit; length: number } | null => {
    const percent = patterns.percent.exec(rest);
    if (percent) return { unit: 'percent', length: percent[0].length };
    const eighths = patterns.eighths.exec(rest);
    return eighths ? { unit: 'eighths', length: eighths[0].length } : null;
  };
  for (const { low, high, unit, span, foreign } of findMeasures(folded, words, unitAt)) {
    if (foreign || unit === null) continue;
    const middle = (low + high) / 2;
    // a percentage may be of anything; nobody counts anything else in oktas
    add(middle / (unit === 'percent' ? 100 : EIGHTHS), span, { marked: unit === 'eighths', doubtful: false });
  }
  for (const match of folded.matchAll(patterns.ratio)) {
    const { low = '', high = low, whole = '' } = match.groups ?? {};
    const span: Span = [match.index, match.index + match[0].length];
    if (isTaken(span)) continue;
    // eight tenths is also a mark for a fine day
    add((Number(low) + Number(high)) / 2 / Number(whole), span, { marked: false, doubtful: whole === '10' });
  }
  for (const { value, span } of findAmounts(folded, words)) {
    if (value <= 0 || value >= 1 || isTaken(span)) continue;
    add(value, span, { marked: false, doubtful: true });
  }
  covers.push(...layersIn(text));
  return covers.sort((a, b) => a.span[0] - b.span[0]);
}
