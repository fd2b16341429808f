/** A position that was sent, not typed: it tells where the watch was, whatever is being asked. */
import { tell, valueOf } from './fields.js';
import { liveSlot } from './live/index.js';
import { outcome } from './outcome.js';
import { briefly } from './summary.js';
import { namedPlaceAt, wordsAt, type ToldPlace } from './places.js';
import { changed } from './thread.js';
import type { Outcome, Position, Scene, Thread } from './types.js';
import { begun } from './begin.js';

export function onPlace(thread: Thread, scene: Scene, what: Position): Outcome {
  const { report } = thread;
  if (report === null) return outcome(thread, begun(thread, scene).report!);
  const { latitude, longitude, uncertaintyMetres } = what;
  const before = valueOf<ToldPlace>(report, 'place');
  const kept = before === null ? '' : wordsAt(what, before, scene.survey);
  // by the name it was sent with, else as it was told, else as this person knows it
  const known = kept === '' ? namedPlaceAt({ latitude, longitude, uncertaintyMetres }, scene).words : kept;
  const words = what.words ?? known;
  const typed = `${latitude}, ${longitude}`;
  const next = tell(report, 'place', { latitude, longitude, uncertaintyMetres, words }, typed, scene.message.id);
  const question = scene.survey.dialog.questions.find(({ fields }) => fields.includes('place'))?.question;
  const asked = question === undefined || next.asked.includes(question) ? next.asked : [...next.asked, question];
  const echo = briefly(['place'], next, scene);
  if (next.live !== null) return { ...outcome(thread, next), echo, then: 'rest', silent: true, slot: liveSlot(next) };
  return { ...outcome(thread, changed(next, { asked })), echo };
}
