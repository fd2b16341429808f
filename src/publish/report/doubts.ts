/** What is doubtful about a season, as numbers alone: findings, open queries, names on one person's word, watches left out. */
import { withinProtocol, withinWind } from '../../../shared/protocol.js';
import type { Watch } from '../../../shared/record.js';
import type { SurveySettings } from '../../../shared/survey.js';
import { GENUS, standingOf } from '../../season/index.js';

/** Confirmed watches in which a check noticed something. */
export interface Noticed {
  /** Null for queries that no check raised. */
  readonly check: string | null;
  readonly watches: number;
  /** Of these, watches whose observer was asked, and those that gave an answer. */
  readonly asked: number;
  readonly answered: number;
  /** Of these, watches with a query that is still open or put off. */
  readonly open: number;
}

export interface Doubts {
  /** By name, the queries of people last. */
  readonly noticed: readonly Noticed[];
  /** Confirmed watches outside the protocol, and of these those with too much wind and those that did not tell. */
  readonly outside: { readonly any: number; readonly wind: number; readonly untold: number };
  /** Distinct queens of confirmed watches, workers not among them. */
  readonly queens: {
    readonly all: number;
    /** No determination speaks for them. */
    readonly byObserver: number;
    /** Of these, those whose name the observer doubted. */
    readonly doubted: number;
    /** Known to the genus alone. */
    readonly genus: number;
  };
  readonly workers: number;
  readonly unconfirmed: { readonly watches: number; readonly minutes: number; readonly queens: number };
  readonly practice: number;
  readonly setAside: number;
}

export interface DoubtSums {
  /** Watches of every status, in any order. */
  add(watch: Watch): void;
  result(): Doubts;
}

const isOpen = ({ state }: Watch['queries'][number]): boolean => state !== 'answered';

export function doubts(settings: Pick<SurveySettings, 'protocol'>): DoubtSums {
  const noticed = new Map<string | null, { watches: number; asked: number; answered: number; open: number }>();
  const queens = { all: 0, byObserver: 0, doubted: 0, genus: 0 };
  const unconfirmed = { watches: 0, minutes: 0, queens: 0 };
  const outside = { any: 0, wind: 0, untold: 0 };
  let [workers, practice, setAside] = [0, 0, 0];

  function addConfirmed(watch: Watch): void {
    const { findings, queries, temperature, wind } = watch;
    if (!withinProtocol(watch, settings)) outside.any += 1;
    if (wind !== null && !withinWind(wind.beaufort, settings.protocol)) outside.wind += 1;
    if (temperature === null || wind === null) outside.untold += 1;
    for (const check of new Set([...findings, ...queries].map((one) => one.check))) {
      const sums = noticed.get(check) ?? { watches: 0, asked: 0, answered: 0, open: 0 };
      noticed.set(check, sums);
      const asked = [
        ...findings.filter((one) => one.check === check && one.weight !== 'keep').map(({ reply }) => reply),
        ...queries.filter((one) => one.check === check).map(({ answer }) => answer),
      ];
      sums.watches += 1;
      if (asked.length > 0) sums.asked += 1;
      if (asked.some((answer) => answer !== null)) sums.answered += 1;
      if (queries.some((one) => one.check === check && isOpen(one))) sums.open += 1;
    }
    for (const row of watch.queens) {
      for (const { bee, caste, determined, queens: count } of standingOf(row)) {
        if (caste === 'worker') {
          workers += count;
          continue;
        }
        queens.all += count;
        if (!determined) queens.byObserver += count;
        if (!determined && row.doubt) queens.doubted += count;
        if (bee === GENUS) queens.genus += count;
      }
    }
  }

  return {
    add(watch) {
      if (watch.status === 'confirmed') addConfirmed(watch);
      else if (watch.status === 'practice') practice += 1;
      else if (watch.status === 'set-aside') setAside += 1;
      else {
        unconfirmed.watches += 1;
        unconfirmed.minutes += watch.minutes;
        for (const { caste, queens: count } of watch.queens.flatMap(standingOf))
          if (caste !== 'worker') unconfirmed.queens += count;
      }
    },
    result: () => ({
      noticed: [...noticed]
        .map(([check, sums]): Noticed => ({ check, ...sums }))
        .sort(
          (a, b) => Number(a.check === null) - Number(b.check === null) || ((a.check ?? '') < (b.check ?? '') ? -1 : 1),
        ),
      outside,
      queens,
      workers,
      unconfirmed,
      practice,
      setAside,
    }),
  };
}
