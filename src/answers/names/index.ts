/** What other readers may use of the names of bees and plants. */
export { findBees, findNames, findPlants, type FoundName, type FoundNames, type NameValue } from './find.js';
export { labelOf, rankOf } from './label.js';
