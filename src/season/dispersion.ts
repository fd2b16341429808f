/**
 * Whether queens came more unevenly than chance alone would have it: the index of dispersion with its test, and a
 * negative binomial fitted to the counts. Watches are gathered by count and minutes, so a season's length costs nothing.
 */
import chisquare from '@stdlib/stats-base-dists-chisquare-cdf';
import gammaln from '@stdlib/math-base-special-gammaln';
import type { Figure } from './figure.js';
import { sum } from './sums.js';

export interface Dispersion {
  /** Σ (y − Rx)² / (Rx) over n − 1; 1 where every watch is alike. */
  readonly index: number;
  /** The chance of an index as high or higher if every watch were alike. */
  readonly p: number;
  readonly negativeBinomial: {
    /** Queens in 15 minutes. */
    readonly per15min: number;
    /** Var = μ + μ²/θ; null where the counts show no overdispersion. */
    readonly theta: number | null;
  };
}

interface Cell {
  readonly queens: number;
  readonly minutes: number;
  watches: number;
}

const MINUTES = 15;
/** θ is looked for between these; beyond the higher a negative binomial is a Poisson for every purpose. */
const THETA = { least: 1e-3, most: 1e4 };
const STEPS = 200;

/** Log-likelihood of the cells for a rate in a minute and a θ, without what does not depend on them. */
function logLikelihood(cells: readonly Cell[], rate: number, theta: number): number {
  return sum(
    cells.map(({ queens, minutes, watches }) => {
      const mean = rate * minutes;
      return (
        watches *
        (gammaln(queens + theta) -
          gammaln(theta) +
          theta * Math.log(theta / (theta + mean)) +
          queens * Math.log(mean / (theta + mean)))
      );
    }),
  );
}

/** The likeliest rate for a θ: Newton on its logarithm, from the plain ratio. */
function rateFor(cells: readonly Cell[], theta: number, start: number): number {
  let rate = start;
  for (let step = 0; step < 50; step++) {
    let [score, information] = [0, 0];
    for (const { queens, minutes, watches } of cells) {
      const mean = rate * minutes;
      score += (watches * (queens - mean) * theta) / (theta + mean);
      information += (watches * mean * theta) / (theta + mean);
    }
    const change = score / information;
    rate *= Math.exp(Math.max(-1, Math.min(1, change)));
    if (Math.abs(change) < 1e-12) break;
  }
  return rate;
}

/** Golden section on ln θ: the profile has one top. */
function fit(cells: readonly Cell[], start: number): { rate: number; theta: number | null } {
  const profile = (logTheta: number): number => {
    const theta = Math.exp(logTheta);
    return logLikelihood(cells, rateFor(cells, theta, start), theta);
  };
  const golden = (Math.sqrt(5) - 1) / 2;
  let [low, high] = [Math.log(THETA.least), Math.log(THETA.most)];
  for (let step = 0; step < STEPS && high - low > 1e-10; step++) {
    const [left, right] = [high - golden * (high - low), low + golden * (high - low)];
    if (profile(left) < profile(right)) low = left;
    else high = right;
  }
  const theta = Math.exp((low + high) / 2);
  if (theta > THETA.most * 0.99) return { rate: start, theta: null };
  return { rate: rateFor(cells, theta, start), theta };
}

/** Null below two watches and without a queen. */
export function dispersionOf(cells: readonly Cell[]): Dispersion | null {
  const watches = sum(cells.map((cell) => cell.watches));
  const queens = sum(cells.map((cell) => cell.queens * cell.watches));
  const minutes = sum(cells.map((cell) => cell.minutes * cell.watches));
  if (watches < 2 || queens === 0) return null;
  const rate = queens / minutes;
  const squares = sum(
    cells.map((cell) => (cell.watches * (cell.queens - rate * cell.minutes) ** 2) / (rate * cell.minutes)),
  );
  const { rate: fitted, theta } = fit(cells, rate);
  return {
    index: squares / (watches - 1),
    p: 1 - chisquare(squares, watches - 1),
    negativeBinomial: { per15min: fitted * MINUTES, theta },
  };
}

export function dispersion(): Figure<Dispersion | null> {
  const cells = new Map<string, Cell>();
  return {
    add({ watch, queens }) {
      if (watch.minutes <= 0) return;
      const seen = sum(queens.map((one) => one.queens));
      const key = `${seen} ${watch.minutes}`;
      const cell = cells.get(key) ?? { queens: seen, minutes: watch.minutes, watches: 0 };
      cell.watches += 1;
      cells.set(key, cell);
    },
    // in one order, so that sums come out the same whatever the order of the watches
    result: () => dispersionOf([...cells.values()].sort((a, b) => a.queens - b.queens || a.minutes - b.minutes)),
  };
}
