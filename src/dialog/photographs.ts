/** A photograph joins the current report; else, after a yes, the last watch of the day; else the next report. */
import { readYesNo } from '../answers/index.js';
import type { Photograph, Watch } from '../../shared/record.js';
import { say } from '../../shared/wording.js';
import { afterwards } from './afterwards.js';
import { contextOf } from './hear.js';
import { personOf } from './person-of.js';
import { changed } from './thread.js';
import type { Outcome, Scene, Thread } from './types.js';

export function takePhotograph(
  thread: Thread,
  photo: { sha256: string; type: string; takenAt: string | null },
  scene: Scene,
): Outcome {
  const { wording } = scene.survey;
  const { sha256, type, takenAt } = photo;
  const photograph: Photograph = { sha256, type, takenAt, queensRow: null, licence: null };
  const { report } = thread;
  if (report !== null) {
    const known = report.photographs.some((other) => other.sha256 === sha256);
    const photographs = known ? report.photographs : [...report.photographs, photograph];
    // while the clock runs the buttons of the last tally stay good: a picture is none
    const next = known || report.live ? { ...report, photographs } : changed(report, { photographs });
    return {
      thread: { ...thread, report: next },
      said: [say(wording, 'photograph-kept')],
      effects: [],
      then: report.live ? 'rest' : 'repeat',
    };
  }
  const kept = { ...thread, photographs: [...thread.photographs, photograph] };
  const today = scene.history.lastWatches.find(({ date }) => date === scene.local.date);
  if (today === undefined)
    return { thread: kept, said: [say(wording, 'photograph-for-next')], effects: [], then: 'rest' };
  return {
    thread: { ...kept, asking: { kind: 'join-photograph', watch: today.id } },
    said: [],
    effects: [],
    then: 'repeat',
  };
}

/** Null where the answer was no yes or no: then it is about something else, and the photograph waits for the next watch. */
export function answerJoin(thread: Thread, watchId: string, text: string, scene: Scene): Outcome | null {
  const { wording } = scene.survey;
  const reading = readYesNo(text, contextOf(scene, null));
  if (reading.state !== 'sure') return null;
  const watch = scene.history.lastWatches.find(({ id }) => id === watchId);
  if (reading.value.answer === 'no' || watch === undefined) {
    return {
      thread: { ...thread, asking: null },
      said: [say(wording, 'photograph-for-next')],
      effects: [],
      then: 'rest',
    };
  }
  const person = personOf(scene);
  const licence = person.photographLicence;
  const photographs = [...watch.photographs, ...thread.photographs.map((photograph) => ({ ...photograph, licence }))];
  const joined: Watch = {
    ...watch,
    photographs,
    history: [
      ...watch.history,
      {
        at: scene.now,
        by: watch.observer,
        role: 'observer',
        through: scene.message.channel,
        path: '/photographs',
        from: watch.photographs,
        to: photographs,
        why: null,
      },
    ],
    changedAt: scene.now,
  };
  const wanted = afterwards(person, { photographed: true, progress: scene.history.progress }, thread, scene);
  return {
    thread: { ...thread, asking: wanted.asking, photographs: [] },
    said: [say(wording, 'photograph-joined', { number: watch.number }), ...wanted.said],
    effects: [{ do: 'keep-watch', watch: joined }, ...wanted.effects],
    then: wanted.asking === null ? 'rest' : 'repeat',
  };
}
