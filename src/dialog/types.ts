/** A conversation as plain data: what a thread holds between two messages, and what one step gives back. */
import type { Span } from '../answers/index.js';
import type { Ask } from '../../shared/phrases.js';
import type { Content, Message, Reply } from '../../shared/message.js';
import type { History } from '../../shared/history.js';
import type { Person, SavedPlace } from '../../shared/person.js';
import type { Receipt } from '../../shared/receipt.js';
import type { Count, Photograph, Watch } from '../../shared/record.js';
import type { Survey } from '../../shared/survey.js';
import type { PhotographLicence } from '../../shared/vocabularies.js';

export type Json = null | boolean | number | string | readonly Json[] | { readonly [key: string]: Json };

/** A field's value with the words it came from. Fields keep their message, so that an edited message is reread. */
export interface Told<Value = Json> {
  readonly value: Value;
  readonly typed: string;
  readonly message: string;
}

/** A plant of the patch; its flowers are asked for until they are known. */
export interface PlantInPatch {
  readonly name: string | null;
  readonly rank: string | null;
  readonly typed: string;
  readonly flowers: (Count & { readonly asTyped: string }) | null;
}

/** Queens of one bee on one plant, or that none was on it (`bee` null, `count` 0). */
export interface TallyLine {
  /** The plant's `name` or, where it has none, its words as typed; null until it is said. */
  readonly plant: string | null;
  readonly bee: string | null;
  readonly rank: string | null;
  readonly typed: string;
  readonly count: number;
  readonly seenBefore: number;
  readonly withPollen: number | null;
  readonly caste: 'queen' | 'worker' | null;
  readonly doubt: boolean;
}

/** An unsure reading that waits for a yes, or for better words. */
export interface Doubt {
  readonly field: string;
  /** Which plant of the patch it is about: its index. */
  readonly plant: number | null;
  readonly offers: readonly Json[];
  readonly ask: Ask;
  readonly typed: string;
}

/** A watch that is being watched now. Instants are UTC. */
export interface Live {
  readonly startedAt: string;
  /** When the clock was stopped, while it is. */
  readonly pausedAt: string | null;
  /** Seconds the clock stood still so far. */
  readonly pausedSeconds: number;
  /** What each message counted, oldest first: the tally is their sum, "undo" takes the last away. */
  readonly entries: readonly (readonly TallyLine[])[];
  /** The message of each entry, so that a changed one is counted again; left out by an older program. */
  readonly entryMessages?: readonly string[];
  /** Messages that could not be read while it ran: asked about when time is up. */
  readonly unread: readonly string[];
  /** How many of these came since the last that counted something: "undo" takes them away first; left out for none. */
  readonly unreadSince?: number;
  /** Bees that this observer named before, the most usual first; left out by an older program. */
  readonly bees?: readonly string[];
  /** "Same one" was said, and it was asked where she is now. */
  readonly asksSame?: boolean;
  /** What was counted before the last message put it right: "undo" goes back to it. */
  readonly corrected?: Pick<Live, 'entries' | 'entryMessages'> | undefined;
}

export interface Report {
  readonly id: string;
  /** Raised with every change: tells a stale button from a current one. */
  readonly revision: number;
  readonly begunAt: string;
  /** The stored watch that is being mended or was stored unconfirmed; null for a new one. */
  readonly stored: Watch | null;
  readonly practice: boolean;
  /** Told values by field; `plants` and `tally` have places of their own. */
  readonly fields: Readonly<Record<string, Told>>;
  readonly skipped: readonly string[];
  /** Questions in the order in which they were asked: "back" goes along it. */
  readonly asked: readonly string[];
  readonly plants: readonly PlantInPatch[] | null;
  /** True after a live watch: its tally names plants, and those without queens are still to be told. */
  readonly plantsOpen: boolean;
  readonly tally: readonly TallyLine[] | null;
  /** Queens in all, where only their number was told so far. */
  readonly total: number | null;
  /** No queens on the plants that no line names: said, or taken from a "none". */
  readonly restNone: boolean;
  readonly tallyTyped: readonly string[];
  readonly tallyMessage: string | null;
  readonly plantsTyped: readonly string[];
  /** The message that alone told all plants with their flowers, so that a changed one is read again; else null. */
  readonly plantsMessage?: string | null;
  readonly doubts: readonly Doubt[];
  readonly live: Live | null;
  /** Minutes watched by the clock of a live watch; null for a watch that was told. */
  readonly liveMinutes: number | null;
  readonly photographs: readonly Photograph[];
  /** Whether pictures of a doubtful queen were asked for, and whether it was said that a file keeps more. */
  readonly picturesWanted?: 'asked' | 'as-file';
  /** What was told of a second watch in the same message: read once this one is stored. */
  readonly second?: string;
  /** True once the summary was shown, so that it is told when it is shown again. */
  readonly summarised: boolean;
}

/** What the last reply asked; the next message is read first as its answer. */
export type Asking =
  | { readonly kind: 'consent' }
  /** `fields` are those still open of the question; `again` when it was answered before. */
  | {
      readonly kind: 'question';
      readonly question: string;
      readonly fields: readonly string[];
      readonly again: boolean;
    }
  /** Everything still open, one numbered item each: the manner of mail. */
  | {
      readonly kind: 'list';
      readonly items: readonly { readonly question: string; readonly fields: readonly string[] }[];
    }
  | { readonly kind: 'doubt' }
  | { readonly kind: 'flowers'; readonly plant: number }
  /** Which plant the line of the tally was on. */
  | { readonly kind: 'line-plant'; readonly line: number }
  /** Which bees the total is made of. */
  | { readonly kind: 'bees-of-total' }
  /** Plants no line of the tally named. */
  | { readonly kind: 'rest'; readonly plants: readonly string[] }
  | { readonly kind: 'confirm' }
  | { readonly kind: 'correct' }
  /** A yes throws the report away. */
  | { readonly kind: 'throw-away' }
  /** A yes gives or erases all that is kept of them. `before` is what was asked then; left out by an older program. */
  | { readonly kind: 'right'; readonly right: 'give' | 'forget'; readonly before?: Asking | null }
  /** A yes opens the stored watch that a message was a reply to, with what its text corrects; a position has no text. */
  | {
      readonly kind: 'open-replied';
      readonly number: number;
      readonly day: string;
      readonly text: string | null;
      readonly before: Asking | null;
    }
  /** Whether they want to be reminded: said as an offer, and whatever is no yes or no is about something else. */
  | { readonly kind: 'remind' }
  /** Whether a text is about the watch that was stored just before it; a yes opens that, with what the text corrects. */
  | { readonly kind: 'open-stored'; readonly number: number; readonly day: string; readonly text: string }
  /** `waited`: how many photographs waited for the next report before; they are not asked about. Left out by an older program. */
  | { readonly kind: 'join-photograph'; readonly watch: string; readonly waited?: number }
  /** Under which licence their photographs may be published. */
  | { readonly kind: 'licence' }
  /** Whether their name may stand with their watches in what is published. */
  | { readonly kind: 'name-shown' }
  /** What a place is called that was sent as a position: `key` is that of the saved place. */
  | { readonly kind: 'place-name'; readonly key: string }
  | { readonly kind: 'live' }
  | { readonly kind: 'person'; readonly field: 'name' | 'mail' };

/** A position that was sent rather than typed. */
export type Position = Omit<Content & { readonly kind: 'place' }, 'kind'>;

export interface Thread {
  /** Shape of this data; raised together with a function in `upgrade.ts`. */
  readonly shape: 1;
  readonly dialog: string;
  readonly dialogVersion: number;
  readonly report: Report | null;
  /** Reports put aside for a newer one, oldest first. */
  readonly parked: readonly Report[];
  readonly asking: Asking | null;
  /** Texts that came before the consent; read once it is given. */
  readonly held: readonly string[];
  /** The position that was sent before the consent, read after those texts; left out for none. */
  readonly heldPosition?: Position;
  /** When it was said that no photograph is kept before the consent: an album is told once. */
  readonly photographLostAt?: string;
  /** The pictures sent together that were last thanked for: once is enough. */
  readonly album?: string;
  /** Photographs that belong to no report yet. */
  readonly photographs: readonly Photograph[];
  /** When the last message came: a long silence is greeted. */
  readonly lastAt: string | null;
}

export type Effect =
  | { readonly do: 'keep-watch'; readonly watch: Watch }
  | { readonly do: 'keep-person'; readonly person: Person }
  /** Of all photographs of this observer. */
  | { readonly do: 'license-photographs'; readonly observer: string; readonly licence: PhotographLicence | null }
  | { readonly do: 'keep-place'; readonly place: SavedPlace }
  | { readonly do: 'send-receipt'; readonly to: string; readonly receipt: Receipt }
  /** All that is kept of this person, as a file in the reply. */
  | { readonly do: 'give-data' }
  | { readonly do: 'forget-person' }
  /** A photograph that may not be kept. */
  | { readonly do: 'remove-photograph'; readonly sha256: string }
  /** Mails a code there, if that address is another observer's too. */
  | { readonly do: 'mail-code'; readonly to: string; readonly code: string }
  /** All threads, watches and places of one observer become another's, whose threads are told. */
  | { readonly do: 'join-observers'; readonly from: string; readonly into: string; readonly said: string }
  /** `alone`: the same timer of the person's other threads is cleared. */
  | {
      readonly do: 'set-timer';
      readonly key: string;
      readonly report: string;
      readonly due: string;
      readonly alone?: true;
    }
  | { readonly do: 'clear-timer'; readonly key: string };

export interface Step {
  readonly thread: Thread;
  readonly replies: readonly Reply[];
  readonly effects: readonly Effect[];
}

/** What stays the same through one step. */
export interface Scene {
  readonly message: Message;
  readonly history: History;
  readonly survey: Survey;
  readonly now: string;
  /** The message's own moment in the survey's zone. */
  readonly local: { readonly date: string; readonly time: string };
}

/** What handling a message came to, before the next question is added. */
export interface Outcome {
  readonly thread: Thread;
  /** Sentences that come before the next question. */
  readonly said: readonly string[];
  /** What was taken, said back in few words; left out where the summary says it all. */
  readonly echo?: string | null;
  readonly effects: readonly Effect[];
  /** `ask`: go on with whatever is open; `repeat`: ask the same again; `rest`: say nothing more. */
  readonly then: 'ask' | 'repeat' | 'rest';
  readonly silent?: boolean;
  /** The reply takes the place of the last one of this slot, where the channel can change what it sent. */
  readonly slot?: string;
}

export type { Span };
