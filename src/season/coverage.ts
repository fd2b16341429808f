/**
 * What the intervals of a rate are worth: how often each kind held the true rate in drawn seasons, where 95 % is promised.
 * Observers and sites see more or less than usual by log-normal factors, and an observer watches mostly at one site.
 * Made by `npm run coverage`; `tests/bench/coverage.test.ts` draws some of it again.
 */
export interface Coverage {
  readonly observers: number;
  readonly sites: number;
  /** Standard deviation of the logarithm of both factors; 0 where all are alike. */
  readonly spread: number;
  /** Percent of the seasons that had such an interval; null where none had. */
  readonly poisson: number | null;
  readonly clustered: number | null;
  readonly headline: number | null;
  /** Percent of seasons in which there were clusters enough for a headline interval. */
  readonly withHeadline: number;
}

export const COVERAGE: {
  readonly command: string;
  readonly rounds: number;
  readonly seed: number;
  readonly rows: readonly Coverage[];
} = {
  command: 'npm run coverage',
  rounds: 2000,
  seed: 1,
  rows: [
    { observers: 10, sites: 10, spread: 0, poisson: 95, clustered: 93.9, headline: 94.6, withHeadline: 92.5 },
    { observers: 20, sites: 10, spread: 0, poisson: 95.2, clustered: 94.1, headline: 95.2, withHeadline: 100 },
    { observers: 40, sites: 20, spread: 0, poisson: 95.3, clustered: 95.2, headline: 95.6, withHeadline: 100 },
    { observers: 60, sites: 30, spread: 0, poisson: 95, clustered: 94.9, headline: 94.8, withHeadline: 100 },
    { observers: 10, sites: 10, spread: 0.4, poisson: 73.8, clustered: 90.6, headline: 94.1, withHeadline: 92.3 },
    { observers: 20, sites: 10, spread: 0.4, poisson: 65.6, clustered: 87.9, headline: 93.8, withHeadline: 100 },
    { observers: 40, sites: 20, spread: 0.4, poisson: 64, clustered: 88, headline: 93.4, withHeadline: 100 },
    { observers: 60, sites: 30, spread: 0.4, poisson: 63.2, clustered: 88.3, headline: 93.7, withHeadline: 100 },
    { observers: 10, sites: 10, spread: 0.8, poisson: 43.1, clustered: 80.8, headline: 88.5, withHeadline: 92.6 },
    { observers: 20, sites: 10, spread: 0.8, poisson: 35.5, clustered: 78.7, headline: 89.2, withHeadline: 100 },
    { observers: 40, sites: 20, spread: 0.8, poisson: 34.4, clustered: 82.1, headline: 90.8, withHeadline: 100 },
    { observers: 60, sites: 30, spread: 0.8, poisson: 33.2, clustered: 82.1, headline: 89.7, withHeadline: 100 },
  ],
};
