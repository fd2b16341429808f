/** Everything that comes before the consent: nothing is kept for good, and what was told is read once the yes is there. */
import { Temporal } from 'temporal-polyfill';
import { fold, readFields, readWish, readYesNo, type Wish } from '../../answers/index.js';
import type { Person } from '../../../shared/person.js';
import { fill, say } from '../../../shared/wording.js';
import { withoutAround } from '../doubts/choosing.js';
import { tellAll } from '../first-text.js';
import { contextOf } from '../hear.js';
import { onPlace } from '../on-place.js';
import { newThread } from '../thread.js';
import type { Effect, Outcome, Position, Scene, Thread } from '../types.js';
import { begun } from '../begin.js';
import { personOf } from './person-of.js';
import { answerRight, askRight, rightOf } from './rights.js';

/** What somebody who comes for the first time is told: what this is, and who sees what they tell. */
export const welcome = ({ survey: { wording, settings } }: Scene): string =>
  say(wording, 'welcome', { survey: settings.name, helped: settings.helpers.length > 0 });

/** The thread with the consent to be asked for, and what is said before it: to a stranger what this is. */
function asking(thread: Thread, scene: Scene): { readonly asked: Thread; readonly first: readonly string[] } {
  const isAsked = thread.asking?.kind === 'consent' || thread.asking?.kind === 'right';
  return isAsked
    ? { asked: thread, first: [] }
    : { asked: { ...thread, asking: { kind: 'consent' } }, first: [welcome(scene)] };
}

/** A position that was sent: held like a text. */
export function placeBeforeConsent(thread: Thread, heldPosition: Position, scene: Scene): Outcome {
  const { asked, first } = asking(thread, scene);
  const said = [...first, say(scene.survey.wording, 'held-for-consent')];
  return { thread: { ...asked, heldPosition }, said, effects: [], then: 'repeat' };
}

/** So long nothing more is said of the pictures that come after one. */
const ALBUM_MINUTES = 10;

/**
 * A picture is a file: none is kept of somebody who has not agreed, and they are told so, once for an album. Its hash where
 * it was stored all the same, null where it was not even fetched.
 */
export function photographBeforeConsent(thread: Thread, sha256: string | null, scene: Scene): Outcome {
  const { asked, first } = asking(thread, scene);
  const { photographLostAt: last } = thread;
  const { at } = scene.message;
  const effects: Effect[] = sha256 === null ? [] : [{ do: 'remove-photograph', sha256 }];
  const isSaid = last !== undefined && Temporal.Instant.from(last).until(at).total('minutes') < ALBUM_MINUTES;
  if (isSaid) return { thread, said: [], effects, then: 'rest' };
  const said = [...first, say(scene.survey.wording, 'photograph-before-consent')];
  return { thread: { ...asked, photographLostAt: at }, said, effects, then: 'repeat' };
}

/** A text from somebody who has not agreed yet. */
export function beforeConsent(thread: Thread, text: string, wish: Wish | null, scene: Scene): Outcome {
  const { words } = scene.survey;
  if (thread.asking?.kind === 'right')
    return answerRight(thread, thread.asking, text, scene, (still, rest) =>
      beforeConsent(still, rest, readWish(rest, words), scene),
    );
  const { asked, first } = asking(thread, scene);
  // their rights do not hang on a yes
  const right = rightOf(wish);
  if (right !== null) {
    const done = askRight(asked, right, scene);
    return { ...done, said: [...first, ...done.said], then: 'repeat' };
  }
  const heard = answerConsent(asked, text, wish, scene);
  const agrees = heard.effects.some((effect) => effect.do === 'keep-person');
  if (first.length === 0) return agrees ? readHeld(heard, scene) : heard;
  // the first message ever: whatever it says, they are told first what this is
  return { thread: { ...asked, held: heard.thread.held }, said: first, effects: [], then: 'repeat' };
}

function answerConsent(thread: Thread, text: string, wish: Wish | null, scene: Scene): Outcome {
  const { wording } = scene.survey;
  const stay = (said: readonly string[], held = thread.held): Outcome => ({
    thread: { ...thread, held },
    said,
    effects: [],
    then: 'repeat',
  });
  if (wish?.wish === 'help' || wish?.wish === 'example') return stay([say(wording, 'help-consent')]);
  const reading = readYesNo(text, contextOf(scene, null));
  const consents = scene.survey.words.wishes.consents.includes(fold(withoutAround(text, contextOf(scene, null))));
  if (consents || (reading.state === 'sure' && reading.value.answer === 'yes')) {
    const person: Person = { ...personOf(scene), consent: { at: scene.now, wordingVersion: wording.version } };
    const rest = !consents && reading.state === 'sure' ? reading.value.rest : null;
    const held = rest === null ? thread.held : [...thread.held, rest];
    return {
      thread: { ...thread, asking: null, held },
      said: [say(wording, 'consent-given')],
      effects: [{ do: 'keep-person', person }],
      then: 'ask',
    };
  }
  if (reading.state === 'sure') {
    // nothing is kept of who does not agree, so a later message is a stranger's again
    const effects = [{ do: 'forget-person' }] as const;
    return { thread: newThread(scene.survey), said: [say(wording, 'consent-declined')], effects, then: 'rest' };
  }
  const tells = Object.keys(readFields(text, contextOf(scene, null), []).fields).length > 0;
  if (tells) return stay([say(wording, 'held-for-consent')], [...thread.held, text]);
  if (reading.state === 'unsure') return stay([fill(wording, wording.asks['yes-no-unclear'])]);
  return stay(wish?.wish === 'greeting' || thread.lastAt === null ? [] : [say(wording, 'consent-first')]);
}

/** After the yes: what was told before it, and the position that was sent. */
function readHeld(heard: Outcome, scene: Scene): Outcome {
  const person = heard.effects.find((effect) => effect.do === 'keep-person')?.person ?? scene.history.person;
  const known: Scene = { ...scene, history: { ...scene.history, person } };
  const { heldPosition, photographLostAt: _lost, ...agreed } = heard.thread;
  const thread = begun({ ...agreed, held: [] }, known);
  const text = heard.thread.held.join('\n');
  let told: Outcome = { ...heard, thread };
  if (text !== '' && thread.report !== null) {
    const read = tellAll(thread, thread.report, text, known);
    told = { ...read, said: [...heard.said, ...read.said], effects: [...heard.effects, ...read.effects] };
  }
  if (heldPosition === undefined) return told;
  const placed = onPlace(told.thread, known, heldPosition);
  const said = [...told.said, ...(told.echo == null ? [] : [told.echo]), ...placed.said];
  return { ...placed, said, effects: [...told.effects, ...placed.effects] };
}
