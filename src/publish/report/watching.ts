/** Where and when people watched, from what the public may see of each watch; sums only, so a season may be long. */
import { cellCentre } from '../../../shared/cell.js';
import type { SurveySettings } from '../../../shared/survey.js';
import type { PublicWatch } from '../public/index.js';

export interface Spent {
  readonly watches: number;
  readonly minutes: number;
}

export interface Cell extends Spent {
  /** Degrees, WGS 84: the middle of the cell. */
  readonly latitude: number;
  readonly longitude: number;
}

export interface Watching {
  /** Local days of the first and last watch; null without one. */
  readonly first: string | null;
  readonly last: string | null;
  readonly cellDegrees: number;
  /** Most watches first. Open places are put into cells as well. */
  readonly cells: readonly Cell[];
  /** Watches without coordinates. */
  readonly unplaced: number;
  /** By the local hour (0 to 23) in which a watch began; every hour from the first of them to the last. */
  readonly hours: readonly (Spent & { readonly hour: number })[];
}

export interface WatchingSums {
  add(watch: Pick<PublicWatch, 'date' | 'start' | 'minutes' | 'place'>): void;
  result(): Watching;
}

type Sums = Map<string, { watches: number; minutes: number }>;

function addTo(sums: Sums, key: string, minutes: number): void {
  const { watches, minutes: before } = sums.get(key) ?? { watches: 0, minutes: 0 };
  sums.set(key, { watches: watches + 1, minutes: before + minutes });
}

export function watching({ publish: { cellDegrees } }: Pick<SurveySettings, 'publish'>): WatchingSums {
  const cells: Sums = new Map();
  const hours: Sums = new Map();
  let [first, last]: [string | null, string | null] = [null, null];
  let unplaced = 0;
  return {
    add({ date, start, minutes, place }) {
      if (first === null || date < first) first = date;
      if (last === null || date > last) last = date;
      addTo(hours, String(Number(start.slice(0, 2))), minutes);
      if (place === null) unplaced += 1;
      else {
        const cell = [place.latitude, place.longitude].map((degrees) => cellCentre(degrees, cellDegrees));
        addTo(cells, cell.join(' '), minutes);
      }
    },
    result() {
      const began = [...hours.keys()].map(Number);
      const [earliest, latest] = began.length === 0 ? [0, -1] : [Math.min(...began), Math.max(...began)];
      return {
        first,
        last,
        cellDegrees,
        cells: [...cells]
          .map(([cell, effort]): Cell => {
            const [latitude = 0, longitude = 0] = cell.split(' ').map(Number);
            return { latitude, longitude, ...effort };
          })
          .sort((a, b) => b.watches - a.watches || b.latitude - a.latitude || a.longitude - b.longitude),
        unplaced,
        hours: Array.from({ length: latest - earliest + 1 }, (_, at) => ({
          hour: earliest + at,
          ...(hours.get(String(earliest + at)) ?? { watches: 0, minutes: 0 }),
        })),
      };
    },
  };
}
