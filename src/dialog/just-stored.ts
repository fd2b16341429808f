/**
 * Words that come right after a watch was stored and are about it: "oh wait, the temp was 71", "3 queens, not 2". They
 * open it with what they correct; what may as well begin another watch is asked about.
 */
import { Temporal } from 'temporal-polyfill';
import { namedIn, readYesNo, saysAnyOf, type Wish } from '../answers/index.js';
import type { Watch } from '../../shared/record.js';
import { begun, openWatch } from './begin.js';
import { firstText } from './first-text.js';
import { contextOf, hear } from './hear.js';
import { aboutOf, mend } from './mend-stored.js';
import { nameIn } from './people/told.js';
import { isEmpty, newReport } from './thread.js';
import type { Asking, Outcome, Scene, Thread } from './types.js';

/** Asked once a watch is stored: words about the watch do not answer these. */
const ASKED_AFTERWARDS: ReadonlySet<Asking['kind']> = new Set<Asking['kind']>([
  'person',
  'licence',
  'name-shown',
  'place-name',
  'remind',
]);

/** Wishes that change something: of the stored watch, where no report is open. */
const CHANGES: ReadonlySet<Wish['wish']> = new Set<Wish['wish']>(['change', 'add', 'take-out', 'remark']);

/** So long after it was stored words that put something right are about it. */
const PUT_RIGHT_HOURS = 24;

/** When and where is told first of another watch; of what is stored it is rarely told without a word that takes it back. */
const BEGINS_ANOTHER: ReadonlySet<string> = new Set(['date', 'times', 'place']);

/** Null where the text is about something else, or answers what is asked. */
export function hearJustStored(thread: Thread, text: string, wish: Wish | null, scene: Scene): Outcome | null {
  const { report, asking, lastAt } = thread;
  if (!isEmpty(report) || report?.live != null || lastAt === null) return null;
  if (asking !== null && !ASKED_AFTERWARDS.has(asking.kind)) return null;
  if (scene.message.edits !== null || minutesSince(lastAt, scene) > PUT_RIGHT_HOURS * 60) return null;
  if (wish !== null && wish.wish !== 'change-what' && !CHANGES.has(wish.wish)) return null;
  const watch = scene.history.lastWatches[0];
  if (watch === undefined) return null;
  const minutes = minutesSince(watch.changedAt, scene);
  if (minutes > PUT_RIGHT_HOURS * 60) return null;
  const still: Thread = { ...thread, asking: null };
  if (wish?.wish === 'change-what') return openWatch(still, watch, scene);

  const { taken } = hear(newReport('', scene.message), text, [], scene);
  const putsRight = wish !== null || saysPutRight(text, scene);
  if (isName(thread, text, putsRight && taken.length > 0, scene) || saysAnother(text, scene)) return null;
  if (wish === null && !namesSomething(text, taken, scene)) return null;
  // no other watch can have been made so soon, but one may be told that was made before
  const isSoon = minutes < scene.survey.settings.protocol.minutes;
  if (putsRight) {
    const isAnother = taken.includes('times') && taken.some((field) => field !== 'times' && field !== 'date');
    const mended = isAnother ? null : mend(still, watch, text, scene);
    // "sorry I'm late, I did one yesterday"
    const mayBegin = wish === null && !isSoon && taken.some((field) => BEGINS_ANOTHER.has(field));
    return mended !== null && mayBegin ? askWhich(thread, watch, text, scene) : mended;
  }
  const isOfWatch = !taken.some((field) => BEGINS_ANOTHER.has(field));
  return isSoon && isOfWatch && mend(still, watch, text, scene) !== null ? askWhich(thread, watch, text, scene) : null;
}

/** Whether a text says anything of a watch: "sorry, no" and an address answer what is asked. */
function namesSomething(text: string, taken: readonly string[], scene: Scene): boolean {
  if (text.includes('@')) return false;
  const { bees, plants } = namedIn(text, contextOf(scene, null));
  const { queens, queensPlural } = scene.survey.words.tally;
  return (
    taken.some((field) => field !== 'tally') ||
    bees.length + plants.length > 0 ||
    /\d/.test(text) ||
    saysAnyOf(text, [...queens, ...queensPlural])
  );
}

const minutesSince = (instant: string, { message }: Scene): number =>
  Temporal.Instant.from(instant).until(message.at).total('minutes');

const saysPutRight = (text: string, { survey: { words } }: Scene): boolean =>
  [words.tally.takesBack, words.yesNo.corrections, words.yesNo.wrongLater, words.yesNo.fixing].some((list) =>
    saysAnyOf(text, list),
  );

/** "I did another one: yesterday …" */
const saysAnother = (text: string, { survey: { words } }: Scene): boolean =>
  saysAnyOf(
    text,
    words.wishes.plain.new.filter((phrase) => phrase.includes(' ')),
  );

/** Asked for a name, "Sunny" and "Violet" are names. */
const isName = ({ asking }: Thread, text: string, tellsOtherwise: boolean, scene: Scene): boolean =>
  asking?.kind === 'person' && asking.field === 'name' && !tellsOtherwise && nameIn(text, scene) !== null;

function askWhich(thread: Thread, watch: Watch, text: string, scene: Scene): Outcome {
  return {
    thread: { ...thread, asking: { kind: 'open-stored', ...aboutOf(watch, scene), text } },
    said: [],
    effects: [],
    then: 'repeat',
  };
}

/** A yes opens the watch with what was said; else another one is begun with that, and with what else is said now. */
export function answerOpenStored(
  thread: Thread,
  { number, text }: Asking & { kind: 'open-stored' },
  answer: string,
  scene: Scene,
): Outcome {
  const still: Thread = { ...thread, asking: null };
  const reading = readYesNo(answer, contextOf(scene, null));
  const isSure = reading.state === 'sure';
  const rest = isSure ? reading.value.rest : answer;
  const all = rest === null ? text : `${text}\n${rest}`;
  const watch = scene.history.lastWatches.find((candidate) => candidate.number === number);
  if (isSure && reading.value.answer === 'yes' && watch !== undefined)
    return mend(still, watch, all, scene) ?? mend(still, watch, text, scene) ?? openWatch(still, watch, scene);
  const another = begun(still, scene);
  return another.report === null
    ? { thread: another, said: [], effects: [], then: 'ask' }
    : firstText(another, another.report, all, scene);
}
