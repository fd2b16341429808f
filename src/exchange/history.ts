/** Reads what a step is told of the past. */
import type { History, Joining, RepliedTo } from '../../shared/history.js';
import type { Message } from '../../shared/message.js';
import type { Person } from '../../shared/person.js';
import type { Survey } from '../../shared/survey.js';
import {
  lastWatchesOf,
  nextWatchNumber,
  personOf,
  placesOf,
  progressOf,
  replySaid,
  threadOf,
  threadsOfObserver,
  watchById,
  watchesNearOn,
  type Connection,
} from '../store/index.js';

const MOST_PLACES = 50;
const MOST_LAST_WATCHES = 20;
const MOST_NEARBY = 50;
const NEARBY_METRES = 1000;

/** Read at the first look and kept: what nobody looks at costs nothing. */
function atFirstLook<Value>(read: () => Value): () => Value {
  let kept: { readonly value: Value } | null = null;
  return () => (kept ??= { value: read() }).value;
}

export interface HistoryParts {
  readonly survey: Survey;
  readonly newId: () => string;
  /** What it takes to join this person's threads; undefined where that cannot be. */
  readonly joiningOf: (person: Person | null) => Joining | undefined;
  /** Whether a watch is being told in a thread that stands so. */
  readonly isTelling: (state: unknown) => boolean;
}

/** What the reply was about that this message is a reply to; of a watch only where it is the observer's own. */
function repliedToBy(connection: Connection, message: Message, observer: string | null): RepliedTo | undefined {
  const said = message.replyTo === null ? null : replySaid(connection, message, message.replyTo);
  if (said === null) return undefined;
  const { report, revision } = said;
  const id = said.watch ?? report;
  const watch = id === null ? null : watchById(connection, message.survey, id);
  return { report, revision, watch: watch?.observer === observer ? watch : null };
}

/**
 * The history of the message's sender, in the open transaction: bounded, whatever the survey has grown to. Watches are
 * read when the step first looks at them, since to most messages they do not matter; the step writes nothing, so it
 * sees one and the same state whenever it looks. `dayAndPlace` is that of their current report.
 */
export function historyFor(
  connection: Connection,
  message: Message,
  dayAndPlace: { readonly date: string; readonly latitude: number; readonly longitude: number } | null,
  { survey, newId, joiningOf, isTelling }: HistoryParts,
): History {
  const { key, season, target } = survey.settings;
  const person = personOf(connection, message);
  const observer = person?.key ?? null;
  const own = <Value>(read: (observer: string) => Value, none: Value) => (observer === null ? none : read(observer));
  const lastWatches = atFirstLook(() =>
    own((observer) => lastWatchesOf(connection, { survey: key, observer, most: MOST_LAST_WATCHES }), []),
  );
  const sameDayNearby = atFirstLook(() =>
    dayAndPlace === null
      ? []
      : watchesNearOn(connection, { survey: key, ...dayAndPlace, metres: NEARBY_METRES, most: MOST_NEARBY }),
  );
  const watchesSoFar = atFirstLook(() =>
    own((observer) => progressOf(connection, { survey: key, observer, ...season }), 0),
  );
  const tellsElsewhere = atFirstLook(() =>
    own(
      (observer) =>
        threadsOfObserver(connection, { survey: key, key: observer }).some((thread) => {
          const isThis = thread.channel === message.channel && thread.person === message.person;
          const stored = isThis ? null : threadOf(connection, thread);
          return stored !== null && isTelling(stored.state);
        }),
      false,
    ),
  );
  const repliedTo = atFirstLook(() => repliedToBy(connection, message, observer));
  const joining = joiningOf(person);
  return {
    ...(joining === undefined ? {} : { joining }),
    person,
    places: own((observer) => placesOf(connection, { survey: key, observer, most: MOST_PLACES }), []),
    get lastWatches() {
      return lastWatches();
    },
    get sameDayNearby() {
      return sameDayNearby();
    },
    get repliedTo() {
      return repliedTo();
    },
    get tellsElsewhere() {
      return tellsElsewhere();
    },
    get progress() {
      return { watches: watchesSoFar(), target };
    },
    fresh: {
      observer: newId(),
      report: newId(),
      watchNumber: nextWatchNumber(connection, key),
    },
  };
}
