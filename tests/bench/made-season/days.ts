/** The days of the season: how warm, how cloudy, how windy, and which share of all watches falls on each. */
import { Temporal } from 'temporal-polyfill';
import type { SurveySettings } from '../../../shared/survey.js';
import type { Chance } from './chance.js';
import { MINUTE_MILLISECONDS } from './calendar.js';

export interface Day {
  readonly date: string;
  readonly month: number;
  readonly dayOfMonth: number;
  readonly dayOfYear: number;
  /** Epoch milliseconds at which the local clock would have shown 00:00, reckoned back from the evening. */
  readonly midnight: number;
  /** In the afternoon, °C. */
  readonly warmest: number;
  /** Eighths of the sky. */
  readonly clouds: number;
  readonly beaufort: number;
  readonly rainy: boolean;
  /** Watches stored that evening. */
  readonly watches: number;
}

/** Usual afternoon at 43° N in the upper Midwest, °C: 11 on 1 April, 27 on 20 June. From memory. */
const usualAfternoon = (dayOfYear: number): number => 11 + 0.2 * (dayOfYear - 91);

const FROM_DAY_TO_DAY = 0.7;
const SPELLS = 3;
const COLD_SPELL = { days: 4, colder: 7 };

/** How much people feel like watching: on warm dry days, and at the weekend. */
function eagerness(warmest: number, rainy: boolean, weekday: number, chance: Chance): number {
  const warm = 1 / (1 + Math.exp((17.5 - warmest) / 2.2));
  const free = weekday >= 6 ? 1.8 : 1;
  return warm * free * (rainy ? 0.25 : 1) * chance.times(0.25);
}

export function daysOf({ season, timeZone }: SurveySettings, watches: number, chance: Chance): Day[] {
  const [from, to] = [Temporal.PlainDate.from(season.from), Temporal.PlainDate.from(season.to)];
  const length = from.until(to).days + 1;
  const coldFrom = Array.from({ length: SPELLS }, () => chance.whole(0, length - 1));

  let drift = 0;
  const days = Array.from({ length }, (_, index) => {
    const day = from.add({ days: index });
    drift = FROM_DAY_TO_DAY * drift + chance.normal() * 2.6;
    const cold = coldFrom.some((start) => index >= start && index < start + COLD_SPELL.days);
    const rainy = chance.yes(cold ? 0.5 : 0.2);
    const warmest = usualAfternoon(day.dayOfYear) + drift - (cold ? COLD_SPELL.colder : 0) - (rainy ? 2 : 0);
    const evening = day.toZonedDateTime({ timeZone, plainTime: '18:00' }).epochMilliseconds;
    return {
      date: day.toString(),
      month: day.month,
      dayOfMonth: day.day,
      dayOfYear: day.dayOfYear,
      midnight: evening - 18 * 60 * MINUTE_MILLISECONDS,
      warmest,
      clouds: rainy ? 6.5 : chance.between(0, 6),
      beaufort: 1.6 + 0.8 * Math.abs(chance.normal()),
      rainy,
      eager: eagerness(warmest, rainy, day.dayOfWeek, chance),
    };
  });

  const all = days.reduce((sum, { eager }) => sum + eager, 0);
  let [reached, given] = [0, 0];
  return days.map(({ eager, ...day }, index) => {
    reached += eager;
    const until = index === length - 1 ? watches : Math.round((reached / all) * watches);
    const here = until - given;
    given = until;
    return { ...day, watches: here };
  });
}
