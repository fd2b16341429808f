/** What the rest of the program may use of the readers. A kind of answer is one file, its test, and a line here. */
export type { Context, Finder, Reader, Reading, Span } from './reading.js';
export { fold } from './text.js';
