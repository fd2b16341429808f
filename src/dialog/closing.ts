/** "Ok", "bye", "see you next week": whoever ends the conversation, with no report open, is asked nothing more. */
import { anyOf, fold, saysAnyOf, type Wish } from '../answers/index.js';
import { say } from '../../shared/wording.js';
import { isEmpty } from './thread.js';
import type { Asking, Outcome, Scene, Thread } from './types.js';

/** With no report open these are no more than a farewell. */
const ENDS: ReadonlySet<Wish['wish']> = new Set<Wish['wish']>(['pause', 'stop', 'all-done']);

const EMOJI = /[\p{Extended_Pictographic}\uFE0F\u{1F3FB}-\u{1F3FF}]/gu;

/** Asked again after the next watch, or no question at all: what is asked once in a life stands. */
const mayWait = ({ kind }: Asking): boolean => kind === 'person' || kind === 'place-name' || kind === 'remind';

/** Nothing but thanks, farewells and nods; and among them a farewell. */
function partsOf(text: string, scene: Scene): { isOnly: boolean; thanks: boolean; farewell: boolean } {
  const { farewells, acknowledges, thanks } = scene.survey.words.wishes;
  const said = fold(text).replace(EMOJI, ' ').trim();
  const isOnly = new RegExp(`^(?:${anyOf(farewells, acknowledges, thanks)}[\\s,.!;–-]*)*$`, 'u').test(said);
  return { isOnly, thanks: isOnly && saysAnyOf(said, thanks), farewell: isOnly && saysAnyOf(said, farewells) };
}

export const isFarewell = (text: string, scene: Scene): boolean => partsOf(text, scene).farewell;

/** Null where the text says anything else, or a report is open. What was asked is asked again once another watch is told. */
export function hearClosing(thread: Thread, text: string, wish: Wish | null, scene: Scene): Outcome | null {
  const { report, asking } = thread;
  if (!isEmpty(report) || report?.live != null || (asking !== null && !mayWait(asking))) return null;
  const { isOnly, thanks, farewell } = partsOf(text, scene);
  const ends = wish !== null && ENDS.has(wish.wish) && !saysAnyOf(text, scene.survey.words.yesNo.halting);
  // "ok" is no answer to a question yet
  const isNod = asking === null && isOnly;
  if (!ends && !isNod && !thanks && !farewell) return null;
  const said = say(scene.survey.wording, thanks ? 'thanked' : 'closed');
  return { thread: { ...thread, asking: null }, said: [said], effects: [], then: 'rest' };
}
