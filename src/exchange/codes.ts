/** Codes mailed to an address that two observers give: what is kept of them, and when they are good. */
import { randomBytes, scryptSync, timingSafeEqual } from 'node:crypto';
import { Temporal } from 'temporal-polyfill';
import type { Joining } from '../../shared/history.js';
import type { Person } from '../../shared/person.js';
import { MAIL } from '../../shared/receipt.js';
import type { Survey } from '../../shared/survey.js';
import { say } from '../../shared/wording.js';
import { codeOf, codeTried, keepCode, personsByMail, type Connection, type Transaction } from '../store/index.js';
import type { AddReply } from './conversation.js';
import { plain } from './sentences.js';

const GOOD_MINUTES = 30;
const MOST_TRIES = 3;
/** To one address: so many mails nobody minds, and guesses stay nine a day. */
const MOST_A_DAY = 3;

const SALT_BYTES = 16;
const HASH_BYTES = 32;

/**
 * What is kept of a code. All codes of six digits are hashed soon with any function; with scrypt at Node's usual cost
 * (2¹⁴, about 50 ms each) that takes longer than a code is good.
 */
function hashed(code: string): string {
  const salt = randomBytes(SALT_BYTES);
  return `${salt.toString('hex')}:${scryptSync(code, salt, HASH_BYTES).toString('hex')}`;
}

function isKept(code: string, kept: string): boolean {
  const [salt, hash] = kept.split(':').map((hex) => Buffer.from(hex, 'hex'));
  return salt !== undefined && hash?.length === HASH_BYTES && timingSafeEqual(scryptSync(code, salt, HASH_BYTES), hash);
}

/** Compared with where there is no code, so that the time it takes does not tell that there is none. */
const NO_CODE = `${'00'.repeat(SALT_BYTES)}:${'00'.repeat(HASH_BYTES)}`;

/** Whether the survey can send mail; files in a folder are read by whoever runs it, and prove nothing. */
const canMail = ({ settings }: Survey): boolean => settings.mail?.server !== undefined;

const othersOf = (connection: Connection, person: Pick<Person, 'survey' | 'key'>, mail: string): Person[] =>
  personsByMail(connection, { survey: person.survey, mail }).filter(({ key }) => key !== person.key);

export interface CodeParts {
  readonly survey: Survey;
  readonly newCode: () => string;
  readonly now: string;
}

/** What a step is told; `typed` is the code that its message is. Undefined where the survey can send no mail. */
export function joiningFor(
  connection: Connection,
  person: Person | null,
  typed: string | null,
  { survey, newCode, now }: CodeParts,
): Joining | undefined {
  if (!canMail(survey)) return undefined;
  const mail = person?.mail ?? null;
  const checks = person !== null && mail !== null && typed !== null;
  const isRight = checks && isGood(connection, { survey: person.survey, mail }, typed, now);
  const other = isRight ? othersOf(connection, person, mail).find(({ mailProven }) => mailProven === true) : undefined;
  return {
    get freshCode() {
      return newCode();
    },
    typed: checks ? (isRight ? 'right' : 'wrong') : null,
    other: other ?? null,
  };
}

function isGood(
  connection: Connection,
  address: { readonly survey: string; readonly mail: string },
  typed: string,
  now: string,
): boolean {
  const code = codeOf(connection, address);
  const isSame = isKept(typed, code?.kept ?? NO_CODE);
  return isSame && code !== null && code.triesLeft > 0 && Temporal.Instant.compare(now, code.until) < 0;
}

/** A wrong code was typed, by anybody who gives that address. */
export function noteWrongCode(transaction: Transaction, { survey, mail }: Person): void {
  if (mail !== null) codeTried(transaction, { survey, mail });
}

/**
 * Mails the code, if the address is another observer's too and not mailed to too often; it is not kept once it went out.
 * It is hashed in any case, so that the time it takes tells nothing.
 */
export function mailCode(
  transaction: Transaction,
  asking: Pick<Person, 'survey' | 'key'>,
  { to, code }: { readonly to: string; readonly code: string },
  { survey, now, addTo }: Omit<CodeParts, 'newCode'> & { readonly addTo: AddReply },
): void {
  const kept = hashed(code);
  const others = othersOf(transaction, asking, to);
  const address = { survey: asking.survey, mail: to };
  const before = codeOf(transaction, address);
  const day = Temporal.Instant.from(now).toZonedDateTimeISO(survey.settings.timeZone).toPlainDate().toString();
  const sent = before?.day === day ? before.sent : 0;
  if (!canMail(survey) || others.length === 0 || sent >= MOST_A_DAY) return;
  const until = Temporal.Instant.from(now).add({ minutes: GOOD_MINUTES }).toString();
  keepCode(transaction, address, { kept, until, triesLeft: MOST_TRIES, day, sent: sent + 1 });
  const proven = others.some(({ mailProven }) => mailProven === true);
  const text = say(survey.wording, 'code-mail', { survey: survey.settings.name, code, proven, minutes: GOOD_MINUTES });
  addTo({ survey: asking.survey, channel: MAIL, person: to }, { ...plain(text), erase: true });
}
