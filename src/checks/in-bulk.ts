/** The checks over many watches that come in at once, such as a season that was kept elsewhere. */
import type { History, NearbyWatch } from '../../shared/history.js';
import type { Finding, Watch } from '../../shared/record.js';
import type { Survey } from '../../shared/survey.js';
import type { Check, CheckFinding } from './check.js';

/** What the checks look at of other watches: those of the same day. */
class SameDay {
  readonly #byObserver = new Map<string, Watch[]>();
  readonly #byDay = new Map<string, NearbyWatch[]>();

  add(watch: Watch): void {
    const { number, observer, times, place, status, date } = watch;
    const own = listIn(this.#byObserver, JSON.stringify([observer, date]));
    own.unshift(watch);
    const { latitude = null, longitude = null } = place ?? {};
    if (latitude === null || longitude === null || (status !== 'confirmed' && status !== 'unconfirmed')) return;
    listIn(this.#byDay, date).push({ number, observer, ...times, latitude, longitude });
  }

  before({ observer, date }: Watch): Pick<History, 'lastWatches' | 'sameDayNearby'> {
    return {
      lastWatches: this.#byObserver.get(JSON.stringify([observer, date])) ?? [],
      sameDayNearby: this.#byDay.get(date) ?? [],
    };
  }
}

function listIn<Value>(lists: Map<string, Value[]>, key: string): Value[] {
  const list = lists.get(key) ?? [];
  lists.set(key, list);
  return list;
}

/** Two watches that a finding of one sets against the other, in either order; null where it speaks of one alone. */
function pairOf({ check, values }: Pick<Finding, 'check' | 'values'>, number: number): string | null {
  const other = values['number'];
  return typeof other === 'number' ? `${check} ${Math.min(number, other)} ${Math.max(number, other)}` : null;
}

/**
 * What the checks notice in each of `watches` beyond the findings that it has; by id. They are taken in the order
 * given, each beside `standing` and those before it, as if told one after another. Two watches that were set against
 * each other in either's findings are not set against each other again.
 */
export function missingFindings(
  watches: readonly Watch[],
  standing: Iterable<Watch>,
  { checks, survey }: { readonly checks: readonly Check[]; readonly survey: Survey },
): Map<string, CheckFinding[]> {
  const sameDay = new SameDay();
  const pairs = new Set<string | null>();
  const notePairs = ({ number, findings }: Watch): void => {
    for (const finding of findings) pairs.add(pairOf(finding, number));
  };
  for (const watch of standing) {
    sameDay.add(watch);
    notePairs(watch);
  }
  watches.forEach(notePairs);
  pairs.delete(null);

  const missing = new Map<string, CheckFinding[]>();
  for (const watch of watches) {
    const history: History = {
      person: null,
      places: [],
      ...sameDay.before(watch),
      progress: { watches: 0, target: survey.settings.target },
      fresh: { observer: '', report: '', watchNumber: 0 },
    };
    const found = checks
      .flatMap((check) => check.check(watch, history, survey) ?? [])
      .filter((finding) => !watch.findings.some(({ check }) => check === finding.check))
      .filter((finding) => !pairs.has(pairOf(finding, watch.number)));
    missing.set(watch.id, found);
    sameDay.add(watch);
  }
  return missing;
}
