/** What is sent to the program that is killed: ten people in turn, every third message a watch. */
import { said } from './echo.js';

/** Messages that come at once, and so share a commit. */
export const BATCH = 20;

export const MESSAGES = Array.from({ length: 400 }, (_, index) =>
  said(`m${index}`, index % 3 === 0 ? `watch ${index}` : `text ${index}`, `person-${index % 10}`),
);
