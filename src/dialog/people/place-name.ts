/** What a place is called that was sent as a position: asked once, after its first watch, so that it can be offered. */
import { readFields, readYesNo, type Wish } from '../../answers/index.js';
import type { SavedPlace } from '../../../shared/person.js';
import { say } from '../../../shared/wording.js';
import { afterwards, type Afterwards } from './afterwards.js';
import { contextOf } from '../hear.js';
import { personOf } from './person-of.js';
import { placeKey } from '../places.js';
import type { Effect, Outcome, Scene, Thread } from '../types.js';

/** A longer one is a message about something else. */
const LONGEST_NAME = 60;

/** The question for the name of a place just kept, null where it has one or was asked about before. */
export function wantsPlaceName(place: SavedPlace | null, { history, message }: Scene): Afterwards | null {
  if (place === null || place.words !== '' || message.manner !== 'one') return null;
  if (history.places.some(({ key }) => key === place.key)) return null;
  return { asking: { kind: 'place-name', key: place.key }, said: [], effects: [] };
}

/** Null where the text is about something else: then the place stays without a name. */
export function answerPlaceName(
  thread: Thread,
  key: string,
  text: string,
  wish: Wish | null,
  scene: Scene,
): Outcome | null {
  const { history, survey } = scene;
  const { wording } = survey;
  const context = contextOf(scene, null);
  const done = (said: string, kept: readonly Effect[]): Outcome => {
    const photographed = history.lastWatches[0]?.photographs.length ?? 0;
    const wanted = afterwards(personOf(scene), { photographed: photographed > 0, progress: history.progress }, scene);
    return {
      thread: { ...thread, asking: wanted.asking },
      said: [said, ...wanted.said],
      effects: [...kept, ...wanted.effects],
      then: wanted.asking === null ? 'rest' : 'repeat',
    };
  };
  const yesNo = readYesNo(text, context);
  const isNo = yesNo.state === 'sure' && yesNo.value.answer === 'no' && yesNo.value.rest === null;
  if (isNo || wish?.wish === 'skip' || wish?.wish === 'unknown') return done(say(wording, 'place-name-declined'), []);
  const place = history.places.find((saved) => saved.key === key);
  const words = text.trim().replace(/[\s.!]+$/, '');
  const told = Object.keys(readFields(words, context, []).fields).some((field) => field !== 'place');
  const isName = /\p{L}/u.test(words) && words.length <= LONGEST_NAME && placeKey(words) !== '';
  if (place === undefined || wish !== null || told || yesNo.state !== 'none' || !isName) return null;
  const named: SavedPlace = { ...place, words, key: placeKey(words), lastUsed: scene.now };
  return done(say(wording, 'place-name-kept', { place: words }), [{ do: 'keep-place', place: named }]);
}
