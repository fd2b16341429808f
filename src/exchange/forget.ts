/** What stays of a watch whose observer wants to be forgotten: the science of it, and nothing that leads to them. */
import { cellCentre, cellUncertaintyMetres } from '../../shared/cell.js';
import type { Place, Watch } from '../../shared/record.js';

/** Side of the grid cell whose centre stands for the place, degrees. */
const CELL_DEGREES = 0.1;

/** The centre of its cell, with no word and no site that tells more. Blurring twice changes nothing. */
export function blurred(place: Place): Place {
  const { latitude, longitude, uncertaintyMetres } = place;
  const hidden = { ...place, words: '', site: null, private: true };
  if (latitude === null || longitude === null) return hidden;
  const at = cellCentre(latitude, CELL_DEGREES);
  return {
    ...hidden,
    latitude: at,
    longitude: cellCentre(longitude, CELL_DEGREES),
    uncertaintyMetres: Math.max(uncertaintyMetres ?? 0, cellUncertaintyMetres(at, CELL_DEGREES)),
  };
}

/** Changes of these are kept with their values; of others only that something was changed. */
const IMPERSONAL = new Set(['/status', '/date', '/times', '/minutes', '/temperature', '/sky', '/wind', '/patch']);

/** The watch under a new key: no words of the observer, no place nearer than a cell. */
export function withoutObserver(watch: Watch, key: string): Watch {
  return {
    ...watch,
    observer: key,
    place: watch.place === null ? null : blurred(watch.place),
    habitat: null,
    remark: null,
    more: Object.fromEntries(Object.entries(watch.more).filter(([, value]) => typeof value !== 'string')),
    asTyped: {},
    // a plant that no list holds is known by its words alone
    plants: watch.plants.map((plant) => ({
      ...plant,
      asTyped: plant.name ?? plant.asTyped,
      flowers: { ...plant.flowers, asTyped: String(plant.flowers.value) },
    })),
    queens: watch.queens.map((row) => ({ ...row, asTyped: row.bee ?? '' })),
    // each is still to lose what its file tells of them (`bare.ts`)
    photographs: watch.photographs.map((photograph) => ({ ...photograph, takenAt: null })),
    findings: watch.findings.map((finding) => ({ ...finding, values: {}, reply: null })),
    queries: watch.queries.map((query) => ({ ...query, answer: query.to === 'observer' ? null : query.answer })),
    history: watch.history.map((change) => ({
      ...change,
      by: change.role === 'observer' ? key : change.by,
      why: change.role === 'observer' ? null : change.why,
      ...(IMPERSONAL.has(change.path) ? {} : { from: null, to: null }),
    })),
  };
}
