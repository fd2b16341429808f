/** A live watch: "start" begins the survey's minutes, each message is a tally, "pause" stops the clock. */
export { inLive, liveSlot, softly } from './acknowledge.js';
export { beeWords, liveChoices, liveWords, meansTheSame, plantsInWords, usualBees } from './buttons.js';
export { endLive, FIVE_LEFT, LEFT_OPEN, secondsLeft, startLive, stillLive, TIME_UP } from './clock.js';
export { hearLive, recountLive, staleInLive } from './hearing.js';
