/** What the exchange needs of a conversation; the dialog is one, a test has its own. */
import type { History } from '../../shared/history.js';
import type { Message, Reply } from '../../shared/message.js';
import type { Survey } from '../../shared/survey.js';
import type { Effect } from '../dialog/index.js';
import type { ThreadKey } from '../store/index.js';

export type { Effect };

/** Puts a reply to the message in hand at the end of a thread's outbox. */
export type AddReply = (to: ThreadKey, reply: Reply) => void;

export interface Step<Thread> {
  readonly thread: Thread;
  readonly replies: readonly Reply[];
  readonly effects: readonly Effect[];
}

/** `Thread` is plain JSON: it is kept as it is, and given back at the thread's next message. */
export interface Conversation<Thread> {
  newThread(survey: Survey, message: Message): Thread;
  /** Pure; `now` is a UTC instant. */
  step(thread: Thread, message: Message, history: History, survey: Survey, now: string): Step<Thread>;
  /** The code that a message is, of those that are mailed; null where it is none. A conversation may know of none. */
  codeSaid?(message: Message, survey: Survey): string | null;
  /** Whether a watch is being told in that thread. A conversation that reminds nobody needs not know. */
  isTelling?(thread: Thread): boolean;
  /** The day and place of the current report, where both are known. */
  dayAndPlaceOf(
    thread: Thread,
  ): { readonly date: string; readonly latitude: number; readonly longitude: number } | null;
}
