/**
 * A place as the public may see it: exact where it is neither private nor that of a protected species, else the centre
 * of a grid cell. Words of places are never published. Blurring a blurred place changes nothing.
 */
import { cellCentre, cellUncertaintyMetres } from '../../../shared/cell.js';
import type { Watch } from '../../../shared/record.js';
import type { SurveySettings } from '../../../shared/survey.js';
import { standingOf } from '../../season/index.js';

export interface PublicPlace {
  /** WGS 84, degrees. */
  readonly latitude: number;
  readonly longitude: number;
  readonly uncertaintyMetres: number | null;
  /** Key of the survey's site; null for a blurred place, whose site would tell where it is. */
  readonly site: string | null;
  /** What was done to it, in a sentence; null for an exact place. */
  readonly generalized: string | null;
}

/** True where a plant or a bee of the watch, as reported or as determined, is protected. */
function hasProtected(watch: Watch, names: ReadonlySet<string>): boolean {
  const bees = watch.queens.flatMap((row) => [
    row.bee,
    ...standingOf(row).map(({ bee }) => bee),
    ...row.determinations.flatMap(({ taxa }) => taxa),
  ]);
  return [...bees, ...watch.plants.map(({ name }) => name)].some((name) => name !== null && names.has(name));
}

/** Null where the watch has no coordinates. */
export function publicPlace(watch: Watch, { publish }: Pick<SurveySettings, 'publish'>): PublicPlace | null {
  const { place } = watch;
  if (!place || place.latitude === null || place.longitude === null) return null;
  const secret = place.private || hasProtected(watch, new Set(publish.protected));
  if (!secret) {
    const { latitude, longitude, uncertaintyMetres, site } = place;
    return { latitude, longitude, uncertaintyMetres, site, generalized: null };
  }
  const latitude = cellCentre(place.latitude, publish.cellDegrees);
  return {
    latitude,
    longitude: cellCentre(place.longitude, publish.cellDegrees),
    uncertaintyMetres: Math.max(place.uncertaintyMetres ?? 0, cellUncertaintyMetres(latitude, publish.cellDegrees)),
    site: null,
    generalized: `Coordinates are the centre of a cell ${publish.cellDegrees} degrees wide; uncertainty widened to the cell.`,
  };
}
