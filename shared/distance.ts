/** Distances over the ground between WGS 84 positions. */

/** Mean radius of the earth, metres. Source: IUGG mean radius R1 of the GRS 80 ellipsoid (from memory). */
const EARTH_RADIUS_METRES = 6_371_008.8;

export interface Position {
  /** Decimal degrees, north positive. */
  readonly latitude: number;
  /** Decimal degrees, east positive. */
  readonly longitude: number;
}

const radians = (degrees: number): number => (degrees * Math.PI) / 180;

/** Great-circle distance in metres, by the haversine formula: within 0.6 % of the ellipsoid, exact enough to meet. */
export function metresBetween(one: Position, other: Position): number {
  const half = (from: number, to: number): number => Math.sin(radians(to - from) / 2) ** 2;
  const chord =
    half(one.latitude, other.latitude) +
    Math.cos(radians(one.latitude)) * Math.cos(radians(other.latitude)) * half(one.longitude, other.longitude);
  return 2 * EARTH_RADIUS_METRES * Math.asin(Math.min(1, Math.sqrt(chord)));
}
