/** The names of all sentences the program can say; `wording.yaml` of every language must have each, and no other. */

/** Names that readers give in `ask`. One line a name, sorted by reader. */
export const ASKS = [
  // any reader
  'empty',
  'too-long',
  // date
  // times
  // temperature
  // sky
  // wind
  // patch
  // place
  // count
  // plant, plants
  // bee
  // tally
  // yes-no
  // note
] as const;
export type Ask = (typeof ASKS)[number];

/** Sentences of the conversation, the checks and the commands. */
export const PHRASES = [
  'welcome',
  // checks: to the observer, then to the coordinator
  'check-length',
  'query-length',
  'check-temperature',
  'query-temperature',
  'check-season',
  'query-season',
  'check-region',
  'query-region',
  'check-same-watch',
  'query-same-watch',
  'check-same-spot',
  'query-same-spot',
] as const;
export type Phrase = (typeof PHRASES)[number];
