/** Everything that is kept of one person: to hand it to them, and to erase it. */
import { sql } from 'kysely';
import type { Person } from '../../shared/person.js';
import type { Watch } from '../../shared/record.js';
import { codeOf, eraseUnclaimedCodes } from './codes.js';
import type { Connection, Transaction } from './connection.js';
import type { ThreadKey } from './inbox.js';
import { fromJson } from './json.js';
import { erasePlaces, personOf, placesOf, threadsOfObserver } from './people.js';
import { query } from './query.js';
import { threadOf } from './threads.js';
import { lastWatchesOf } from './watches.js';

/** More than anybody has; the queries take a number. */
const ALL = 1_000_000;

const selectMessages = query((database, place: ThreadKey) =>
  database
    .selectFrom('inbox')
    .select('message')
    .where('survey', '=', place.survey)
    .where('channel', '=', place.channel)
    .where('person', '=', place.person)
    .orderBy('sequence'),
);

/**
 * Replies of the thread, and the mails that its messages led to. Not by address: two people may share one, and anybody
 * may claim one, so an address does not tell whose a mail is.
 */
const isOf = (place: ThreadKey) => sql<boolean>`(
  (channel = ${place.channel} and person = ${place.person}) or
  (channel = 'mail' and answers in (
    select id from inbox
    where inbox.survey = ${place.survey} and inbox.channel = ${place.channel} and inbox.person = ${place.person}
  ))
)`;

const selectReplies = query((database, place: ThreadKey) =>
  database
    .selectFrom('outbox')
    .select(['id', 'channel', 'reply', 'writtenAt'])
    .where('survey', '=', place.survey)
    .where(isOf(place))
    .orderBy('sequence'),
);

/** The threads of whoever writes in this one, this one first. */
function allThreads(connection: Connection, thread: ThreadKey): ThreadKey[] {
  const { survey, channel, person } = thread;
  const key = personOf(connection, thread)?.key;
  const all = key === undefined ? [] : threadsOfObserver(connection, { survey, key });
  const others = all.filter((other) => other.channel !== channel || other.person !== person);
  return [{ survey, channel, person }, ...others];
}

function saidIn(connection: Connection, thread: ThreadKey) {
  return {
    messages: selectMessages.all(connection, thread).map(({ message }) => fromJson(message)),
    replies: selectReplies
      .all(connection, thread)
      .map(({ reply, ...row }) => ({ ...row, reply: withoutFile(fromJson(reply)) })),
    conversation: threadOf(connection, thread)?.state ?? null,
  };
}

/**
 * What is kept of a code that was mailed to them. Only to who has proven that they read that mail: to others it would tell
 * that somebody else has the address.
 */
function codeKept(connection: Connection, person: Person | null): Record<string, unknown> {
  if (person?.mailProven !== true || person.mail === null) return {};
  const code = codeOf(connection, { survey: person.survey, mail: person.mail });
  return code === null ? {} : { code };
}

/** All that the database holds of a person, as plain JSON. */
export function everythingOf(connection: Connection, thread: ThreadKey): Record<string, unknown> {
  const { survey } = thread;
  const known = personOf(connection, thread);
  const places = known === null ? [] : placesOf(connection, { survey, observer: known.key, most: ALL });
  const watches: Watch[] = known === null ? [] : lastWatchesOf(connection, { survey, observer: known.key, most: ALL });
  const [own, ...others] = allThreads(connection, thread);
  const otherThreads = others.map((other) => ({ person: personOf(connection, other), ...saidIn(connection, other) }));
  return {
    person: known,
    places,
    watches,
    ...saidIn(connection, own!),
    ...(otherThreads.length > 0 ? { otherThreads } : {}),
    ...codeKept(connection, known),
  };
}

/** A file given before holds all of this again. */
function withoutFile(reply: unknown): unknown {
  if (typeof reply !== 'object' || reply === null || !('file' in reply)) return reply;
  const { file: _file, ...rest } = reply;
  return rest;
}

const inThread = <Table extends 'inbox' | 'stuck' | 'threads' | 'timers' | 'persons'>(table: Table) =>
  query((database, place: ThreadKey) =>
    database
      .deleteFrom<'inbox' | 'stuck' | 'threads' | 'timers' | 'persons'>(table)
      .where('survey', '=', place.survey)
      .where('channel', '=', place.channel)
      .where('person', '=', place.person),
  );
const DELETES = [inThread('inbox'), inThread('stuck'), inThread('threads'), inThread('timers'), inThread('persons')];

const deleteReplies = query((database, place: ThreadKey) =>
  database.deleteFrom('outbox').where('survey', '=', place.survey).where(isOf(place)),
);

const selectPictures = query((database, place: ThreadKey) =>
  database
    .selectFrom('inbox')
    .select([
      sql<string>`json_extract(message, '$.what.sha256')`.as('sha256'),
      sql<string>`json_extract(message, '$.what.type')`.as('type'),
    ])
    .where('survey', '=', place.survey)
    .where('channel', '=', place.channel)
    .where('person', '=', place.person)
    .where(sql`json_extract(message, '$.what.kind')`, '=', sql.lit('photo')),
);

/** A picture that somebody sent; `watch` is the number of theirs that it belongs to, null where it belongs to none. */
export interface OwnPicture {
  readonly sha256: string;
  readonly type: string;
  readonly watch: number | null;
}

/** The pictures of a person, those of watches first; each once. */
export function picturesOf(connection: Connection, thread: ThreadKey): OwnPicture[] {
  const { survey } = thread;
  const observer = personOf(connection, thread)?.key;
  const watches = observer === undefined ? [] : lastWatchesOf(connection, { survey, observer, most: ALL });
  const joined = watches.flatMap(({ number, photographs }) =>
    photographs.map(({ sha256, type }): OwnPicture => ({ sha256, type, watch: number })),
  );
  const sent = allThreads(connection, thread).flatMap((key) =>
    selectPictures.all(connection, key).map((picture): OwnPicture => ({ ...picture, watch: null })),
  );
  const once = new Map([...sent, ...joined.reverse()].map((picture) => [picture.sha256, picture]));
  return [...once.values()].sort((a, b) => (a.watch ?? Infinity) - (b.watch ?? Infinity));
}

/**
 * Erases a person, in all their threads, their places, messages, replies and conversations, and gives the hashes of the
 * pictures they sent. Their watches are the caller's: they stay, under another key. What is deleted is overwritten on the
 * disk (`secure_delete`), and leaves the log at the next checkpoint.
 */
export function erasePerson(transaction: Transaction, thread: ThreadKey): string[] {
  const { survey } = thread;
  const known = personOf(transaction, thread);
  const pictures = allThreads(transaction, thread).flatMap((key) => {
    const sent = selectPictures.all(transaction, key).map(({ sha256 }) => sha256);
    deleteReplies.run(transaction, key); // by the messages, so before them
    for (const deletes of DELETES) deletes.run(transaction, key);
    return sent;
  });
  if (known !== null) erasePlaces(transaction, { survey, observer: known.key });
  eraseUnclaimedCodes(transaction, survey);
  return pictures;
}

const selectMails = query((database, _place: object) =>
  database.selectFrom('outbox').select('id').where('channel', '=', 'mail'),
);
const selectKeys = query((database, _place: object) => database.selectFrom('persons').select('key'));
const selectPhotographs = query((database, _place: object) => database.selectFrom('photographs').select('sha256'));
const selectTold = query((database, place: { sha256: string }) =>
  database
    .selectFrom('threads')
    .select('person')
    .where(sql<number>`instr(state, ${place.sha256})`, '>', 0)
    .limit(1),
);

/** Whose files in the data folder are still those of somebody: mails and handed-out data by id, photographs by hash. */
export interface Kept {
  readonly mails: ReadonlySet<string>;
  readonly persons: ReadonlySet<string>;
  photograph(sha256: string): boolean;
}

export function keptFiles(connection: Connection): Kept {
  const photographs = new Set(selectPhotographs.all(connection, {}).map(({ sha256 }) => sha256));
  return {
    mails: new Set(selectMails.all(connection, {}).map(({ id }) => id)),
    persons: new Set(selectKeys.all(connection, {}).map(({ key }) => key)),
    // one that was sent and waits in a conversation belongs to no watch yet
    photograph: (sha256) => photographs.has(sha256) || selectTold.first(connection, { sha256 }) !== undefined,
  };
}
