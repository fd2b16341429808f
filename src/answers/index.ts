/** What the rest of the program may use of the readers. A kind of answer is one file, its test, and a line here. */
export { readCount } from './count.js';
export { readLicence, type LicenceTold } from './licence.js';
export { labelOf, namedIn, rankOf, type NamedIn } from './names/index.js';
export { readFields, type FieldName } from './note.js';
export { readPlant } from './plant.js';
export { readPlants, type PlantTold } from './plants.js';
export { printed, PRINTED_KINDS, type PrintedReading } from './printed.js';
export { none, type Context, type Finder, type Reader, type Reading, type Span } from './reading.js';
export { readSky } from './sky.js';
export { readTally, readTotal, type TallyRow } from './tally.js';
export { readTemperature } from './temperature.js';
export { fold, saysAnyOf } from './text.js';
export { readWind } from './wind.js';
export { readWish, type Wish } from './wish.js';
export { correctsOnly, readYesNo } from './yes-no.js';
