/** What the exchange may use of the conversation. */
import { valueOf } from './fields.js';
import type { ToldPlace } from './places.js';
import type { Thread } from './types.js';

export { publicAsking } from './ask.js';
export { codeSaid } from './people/joining.js';
export { siteOf } from './places.js';
export { step } from './step.js';
export { isTelling, newThread } from './thread.js';
export type { Effect, Step, Thread } from './types.js';

/** Day and place of the current report, for the exchange to look for watches near by; null until both are known. */
export function dayAndPlaceOf(thread: Thread): { date: string; latitude: number; longitude: number } | null {
  const { report } = thread;
  if (report === null) return null;
  const date = valueOf<string>(report, 'date');
  const place = valueOf<ToldPlace>(report, 'place');
  if (date === null || place === null || place.latitude === null || place.longitude === null) return null;
  return { date, latitude: place.latitude, longitude: place.longitude };
}
