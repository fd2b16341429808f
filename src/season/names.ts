/**
 * How far volunteers' names can be trusted, and what the season holds once their errors are allowed for. From queens
 * with a determination: the chance that one reported as r is truly t, with a weak prior towards agreement; carried into
 * the queens that nobody determined. It takes determined queens as a fair sample of the reports of that name.
 */
import { quantileOf, resampled } from './bootstrap.js';
import { addTo, sortedNames, sum, type Figure, type Sums } from './figure.js';
import { GENUS } from './standing.js';

export interface Names {
  /** Queens as reported, determined ones among them. */
  readonly reported: number;
  readonly determined: number;
  /** Determined queens whose reported name was right. */
  readonly agree: number;
  /** Null where nothing was determined. */
  readonly corrected:
    | readonly {
        readonly bee: string;
        /** Under the names that stand. */
        readonly counted: number;
        readonly corrected: number;
        readonly low95: number;
        readonly high95: number;
      }[]
    | null;
}

/** Queens of each reported name that the prior adds as rightly named: weak, so that ten determinations outweigh it. */
export const PRIOR_QUEENS = 1;

/** Of one observer: determined queens by reported and true name, undetermined ones by reported name. */
interface Reports {
  readonly determined: Map<string, Sums>;
  readonly open: Sums;
}

/** Expected queens of each bee: those determined, and the undetermined ones shared out by what their name has meant. */
function correctedBy(bees: readonly string[], reports: readonly Reports[], draws: ArrayLike<number>): number[] {
  const truth = new Map<string, Sums>();
  const open: Sums = new Map();
  reports.forEach((report, at) => {
    const times = draws[at] ?? 0;
    if (times === 0) return;
    for (const [reported, byTrue] of report.determined) {
      const known = truth.get(reported) ?? new Map<string, number>();
      truth.set(reported, known);
      for (const [bee, queens] of byTrue) addTo(known, bee, queens * times);
    }
    for (const [reported, queens] of report.open) addTo(open, reported, queens * times);
  });
  const expected: Sums = new Map();
  for (const byTrue of truth.values()) for (const [bee, queens] of byTrue) addTo(expected, bee, queens);
  for (const [reported, queens] of open) {
    const known = truth.get(reported) ?? new Map<string, number>();
    const all = sum([...known.values()]) + PRIOR_QUEENS;
    addTo(expected, reported, (queens * PRIOR_QUEENS) / all);
    for (const [bee, seen] of known) addTo(expected, bee, (queens * seen) / all);
  }
  return bees.map((bee) => expected.get(bee) ?? 0);
}

/** `seed` is that of the resampling. */
export function names(seed: number): Figure<Names> {
  const byObserver = new Map<string, Reports>();
  const counted: Sums = new Map();
  let [reported, determined, agree] = [0, 0, 0];
  return {
    add({ watch, queens }) {
      for (const seen of queens.filter((one) => one.queens > 0)) {
        reported += seen.queens;
        addTo(counted, seen.bee, seen.queens);
        const reports = byObserver.get(watch.observer) ?? {
          determined: new Map<string, Sums>(),
          open: new Map<string, number>(),
        };
        byObserver.set(watch.observer, reports);
        if (!seen.determined) {
          addTo(reports.open, seen.reported, seen.queens);
          continue;
        }
        determined += seen.queens;
        if (seen.bee === seen.reported) agree += seen.queens;
        const known = reports.determined.get(seen.reported) ?? new Map<string, number>();
        reports.determined.set(seen.reported, known);
        addTo(known, seen.bee, seen.queens);
      }
    },
    result() {
      if (determined === 0) return { reported, determined, agree, corrected: null };
      const reports = [...byObserver].sort(([one], [other]) => (one < other ? -1 : 1)).map(([, report]) => report);
      const meant = reports.flatMap((report) => [...report.determined.values()].flatMap((known) => [...known.keys()]));
      const bees = sortedNames([...counted.keys(), ...meant]);
      const best = correctedBy(
        bees,
        reports,
        reports.map(() => 1),
      );
      const rounds = resampled(reports.length, seed, (draws) => correctedBy(bees, reports, draws));
      return {
        reported,
        determined,
        agree,
        corrected: bees
          .map((bee, at) => {
            const values = rounds.map((round) => round[at] ?? 0);
            return {
              bee,
              counted: counted.get(bee) ?? 0,
              corrected: best[at] ?? 0,
              low95: quantileOf(values, 0.025),
              high95: quantileOf(values, 0.975),
            };
          })
          .filter(({ bee, counted: seen, corrected }) => bee !== GENUS || seen > 0 || corrected > 0),
      };
    },
  };
}
