/** Spreadsheets of watches: a grid of cells in, watches and complaints out. */
export { EMPTY, type Cell, type Sheet, type SheetRow } from './cell.js';
export { sayComplaint, type Complaint } from './complaint.js';
export { csvSheet } from './csv.js';
export { readHeading } from './headings.js';
export { readSheets, type SheetsRead } from './read.js';
export type { SheetWatch } from './read-watch.js';
export { differences, watchOf } from './watch.js';
