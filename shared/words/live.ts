/** What is written while the clock of a live watch runs, besides queens. */
import { z } from 'zod';
import { words } from './kinds.js';

export const liveSection = z.strictObject({
  /** "How much longer": asks for the minutes left. */
  timeLeft: words,
  /** A whole message: none came so far. */
  nothingYet: words,
  /** A whole message: of a queen counted before, "she left". */
  gone: words,
  /** A whole message that says nothing of queens: "so pretty". */
  chat: words,
  /** A whole message: the last one was not the same as before. */
  newOne: words,
});
