/**
 * Corrections of queens told before: "3 bimacs, not 2", "the columbine one was a ternarius, not an impatiens", "take
 * out the impatiens". What is not clearly about a line that is there is left to the readers.
 */
import { anyOf, fold, namedIn, rankOf, readCount, readFields, saysAnyOf, type NamedIn } from '../../answers/index.js';
import { addLines, queensOf } from '../fields.js';
import { contextOf, joined, lineOf } from '../hear.js';
import { afterOpening, countsOne, readCorrection, tellsMore } from './put-right.js';
import { saysDoubt } from './tell-doubt.js';
import { changed } from '../thread.js';
import type { Report, Scene, TallyLine } from '../types.js';

const onPlants = (line: TallyLine, { plants }: NamedIn): boolean =>
  plants.length === 0 || (line.plant !== null && plants.includes(line.plant));

/** Lines with queens of that bee, on the plants that the text names if it names any. */
const linesOf = (report: Report, bee: string, named: NamedIn): TallyLine[] =>
  (report.tally ?? []).filter((line) => line.count > 0 && line.bee === bee && onPlants(line, named));

/** "… was not", "… should be only 2": words right before a name, with an article or number between. */
function endsWithAny(text: string, said: readonly string[], { survey }: Scene, more: readonly string[] = []): boolean {
  const { numbers, putRight } = survey.words;
  const article = `(?:${anyOf(putRight.articles, putRight.one, Object.keys(numbers.units))}|\\d+)`;
  // the colon behind a plant begins what is told of it
  return new RegExp(`(?<!\\p{L})${anyOf(said)}(?:\\s+${anyOf(more)})?(?:\\s+${article})?\\s*$`, 'u').test(text);
}

/** Of two bees the one that was told wrongly: the denied one, else the one that "should be" the other. */
function wrongBee(text: string, { bees, at }: NamedIn, scene: Scene): { wrong: string; right: string } | null {
  const [one, other] = bees;
  if (one === undefined || other === undefined || bees.length !== 2) return null;
  const { tally, wishes } = scene.survey.words;
  const folded = fold(text);
  if (endsWithAny(folded.slice(0, at[0]![0]), tally.denies, scene)) return { wrong: one, right: other };
  const between = folded.slice(at[0]![1], at[1]![0]);
  if (endsWithAny(between, tally.denies, scene)) return { wrong: other, right: one };
  return endsWithAny(between, wishes.becomes, scene, wishes.beforeValue) ? { wrong: one, right: other } : null;
}

/** Each of the lines becomes another, or goes; the others stand where they stood. */
function withLines(
  report: Report,
  lines: readonly TallyLine[],
  change: (line: TallyLine) => TallyLine | null,
  typed: string,
): Report {
  const tally = (report.tally ?? []).flatMap((line) => (lines.includes(line) ? (change(line) ?? []) : line));
  // a number told first is overruled by what is told now
  const total = report.total === null ? null : queensOf(tally);
  return changed(report, { tally, total, tallyTyped: [...report.tallyTyped, typed] });
}

/** "3 bimac, not 2 impatiens": the digits right before the bee; null where there are none. */
function countBefore(text: string, bee: string, { bees, at }: NamedIn): number | null {
  const digits = /(?<![\d.,])(?<count>\d{1,3})\s*$/u.exec(text.slice(0, at[bees.indexOf(bee)]![0]))?.groups?.['count'];
  return digits === undefined || Number(digits) === 0 ? null : Number(digits);
}

/** Another name for queens told. */
function renamed(report: Report, text: string, named: NamedIn, scene: Scene): Report | null {
  const bees = wrongBee(text, named, scene);
  if (bees === null) return null;
  const lines = linesOf(report, bees.wrong, named);
  if (lines.length === 0) return null;
  const rank = rankOf(bees.right, contextOf(scene, report));
  const counted = lines.length === 1 ? countBefore(text, bees.right, named) : null;
  return withLines(
    report,
    lines,
    (line) => ({
      ...line,
      bee: bees.right,
      rank,
      typed: text,
      doubt: saysDoubt(text, scene) === true,
      count: counted ?? line.count,
    }),
    text,
  );
}

/** Another count of a bee that stands on one plant only. */
function recounted(report: Report, text: string, named: NamedIn, scene: Scene): Report | null {
  const [bee] = named.bees;
  if (bee === undefined || named.bees.length !== 1 || named.plants.length > 1) return null;
  const { another } = scene.survey.words.tally;
  if (another.some((word) => ` ${fold(text)} `.includes(` ${word} `))) return null;
  const all = linesOf(report, bee, named);
  // "one imp, not two": the line that has two
  const denied = readCorrection(text, report, scene)?.denied.counts ?? [];
  const lines = all.length > 1 ? all.filter(({ count }) => denied.includes(count)) : all;
  const [line] = lines;
  const reading = readFields(text, contextOf(scene, report), ['tally']).fields.tally;
  if (line === undefined || lines.length !== 1 || reading?.state !== 'sure') return null;
  // "the two-spotted was huge" is no count of one
  if (readCorrection(text, report, scene)?.right.counts.length === 0) return null;
  const rows = reading.value.filter(({ count }) => count > 0);
  const [row] = rows;
  if (row === undefined || rows.length !== 1 || row.bee !== bee || row.seenBefore !== undefined) return null;
  return withLines(report, lines, () => ({ ...line, count: row.count, caste: row.caste ?? line.caste }), text);
}

/** "3, not 2, on the geranium", where queens of one bee only stand on it. */
function recountedOn(report: Report, text: string, named: NamedIn, scene: Scene): Report | null {
  const lines = (report.tally ?? []).filter((line) => line.count > 0 && onPlants(line, named));
  if (named.bees.length > 0 || named.plants.length !== 1 || lines.length !== 1) return null;
  const { denies, onPlants: on } = scene.survey.words.tally;
  const stops = [...denies, ...on].map((word) => ` ${fold(text)}`.indexOf(` ${word} `)).filter((at) => at >= 0);
  // without "on" it is a number of flowers, unless it says what it is not: "the redbud had 2, not 1"
  const correction = readCorrection(text, report, scene);
  const [instead, ...others] = correction?.right.counts ?? [];
  const isOfQueens =
    correction?.denied.counts[0] === lines[0]!.count || saysAnyOf(text, scene.survey.words.tally.queens);
  if (instead !== undefined && others.length === 0 && isOfQueens)
    return withLines(report, lines, (line) => ({ ...line, count: instead }), text);
  if (!on.some((word) => fold(text).includes(` ${word} `))) return null;
  const count = readCount(text.slice(0, Math.min(...stops)), { ...contextOf(scene, report), of: 'queens' });
  if (count.state !== 'sure' || count.value.value === 0) return null;
  return withLines(report, lines, (line) => ({ ...line, count: count.value.value }), text);
}

/** "The one on the redbud was a brown-belted": another name for all that is told of that plant. */
function renamedOn(report: Report, text: string, scene: Scene): Report | null {
  const { putRight } = scene.survey.words;
  const correction = readCorrection(text, report, scene);
  if (correction === null || tellsMore(text, scene) || !saysAnyOf(text, putRight.theOne)) return null;
  const [bee, ...bees] = correction.right.bees;
  const [plant, ...plants] = correction.right.plants;
  if (bee === undefined || plant === undefined || bees.length + plants.length > 0) return null;
  const lines = (report.tally ?? []).filter((line) => line.count > 0 && line.plant === plant);
  const [line] = lines;
  if (line === undefined || lines.length > 1 || line.bee === bee) return null;
  if (correction.right.counts.some((count) => count !== line.count)) return null;
  const rank = rankOf(bee, contextOf(scene, report));
  return withLines(report, lines, () => ({ ...line, bee, rank, typed: text, doubt: false }), text);
}

/** "There was one more two-spotted on the bluebells": they come to those told. */
function withMore(report: Report, text: string, scene: Scene): Report | null {
  const correction = readCorrection(text, report, scene);
  if (correction === null || !saysAnyOf(text, scene.survey.words.putRight.furtherOf)) return null;
  const { right, denied } = correction;
  if (right.bees.length !== 1 || right.plants.length > 1 || right.counts.length > 1) return null;
  if (denied.bees.length + denied.plants.length + denied.counts.length > 0) return null;
  const [bee] = right.bees;
  const lines = linesOf(report, bee!, { bees: [], at: [], plants: right.plants });
  if (lines.length !== 1) return null;
  return withLines(report, lines, (line) => ({ ...line, count: line.count + (right.counts[0] ?? 1) }), text);
}

/** "The common eastern was on the geranium, not the redbud": the same queens, elsewhere. */
function moved(report: Report, text: string, scene: Scene): Report | null {
  const correction = readCorrection(text, report, scene);
  if (correction === null || tellsMore(text, scene)) return null;
  const { right, denied } = correction;
  const [bee] = right.bees;
  const [plant] = right.plants;
  if (plant === undefined || right.plants.length > 1 || right.bees.length > 1) return null;
  if (denied.bees.length + denied.counts.length > 0 || denied.plants.length > 1) return null;
  const some = countOf(text, scene);
  // "1 common eastern on the geranium" may be another one, and "on the geranium" alone says nothing
  const isDenied = denied.plants.length === 1;
  if (
    !isDenied &&
    (bee === undefined ||
      (right.counts.length > 0 && some === null) ||
      !saysAnyOf(text, scene.survey.words.putRight.isAre))
  )
    return null;
  const lines = (report.tally ?? []).filter(
    (line) =>
      line.count > 0 && (bee === undefined || line.bee === bee) && (!isDenied || line.plant === denied.plants[0]),
  );
  const [line] = lines;
  if (line === undefined || lines.length > 1 || line.plant === plant) return null;
  if (some !== null && some < line.count) return split(report, line, plant, some, text, scene);
  if (right.counts.some((count) => count !== line.count)) return null;
  const next = withLines(report, lines, () => ({ ...line, plant }), text);
  const others = (next.tally ?? []).filter(({ count, plant: on }) => count > 0 || on !== plant);
  const isEmptied = others.every(({ plant: on }) => on !== line.plant);
  return joined(changed(next, { tally: isEmptied ? [...others, noneOf(line)] : others }), scene);
}

/** "One of the two-spotted", "2 of them": how many; null where all are meant. */
function countOf(text: string, { survey }: Scene): number | null {
  const { numbers, putRight } = survey.words;
  const pattern = new RegExp(`(?<![\\p{L}\\d])(?<count>\\d{1,2}|\\p{L}+)\\s+${anyOf(putRight.someOf)}`, 'u');
  const said = pattern.exec(fold(text))?.groups?.['count'];
  if (said === undefined) return null;
  return /^\d/.test(said) ? Number(said) : (numbers.units[said] ?? null);
}

/** Some of the queens of a line were on another plant. */
function split(report: Report, line: TallyLine, plant: string, count: number, typed: string, scene: Scene): Report {
  const less = withLines(report, [line], () => ({ ...line, count: line.count - count }), typed);
  const there = (less.tally ?? []).find((known) => known.plant === plant && known.bee === line.bee);
  return joined(addLines(less, [{ ...line, plant, count: count + (there?.count ?? 0) }]), scene);
}

/** The plant of a line was watched, and had none. */
export const noneOf = (line: TallyLine): TallyLine => ({
  ...line,
  bee: null,
  rank: null,
  count: 0,
  seenBefore: 0,
  withPollen: null,
  caste: null,
  doubt: false,
});

/** A bee that was told, named without a number: such words count none. */
export function tellsNoCount(report: Report, text: string, scene: Scene): boolean {
  const { bees } = namedIn(text, contextOf(scene, report));
  const isTold = bees.some((bee) => (report.tally ?? []).some((line) => line.bee === bee));
  if (!isTold || countsOne(text, report, scene)) return false;
  return (readCorrection(text, report, scene)?.right.counts.length ?? 0) === 0;
}

/** Another name for queens told: "I think the two-spotted were half-black". Null for anything else. */
export const renamedTally = (report: Report, text: string, scene: Scene): Report | null =>
  report.tally === null ? null : renamed(report, text, namedIn(text, contextOf(scene, report)), scene);

/** Null where the text is no correction of queens that were told. */
export function correctTally(report: Report, text: string, scene: Scene): Report | null {
  if (report.tally === null) return null;
  const named = namedIn(text, contextOf(scene, report));
  return (
    renamed(report, text, named, scene) ??
    renamedOn(report, text, scene) ??
    moved(report, text, scene) ??
    withMore(report, text, scene) ??
    recounted(report, text, named, scene) ??
    recountedOn(report, text, named, scene)
  );
}

/** A correction that fits several lines of a bee, or none: "it was one imp" where they were on two plants. */
export function fitsSeveral(report: Report, text: string, scene: Scene): readonly TallyLine[] {
  const correction = readCorrection(text, report, scene);
  if (correction === null || report.tally === null || tellsMore(text, scene)) return [];
  const { right, denied } = correction;
  if (right.bees.length !== 1 || right.plants.length > 0) return [];
  if (afterOpening(text, scene) === null && denied.counts.length === 0) return [];
  const lines = linesOf(report, right.bees[0]!, { bees: [], at: [], plants: [] });
  return lines.length > 1 ? lines : [];
}

/** "Line 10 should be 1 imp on bluebells": the imp that was told on one other plant was there. */
export function replaceRow(report: Report, text: string, scene: Scene): Report | null {
  const context = contextOf(scene, report);
  const reading = readFields(text, context, ['tally']).fields.tally;
  const [row, ...others] = reading?.state === 'sure' ? reading.value : [];
  if (row?.bee == null || row.plant === null || row.count === 0 || others.length > 0) return null;
  const lines = linesOf(report, row.bee, { bees: [], at: [], plants: [] });
  if (lines.length !== 1 || lines[0]!.plant === row.plant) return null;
  const next = withLines(report, lines, () => lineOf(row, text, context), text);
  const tally = (next.tally ?? []).filter(({ count, plant }) => count > 0 || plant !== row.plant);
  return joined(changed(next, { tally }), scene);
}

/** The tally told anew as a whole: every plant that has queens is named again. */
export function tellsWholeTally(report: Report, text: string, scene: Scene): boolean {
  const reading = readFields(text, contextOf(scene, report), ['tally']).fields.tally;
  if (reading?.state !== 'sure') return false;
  const told = new Set(reading.value.map(({ plant }) => plant));
  return (report.tally ?? []).every(({ plant, count }) => count === 0 || told.has(plant));
}

/** Plants that had none, and are not told otherwise, still have none. */
export function withZerosOf(before: Report, after: Report): Report {
  const told = new Set((after.tally ?? []).map(({ plant }) => plant));
  const zeros = (before.tally ?? []).filter(({ count, plant }) => count === 0 && !told.has(plant));
  return changed(after, { tally: [...(after.tally ?? []), ...zeros], restNone: before.restNone });
}

/** "The impatiens", "the impatiens on the columbine": those queens were not there. Null where none such is told. */
export function takeOutQueens(report: Report, text: string, scene: Scene): Report | null {
  const named = namedIn(text, contextOf(scene, report));
  const lines = named.bees.flatMap((bee) => linesOf(report, bee, named));
  if (lines.length === 0) return null;
  const left = (report.tally ?? []).filter((line) => !lines.includes(line));
  const emptied = new Set<string | null>();
  return withLines(
    report,
    lines,
    (line) => {
      if (left.some(({ plant }) => plant === line.plant) || emptied.has(line.plant)) return null;
      emptied.add(line.plant);
      // the plant was watched all the same: a zero
      return noneOf(line);
    },
    text,
  );
}
