/** Ids within the archive. They do not change from one publication to the next. */
import type { PublicWatch } from '../public/index.js';

export const seasonOf = ({ date }: PublicWatch): string => date.slice(0, 4);
export const seasonId = (survey: string, year: string): string => `${survey}:${year}`;
export const watchId = (survey: string, watch: PublicWatch): string =>
  `${seasonId(survey, seasonOf(watch))}:${watch.number}`;
export const plantId = (event: string, plant: number): string => `${event}:plant-${plant}`;
export const queensId = (event: string, { row, part }: { readonly row: number; readonly part: number }): string =>
  `${event}:queens-${row}-${part}`;

/** "Wren (observer-12)", or the key alone: two people may have one first name. */
export const observerOf = ({ observer, observerName }: PublicWatch): string =>
  observerName === null ? observer : `${observerName} (${observer})`;
