/** The grid below UTM and MGRS: metres of a zone to degrees. Source: WGS 84, scale 0.9996 on the central meridian. */
import proj4 from 'proj4';
import { sixDecimals } from './form.js';

/** Null where the metres lie outside what the projection is good for. */
export function degreesOfGrid(
  zone: number,
  hemisphere: 'north' | 'south',
  eastMetres: number,
  northMetres: number,
): { readonly latitude: number; readonly longitude: number } | null {
  const grid = `+proj=utm +zone=${zone}${hemisphere === 'south' ? ' +south' : ''} +datum=WGS84 +units=m +no_defs`;
  const [longitude = Number.NaN, latitude = Number.NaN] = proj4(grid, 'WGS84').forward([eastMetres, northMetres]);
  // UTM ends at 80° S and 84° N
  if (!Number.isFinite(latitude) || !Number.isFinite(longitude) || latitude < -80.5 || latitude > 84.5) return null;
  return { latitude: sixDecimals(latitude), longitude: sixDecimals(longitude) };
}

/** Bands of 8° from 80° S; X has 12. I and O are left out. */
const BANDS = 'cdefghjklmnpqrstuvwx';

/** The latitudes of a band, or null for a letter that is none. */
export function latitudesOfBand(letter: string): { readonly from: number; readonly to: number } | null {
  const index = BANDS.indexOf(letter);
  if (index === -1 || letter === '') return null;
  const from = -80 + 8 * index;
  return { from, to: letter === 'x' ? 84 : from + 8 };
}

/**
 * Zones that the X band leaves out: 31, 33, 35 and 37 were widened over them. (In the V band zone 32 is widened and 31
 * narrowed, which does not change what a reference means.)
 */
export const isZoneOfBand = (zone: number, letter: string): boolean =>
  zone >= 1 && zone <= 60 && !(letter === 'x' && [32, 34, 36].includes(zone));
