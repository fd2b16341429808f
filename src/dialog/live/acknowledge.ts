/** How a live watch answers: aloud where it begins, else without a sound, in one message that changes. */
import { withReport } from '../thread.js';
import type { Effect, Outcome, Report, Thread } from '../types.js';

/** The place of the acknowledgements of a live watch. */
export const liveSlot = (report: Report): string => `live:${report.id}`;

/** Said as a message of its own. */
export const aloud = (
  thread: Thread,
  report: Report,
  said: readonly string[],
  effects: readonly Effect[] = [],
): Outcome => ({ thread: { ...withReport(thread, report), asking: { kind: 'live' } }, said, effects, then: 'rest' });

/** Said as a message of its own, without a sound. */
export const softly = (thread: Thread, report: Report, said: string): Outcome => ({
  ...aloud(thread, report, [said]),
  silent: true,
});

/** So says whatever comes while the clock runs: without a sound, and in the place of the last acknowledgement. */
export const inLive = (report: Report | null): Pick<Outcome, 'silent' | 'slot'> =>
  report?.live ? { silent: true, slot: liveSlot(report) } : {};

/** A tally in a word or two: each takes the place of the one before, so that a watch leaves one message and no sound. */
export const acknowledged = (
  thread: Thread,
  report: Report,
  said: string,
  effects: readonly Effect[] = [],
): Outcome => ({ ...aloud(thread, report, [said], effects), silent: true, slot: liveSlot(report) });
