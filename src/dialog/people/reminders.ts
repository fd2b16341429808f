/**
 * Reminders of the watches still wanted, for those who asked: in the season, on the days of the settings, at most one a
 * week. Each one that comes due sets the next; nothing is said to who reached the target or has a report open.
 */
import { Temporal } from 'temporal-polyfill';
import { readYesNo } from '../../answers/index.js';
import { showDay } from '../../../shared/display.js';
import type { Person } from '../../../shared/person.js';
import type { SurveySettings } from '../../../shared/survey.js';
import { WEEKDAYS } from '../../../shared/vocabularies.js';
import { say } from '../../../shared/wording.js';
import { contextOf } from '../hear.js';
import { personOf } from './person-of.js';
import { isTelling } from '../thread.js';
import type { Effect, Outcome, Scene, Thread } from '../types.js';

export const REMIND = 'remind';

const DAYS_APART = 7;
/** One that comes later than this, after the program stood still, is left for another day. */
const LATEST_HOURS = 3;

type ReminderSettings = Pick<SurveySettings, 'reminders' | 'season' | 'timeZone'>;

const isFit = (date: Temporal.PlainDate, { reminders: { days, quiet }, season }: ReminderSettings): boolean => {
  const day = date.toString();
  return days.includes(WEEKDAYS[date.dayOfWeek - 1]!) && !quiet.includes(day) && day >= season.from && day <= season.to;
};

/** The first day from `earliest` on that is fit for a reminder, and its moment, a UTC instant; null: none this season. */
export function nextReminder(earliest: string, settings: ReminderSettings): { day: string; due: string } | null {
  const { season, reminders, timeZone } = settings;
  let date = Temporal.PlainDate.from(earliest > season.from ? earliest : season.from);
  for (; date.toString() <= season.to; date = date.add({ days: 1 })) {
    if (!isFit(date, settings)) continue;
    const due = date.toZonedDateTime({ timeZone, plainTime: Temporal.PlainTime.from(reminders.at) });
    return { day: date.toString(), due: due.toInstant().toString() };
  }
  return null;
}

const later = (day: string, days: number): string => Temporal.PlainDate.from(day).add({ days }).toString();

/** Of the present moment, which for a timer is not that of its message. */
const localNow = ({ now, survey }: Scene): Temporal.PlainDateTime =>
  Temporal.Instant.from(now).toZonedDateTimeISO(survey.settings.timeZone).toPlainDateTime();

/** Never on the present day, and a week after the last one. */
function following({ remindedOn }: Pick<Person, 'remindedOn'>, scene: Scene): { day: string; due: string } | null {
  const tomorrow = later(localNow(scene).toPlainDate().toString(), 1);
  const week = remindedOn === undefined ? tomorrow : later(remindedOn, DAYS_APART);
  return nextReminder(week > tomorrow ? week : tomorrow, scene.survey.settings);
}

/** Who writes in two threads is reminded in one: where they asked last. */
const timer = (due: string): Effect => ({ do: 'set-timer', key: REMIND, report: '', due, alone: true });

/** In `declined`: they were told that they can be reminded. */
const TOLD = 'reminders';

/** Whether they are still to be told, and there is a watch to remind of and a day to do it. */
export const wantsOffer = (
  person: Person,
  { watches, target }: { readonly watches: number; readonly target: number },
  scene: Scene,
): boolean =>
  !person.reminders && !person.declined.includes(TOLD) && watches < target && following(person, scene) !== null;

export const offered = (person: Person): Person => ({ ...person, declined: [...person.declined, TOLD] });

/** What was offered is settled. */
const withoutOffer = (thread: Thread): Thread =>
  thread.asking?.kind === 'remind' ? { ...thread, asking: null } : thread;

export function startReminders(before: Thread, person: Person, scene: Scene): Outcome {
  const { wording } = scene.survey;
  const { watches, target } = scene.history.progress;
  const thread = withoutOffer(before);
  const then = thread.asking === null ? 'rest' : 'repeat';
  const next = following(person, scene);
  if (watches >= target || next === null) {
    const said = watches >= target ? say(wording, 'reminders-reached', { target }) : say(wording, 'reminders-none-due');
    return { thread, said: [said], effects: [], then };
  }
  const day = showDay(next.day, wording.locale, scene.local.date);
  return {
    thread,
    said: [say(wording, 'reminders-on', { target, day })],
    effects: [{ do: 'keep-person', person: { ...person, reminders: true } }, timer(next.due)],
    then,
  };
}

/** A bare yes or no to the offer; null for anything else, which is about something else. */
export function answerRemind(thread: Thread, text: string, scene: Scene): Outcome | null {
  const reading = readYesNo(text, contextOf(scene, null));
  if (reading.state !== 'sure' || reading.value.rest !== null) return null;
  const still: Thread = { ...thread, asking: null };
  if (reading.value.answer === 'yes') return startReminders(still, personOf(scene), scene);
  return { thread: still, said: [say(scene.survey.wording, 'closed')], effects: [], then: 'rest' };
}

export function stopReminders(before: Thread, person: Person, scene: Scene): Outcome {
  const thread = withoutOffer(before);
  return {
    thread,
    said: [say(scene.survey.wording, 'reminders-off')],
    effects: [
      { do: 'keep-person', person: { ...person, reminders: false } },
      { do: 'clear-timer', key: REMIND },
    ],
    then: thread.asking === null ? 'rest' : 'repeat',
  };
}

/** Whether now, which may be later than the timer was due, is a fit moment. */
function isFitNow({ remindedOn }: Person, scene: Scene): boolean {
  const { settings } = scene.survey;
  const now = localNow(scene);
  const at = now.toPlainDate().toPlainDateTime(Temporal.PlainTime.from(settings.reminders.at));
  const isTimely =
    Temporal.PlainDateTime.compare(now, at) >= 0 &&
    Temporal.PlainDateTime.compare(now, at.add({ hours: LATEST_HOURS })) <= 0;
  const isWeekOver = remindedOn === undefined || now.toPlainDate().toString() >= later(remindedOn, DAYS_APART);
  return isTimely && isWeekOver && isFit(now.toPlainDate(), settings);
}

/** A reminder that came due. One that nobody wants any more is ignored. */
export function onReminder(thread: Thread, scene: Scene): Outcome {
  const { history, survey } = scene;
  const { person } = history;
  if (person?.reminders !== true) return { thread, said: [], effects: [], then: 'rest' };
  const { watches, target } = history.progress;
  const isBusy = isTelling(thread) || history.tellsElsewhere === true;
  const sends = !isBusy && watches < target && isFitNow(person, scene);
  const after = sends ? { ...person, remindedOn: localNow(scene).toPlainDate().toString() } : person;
  const next = following(after, scene);
  return {
    thread,
    said: sends ? [say(survey.wording, 'reminder', { watches, target, left: target - watches })] : [],
    effects: [
      ...(sends ? [{ do: 'keep-person', person: after } as const] : []),
      ...(next === null ? [] : [timer(next.due)]),
    ],
    then: 'rest',
  };
}
