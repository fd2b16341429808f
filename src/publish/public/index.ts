/** The public form of a season: what may be shown of each watch, and its tables. */
export { observerKeys } from './observers.js';
export { spreadsheet } from './spreadsheet.js';
export { columnsTable, csvOf, publicTables, type PublicTable } from './tables.js';
export { publicWatch, UNNAMED_PLANT, withoutPlantWords, type PublicWatch } from './watch.js';
