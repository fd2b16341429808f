/** The licence of an observer's photographs, set on a watch that is stored already. */
import type { Watch } from './record.js';
import type { PhotographLicence } from './vocabularies.js';

/** The watch with its photographs under that licence, and the change in its history; itself where nothing changes. */
export function licensed(
  watch: Watch,
  licence: PhotographLicence | null,
  { at, through }: { readonly at: string; readonly through: string },
): Watch {
  if (watch.photographs.every((photograph) => photograph.licence === licence)) return watch;
  const photographs = watch.photographs.map((photograph) => ({ ...photograph, licence }));
  return {
    ...watch,
    photographs,
    history: [
      ...watch.history,
      {
        at,
        by: watch.observer,
        role: 'observer',
        through,
        path: '/photographs',
        from: watch.photographs,
        to: photographs,
        why: null,
      },
    ],
    changedAt: at,
  };
}
