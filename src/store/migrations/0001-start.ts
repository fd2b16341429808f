/**
 * The first tables. A migration is never changed once a survey was run with it: the next change is a new file.
 * Tables are strict, so that a value of the wrong type is refused, and without a rowid, since each has its own key.
 */
import { sql, type Kysely } from 'kysely';

const MESSAGES = [
  `create table inbox (
    survey text not null,
    sequence integer not null,
    channel text not null,
    id text not null,
    person text not null,
    message text not null,
    state text not null check (state in ('waiting', 'done', 'stuck')),
    tries integer not null,
    receivedAt text not null,
    primary key (survey, sequence)
  ) strict, without rowid`,
  `create unique index inboxIds on inbox (survey, channel, id)`,
  // Holds the few rows that wait, so that "does this thread wait?" is answered from an all but empty index.
  `create index inboxWaiting on inbox (survey, channel, person, sequence) where state = 'waiting'`,

  `create table stuck (
    survey text not null,
    channel text not null,
    id text not null,
    person text not null,
    error text not null,
    at text not null,
    settledAt text,
    primary key (survey, channel, id)
  ) strict, without rowid`,

  `create table threads (
    survey text not null,
    channel text not null,
    person text not null,
    state text not null,
    manner text not null,
    proven integer not null check (proven in (0, 1)),
    changedAt text not null,
    primary key (survey, channel, person)
  ) strict, without rowid`,

  `create table outbox (
    survey text not null,
    sequence integer not null,
    id text not null,
    channel text not null,
    person text not null,
    answers text not null,
    reply text not null,
    state text not null check (state in ('waiting', 'sent', 'failed')),
    tries integer not null,
    due text not null,
    error text,
    writtenAt text not null,
    settledAt text,
    primary key (survey, sequence)
  ) strict, without rowid`,
  `create unique index outboxIds on outbox (survey, id)`,
  `create index outboxWaiting on outbox (survey, channel, person, sequence) where state = 'waiting'`,

  `create table timers (
    survey text not null,
    channel text not null,
    person text not null,
    key text not null,
    report text not null,
    due text not null,
    primary key (survey, channel, person, key)
  ) strict, without rowid`,
  `create index timersDue on timers (survey, due)`,
];

const PEOPLE = [
  `create table persons (
    survey text not null,
    channel text not null,
    person text not null,
    key text not null,
    name text,
    mail text,
    consentAt text,
    consentWordingVersion integer,
    declined text not null,
    primary key (survey, channel, person),
    check ((consentAt is null) = (consentWordingVersion is null))
  ) strict, without rowid`,

  `create table places (
    survey text not null,
    observer text not null,
    key text not null,
    words text not null,
    latitude real,
    longitude real,
    uncertaintyMetres real,
    site text,
    private integer not null check (private in (0, 1)),
    lastUsed text not null,
    primary key (survey, observer, key)
  ) strict, without rowid`,

  `create table counts (
    survey text not null,
    name text not null,
    key integer not null,
    value integer not null,
    primary key (survey, name, key)
  ) strict, without rowid`,
];

const WATCHES = [
  `create table watches (
    survey text not null,
    id text not null,
    number integer not null,
    dialog text not null,
    dialogVersion integer not null,
    observer text not null,
    via text not null,
    status text not null,
    statusReason text,
    date text not null,
    start text not null,
    "end" text not null,
    timeZone text not null,
    minutes real not null,
    placeWords text,
    latitude real,
    longitude real,
    uncertaintyMetres real,
    site text,
    placePrivate integer check (placePrivate in (0, 1)),
    celsius real,
    cloud text,
    rain integer check (rain in (0, 1)),
    beaufort integer,
    squareMetres real,
    shape text,
    lengthMetres real,
    widthMetres real,
    diameterMetres real,
    habitat text,
    remark text,
    watchers integer not null,
    more text not null,
    asTyped text not null,
    total integer not null,
    storedAt text not null,
    changedAt text not null,
    primary key (survey, id),
    check ((placeWords is null) = (placePrivate is null)),
    check ((cloud is null) = (rain is null)),
    check ((squareMetres is null) = (shape is null))
  ) strict, without rowid`,
  `create unique index watchNumbers on watches (survey, number)`,
  `create index watchesOfObserver on watches (survey, observer, number)`,
  `create index watchesOnDay on watches (survey, date, latitude)`,
];

/** A list inside a watch. It goes with its watch: a watch that is kept again is deleted and written anew. */
const part = (table: string, columns: string, key = 'position') =>
  `create table ${table} (
    survey text not null,
    watch text not null,
    position integer not null,
    ${columns},
    primary key (survey, watch, ${key}),
    foreign key (survey, watch) references watches (survey, id) on delete cascade
  ) strict, without rowid`;

const PARTS_OF_WATCHES = [
  part(
    'plants',
    `plant integer not null, name text, rank text, asTyped text not null, unit text not null,
    flowers integer not null, flowersLow integer, flowersHigh integer,
    flowersAbout integer not null check (flowersAbout in (0, 1)), flowersAsTyped text not null`,
  ),
  part(
    'queens',
    `row integer not null, plant integer not null, bee text, rank text, asTyped text not null,
    count integer not null, seenBefore integer not null, withPollen integer, caste text,
    doubt integer not null check (doubt in (0, 1))`,
  ),
  part(
    'determinations',
    `queensPosition integer not null, taxa text not null, qualifier text, count integer not null, caste text,
    "by" text not null, role text not null, at text not null, "from" text not null`,
    'queensPosition, position',
  ),
  part('photographs', `sha256 text not null, type text not null, takenAt text, queensRow integer, licence text`),
  part('findings', `"check" text not null, weight text not null, "values" text not null, reply text, at text not null`),
  part(
    'queries',
    `number integer not null, "check" text, "to" text not null, question text not null, state text not null,
    answer text, "by" text, openedAt text not null, closedAt text`,
  ),
  part(
    'changes',
    `at text not null, "by" text not null, role text not null, through text not null, path text not null,
    "from" text not null, "to" text not null, why text`,
  ),
];

/**
 * How our rows spread: the number of rows, then how many of them share the first column of the index, the first two,
 * and so on (sqlite.org/fileformat2.html, "The sqlite_stat1 table"). Untold, SQLite takes it that about ten rows share
 * a first column; ours is the survey, which all rows share, and it would walk through all of them. A season of some
 * hundred observers; only the proportions matter.
 */
const SPREAD: readonly (readonly [table: string, index: string, rows: string])[] = [
  ['inbox', 'inbox', '50000 50000 1'],
  ['inbox', 'inboxIds', '50000 50000 25000 1'],
  ['inbox', 'inboxWaiting', '10 10 5 2 1'],
  ['stuck', 'stuck', '5 5 3 1'],
  ['outbox', 'outbox', '50000 50000 1'],
  ['outbox', 'outboxIds', '50000 50000 1'],
  ['outbox', 'outboxWaiting', '10 10 5 2 1'],
  ['watches', 'watches', '1000 1000 1'],
  ['watches', 'watchNumbers', '1000 1000 1'],
  ['watches', 'watchesOfObserver', '1000 1000 10 1'],
  ['watches', 'watchesOnDay', '1000 1000 15 1'],
];

export async function up(database: Kysely<unknown>): Promise<void> {
  for (const statement of [...MESSAGES, ...PEOPLE, ...WATCHES, ...PARTS_OF_WATCHES]) {
    await sql.raw(statement).execute(database);
  }

  await sql`analyze`.execute(database); // makes the table, which cannot be created by hand
  for (const [table, index, rows] of SPREAD) {
    await sql`insert into sqlite_stat1 (tbl, idx, stat) values (${table}, ${index}, ${rows})`.execute(database);
  }
  await sql`analyze sqlite_schema`.execute(database); // reads it; later connections do by themselves
}
