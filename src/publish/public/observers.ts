/**
 * Observers' public keys. `observer-12` is who told watch 12 before any other of theirs, whatever became of it: so a key
 * stays when a watch is set aside, mended, determined or published later, and when other people join; it depends on
 * nothing of other observers. A watch's number is public anyway, and nothing of the stored key is in it, so there is
 * nothing to turn back. Who is forgotten keeps the key on their watches, which leads to nobody.
 */
import type { Watch } from '../../../shared/record.js';

export type ObserverKey = (watch: Pick<Watch, 'observer' | 'number'>) => string;

/** To be shown watches of every status by number, as `watchesOf` of the store gives them. Throws where one comes late. */
export function observerKeys(): ObserverKey {
  const first = new Map<string, number>();
  return ({ observer, number }) => {
    const known = first.get(observer) ?? number;
    if (number < known)
      throw new Error(`Watch ${number} came after watch ${known} of the same observer; give watches by number.`);
    first.set(observer, known);
    return `observer-${known}`;
  };
}
