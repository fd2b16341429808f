/** Grid cells that hide an exact place: a place is shown as the centre of its cell, as unsure as the cell is wide. */

/** A degree along the meridian, metres (WGS 84 mean). */
const METRES_A_DEGREE = 111_320;

/** A centre is in its own cell again, though 0.1 has no exact binary form. */
const SLACK = 1e-9;

/** The middle of the cell a coordinate lies in; all in degrees. The middle of a middle is itself. */
export const cellCentre = (degrees: number, cellDegrees: number): number =>
  Math.round((Math.floor(degrees / cellDegrees + SLACK) + 0.5) * cellDegrees * 1e6) / 1e6;

/** Half the diagonal of a cell whose centre is at that latitude, rounded up to whole metres. */
export const cellUncertaintyMetres = (latitude: number, cellDegrees: number): number =>
  Math.ceil((Math.hypot(1, Math.cos((latitude * Math.PI) / 180)) * cellDegrees * METRES_A_DEGREE) / 2);
