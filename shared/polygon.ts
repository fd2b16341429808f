/**
 * How far a position lies outside a polygon. Small enough to own: what is needed of a geometry package is one
 * ray and one distance. Edges run straight in degrees, as on a plain map; a polygon may lie across the 180th meridian,
 * but no edge may be longer than 180 degrees, and none may go round a pole.
 */
import type { Position } from './distance.js';

/** Metres of one degree along the meridian, as for the uncertainty of a position. */
const METRES_PER_DEGREE = 111_320;

/** Degrees of longitude from one meridian to another the short way, -180 to 180. */
const degreesEast = (from: number, to: number): number => ((((to - from + 180) % 360) + 360) % 360) - 180;

/** A point of a flat map. */
interface Point {
  readonly east: number;
  readonly north: number;
}

function isInside(point: Point, corners: readonly Point[]): boolean {
  // A ray to the east: inside when it crosses the border an odd number of times.
  let inside = false;
  edgesOf(corners).forEach(([a, b]) => {
    if (a.north > point.north === b.north > point.north) return;
    const crossing = a.east + ((point.north - a.north) / (b.north - a.north)) * (b.east - a.east);
    if (crossing > point.east) inside = !inside;
  });
  return inside;
}

const edgesOf = (corners: readonly Point[]): (readonly [Point, Point])[] =>
  corners.map((corner, index) => [corner, corners[(index + 1) % corners.length] ?? corner] as const);

/** Distance from a point to the nearest point of an edge. */
function toEdge(point: Point, [a, b]: readonly [Point, Point]): number {
  const [east, north] = [b.east - a.east, b.north - a.north];
  const squared = east ** 2 + north ** 2;
  const along = squared === 0 ? 0 : ((point.east - a.east) * east + (point.north - a.north) * north) / squared;
  const kept = Math.min(1, Math.max(0, along));
  return Math.hypot(a.east + kept * east - point.east, a.north + kept * north - point.north);
}

/**
 * Metres from a position to the nearest border of the polygon; 0 inside and on the border. On a flat map drawn about
 * the position: right to a few per cent over some hundred kilometres, and only a size beyond that.
 */
export function metresOutside(position: Position, polygon: readonly Position[]): number {
  const shrink = Math.cos((position.latitude * Math.PI) / 180);
  // Each corner continues from the one before, so that a polygon across the 180th meridian stays in one piece.
  let longitude = position.longitude;
  const degrees = polygon.map((corner) => {
    longitude += degreesEast(longitude, corner.longitude);
    return { east: longitude - position.longitude, north: corner.latitude - position.latitude };
  });
  // Seen from the position the whole polygon may still lie one turn away.
  const middle = degrees.reduce((sum, corner) => sum + corner.east, 0) / degrees.length;
  const turn = Math.round(middle / 360) * 360;
  const corners = degrees.map(({ east, north }) => ({
    east: (east - turn) * shrink * METRES_PER_DEGREE,
    north: north * METRES_PER_DEGREE,
  }));
  const here: Point = { east: 0, north: 0 };
  return isInside(here, corners) ? 0 : Math.min(...edgesOf(corners).map((edge) => toEdge(here, edge)));
}
