/**
 * The tables as they are stored. Columns are named like the record's keys; `survey` is in every key. What is asked for
 * in a query has a column of its own; what is only carried along (a thread's state, a change's values) is JSON text.
 * True and false are 1 and 0. Instants are UTC.
 */

/** JSON text. */
type JsonText = string;
type Bit = number;

/** `position` in all parts of a watch is the place in the record's list. */
interface PartOfWatch {
  survey: string;
  watch: string;
  position: number;
}

export interface Tables {
  /** Messages that came in. `sequence` is the order in which they came. */
  inbox: {
    survey: string;
    sequence: number;
    channel: string;
    id: string;
    person: string;
    message: JsonText;
    /** `waiting` holds all later messages of its thread. */
    state: 'waiting' | 'done' | 'stuck';
    tries: number;
    receivedAt: string;
    /** What the channel fetches its picture or file by, while that is still to be fetched. Such a row waits. */
    file: string | null;
  };
  /** Messages that could not be taken, for the coordinator. */
  stuck: {
    survey: string;
    channel: string;
    id: string;
    person: string;
    error: string;
    at: string;
    settledAt: string | null;
  };
  /** One conversation: one person over one channel in one survey. `manner` and `proven` are those of its last message. */
  threads: {
    survey: string;
    channel: string;
    person: string;
    state: JsonText;
    manner: string;
    proven: Bit;
    changedAt: string;
  };
  /** Replies, waiting until they are sent. `sequence` is their order; `due` holds them back after a failed try. */
  outbox: {
    survey: string;
    sequence: number;
    id: string;
    channel: string;
    person: string;
    /** The message it answers. */
    answers: string;
    reply: JsonText;
    state: 'waiting' | 'sent' | 'failed';
    tries: number;
    due: string;
    error: string | null;
    writtenAt: string;
    settledAt: string | null;
    /** Its place within the thread, where it takes that of an earlier reply. */
    slot: string | null;
    /** The channel's own id of what was sent, where a later reply may change it. */
    handle: string | null;
  };
  timers: {
    survey: string;
    channel: string;
    person: string;
    key: string;
    report: string;
    due: string;
  };
  /** Counters, by name and what is counted. */
  counts: {
    survey: string;
    name: string;
    key: number;
    value: number;
  };
  persons: {
    survey: string;
    channel: string;
    person: string;
    key: string;
    name: string | null;
    mail: string | null;
    consentAt: string | null;
    consentWordingVersion: number | null;
    declined: JsonText;
    photographLicence: string | null;
    nameShown: Bit;
    reminders: Bit;
    mailProven: Bit;
    remindedOn: string | null;
  };
  /** The last code mailed to an address (in small letters); `kept` is its hash, `sent` how many were mailed on `day`. */
  codes: {
    survey: string;
    mail: string;
    kept: string;
    until: string;
    triesLeft: number;
    day: string;
    sent: number;
  };
  /** Photographs of somebody who was forgotten that still have their metadata, with the number of their watch. */
  toBare: {
    survey: string;
    channel: string;
    person: string;
    watch: number;
    sha256: string;
  };
  /** Files that go as soon as nobody's watch or conversation refers to them. */
  toRemove: {
    survey: string;
    sha256: string;
  };
  places: {
    survey: string;
    observer: string;
    key: string;
    words: string;
    latitude: number | null;
    longitude: number | null;
    uncertaintyMetres: number | null;
    site: string | null;
    private: Bit;
    lastUsed: string;
  };
  watches: {
    survey: string;
    id: string;
    number: number;
    dialog: string;
    dialogVersion: number;
    observer: string;
    via: string;
    status: string;
    statusReason: string | null;
    date: string;
    start: string;
    end: string;
    timeZone: string;
    minutes: number;
    /** Null: no place was given. */
    placeWords: string | null;
    latitude: number | null;
    longitude: number | null;
    uncertaintyMetres: number | null;
    site: string | null;
    placePrivate: Bit | null;
    celsius: number | null;
    cloud: string | null;
    rain: Bit | null;
    beaufort: number | null;
    squareMetres: number | null;
    shape: string | null;
    lengthMetres: number | null;
    widthMetres: number | null;
    diameterMetres: number | null;
    habitat: string | null;
    remark: string | null;
    watchers: number;
    more: JsonText;
    asTyped: JsonText;
    total: number;
    storedAt: string;
    changedAt: string;
  };
  plants: PartOfWatch & {
    plant: number;
    name: string | null;
    rank: string | null;
    asTyped: string;
    unit: string;
    flowers: number;
    flowersLow: number | null;
    flowersHigh: number | null;
    flowersAbout: Bit;
    flowersAsTyped: string;
  };
  queens: PartOfWatch & {
    row: number;
    plant: number;
    bee: string | null;
    rank: string | null;
    asTyped: string;
    count: number;
    seenBefore: number;
    withPollen: number | null;
    caste: string | null;
    doubt: Bit;
  };
  determinations: PartOfWatch & {
    /** The row of queens it is about, by its `position`. */
    queensPosition: number;
    taxa: JsonText;
    qualifier: string | null;
    count: number;
    caste: string | null;
    by: string;
    role: string;
    at: string;
    from: string;
  };
  photographs: PartOfWatch & {
    sha256: string;
    type: string;
    takenAt: string | null;
    queensRow: number | null;
    licence: string | null;
  };
  findings: PartOfWatch & {
    check: string;
    weight: string;
    values: JsonText;
    reply: string | null;
    at: string;
  };
  queries: PartOfWatch & {
    number: number;
    check: string | null;
    to: string;
    question: string;
    state: string;
    answer: string | null;
    by: string | null;
    openedAt: string;
    closedAt: string | null;
  };
  changes: PartOfWatch & {
    at: string;
    by: string;
    role: string;
    through: string;
    path: string;
    from: JsonText;
    to: JsonText;
    why: string | null;
  };
}
