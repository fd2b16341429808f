/** Who watched how often, and whether that is what was asked. Keys only: names of people stay with the coordinator. */
import type { SurveySettings } from '../../shared/survey.js';
import type { Figure } from './figure.js';
import { addTo, type Sums } from './sums.js';

export interface Participant {
  /** The observer's key. */
  readonly observer: string;
  readonly watches: number;
  /** Watches asked of each observer in a season. */
  readonly target: number;
  readonly reached: boolean;
}

export function participation({ target }: Pick<SurveySettings, 'target'>): Figure<Participant[]> {
  const watchesByObserver: Sums = new Map();
  return {
    add({ watch }) {
      addTo(watchesByObserver, watch.observer, 1);
    },
    result: () =>
      [...watchesByObserver.keys()].sort().map((observer) => {
        const watches = watchesByObserver.get(observer) ?? 0;
        return { observer, watches, target, reached: watches >= target };
      }),
  };
}
