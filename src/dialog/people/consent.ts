/** Everything that comes before the consent: nothing is kept for good, and what was told is read once the yes is there. */
import { fold, readFields, readWish, readYesNo, type Wish } from '../../answers/index.js';
import type { Person } from '../../../shared/person.js';
import { fill, say } from '../../../shared/wording.js';
import { withoutAround } from '../doubts/choosing.js';
import { tellAll } from '../first-text.js';
import { contextOf } from '../hear.js';
import type { Outcome, Scene, Thread } from '../types.js';
import { begun } from '../wish.js';
import { personOf } from './person-of.js';
import { answerRight, askRight, rightOf } from './rights.js';

const welcome = ({ survey }: Scene): string => say(survey.wording, 'welcome', { survey: survey.settings.name });

/** A text from somebody who has not agreed yet. */
export function beforeConsent(thread: Thread, text: string, wish: Wish | null, scene: Scene): Outcome {
  const { asking } = thread;
  const { words } = scene.survey;
  if (asking?.kind === 'right')
    return answerRight(thread, asking, text, scene, (still, rest) =>
      beforeConsent(still, rest, readWish(rest, words), scene),
    );
  const first = asking?.kind !== 'consent';
  const asked: Thread = { ...thread, asking: { kind: 'consent' } };
  // their rights do not hang on a yes
  const right = rightOf(wish);
  if (right !== null) {
    const done = askRight(asked, right, scene);
    return { ...done, said: [...(first ? [welcome(scene)] : []), ...done.said], then: 'repeat' };
  }
  const heard = answerConsent(asked, text, wish, scene);
  const agrees = heard.effects.some((effect) => effect.do === 'keep-person');
  if (!first) return agrees ? readHeld(heard, scene) : heard;
  // the first message ever: whatever it says, they are told first what this is
  return { thread: { ...asked, held: heard.thread.held }, said: [welcome(scene)], effects: [], then: 'repeat' };
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
  if (reading.state === 'sure') return { ...stay([say(wording, 'consent-declined')], []), then: 'rest' };
  const tells = Object.keys(readFields(text, contextOf(scene, null), []).fields).length > 0;
  if (tells) return stay([say(wording, 'held-for-consent')], [...thread.held, text]);
  if (reading.state === 'unsure') return stay([fill(wording, wording.asks['yes-no-unclear'])]);
  return stay(wish?.wish === 'greeting' || thread.lastAt === null ? [] : [say(wording, 'consent-first')]);
}

/** After the yes: what was told before it. */
function readHeld(heard: Outcome, scene: Scene): Outcome {
  const person = heard.effects.find((effect) => effect.do === 'keep-person')?.person ?? scene.history.person;
  const known: Scene = { ...scene, history: { ...scene.history, person } };
  const thread = begun({ ...heard.thread, held: [] }, known);
  const text = heard.thread.held.join('\n');
  if (text === '' || thread.report === null) return { ...heard, thread };
  const told = tellAll(thread, thread.report, text, known);
  return { ...told, said: [...heard.said, ...told.said], effects: [...heard.effects, ...told.effects] };
}
