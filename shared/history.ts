/** What a step is told of the past: bounded plain data, of the step's own transaction. */
import type { Person, SavedPlace } from './person.js';
import type { Watch } from './record.js';

/** A watch by somebody else near this one in place on the same day: no name, no words. */
export interface NearbyWatch {
  readonly number: number;
  readonly observer: string;
  readonly start: string;
  readonly end: string;
  readonly latitude: number;
  readonly longitude: number;
}

/** What it takes to join two threads of one person. */
export interface Joining {
  /** Six digits by chance, new at each message. */
  readonly freshCode: string;
  /** Whether the code that this message is was mailed to the person's address, and is good; null where it is none. */
  readonly typed: 'right' | 'wrong' | null;
  /** Another observer who typed a code that was mailed to the same address; null unless this one did too, just now. */
  readonly other: Person | null;
}

/** What an earlier reply was about that the message in hand is a reply to. */
export interface RepliedTo {
  readonly report: string | null;
  readonly revision: number;
  /** The observer's own watch that came of that report, or was opened in it; null where none is stored. */
  readonly watch: Watch | null;
}

export interface History {
  /** Null before their first message; the step then makes one with `fresh.observer`. */
  readonly person: Person | null;
  readonly places: readonly SavedPlace[];
  /** This observer's last watches of any status, newest first, twenty at most. */
  readonly lastWatches: readonly Watch[];
  /** Watches by anybody on the current report's day within a kilometre of its place. */
  readonly sameDayNearby: readonly NearbyWatch[];
  /** Confirmed watches of this observer in this season, and what is asked of them. */
  readonly progress: { readonly watches: number; readonly target: number };
  /** Whether this person is telling a watch in another thread of theirs. Left out: they are not. */
  readonly tellsElsewhere?: boolean;
  /** Left out where the survey can send no mail. */
  readonly joining?: Joining;
  /** Left out where the message is a reply to nothing, or to nothing that is kept. */
  readonly repliedTo?: RepliedTo | undefined;
  /** Ids and the number that the step may use: the step itself has no chance and no counter. */
  readonly fresh: {
    readonly observer: string;
    /** A new watch has the id of the report that told it. */
    readonly report: string;
    readonly watchNumber: number;
  };
}
