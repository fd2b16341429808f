/** The terminal as a channel: what is typed becomes messages. It keeps no state and has no rules of its own. */
import type { Content, Message } from '../../shared/message.js';

export const TERMINAL = 'terminal';

export interface TerminalParts {
  readonly survey: string;
  /** Whoever sits at the terminal; one thread a name. */
  readonly person: string;
  readonly now: () => string;
  readonly newId: () => string;
}

/** A message typed now. The terminal vouches for whoever sits at it. */
export function terminalMessage(what: Content, { survey, person, now, newId }: TerminalParts): Message {
  return {
    survey,
    channel: TERMINAL,
    person,
    id: newId(),
    at: now(),
    replyTo: null,
    edits: null,
    manner: 'one',
    proven: true,
    what,
  };
}
