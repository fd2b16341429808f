/** Corrections in plain words: "4 should be 68", "temp was 68", "add dandelion, about 40", "take out the violets". */
import {
  anyOf,
  fold,
  labelOf,
  readFields,
  readPlants,
  readTemperature,
  readWish,
  saysAnyOf,
  type TallyRow,
  type Wish,
} from '../../answers/index.js';
import { say } from '../../../shared/wording.js';
import {
  correctTally,
  fitsSeveral,
  renamedTally,
  replaceRow,
  takeOutQueens,
  tellsNoCount,
  tellsWholeTally,
  withZerosOf,
} from './correct-tally.js';
import { takeInstead, takeNumber } from './bare-number.js';
import { addLines, addPlants, nextOpen, plantKey, removePlant, tell } from '../fields.js';
import { contextOf, hear, lineOf, plantOf, type Heard } from '../hear.js';
import { habitatIn } from '../habitat.js';
import { insteadOf } from './instead-of.js';
import { byLines, namedInWords, namedLine, remarkIn, takenApart, withoutLine, type Named } from './named-line.js';
import { notUnderstood, outcome } from '../outcome.js';
import { correctThem } from './of-them.js';
import { correctOneTime } from './one-time.js';
import { withoutRest } from './rest-right.js';
import { countedBee, withoutDenied } from './bee-counts.js';
import { renamePlant } from './rename-plant.js';
import { recountFlowers } from './recount-flowers.js';
import { onKnownLines, perhapsQueens, retell, withFlowersOf } from './retell.js';
import { showLine } from '../show.js';
import { briefly, exampleLine, labelOfField, lineFields, summaryLines } from '../summary.js';
import { tellDoubt } from './tell-doubt.js';
import { changed } from '../thread.js';
import type { Outcome, PlantInPatch, Report, Scene, Thread } from '../types.js';
import { watchedPlant } from './watched-plant.js';

/** Asks one field anew, with what is known of it. */
export function askAgain(thread: Thread, report: Report, field: string, scene: Scene): Outcome {
  const question = scene.survey.dialog.questions.find(({ fields }) => fields.includes(field));
  if (question === undefined)
    return { ...outcome(thread, report, [say(scene.survey.wording, 'ask-remark')]), then: 'rest' };
  return {
    ...outcome(
      { ...thread, asking: { kind: 'question', question: question.question, fields: [field], again: true } },
      report,
    ),
    then: 'repeat',
  };
}

const REMARK = 'remark';
const HABITAT = 'habitat';
/** Clauses of a correction that are tried apart. */
const MOST_JOINTS = 4;

export function setField(thread: Thread, report: Report, named: Named, scene: Scene): Outcome {
  if (named.value === '') return askAgain(thread, report, named.field, scene);
  // whatever stands behind it is the remark
  if (named.field === REMARK) {
    const kept = tell(report, REMARK, named.value, named.value, scene.message.id);
    return outcome(thread, kept, [say(scene.survey.wording, 'remark-kept')]);
  }
  const queens =
    named.field === 'tally'
      ? (renamedTally(report, named.value, scene) ??
        tellDoubt(report, named.value, scene) ??
        correctTally(report, named.value, scene) ??
        replaceRow(report, named.value, scene))
      : null;
  if (queens !== null) return { ...outcome(thread, queens), echo: briefly(['tally'], queens, scene) };
  const heard = hearField(report, named, scene);
  if (heard.taken.includes(named.field) || heard.report.doubts.some(({ field }) => field === named.field)) {
    const next = onKnownLines(report, heard.report, named.value, scene);
    return { ...outcome(thread, next), echo: briefly(heard.taken, next, scene) };
  }
  // "7 should be 8 by 5 feet", where 7 is the wind: what it says beats the number it is said to
  const other = hear(report, named.value, [], scene);
  if (other.taken.length > 0)
    return { ...outcome(thread, other.report), echo: briefly(other.taken, other.report, scene) };
  const again = askAgain(thread, report, named.field, scene);
  const missed = notUnderstood(thread, heard.ask ?? 'not-that', named.value, scene);
  return { ...again, said: missed.said };
}

function hearField(report: Report, named: Named, scene: Scene): Heard {
  // plants and tally told with one of several are corrections of that one, not the whole list anew
  const whole = named.field === 'tally' && tellsWholeTally(report, named.value, scene);
  const heard = hear(report, named.value, [named.field], scene, whole);
  return whole ? { ...heard, report: withZerosOf(report, heard.report) } : heard;
}

/** What a change, an addition or a removal comes to; null where the words name nothing. */
export function correctByWish(thread: Thread, report: Report, wish: Wish, scene: Scene): Outcome | null {
  const done = wished(thread, report, wish, scene);
  return done === null ? null : unlessNothing(done, thread, report, scene);
}

const isZeroOn = ({ count, plant }: TallyRow, plants: readonly PlantInPatch[]): boolean =>
  count === 0 && plants.some((added) => plantKey(added) === plant);

/** "Now it reads" is said only of what reads otherwise than before. */
function unlessNothing(done: Outcome, thread: Thread, report: Report, scene: Scene): Outcome {
  const after = done.thread.report;
  const isSummary = (known: Report | null): known is Report => known !== null && nextOpen(known, scene) === null;
  if (done.then !== 'ask' || done.said.length > 0 || !isSummary(report) || !isSummary(after)) return done;
  if (summaryLines(report, scene).join('\n') !== summaryLines(after, scene).join('\n')) return done;
  const line = exampleLine(report, scene);
  return { ...outcome(thread, report, [say(scene.survey.wording, 'nothing-changed', { line })]), then: 'rest' };
}

function wished(thread: Thread, report: Report, wish: Wish, scene: Scene): Outcome | null {
  switch (wish.wish) {
    case 'change': {
      const fields = lineFields(report, scene);
      // a remark that was not made yet has no line, and can be named all the same
      const named = namedLine(wish.what, fields, scene) ?? namedInWords(wish.what, [REMARK], scene);
      if (named) return setField(thread, report, named, scene);
      return corrected(thread, report, countedBee(wish.what, report, scene) ?? wish.what, scene);
    }
    case 'add': {
      const plants = readPlants(wish.what, contextOf(scene, report));
      if (plants.state === 'sure' && plants.value.some(({ name }) => name !== null) && report.plants !== null) {
        const tally = readFields(wish.what, contextOf(scene, report), ['tally']).fields.tally;
        if (tally?.state === 'sure' && tally.value.some(({ bee }) => bee !== null)) return null;
        const added = plants.value.map(plantOf);
        const all = addPlants(report, added);
        // "also a violet with 20 flowers, no bees"
        const zeros = tally?.state === 'sure' ? tally.value.filter((row) => isZeroOn(row, added)) : [];
        const lines = zeros.map((row) => lineOf(row, wish.what, contextOf(scene, report)));
        const next = lines.length === 0 ? all : addLines(all, lines);
        const typed = changed(next, { plantsTyped: [...next.plantsTyped, wish.what] });
        return { ...outcome(thread, typed), echo: briefly(['plants'], next, scene) };
      }
      return null;
    }
    case 'take-out': {
      const queens = takeOutQueens(report, wish.what, scene);
      if (queens !== null) return { ...outcome(thread, queens), echo: briefly(['tally'], queens, scene) };
      // "there were no queens on the phlox": the plant was there
      const { queens: bees, queensPlural } = scene.survey.words.tally;
      if (saysAnyOf(wish.what, [...bees, ...queensPlural])) return null;
      const key = watchedPlant(withoutLine(wish.what, scene), report, scene);
      if (key !== null) {
        const next = removePlant(report, key);
        return { ...outcome(thread, next), echo: briefly(['plants'], next, scene) };
      }
      const fields = lineFields(report, scene);
      const named = namedLine(wish.what, fields, scene);
      if (named === null || named.value !== '' || scene.survey.dialog.fields[named.field]?.skippable !== true)
        return null;
      // "there was no wind" leaves no line out
      const { what } = scene.message;
      const heard = hear(report, what.kind === 'text' ? what.text : '', [named.field], scene, true);
      if (heard.taken.includes(named.field)) return outcome(thread, heard.report);
      const kept = Object.fromEntries(Object.entries(report.fields).filter(([field]) => field !== named.field));
      const next = changed(report, { fields: kept, skipped: [...report.skipped, named.field] });
      return outcome(thread, next, [
        say(scene.survey.wording, 'left-out', { field: labelOfField(named.field, scene) }),
      ]);
    }
    // "yes. remark: a fox came"
    case 'remark':
      return setField(thread, report, { field: REMARK, value: wish.what }, scene);
    default:
      return null;
  }
}

/** "I'm sure it was a two-spotted", before its "I'm sure" is taken for a yes; null where that changes no row. */
export function correctDoubt(thread: Thread, report: Report, text: string, scene: Scene): Outcome | null {
  const doubt = renamedTally(report, text, scene) === null ? tellDoubt(report, text, scene) : null;
  if (doubt === null || summaryLines(doubt, scene).join() === summaryLines(report, scene).join()) return null;
  return { ...outcome(thread, doubt), echo: briefly(['tally'], doubt, scene) };
}

/** "All three were impatiens, no bimac": the bimac goes, whatever else is said; null where no bee is denied. */
export function correctDenied(thread: Thread, report: Report, text: string, scene: Scene): Outcome | null {
  const without = withoutDenied(report, text, scene);
  if (without === null) return null;
  const taken = { ...outcome(thread, without.report), echo: briefly(['tally'], without.report, scene) };
  if (without.rest === '') return taken;
  const more = corrected(taken.thread, without.report, without.rest, scene);
  return more.thread.report === without.report ? { ...taken, said: more.said, then: 'repeat' } : more;
}

/** "No redbud there": the plant was not in the patch. Null for anything else, bees too. */
export function correctAbsent(thread: Thread, report: Report, text: string, scene: Scene): Outcome | null {
  const { before, after } = scene.survey.words.putRight.notThere;
  const pattern = new RegExp(`^\\s*${anyOf(before)}\\s+(?<what>\\S.*?)\\s+${anyOf(after)}[\\s.!]*$`, 'u');
  const what = pattern.exec(fold(text))?.groups?.['what'];
  if (what === undefined || watchedPlant(what, report, scene) === null) return null;
  return correctByWish(thread, report, { wish: 'take-out', what }, scene);
}

/** A text at the summary: lines by number or name, else whatever it tells by its own words; a bare number is asked about. */
export function correct(thread: Thread, report: Report, typed: string, scene: Scene): Outcome {
  return unlessNothing(corrected(thread, report, typed, scene), thread, report, scene);
}

/** As `correct`, and says nothing of what leaves all as it is. */
export function corrected(thread: Thread, report: Report, typed: string, scene: Scene): Outcome {
  const remark = remarkIn(typed, scene);
  if (remark !== null) return setField(thread, report, { field: REMARK, value: remark }, scene);
  const them = correctThem(report, withoutRest(typed, scene), scene);
  if (them !== null && 'report' in them) {
    // no line shows that none carried pollen
    const isNoPollen = (them.report.tally ?? []).some(({ withPollen }) => withPollen === 0);
    const said = isNoPollen ? [say(scene.survey.wording, 'no-pollen-kept')] : [];
    return { ...outcome(thread, them.report, said), echo: briefly(['tally'], them.report, scene) };
  }
  const both = themAndMore(thread, report, withoutRest(typed, scene), scene);
  if (both !== null) return both;
  // "no. change wind"
  const wish = readWish(typed, scene.survey.words);
  const done = wish === null ? null : wished(thread, report, wish, scene);
  if (done !== null) return done;
  const what = takenApart(typed, scene);
  const takenOut = what === null ? null : wished(thread, report, { wish: 'take-out', what }, scene);
  if (takenOut !== null) return takenOut;
  const fields = lineFields(report, scene);
  const said = withoutRest(typed, scene);
  // "the rest is right" alone is nearly a yes
  if (said === '') return { ...outcome(thread, report, [say(scene.survey.wording, 'only-yes')]), then: 'rest' };
  const flowers = renamePlant(report, said, scene) ?? recountFlowers(report, said, scene);
  if (flowers !== null) return { ...outcome(thread, flowers), echo: briefly(['plants'], flowers, scene) };
  const parts = byLines(said, fields, scene);
  if (parts.length > 1) return inTurn(thread, report, parts, scene);
  const times = correctOneTime(report, said, scene);
  if (times !== null) return { ...outcome(thread, times), echo: briefly(['times'], times, scene) };
  const named = namedLine(said, fields, scene);
  if (named) return setField(thread, report, named, scene);
  const text = withoutLine(said, scene);
  return correctQueens(thread, report, text, scene) ?? correctRest(thread, report, text, typed, scene);
}

/** "Both were on the phlox, and the temp was 70": queens told before, and then something else. */
function themAndMore(thread: Thread, report: Report, text: string, scene: Scene): Outcome | null {
  const { ands } = scene.survey.words.tally;
  const joints = new RegExp(`[,;.]\\s+(?:${anyOf(ands)}\\s+)?|\\s+${anyOf(ands)}\\s+`, 'gu');
  for (const joint of [...fold(text).matchAll(joints)].slice(0, MOST_JOINTS)) {
    const them = correctThem(report, text.slice(0, joint.index), scene);
    if (them === null || !('report' in them)) continue;
    const more = corrected(thread, them.report, text.slice(joint.index + joint[0].length), scene);
    if (more.thread.report !== them.report) return more;
  }
  return null;
}

/** Each line that is named, one after the other; what stands before them and tells nothing is passed over. */
function inTurn(thread: Thread, report: Report, parts: readonly string[], scene: Scene): Outcome {
  let last: Outcome | null = null;
  for (const part of parts) {
    const done = corrected(last?.thread ?? thread, last?.thread.report ?? report, part, scene);
    if (done.then === 'ask' && done.thread.report !== (last?.thread.report ?? report)) last = done;
    else if (part !== parts[0]) return { ...done, thread: { ...done.thread, report: last?.thread.report ?? report } };
  }
  return last ?? notUnderstood(thread, 'not-a-change', parts.join(' '), scene, { line: exampleLine(report, scene) });
}

/** Queens that are told otherwise; null where the text is about anything else. */
function correctQueens(thread: Thread, report: Report, text: string, scene: Scene): Outcome | null {
  const taken = (next: Report): Outcome => ({ ...outcome(thread, next), echo: briefly(['tally'], next, scene) });
  const doubt = renamedTally(report, text, scene) ?? tellDoubt(report, text, scene);
  if (doubt !== null) return taken(doubt);
  const them = correctThem(report, text, scene);
  if (them !== null && 'which' in them) {
    const lines = them.which.map((line) => showLine(line, report.plants ?? [], scene.survey, contextOf(scene, report)));
    return {
      ...outcome(thread, report, [say(scene.survey.wording, 'which-of-them', { lines: lines.join('; ') })]),
      then: 'rest',
    };
  }
  const told = retell(report, text, scene);
  if (told !== null && 'unknown' in told) return unknownBee(thread, report, told, scene);
  const queens = correctTally(report, text, scene);
  if (queens !== null) return taken(queens);
  const context = contextOf(scene, report);
  const several = fitsSeveral(report, text, scene);
  if (several.length > 0) {
    const lines = several.map((line) => showLine(line, report.plants ?? [], scene.survey, context));
    const which = say(scene.survey.wording, 'which-queens', { lines: lines.join('; '), one: lines[0]! });
    return { ...outcome(thread, report, [which]), then: 'rest' };
  }
  return told === null ? null : taken(told.report);
}

/** One bee of a correction is not known: nothing is taken, and that one is asked about. */
function unknownBee(
  thread: Thread,
  report: Report,
  { unknown, plant }: { readonly unknown: string; readonly plant: string | null },
  scene: Scene,
): Outcome {
  const key = plant ?? plantKey(report.plants?.[0] ?? { name: null, typed: '' });
  const said = { bee: unknown, plant: labelOf(key, contextOf(scene, report)) };
  return { ...outcome(thread, report, [say(scene.survey.wording, 'unknown-bee-kept', said)]), then: 'rest' };
}

/** Whatever a text tells by its own words. */
function correctRest(thread: Thread, report: Report, text: string, typed: string, scene: Scene): Outcome {
  if (tellsNoCount(report, text, scene))
    return notUnderstood(thread, 'not-a-change', typed, scene, { line: exampleLine(report, scene) });
  const heard = hear(report, text, [], scene);
  const kept = onKnownLines(report, withFlowersOf(report, heard.report, text, scene), text, scene);
  const few = perhapsQueens(report, kept, text, scene);
  if (few !== null) {
    const which = { plant: labelOf(plantKey(few), contextOf(scene, report)), count: few.flowers!.value };
    return { ...outcome(thread, report, [say(scene.survey.wording, 'flowers-or-queens', which)]), then: 'rest' };
  }
  if (heard.understood) return { ...outcome(thread, kept), echo: briefly(heard.taken, kept, scene) };
  // a tally needs no label where it names a bee and a plant
  const tally = hear(report, text, ['tally'], scene);
  if (tally.taken.includes('tally'))
    return { ...outcome(thread, tally.report), echo: briefly(['tally'], tally.report, scene) };
  const habitat = insteadOf(report, text, scene);
  if (habitat !== null) return { ...outcome(thread, habitat), echo: null };
  // "savanna", where the kind of place was left out
  const isLeftOut = scene.survey.dialog.fields[HABITAT] !== undefined && report.fields[HABITAT] === undefined;
  const kind = isLeftOut ? habitatIn(text, contextOf(scene, report)) : '';
  if (kind !== '') return outcome(thread, tell(report, HABITAT, kind, typed, scene.message.id));
  const instead = takeInstead(report, text, scene);
  if (instead !== null) return outcome(thread, instead);
  const number = takeNumber(report, text, scene);
  if (number !== null) return outcome(thread, number);
  const temperature = readTemperature(text, contextOf(scene, report));
  const line = lineFields(report, scene).indexOf('temperature') + 1;
  if (temperature.state !== 'none' && line > 0) {
    return { ...outcome(thread, report, [say(scene.survey.wording, 'which-line', { line })]), then: 'rest' };
  }
  return notUnderstood(thread, 'not-a-change', typed, scene, { line: exampleLine(report, scene) });
}
