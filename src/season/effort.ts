/** How much was watched, by how many, and where. */
import { withinProtocol } from '../../shared/protocol.js';
import type { SurveySettings } from '../../shared/survey.js';
import type { Figure } from './figure.js';

export interface Effort {
  readonly watches: number;
  readonly minutes: number;
  readonly observers: number;
  /** Distinct sites; null where there are watches and none has one: they were somewhere. */
  readonly sites: number | null;
  /** Watches without a queen; workers do not count. */
  readonly zeroWatches: number;
  readonly withinProtocol: number;
}

export function effort(settings: SurveySettings): Figure<Effort> {
  let [watches, minutes, zeroWatches, within] = [0, 0, 0, 0];
  const observers = new Set<string>();
  const sites = new Set<string>();
  return {
    add({ watch, queens }) {
      watches += 1;
      minutes += watch.minutes;
      if (queens.length === 0) zeroWatches += 1;
      if (withinProtocol(watch, settings)) within += 1;
      observers.add(watch.observer);
      const site = watch.place?.site ?? null;
      if (site !== null) sites.add(site);
    },
    result: () => ({
      watches,
      minutes,
      observers: observers.size,
      sites: watches > 0 && sites.size === 0 ? null : sites.size,
      zeroWatches,
      withinProtocol: within,
    }),
  };
}
