/** A photograph joins the current report; else, after a yes, the last watch of the day; else the next report. */
import { readYesNo } from '../answers/index.js';
import type { Content } from '../../shared/message.js';
import type { Photograph, Watch } from '../../shared/record.js';
import { say } from '../../shared/wording.js';
import { afterwards } from './people/afterwards.js';
import { contextOf } from './hear.js';
import { personOf } from './people/person-of.js';
import { changed } from './thread.js';
import { namedPlaceAt } from './places.js';
import type { Doubt, Outcome, Report, Scene, Thread } from './types.js';

type PictureTakenAt = NonNullable<(Content & { kind: 'photo' })['place']>;

/** The question for a place that only a yes may keep. */
export const PHOTOGRAPH_PLACE = 'photograph-place';

/** A question that is answered before another is asked. */
const ASKS_FIRST: ReadonlySet<string | undefined> = new Set(['throw-away', 'right', 'doubt', 'person', 'licence']);

/** Whether it is still to be told where the watch was. */
const isPlaceOpen = (report: Report, { survey }: Scene): boolean =>
  survey.dialog.fields['place'] !== undefined &&
  report.fields['place'] === undefined &&
  !report.doubts.some(({ field }) => field === 'place');

/**
 * Where the picture was taken may be where the watch was: asked, and told only by a yes. Until it is answered it waits in
 * the thread; a no, or another place, leaves nothing of it.
 */
function withPlaceOffered(report: Report, at: PictureTakenAt, scene: Scene): Report {
  const offer = namedPlaceAt(at, scene);
  const typed = `${at.latitude.toFixed(5)}, ${at.longitude.toFixed(5)}`;
  const doubt: Doubt = { field: 'place', plant: null, offers: [{ ...offer }], ask: PHOTOGRAPH_PLACE, typed };
  const doubts = [...report.doubts, doubt];
  return report.live ? { ...report, doubts } : changed(report, { doubts });
}

export function takePhotograph(thread: Thread, photo: Content & { kind: 'photo' }, scene: Scene): Outcome {
  const { wording } = scene.survey;
  const { sha256, type, takenAt, place } = photo;
  const photograph: Photograph = { sha256, type, takenAt, queensRow: null, licence: null };
  const { report } = thread;
  if (report !== null) {
    const known = report.photographs.some((other) => other.sha256 === sha256);
    const photographs = known ? report.photographs : [...report.photographs, photograph];
    // while the clock runs the buttons of the last tally stay good: a picture is none
    const next = known || report.live ? { ...report, photographs } : changed(report, { photographs });
    const offers = place !== undefined && isPlaceOpen(next, scene);
    return {
      thread: { ...thread, report: offers ? withPlaceOffered(next, place, scene) : next },
      said: [say(wording, 'photograph-kept')],
      effects: [],
      // while the clock runs, and where a yes would mean something else, it is asked later
      then: report.live ? 'rest' : offers && !ASKS_FIRST.has(thread.asking?.kind) ? 'ask' : 'repeat',
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
  const wanted = afterwards(person, { photographed: true, progress: scene.history.progress }, scene);
  return {
    thread: { ...thread, asking: wanted.asking, photographs: [] },
    said: [say(wording, 'photograph-joined', { number: watch.number }), ...wanted.said],
    effects: [{ do: 'keep-watch', watch: joined }, ...wanted.effects],
    then: wanted.asking === null ? 'rest' : 'repeat',
  };
}
