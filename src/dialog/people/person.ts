/** What is asked of the person rather than of the watch once a first one is stored: name and mail. */
import { readWish, readYesNo, saysAnyOf, type Wish } from '../../answers/index.js';
import type { Person } from '../../../shared/person.js';
import { fill, say } from '../../../shared/wording.js';
import { afterwards } from './afterwards.js';
import { contextOf, hear } from '../hear.js';
import { mailCode } from './joining.js';
import { mailIn, nameIn } from './told.js';
import { personOf } from './person-of.js';
import { sendReceipt } from './receipt.js';
import { newReport } from '../thread.js';
import type { Effect, Outcome, Scene, Thread } from '../types.js';

/** No name and no address, though they could be one. */
const NO_ANSWERS: ReadonlySet<Wish['wish']> = new Set<Wish['wish']>([
  'new',
  'start',
  'fix',
  'change-what',
  'so-far',
  'go-on',
]);

/** Null where the words tell of a watch, or ask for something else. */
export function answerPerson(
  thread: Thread,
  field: 'name' | 'mail',
  text: string,
  wish: Wish | null,
  scene: Scene,
): Outcome | null {
  const { wording } = scene.survey;
  const person = personOf(scene);
  const done = (next: Person, said: readonly string[], more: readonly Effect[] = []): Outcome => {
    const photographed = scene.history.lastWatches.some(({ photographs }) => photographs.length > 0);
    const wanted = afterwards(next, { photographed, progress: scene.history.progress }, scene);
    return {
      thread: { ...thread, asking: wanted.asking },
      said: [...said, ...wanted.said],
      effects: [{ do: 'keep-person', person: next }, ...more, ...wanted.effects],
      then: wanted.asking === null ? 'rest' : 'repeat',
    };
  };
  const { taken } = hear(newReport('', scene.message), text, [], scene);
  if (taken.includes('times') || (taken.length > 1 && /\d/.test(text))) return null;
  const yesNo = readYesNo(text, contextOf(scene, null));
  const declines =
    wish?.wish === 'skip' ||
    endsInSkip(text, scene) ||
    wish?.wish === 'unknown' ||
    declinesByWords(field, text, scene) ||
    (yesNo.state === 'sure' &&
      yesNo.value.answer === 'no' &&
      (yesNo.value.rest === null || keepsBack(field, yesNo.value.rest, scene)));
  if (declines) {
    const all = { ...person, declined: [...new Set([...person.declined, field])] };
    return done(all, [say(wording, field === 'mail' ? 'mail-declined' : 'name-declined')]);
  }
  if (wish !== null && NO_ANSWERS.has(wish.wish)) return null;
  if (field === 'mail') {
    const mail = mailIn(text, scene);
    if (mail !== null)
      // the same for all: whether somebody else has that address is told to its readers alone
      return done(
        { ...person, mail },
        [say(wording, 'mail-kept', { mail })],
        [...lastReceipt(person.name, mail, scene), ...mailCode(mail, scene)],
      );
    if (taken.length > 0) return null;
    return {
      thread,
      said: [fill(wording, wording.asks['no-mail'], { typed: text.slice(0, 60), offer: '' })],
      effects: [],
      then: 'rest',
    };
  }
  const name = wish === null ? nameIn(text, scene) : null;
  if (name !== null) return done({ ...person, name }, [say(wording, 'name-kept', { name })]);
  if (taken.length > 0) return null;
  return {
    thread,
    said: [fill(wording, wording.asks['no-name'], { typed: text.slice(0, 60), offer: '' })],
    effects: [],
    then: 'rest',
  };
}

/** "tess at … no wait, skip": what was begun is taken back. */
function endsInSkip(text: string, { survey: { words } }: Scene): boolean {
  const last = text.split(/[,.;…!]+/).at(-1) ?? '';
  return last !== text && readWish(last, words)?.wish === 'skip' && saysAnyOf(text, words.tally.takesBack);
}

/** The address is asked for after a watch was stored, so that watch's receipt is the first to go there. */
function lastReceipt(name: string | null, mail: string, scene: Scene): Effect[] {
  const { lastWatches, progress } = scene.history;
  const last = lastWatches.find(({ status }) => status === 'confirmed' || status === 'practice');
  return last === undefined ? [] : [sendReceipt(last, { name, mail }, progress, scene)];
}

/** "no, I won't give my name", "no email please", "nah I'm good" for a mail; "no, call me Bo" is none. */
const keepsBack = (field: 'name' | 'mail', rest: string, scene: Scene): boolean =>
  !rest.includes('@') && (field === 'mail' || nameIn(rest, scene) === null);

/** "none", "I'd rather stay anonymous", "I don't have email"; never where a name or an address stands beside. */
const declinesByWords = (field: 'name' | 'mail', text: string, scene: Scene): boolean =>
  !/[@?]/.test(text) &&
  saysAnyOf(text, scene.survey.words.wishes.keepsBack) &&
  (field === 'mail' || nameIn(text, scene) === null);
