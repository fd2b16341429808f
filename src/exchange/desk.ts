/**
 * What those are told who settle what observers and program cannot: coordinator and helpers, in the threads that the
 * settings name. By the number of the watch: nobody's name, place or address is told in another's thread.
 */
import { showDay } from '../../shared/display.js';
import type { Watch } from '../../shared/record.js';
import { deskThreads, type Survey } from '../../shared/survey.js';
import { say } from '../../shared/wording.js';
import type { AddReply } from './conversation.js';
import { plain } from './sentences.js';

/** The channel of these threads. */
const PHONE = 'telegram';

/** Puts a text in each of their threads; it may tell words of an observer, so it is not kept once it was sent. */
export function tellDesk({ settings }: Survey, text: string, addTo: AddReply): void {
  for (const person of deskThreads(settings))
    addTo({ survey: settings.key, channel: PHONE, person }, { ...plain(text), erase: true });
}

/** Tells what a watch that was just kept asks of the coordinator, and that its observer never confirmed it. */
export function tellOfWatch(
  watch: Watch,
  { survey, now, addTo }: { survey: Survey; now: string; addTo: AddReply },
): void {
  const { wording } = survey;
  const what = { number: watch.number, day: showDay(watch.date, wording.locale, watch.date) };
  const fresh = watch.queries.filter(
    ({ to, state, openedAt }) => to === 'coordinator' && state === 'open' && openedAt === now,
  );
  if (fresh.length > 0) {
    const questions = fresh.map(({ question }) => question).join('\n');
    tellDesk(survey, say(wording, 'desk-query', { ...what, count: fresh.length, questions }), addTo);
  }
  if (watch.status === 'unconfirmed' && watch.storedAt === now)
    tellDesk(survey, say(wording, 'desk-unconfirmed', what), addTo);
}
