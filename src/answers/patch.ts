/**
 * Reads how big the part watched was: "30 by 12 feet", "8 feet across", "100 sq ft", "half an acre". Metres and square
 * metres, from units that are exact. A side alone, sides without a unit, and two patches are unsure.
 */
import type { Patch } from '../../shared/record.js';
import { isLength, measuresIn, plainSizes, squareMetresOf, type Measure } from './patch/measures.js';
import { patchPhrases, REACH, type PatchPhrases } from './patch/phrases.js';
import { areaOf, shapesOf, type Shape, type UnitForBare } from './patch/shapes.js';
import { none, sure, unsure, type Context, type Finder, type Reader, type Reading, type Span } from './reading.js';
import { blank, fold, joinSpans } from './text.js';

/** Longer texts are no size. */
const MOST_CHARACTERS = 2000;
/** Two sizes that differ by less are one size said twice: "10 x 12 ft (11 sq m)". */
const SAME_SIZE = 0.07;
/** One side by itself that is shorter is of something else where two sides are told. In metres. */
const SMALLEST_ALONE = 0.5;

interface Found {
  readonly text: string;
  readonly shapes: readonly Shape[];
  readonly measures: readonly Measure[];
}

const same = (one: Patch, other: Patch): boolean =>
  Math.abs(one.squareMetres - other.squareMetres) <= SAME_SIZE * Math.max(one.squareMetres, other.squareMetres);

/** Where the last correction ends that still has a size behind it, or a unit alone: "sorry, metres". Null where none is. */
function correctionIn(folded: string, measures: readonly Measure[], phrases: PatchPhrases): Span | null {
  const [first] = measures;
  if (!first) return null;
  for (const match of [...folded.matchAll(phrases.corrections)].reverse()) {
    const span: Span = [match.index, match.index + match[0].length];
    if (
      span[0] >= first.span[1] &&
      (measures.some((measure) => measure.span[0] >= span[1]) || phrases.detached.test(folded.slice(span[1])))
    )
      return span;
  }
  return null;
}

/** The unit said elsewhere in the text for sides that have none, or the survey's. */
function unitForBare(
  folded: string,
  measures: readonly Measure[],
  context: Context,
  phrases: PatchPhrases,
): UnitForBare {
  const said = measures.map(({ unit }) => unit).find(isLength);
  if (said) return { unit: said, said: true };
  const named = [...folded.matchAll(phrases.anyUnitWord)].map(
    (match) => context.words.patch.lengths[match.groups?.['name'] ?? ''],
  );
  const [only] = named;
  return only && named.every((unit) => unit === only)
    ? { unit: only, said: true }
    : { unit: context.survey.lengthUnit, said: false };
}

/**
 * What it was not ("not 20 ft, more like 12 ft by 6 ft") and the whole place ("part of a 2 acre prairie") are left out
 * where anything else is said.
 */
function ofThePatch(folded: string, measures: readonly Measure[], phrases: PatchPhrases): readonly Measure[] {
  const left = measures.filter(
    ({ span: [from, to], kind }) =>
      !phrases.not.test(folded.slice(Math.max(0, from - REACH), from)) &&
      !(kind === 'area' && phrases.notPatch.test(folded.slice(to, to + REACH))),
  );
  return left.length > 0 ? left : measures;
}

function find(typed: string, context: Context, phrases: PatchPhrases): Found {
  const folded = plainSizes(typed, context.words, phrases);
  const measures = ofThePatch(folded, measuresIn(folded, context.words, phrases), phrases);
  const correction = correctionIn(folded, measures, phrases);
  const later = correction ? measures.filter(({ span }) => span[0] >= correction[1]) : measures;
  if (!correction) {
    const bareUnit = unitForBare(folded, measures, context, phrases);
    return { text: folded, shapes: shapesOf(folded, measures, bareUnit, phrases), measures };
  }
  const { unit } = unitForBare(folded.slice(correction[1]), later, context, phrases);
  // "sorry, metres": the size before with the unit after
  const kept =
    later.length > 0 ? later : measures.map((measure) => (isLength(measure.unit) ? { ...measure, unit } : measure));
  const bareUnit = unitForBare(folded, later.length > 0 ? [...later, ...measures] : kept, context, phrases);
  const text = later.length > 0 ? blank(folded, [[0, correction[1]]]) : folded;
  const shapes = shapesOf(text, kept, later.length > 0 ? bareUnit : { unit, said: true }, phrases);
  if (shapes.length > 0) return { text, shapes, measures: kept };
  // "20 by 10 feet. sunny, no wind. one queen": what follows puts no size right
  const whole = shapesOf(folded, measures, unitForBare(folded, measures, context, phrases), phrases);
  return { text: folded, shapes: whole, measures };
}

/** Leaves out a size that only says another again, and gives the one with more in it. */
function distinct(all: readonly Shape[], text: string, phrases: PatchPhrases): Shape[] {
  const left: Shape[] = [];
  const sided = all.some(({ patch, ask }) => patch.shape === 'rectangle' && ask === null);
  // "16 by 10 ft, by my boots that are a foot long"
  const aside = ({ patch, ask }: Shape): boolean =>
    sided && ask === 'patch-one-length' && patch.squareMetres < SMALLEST_ALONE ** 2;
  const shapes = all.filter((shape) => !aside(shape));
  for (const [index, shape] of shapes.entries()) {
    const before = shapes[index - 1];
    // "10 by 15 feet (3 by 4.6 m)"
    if (
      before?.patch.shape === shape.patch.shape &&
      same(before.patch, shape.patch) &&
      phrases.restated.test(text.slice(before.span[1], shape.span[0]))
    )
      continue;
    const at = left.findIndex(
      (other) => (other.patch.shape === 'area' || shape.patch.shape === 'area') && same(other.patch, shape.patch),
    );
    if (at === -1) left.push(shape);
    else if (left[at]!.patch.shape === 'area') left[at] = shape;
  }
  return left;
}

/** How many patches are said to be: "two plots of 1 m2", "two 4 x 8 ft beds", "3 pots, 14 in across each". */
function patchesSaid({ text, measures, shapes }: Found, phrases: PatchPhrases): number {
  const counts = measures.filter(
    ({ kind, value, span }) =>
      kind === 'bare' &&
      Number.isInteger(value) &&
      value > 1 &&
      value <= 20 &&
      !shapes.some((shape) => span[0] >= shape.span[0] && span[1] <= shape.span[1]),
  );
  const said = counts.find(({ span }) => {
    const after = text.slice(span[1], span[1] + 60);
    return phrases.several.test(after) || (/^\s+(?:\d|['"])/u.test(after) && phrases.severalAnywhere.test(after));
  });
  const [first] = counts;
  const saysEach = first !== undefined && phrases.each.test(/^[^.!?\n]*/.exec(text.slice(first.span[0]))![0]);
  return said?.value ?? (saysEach ? first.value : undefined) ?? 1;
}

function readingOf(found: Found, doubted: boolean, phrases: PatchPhrases): Reading<Patch> {
  const { text, shapes, measures } = found;
  const all = distinct(shapes, text, phrases);
  const [only, ...more] = all;
  if (!only)
    return none(phrases.paces.test(text) ? 'patch-paces' : measures.length > 0 ? 'patch-bare-number' : 'patch-no-size');
  const used = joinSpans(all.map(({ span }) => span));
  if (all.some(({ patch }) => patch.squareMetres <= 0)) return none('patch-no-size', used);
  const said = phrases.joined.test(text) ? 1 : patchesSaid(found, phrases);
  const sum = all.reduce((square, { patch }) => square + patch.squareMetres, 0);
  if (more.length > 0) return unsure([areaOf(sum), ...all.map(({ patch }) => patch)], 'patch-several', used);
  if (said > 1) return unsure([areaOf(sum * said), only.patch], 'patch-several', used);
  if (only.ask) return unsure([only.patch, ...only.others], only.ask, used);
  if (phrases.other.test(text) && only.patch.shape === 'rectangle') {
    // an ellipse within its sides
    return unsure([areaOf((only.patch.squareMetres * Math.PI) / 4), only.patch], 'patch-shape', used);
  }
  return doubted ? unsure([only.patch], 'patch-doubt', used) : sure(only.patch, used);
}

export const readPatch: Reader<Patch> = (text, context) => {
  const phrases = patchPhrases(context.words);
  // whole answers in quotation marks have no inches at their end
  const folded = fold(text).replace(/^(\s*)"(.*)"(\s*)$/su, '$1 $2 $3');
  if (folded.trim() === '') return none('empty');
  if (text.length > MOST_CHARACTERS) return none('too-long');
  const found = find(folded, context, phrases);
  if (found.shapes.length === 0) {
    const square = phrases.bareSquare.exec(folded);
    const unit = context.words.patch.lengths[square?.groups?.['name'] ?? ''];
    if (square && unit && found.measures.length === 0) {
      return sure(areaOf(squareMetresOf({ value: 1, unit })), [[square.index, square.index + square[0].length]]);
    }
  }
  const [bare] = found.measures;
  if (found.shapes.length === 0 && bare && phrases.bareArea.test(found.text.slice(bare.span[1]))) {
    const area = squareMetresOf({ value: bare.value, unit: context.survey.lengthUnit });
    return unsure([areaOf(area)], 'patch-no-unit', [bare.span]);
  }
  if (phrases.paces.test(folded) && found.shapes.length < 2 && found.measures.some(({ kind }) => kind === 'bare'))
    return none('patch-paces');
  return readingOf(found, phrases.doubting.test(found.text), phrases);
};

/** Ends of sentences and lines; "ft. by" ends none. */
const SENTENCE_ENDS = /\n|;|[.!?](?=\s+\p{Lu}|\s*$)/gmu;

/** Sentences and lines with where they begin. `text` as typed, since capitals tell a new sentence. */
function sentencesOf(text: string): { readonly from: number; readonly to: number }[] {
  const sentences: { from: number; to: number }[] = [];
  let from = 0;
  for (const match of text.matchAll(SENTENCE_ENDS)) {
    sentences.push({ from, to: match.index });
    from = match.index + match[0].length;
  }
  sentences.push({ from, to: text.length });
  return sentences;
}

/** More sizes than this in one note are not all patches. */
const MOST_PATCHES = 6;
/** A whole farm is told in acres; a patch that somebody can watch is smaller. In square metres. */
const LARGEST_IN_PASSING = 2500;
/** Lengths of bees and of trails are told as well: one side by itself counts in these units only. */
const UNITS_OF_ONE_SIDE: readonly Measure['unit'][] = ['ft', 'yd', 'm'];

/** True for a size that can be nothing else even in a longer text. */
function isUnmistakable(
  folded: string,
  { span, ask, patch }: Shape,
  measures: readonly Measure[],
  phrases: PatchPhrases,
): boolean {
  const own = measures.filter((measure) => measure.span[0] >= span[0] && measure.span[1] <= span[1]);
  if (ask === 'patch-no-unit' || own.every(({ unit }) => unit === null)) return false;
  const [only, ...more] = own;
  if (!only || more.length > 0) return true;
  if (patch.shape === 'area') {
    const farm = phrases.notPatch.test(folded.slice(span[1], span[1] + 60)) || patch.squareMetres > LARGEST_IN_PASSING;
    return isLength(only.unit) || !farm;
  }
  if (only.kind === 'square') return true;
  const sided =
    only.role === 'long' ||
    only.role === 'wide' ||
    only.role === 'across' ||
    only.role === 'radius' ||
    only.role === 'side';
  return sided && UNITS_OF_ONE_SIDE.includes(only.unit);
}

const moved = (span: Span, by: number): Span => [span[0] + by, span[1] + by];

/**
 * In passing only sizes with their own unit: two sides, a length said to be long, wide or across, an area that is not
 * the farm's; after a label ("patch: 10 x 12") sides without a unit, too. At most one reading: two sizes are asked back.
 */
export const findPatch: Finder<Patch> = (text, context) => {
  const phrases = patchPhrases(context.words);
  const folded = fold(text);
  const found: { shapes: Shape[]; measures: Measure[]; doubted: boolean } = {
    shapes: [],
    measures: [],
    doubted: false,
  };
  for (const { from, to } of sentencesOf(text)) {
    const sentence = folded.slice(from, to);
    if (!/\d|\p{L}{3}/u.test(sentence) || found.shapes.length > MOST_PATCHES) continue;
    const label = phrases.labels.exec(sentence);
    const start = label ? label.index + label[0].length : 0;
    const { shapes, measures } = find(blank(sentence, [[0, start]]), context, phrases);
    const kept = shapes.filter((shape) => label !== null || isUnmistakable(sentence, shape, measures, phrases));
    if (kept.length === 0) continue;
    found.shapes.push(...kept.map((shape) => ({ ...shape, span: moved(shape.span, from) })));
    found.measures.push(
      ...measures.map((measure) => ({ ...measure, span: moved(measure.span, from), to: measure.to + from })),
    );
    found.doubted ||= kept.some(({ span }) => phrases.doubting.test(clauseAround(sentence, span)));
  }
  return found.shapes.length === 0 ? [] : [readingOf({ ...found, text: folded }, found.doubted, phrases)];
};

/** The words from comma to comma around the span: a doubt elsewhere in a long sentence is about something else. */
function clauseAround(sentence: string, [from, to]: Span): string {
  const before = sentence.slice(0, from).split(/,\s/u).at(-1) ?? '';
  const after = sentence.slice(to).split(/,\s/u)[0] ?? '';
  return before + sentence.slice(from, to) + after;
}
