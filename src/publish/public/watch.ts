/**
 * A confirmed watch as the public may see it; the one place where something private is left out. Not in it: words of
 * places and habitats, remarks, names (but of those who asked for theirs), addresses, photographs, queries and history.
 */
import type { PlantWatched, Watch } from '../../../shared/record.js';
import type { WatchCounts } from '../../../shared/watch-counts.js';
import type { Names } from '../../../shared/names.js';
import type { SurveySettings } from '../../../shared/survey.js';
import { withinProtocol } from '../../../shared/protocol.js';
import { standingOf, type Standing } from '../../season/index.js';
import type { ObserverKey } from './observers.js';
import { publicPlace, type PublicPlace } from './place.js';
import { verbatimName } from './verbatim.js';

/** Stands for every plant that is on no list. */
export const UNNAMED_PLANT = 'plant not named';

export interface PublicPlant {
  /** Number within the watch. */
  readonly plant: number;
  /** Null for a plant on no list: its words are the observer's own. */
  readonly name: string | null;
  readonly rank: string | null;
  readonly unit: PlantWatched['unit'];
  readonly flowers: { readonly value: number; readonly low: number | null; readonly high: number | null };
  readonly about: boolean;
}

export interface PublicQueens extends Standing {
  /** Row and part within the watch: a row whose queens have several names is split. */
  readonly row: number;
  readonly part: number;
  readonly plant: number;
  /** A queen where nobody said otherwise; null for a cuckoo, whose females are neither queen nor worker. */
  readonly publicCaste: 'queen' | 'worker' | null;
  /** The observer's words; null where they are more than a name. */
  readonly reportedAs: string | null;
  readonly doubt: boolean;
}

export interface PublicWatch {
  readonly number: number;
  /** The public key. */
  readonly observer: string;
  /** The name that they let stand with their watches; null where only the key may. */
  readonly observerName: string | null;
  readonly date: string;
  readonly start: string;
  readonly end: string;
  readonly timeZone: string;
  readonly minutes: number;
  readonly watchers: number;
  readonly place: PublicPlace | null;
  readonly temperatureCelsius: number | null;
  readonly cloud: string | null;
  readonly rain: boolean | null;
  readonly windBeaufort: number | null;
  readonly squareMetres: number | null;
  readonly withinProtocol: boolean;
  readonly plants: readonly PublicPlant[];
  readonly queens: readonly PublicQueens[];
}

/**
 * Null for a watch that is not confirmed: only those are published. `namesShown` are the names, by the observer's stored
 * key, of those who said that theirs may be published.
 */
export function publicWatch(
  watch: Watch,
  { settings, names }: { readonly settings: SurveySettings; readonly names: Names },
  observerKey: ObserverKey,
  namesShown: ReadonlyMap<string, string> = new Map(),
): PublicWatch | null {
  // before anything else: a watch that is not published may be its observer's first
  const observer = observerKey(watch);
  if (watch.status !== 'confirmed') return null;
  const cuckoos = new Set(names.bees.filter(({ cuckoo }) => cuckoo).map(({ name }) => name));
  return {
    number: watch.number,
    observer,
    observerName: namesShown.get(watch.observer) ?? null,
    date: watch.date,
    start: watch.times.start,
    end: watch.times.end,
    timeZone: watch.timeZone,
    minutes: watch.minutes,
    watchers: watch.watchers,
    place: publicPlace(watch, settings),
    temperatureCelsius: watch.temperature?.celsius ?? null,
    cloud: watch.sky?.cloud ?? null,
    rain: watch.sky?.rain ?? null,
    windBeaufort: watch.wind?.beaufort ?? null,
    squareMetres: watch.patch?.squareMetres ?? null,
    withinProtocol: withinProtocol(watch, settings),
    plants: watch.plants.map(({ plant, name, rank, unit, flowers: { value, low, high, about } }) => ({
      plant,
      name,
      rank,
      unit,
      flowers: { value, low, high },
      about,
    })),
    queens: watch.queens.flatMap((row) =>
      standingOf(row).map((standing, at) => ({
        ...standing,
        row: row.row,
        part: at + 1,
        plant: row.plant,
        publicCaste: cuckoos.has(standing.bee) ? null : (standing.caste ?? 'queen'),
        reportedAs: verbatimName(row.asTyped, names),
        doubt: row.doubt,
      })),
    ),
  };
}

/** For published figures: a plant on no list is known by the observer's own words, which stay private. */
export const withoutPlantWords = (watch: WatchCounts): WatchCounts => ({
  ...watch,
  plants: watch.plants.map((plant) => ({ ...plant, asTyped: plant.name ?? UNNAMED_PLANT })),
});
