/** The summary's yes: stores the watch, keeps its place, thanks, and asks what is still wanted of the person. */
import { Temporal } from 'temporal-polyfill';
import { readYesNo } from '../answers/index.js';
import type { SavedPlace } from '../../shared/person.js';
import { say } from '../../shared/wording.js';
import { afterwards } from './people/afterwards.js';
import { valueOf } from './fields.js';
import { contextOf } from './hear.js';
import { besideYes } from './corrections/beside-yes.js';
import { correct, correctAbsent, correctDenied, correctDoubt } from './corrections/correct.js';
import { personOf } from './people/person-of.js';
import { wantsPlaceName } from './people/place-name.js';
import { placeKey, siteOf, type ToldPlace } from './places.js';
import { sendReceipt } from './people/receipt.js';
import { tellSecond } from './second-watch.js';
import { outcome } from './outcome.js';
import { isPrivate } from './findings.js';
import { watchOf } from './store-watch.js';
import { showPlace } from './show.js';
import type { Effect, Outcome, Report, Scene, Thread } from './types.js';

export const ASK_ONCE = 'ask-once';
export const UNCONFIRMED = 'unconfirmed';
/** A complete summary left without a yes is asked about once after this long, and shown to the coordinator after twice that. */
const ASK_ONCE_HOURS = 20;

const hoursLater = (now: string, hours: number): string => Temporal.Instant.from(now).add({ hours }).toString();

/** Timers that go with a shown summary; shown because it was asked about once, it has its own. */
export function summaryTimers(report: Report, scene: Scene): Effect[] {
  const { what } = scene.message;
  if (what.kind === 'time' && what.key === ASK_ONCE) return [];
  const due = hoursLater(scene.now, ASK_ONCE_HOURS);
  return [
    { do: 'set-timer', key: ASK_ONCE, report: report.id, due },
    { do: 'clear-timer', key: UNCONFIRMED },
  ];
}
export const unconfirmedTimer = (report: Report, scene: Scene): Effect => ({
  do: 'set-timer',
  key: UNCONFIRMED,
  report: report.id,
  due: hoursLater(scene.now, ASK_ONCE_HOURS),
});
export const noSummaryTimers: readonly Effect[] = [
  { do: 'clear-timer', key: ASK_ONCE },
  { do: 'clear-timer', key: UNCONFIRMED },
];

export function answerConfirm(thread: Thread, report: Report, text: string, scene: Scene): Outcome {
  const byItself =
    correctAbsent(thread, report, text, scene) ??
    correctDoubt(thread, report, text, scene) ??
    correctDenied(thread, report, text, scene);
  if (byItself !== null) return byItself;
  const reading = readYesNo(text, contextOf(scene, report));
  if (reading.state === 'sure') {
    const { answer, rest } = reading.value;
    if (answer === 'yes' && rest === null) return store(thread, report, text, scene);
    if (rest !== null && answer === 'yes') {
      const beside = besideYes(thread, report, rest, scene);
      return beside === 'same' ? store(thread, report, text, scene) : beside;
    }
    if (rest !== null) return correct(thread, report, rest, scene);
    return { ...outcome({ ...thread, asking: { kind: 'correct' } }, report), then: 'repeat' };
  }
  if (reading.state === 'unsure')
    return { ...outcome(thread, report, [say(scene.survey.wording, 'only-yes')]), then: 'rest' };
  return correct(thread, report, text, scene);
}

/** Only a yes comes here. */
function store(thread: Thread, report: Report, reply: string, scene: Scene): Outcome {
  const { history, survey } = scene;
  const { wording } = survey;
  const watch = watchOf(report, scene, 'confirmed', reply);
  const mended = report.stored !== null && report.stored.status !== 'unconfirmed';
  const counted = watch.status === 'confirmed' && report.stored?.status !== 'confirmed' ? 1 : 0;
  const watches = history.progress.watches + counted;
  const { target } = history.progress;
  const said = [
    mended
      ? say(wording, 'stored-again', { number: watch.number })
      : watch.status === 'practice'
        ? say(wording, 'stored-practice', { number: watch.number })
        : say(wording, 'stored', {
            number: watch.number,
            queens: watch.total,
            watches,
            target,
            left: Math.max(0, target - watches),
          }),
  ];
  if (!mended) said.push(say(wording, 'stored-fix', { number: watch.number }));
  const place = keptPlace(report, scene);
  const effects: Effect[] = [{ do: 'keep-watch', watch }, ...noSummaryTimers];
  if (place !== null) effects.push({ do: 'keep-place', place });
  const { name, mail } = history.person ?? { name: null, mail: null };
  if (mail !== null) {
    // a place that is known now is asked less about: the receipt's lines are those of a later "fix my last watch"
    const places = place === null ? history.places : [place, ...history.places];
    const after = { ...scene, history: { ...history, places } };
    effects.push(sendReceipt(watch, { name, mail }, { watches, target }, after));
  }
  if (report.second !== undefined) {
    const places = place === null ? history.places : [place, ...history.places];
    const next = tellSecond(thread, report, report.second, { ...scene, history: { ...history, places } });
    return { ...next, said: [...said, ...next.said], effects: [...effects, ...next.effects] };
  }
  const facts = { photographed: watch.photographs.length > 0, progress: { watches, target } };
  const wanted = wantsPlaceName(place, scene) ?? afterwards(personOf(scene), facts, scene);
  effects.push(...wanted.effects);
  said.push(...wanted.said);
  const { asking } = wanted;
  const parked = thread.parked.length;
  if (asking === null && parked > 0) said.push(say(wording, 'unfinished-left', { count: parked }));
  return {
    thread: { ...thread, report: null, asking },
    said,
    effects,
    then: asking === null ? 'rest' : 'repeat',
  };
}

/** A place with words, or used before, is kept for the next time. */
function keptPlace(report: Report, scene: Scene): SavedPlace | null {
  const place = valueOf<ToldPlace>(report, 'place');
  const observer = scene.history.person?.key;
  if (place === null || observer === undefined) return null;
  return {
    survey: scene.survey.settings.key,
    observer,
    key: placeKey(place.words === '' ? showPlace(place) : place.words),
    words: place.words,
    latitude: place.latitude,
    longitude: place.longitude,
    uncertaintyMetres: place.uncertaintyMetres,
    site: siteOf(place, scene.survey),
    private: isPrivate(report, scene),
    lastUsed: scene.now,
  };
}
