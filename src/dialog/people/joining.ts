/**
 * One person in two threads. An address proves nothing, since anybody may claim one: a code is mailed there, and both
 * threads become one observer once it was typed in both. A squatter on somebody's address cannot read it, and so never
 * gets at the places and watches of its owner; nor does the owner get at theirs.
 *
 * Nobody can find out here whether an address is known. The answer to an address is the same for all; the mail goes out
 * only where another observer has it, and only its reader learns anything. Whether a code is outstanding is not told
 * either: a wrong one, one that is over and one that never was are answered with the same sentence.
 *
 * To guess: a code has three tries, whoever types, and a day has three codes for an address: nine guesses in a million a
 * day, each of them announced to the address by mail. One that hits leads to those threads alone that proved the address.
 * Who types wrong ones on purpose can spoil a code for its owner, and no more.
 */
import { fold } from '../../answers/index.js';
import { joinedPerson, movedTo } from '../../../shared/joining.js';
import type { Message } from '../../../shared/message.js';
import type { Person } from '../../../shared/person.js';
import type { Survey } from '../../../shared/survey.js';
import { say } from '../../../shared/wording.js';
import { personOf } from './person-of.js';
import { REMIND } from './reminders.js';
import type { Asking, Effect, Outcome, Report, Scene, Thread } from '../types.js';

const BARE_CODE = /^\d{6}$/;
/** With the words before it. */
const LONGEST_CODE = 40;

/** The code that a message is: six digits, alone or behind "the code is"; null where it is none. */
export function codeSaid({ what, proven }: Message, { words }: Survey): string | null {
  if (!proven || what.kind !== 'text' || what.text.length > LONGEST_CODE) return null;
  const said = fold(what.text)
    .replace(/[\s.!:]+/g, ' ')
    .trim();
  if (BARE_CODE.test(said)) return said;
  const behind = words.wishes.code.flatMap((lead) => (said.startsWith(`${lead} `) ? said.slice(lead.length) : []));
  return behind.map((rest) => rest.replaceAll(' ', '')).find((digits) => BARE_CODE.test(digits)) ?? null;
}

/** What asks the exchange to mail a code, should the address be another observer's too; none where no mail can be sent. */
export function mailCode(mail: string, { history }: Scene): Effect[] {
  return history.joining === undefined ? [] : [{ do: 'mail-code', to: mail, code: history.joining.freshCode }];
}

const goingOn = ({ asking }: Thread): Outcome['then'] =>
  asking === null || asking.kind === 'live' ? 'rest' : 'repeat';

/** "Send me a new code". Null where no mail can be sent: then these words mean nothing here. */
export function askForCode(thread: Thread, scene: Scene): Outcome | null {
  const { history, survey } = scene;
  if (history.joining === undefined) return null;
  const person = personOf(scene);
  if (person.mail !== null) {
    const said = say(survey.wording, 'code-mailed', { mail: person.mail });
    return { thread, said: [said], effects: mailCode(person.mail, scene), then: goingOn(thread) };
  }
  if (thread.report === null)
    return { thread: { ...thread, asking: { kind: 'person', field: 'mail' } }, said: [], effects: [], then: 'repeat' };
  // asked once this watch is stored
  const open: Person = { ...person, declined: person.declined.filter((field) => field !== 'mail') };
  return {
    thread,
    said: [say(survey.wording, 'code-needs-mail')],
    effects: [{ do: 'keep-person', person: open }],
    then: goingOn(thread),
  };
}

/** Where six digits may be an answer: a great many open flowers. */
function mayBeNumber(asking: Asking | null): boolean {
  if (asking?.kind === 'question') return asking.fields.some((field) => field === 'plants' || field === 'tally');
  return asking?.kind === 'flowers' || asking?.kind === 'doubt' || asking?.kind === 'list';
}

/** A code, if the message is one that was looked at by the exchange; whatever is being asked. */
export function hearCode(thread: Thread, scene: Scene): Outcome | null {
  const { joining } = scene.history;
  const { wording } = scene.survey;
  if (joining?.typed == null) return null;
  if (joining.typed === 'wrong') {
    if (mayBeNumber(thread.asking)) return null;
    return { thread, said: [say(wording, 'code-wrong')], effects: [], then: goingOn(thread) };
  }
  const person = personOf(scene);
  if (joining.other === null) {
    return {
      thread,
      said: [say(wording, 'code-right-here')],
      effects: [{ do: 'keep-person', person: { ...person, mailProven: true } }],
      then: goingOn(thread),
    };
  }
  return join(thread, person, joining.other, scene);
}

function join(thread: Thread, own: Person, other: Person, scene: Scene): Outcome {
  const { wording } = scene.survey;
  const person = joinedPerson(own, other);
  // a watch that is open for mending is kept from here, not from what is stored
  const inReport = (report: Report): Report =>
    report.stored === null
      ? report
      : { ...report, stored: movedTo(report.stored, person.key, { at: scene.now, through: scene.message.channel }) };
  const { asking } = thread;
  const isKnown = asking?.kind === 'person' && person[asking.field] !== null;
  const joined: Thread = {
    ...thread,
    report: thread.report === null ? null : inReport(thread.report),
    parked: thread.parked.map(inReport),
    asking: isKnown ? null : asking,
  };
  const said = say(wording, 'threads-joined');
  return {
    thread: joined,
    said: [said],
    effects: [
      { do: 'join-observers', from: own.key, into: other.key, said: say(wording, 'threads-joined-elsewhere') },
      { do: 'keep-person', person },
      { do: 'license-photographs', observer: person.key, licence: person.photographLicence },
      // one of the two reminds
      ...(own.reminders && other.reminders ? [{ do: 'clear-timer', key: REMIND } as const] : []),
    ],
    then: goingOn(joined),
  };
}
