/**
 * Queens put right by a word that stands for those told: "one of them was a bimac", "both were on the phlox", "3 queens,
 * not 2", "one had pollen". Where it is not plain which of them are meant, nothing is changed.
 */
import { anyOf, fold, namedIn, rankOf, saysAnyOf } from '../../answers/index.js';
import { queensOf } from '../fields.js';
import { contextOf, joined } from '../hear.js';
import type { Words } from '../../../shared/words.js';
import { noneOf } from './correct-tally.js';
import { readCorrection, tellsMore, type Correction } from './put-right.js';
import { saysDoubt } from './tell-doubt.js';
import { changed } from '../thread.js';
import type { Report, Scene, TallyLine } from '../types.js';

/** Of the queens told all, where it is said how many that are: "both"; or so many of them. */
type Meant = { readonly all: number | null } | { readonly some: number };

/** The words for queens told, and what is said of them. */
interface OfThem {
  readonly meant: Meant;
  readonly told: string;
  /** "Neither had pollen". */
  readonly isNone: boolean;
}

/** Longer texts tell more than one thing. */
const LONGEST = 200;

/** The report put right; or the rows that may be meant, where it is not plain which. */
export type Them = { readonly report: Report } | { readonly which: readonly TallyLine[] };

export function correctThem(report: Report, text: string, scene: Scene): Them | null {
  const rows = known(report);
  if (rows.length === 0 || text.length > LONGEST || tellsMore(text, scene)) return null;
  const said = bare(text, scene);
  // "both were on the phlox and the temperature was 70" tells more than queens
  const { tally: _tally, plants: _plants, ...otherFields } = scene.survey.words.wishes.fields;
  const subject = saysAnyOf(said, Object.values(otherFields).flat()) ? null : subjectOf(said, scene);
  const correction = readCorrection(text, report, scene);
  const next =
    subject === null
      ? null
      : (withPollen(report, subject, correction, scene, text) ??
        (correction === null
          ? null
          : (renamed(report, subject, correction, text, scene) ?? moved(report, subject, correction, text, scene))));
  const done = next === 'which' ? null : (next ?? recounted(report, said, text, scene));
  if (done !== null) return { report: done };
  return next === 'which' ? { which: rows } : null;
}

const known = ({ tally }: Report): readonly TallyLine[] => (tally ?? []).filter(({ count }) => count > 0);

/** Without "no wait,", "actually" before it and the full stop behind. */
function bare(text: string, { survey }: Scene): string {
  const { hedges, tally, putRight } = survey.words;
  const before = anyOf(tally.takesBack, tally.takesBackWeakly, hedges.correcting, putRight.leads, putRight.saysNo);
  return fold(text)
    .trim()
    .replace(new RegExp(`^(?:${before}[\\s,.!:;-]*)+(?=\\p{L}|\\d)`, 'u'), '')
    .replace(/[\s.!]+$/u, '');
}

/** "One of them was …", "both were …", "they are …". */
function subjectOf(said: string, scene: Scene): OfThem | null {
  const { numbers, putRight, tally } = scene.survey.words;
  const { them } = putRight;
  const number = `(?:\\d{1,2}|${anyOf(Object.keys(numbers.units))})`;
  const verb = `(?:\\s+${anyOf(them.adverbs)})?\\s+(?<told>${anyOf(them.being, them.had, tally.pollen)}(?:\\s.*)?)$`;
  const name = '\\p{L}[\\p{L}.-]*';
  const names = `\\s+${name}(?:\\s+${name}){0,2}?`;
  const ofWhich = `(?:\\s+${anyOf(putRight.someOf)}(?:\\s+${number})?${names}|\\s+${anyOf(them.ofThem)}|${names})?`;
  const onPlant = `(?:\\s+${anyOf(tally.onPlants)}${names})?`;
  const told = (subject: string): Readonly<Record<string, string | undefined>> | null =>
    new RegExp(`^${subject}${verb}`, 'u').exec(said)?.groups ?? null;
  const { words } = scene.survey;
  const of = (meant: Meant, groups: Readonly<Record<string, string | undefined>>, isNone = false): OfThem => ({
    meant,
    told: groups['told'] ?? '',
    isNone,
  });

  const none = told(anyOf(them.neither));
  if (none !== null) return of({ all: null }, none, true);
  const two = told(`${anyOf(them.two)}(?:${names})?${onPlant}`);
  if (two !== null) return of({ all: 2 }, two);
  const ofThem = `(?:\\s+${anyOf(them.ofThem)})?`;
  const all = told(`${anyOf(them.all)}(?:\\s+(?<all>${number}))?${ofThem}${onPlant}`);
  if (all !== null) return of({ all: countIn(all['all'], words) }, all);
  const one = told(anyOf(them.one));
  if (one !== null) return of({ all: 1 }, one);
  const some = told(`(?<some>${number})${ofWhich}`);
  const count = countIn(some?.['some'], words);
  return some === null || count === null || count === 0 ? null : of({ some: count }, some);
}

/** Of those bees, on those plants, where any are named. */
const among =
  (bees: readonly string[], plants: readonly string[]) =>
  ({ bee, plant }: TallyLine): boolean =>
    (bees.length === 0 || (bee !== null && bees.includes(bee))) &&
    (plants.length === 0 || (plant !== null && plants.includes(plant)));

/** The rows meant; null where it is not plain which, or where they are not as many as is said. */
function rowsOf(rows: readonly TallyLine[], meant: Meant): readonly TallyLine[] | null {
  if ('some' in meant) {
    const enough = rows.filter(({ count }) => count >= meant.some);
    return enough.length === 1 ? enough : null;
  }
  return rows.length > 0 && (meant.all === null || meant.all === queensOf(rows)) ? rows : null;
}

/** "One of the impatiens was a bimac", "they were all bimacs", "both were bimac, not impatiens". */
function renamed(
  report: Report,
  { meant, told }: OfThem,
  { right, denied }: Correction,
  text: string,
  scene: Scene,
): Report | 'which' | null {
  const context = contextOf(scene, report);
  const named = namedIn(told, context);
  const bee = named.bees.find((name) => !denied.bees.includes(name));
  if (bee === undefined && named.bees.length === 0 && saysAnyOf(told, scene.survey.words.tally.workers)) {
    const workers = rowsOf(known(report).filter(among(right.bees, right.plants)), meant);
    return workers === null ? 'which' : others(report, workers, meant, { caste: 'worker' }, text, scene);
  }
  if (bee === undefined || named.bees.some((name) => name !== bee && !denied.bees.includes(name))) return null;
  // "it was one imp, not two" tells how many
  if (new RegExp(`\\d|${anyOf(Object.keys(scene.survey.words.numbers.units))}`, 'u').test(told)) return null;
  const sources = [...denied.bees, ...right.bees].filter((name) => name !== bee);
  const isMeant = among(sources, right.plants);
  // "all three were bimac" counts the one that stands there as a bimac already
  const meantRows = known(report).filter((line) => isMeant(line) && ('all' in meant || line.bee !== bee));
  const rows = rowsOf(meantRows, meant)?.filter((line) => line.bee !== bee);
  if (right.plants.length > 1 || denied.plants.length > 0) return null;
  // that one stands there already
  const isKnown = known(report).some((line) => line.bee === bee && 'some' in meant && line.count === meant.some);
  if (sources.length === 0 && isKnown) return null;
  if (rows === undefined) return 'which';
  if (rows.length === 0) return null;
  const other = { bee, rank: rankOf(bee, context), typed: text, doubt: saysDoubt(text, scene) === true };
  return others(report, rows, meant, other, text, scene);
}

/** "Both were on the phlox", "one of them was on the phlox, not the violets". */
function moved(
  report: Report,
  { meant, told }: OfThem,
  { right, denied }: Correction,
  text: string,
  scene: Scene,
): Report | null {
  const named = namedIn(told, contextOf(scene, report));
  const [plant, ...more] = right.plants;
  if (plant === undefined || more.length > 0 || named.bees.length > 0 || denied.bees.length > 0) return null;
  const { prepositions, onPlants } = scene.survey.words.tally;
  // "it was crabapple, not redbud" is about the plant
  if (!saysAnyOf(told, [...prepositions, ...onPlants])) return null;
  const elsewhere = known(report).filter((line) => line.plant !== plant);
  const rows = rowsOf(elsewhere.filter(among(right.bees, denied.plants)), meant);
  return rows === null ? null : others(report, rows, meant, { plant }, text, scene);
}

/** So many of the rows' queens become other ones; what is left stays, and a plant that is left without any had none. */
function others(
  report: Report,
  rows: readonly TallyLine[],
  meant: Meant,
  other: Partial<TallyLine>,
  text: string,
  scene: Scene,
): Report {
  const moving = (line: TallyLine): number => ('some' in meant ? meant.some : line.count);
  const became = (line: TallyLine): TallyLine => ({ ...line, ...other, count: moving(line) });
  const isAlike = (one: TallyLine, two: TallyLine): boolean =>
    one.plant === two.plant && one.bee === two.bee && one.caste === two.caste;
  const stay = (report.tally ?? []).filter((line) => !rows.includes(line));
  const joins = (line: TallyLine): TallyLine | undefined => stay.find((known) => isAlike(known, became(line)));
  const lines = (report.tally ?? []).flatMap((line) => {
    if (!rows.includes(line)) {
      const more = rows.filter((row) => joins(row) === line).reduce((sum, row) => sum + moving(row), 0);
      return [{ ...line, count: line.count + more }];
    }
    if (line.count > moving(line)) return [{ ...line, count: line.count - moving(line) }];
    return joins(line) === undefined ? [became(line)] : [];
  });
  // what is a part of its row only comes behind
  const parts = rows.filter((line) => line.count > moving(line) && joins(line) === undefined).map(became);
  const all = [...lines, ...parts];
  const has = (plant: string | null): boolean => all.some((line) => line.plant === plant && line.count > 0);
  const emptied = rows.filter(({ plant }, at) => !has(plant) && rows.findIndex((row) => row.plant === plant) === at);
  const tally = [...all.filter(({ count, plant }) => count > 0 || !has(plant)), ...emptied.map(noneOf)];
  return joined(changed(report, { tally, total: null, tallyTyped: [...report.tallyTyped, text] }), scene);
}

/** "One had pollen", "both were carrying pollen". */
function withPollen(
  report: Report,
  { meant, told, isNone }: OfThem,
  correction: Correction | null,
  { survey }: Scene,
  text: string,
): Report | null {
  const { pollen, noPollen } = survey.words.tally;
  if (!saysAnyOf(told, pollen)) return null;
  const { bees, plants } = correction?.right ?? { bees: [], plants: [] };
  const rows = rowsOf(known(report).filter(among(bees, plants)), meant);
  if (rows === null) return null;
  const isWithout = isNone || saysAnyOf(told, noPollen);
  if (isWithout && 'some' in meant) return null;
  const carrying = (count: number): number => (isWithout ? 0 : 'some' in meant ? meant.some : count);
  const tally = (report.tally ?? []).map((line) =>
    rows.includes(line) ? { ...line, withPollen: carrying(line.count) } : line,
  );
  return changed(report, { tally, tallyTyped: [...report.tallyTyped, text] });
}

/** "3 queens, not 2", "I only saw one": of the one row there is, or of the one that has as many as are denied. */
function recounted(report: Report, said: string, text: string, { survey }: Scene): Report | null {
  const { putRight, tally, numbers } = survey.words;
  const { them } = putRight;
  const number = `(?:\\d{1,2}|${anyOf(Object.keys(numbers.units))})`;
  const queens = `(?:\\s+${anyOf(tally.queens, tally.queensPlural)})`;
  const before = `(?:(?<saw>${anyOf(them.saw)}\\s+)|(?:${anyOf(them.amount)}\\s+)?)`;
  const not = `(?:[\\s,]+${anyOf(tally.denies)}\\s+(?<denied>${number})${queens}?)`;
  const pattern = `^${before}(?<count>${number})(?<queens>${queens})?(?:\\s+${anyOf(tally.total)})?${not}?$`;
  const found = new RegExp(pattern, 'u').exec(said)?.groups;
  const count = countIn(found?.['count'], survey.words);
  const denied = countIn(found?.['denied'], survey.words);
  if (!found || count === null || count === 0) return null;
  const rows = known(report).filter((line) => denied === null || line.count === denied);
  const [row, ...more] = rows;
  if (row === undefined || more.length > 0) return null;
  // "3" alone may be a number of anything
  if (denied === null && found['queens'] === undefined && found['saw'] === undefined) return null;
  // of several rows "3 queens" is rather the number of them all
  if (denied === null && known(report).length > 1) return null;
  const next = (report.tally ?? []).map((line) => (line === row ? { ...row, count } : line));
  return changed(report, { tally: next, total: null, tallyTyped: [...report.tallyTyped, text] });
}

const countIn = (word: string | undefined, { numbers }: Words): number | null =>
  word === undefined ? null : /^\d+$/.test(word) ? Number(word) : (numbers.units[word] ?? null);
