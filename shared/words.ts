/**
 * All words that the program understands: the shape of `dialogs/LANGUAGE/words.yaml`. One section for each reader,
 * and the sections that several share. Words are written in small letters with straight quotes; how they are read is
 * code in `src/answers`.
 */
import { z } from 'zod';
import { countSection } from './words/count.js';
import { liveSection } from './words/live.js';
import { namesSection, plantsSection } from './words/names.js';
import { noteSection } from './words/note.js';
import { hedgesSection, numbersSection } from './words/numbers.js';
import { patchSection } from './words/patch.js';
import { placeSection } from './words/place.js';
import { putRightSection } from './words/put-right.js';
import { sheetsSection } from './words/sheets.js';
import { tallySection } from './words/tally.js';
import { skySection, temperatureSection, weatherSection, windSection } from './words/weather.js';
import { dateSection, timesSection, whenSection } from './words/when.js';
import { wishesSection } from './words/wishes.js';
import { yesNoSection } from './words/yes-no.js';

export const wordsSchema = z.strictObject({
  place: placeSection,
  patch: patchSection,
  yesNo: yesNoSection,
  plants: plantsSection,
  times: timesSection,
  weather: weatherSection,
  temperature: temperatureSection,
  sky: skySection,
  wind: windSection,
  when: whenSection,
  date: dateSection,
  count: countSection,
  tally: tallySection,
  putRight: putRightSection,
  live: liveSection,
  note: noteSection,
  wishes: wishesSection,
  numbers: numbersSection,
  hedges: hedgesSection,
  names: namesSection,
  sheets: sheetsSection,
});

/** `dictionary` has the everyday words of the language: what is one of them is no slip of another. */
export type Words = z.infer<typeof wordsSchema> & { readonly dictionary: ReadonlySet<string> };
