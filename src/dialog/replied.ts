/**
 * A reply to an earlier message of ours. What that was about decides: a picture joins its report or watch; words about
 * another than the report in hand never become an answer of that one.
 */
import { readYesNo, type Wish } from '../answers/index.js';
import type { RepliedTo } from '../../shared/history.js';
import type { Content } from '../../shared/message.js';
import type { Photograph, Watch } from '../../shared/record.js';
import { say } from '../../shared/wording.js';
import { openWatch } from './begin.js';
import { contextOf } from './hear.js';
import { inLive, softly } from './live/index.js';
import { aboutOf, mend, tellsAnother } from './mend-stored.js';
import { afterwards } from './people/afterwards.js';
import { personOf } from './people/person-of.js';
import { joinedBy, photographOf } from './photographs.js';
import { nextAsking, revisionOf } from './reply.js';
import { changed, isEmpty } from './thread.js';
import type { Asking, Outcome, Report, Scene, Thread } from './types.js';

/** Said of the conversation, of a clock that runs, or of a watch that it names itself: not of the message replied to. */
const NOT_OF_A_WATCH: ReadonlySet<Wish['wish']> = new Set<Wish['wish']>([
  'help',
  'example',
  'photograph',
  'greeting',
  'new',
  'start',
  'pause',
  'stop',
  'go-on',
  'so-far',
  'fix',
]);

/** Whether the message replied to is about this report, or about the watch that it mends. */
const isInHand = ({ id, stored }: Report, { report, watch }: RepliedTo): boolean =>
  id === report || (stored !== null && stored.id === watch?.id);

/** The stored watch that the message replied to is about; null where that is the report in hand, or what is asked now. */
function watchRepliedTo(thread: Thread, { history: { repliedTo } }: Scene): Watch | null {
  if (repliedTo?.watch == null) return null;
  const { report, asking } = thread;
  const { watch } = repliedTo;
  if (report !== null && isInHand(report, repliedTo)) return null;
  const isAskedNow =
    asking !== null && repliedTo.report === (report?.id ?? null) && repliedTo.revision === revisionOf(thread);
  return isAskedNow ? null : watch;
}

/** A report put aside that the message replied to is about, or that mends the watch it is about. */
const parkedRepliedTo = ({ parked }: Thread, { history: { repliedTo } }: Scene): Report | undefined =>
  repliedTo === undefined ? undefined : parked.find((report) => isInHand(report, repliedTo));

/** A picture that is a reply to something about another than the report in hand; null for any other. */
export function takeRepliedPhotograph(
  thread: Thread,
  photo: Content & { kind: 'photo' },
  scene: Scene,
): Outcome | null {
  const { wording } = scene.survey;
  const { album } = scene.message;
  const isThanked = album !== undefined && thread.album === album;
  const inAlbum: Thread = album === undefined ? thread : { ...thread, album };
  const photograph = photographOf(photo);
  const isOfReport = thread.report !== null && thread.report.id === scene.history.repliedTo?.report;
  const aside = isOfReport ? undefined : parkedRepliedTo(thread, scene);
  if (aside !== undefined) {
    const joined = changed(aside, { photographs: withOneMore(aside.photographs, photograph) });
    const parked = thread.parked.map((report) => (report === aside ? joined : report));
    const said = isThanked ? [] : [say(wording, 'photograph-put-aside')];
    return { thread: { ...inAlbum, parked }, said, effects: [], then: 'rest' };
  }
  const watch = watchRepliedTo(thread, scene) ?? watchAskedAbout(thread, scene);
  if (watch === null) return null;
  const licensed = { ...photograph, licence: personOf(scene).photographLicence };
  const joined = joinedBy(watch, withOneMore(watch.photographs, licensed), scene);
  const said = isThanked ? [] : [say(wording, 'photograph-joined', { number: watch.number })];
  const effects = [{ do: 'keep-watch', watch: joined } as const];
  // what is asked stands, and a licence is not asked about in the middle of a report
  if (thread.asking !== null || !isEmpty(thread.report))
    return { thread: inAlbum, said, effects, then: 'rest', ...inLive(thread.report) };
  const wanted = afterwards(personOf(scene), { photographed: true, progress: scene.history.progress }, scene);
  return {
    thread: { ...inAlbum, asking: wanted.asking },
    said: [...said, ...wanted.said],
    effects: [...effects, ...wanted.effects],
    then: wanted.asking === null ? 'rest' : 'repeat',
  };
}

/** "Stored as watch 3. What name …?": a picture is no answer, so it is about the watch. */
const watchAskedAbout = ({ report }: Thread, { history: { repliedTo } }: Scene): Watch | null =>
  report === null ? (repliedTo?.watch ?? null) : null;

const withOneMore = (photographs: readonly Photograph[], more: Photograph): Photograph[] =>
  photographs.some(({ sha256 }) => sha256 === more.sha256) ? [...photographs] : [...photographs, more];

/**
 * A text, or a position (null), that is a reply to something about another than the report in hand; null for any other.
 * `readOn` reads it in a report that was put aside, where no other is in hand.
 */
export function hearReplied(
  thread: Thread,
  text: string | null,
  wish: Wish | null,
  scene: Scene,
  readOn: (thread: Thread) => Outcome,
): Outcome | null {
  const { repliedTo } = scene.history;
  if (repliedTo === undefined || (wish !== null && NOT_OF_A_WATCH.has(wish.wish))) return null;
  const { wording } = scene.survey;
  const { report } = thread;
  if (report !== null && isInHand(report, repliedTo)) return null;
  const aside = parkedRepliedTo(thread, scene);
  if (aside !== undefined && isEmpty(report)) {
    const back: Thread = { ...thread, report: aside, parked: thread.parked.filter((other) => other !== aside) };
    const read = readOn({ ...back, asking: nextAsking(back, scene) });
    return { ...read, said: [say(wording, 'reply-back'), ...read.said] };
  }
  if (aside !== undefined) return nothingTaken(thread, say(wording, 'reply-put-aside'));
  const watch = watchRepliedTo(thread, scene);
  if (watch !== null) return aboutStored(thread, watch, text, wish, scene);
  const isOfAnother = repliedTo.report !== null && !isEmpty(report);
  return isOfAnother ? nothingTaken(thread, say(wording, 'reply-stale')) : null;
}

/** Said, and what is asked is asked again; a clock that runs goes on. */
function nothingTaken(thread: Thread, said: string): Outcome {
  if (thread.report?.live) return softly(thread, thread.report, said);
  return { thread, said: [said], effects: [], then: thread.asking === null ? 'rest' : 'repeat' };
}

function aboutStored(
  thread: Thread,
  watch: Watch,
  text: string | null,
  wish: Wish | null,
  scene: Scene,
): Outcome | null {
  const { wording } = scene.survey;
  const { report, asking } = thread;
  if (report?.live) return nothingTaken(thread, say(wording, 'reply-live', aboutOf(watch, scene)));
  if (wish?.wish === 'change-what') return openWatch(thread, watch, scene);
  if (isEmpty(report) && text !== null) {
    if (tellsAnother(text, scene)) return null;
    const mended = mend(thread, watch, text, scene);
    if (mended !== null) return mended;
  }
  const before = asking?.kind === 'open-replied' ? asking.before : asking;
  return {
    thread: { ...thread, asking: { kind: 'open-replied', ...aboutOf(watch, scene), text, before } },
    said: [],
    effects: [],
    then: 'repeat',
  };
}

/** A yes opens the watch, a no leaves all as it is; other words are about something else, and `readOn` takes them. */
export function answerOpenReplied(
  thread: Thread,
  { number, text, before }: Asking & { kind: 'open-replied' },
  answer: string,
  scene: Scene,
  readOn: (thread: Thread) => Outcome,
): Outcome {
  const still: Thread = { ...thread, asking: before };
  const reading = readYesNo(answer, contextOf(scene, thread.report));
  if (reading.state !== 'sure' || reading.value.rest !== null) return readOn(still);
  const watch = scene.history.lastWatches.find((candidate) => candidate.number === number);
  if (reading.value.answer === 'no' || watch === undefined) {
    const said = [say(scene.survey.wording, 'right-not-done')];
    return { thread: still, said, effects: [], then: before === null ? 'rest' : 'repeat' };
  }
  return (text === null ? null : mend(still, watch, text, scene)) ?? openWatch(still, watch, scene);
}
