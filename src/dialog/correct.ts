/** Corrections in plain words: "4 should be 68", "temp was 68", "add dandelion, about 40", "take out the violets". */
import {
  anyOf,
  fold,
  labelOf,
  readFields,
  readPlants,
  readTemperature,
  saysAnyOf,
  type Wish,
} from '../answers/index.js';
import { say } from '../../shared/wording.js';
import { correctTally, fitsSeveral, replaceRow, takeOutQueens, tellsWholeTally, withZerosOf } from './correct-tally.js';
import { addPlants, plantKey, removePlant } from './fields.js';
import { contextOf, hear, plantOf, type Heard } from './hear.js';
import { notUnderstood, outcome } from './outcome.js';
import { showLine } from './show.js';
import { briefly, exampleLine, labelOfField, lineFields } from './summary.js';
import { changed } from './thread.js';
import type { Outcome, Report, Scene, Thread } from './types.js';

/** A field named at the beginning of a correction, and what is left for its value. */
interface Named {
  readonly field: string;
  readonly value: string;
}

/** "line", "number": what may stand before a line's number; "watch 3" is another watch. */
const lineLead = ({ watchNumber }: Scene['survey']['words']['wishes']): string =>
  ['line', ...watchNumber.filter((word) => word !== 'watch')].map(escape).join('|');

const escape = (word: string): string => word.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');

/** "4: 68", "line 4 should be 68", "#4", "4". A bare number before other words is not a line. */
function namedByNumber(text: string, fields: readonly string[], scene: Scene): Named | null {
  const becomes = scene.survey.words.wishes.becomes.map(escape).join('|');
  const lead = lineLead(scene.survey.words.wishes);
  const pattern = new RegExp(
    `^\\s*(?<mark>(?:(?:${lead})\\s+|#\\s*))?(?<line>\\d{1,2})(?<sign>\\s*[:.)=](?!\\d)|\\s+(?:${becomes})(?=\\s)|(?=\\s*$)|(?=\\s))\\s*`,
    'u',
  );
  const match = pattern.exec(fold(text));
  if (!match?.groups) return null;
  const field = fields[Number(match.groups['line']) - 1];
  const rest = text.slice(match[0].length).trim();
  const marked = match.groups['mark'] !== undefined || match.groups['sign'] !== '' || rest === '';
  return field !== undefined && marked ? { field, value: rest } : null;
}

/** "temp was 68", "the wind should be calm", "temperature". */
function namedByWord(text: string, fields: readonly string[], scene: Scene): Named | null {
  const { wishes } = scene.survey.words;
  const folded = fold(text);
  const own = (field: string): string[] => [field.replaceAll('-', ' '), ...(wishes.fields[field] ?? [])];
  const becomes = wishes.becomes.map(escape).join('|');
  for (const field of fields) {
    const names = own(field)
      .sort((a, b) => b.length - a.length)
      .map(escape)
      .join('|');
    const pattern = new RegExp(
      `^\\s*(?:the |my )?(?:${names})(?:\\s+(?:actually\\s+)?(?:${becomes})(?=\\s|$)|\\s*[:=]|(?=\\s*$)|(?=\\s+(?:about |around )?[-+]?\\d))\\s*`,
      'u',
    );
    const match = pattern.exec(folded);
    if (match) return { field, value: text.slice(match[0].length).trim() };
  }
  return null;
}

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

function setField(thread: Thread, report: Report, named: Named, scene: Scene): Outcome {
  if (named.value === '') return askAgain(thread, report, named.field, scene);
  const queens =
    named.field === 'tally'
      ? (correctTally(report, named.value, scene) ?? replaceRow(report, named.value, scene))
      : null;
  if (queens !== null) return { ...outcome(thread, queens), echo: briefly(['tally'], queens, scene) };
  const heard = hearField(report, named, scene);
  if (heard.taken.includes(named.field) || heard.report.doubts.some(({ field }) => field === named.field)) {
    return { ...outcome(thread, heard.report), echo: briefly(heard.taken, heard.report, scene) };
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
  switch (wish.wish) {
    case 'change': {
      const fields = lineFields(report, scene);
      const named = namedByNumber(wish.what, fields, scene) ?? namedByWord(wish.what, fields, scene);
      if (named) return setField(thread, report, named, scene);
      return correct(thread, report, wish.what, scene);
    }
    case 'add': {
      const plants = readPlants(wish.what, contextOf(scene, report));
      if (plants.state === 'sure' && plants.value.some(({ name }) => name !== null) && report.plants !== null) {
        const tally = readFields(wish.what, contextOf(scene, report), ['tally']).fields.tally;
        if (tally?.state === 'sure' && tally.value.some(({ bee }) => bee !== null)) return null;
        const next = addPlants(report, plants.value.map(plantOf));
        const typed = changed(next, { plantsTyped: [...next.plantsTyped, wish.what] });
        return { ...outcome(thread, typed), echo: briefly(['plants'], next, scene) };
      }
      return null;
    }
    case 'take-out': {
      const queens = takeOutQueens(report, wish.what, scene);
      if (queens !== null) return { ...outcome(thread, queens), echo: briefly(['tally'], queens, scene) };
      // "there were no queens on the phlox": the plant was there
      if (saysAnyOf(wish.what, scene.survey.words.tally.queensPlural)) return null;
      const key = watchedPlant(wish.what, report, scene);
      if (key !== null) {
        const next = removePlant(report, key);
        return { ...outcome(thread, next), echo: briefly(['plants'], next, scene) };
      }
      const fields = lineFields(report, scene);
      const named = namedByNumber(wish.what, fields, scene) ?? namedByWord(wish.what, fields, scene);
      if (named === null || named.value !== '' || scene.survey.dialog.fields[named.field]?.skippable !== true)
        return null;
      const kept = Object.fromEntries(Object.entries(report.fields).filter(([field]) => field !== named.field));
      const next = changed(report, { fields: kept, skipped: [...report.skipped, named.field] });
      return outcome(thread, next, [
        say(scene.survey.wording, 'left-out', { field: labelOfField(named.field, scene) }),
      ]);
    }
    default:
      return null;
  }
}

function watchedPlant(typed: string, report: Report, scene: Scene): string | null {
  const keys = (report.plants ?? []).map(plantKey);
  const text = withoutLine(typed, scene);
  const context = contextOf(scene, report);
  const reading = readPlants(text, context);
  const told = reading.state === 'sure' ? reading.value.map(plantKeyOf).find((key) => keys.includes(key)) : undefined;
  if (told !== undefined) return told;
  // a plant by some of its words: "the little hearts" of "little hearts on it"
  const wordsOf = (words: string): string[] => fold(words).match(/\p{L}{4,}/gu) ?? [];
  const said = wordsOf(text);
  const fits = keys.filter((key) => said.every((word) => wordsOf(`${key} ${labelOf(key, context)}`).includes(word)));
  return said.length > 0 && fits.length === 1 ? fits[0]! : null;
}

/** "... from number 10", "... on line 9": a line is meant, and no count. */
function withoutLine(text: string, { survey }: Scene): string {
  const { tally, wishes } = survey.words;
  const from = anyOf(tally.prepositions, tally.onPlants);
  const line = `(?:(?:${lineLead(wishes)})\\s*|#\\s*)\\d{1,2}`;
  const match = new RegExp(`\\s+(?:${from}\\s+)?${line}[\\s.!]*$`, 'u').exec(fold(text));
  return match === null || match.index === 0 ? text : text.slice(0, match.index);
}

/** What stands in "take the violets out"; null for anything else. */
function takenApart(text: string, { survey }: Scene): string | null {
  const { before, after } = survey.words.wishes.takeOutApart;
  const pattern = new RegExp(`^\\s*${anyOf(before)}\\s+(?<what>\\S.*?)\\s+${anyOf(after)}(?<rest>\\s.*)?$`, 'u');
  const match = pattern.exec(fold(text).replace(/[\s.!]+$/, ''));
  return match === null ? null : `${match.groups?.['what'] ?? ''}${match.groups?.['rest'] ?? ''}`;
}
const plantKeyOf = (plant: { name: string | null; asTyped: string }): string => plant.name ?? plant.asTyped;

/** A text at the summary: a line by number or name, else whatever it tells by its own words; a bare number is asked about. */
export function correct(thread: Thread, report: Report, typed: string, scene: Scene): Outcome {
  const what = takenApart(typed, scene);
  const takenOut = what === null ? null : correctByWish(thread, report, { wish: 'take-out', what }, scene);
  if (takenOut !== null) return takenOut;
  const fields = lineFields(report, scene);
  const named = namedByNumber(typed, fields, scene) ?? namedByWord(typed, fields, scene);
  if (named) return setField(thread, report, named, scene);
  const text = withoutLine(typed, scene);
  const queens = correctTally(report, text, scene);
  if (queens !== null) return { ...outcome(thread, queens), echo: briefly(['tally'], queens, scene) };
  const several = fitsSeveral(report, text, scene);
  if (several.length > 0) {
    const context = contextOf(scene, report);
    const lines = several.map((line) => showLine(line, report.plants ?? [], scene.survey, context));
    const which = say(scene.survey.wording, 'which-queens', { lines: lines.join('; '), one: lines[0]! });
    return { ...outcome(thread, report, [which]), then: 'rest' };
  }
  const heard = hear(report, text, [], scene);
  if (heard.understood) return { ...outcome(thread, heard.report), echo: briefly(heard.taken, heard.report, scene) };
  // a tally needs no label where it names a bee and a plant
  const tally = hear(report, text, ['tally'], scene);
  if (tally.taken.includes('tally'))
    return { ...outcome(thread, tally.report), echo: briefly(['tally'], tally.report, scene) };
  const temperature = readTemperature(text, contextOf(scene, report));
  const line = fields.indexOf('temperature') + 1;
  if (temperature.state !== 'none' && line > 0) {
    return { ...outcome(thread, report, [say(scene.survey.wording, 'which-line', { line })]), then: 'rest' };
  }
  return notUnderstood(thread, 'not-a-change', typed, scene, { line: exampleLine(report, scene) });
}
