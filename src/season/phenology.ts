/**
 * When the queens flew: by ISO 8601 week of the local date, and the days by which shares of them were seen. Queens are
 * counted once in a watch.
 */
import { Temporal } from 'temporal-polyfill';
import { sortedNames, type Figure } from './figure.js';
import { addTo, sum, type Sums } from './sums.js';
import { garwood, type Interval } from './intervals.js';

export interface Week {
  /** Null for all bees together. */
  readonly bee: string | null;
  /** `2026-W17`. Only weeks with a watch: one without has no rate. */
  readonly week: string;
  /** All watches of the week, and their minutes, whether or not the bee was seen. */
  readonly watches: number;
  readonly minutes: number;
  readonly queens: number;
  /** Queens in 15 minutes; null where no minute was watched. */
  readonly per15min: number | null;
  /** Exact, if every watch of the week were alike; null where no minute was watched. */
  readonly poisson: Interval | null;
}

/** Local days; p10 is the first day by which a tenth was reached. */
export interface Dates {
  readonly bee: string;
  readonly first: string;
  readonly p10: string;
  readonly p50: string;
  readonly p90: string;
  readonly last: string;
}

export interface Phenology {
  readonly weeks: readonly Week[];
  /** By individuals: sensitive to when people watched. */
  readonly dates: readonly Dates[];
  /** By weekly rates: each week weighs by what was seen in a quarter of an hour. `first` and `last` are as seen. */
  readonly datesByEffort: readonly Dates[];
}

const TENTHS = [1, 5, 9] as const;

/** ISO 8601: weeks begin on Monday, and the year of a week is that of its Thursday. */
function weekOf(date: string): string {
  const { yearOfWeek, weekOfYear } = Temporal.PlainDate.from(date);
  return `${yearOfWeek}-W${String(weekOfYear).padStart(2, '0')}`;
}

const mondayOf = (date: string): Temporal.PlainDate => {
  const day = Temporal.PlainDate.from(date);
  return day.subtract({ days: day.dayOfWeek - 1 });
};

const inOrder = (sums: Sums): (readonly [key: string, value: number])[] =>
  [...sums].sort(([one], [other]) => (one < other ? -1 : 1));

function datesOf(bee: string, days: (tenths: number) => string, queensByDate: Sums): Dates {
  const seen = inOrder(queensByDate).map(([date]) => date);
  const [p10, p50, p90] = [days(TENTHS[0]), days(TENTHS[1]), days(TENTHS[2])];
  return { bee, first: seen[0] ?? '', p10, p50, p90, last: seen.at(-1) ?? '' };
}

/** The first day by which so many tenths of all were counted. */
function byIndividuals(queensByDate: Sums): (tenths: number) => string {
  const days = inOrder(queensByDate);
  const total = sum(days.map(([, queens]) => queens));
  return (tenths) => {
    let counted = 0;
    for (const [date, queens] of days) {
      counted += queens;
      // In whole numbers: a share of 0.1 + 0.2 must reach 0.3.
      if (10 * counted >= tenths * total) return date;
    }
    return days.at(-1)?.[0] ?? '';
  };
}

/** The day on which the summed share reaches so many tenths, each week's rate spread evenly over its seven days. */
function byRates(weeks: readonly { readonly monday: Temporal.PlainDate; readonly rate: number }[]) {
  const total = sum(weeks.map(({ rate }) => rate));
  return (tenths: number): string => {
    const wanted = (tenths / 10) * total;
    let before = 0;
    for (const { monday, rate } of weeks) {
      if (rate > 0 && before + rate >= wanted * (1 - ROUNDING)) {
        const day = Math.max(1, Math.ceil(((wanted - before) / rate) * 7 - 7 * ROUNDING));
        return monday.add({ days: day - 1 }).toString();
      }
      before += rate;
    }
    return '';
  };
}

/** Sums of rates are not exact: a share that should be met is not missed by this much. */
const ROUNDING = 1e-9;

export function phenology(): Figure<Phenology | null> {
  const watchesByDate: Sums = new Map();
  const minutesByDate: Sums = new Map();
  const queensByBee = new Map<string, Sums>();
  const allQueens: Sums = new Map();

  return {
    add({ watch, queens }) {
      addTo(watchesByDate, watch.date, 1);
      addTo(minutesByDate, watch.date, watch.minutes);
      for (const seen of queens.filter((one) => one.queens > 0)) {
        const byDate = queensByBee.get(seen.bee) ?? new Map<string, number>();
        queensByBee.set(seen.bee, byDate);
        addTo(byDate, watch.date, seen.queens);
        addTo(allQueens, watch.date, seen.queens);
      }
    },
    result() {
      if (watchesByDate.size === 0) return null;
      const byWeek = (byDate: Sums): Sums => {
        const sums: Sums = new Map();
        for (const [date, value] of byDate) addTo(sums, weekOf(date), value);
        return sums;
      };
      const mondays = new Map([...watchesByDate.keys()].map((date) => [weekOf(date), mondayOf(date)] as const));
      const [watches, minutes] = [byWeek(watchesByDate), byWeek(minutesByDate)];

      const weeksOf = (bee: string | null, queensByDate: Sums): Week[] => {
        const queens = byWeek(queensByDate);
        return inOrder(watches).map(([week, watched]) => {
          const [seen, time] = [queens.get(week) ?? 0, minutes.get(week) ?? 0];
          const per15min = time === 0 ? null : (seen / time) * 15;
          const poisson = time === 0 ? null : garwood(seen, 15 / time);
          return { bee, week, watches: watched, minutes: time, queens: seen, per15min, poisson };
        });
      };

      const bees = sortedNames(queensByBee.keys()).map((bee) => {
        const queensByDate = queensByBee.get(bee) ?? new Map<string, number>();
        const weeks = weeksOf(bee, queensByDate);
        const rates = weeks.flatMap(({ week, per15min }) => {
          const monday = mondays.get(week);
          return monday === undefined || per15min === null ? [] : [{ monday, rate: per15min }];
        });
        const dates = datesOf(bee, byIndividuals(queensByDate), queensByDate);
        const rated = rates.some(({ rate }) => rate > 0);
        return { weeks, dates, byEffort: rated ? [datesOf(bee, byRates(rates), queensByDate)] : [] };
      });
      return {
        weeks: [...weeksOf(null, allQueens), ...bees.flatMap(({ weeks }) => weeks)],
        dates: bees.map(({ dates }) => dates),
        datesByEffort: bees.flatMap(({ byEffort }) => byEffort),
      };
    },
  };
}
