/** Whether an observer's name may stand with their watches in what is published: asked once, changed at any time. */
import { readFields, readYesNo, type Wish } from '../../answers/index.js';
import { say } from '../../../shared/wording.js';
import { afterwards, canShowName } from './afterwards.js';
import { contextOf } from '../hear.js';
import { personOf } from './person-of.js';
import type { Outcome, Scene, Thread } from '../types.js';

/** Null where the text is about something else: then a key stands there, as the question said. */
export function answerNameShown(thread: Thread, text: string, wish: Wish | null, scene: Scene): Outcome | null {
  const { wording } = scene.survey;
  const context = contextOf(scene, null);
  const yesNo = readYesNo(text, context);
  // "no, I would rather you didn't" answers; "no, 2 impatiens today" tells something else
  const tells = (rest: string): boolean => Object.keys(readFields(rest, context, []).fields).length > 0;
  const answers = yesNo.state === 'sure' && (yesNo.value.rest === null || !tells(yesNo.value.rest));
  const bare = answers ? yesNo.value.answer : null;
  const declines = bare === 'no' || wish?.wish === 'skip' || wish?.wish === 'unknown';
  if (bare !== 'yes' && !declines) return null;
  const person = { ...personOf(scene), nameShown: bare === 'yes' };
  const photographed = scene.history.lastWatches.some(({ photographs }) => photographs.length > 0);
  const wanted = afterwards(person, { photographed, progress: scene.history.progress }, scene);
  const said = say(wording, person.nameShown ? 'name-shown' : 'name-hidden', { name: person.name ?? '' });
  return {
    thread: { ...thread, asking: wanted.asking },
    said: [said, ...wanted.said],
    effects: [{ do: 'keep-person', person }, ...wanted.effects],
    then: wanted.asking === null ? 'rest' : 'repeat',
  };
}

/** "show my name", "hide my name", whatever is being asked. */
export function chooseNameShown(thread: Thread, shown: boolean, scene: Scene): Outcome {
  const { wording } = scene.survey;
  const person = personOf(scene);
  const asked = thread.asking?.kind === 'name-shown';
  const done: Thread = asked ? { ...thread, asking: null } : thread;
  const then = done.asking === null ? 'rest' : 'repeat';
  if (shown && !canShowName(person))
    return { thread: done, said: [say(wording, 'no-name-to-show')], effects: [], then };
  return {
    thread: done,
    said: [say(wording, shown ? 'name-shown' : 'name-hidden', { name: person.name ?? '' })],
    effects: [{ do: 'keep-person', person: { ...person, nameShown: shown } }],
    then,
  };
}
