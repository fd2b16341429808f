/**
 * A photograph joins the report or watch that it is a reply to (`replied.ts`), or the current report; else, after a yes, the
 * last watch of the day; else the next report.
 */
import { Temporal } from 'temporal-polyfill';
import { readYesNo } from '../answers/index.js';
import { showClock } from '../../shared/display.js';
import type { Content } from '../../shared/message.js';
import type { Photograph, Watch } from '../../shared/record.js';
import { say } from '../../shared/wording.js';
import { afterwards } from './people/afterwards.js';
import { contextOf } from './hear.js';
import { inLive } from './live/index.js';
import { personOf } from './people/person-of.js';
import { changed, isEmpty } from './thread.js';
import { namedPlaceAt } from './places.js';
import type { Asking, Doubt, Outcome, Report, Scene, Thread } from './types.js';

type PictureTakenAt = NonNullable<(Content & { kind: 'photo' })['place']>;

/** The question for a place that only a yes may keep. */
export const PHOTOGRAPH_PLACE = 'photograph-place';

/** The day a picture was taken, offered as the watch's. */
const PHOTOGRAPH_DAY = 'photograph-day';

/** Doubts about what a picture's file says, which nobody typed. */
export const OF_PICTURES: ReadonlySet<string | null> = new Set([PHOTOGRAPH_PLACE, PHOTOGRAPH_DAY]);

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

/** A moment of a picture's file in the survey's zone. */
const localOf = (takenAt: string, { survey }: Scene): { readonly day: string; readonly time: string } => {
  const moment = Temporal.Instant.from(takenAt).toZonedDateTimeISO(survey.settings.timeZone);
  return {
    day: moment.toPlainDate().toString(),
    time: moment.toPlainTime().toString({ smallestUnit: 'minute' }),
  };
};

/**
 * When the pictures of the watch's day were taken, to be said with the question for its times: a moment within a watch
 * is neither its start nor its end, so it is offered as no answer. Null where there are none.
 */
export function picturesTaken(report: Report, scene: Scene): string | null {
  const date = report.fields['date']?.value;
  const times = report.photographs.flatMap(({ takenAt }) => {
    const local = takenAt === null ? null : localOf(takenAt, scene);
    return local?.day === date && local !== null ? [local.time] : [];
  });
  const [from, ...others] = [...new Set(times)].sort();
  if (from === undefined) return null;
  const { wording } = scene.survey;
  const shown = { from: showClock(from, wording.locale), to: showClock(others.at(-1) ?? from, wording.locale) };
  return say(wording, 'pictures-taken', { ...shown, pictures: others.length + 1 });
}

/** How many photographs are with the watch, below its summary; empty where there are none. */
export const photographLines = ({ photographs }: Report, { survey }: Scene): string[] =>
  photographs.length === 0 ? [] : [say(survey.wording, 'summary-photographs', { count: photographs.length })];

/** The day a picture was taken where the watch's day is still to be told; null else, and for a day to come. */
function dayOffered(report: Report, takenAt: string | null, scene: Scene): string | null {
  const { survey, local } = scene;
  const isOpen =
    survey.dialog.fields['date'] !== undefined &&
    report.fields['date'] === undefined &&
    report.live === null &&
    !report.doubts.some(({ field }) => field === 'date');
  if (!isOpen || takenAt === null) return null;
  const { day } = localOf(takenAt, scene);
  return day <= local.date ? day : null;
}

/** The day of the picture may be that of the watch: told only by a yes. */
const withDayOffered = (report: Report, day: string): Report =>
  changed(report, {
    doubts: [...report.doubts, { field: 'date', plant: null, offers: [day], ask: PHOTOGRAPH_DAY, typed: day }],
  });

/** A report that tells nothing yet takes no picture while a watch of the day may be what it shows. */
const takesPictures = ({ report }: Thread): boolean =>
  report !== null && !(isEmpty(report) && report.doubts.length === 0);

/** Whether an expert's look would help: a queen of no certain kind, or one that the survey protects. Asked once. */
export function wantsPictures(report: Report, { survey, message }: Scene): boolean {
  if (report.picturesWanted !== undefined || report.stored !== null || report.photographs.length > 0) return false;
  if (message.manner !== 'one') return false;
  const { protected: rare } = survey.settings.publish;
  return (report.tally ?? []).some(
    ({ bee, count, caste, doubt }) =>
      count > 0 && caste !== 'worker' && (doubt || bee === null || bee === 'Bombus' || rare.includes(bee)),
  );
}

export const photographOf = ({ sha256, type, takenAt }: Content & { kind: 'photo' }): Photograph => ({
  sha256,
  type,
  takenAt,
  queensRow: null,
  licence: null,
});

/** A stored watch with these photographs, and the change in its history. */
export const joinedBy = (watch: Watch, photographs: Watch['photographs'], { message, now }: Scene): Watch => ({
  ...watch,
  photographs,
  history: [
    ...watch.history,
    {
      at: now,
      by: watch.observer,
      role: 'observer',
      through: message.channel,
      path: '/photographs',
      from: watch.photographs,
      to: photographs,
      why: null,
    },
  ],
  changedAt: now,
});

export function takePhotograph(thread: Thread, photo: Content & { kind: 'photo' }, scene: Scene): Outcome {
  const { place, compressed } = photo;
  const photograph = photographOf(photo);
  const today = scene.history.lastWatches.find(({ date }) => date === scene.local.date);
  const { album } = scene.message;
  const isThanked = album !== undefined && thread.album === album;
  const inAlbum: Thread = album === undefined ? thread : { ...thread, album };
  const { report } = thread;
  const isMeant = report !== null && report.id === scene.history.repliedTo?.report;
  if (report !== null && (isMeant || takesPictures(thread) || today === undefined))
    return joinReport(inAlbum, report, photograph, { place, isThanked, isCompressed: compressed === true }, scene);
  const photographs = [...thread.photographs, photograph];
  const kept: Thread = { ...inAlbum, photographs };
  const { asking } = thread;
  // the question stands, and means this one too
  if (asking?.kind === 'join-photograph') return { thread: kept, said: [], effects: [], then: 'rest' };
  if (today === undefined) {
    const said = isThanked ? [] : [say(scene.survey.wording, 'photograph-for-next')];
    return { thread: kept, said, effects: [], then: 'rest' };
  }
  const waited = thread.photographs.length;
  return {
    thread: { ...kept, asking: { kind: 'join-photograph', watch: today.id, waited } },
    said: [],
    effects: [],
    then: 'repeat',
  };
}

/** Thanked once for an album. A summary is not shown once more, and its buttons stay good: it says nothing else now. */
function joinReport(
  thread: Thread,
  report: Report,
  photograph: Photograph,
  {
    place,
    isThanked,
    isCompressed,
  }: { readonly place: PictureTakenAt | undefined; readonly isThanked: boolean; readonly isCompressed: boolean },
  scene: Scene,
): Outcome {
  const { wording } = scene.survey;
  const known = report.photographs.some(({ sha256 }) => sha256 === photograph.sha256);
  const asFile = isCompressed && report.picturesWanted === 'asked';
  const noted: Report = asFile ? { ...report, picturesWanted: 'as-file' } : report;
  const next = known ? noted : { ...noted, photographs: [...report.photographs, photograph] };
  const day = dayOffered(next, photograph.takenAt, scene);
  const dated = day === null ? next : withDayOffered(next, day);
  const offers = place !== undefined && isPlaceOpen(dated, scene);
  const asksNow = (offers || day !== null) && report.live === null && !ASKS_FIRST.has(thread.asking?.kind);
  // while the clock runs, and where a yes would mean something else, it is asked later
  const repeats = report.live === null && !isThanked && thread.asking?.kind !== 'confirm';
  return {
    thread: { ...thread, report: offers ? withPlaceOffered(dated, place, scene) : dated },
    said: [
      ...(isThanked ? [] : [say(wording, 'photograph-kept')]),
      ...(asFile ? [say(wording, 'photograph-as-file')] : []),
    ],
    effects: [],
    then: asksNow ? 'ask' : repeats ? 'repeat' : 'rest',
    ...inLive(report),
  };
}

/** Photographs that waited are those of the report that is open, where one is. */
export function withPhotographs(thread: Thread): Thread {
  const { report, photographs } = thread;
  if (report === null || photographs.length === 0) return thread;
  return { ...thread, report: { ...report, photographs: [...report.photographs, ...photographs] }, photographs: [] };
}

/** Null where the answer was no yes or no: then it is about something else, and the photograph waits for the next watch. */
export function answerJoin(
  thread: Thread,
  { watch: watchId, waited = 0 }: Asking & { kind: 'join-photograph' },
  text: string,
  scene: Scene,
): Outcome | null {
  const { wording } = scene.survey;
  const reading = readYesNo(text, contextOf(scene, null));
  if (reading.state !== 'sure') return null;
  const watch = scene.history.lastWatches.find(({ id }) => id === watchId);
  if (reading.value.answer === 'no' || watch === undefined) {
    const next = withPhotographs({ ...thread, asking: null });
    const isOpen = next.report !== null;
    return {
      thread: next,
      said: [say(wording, isOpen ? 'photograph-kept' : 'photograph-for-next')],
      effects: [],
      then: isOpen ? 'ask' : 'rest',
    };
  }
  const person = personOf(scene);
  const licence = person.photographLicence;
  const photographs = [
    ...watch.photographs,
    ...thread.photographs.slice(waited).map((photograph) => ({ ...photograph, licence })),
  ];
  const wanted = afterwards(person, { photographed: true, progress: scene.history.progress }, scene);
  return {
    thread: { ...thread, asking: wanted.asking, photographs: thread.photographs.slice(0, waited) },
    said: [say(wording, 'photograph-joined', { number: watch.number }), ...wanted.said],
    effects: [{ do: 'keep-watch', watch: joinedBy(watch, photographs, scene) }, ...wanted.effects],
    then: wanted.asking === null ? 'rest' : 'repeat',
  };
}
